// Cavities of ISO 10077-2, gaps of given conductance, and what is open to a side.
#include <gtest/gtest.h>

#include <cmath>

#include "dewgap/errors.hpp"
#include "dewgap/window/section.hpp"
#include "dewgap/window/section_cavity_kernel.hpp"
#include "dewgap/window/section_readings.hpp"
#include "section_tables.hpp"

namespace dewgap {
namespace {

namespace kernel = section_kernel;
constexpr auto standard = CavityRule::standard_difference;

TEST(SectionCavities, StandardDifferenceByHand) {
  // d 20 mm, b 40 mm: 1.57 over 0.025/0.02; 2.11 (1 + sqrt(1.25) - 0.5)
  const kernel::CavityShape slot{0, 0.020, 0.040};
  const double expected = 0.020 * (1.57 + 2.11 * (1.0 + std::sqrt(1.25) - 0.5));
  EXPECT_NEAR(kernel::cavity_conductivity_W_mK(CavityFill{}, slot, {.flow = FlowAxis::x}, standard), expected,
              1e-12);
  // along y: d 40 mm, b 20 mm
  const double turned = 0.040 * (1.57 + 2.11 * (1.0 + std::sqrt(5.0) - 2.0));
  EXPECT_NEAR(kernel::cavity_conductivity_W_mK(CavityFill{}, slot, {.flow = FlowAxis::y}, standard), turned,
              1e-12);
  // b 4 mm: conduction alone, with d = 10 mm less than the 1.57 would be; and d 8 mm: 0.025/d is more
  const kernel::CavityShape narrow{0, 0.020, 0.004};
  const double still = 0.020 * (0.025 / 0.020 + 2.11 * (1.0 + std::sqrt(26.0) - 5.0));
  EXPECT_NEAR(kernel::cavity_conductivity_W_mK(CavityFill{}, narrow, {.flow = FlowAxis::x}, standard), still,
              1e-12);
  const kernel::CavityShape thin{0, 0.008, 0.100};
  const double conducting = 0.025 + 0.008 * 2.11 * (1.0 + std::sqrt(1.0064) - 0.08);
  EXPECT_NEAR(kernel::cavity_conductivity_W_mK(CavityFill{}, thin, {.flow = FlowAxis::x}, standard),
              conducting, 1e-12);
}

TEST(SectionCavities, SolvedWallsByHand) {
  // 0.73 x 4^(1/3), 4 sigma (278.15)^3 / (1/0.9 + 1/0.1 - 1) x (1 + sqrt(1.25) - 0.5) / 2
  const kernel::CavityShape slot{0, 0.020, 0.040};
  const kernel::CavityState state{FlowAxis::x, 4.0, 5.0};
  const double radiation = 4.0 * 5.670374419e-8 * std::pow(278.15, 3) / (1.0 / 0.9 + 10.0 - 1.0) * 0.5 *
                           (1.0 + std::sqrt(1.25) - 0.5);
  const double convection = std::max(0.025 / 0.020, 0.73 * std::cbrt(4.0));
  EXPECT_NEAR(kernel::cavity_conductivity_W_mK(CavityFill{.emissivity_2 = 0.1}, slot, state,
                                               CavityRule::solved_walls),
              0.020 * (convection + radiation), 1e-12);
}

TEST(SectionCavities, AtTenKelvinAndTenDegreesBothRulesAgreeToTheirDigits) {
  // 1.57 and 2.11 are rounded: half a unit of the last digit of each
  const kernel::CavityShape slot{0, 0.020, 0.040};
  const kernel::CavityState state{FlowAxis::x, 10.0, 10.0};
  EXPECT_NEAR(kernel::cavity_conductivity_W_mK(CavityFill{}, slot, state, standard),
              kernel::cavity_conductivity_W_mK(CavityFill{}, slot, state, CavityRule::solved_walls),
              0.020 * (0.005 + 0.005 * 1.62));
}

TEST(SectionCavities, SlightlyVentilatedConductsTwice) {
  const kernel::CavityShape slot{0, 0.020, 0.040};
  const CavityFill open{.ventilation = CavityVentilation::slightly_ventilated};
  for (const auto rule : {standard, CavityRule::solved_walls}) {
    EXPECT_DOUBLE_EQ(kernel::cavity_conductivity_W_mK(open, slot, {}, rule),
                     2.0 * kernel::cavity_conductivity_W_mK(CavityFill{}, slot, {}, rule));
  }
}

/// A frame 60 mm deep with a hollow in it; heat flows down.
Section hollow_frame(const SectionFill& fill, std::string_view hollow_mm) {
  Section section;
  section.items = {{"frame", SolidFill{0.17}, test::rectangle_mm(0, 80, 0, 60), {}},
                   {"hollow", fill, test::polygon_of(hollow_mm), {"frame"}}};
  section.boundaries = test::room_above(80, 60);
  return section;
}

TEST(SectionCavities, EquivalentRectangleHasTheAreaAndTheBoxesRatio) {
  const auto result = solve_section(hollow_frame(CavityFill{}, "20 20 60 20 60 30 40 30 40 40 20 40"));
  ASSERT_EQ(result.cavities.size(), 1u);
  const auto& hollow = result.cavities.front();
  EXPECT_EQ(hollow.item, "hollow");
  EXPECT_EQ(hollow.flow, FlowAxis::y);
  EXPECT_NEAR(hollow.depth_m * hollow.width_m, 600e-6, 1e-12);  // 40 x 10 + 20 x 10 mm2
  EXPECT_NEAR(hollow.width_m / hollow.depth_m, 40.0 / 20.0, 1e-9);
}

TEST(SectionCavities, HeatTurnsTheCavityNotItsShape) {
  // narrow along x, but heat flows along y
  const auto result = solve_section(hollow_frame(CavityFill{}, "30 15 40 15 40 45 30 45"));
  EXPECT_EQ(result.cavities.front().flow, FlowAxis::y);
  EXPECT_NEAR(result.cavities.front().depth_m, 0.030, 1e-12);
}

TEST(SectionCavities, SolvedWallsAreThoseOfTheField) {
  const auto section = hollow_frame(CavityFill{}, "20 20 60 20 60 40 20 40");
  const auto result = solve_section(section, {.cavities = CavityRule::solved_walls});
  ASSERT_EQ(result.status, SectionStatus::converged);
  const auto& hollow = result.cavities.front();
  EXPECT_GT(hollow.wall_difference_K, 1.0);
  const kernel::CavityState state{hollow.flow, hollow.wall_difference_K, hollow.mean_temperature_C};
  EXPECT_NEAR(
      kernel::cavity_conductivity_W_mK(CavityFill{}, {1, 0.040, 0.020}, state, CavityRule::solved_walls),
      hollow.conductivity_W_mK, 2e-6 * hollow.conductivity_W_mK);
  const double walls_C =
      0.5 * (temperature_C_at(result, {0.04, 0.02}).value() + temperature_C_at(result, {0.04, 0.04}).value());
  EXPECT_NEAR(walls_C, hollow.mean_temperature_C, 0.5);  // the middle of the walls against their mean
}

TEST(SectionCavities, GapOfGivenConductanceInASlabIsExact) {
  Section slab;
  slab.items = {{"outer", SolidFill{1.0}, test::rectangle_mm(0, 100, 0, 4), {}},
                {"gap", GapFill{5.4}, test::rectangle_mm(0, 100, 4, 24), {}},
                {"inner", SolidFill{0.19}, test::rectangle_mm(0, 100, 24, 28), {}}};
  slab.boundaries = test::room_above(100, 28);
  const auto result = solve_section(slab);
  EXPECT_NEAR(result.coupling->value_W_mK, 0.1 / (0.17 + 0.004 + 1.0 / 5.4 + 0.004 / 0.19), 1e-10);
}

TEST(SectionCavities, OpenItemIsAirOfItsBoundary) {
  Section groove;
  groove.items = {{"frame", SolidFill{0.17}, test::rectangle_mm(0, 80, 0, 60), {}},
                  {"groove", OpenFill{"outdoors"}, test::rectangle_mm(30, 45, 0, 20), {"frame"}}};
  groove.boundaries = test::room_above(80, 60);
  Section cut;
  cut.items = {{"frame", SolidFill{0.17}, test::polygon_of("0 0 30 0 30 20 45 20 45 0 80 0 80 60 0 60"), {}}};
  cut.boundaries = test::room_above(80, 60);
  cut.boundaries[1].edges = {EdgesAlong{{0.0, 0.0}, {0.08, 0.0}}};
  const auto open = solve_section(groove);
  const auto drawn = solve_section(cut);
  ASSERT_EQ(open.status, SectionStatus::converged);
  EXPECT_NEAR(open.coupling->value_W_mK, drawn.coupling->value_W_mK, 1e-12);
  EXPECT_FALSE(temperature_C_at(open, {0.0375, 0.01}).has_value());
  EXPECT_THROW(lowest_on_item(open, "groove"), InvalidInput);
}

}  // namespace
}  // namespace dewgap
