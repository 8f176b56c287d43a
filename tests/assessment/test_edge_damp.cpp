// How damp the edge gets, and what the verdict makes of it.
#include <gtest/gtest.h>

#include <algorithm>

#include "dewgap/assessment/edge_of_window_kernel.hpp"
#include "dewgap/assessment/sample_run_kernel.hpp"
#include "edge_cases.hpp"

namespace dewgap {
namespace {

using test::drawn_sash;
using test::drawn_steel;
using test::middle_of;
using test::quick_options;

TEST(EdgeDamp, TheHumidityForMouldIsThatAtWhichTheSpotHas80PerCent) {
  const auto answer = assess(drawn_sash(), quick_options());
  const EdgeAnswer& edge = answer.figures->edge.value();
  EXPECT_NEAR(edge.mould_from_humidity.p50, 0.8 * edge.wet_from_humidity.p50, 1e-12);
  EXPECT_GT(edge.face_humidity.p50, 0.0);
  // A better spot allows a damper room.
  Survey steel = drawn_steel();
  const auto worse = assess(steel, quick_options()).figures->edge.value();
  EXPECT_LT(worse.room_factor.middle, edge.room_factor.middle);
  EXPECT_LT(worse.mould_from_humidity.p50, edge.mould_from_humidity.p50);
}

TEST(EdgeDamp, AWetEdgeIsToBeDriedFirstAlthoughTheSheetIsDry) {
  Survey survey = drawn_steel();
  survey.timber = {};
  const Setting setting = setting_for(survey);
  const auto sample = middle_of(setting);
  const auto figures = run_sample(setting, sample).options[index_of(VentOption::sealed)];
  const Moment month = month_moment(setting, sample, figures.excess_factor);
  EXPECT_GT(figures.month_room_side_humidity, figures.month_room_face_humidity) << "bare steel is colder";
  EXPECT_DOUBLE_EQ(figures.month_room_side_humidity, edge_spot_humidity(setting, month).value());
  Survey without = survey;
  without.edge = {};
  const auto plain = run_sample(setting_for(without), sample).options[index_of(VentOption::sealed)];
  EXPECT_DOUBLE_EQ(plain.month_room_side_humidity, plain.month_room_face_humidity);
  const auto is_told = [](const Assessment& answer) {
    return std::any_of(answer.after.begin(), answer.after.end(),
                       [](const auto& line) { return line.find("or the edge beside it") != line.npos; });
  };
  // A room of 55 %: its dew point lies over the bare steel and under the sheet's face.
  survey.expert.room_relative_humidity = 0.55;
  const auto answer = assess(survey, quick_options());
  ASSERT_LT(answer.figures->now_and_with.room_face_humidity_after.p90, 1.0);
  ASSERT_GT(answer.figures->edge->face_humidity.p10, 1.0);
  EXPECT_TRUE(answer.headline == Headline::leave || is_told(answer)) << answer.because;
}

}  // namespace
}  // namespace dewgap
