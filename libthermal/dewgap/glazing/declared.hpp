// The declared U-value of glazing, EN 673 / ISO 10292: for comparison and certificates, never for
// kilowatt-hours.
#pragma once

#include <vector>

#include "dewgap/air/gas.hpp"
#include "dewgap/validity.hpp"

namespace dewgap {

enum class DeclaredPosition {
  vertical,
  inclined_45,
  horizontal
};  ///< heat flowing upwards where not vertical

struct DeclaredPane {
  double thickness_m = 0.004;
  double conductivity_W_mK = 1.0;
};

struct DeclaredGap {
  double width_m = 0.016;
  GasMixture gas;
  double emissivity_outer = 0.837;  ///< corrected, face towards outdoors
  double emissivity_inner = 0.837;  ///< corrected, face towards the room
};

/// Panes from outdoors to the room with one gap between each two.
struct DeclaredGlazing {
  std::vector<DeclaredPane> panes{DeclaredPane{}};
  std::vector<DeclaredGap> gaps;
  DeclaredPosition position = DeclaredPosition::vertical;
  double outdoor_film_W_m2K = 25.0;
  double room_emissivity = 0.837;  ///< of the room-side face: hi = 3.6 + 4.1 e/0.837
};

struct DeclaredUValue {
  double u_value_W_m2K = 0.0;  ///< unrounded
  double resistance_without_films_m2K_W = 0.0;
  std::vector<double> gap_conductance_W_m2K;  ///< radiation and convection, one a gap
  int iterations = 0;
  double residual_K = 0.0;  ///< of the 15 K that the gaps share
  SolveStatus status = SolveStatus::iteration_limit;
};

/// Runs the one stack solver (the same equations and Newton core as solve_stack) under EN 673's boundary
/// conditions (mean 283 K, 15 K over the gaps). Panes 1 to 5, thickness 0.05 to 30 mm, gap 2 to 250 mm.
/// Throws InvalidInput outside.
DeclaredUValue declared_u_value(const DeclaredGlazing& glazing);

/// The same with given external and internal surface resistances instead of the standard films (Rsi, Rse as a
/// handbook table states them).
double u_value_with_resistances_W_m2K(const DeclaredUValue& declared, double rsi_m2K_W, double rse_m2K_W);

}  // namespace dewgap
