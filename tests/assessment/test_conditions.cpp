#include <gtest/gtest.h>

#include <algorithm>

#include "assessment/survey_cases.hpp"
#include "dewgap/assessment/verdict_kernel.hpp"

namespace dewgap::test {
namespace {

TEST(Conditions, TimberOrRainThatNobodyLookedAtIsAskedForAndTheAnswerIsProvisional) {
  auto survey = worn_sash_survey();
  survey.timber = {.bottom_rail = TimberFeel::firm, .lets_rain_in = false, .water_pools = false};
  const auto asks = [&](const std::string& what) {
    const auto looks = assess(survey, quick_options()).figures->settle_first;
    return std::any_of(looks.begin(), looks.end(),
                       [&](const std::string& look) { return look.find(what) != std::string::npos; });
  };
  EXPECT_FALSE(asks("bottom rail"));
  EXPECT_FALSE(asks("let water in"));
  survey.timber.bottom_rail.reset();
  survey.timber.lets_rain_in.reset();
  EXPECT_TRUE(asks("bottom rail"));
  EXPECT_TRUE(asks("let water in"));
  EXPECT_TRUE(assess(survey, quick_options()).figures->provisional);
  survey.window.frame = FrameKind::steel;
  EXPECT_FALSE(asks("bottom rail"));
  EXPECT_TRUE(asks("let water in"));
}

TEST(Conditions, ACurtainMakesTheFacesBehindItDamper) {
  auto survey = worn_sash_survey();
  const auto open = assess(survey, quick_options()).figures->now_and_with;
  survey.sheet.curtain_gap_m = 0.08;
  const auto drawn = assess(survey, quick_options()).figures->now_and_with;
  EXPECT_GT(drawn.room_face_humidity_before.p50, open.room_face_humidity_before.p50);
  EXPECT_GT(drawn.room_face_humidity_after.p50, open.room_face_humidity_after.p50);
}

TEST(Conditions, ASheetWhoseOwnFaceIsWetWantsADrierRoomFirst) {
  WeightedRuns runs;
  runs.samples.resize(4);
  runs.weights.assign(4, 0.25);
  runs.figures.resize(4);
  const auto steps = [&](std::size_t wet) {
    for (std::size_t i = 0; i < runs.figures.size(); ++i) {
      runs.figures[i].options[0].month_room_side_humidity = i < wet ? 1.0 : 0.99;
    }
    return fit_after_mending(worn_sash_survey(), runs, VentOption::sealed);
  };
  const auto none = steps(0);
  EXPECT_EQ(steps(1).after, none.after) << "a quarter of the cases";
  ASSERT_EQ(steps(2).after.size(), none.after.size() + 1) << "half of the cases";
  EXPECT_EQ(steps(2).headline, Headline::fit_after);
  EXPECT_NE(steps(2).after.back().find("room side is wet"), std::string::npos);
}

}  // namespace
}  // namespace dewgap::test
