// Laws that every solved section obeys: exact slabs, bounds, conservation, symmetry, order.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "dewgap/window/section.hpp"
#include "dewgap/window/section_answer_kernel.hpp"
#include "dewgap/window/section_readings.hpp"
#include "random_sections.hpp"
#include "section_tables.hpp"

namespace dewgap {
namespace {

namespace kernel = section_kernel;

TEST(SectionLaws, LayeredSlabIsExact) {
  Section slab;
  slab.items = {{"plaster", SolidFill{0.57}, test::rectangle_mm(0, 300, 0, 13), {}},
                {"insulation", SolidFill{0.03}, test::rectangle_mm(0, 300, 13, 73), {}},
                {"foil", SolidFill{220.0}, test::rectangle_mm(0, 300, 73, 73.05), {}},
                {"brick", SolidFill{0.77}, test::rectangle_mm(0, 300, 73.05, 175), {}}};
  slab.boundaries = test::room_above(300, 175);
  const double inner_m2K_W = 0.13 + 0.10195 / 0.77 + 0.05e-3 / 220.0;  // room to the insulation's upper face
  const double total_m2K_W = inner_m2K_W + 0.06 / 0.03 + 0.013 / 0.57 + 0.04;
  const auto result = solve_section(slab);
  ASSERT_EQ(result.status, SectionStatus::converged);
  EXPECT_NEAR(result.coupling->value_W_mK, 0.3 / total_m2K_W, 1e-10);
  EXPECT_LT(result.coupling->error_bound_W_mK, 1e-10);
  for (const double x_m : {0.0, 0.1, 0.3}) {
    EXPECT_NEAR(temperature_C_at(result, {x_m, 0.073}).value(), 20.0 * (1.0 - inner_m2K_W / total_m2K_W),
                1e-9);
  }
  EXPECT_NEAR(result.lowest_room_face->temperature_C, 20.0 * (1.0 - 0.13 / total_m2K_W), 1e-9);
  EXPECT_NEAR(temperature_factor(result, "room"), 1.0 - 0.13 / total_m2K_W, 1e-10);
}

TEST(SectionLaws, SlabsSideBySideAddWhereNothingJoinsThem) {
  Section pair;
  pair.items = {{"one", SolidFill{0.5}, test::rectangle_mm(0, 100, 0, 50), {}},
                {"other", SolidFill{2.0}, test::rectangle_mm(150, 250, 0, 50), {}}};
  pair.boundaries = test::room_above(250, 50);
  pair.boundaries[2].edges.insert(pair.boundaries[2].edges.end(), {EdgesOnX{0.1}, EdgesOnX{0.15}});
  const auto result = solve_section(pair);
  EXPECT_NEAR(result.coupling->value_W_mK, 0.1 / (0.17 + 0.05 / 0.5) + 0.1 / (0.17 + 0.05 / 2.0), 1e-10);
}

/// Both schemes' coupling from their flows, and the terms of their difference.
struct Bracket {
  double upper;
  double lower;
  double excess;
  double shortfall;
  double terms;
};

Bracket bracket_of(const kernel::SolvedGrid& grid, double difference_K) {
  const double square = difference_K * difference_K;
  return {grid.by_vertices.flow_W_m.front() / difference_K, grid.by_cells.flow_W_m.front() / difference_K,
          grid.terms.vertex_excess_W_K_m / square, grid.terms.cell_shortfall_W_K_m / square,
          grid.terms.total() / square};
}

TEST(SectionLaws, SchemesHoldTheAnswerBetweenThemAndTheLocalTermsSumToTheirDifference) {
  test::RandomSections drawn(7);
  for (int i = 0; i < 20; ++i) {
    const Section section = drawn.next();
    const auto task = kernel::task_of(section, CavityRule::standard_difference);
    auto grid =
        kernel::solve_on(task, kernel::first_lines(task.plan.x_m), kernel::first_lines(task.plan.y_m), {});
    Bracket coarse = bracket_of(grid, 20.0);
    for (int pass = 0; pass < 3; ++pass) {
      // Prager and Synge: the terms are the difference of the two exact dissipations
      const double exact = coarse.upper - coarse.excess - coarse.lower - coarse.shortfall;
      EXPECT_NEAR(coarse.terms, exact, 1e-9 * coarse.upper) << "section " << i;
      EXPECT_LE(coarse.lower, coarse.upper);
      const auto marked = kernel::largest_terms(grid.terms, 0.75);
      grid = kernel::solve_on(task, kernel::halved(grid.mesh.x, marked.columns),
                              kernel::halved(grid.mesh.y, marked.rows), {});
      const Bracket fine = bracket_of(grid, 20.0);
      EXPECT_LE(fine.lower, coarse.upper - coarse.excess) << "section " << i;
      EXPECT_GE(fine.upper, coarse.lower + coarse.shortfall) << "section " << i;
      EXPECT_LT(fine.terms, coarse.terms);
      coarse = fine;
    }
  }
}

TEST(SectionLaws, RandomSectionsBalanceAndStayInsideTheirEstimates) {
  test::RandomSections drawn(11);
  for (int i = 0; i < 12; ++i) {
    const Section section = drawn.next();
    const auto result = solve_section(section);
    ASSERT_EQ(result.status, SectionStatus::converged) << "section " << i;
    const auto finer =
        solve_section(section, {.coupling_error_bound = 2e-4, .temperature_error_bound_K = 0.008});
    EXPECT_LT(result.heat_imbalance, 1e-9) << "section " << i;
    EXPECT_LE(result.coupling->error_bound_W_mK, 5e-4 * result.coupling->value_W_mK);
    EXPECT_LE(std::abs(result.coupling->value_W_mK - finer.coupling->value_W_mK),
              result.coupling->error_bound_W_mK)
        << "section " << i;
    EXPECT_LE(std::abs(result.lowest_room_face->temperature_C - finer.lowest_room_face->temperature_C),
              result.lowest_room_face->estimated_error_K)
        << "section " << i;
    EXPECT_LE(result.lowest_room_face->estimated_error_K, 0.02);
  }
}

/// A rectangle with films on two sides that meet: smooth but for a weak corner.
TEST(SectionLaws, BothSchemesAreOfSecondOrder) {
  Section section;
  section.items = {{"block", SolidFill{1.0}, {{0.0, 0.0}, {1.0, 0.0}, {1.0, 1.0}, {0.0, 1.0}}, {}}};
  section.boundaries = {{"room", AirSide{AirRole::room, 1.0, 0.5, {}}, {EdgesOnY{1.0}}},
                        {"outdoors", AirSide{AirRole::outdoors, 0.0, 0.5, {}}, {EdgesOnX{0.0}}},
                        {"cut-offs", CutOff{}, {EdgesOnX{1.0}, EdgesOnY{0.0}}}};
  const auto task = kernel::task_of(section, CavityRule::standard_difference);
  auto x = kernel::first_lines(task.plan.x_m);
  auto y = kernel::first_lines(task.plan.y_m);
  std::vector<Bracket> grids;
  for (int halving = 0; halving < 4; ++halving) {
    grids.push_back(bracket_of(kernel::solve_on(task, x, y, {}), 1.0));
    x = kernel::halved(x, std::vector<bool>(x.intervals(), true));
    y = kernel::halved(y, std::vector<bool>(y.intervals(), true));
  }
  for (std::size_t g = 0; g + 2 < grids.size(); ++g) {
    const double upper = (grids[g].upper - grids[g + 1].upper) / (grids[g + 1].upper - grids[g + 2].upper);
    const double lower = (grids[g].lower - grids[g + 1].lower) / (grids[g + 1].lower - grids[g + 2].lower);
    EXPECT_GE(std::log2(upper), 1.9) << "grid " << g;
    EXPECT_GE(std::log2(lower), 1.9) << "grid " << g;
    const double gap = (grids[g].upper - grids[g].lower) / (grids[g + 1].upper - grids[g + 1].lower);
    EXPECT_GE(std::log2(gap), 1.9) << "grid " << g;
  }
}

Section symmetric_section() {
  Section section;
  section.items = {
      {"wall", SolidFill{0.2}, test::polygon_of("0 0 200 0 200 40 120 40 120 70 80 70 80 40 0 40"), {}},
      {"rib", SolidFill{50.0}, test::rectangle_mm(95, 105, 0, 60), {"wall"}}};
  section.boundaries = {
      {"room", AirSide{AirRole::room, 20.0, 0.13, CornerFilm{}}, {EdgesAlong{{0.2, 0.04}, {0.0, 0.04}}}},
      {"outdoors", AirSide{AirRole::outdoors, 0.0, 0.04, {}}, {EdgesOnY{0.0}}},
      {"sides", CutOff{}, {EdgesOnX{0.0}, EdgesOnX{0.2}}}};
  return section;
}

TEST(SectionLaws, SymmetricSectionsHaveSymmetricFields) {
  const auto result = solve_section(symmetric_section());
  ASSERT_EQ(result.status, SectionStatus::converged);
  const auto& x_m = result.field.x_m;
  for (std::size_t row = 0; row < result.field.y_m.size(); ++row) {
    for (std::size_t column = 0; column < x_m.size(); ++column) {
      const std::size_t mirrored = x_m.size() - 1 - column;
      EXPECT_NEAR(x_m[column] + x_m[mirrored], 0.2, 1e-12);
      EXPECT_NEAR(result.field.at_crossing_C(column, row), result.field.at_crossing_C(mirrored, row), 1e-8);
    }
  }
}

TEST(SectionLaws, CouplingDoesNotMindTheTemperaturesNorWhichSideIsWarm) {
  Section section = symmetric_section();
  const SectionOptions heat_alone{.temperature_error_bound_K = 10.0};  // the same grids for both
  const double cold_outdoors = solve_section(section, heat_alone).coupling->value_W_mK;
  std::get<AirSide>(section.boundaries[0].condition).temperature_C = -7.0;
  std::get<AirSide>(section.boundaries[1].condition).temperature_C = 33.0;
  const auto hot_outdoors = solve_section(section, heat_alone);
  EXPECT_NEAR(hot_outdoors.coupling->value_W_mK, cold_outdoors, 1e-9);
  EXPECT_LT(hot_outdoors.heat.front().flow_W_m, 0.0);
}

TEST(SectionLaws, ThreeTemperaturesGiveHeatButNoCoupling) {
  Section section = symmetric_section();
  section.boundaries[2].edges = {EdgesOnX{0.0}};
  section.boundaries.push_back({"stair", AirSide{AirRole::room, 12.0, 0.13, {}}, {EdgesOnX{0.2}}});
  const auto result = solve_section(section);
  EXPECT_EQ(result.status, SectionStatus::converged);
  EXPECT_FALSE(result.coupling.has_value());
  EXPECT_FALSE(result.room_temperature_C.has_value());
  double sum_W_m = 0.0;
  for (const auto& heat : result.heat) {
    sum_W_m += heat.flow_W_m;
  }
  EXPECT_NEAR(sum_W_m, 0.0, 1e-9);
}

TEST(SectionLaws, StoppingEarlySaysSo) {
  const Section section = symmetric_section();
  const auto few_cells = solve_section(section, {.coupling_error_bound = 1e-8, .max_cells = 3000});
  EXPECT_EQ(few_cells.status, SectionStatus::cell_limit);
  EXPECT_GT(few_cells.coupling->error_bound_W_mK, 1e-8 * few_cells.coupling->value_W_mK);
  EXPECT_LE(few_cells.cells, 3000u);
  const auto few_passes = solve_section(section, {.coupling_error_bound = 1e-8, .max_passes = 2});
  EXPECT_EQ(few_passes.status, SectionStatus::pass_limit);
  EXPECT_EQ(few_passes.passes, 2);
}

}  // namespace
}  // namespace dewgap
