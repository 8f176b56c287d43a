// Equivalent conductivity of air cavities and gaps in a section, ISO 10077-2.
#pragma once

#include <vector>

#include "dewgap/window/section_schemes_kernel.hpp"

namespace dewgap::section_kernel {

/// The rectangle of the same area and aspect ratio as the bounding box (ISO 10077-2 6.4.3, from memory).
struct CavityShape {
  std::uint32_t item;
  double x_m;
  double y_m;
};
std::vector<CavityShape> cavity_shapes(const Section& section, const Plan& plan);

/// Walls of a cavity as solved: mean temperatures of the faces at its two ends along each axis, and the
/// amount of heat along each.
struct CavityWalls {
  double low_x_C = 0.0;
  double high_x_C = 0.0;
  double low_y_C = 0.0;
  double high_y_C = 0.0;
  double heat_along_x = 0.0;
  double heat_along_y = 0.0;
};
CavityWalls walls_of(const Mesh& mesh, std::uint32_t item, const std::vector<double>& crossing_C);

/// What the convection and radiation of a cavity depend on.
struct CavityState {
  FlowAxis flow = FlowAxis::x;
  double difference_K = 10.0;
  double mean_temperature_C = 10.0;
};

/// lambda_eq = d (h_a + h_r), W/(m K); of a GapFill its conductance times d. ISO 10077-2:2003 6.3 and Annex C
/// (from memory): d along the heat flow, b across it; h_a = 0.025 / d for b below 5 mm, else the larger of
/// that and 0.73 difference^(1/3); h_r = 4 sigma Tm^3 E F, with 1/E = 1/e1 + 1/e2 - 1 and
/// F = (1 + sqrt(1 + (d/b)^2) - d/b) / 2. By the standard's difference: 1.57 for the power, and
/// 4 sigma Tm^3 E = 4.22 for e1 = e2 = 0.9.
double cavity_conductivity_W_mK(const SectionFill& fill, const CavityShape& shape, const CavityState& state,
                                CavityRule rule);

/// Conductivity of each item: of solids their own, of cavities in the given states; 0 for an OpenFill.
Conductivities conductivities_of(const Section& section, const std::vector<CavityShape>& shapes,
                                 const std::vector<CavityState>& states, CavityRule rule);

}  // namespace dewgap::section_kernel
