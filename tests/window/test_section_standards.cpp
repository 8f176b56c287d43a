// Sections of the standards and of handbooks.
#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "dewgap/window/section.hpp"
#include "dewgap/window/section_readings.hpp"
#include "section_tables.hpp"
#include "support/reference.hpp"

namespace dewgap {
namespace {

TEST(SectionStandards, Iso10211Case1Temperatures) {
  Section column;
  column.items = {{"column", SolidFill{1.0}, {{0.0, 0.0}, {1.0, 0.0}, {1.0, 2.0}, {0.0, 2.0}}, {}}};
  column.boundaries = {{"top", AirSide{AirRole::room, 20.0, 0.0, {}}, {EdgesOnY{2.0}}},
                       {"faces", AirSide{AirRole::outdoors, 0.0, 0.0, {}}, {EdgesOnX{0.0}, EdgesOnY{0.0}}},
                       {"middle", CutOff{}, {EdgesOnX{1.0}}}};
  SectionOptions options{.aim = SectionAim::temperatures_only};
  const auto points = test::read_reference("iso_10211/case_1.csv");
  for (std::size_t row = 0; row < points.row_count(); ++row) {
    options.watched.push_back({points.number(row, "x_m"), 2.0 - points.number(row, "below_top_m")});
  }
  const auto result = solve_section(column, options);
  ASSERT_EQ(result.status, SectionStatus::converged) << explain(result.status);
  EXPECT_FALSE(result.coupling.has_value());
  EXPECT_TRUE(result.heat.empty());
  test::check_reference("iso_10211/case_1.csv", [&](const test::ReferenceRow& row) {
    return temperature_C_at(result, {row.number("x_m"), 2.0 - row.number("below_top_m")}).value();
  });
  for (std::size_t row = 0; row < points.row_count(); ++row) {  // and the stated estimate, to the digits
    EXPECT_NEAR(result.watched[row].temperature_C, points.number(row, "expected"),
                result.watched[row].estimated_error_K + 5e-5);
  }
}

TEST(SectionStandards, Iso10211Case2) {
  const auto result = solve_section(test::iso_10211_case_2());
  ASSERT_EQ(result.status, SectionStatus::converged) << explain(result.status);
  EXPECT_LT(result.heat_imbalance, 1e-9);
  test::check_reference("iso_10211/case_2_temperatures.csv", [&](const test::ReferenceRow& row) {
    return temperature_C_at(result, {1e-3 * row.number("x_mm"), 1e-3 * row.number("y_mm")}).value();
  });
  test::check_reference("iso_10211/case_2_heat_flow.csv",
                        [&](const test::ReferenceRow&) { return result.heat.front().flow_W_m; });
}

TEST(SectionStandards, Iso10077SectionD4) {
  const auto result = solve_section(test::iso_10077_2_section_d4(), {.coupling_error_bound = 5e-5});
  ASSERT_EQ(result.status, SectionStatus::converged) << explain(result.status);
  EXPECT_LT(result.heat_imbalance, 1e-9);
  const PanelBeside panel{1.0 / (0.13 + 0.028 / 0.035 + 0.04), 0.190};
  test::check_reference("iso_10077_2/section_d4.csv", [&](const test::ReferenceRow& row) {
    const double coupling_W_mK = result.coupling->value_W_mK;
    return row.text("quantity") == "Uf" ? frame_transmittance_W_m2K(coupling_W_mK, 0.110, panel)
                                        : coupling_W_mK;
  });
}

/// L of two walls of thickness 1; the arms are so long that their ends run straight.
double corner_excess() {
  Section walls;
  walls.items = {
      {"wall", SolidFill{1.0}, {{0.0, 0.0}, {4.0, 0.0}, {4.0, 1.0}, {1.0, 1.0}, {1.0, 4.0}, {0.0, 4.0}}, {}}};
  walls.boundaries = {{"room", AirSide{AirRole::room, 1.0, 0.0, {}}, {EdgesAlong{{4.0, 1.0}, {1.0, 4.0}}}},
                      {"outdoors", AirSide{AirRole::outdoors, 0.0, 0.0, {}}, {EdgesOnX{0.0}, EdgesOnY{0.0}}},
                      {"ends", CutOff{}, {EdgesOnX{4.0}, EdgesOnY{4.0}}}};
  const auto result = solve_section(walls, {.coupling_error_bound = 2e-5});
  EXPECT_EQ(result.status, SectionStatus::converged);
  EXPECT_LT(result.heat_imbalance, 1e-9);
  return result.coupling->value_W_mK - 6.0;
}

/// A quarter of a block about a square duct, its walls and faces of given temperature.
double duct_shape_factor(double ratio) {
  Section quarter;
  quarter.items = {{"block", SolidFill{1.0}, {{0.0, 0.0}, {ratio, 0.0}, {ratio, ratio}, {0.0, ratio}}, {}},
                   {"duct", OpenFill{"duct"}, {{0.0, 0.0}, {1.0, 0.0}, {1.0, 1.0}, {0.0, 1.0}}, {"block"}}};
  quarter.boundaries = {
      {"duct", AirSide{AirRole::room, 1.0, 0.0, {}}, {}},
      {"faces", AirSide{AirRole::outdoors, 0.0, 0.0, {}}, {EdgesOnX{ratio}, EdgesOnY{ratio}}},
      {"symmetry", CutOff{}, {EdgesOnX{0.0}, EdgesOnY{0.0}}}};
  const auto result = solve_section(quarter, {.coupling_error_bound = 2e-5});
  EXPECT_EQ(result.status, SectionStatus::converged);
  EXPECT_LT(result.heat_imbalance, 1e-9);
  return 4.0 * result.coupling->value_W_mK;
}

TEST(SectionStandards, ShapeFactors) {
  test::check_reference(
      "conduction_shapes/shapes.csv",
      [](const test::ReferenceRow& row) {
        return row.text("shape") == "corner" ? corner_excess() : duct_shape_factor(row.number("ratio"));
      },
      0.4);
}

/// Half fin of conductivity 1, length 1, half thickness b, base at 1, film h to air at 0, tip cut off:
/// heat = sum over tan(z) z = h b of  2 sin^2 z / (z + sin z cos z) tanh(z / b)  (separation of variables).
double fin_heat(double half_thickness, double film) {
  const double biot = film * half_thickness;
  double heat = 0.0;
  for (int n = 2'000; n >= 0; --n) {
    double low = n * std::numbers::pi;
    double high = low + 0.5 * std::numbers::pi;
    for (int step = 0; step < 60; ++step) {
      const double z = 0.5 * (low + high);
      (z * std::tan(z) < biot ? low : high) = z;
    }
    const double z = 0.5 * (low + high);
    heat += 2.0 * std::sin(z) * std::sin(z) / (z + std::sin(z) * std::cos(z)) * std::tanh(z / half_thickness);
  }
  return heat;
}

TEST(SectionStandards, FinAgreesWithItsSeries) {
  Section fin;
  fin.items = {{"fin", SolidFill{1.0}, {{0.0, 0.0}, {1.0, 0.0}, {1.0, 0.4}, {0.0, 0.4}}, {}}};
  fin.boundaries = {{"base", AirSide{AirRole::room, 1.0, 0.0, {}}, {EdgesOnX{0.0}}},
                    {"air", AirSide{AirRole::outdoors, 0.0, 0.5, {}}, {EdgesOnY{0.4}}},
                    {"symmetry and tip", CutOff{}, {EdgesOnY{0.0}, EdgesOnX{1.0}}}};
  const auto result = solve_section(fin, {.coupling_error_bound = 1e-5});
  ASSERT_EQ(result.status, SectionStatus::converged);
  EXPECT_LT(result.heat_imbalance, 1e-9);
  const double series = fin_heat(0.4, 2.0);  // cut after 2,000 terms: below 1e-7
  EXPECT_NEAR(result.coupling->value_W_mK, series, result.coupling->error_bound_W_mK + 1e-7);
  EXPECT_LT(result.coupling->error_bound_W_mK, 1e-5 * series);
}

}  // namespace
}  // namespace dewgap
