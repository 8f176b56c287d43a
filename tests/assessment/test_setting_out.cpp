// What is cut and fixed for each part of a window that a sheet may cover, and what has to come first.
#include "dewgap/assessment/setting_out_kernel.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <limits>

#include "assessment/survey_cases.hpp"
#include "dewgap/assessment/cautions_kernel.hpp"
#include "dewgap/assessment/verdict_kernel.hpp"

namespace dewgap::test {
namespace {

constexpr const char* measure_sashes = "Measure the glass of each sash: the sheet is cut from it.";
constexpr const char* narrow_face = "The face is too narrow to hold a screw: fix a batten first.";

std::optional<SheetPlan> plan_of(const Survey& survey) {
  return plan_for(survey, window_model(survey));
}

bool asks_for(const Survey& survey, const std::string& sentence) {
  const auto mend = mend_first(survey);
  return std::count(mend.begin(), mend.end(), sentence) == 1;
}

Survey survey_covering(Cover cover, WindowKind kind, int panes) {
  auto survey = worn_sash_survey();
  survey.sheet.cover = cover;
  survey.window.kind = kind;
  survey.window.pane_count = panes;
  survey.window.glass_width_m = 0.300;
  survey.window.glass_height_m = 0.400;
  return survey;
}

TEST(SettingOut, FrameTakesOneSheetFromTheOpening) {
  const auto plan = plan_of(survey_covering(Cover::frame, WindowKind::sliding_sash, 2));
  ASSERT_TRUE(plan);
  EXPECT_EQ(plan->width_mm, 942);
  EXPECT_EQ(plan->height_mm, 1442);
  EXPECT_EQ(plan->sheet_count, 1);
  EXPECT_EQ(plan->fixing, FixingKind::turn_clips);
}

TEST(SettingOut, GlassTakesASheetAPane) {
  auto survey = survey_covering(Cover::glass, WindowKind::casement, 6);
  const auto plan = plan_of(survey);
  ASSERT_TRUE(plan);
  EXPECT_EQ(plan->width_mm, 316);
  EXPECT_EQ(plan->height_mm, 416);
  EXPECT_EQ(plan->sheet_count, 6);
  EXPECT_EQ(plan->notes.back(), "Cut from one pane's glass: measure each pane that differs.");
  EXPECT_EQ(plan->fixing, FixingKind::tape_only);
  EXPECT_TRUE(mend_first(survey).empty());
  survey.window.fixing_face_m = 0.005;  // the frame's, not the glazing bar's
  EXPECT_EQ(plan_of(survey)->width_mm, 316);
  EXPECT_TRUE(mend_first(survey).empty());
  survey.window.glass_height_m.reset();
  EXPECT_FALSE(plan_of(survey));
  EXPECT_TRUE(asks_for(survey, "Measure the glass of a pane: the sheets are cut from it."));
}

TEST(SettingOut, SlidingSashesTakeASheetEach) {
  for (const int panes : {1, 2}) {
    const auto survey = survey_covering(Cover::sash, WindowKind::sliding_sash, panes);
    const auto plan = plan_of(survey);
    ASSERT_TRUE(plan);
    EXPECT_EQ(plan->width_mm, 340);
    EXPECT_EQ(plan->height_mm, 440);
    EXPECT_EQ(plan->sheet_count, 2);
    EXPECT_TRUE(mend_first(survey).empty());
  }
  const auto casement = plan_of(survey_covering(Cover::sash, WindowKind::casement, 1));
  ASSERT_TRUE(casement);
  EXPECT_EQ(casement->sheet_count, 1);
}

TEST(SettingOut, SashOfUnknownGlassHasNoPlan) {
  auto unmeasured = survey_covering(Cover::sash, WindowKind::sliding_sash, 2);
  unmeasured.window.glass_width_m.reset();
  auto whole_opening = survey_covering(Cover::sash, WindowKind::sliding_sash, 1);
  whole_opening.window.glass_height_m = 1.2;  // two such sashes don't fit in 1.4 m
  for (const auto& survey : {unmeasured, whole_opening, survey_covering(Cover::sash, WindowKind::casement, 2),
                             survey_covering(Cover::sash, WindowKind::sliding_sash, 4)}) {
    EXPECT_FALSE(plan_of(survey));
    EXPECT_TRUE(asks_for(survey, measure_sashes));
  }
}

TEST(SettingOut, RevealIsHeldByBeadsOnAnyFrame) {
  for (const auto frame : {FrameKind::softwood, FrameKind::steel}) {
    auto survey = survey_covering(Cover::reveal, WindowKind::casement, 1);
    survey.window.frame = frame;
    survey.window.fixing_face_m = 0.010;
    const auto plan = plan_of(survey);
    ASSERT_TRUE(plan);
    EXPECT_EQ(plan->fixing, FixingKind::beads);
    EXPECT_LT(plan->width_mm, 900);
    EXPECT_TRUE(mend_first(survey).empty());
  }
}

TEST(SettingOut, MetalAndPlasticFramesAreNotDrilled) {
  for (const auto frame : {FrameKind::steel, FrameKind::aluminium, FrameKind::pvc_u}) {
    auto survey = worn_sash_survey();
    survey.window.frame = frame;
    EXPECT_EQ(plan_of(survey)->fixing, FixingKind::tape_only);
    EXPECT_EQ(plan_of(survey)->pilot_depth_mm, 0.0);
  }
}

TEST(SettingOut, BattenComesFirstOnANarrowFaceOrShallowTimber) {
  auto survey = worn_sash_survey();
  survey.room.centre_mists = CentreMists::never;
  ASSERT_EQ(assess(survey, quick_options()).headline, Headline::fit);
  survey.window.fixing_face_m = 0.012;
  const auto answer = assess(survey, quick_options());
  EXPECT_EQ(answer.headline, Headline::fit_after);
  EXPECT_EQ(answer.after, std::vector<std::string>{narrow_face});
  ASSERT_TRUE(answer.figures->plan);
  EXPECT_TRUE(answer.figures->plan->batten_first);
  survey.window.fixing_face_m = 0.045;
  survey.window.screw_depth_m = 0.0;
  EXPECT_TRUE(asks_for(survey, "Under 15 mm of timber won't hold a screw: fix a batten first."));
}

TEST(SettingOut, NothingMeasuredGivesClipsAndNoDepth) {
  auto survey = worn_sash_survey();
  survey.window.fixing_face_m.reset();
  survey.window.screw_depth_m.reset();
  const auto plan = plan_of(survey);
  ASSERT_TRUE(plan);
  EXPECT_EQ(plan->fixing, FixingKind::turn_clips);
  EXPECT_EQ(plan->pilot_depth_mm, 0.0);
  EXPECT_TRUE(mend_first(survey).empty());
}

TEST(SettingOut, TapeIsBrokenAsTheVentOptionHasIt) {
  const auto survey = worn_sash_survey();
  const auto breaks_under = [&](VentOption vent) {
    return plan_for(survey, window_model(survey), vent).value().tape_breaks;
  };
  EXPECT_TRUE(breaks_under(VentOption::sealed).empty());
  EXPECT_EQ(breaks_under(VentOption::breaks_bottom).size(), 2u);
  EXPECT_EQ(breaks_under(VentOption::breaks_bottom_and_top).size(), 4u);
  const auto longer = breaks_under(VentOption::breaks_bottom_longer);
  ASSERT_EQ(longer.size(), 2u);
  EXPECT_NEAR(longer[0].to_mm - longer[0].from_mm, 100.0, 1e-9);
  EXPECT_EQ(longer[0].member, Member::bottom);
}

TEST(SettingOut, WhatIsRefusedComesFirst) {
  auto survey = worn_sash_survey();
  survey.sheet.material = SheetKind::glass;
  survey.window.frame = FrameKind::steel;
  EXPECT_TRUE(asks_for(survey, "Tape alone must not carry glass: take plastic, or stand it on a bead."));
  survey = worn_sash_survey();
  survey.window.fixing_face_m = 0.012;
  survey.window.screw_depth_m = 0.010;
  EXPECT_TRUE(asks_for(survey, narrow_face));
  EXPECT_TRUE(asks_for(survey, "Under 15 mm of timber won't hold a screw: fix a batten first."));
}

bool warns_of(const std::string& topic, const Survey& survey) {
  const auto all = cautions_for(survey);
  return std::any_of(all.begin(), all.end(), [&](const Caution& one) { return one.topic == topic; });
}

TEST(Cautions, OfBeadsGoOnlyWhereTheyHoldTheSheet) {
  for (const auto frame : {FrameKind::softwood, FrameKind::steel}) {
    auto survey = worn_sash_survey();
    survey.window.frame = frame;
    EXPECT_FALSE(warns_of("beads", survey));
    survey.sheet.cover = Cover::reveal;
    EXPECT_TRUE(warns_of("beads", survey));
    survey.sheet.material = SheetKind::pet_film;
    EXPECT_FALSE(warns_of("beads", survey));
  }
}

TEST(Cautions, OfTimberAndScrewsGoOnlyWhereSomethingIsScrewed) {
  const auto warns = [](const Survey& survey) { return warns_of("timber", survey); };
  auto survey = worn_sash_survey();
  EXPECT_TRUE(warns(survey));
  survey.window.frame = FrameKind::steel;
  EXPECT_FALSE(warns(survey));
  survey.sheet.cover = Cover::reveal;
  EXPECT_FALSE(warns(survey));
  survey = worn_sash_survey();
  survey.sheet.material = SheetKind::pet_film;
  EXPECT_FALSE(warns(survey));
  survey = worn_sash_survey();
  survey.sheet.cover = Cover::glass;
  EXPECT_FALSE(warns(survey));
}

TEST(SettingOut, EverySurveyedSizeCanBeSetOut) {
  for (const auto material : {SheetKind::acrylic, SheetKind::glass, SheetKind::pet_film}) {
    auto survey = survey_covering(Cover::glass, WindowKind::fixed_light, 1);
    survey.window.glass_width_m = 0.02;
    survey.window.glass_height_m = 0.05;
    survey.sheet.material = material;
    survey.sheet.thickness_m = material == SheetKind::pet_film ? 0.00001 : 0.012;
    survey.sheet.tape_width_m = 0.06;
    survey.sheet.tape_thickness_m = 0.0005;
    ASSERT_TRUE(problems(survey).empty());
    EXPECT_GT(plan_of(survey)->tape_length_m, 0.0);
  }
}

TEST(SheetThickness, OfRigidSheetsAndFilmsIsChecked) {
  const auto problem = [](SheetKind material, double thickness_m) {
    auto survey = worn_sash_survey();
    survey.sheet.material = material;
    survey.sheet.thickness_m = thickness_m;
    const auto found = problems(survey);
    const auto at = std::find_if(found.begin(), found.end(),
                                 [](const SurveyProblem& p) { return p.field == "sheet.thickness"; });
    return at == found.end() ? std::string() : at->message;
  };
  for (const auto rigid : {SheetKind::acrylic, SheetKind::polycarbonate, SheetKind::petg, SheetKind::glass}) {
    for (const double bad_m : {0.0005, 0.0019, 0.0121, std::numeric_limits<double>::quiet_NaN()}) {
      EXPECT_NE(problem(rigid, bad_m).find("2 to 12 mm"), std::string::npos) << bad_m;
    }
    EXPECT_EQ(problem(rigid, 0.002) + problem(rigid, 0.012), "");
  }
  for (const double bad_m : {0.000005, 0.0006, 0.004}) {
    EXPECT_NE(problem(SheetKind::pet_film, bad_m).find("0.01 to 0.5 mm"), std::string::npos) << bad_m;
  }
  EXPECT_EQ(problem(SheetKind::pet_film, 0.00001) + problem(SheetKind::pet_film, 0.0005), "");
}

}  // namespace
}  // namespace dewgap::test
