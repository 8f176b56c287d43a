#include "dewgap/window/ready_sections.hpp"

#include <gtest/gtest.h>

#include <functional>
#include <set>

#include "ready_samples.hpp"
#include "support/not_a_number.hpp"

namespace dewgap {
namespace {

const SectionOptions quick{.coupling_error_bound = 5e-3, .temperature_error_bound_K = 0.3};

double area_m2(const std::vector<SectionPoint>& polygon) {
  double twice = 0.0;
  for (std::size_t i = 0; i < polygon.size(); ++i) {
    const auto& next = polygon[(i + 1) % polygon.size()];
    twice += polygon[i].x_m * next.y_m - next.x_m * polygon[i].y_m;
  }
  return 0.5 * std::abs(twice);
}

std::set<std::string> names_of(const Section& section) {
  std::set<std::string> names;
  for (const auto& item : section.items) {
    names.insert(item.name);
  }
  return names;
}

const SectionItem& item_named(const Section& section, const std::string& name) {
  for (const auto& item : section.items) {
    if (item.name == name) {
      return item;
    }
  }
  throw std::runtime_error("no item " + name);
}

void expect_solved(const SectionResult& result, const std::string& name) {
  EXPECT_EQ(result.status, SectionStatus::converged) << name << ": " << explain(result.status);
  EXPECT_TRUE(result.coupling && result.coupling->value_W_mK > 0.0) << name;
  EXPECT_LT(result.heat_imbalance, 1e-9) << name;
}

TEST(ReadySections, EveryFamilyBuildsAndSolvesWithEveryFilling) {
  for (auto [name, ready] : test::usual_sections()) {
    for (const auto filling : {ReadyFilling::old_glass, ReadyFilling::glass_and_sheet, ReadyFilling::panel}) {
      expect_solved(solve_section(section_of(ready, filling), quick), name);
    }
    for (const double slit_m : {0.002, 0.006, 0.015}) {  // still, slightly ventilated, the room's own air
      ready.sheet->cut = TapeCut::vent_break;
      ready.sheet->tape_thickness_m = slit_m;
      expect_solved(solve_section(section_of(ready, ReadyFilling::glass_and_sheet), quick), name);
    }
  }
}

TEST(ReadySections, RandomPermittedSizesBuildConvergeAndBalance) {
  test::RandomReadySections random(20'26);
  constexpr int count = 200;
  std::set<std::size_t> members;
  std::set<std::size_t> places;
  for (int k = 0; k < count; ++k) {
    const ReadySection ready = random.next();
    members.insert(ready.member.index());
    places.insert(ready.sheet->place.index());
    const std::string name = "section " + std::to_string(k);
    ASSERT_NO_THROW(
        expect_solved(solve_section(section_of(ready, ReadyFilling::glass_and_sheet), quick), name))
        << name;
    ASSERT_NO_THROW(expect_solved(solve_section(section_of(ready, ReadyFilling::panel), quick), name))
        << name;
  }
  EXPECT_EQ(members.size(), 3u);
  EXPECT_EQ(places.size(), 3u);
  EXPECT_LT(random.tries, 100 * count) << "hardly any sizes agree with each other";
}

TEST(ReadySections, NamesAreThoseOfTheTrade) {
  const ReadySection ready{
      .member = SashInFrame{}, .reveal = MasonryReveal{}, .sheet = test::usual_sheet(OnBatten{})};
  EXPECT_EQ(
      names_of(section_of(ready, ReadyFilling::glass_and_sheet)),
      (std::set<std::string>{"masonry", "plaster", "frame", "bottom rail", "putty", "joint", "old glass",
                             "batten", "tape", "gap below the sight line", "gap", "sheet"}));
  EXPECT_EQ(names_of(section_of(ready, ReadyFilling::panel)),
            (std::set<std::string>{"frame", "bottom rail", "putty", "joint", "panel"}));
}

TEST(ReadySections, DrawsTheSizesGiven) {
  const TimberSash sash;
  const ReadySection ready{.member = sash, .sheet = test::usual_sheet()};
  const Section section = section_of(ready, ReadyFilling::glass_and_sheet);
  const double before_glass_m = sash.depth_m - sash.glass_to_room_face_m - ready.glass.thickness_m;
  // The slope's triangle over the bed, and the bed from the putty's foot to the glass's room face.
  EXPECT_NEAR(area_m2(item_named(section, "putty").polygon),
              0.5 * before_glass_m * (sash.rebate_m - sash.bedding_m) +
                  (before_glass_m + ready.glass.thickness_m) * sash.bedding_m,
              1e-12);
  EXPECT_NEAR(area_m2(item_named(section, "tape").polygon), 0.006 * 0.012, 1e-12);
  EXPECT_NEAR(area_m2(item_named(section, "gap").polygon), 0.190 * (0.018 + 0.006), 1e-12);
  // Under the sight line the gap is as wide as the tape, from the tape up.
  EXPECT_NEAR(area_m2(item_named(section, "gap below the sight line").polygon), 0.006 * (0.020 - 0.012),
              1e-12);
  EXPECT_NEAR(area_m2(item_named(section, "sheet").polygon), 0.004 * (0.190 + 0.020), 1e-12);
  EXPECT_NEAR(frame_length_m(ready), 0.070, 1e-12);
  EXPECT_NEAR(frame_length_m({.member = SashInFrame{}}), 0.055 + 0.003 + 0.070, 1e-12);
  EXPECT_NEAR(frame_length_m({.member = SteelCasement{}}), 0.010 + 0.003 + 0.020, 1e-12);
}

struct BadReady {
  std::string name;
  std::function<void(ReadySection&)> spoil;
  std::string says;
};
void PrintTo(const BadReady& bad, std::ostream* out) {
  *out << bad.name;
}

class ReadyInput : public testing::TestWithParam<BadReady> {};

TEST_P(ReadyInput, IsRefusedWithItsField) {
  ReadySection ready{
      .member = SashInFrame{}, .reveal = MasonryReveal{}, .sheet = test::usual_sheet(OnFrame{})};
  ASSERT_NO_THROW(section_of(ready, ReadyFilling::glass_and_sheet));
  GetParam().spoil(ready);
  try {
    section_of(ready, ReadyFilling::glass_and_sheet);
    FAIL() << "accepted";
  } catch (const InvalidInput& error) {
    EXPECT_NE(std::string(error.what()).find(GetParam().says), std::string::npos) << error.what();
  }
}

SashInFrame& window(ReadySection& ready) {
  return std::get<SashInFrame>(ready.member);
}

INSTANTIATE_TEST_SUITE_P(
    Timber, ReadyInput,
    testing::Values(
        BadReady{"glass_of_no_thickness", [](auto& r) { r.glass.thickness_m = 0.0; }, "glass.thickness_m"},
        BadReady{"glass_not_a_number", [](auto& r) { r.glass.thickness_m = test::not_a_number; },
                 "glass.thickness_m"},
        BadReady{"glass_too_short", [](auto& r) { r.glass.visible_m = 0.1; }, "glass.visible_m"},
        BadReady{"sash_of_no_depth", [](auto& r) { window(r).sash.depth_m = 0.0; }, "sash.depth_m"},
        BadReady{"no_room_for_putty", [](auto& r) { window(r).sash.depth_m = 0.022; }, "putty"},
        BadReady{"rebate_above_rail",
                 [](auto& r) {
                   window(r).sash.face_m = 0.020;
                   window(r).sash.rebate_m = 0.020;
                 },
                 "sash.rebate_m"},
        BadReady{"bed_lifts_glass",
                 [](auto& r) {
                   window(r).sash.bedding_m = 0.005;
                   window(r).sash.rebate_m = 0.005;
                 },
                 "sash.bedding_m"},
        BadReady{"negative_joint", [](auto& r) { window(r).joint_m = -0.001; }, "joint_m"},
        BadReady{"hair_of_a_stop", [](auto& r) { window(r).set_back_m = 1e-4; }, "set_back_m"},
        BadReady{"stop_below_joint", [](auto& r) { window(r).stop_height_m = 0.003; }, "stop_height_m"},
        BadReady{"set_back_deeper_than_frame",
                 [](auto& r) {
                   window(r).frame_depth_m = 0.030;
                   window(r).set_back_m = 0.030;
                 },
                 "set_back_m"},
        BadReady{"stop_over_the_sash",
                 [](auto& r) {
                   window(r).sash.face_m = 0.020;
                   window(r).stop_height_m = 0.025;
                 },
                 "stop_height_m"}),
    [](const auto& tested) { return tested.param.name; });

INSTANTIATE_TEST_SUITE_P(
    SheetAndReveal, ReadyInput,
    testing::Values(
        BadReady{"no_sheet", [](auto& r) { r.sheet.reset(); }, "sheet"},
        BadReady{"no_conductance", [](auto& r) { r.sheet->gap_conductance_W_m2K = 0.0; },
                 "gap_conductance_W_m2K"},
        BadReady{"sheet_of_no_thickness", [](auto& r) { r.sheet->thickness_m = 0.0; }, "sheet.thickness_m"},
        BadReady{"tape_of_no_thickness", [](auto& r) { r.sheet->tape_thickness_m = 0.0; },
                 "tape_thickness_m"},
        BadReady{"tape_wider_than_overlap", [](auto& r) { r.sheet->tape_width_m = 0.021; }, "tape_width_m"},
        BadReady{"overlap_beyond_the_face",
                 [](auto& r) {
                   window(r).frame_face_m = 0.030;
                   r.sheet->overlap_m = 0.045;
                 },
                 "overlap_m"},
        BadReady{"sash_has_no_frame", [](auto& r) { r.member = TimberSash{}; }, "frame"},
        BadReady{"batten_without_reveal",
                 [](auto& r) {
                   r.sheet->place = OnBatten{};
                   r.reveal.reset();
                 },
                 "reveal"},
        BadReady{"batten_in_the_member",
                 [](auto& r) { r.sheet->place = OnBatten{.glass_to_fixing_face_m = 0.045}; }, "member"},
        BadReady{"batten_beyond_the_reveal",
                 [](auto& r) { r.sheet->place = OnBatten{.glass_to_fixing_face_m = 0.200}; }, "beyond"},
        BadReady{"batten_over_the_glass",
                 [](auto& r) {
                   r.sheet->place = OnBatten{.width_m = 0.100};
                   window(r).frame_face_m = 0.020;
                   window(r).sash.face_m = 0.060;
                 },
                 "batten.width_m"},
        BadReady{"reveal_not_a_number", [](auto& r) { r.reveal->inner_m = test::not_a_number; },
                 "reveal.inner_m"}),
    [](const auto& tested) { return tested.param.name; });

INSTANTIATE_TEST_SUITE_P(
    Steel, ReadyInput,
    testing::Values(
        BadReady{"no_sub_frame", [](auto& r) { r.member = SteelCasement{}; }, "frame"},
        BadReady{"steel_of_no_thickness", [](auto& r) { r.member = SteelCasement{.thickness_m = 0.0}; },
                 "steel.thickness_m"},
        BadReady{"steel_without_putty",
                 [](auto& r) {
                   r.member = SteelCasement{.depth_m = 0.015, .thickness_m = 0.006};
                   r.glass.thickness_m = 0.008;
                 },
                 "putty"},
        BadReady{"sub_frame_too_shallow",
                 [](auto& r) { r.member = SteelCasement{.sub_frame = TimberSubFrame{.depth_m = 0.040}}; },
                 "sub_frame.depth_m"},
        BadReady{"leg_longer_than_sub_frame",
                 [](auto& r) {
                   r.member =
                       SteelCasement{.lower_leg_m = 0.020, .sub_frame = TimberSubFrame{.face_m = 0.020}};
                 },
                 "sub_frame.face_m"}),
    [](const auto& tested) { return tested.param.name; });

}  // namespace
}  // namespace dewgap
