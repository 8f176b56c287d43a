// What a section must refuse, and what it says then.
#include <gtest/gtest.h>

#include <functional>
#include <string>

#include "dewgap/errors.hpp"
#include "dewgap/window/section.hpp"
#include "dewgap/window/section_readings.hpp"
#include "section_tables.hpp"
#include "support/not_a_number.hpp"

namespace dewgap {
namespace {

/// Two blocks side by side, 100 mm wide and 50 mm high.
Section two_blocks() {
  Section section;
  section.items = {{"left", SolidFill{1.0}, test::rectangle_mm(0, 60, 0, 50), {}},
                   {"right", SolidFill{2.0}, test::rectangle_mm(60, 100, 0, 50), {}}};
  section.boundaries = test::room_above(100, 50);
  return section;
}

struct BadSection {
  std::string name;
  std::function<void(Section&)> spoil;
  std::vector<std::string> says;
};

void PrintTo(const BadSection& bad, std::ostream* out) {
  *out << bad.name;
}

class SectionInput : public testing::TestWithParam<BadSection> {};

TEST_P(SectionInput, IsRefusedWithNamesAndPlace) {
  Section section = two_blocks();
  ASSERT_NO_THROW(solve_section(section));
  GetParam().spoil(section);
  try {
    solve_section(section);
    FAIL() << "accepted";
  } catch (const InvalidInput& error) {
    for (const auto& words : GetParam().says) {
      EXPECT_NE(std::string(error.what()).find(words), std::string::npos) << error.what();
    }
  }
}

AirSide& air(Section& section, std::size_t boundary) {
  return std::get<AirSide>(section.boundaries[boundary].condition);
}

INSTANTIATE_TEST_SUITE_P(
    Drawing, SectionInput,
    testing::Values(
        BadSection{"overlap",
                   [](Section& s) { s.items[1].polygon = test::rectangle_mm(55.5, 100, 0, 50); },
                   {"right", "left", "x 55.5 to 60, y 0 to 50 mm"}},
        BadSection{"hole",
                   [](Section& s) {
                     s.items[0].polygon = test::rectangle_mm(0, 40, 0, 50);
                     s.items.push_back({"low", SolidFill{1.0}, test::rectangle_mm(40, 60, 0, 10), {}});
                     s.items.push_back({"high", SolidFill{1.0}, test::rectangle_mm(40, 60, 40, 50), {}});
                   },
                   {"hole", "x 40 to 60, y 10 to 40 mm"}},
        BadSection{"neither_along_x_nor_y",
                   [](Section& s) { s.items[0].polygon[2].x_m = 0.055; },
                   {"left", "(60, 0) mm", "(55, 50) mm", "neither along x nor along y"}},
        BadSection{
            "crosses_itself",
            [](Section& s) { s.items[0].polygon = test::polygon_of("0 0 60 0 60 50 20 50 20 -10 0 -10"); },
            {"left", "crosses or touches itself", "(20, 50) mm"}},
        BadSection{"runs_back",
                   [](Section& s) { s.items[0].polygon = test::polygon_of("0 0 60 0 60 50 0 50 0 60 0 30"); },
                   {"left", "itself"}},
        BadSection{"three_points", [](Section& s) { s.items[0].polygon.pop_back(); }, {"left", "four"}},
        BadSection{"no_points", [](Section& s) { s.items[0].polygon.clear(); }, {"left", "four"}},
        BadSection{"no_width",
                   [](Section& s) { s.items[0].polygon = test::rectangle_mm(0, 0, 0, 50); },
                   {"left", "0.01 mm"}},
        BadSection{"sliver_of_an_item",
                   [](Section& s) { s.items[0].polygon = test::rectangle_mm(0, 60, 0, 0.009); },
                   {"left", "0.01 mm"}},
        BadSection{"sliver_between_items",
                   [](Section& s) { s.items[1].polygon = test::rectangle_mm(60.004, 100, 0, 50); },
                   {"right", "left", "x 60.004 mm", "0.004 mm", "60 mm"}},
        BadSection{"far_away", [](Section& s) { s.items[0].polygon[1].x_m = 101.0; }, {"left", "x_m", "100"}},
        BadSection{"not_a_number",
                   [](Section& s) { s.items[0].polygon[1].x_m = test::not_a_number; },
                   {"left", "x_m"}},
        BadSection{
            "wholly_replaced",
            [](Section& s) {
              s.items.push_back({"over", SolidFill{1.0}, test::rectangle_mm(60, 100, 0, 50), {"right"}});
            },
            {"right", "wholly replaced"}},
        BadSection{
            "cut_cavity",
            [](Section& s) {
              s.items[1].fill = CavityFill{};
              s.items.push_back({"bar", SolidFill{1.0}, test::rectangle_mm(60, 100, 20, 30), {"right"}});
            },
            {"right", "cut into parts"}},
        BadSection{"no_items", [](Section& s) { s.items.clear(); }, {"items"}}),
    [](const auto& given) { return given.param.name; });

INSTANTIATE_TEST_SUITE_P(
    Names, SectionInput,
    testing::Values(
        BadSection{"item_twice", [](Section& s) { s.items[1].name = "left"; }, {"left", "two items"}},
        BadSection{"item_without", [](Section& s) { s.items[1].name.clear(); }, {"none"}},
        BadSection{"replaces_a_later_one",
                   [](Section& s) { s.items[0].replaces = {"right"}; },
                   {"left", "right", "no earlier item"}},
        BadSection{
            "boundary_twice", [](Section& s) { s.boundaries[1].name = "room"; }, {"room", "two boundaries"}},
        BadSection{"boundary_without", [](Section& s) { s.boundaries[1].name.clear(); }, {"none"}},
        BadSection{
            "open_to_no_boundary", [](Section& s) { s.items[1].fill = OpenFill{"loft"}; }, {"right", "loft"}},
        BadSection{"open_to_a_cut_off",
                   [](Section& s) { s.items[1].fill = OpenFill{"sides"}; },
                   {"right", "sides", "cut-off"}}),
    [](const auto& given) { return given.param.name; });

INSTANTIATE_TEST_SUITE_P(
    Boundaries, SectionInput,
    testing::Values(
        BadSection{"edge_of_none",
                   [](Section& s) { s.boundaries[2].edges.pop_back(); },
                   {"none takes", "(100, 0) mm", "(100, 50) mm"}},
        BadSection{"edge_of_two",
                   [](Section& s) {
                     s.boundaries[0].edges.push_back(EdgesBetween{{0.0, 0.02}, {0.0, 0.05}});
                   },
                   {"room", "sides", "(0, 50) mm", "(0, 20) mm"}},
        BadSection{"no_edge_on_x",
                   [](Section& s) { s.boundaries[2].edges.push_back(EdgesOnX{0.03}); },
                   {"sides", "x 30 mm"}},
        BadSection{"no_edge_on_y",
                   [](Section& s) { s.boundaries[2].edges.push_back(EdgesOnY{0.03}); },
                   {"sides", "y 30 mm"}},
        BadSection{"no_edge_between",
                   [](Section& s) {
                     s.boundaries[2].edges.push_back(EdgesBetween{{0.0, 0.07}, {0.0, 0.09}});
                   },
                   {"sides", "(0, 70) mm"}},
        BadSection{"between_slanting",
                   [](Section& s) {
                     s.boundaries[2].edges.push_back(EdgesBetween{{0.0, 0.0}, {0.1, 0.05}});
                   },
                   {"sides", "neither"}},
        BadSection{"walk_from_inside",
                   [](Section& s) {
                     s.boundaries[2].edges.push_back(EdgesAlong{{0.01, 0.01}, {0.0, 0.05}});
                   },
                   {"sides", "(10, 10) mm", "not on the outline"}},
        BadSection{"walk_to_nowhere",
                   [](Section& s) {
                     s.boundaries[2].edges.push_back(EdgesAlong{{0.0, 0.05}, {0.2, 0.05}});
                   },
                   {"sides", "does not come to", "(200, 50) mm"}},
        BadSection{"end_too_near_a_line",
                   [](Section& s) {
                     s.boundaries[0].edges = {EdgesBetween{{0.0, 0.05}, {0.060004, 0.05}}};
                     s.boundaries[2].edges.push_back(EdgesBetween{{0.060004, 0.05}, {0.1, 0.05}});
                   },
                   {"0.004 mm", "permitted"}},
        BadSection{"warmed_by_nothing",
                   [](Section& s) {
                     s.items.push_back({"island", SolidFill{1.0}, test::rectangle_mm(200, 210, 0, 50), {}});
                     s.boundaries[2].edges.push_back(EdgesAlong{{0.2, 0.0}, {0.2, 0.0}});
                     s.boundaries[0].edges = {EdgesBetween{{0.0, 0.05}, {0.1, 0.05}}};
                     s.boundaries[1].edges = {EdgesBetween{{0.0, 0.0}, {0.1, 0.0}}};
                   },
                   {"island", "no air warms"}},
        BadSection{"unlimited_heat",
                   [](Section& s) {
                     air(s, 0).surface_resistance_m2K_W = 0.0;
                     s.boundaries[2].condition = AirSide{AirRole::outdoors, 5.0, 0.0, {}};
                   },
                   {"room", "sides", "no limit", "50) mm"}}),
    [](const auto& given) { return given.param.name; });

INSTANTIATE_TEST_SUITE_P(
    Values, SectionInput,
    testing::Values(
        BadSection{"conductivity_nought",
                   [](Section& s) { s.items[0].fill = SolidFill{0.0}; },
                   {"left", "conductivity_W_mK", "W/(m K)"}},
        BadSection{"conductivity_negative", [](Section& s) { s.items[0].fill = SolidFill{-1.0}; }, {"left"}},
        BadSection{"conductivity_nan",
                   [](Section& s) { s.items[0].fill = SolidFill{test::not_a_number}; },
                   {"left"}},
        BadSection{"emissivity",
                   [](Section& s) { s.items[0].fill = CavityFill{.emissivity_1 = 1.1}; },
                   {"left", "emissivity_1"}},
        BadSection{"other_emissivity",
                   [](Section& s) { s.items[0].fill = CavityFill{.emissivity_2 = 0.0}; },
                   {"left", "emissivity_2"}},
        BadSection{"conductance",
                   [](Section& s) { s.items[0].fill = GapFill{test::not_a_number}; },
                   {"left", "conductance_W_m2K"}},
        BadSection{
            "temperature", [](Section& s) { air(s, 0).temperature_C = 201.0; }, {"room", "temperature_C"}},
        BadSection{"resistance",
                   [](Section& s) { air(s, 1).surface_resistance_m2K_W = -0.04; },
                   {"outdoors", "surface_resistance_m2K_W"}},
        BadSection{"resistance_nan",
                   [](Section& s) { air(s, 1).surface_resistance_m2K_W = test::not_a_number; },
                   {"outdoors"}},
        BadSection{"corner_resistance",
                   [](Section& s) {
                     air(s, 0).corners = CornerFilm{-1.0, 0.03};
                   },
                   {"room", "corners.surface_resistance_m2K_W"}},
        BadSection{"corner_reach",
                   [](Section& s) {
                     air(s, 0).corners = CornerFilm{0.2, 0.0};
                   },
                   {"room", "corners.reach_m"}}),
    [](const auto& given) { return given.param.name; });

TEST(SectionRefusals, OptionsOutOfRangeAreRefused) {
  const Section section = two_blocks();
  for (const double bad : {0.0, 0.2, test::not_a_number}) {
    EXPECT_THROW(solve_section(section, {.coupling_error_bound = bad}), InvalidInput);
  }
  for (const double bad_K : {0.0, 11.0, test::not_a_number}) {
    EXPECT_THROW(solve_section(section, {.temperature_error_bound_K = bad_K}), InvalidInput);
  }
  EXPECT_THROW(solve_section(section, {.max_cells = 99}), InvalidInput);
  EXPECT_THROW(solve_section(section, {.max_passes = 1}), InvalidInput);
  EXPECT_THROW(solve_section(section, {.aim = SectionAim::temperatures_only}), InvalidInput);
  EXPECT_THROW(solve_section(section, {.watched = {{0.2, 0.0}}}), InvalidInput);
}

TEST(SectionRefusals, ReadingsRefuseUnknownNamesAndRanges) {
  const auto result = solve_section(two_blocks());
  EXPECT_THROW(profile_along(result, "loft"), InvalidInput);
  EXPECT_THROW(lowest_along_boundary(result, "loft"), InvalidInput);
  EXPECT_THROW(temperature_factor(result, "loft"), InvalidInput);
  EXPECT_THROW(lowest_on_item(result, "middle"), InvalidInput);
  EXPECT_FALSE(temperature_C_at(result, {0.2, 0.01}).has_value());
  for (const double bad : {-0.1, 2e3, test::not_a_number}) {
    EXPECT_THROW(frame_transmittance_W_m2K(bad, 0.1, {1.0, 0.2}), InvalidInput);
    EXPECT_THROW(frame_transmittance_W_m2K(0.3, bad, {1.0, 0.2}), InvalidInput);
    EXPECT_THROW(frame_transmittance_W_m2K(0.3, 0.1, {bad, 0.2}), InvalidInput);
    EXPECT_THROW(linear_transmittance_W_mK(bad, {1.0, 0.1}, {1.0, 0.2}), InvalidInput);
    EXPECT_THROW(linear_transmittance_W_mK(0.3, {1.0, bad}, {1.0, 0.2}), InvalidInput);
    EXPECT_THROW(linear_transmittance_W_mK(0.3, {1.0, 0.1}, {bad, 0.2}), InvalidInput);
  }
}

}  // namespace
}  // namespace dewgap
