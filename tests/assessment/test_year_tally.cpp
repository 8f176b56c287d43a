#include <gtest/gtest.h>

#include "dewgap/assessment/year_tally_kernel.hpp"
#include "dewgap/energy/heat_saved.hpp"

namespace dewgap::test {
namespace {

SampleHour winter_hour() {
  SampleHour now;
  now.given.room_C = 20.0;
  now.given.outdoors.air_temperature_C = 0.0;
  now.given.room_vapour_Pa = 1000.0;
  now.heating = true;
  now.cold_half = true;
  return now;
}

HourState film_of(double pane_g_m2, double sheet_g_m2) {
  HourState state;
  state.face_C = {1.0, 2.0, 15.0, 17.0};
  state.pane_film_kg_m2 = 1e-3 * pane_g_m2;
  state.sheet_film_kg_m2 = 1e-3 * sheet_g_m2;
  return state;
}

void add(YearTally& tally, const SampleHour& now, const HourState& state, double through_before_m3_s = 0.0) {
  tally.add_with_sheet({now, now.given.room_vapour_Pa, through_before_m3_s}, state);
}

TEST(Spell, CountsPartsOfHoursAlongAStraightLine) {
  Spell wet(1.0);
  wet.step(0.0, 4.0, 1.0);  // above for three quarters
  wet.step(4.0, 0.5, 1.0);  // above for six sevenths
  wet.step(0.5, 0.9, 1.0);
  wet.step(0.9, 1.1, 1.0);  // a half
  EXPECT_NEAR(wet.total_h(), 0.75 + 6.0 / 7.0 + 0.5, 1e-12);
  EXPECT_NEAR(wet.longest_h(), 0.75 + 6.0 / 7.0, 1e-12);
}

TEST(Spell, AFilmThatDriesEarlyCountsUntilThen) {
  Spell wet(1.0);
  wet.step(2.0, 0.0, 0.5);
  EXPECT_NEAR(wet.total_h(), 0.25, 1e-12);
}

TEST(Spell, ExactlyAtTheThresholdIsNotAbove) {
  Spell wet(1.0);
  wet.step(1.0, 1.0, 1.0);
  EXPECT_DOUBLE_EQ(wet.total_h(), 0.0);
}

TEST(YearTally, TheWetterFaceCounts) {
  YearTally tally({});
  add(tally, winter_hour(), film_of(3.0, 12.0));
  add(tally, winter_hour(), film_of(20.0, 0.0));
  add(tally, winter_hour(), film_of(0.0, 0.0));
  const auto year = tally.year(0.0);
  EXPECT_FLOAT_EQ(year.peak_film_g_m2, 20.0F);
  EXPECT_NEAR(year.hours_wet, 11.0 / 12.0 + 1.0 + 19.0 / 20.0, 1e-6);
  EXPECT_EQ(year.band, YearBand::harmless_mist);
}

TEST(YearTally, AFilmThatDriesEarlyCountsUntilItIsGone) {
  YearTally tally({});
  add(tally, winter_hour(), film_of(2.0, 0.0));
  auto dried = film_of(0.0, 0.0);
  dried.pane_drying_part = 0.5;
  add(tally, winter_hour(), dried);
  EXPECT_NEAR(tally.year(0.0).hours_wet, 0.5 + 0.25, 1e-6);
}

TEST(YearTally, FrostCountsAsWaterOnceItMelts) {
  YearTally tally({});
  auto frozen = film_of(60.0, 0.0);
  frozen.face_C[1] = -2.0;
  frozen.frost_kg_m2 = 0.060;
  add(tally, winter_hour(), frozen);
  EXPECT_FLOAT_EQ(tally.year(0.0).peak_film_g_m2, 0.0F);
  EXPECT_GT(tally.year(0.0).frost_hours, 0.9F);
  add(tally, winter_hour(), film_of(55.0, 0.0));
  EXPECT_FLOAT_EQ(tally.year(0.0).peak_film_g_m2, 55.0F);
}

TEST(YearTally, MorningsCountAtEight) {
  YearTally tally({});
  auto now = winter_hour();
  for (std::size_t hour = 0; hour < 48; ++hour) {
    now.hour_of_day = hour % 24;
    const bool misty = hour == 7 || hour == 30;  // ends at 8 on the first day, at 7 on the second
    add(tally, now, film_of(misty ? 5.0 : 0.0, 0.0));
  }
  EXPECT_FLOAT_EQ(tally.year(0.0).misty_mornings, 1.0F);
}

TEST(YearTally, WipedFilmAndPoolEndTheirRuns) {
  YearTally tally({});
  auto wet = film_of(40.0, 0.0);
  wet.pool_kg_m2 = 0.2;
  for (int hour = 0; hour < 10; ++hour) {
    add(tally, winter_hour(), wet);
  }
  EXPECT_TRUE(tally.year(0.0).wet_after_summer);
  EXPECT_EQ(tally.year(0.0).band, YearBand::damages);
  tally.wipe();
  EXPECT_FALSE(tally.year(0.0).wet_after_summer);
  add(tally, winter_hour(), wet);
  EXPECT_NEAR(tally.year(0.0).longest_pool_run_h, 10.0, 0.05);
}

TEST(YearTally, TimberIsJudgedBesideTheOldWindows) {
  YearTally tally({.start_timber_kg_kg = 0.22});
  auto damp = film_of(0.0, 0.0);
  damp.timber_kg_kg = 0.25;
  for (int hour = 0; hour < 40 * 24; ++hour) {
    add(tally, winter_hour(), damp);
  }
  EXPECT_EQ(tally.year(0.0).band, YearBand::damages);
  EXPECT_EQ(tally.year(40.0 * 24.0).band, YearBand::dry);
  EXPECT_FLOAT_EQ(tally.year(0.0).longest_timber_run_h, 960.0F);
}

TEST(YearTally, HeatTakesStoppedDraughtButWhatVentilationNeeds) {
  YearTally tally({.draught_needed = 0.25, .heated_share = 0.5});
  auto state = film_of(0.0, 0.0);
  state.heat_W = 40.0;
  state.through_air_m3_s = 1.0 / 3600.0;
  add(tally, winter_hour(), state, 9.0 / 3600.0);
  // 0.75 x 1 + 0.25 x 9 = 3 m3/h over 20 K.
  const double air_W = 3.0 * air_heat_Wh_m3K * 20.0;
  EXPECT_NEAR(tally.year(0.0).heat_kWh, 0.5 * (40.0 + air_W) / 1000.0, 2e-4);
  auto summer = winter_hour();
  summer.heating = false;
  add(tally, summer, state, 9.0 / 3600.0);
  EXPECT_NEAR(tally.year(0.0).heat_kWh, 0.5 * (40.0 + air_W) / 1000.0, 2e-4);
}

TEST(YearTally, WayCountsClearHoursOfTheColdHalfOnly) {
  YearTally tally({});
  auto state = film_of(0.0, 0.0);
  state.from_room_m3_s = 3e-5;
  state.from_outdoors_m3_s = 1e-5;
  auto now = winter_hour();
  for (const double net : {2.5e-5, 2.5e-5, -2.5e-5, 1e-6}) {
    state.net_outwards_m3_s = net;
    add(tally, now, state);
  }
  now.cold_half = false;
  state.net_outwards_m3_s = -4e-5;
  add(tally, now, state);
  EXPECT_NEAR(tally.year(0.0).outwards_share, 2.0 / 3.0, 1e-6);
  EXPECT_NEAR(tally.year(0.0).inwards_share, 1.0 / 3.0, 1e-6);
}

TEST(YearTally, MouldIsTheDampestMonthAtTheEdgeOfTheRoomFace) {
  YearTally tally({.edge_factor = 0.9});
  auto now = winter_hour();
  add(tally, now, film_of(0.0, 0.0));
  now.month = 1;
  auto colder = film_of(0.0, 0.0);
  colder.face_C[3] = 10.0;
  add(tally, now, colder);
  EXPECT_NEAR(tally.year(0.0).room_face_peak_month_humidity, surface_relative_humidity(1000.0, 9.0), 1e-6);
}

TEST(YearTally, ASolvedSpotOfTheRoomSideStandsForTheEdgeWithAndWithoutTheSheet) {
  YearTally tally({.edge_factor = 0.9, .room_factors = TallyTerms::RoomFactors{0.07, 0.45}});
  add(tally, winter_hour(), film_of(0.0, 0.0));
  EXPECT_NEAR(tally.year(0.0).room_face_peak_month_humidity, surface_relative_humidity(1000.0, 9.0), 1e-6);
  auto later = winter_hour();
  later.month = 1;
  tally.add_without_sheet({later, 1000.0, 0.0}, film_of(0.0, 0.0), 0.0);  // 0.07 of 20 K over 0 C
  EXPECT_NEAR(tally.year(0.0).room_face_peak_month_humidity, surface_relative_humidity(1000.0, 1.4), 1e-6);
}

TEST(YearTally, AnHourThatDidNotSettleIsCountedAndLeftOut) {
  YearTally tally({});
  auto state = film_of(90.0, 0.0);
  state.status = SolveStatus::iteration_limit;
  add(tally, winter_hour(), state);
  EXPECT_FLOAT_EQ(tally.year(0.0).unsettled_hours, 1.0F);
  EXPECT_FLOAT_EQ(tally.year(0.0).peak_film_g_m2, 0.0F);
}

}  // namespace
}  // namespace dewgap::test
