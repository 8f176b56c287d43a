// Cavities: section_cavity_kernel.hpp.
#include <algorithm>
#include <cmath>

#include "dewgap/air/constants.hpp"
#include "dewgap/window/section_cavity_kernel.hpp"

namespace dewgap::section_kernel {
namespace {

constexpr double still_air_W_mK = 0.025;                 // C1
constexpr double standard_convection_W_m2K = 1.57;       // C3 10^(1/3)
constexpr double convection_factor = 0.73;               // C3, W/(m2 K^(4/3))
constexpr double standard_radiation_W_m2K = 2.0 * 2.11;  // C4 stands for half of 4 sigma Tm^3 E
constexpr double standard_emissivity = 0.9;
constexpr double narrow_m = 0.005;
constexpr double slightly_ventilated_factor = 2.0;  // ISO 10077-2 6.4.2

double exchange_factor(double emissivity_1, double emissivity_2) {
  return 1.0 / (1.0 / emissivity_1 + 1.0 / emissivity_2 - 1.0);
}

double convection_W_m2K(double d_m, double b_m, const CavityState& state, CavityRule rule) {
  const double still_W_m2K = still_air_W_mK / d_m;
  if (b_m < narrow_m) {
    return still_W_m2K;
  }
  return std::max(still_W_m2K, rule == CavityRule::standard_difference
                                   ? standard_convection_W_m2K
                                   : convection_factor * std::cbrt(state.difference_K));
}

double radiation_W_m2K(const CavityFill& fill, double d_m, double b_m, const CavityState& state,
                       CavityRule rule) {
  const double ratio = d_m / b_m;
  const double view = 0.5 * (1.0 + std::sqrt(1.0 + ratio * ratio) - ratio);
  const double exchange = exchange_factor(fill.emissivity_1, fill.emissivity_2);
  if (rule == CavityRule::standard_difference) {
    return standard_radiation_W_m2K * exchange / exchange_factor(standard_emissivity, standard_emissivity) *
           view;
  }
  const double mean_K = constants::kelvin(state.mean_temperature_C);
  return 4.0 * constants::stefan_boltzmann_W_m2K4 * mean_K * mean_K * mean_K * exchange * view;
}

/// Sums of temperature times length, and of length, over a wall.
struct WallSum {
  double temperature = 0.0;
  double length_m = 0.0;

  void add(double one_C, double other_C, double width_m) {
    temperature += 0.5 * (one_C + other_C) * width_m;
    length_m += width_m;
  }
  double mean() const { return temperature / length_m; }
};

}  // namespace

std::vector<CavityShape> cavity_shapes(const Section& section, const Plan& plan) {
  std::vector<CavityShape> shapes;
  for (std::uint32_t item = 0; item < section.items.size(); ++item) {
    const SectionFill& fill = section.items[item].fill;
    if (!std::holds_alternative<CavityFill>(fill) && !std::holds_alternative<GapFill>(fill)) {
      continue;
    }
    SectionPoint low{plan.x_m.back(), plan.y_m.back()};
    SectionPoint high{plan.x_m.front(), plan.y_m.front()};
    double area_m2 = 0.0;
    for (std::size_t row = 0; row < plan.rows(); ++row) {
      for (std::size_t column = 0; column < plan.columns(); ++column) {
        if (plan.item_of(column, row) == item) {
          low = {std::min(low.x_m, plan.x_m[column]), std::min(low.y_m, plan.y_m[row])};
          high = {std::max(high.x_m, plan.x_m[column + 1]), std::max(high.y_m, plan.y_m[row + 1])};
          area_m2 += (plan.x_m[column + 1] - plan.x_m[column]) * (plan.y_m[row + 1] - plan.y_m[row]);
        }
      }
    }
    const double box_x_m = high.x_m - low.x_m;
    const double box_y_m = high.y_m - low.y_m;
    const double scale = std::sqrt(area_m2 / (box_x_m * box_y_m));
    shapes.push_back({item, scale * box_x_m, scale * box_y_m});
  }
  return shapes;
}

CavityWalls walls_of(const Mesh& mesh, std::uint32_t item, const std::vector<double>& crossing_C) {
  WallSum low_x, high_x, low_y, high_y;
  CavityWalls walls;
  const auto belongs = [&](std::size_t column, std::size_t row) {
    return mesh.item[mesh.cell(column, row)] == item;
  };
  for (std::size_t row = 0; row < mesh.rows(); ++row) {
    for (std::size_t column = 0; column < mesh.columns(); ++column) {
      if (!belongs(column, row)) {
        continue;
      }
      const double south_west = crossing_C[mesh.crossing(column, row)];
      const double south_east = crossing_C[mesh.crossing(column + 1, row)];
      const double north_west = crossing_C[mesh.crossing(column, row + 1)];
      const double north_east = crossing_C[mesh.crossing(column + 1, row + 1)];
      const double x_m = mesh.x.width_m(column);
      const double y_m = mesh.y.width_m(row);
      if (column == 0 || !belongs(column - 1, row)) low_x.add(south_west, north_west, y_m);
      if (column + 1 == mesh.columns() || !belongs(column + 1, row)) high_x.add(south_east, north_east, y_m);
      if (row == 0 || !belongs(column, row - 1)) low_y.add(south_west, south_east, x_m);
      if (row + 1 == mesh.rows() || !belongs(column, row + 1)) high_y.add(north_west, north_east, x_m);
      walls.heat_along_x += 0.5 * (south_west + north_west - south_east - north_east) * y_m;
      walls.heat_along_y += 0.5 * (south_west + south_east - north_west - north_east) * x_m;
    }
  }
  walls.low_x_C = low_x.mean();
  walls.high_x_C = high_x.mean();
  walls.low_y_C = low_y.mean();
  walls.high_y_C = high_y.mean();
  return walls;
}

double cavity_conductivity_W_mK(const SectionFill& fill, const CavityShape& shape, const CavityState& state,
                                CavityRule rule) {
  const double d_m = state.flow == FlowAxis::x ? shape.x_m : shape.y_m;
  const double b_m = state.flow == FlowAxis::x ? shape.y_m : shape.x_m;
  if (const auto* gap = std::get_if<GapFill>(&fill)) {
    return gap->conductance_W_m2K * d_m;
  }
  const auto& cavity = std::get<CavityFill>(fill);
  const double still_W_mK =
      d_m * (convection_W_m2K(d_m, b_m, state, rule) + radiation_W_m2K(cavity, d_m, b_m, state, rule));
  return cavity.ventilation == CavityVentilation::slightly_ventilated
             ? slightly_ventilated_factor * still_W_mK
             : still_W_mK;
}

Conductivities conductivities_of(const Section& section, const std::vector<CavityShape>& shapes,
                                 const std::vector<CavityState>& states, CavityRule rule) {
  Conductivities conductivity_W_mK(section.items.size(), 0.0);
  for (std::size_t item = 0; item < section.items.size(); ++item) {
    if (const auto* solid = std::get_if<SolidFill>(&section.items[item].fill)) {
      conductivity_W_mK[item] = solid->conductivity_W_mK;
    }
  }
  for (std::size_t k = 0; k < shapes.size(); ++k) {
    const std::uint32_t item = shapes[k].item;
    conductivity_W_mK[item] = cavity_conductivity_W_mK(section.items[item].fill, shapes[k], states[k], rule);
  }
  return conductivity_W_mK;
}

}  // namespace dewgap::section_kernel
