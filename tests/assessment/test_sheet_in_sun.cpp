#include "dewgap/assessment/sheet_in_sun.hpp"

#include <gtest/gtest.h>

#include "assessment/survey_cases.hpp"
#include "dewgap/assessment/assess.hpp"

namespace dewgap::test {
namespace {

Survey sunny_survey(SheetKind material, HungPart blind) {
  auto survey = worn_sash_survey();
  survey.sheet.material = material;
  survey.window.blind = blind;
  survey.window.shutter.there = HungPart::There::no;
  return survey;
}

constexpr HungPart none{HungPart::There::no, std::nullopt};
constexpr HungPart near{HungPart::There::yes, 0.040};

TEST(SheetInSun, IsThatOfTheSunOnTheSheet) {
  const auto survey = sunny_survey(SheetKind::acrylic, none);
  const auto sun = sheet_in_sun(survey);
  // the survey's gap is 55 mm to the face and 6 mm of tape, the old glass 3 mm, the opening 1.401 m
  const auto bare = sun_on_sheet(
      {.sheet_thickness_m = 0.004, .glass_thickness_m = 0.003, .gap_m = 0.061, .height_m = 1.401});
  EXPECT_NEAR(sun.sheet_C, bare.sheet_C, 1e-9);
  EXPECT_EQ(sun.sheet_C, sun.without_blind_C);
  EXPECT_EQ(sun.limit_C, 70.0);
  EXPECT_NEAR(sun.margin_K, 70.0 - bare.sheet_C, 1e-9);
  EXPECT_EQ(sun.severity, FitSeverity::fine);
  EXPECT_EQ(sun.blind, BlindThere::no);
}

TEST(SheetInSun, ADarkBlindCountsWhereThereIsOne) {
  const auto sun = sheet_in_sun(sunny_survey(SheetKind::petg, near));
  EXPECT_EQ(sun.blind, BlindThere::yes);
  EXPECT_EQ(sun.sheet_C, sun.behind_dark_blind_C);
  EXPECT_GT(sun.sheet_C, sun.without_blind_C + 10.0);
  EXPECT_EQ(sun.severity, FitSeverity::blocks);
  EXPECT_NE(sun.sentence.find("behind a dark blind, it bears 55 C"), std::string::npos) << sun.sentence;
  EXPECT_EQ(sheet_in_sun(sunny_survey(SheetKind::petg, none)).severity, FitSeverity::fine);
}

TEST(SheetInSun, WhatNobodyLookedAtIsMindedAndRefusesNothing) {
  const auto sun = sheet_in_sun(sunny_survey(SheetKind::petg, {}));
  EXPECT_EQ(sun.blind, BlindThere::not_known);
  EXPECT_EQ(sun.sheet_C, sun.without_blind_C);
  EXPECT_EQ(sun.severity, FitSeverity::mind);
}

TEST(SheetInSun, AShutterCountsAsABlind) {
  auto survey = sunny_survey(SheetKind::petg, none);
  survey.window.shutter = near;
  EXPECT_EQ(sheet_in_sun(survey).sheet_C, sheet_in_sun(sunny_survey(SheetKind::petg, near)).sheet_C);
}

TEST(SheetInSun, TheGradeMovesTheLimit) {
  auto survey = sunny_survey(SheetKind::acrylic, near);
  const auto plain = sheet_in_sun(survey);
  survey.sheet.grade = SheetGrade::cast;
  EXPECT_NEAR(sheet_in_sun(survey).margin_K - plain.margin_K, 10.0, 1e-9);
}

TEST(SheetInSun, ASheetThatWouldSoftenIsNotCut) {
  auto survey = sunny_survey(SheetKind::petg, near);
  survey.room.centre_mists = CentreMists::never;
  const auto answer = assess(survey, quick_options());
  ASSERT_EQ(answer.headline, Headline::fit_after);
  EXPECT_FALSE(may_be_cut(answer));
  EXPECT_EQ(answer.after, std::vector<std::string>{answer.figures->cut.sun.sentence});
  survey.sheet.material = SheetKind::polycarbonate;
  EXPECT_TRUE(may_be_cut(assess(survey, quick_options())));
}

}  // namespace
}  // namespace dewgap::test
