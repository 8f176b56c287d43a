#include <cmath>
#include <cstdio>
#include <dewgap/glazing/declared.hpp>

int main() {
  // 4 mm of glass, then the same with a 4 mm acrylic sheet 40 mm behind it.
  dewgap::DeclaredGlazing glazing{.panes = {{.thickness_m = 0.004}}};
  const double now = dewgap::declared_u_value(glazing).u_value_W_m2K;
  glazing.panes.push_back({.thickness_m = 0.004, .conductivity_W_mK = 0.2});
  glazing.gaps.push_back({.width_m = 0.040});
  const double with_sheet = dewgap::declared_u_value(glazing).u_value_W_m2K;

  std::printf("Declared U, W/(m2 K): %.2f now, %.2f with the sheet\n", now, with_sheet);
  const double by_hand = 1.0 / (1.0 / 25.0 + 0.004 / 1.0 + 1.0 / 7.7);  // EN 673, one pane
  return std::abs(now - by_hand) < 1e-6 && with_sheet > 2.4 && with_sheet < 3.0 ? 0 : 1;
}
