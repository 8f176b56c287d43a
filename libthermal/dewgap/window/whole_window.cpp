#include "dewgap/window/whole_window.hpp"

#include "dewgap/errors.hpp"
#include "dewgap/glazing/declared.hpp"

namespace dewgap {
namespace {

constexpr PermittedRange area_range_m2{0.0, 1e4};
constexpr PermittedRange u_range_W_m2K{0.0, 20.0};

/// Area and area times U, summed over parts.
struct PartSum {
  double area_m2 = 0.0;
  double conductance_W_K = 0.0;
};

PartSum sum_of(const std::vector<AreaPart>& parts) {
  PartSum sum;
  for (const auto& part : parts) {
    require_in_range(part.area_m2, area_range_m2, "area_m2", "m2");
    require_in_range(part.u_value_W_m2K, u_range_W_m2K, "u_value_W_m2K", "W/(m2 K)");
    sum.area_m2 += part.area_m2;
    sum.conductance_W_K += part.area_m2 * part.u_value_W_m2K;
  }
  return sum;
}

/// Resistance of one of two windows without the film on its side of the air space.
double without_film_m2K_W(double u_W_m2K, double film_m2K_W, std::string_view field) {
  require_in_range(u_W_m2K, {0.01, 20.0}, field, "W/(m2 K)");
  const double resistance_m2K_W = 1.0 / u_W_m2K - film_m2K_W;
  if (!(resistance_m2K_W > 0.0)) {
    throw InvalidInput(field, "transmits more than the film on its own side does");
  }
  return resistance_m2K_W;
}

}  // namespace

double window_u_value_W_m2K(const std::vector<AreaPart>& glazing, const std::vector<AreaPart>& frame,
                            const std::vector<EdgePart>& edges) {
  const PartSum glass = sum_of(glazing);
  const PartSum frames = sum_of(frame);
  const double area_m2 = glass.area_m2 + frames.area_m2;
  if (!(area_m2 > 0.0)) {
    throw InvalidInput("area_m2", "the parts of the window have no area");
  }
  double edge_W_K = 0.0;
  for (const auto& edge : edges) {
    require_in_range(edge.length_m, {0.0, 1e4}, "length_m", "m");
    require_in_range(edge.transmittance_W_mK, {-1.0, 5.0}, "transmittance_W_mK", "W/(m K)");
    edge_W_K += edge.length_m * edge.transmittance_W_mK;
  }
  // ISO 10077-1 eq. 1, from memory
  return (glass.conductance_W_K + frames.conductance_W_K + edge_W_K) / area_m2;
}

double double_window_u_value_W_m2K(double outer_u_W_m2K, double inner_u_W_m2K, double air_space_m2K_W,
                                   double rsi_m2K_W, double rse_m2K_W) {
  require_in_range(air_space_m2K_W, {0.0, 10.0}, "air_space_m2K_W", "m2 K/W");
  require_in_range(rsi_m2K_W, {0.0, 1.0}, "rsi_m2K_W", "m2 K/W");
  require_in_range(rse_m2K_W, {0.0, 1.0}, "rse_m2K_W", "m2 K/W");
  // ISO 10077-1 eq. 2, from memory: the two films that face the air space give way to the air space
  const double outer_m2K_W = without_film_m2K_W(outer_u_W_m2K, rsi_m2K_W, "outer_u_W_m2K");
  const double inner_m2K_W = without_film_m2K_W(inner_u_W_m2K, rse_m2K_W, "inner_u_W_m2K");
  return 1.0 / (outer_m2K_W + air_space_m2K_W + inner_m2K_W);
}

double coupled_window_air_space_m2K_W(double width_m, double emissivity_outer, double emissivity_inner) {
  require_in_range(width_m, {0.002, 0.250}, "width_m", "m");
  DeclaredGlazing pair;
  pair.panes = {DeclaredPane{}, DeclaredPane{}};
  pair.gaps = {DeclaredGap{
      .width_m = width_m, .emissivity_outer = emissivity_outer, .emissivity_inner = emissivity_inner}};
  const auto declared = declared_u_value(pair);
  // A single gap holds all of EN 673's 15 K, so its conductance has a closed form and cannot fail to
  // converge.
  if (declared.status != SolveStatus::converged) {
    throw InvalidInput("width_m", "EN 673 finds no conductance for this air space");
  }
  // ISO 10077-1 Annex C: Rs = 1 / (hr + hg) of EN 673
  return 1.0 / declared.gap_conductance_W_m2K.front();
}

double frame_u_value_W_m2K(double conductivity_W_mK, double thickness_m) {
  require_in_range(conductivity_W_mK, {0.01, 400.0}, "conductivity_W_mK", "W/(m K)");
  require_in_range(thickness_m, {0.005, 0.200}, "thickness_m", "m");
  // slab between the films of ISO 10077-1 Annex A
  return 1.0 / (window_rsi_m2K_W + thickness_m / conductivity_W_mK + window_rse_m2K_W);
}

double frame_u_value_W_m2K(FrameKind kind, double thickness_m) {
  return frame_u_value_W_m2K(frame_properties(kind).conductivity_W_mK.best, thickness_m);
}

}  // namespace dewgap
