// Which way the air goes, from the years of the plausible cases.
#include <gtest/gtest.h>

#include "assessment/survey_cases.hpp"
#include "dewgap/assessment/vent_words_kernel.hpp"
#include "dewgap/assessment/verdict_kernel.hpp"

namespace dewgap::test {
namespace {

constexpr double litre_an_hour = 1.0 / 3.6e6;

/// A case whose sealed gap has these flows, l/h.
SampleYear year_with(double from_room, double from_outdoors, double to_outdoors) {
  SampleYear year;
  auto& sealed = year.options.at(place_of(VentOption::sealed));
  sealed.cold_from_room_m3_s = static_cast<float>(litre_an_hour * from_room);
  sealed.cold_from_outdoors_m3_s = static_cast<float>(litre_an_hour * from_outdoors);
  sealed.cold_to_outdoors_m3_s = static_cast<float>(litre_an_hour * to_outdoors);
  return year;
}

AirWay way_of_one(double from_room, double from_outdoors, double to_outdoors) {
  return years_air(
             {.cases = {0}, .years = {year_with(from_room, from_outdoors, to_outdoors)}, .counts = {1.0}},
             VentOption::sealed)
      .way;
}

TEST(VentWay, FollowsTheMeanFlowsOfACase) {
  EXPECT_EQ(way_of_one(0.3, 0.3, 0.3), AirWay::still);
  EXPECT_EQ(way_of_one(95.0, 5.0, 90.0), AirWay::outwards);
  EXPECT_EQ(way_of_one(95.0, 5.0, 5.0), AirWay::room_side);
  EXPECT_EQ(way_of_one(5.0, 95.0, 10.0), AirWay::inwards);
  EXPECT_EQ(way_of_one(50.0, 50.0, 50.0), AirWay::both_ways);
}

TEST(VentWay, IsThatOfMostCasesAsTheyCount) {
  const VentRuns runs{
      .cases = {0, 1, 2},
      .years = {year_with(95.0, 5.0, 90.0), year_with(50.0, 50.0, 50.0), year_with(2.0, 98.0, 0.0)},
      .counts = {3.0, 1.0, 1.0}};
  const auto air = years_air(runs, VentOption::sealed);
  EXPECT_EQ(air.way, AirWay::outwards);
  EXPECT_DOUBLE_EQ(air.share, 0.6);
  EXPECT_NE(air.reason.find("drawn out"), std::string::npos);
  EXPECT_NEAR(air.from_room_m3_s.greatest / litre_an_hour, 95.0, 1e-3);
  EXPECT_NEAR(air.from_outdoors_m3_s.greatest / litre_an_hour, 98.0, 1e-3);
}

YearsAir air_at(double pressure_Pa) {
  auto survey = worn_sash_survey();
  survey.expert.mean_pressure_Pa = pressure_Pa;
  return vent_advice(
             survey, std::nullopt, {},
             {.prior_samples = 256, .most_window_hours = 10'000, .samples = 8, .inverse_answers = false})
      .air;
}

/// A window that an expert's pressure sucks outdoor air into, and one that it blows room air out of.
TEST(VentWay, FollowsThePressureAcrossTheWindow) {
  const auto sucks = air_at(-6.0);
  EXPECT_EQ(sucks.way, AirWay::inwards);
  EXPECT_GT(sucks.share, 0.5);
  EXPECT_NE(sucks.reason.find("utdoor air"), std::string::npos) << sucks.reason;
  const auto blows = air_at(6.0);
  EXPECT_NE(blows.way, AirWay::inwards);
  EXPECT_LT(blows.from_outdoors_m3_s.p50, sucks.from_outdoors_m3_s.p50);
}

}  // namespace
}  // namespace dewgap::test
