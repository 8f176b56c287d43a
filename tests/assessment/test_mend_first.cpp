#include "dewgap/assessment/mend_first.hpp"

#include <gtest/gtest.h>

#include "assessment/survey_cases.hpp"

namespace dewgap::test {
namespace {

/// A window at which nothing has to be done first.
Survey sound_survey() {
  auto survey = worn_sash_survey();
  survey.timber = {};
  survey.window.catch_stands_out_m.reset();
  return survey;
}

std::vector<MendKind> added_kinds(const Survey& survey) {
  const auto before = mends_before_fitting(sound_survey()).size();
  const auto mends = mends_before_fitting(survey);
  EXPECT_EQ(mends.size(), mend_first(survey).size());
  std::vector<MendKind> kinds;
  for (std::size_t i = 0; i + before < mends.size(); ++i) {
    EXPECT_EQ(mends[i].say, mend_first(survey)[i]);
    kinds.push_back(mends[i].kind);
  }
  return kinds;
}

TEST(MendFirst, WaterThatNoTapeMendsIsTold) {
  auto survey = sound_survey();
  survey.timber.lets_rain_in = true;
  EXPECT_EQ(added_kinds(survey), std::vector{MendKind::water});
  survey.timber.bottom_rail = TimberFeel::wet_now;
  survey.timber.water_pools = true;  // the wet timber says it already
  EXPECT_EQ(added_kinds(survey), (std::vector{MendKind::water, MendKind::water}));
}

TEST(MendFirst, SoftTimberAndPoolsAreTheWindows) {
  auto survey = sound_survey();
  survey.timber.bottom_rail = TimberFeel::soft;
  survey.timber.water_pools = true;
  EXPECT_EQ(added_kinds(survey), (std::vector{MendKind::window, MendKind::window}));
}

TEST(MendFirst, ACatchThatStandsOutIsInTheWay) {
  auto survey = sound_survey();
  survey.sheet.cover = Cover::frame;
  survey.sheet.tape_thickness_m = 0.006;
  const auto before = mends_before_fitting(survey).size();
  survey.window.catch_stands_out_m = 0.015;
  const auto mends = mends_before_fitting(survey);
  ASSERT_EQ(mends.size(), before + 1);
  EXPECT_EQ(mends.front().kind, MendKind::obstacle);
  EXPECT_NE(mends.front().say.find("Catch stands 15.0 mm out, the sheet's back is at 6.0 mm"),
            std::string::npos)
      << mends.front().say;
}

TEST(MendFirst, NothingIsNothing) {
  for (const auto& mend : mends_before_fitting(sound_survey())) {
    EXPECT_EQ(mend.kind, MendKind::setting_out) << mend.say;
  }
}

}  // namespace
}  // namespace dewgap::test
