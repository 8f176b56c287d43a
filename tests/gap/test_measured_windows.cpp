// The stack against windows that were measured, misses included.
#include <gtest/gtest.h>

#include <cstdio>

#include "dewgap/glazing/stack.hpp"
#include "dewgap/materials/materials.hpp"
#include "support/reference.hpp"

namespace dewgap::test {
namespace {

StackLayer sheet_layer(const std::string& sheet) {
  const auto properties = sheet == "glass" ? glass_properties() : sheet_properties(SheetKind::polycarbonate);
  return {.thickness_m = 0.004,
          .conductivity_W_mK = properties.conductivity_W_mK.best,
          .emissivity_outer = properties.emissivity.best,
          .emissivity_inner = properties.emissivity.best};
}

double centre_u_value(const ReferenceRow& row) {
  Stack stack;
  stack.height_m = 1.0;
  if (row.text("sheet") != "none") {
    stack.layer_count = 2;
    stack.layers[1] = sheet_layer(row.text("sheet"));
    stack.gaps[0].width_m = row.number("gap_mm") / 1000.0;
  }
  const OutdoorClimate outdoors{.air_temperature_C = 5.0,
                                .sky_temperature_C = sky_temperature_C(5.0, 2.0, 0.5),
                                .ground_temperature_C = 5.0,
                                .sky_view_factor = 0.5,
                                .convection_W_m2K = outdoor_convection_W_m2K(1.5)};
  const auto solution =
      solve_stack(stack, outdoors, {.air_temperature_C = 20.0, .radiant_temperature_C = 20.0});
  EXPECT_EQ(solution.status, SolveStatus::converged);
  std::printf("%s: measured %.2f, computed %.2f W/(m2 K)\n", row.text("case").c_str(), row.number("expected"),
              solution.u_value_W_m2K);
  return solution.u_value_W_m2K;
}

TEST(MeasuredWindows, CentreOfPaneWithinTheStudiesOwnScatter) {
  check_reference("measured_windows/centre_of_pane.csv", centre_u_value, 1.2);
}

}  // namespace
}  // namespace dewgap::test
