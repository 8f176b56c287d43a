#include "dewgap/assessment/cut_check.hpp"

#include <gtest/gtest.h>

#include <algorithm>

#include "assessment/survey_cases.hpp"
#include "dewgap/assessment/assess.hpp"
#include "dewgap/assessment/setting_out_kernel.hpp"

namespace dewgap::test {
namespace {

CutCheck check_of(const Survey& survey) {
  return cut_check(survey, plan_for(survey, window_model(survey)));
}

std::size_t told(const CutCheck& check, const std::string& part) {
  return static_cast<std::size_t>(
      std::count_if(check.against.begin(), check.against.end(),
                    [&](const Mend& mend) { return mend.say.find(part) != std::string::npos; }));
}

FitSeverity severity_of(const CutCheck& check, FitKind kind) {
  for (const auto& finding : check.findings) {
    if (finding.kind == kind) {
      return finding.severity;
    }
  }
  ADD_FAILURE() << "no finding of " << name_of(kind);
  return FitSeverity::fine;
}

TEST(CutCheck, WhatNobodyLookedAtStandsAgainstNothing) {
  const auto check = check_of(worn_sash_survey());
  EXPECT_TRUE(check.against.empty());
  for (const auto kind : {FitKind::catch_stands_out, FitKind::handle_stands_out, FitKind::stay_stands_out,
                          FitKind::shutter, FitKind::blind}) {
    EXPECT_EQ(severity_of(check, kind), FitSeverity::look) << name_of(kind);
  }
}

TEST(CutCheck, EachPartInTheWayIsAnObstacle) {
  const auto against = [](auto&& change) {
    auto survey = worn_sash_survey();
    survey.sheet.material = SheetKind::polycarbonate;  // which bears a dark blind right before it
    change(survey);
    return check_of(survey);
  };
  const HungPart near{HungPart::There::yes, 0.004};
  for (const auto& check : {against([](Survey& s) { s.window.catch_stands_out_m = 0.040; }),
                            against([](Survey& s) { s.window.handle_stands_out_m = 0.040; }),
                            against([](Survey& s) { s.window.stay_stands_out_m = 0.040; }),
                            against([&](Survey& s) { s.window.shutter = near; }),
                            against([&](Survey& s) { s.window.blind = near; })}) {
    ASSERT_EQ(check.against.size(), 1U);
    EXPECT_EQ(check.against.front().kind, MendKind::obstacle) << check.against.front().say;
  }
  auto survey = worn_sash_survey();
  survey.window.shutter.there = survey.window.blind.there = HungPart::There::no;
  survey.window.catch_stands_out_m = survey.window.handle_stands_out_m = survey.window.stay_stands_out_m = 0;
  const auto clear = check_of(survey);
  EXPECT_TRUE(clear.against.empty());
  EXPECT_EQ(severity_of(clear, FitKind::blind), FitSeverity::fine);
  EXPECT_EQ(severity_of(clear, FitKind::stay_stands_out), FitSeverity::fine);
}

TEST(CutCheck, SashesThatNoLongerPassStandAgainstIt) {
  auto survey = worn_sash_survey();
  survey.sheet.cover = Cover::sash;
  survey.window.pane_count = 2;
  survey.window.glass_width_m = 0.790;
  survey.window.glass_height_m = 0.590;
  EXPECT_EQ(severity_of(check_of(survey), FitKind::sashes_pass), FitSeverity::look);
  survey.window.between_sashes_m = 0.011;  // tape 6 mm, sheet 4 mm, 2 mm to pass
  EXPECT_EQ(told(check_of(survey), "no longer pass"), 1U);
  survey.window.between_sashes_m = 0.013;
  EXPECT_TRUE(check_of(survey).against.empty());
}

TEST(CutCheck, HowTheSashMovesIsTheFitChecks) {
  auto survey = worn_sash_survey();
  const auto way = [&] { return fit_check_input(survey, std::nullopt).opening_way; };
  EXPECT_EQ(way(), OpeningWay::slides_up_and_down);
  survey.window.moves = SashMoves::sideways;
  EXPECT_EQ(way(), OpeningWay::slides_sideways);
  survey.window.kind = WindowKind::casement;
  survey.window.moves = SashMoves::inwards;
  EXPECT_EQ(way(), OpeningWay::swings_inwards);
  survey.window.moves = SashMoves::outwards;
  EXPECT_EQ(way(), OpeningWay::swings_outwards);
  survey.window.moves.reset();
  EXPECT_EQ(way(), std::nullopt);
  survey.window.painted_shut = true;
  EXPECT_EQ(way(), OpeningWay::does_not_open);
}

TEST(CutCheck, SashesBesideEachOtherShareTheWidth) {
  auto survey = worn_sash_survey();
  survey.sheet.cover = Cover::sash;
  survey.window.pane_count = 2;
  survey.window.glass_width_m = 0.400;
  survey.window.glass_height_m = 1.250;
  EXPECT_FALSE(plan_for(survey, window_model(survey)).has_value()) << "two such panes above each other";
  survey.window.moves = SashMoves::sideways;
  const auto plan = plan_for(survey, window_model(survey));
  ASSERT_TRUE(plan.has_value());
  EXPECT_EQ(plan->sheet_count, 2);
  EXPECT_EQ(plan->height_mm, 1290);
  EXPECT_EQ(window_model(survey).meeting_rail_m, window_model(survey).height_m);
}

TEST(CutCheck, WhatThePlanTellsIsToldOnce) {
  auto survey = worn_sash_survey();
  survey.window.fixing_face_m = 0.012;
  EXPECT_EQ(check_of(survey).against.size(), 1U);
  EXPECT_EQ(told(check_of(survey), "too narrow"), 1U);
  survey = worn_sash_survey();
  survey.window.screw_depth_m = 0.008;
  EXPECT_EQ(check_of(survey).against.size(), 1U);
  EXPECT_EQ(told(check_of(survey), "15 mm"), 1U);
  survey = worn_sash_survey();
  survey.window.catch_stands_out_m = 0.040;
  EXPECT_EQ(check_of(survey).against.size(), 1U);
}

TEST(CutCheck, TheSuppliersSheetLimitsIt) {
  auto survey = worn_sash_survey();
  survey.sheet.stock = StockSize{1.25, 2.05};
  EXPECT_TRUE(check_of(survey).against.empty());
  survey.sheet.stock = StockSize{1.0, 1.2};
  EXPECT_EQ(told(check_of(survey), "larger than stock, 1000 mm x 1200 mm"), 1U);
}

TEST(CutCheck, WhatStandsAgainstItComesFirst) {
  auto survey = worn_sash_survey();
  survey.room.centre_mists = CentreMists::never;
  const auto as_it_is = assess(survey, quick_options());
  ASSERT_EQ(as_it_is.headline, Headline::fit);
  EXPECT_TRUE(may_be_cut(as_it_is));
  survey.window.handle_stands_out_m = 0.040;
  const auto answer = assess(survey, quick_options());
  EXPECT_EQ(answer.headline, Headline::fit_after);
  EXPECT_FALSE(may_be_cut(answer));
  EXPECT_EQ(answer.after, std::vector<std::string>{answer.figures->cut.against.front().say});
}

TEST(CutCheck, HoldHasNothingOfIt) {
  auto survey = worn_sash_survey();
  survey.settle_first.burning.reset();
  survey.window.handle_stands_out_m = 0.040;
  const auto answer = assess(survey, quick_options());
  EXPECT_FALSE(answer.figures.has_value());
  EXPECT_FALSE(may_be_cut(answer));
}

/// The ranges of the checks take every valid survey.
TEST(CutCheck, TakesTheEndsOfEveryRange) {
  for (const auto cover : {Cover::glass, Cover::sash, Cover::frame, Cover::reveal}) {
    for (const auto material : {SheetKind::acrylic, SheetKind::polycarbonate, SheetKind::petg,
                                SheetKind::glass, SheetKind::pet_film}) {
      for (const double side_m : {0.1, 4.0}) {
        for (const double end : {0.0, 1.0}) {
          auto survey = worn_sash_survey();
          survey.sheet.cover = cover;
          survey.sheet.material = material;
          survey.sheet.thickness_m = material == SheetKind::pet_film ? 1e-5 : 0.002 + end * 0.010;
          survey.sheet.tape_thickness_m = 0.0021 + end * 0.0079;
          survey.window.opening_widths_m.fill(side_m);
          survey.window.opening_heights_m.fill(side_m);
          survey.window.glass_to_fixing_face_m = {end * 0.24};
          survey.window.glass_thickness_m = 0.0015 + end * 0.0235;
          survey.window.fixing_face_m = 0.005 + end * 0.295;
          survey.window.screw_depth_m = end * 0.2;
          survey.window.blind = {HungPart::There::yes, -0.2 + end * 2.2};
          ASSERT_TRUE(problems(survey).empty()) << problems(survey).front().message;
          EXPECT_NO_THROW(check_of(survey)) << side_m << " " << end;
        }
      }
    }
  }
}

}  // namespace
}  // namespace dewgap::test
