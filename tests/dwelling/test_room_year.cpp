#include "dewgap/dwelling/room_year.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>
#include <numeric>

#include "dewgap/air/constants.hpp"
#include "dewgap/air/saturation.hpp"
#include "dewgap/dwelling/room_humidity.hpp"
#include "dewgap/errors.hpp"
#include "support/not_a_number.hpp"

namespace dewgap {
namespace {

constexpr std::size_t year_h = 8760;
// Saturation is read from a table that meets the formula within 1e-8.
constexpr double table_share = 1e-8;

struct Outdoors {
  std::vector<double> temperature_C;
  std::vector<double> vapour_Pa;
};

Outdoors outdoors() {
  Outdoors year;
  for (std::size_t hour = 0; hour < year_h; ++hour) {
    const double season = std::cos(2.0 * std::numbers::pi * (static_cast<double>(hour) / year_h - 0.05));
    const double day = std::cos(2.0 * std::numbers::pi * static_cast<double>(hour % 24) / 24.0);
    year.temperature_C.push_back(9.0 - 8.0 * season - 3.0 * day);
    year.vapour_Pa.push_back(0.8 * saturation_pressure_Pa(9.0 - 8.0 * season));
  }
  return year;
}

const Outdoors& mild() {
  static const Outdoors year = outdoors();
  return year;
}

const std::vector<double> room_at_20{20.0};

RoomYearInput input_of(const Outdoors& year) {
  return {.outdoor_temperature_C = year.temperature_C,
          .outdoor_vapour_Pa = year.vapour_Pa,
          .room_temperature_C = room_at_20};
}

double mean_of(const std::vector<double>& values) {
  return std::accumulate(values.begin(), values.end(), 0.0) / static_cast<double>(values.size());
}

double room_saturation_Pa(double room_C) {
  return saturation_pressure_Pa(room_C, SaturationFormula::murphy_koop, Phase::water);
}

ProductionAndAiring lived_in() {
  ProductionAndAiring model{.room_volume_m3 = 40.0, .buffering_m3 = 200.0};
  model.production_kg_h.fill(0.05);
  model.production_kg_h[7] = 0.6;
  model.airing_m3_h.fill(20.0);
  model.airing_m3_h[8] = 90.0;
  return model;
}

TEST(RunningMean, FollowsItsRecursionClosedOnItself) {
  for (const double time_constant_h : {1.0, 24.0, 168.0, 8760.0, 87600.0}) {
    const auto means = running_mean(mild().temperature_C, time_constant_h);
    const double kept = std::exp(-1.0 / time_constant_h);
    double before = means.back();
    for (std::size_t hour = 0; hour < year_h; ++hour) {
      const double expected = kept * before + (1.0 - kept) * mild().temperature_C[hour];
      ASSERT_NEAR(means[hour], expected, 1e-11) << time_constant_h << " " << hour;
      before = means[hour];
    }
    EXPECT_NEAR(mean_of(means), mean_of(mild().temperature_C), 1e-9);
  }
}

TEST(RunningMean, OfAWaveIsTheWaveDampedAndLate) {
  // y = (1 - a) / (1 - a e^(-iw)) x for a wave of w a hour.
  std::vector<double> wave;
  const double w = 2.0 * std::numbers::pi / 480.0;
  for (int hour = 0; hour < 480; ++hour) {
    wave.push_back(std::cos(w * hour));
  }
  const double kept = std::exp(-1.0 / 30.0);
  const double size = (1.0 - kept) / std::sqrt(1.0 - 2.0 * kept * std::cos(w) + kept * kept);
  const double late = std::atan2(kept * std::sin(w), 1.0 - kept * std::cos(w));
  const auto means = running_mean(wave, 30.0);
  for (int hour = 0; hour < 480; ++hour) {
    EXPECT_NEAR(means[static_cast<std::size_t>(hour)], size * std::cos(w * hour - late), 1e-13);
  }
}

TEST(RunningMean, InTheLimits) {
  const std::vector<double> steady(48, 3.25);
  for (const double mean : running_mean(steady, 168.0)) {
    EXPECT_NEAR(mean, 3.25, 1e-13);
  }
  EXPECT_DOUBLE_EQ(running_mean(std::vector<double>{7.0}, 10.0)[0], 7.0);
  // Longer than the year: hardly more than the year's mean.
  const auto slow = running_mean(mild().temperature_C, 87600.0);
  EXPECT_NEAR(slow[4000], mean_of(mild().temperature_C), 0.5);
  EXPECT_THROW(running_mean({}, 10.0), InvalidInput);
  EXPECT_THROW(running_mean(steady, 0.5), InvalidInput);
  EXPECT_THROW(running_mean(steady, test::not_a_number), InvalidInput);
  EXPECT_THROW(running_mean(std::vector<double>{1.0, test::not_a_number}, 10.0), InvalidInput);
}

TEST(RoomYear, ClassExcessRidesOnTheRunningMeans) {
  const auto year = room_year(ClassExcess{500.0}, input_of(mild()));
  const auto running_C = running_mean(mild().temperature_C, room_running_mean_h);
  const auto running_Pa = running_mean(mild().vapour_Pa, room_running_mean_h);
  ASSERT_EQ(year.vapour_Pa.size(), year_h);
  for (std::size_t hour = 0; hour < year_h; hour += 11) {
    EXPECT_DOUBLE_EQ(year.vapour_Pa[hour], running_Pa[hour] + vapour_excess_Pa(500.0, running_C[hour]));
  }
  EXPECT_EQ(year.capped_hours, 0u);
  EXPECT_EQ(year.most_capped_Pa, 0.0);
  // The day's course is gone: the vapour of an hour hardly differs from that of twelve hours later.
  for (std::size_t hour = 0; hour + 12 < year_h; ++hour) {
    ASSERT_NEAR(year.vapour_Pa[hour], year.vapour_Pa[hour + 12], 15.0);
  }
}

TEST(RoomYear, HumidityThatIsKept) {
  auto input = input_of(mild());
  std::vector<double> room_C(year_h, 19.0);
  room_C[5] = 16.0;
  input.room_temperature_C = room_C;
  const auto year = room_year(ConstantHumidity{0.6}, input);
  EXPECT_NEAR(year.vapour_Pa[4], 0.6 * room_saturation_Pa(19.0), table_share * 2000.0);
  EXPECT_NEAR(year.vapour_Pa[5], 0.6 * room_saturation_Pa(16.0), table_share * 2000.0);
  EXPECT_EQ(year.capped_hours, 0u);
}

TEST(RoomYear, ScheduleGoesByTheClock) {
  DailySchedule schedule;
  schedule.relative_humidity.fill(0.4);
  schedule.relative_humidity[7] = 0.7;
  const auto year = room_year(schedule, input_of(mild()));
  for (const std::size_t day : {0u, 1u, 200u, 364u}) {
    EXPECT_NEAR(year.vapour_Pa[24 * day + 7], 0.7 * room_saturation_Pa(20.0), 1e-4);
    EXPECT_NEAR(year.vapour_Pa[24 * day + 8], 0.4 * room_saturation_Pa(20.0), 1e-4);
  }
}

TEST(RoomYear, CapIsCountedNeverSilent) {
  DailySchedule schedule;
  schedule.relative_humidity.fill(0.5);
  schedule.relative_humidity[19] = 0.99;
  const auto year = room_year(schedule, input_of(mild()));
  EXPECT_EQ(year.capped_hours, 365u);
  EXPECT_NEAR(year.most_capped_Pa, 0.04 * room_saturation_Pa(20.0), 1e-4);
  EXPECT_NEAR(year.vapour_Pa[19], 0.95 * room_saturation_Pa(20.0), 1e-4);
  auto whole = input_of(mild());
  whole.saturation_share = 1.0;
  EXPECT_EQ(room_year(schedule, whole).capped_hours, 0u);
  // A cellar in summer: damp air from outdoors, capped by the cold room.
  auto cellar = input_of(mild());
  const std::vector<double> cold{9.0};
  cellar.room_temperature_C = cold;
  const auto damp = room_year(ClassExcess{200.0}, cellar);
  EXPECT_GT(damp.capped_hours, 500u);
  EXPECT_LT(damp.capped_hours, year_h);
}

TEST(RoomYear, BalanceClosesHourByHourAndRoundTheYear) {
  const auto model = lived_in();
  const auto year = room_year(model, input_of(mild()));
  ASSERT_EQ(year.capped_hours, 0u);
  const double gas = constants::gas_constant_water_J_kgK * constants::kelvin(20.0);
  double produced_kg = 0.0;
  double carried_kg = 0.0;
  double before_Pa = year.vapour_Pa.back();
  for (std::size_t hour = 0; hour < year_h; ++hour) {
    const double here_Pa = year.vapour_Pa[hour];
    const double stored_kg = 240.0 * (here_Pa - before_Pa) / gas;
    const double out_kg = model.airing_m3_h[hour % 24] * (here_Pa - mild().vapour_Pa[hour]) / gas;
    ASSERT_NEAR(stored_kg, model.production_kg_h[hour % 24] - out_kg, 1e-12);
    produced_kg += model.production_kg_h[hour % 24];
    carried_kg += out_kg;
    before_Pa = here_Pa;
  }
  EXPECT_NEAR(carried_kg, produced_kg, 1e-9 * produced_kg);
}

TEST(RoomYear, SteadyBalanceByHand) {
  ProductionAndAiring model{.room_volume_m3 = 50.0};
  model.production_kg_h.fill(0.1);
  model.airing_m3_h.fill(25.0);
  const std::vector<double> temperature_C(48, 5.0);
  const std::vector<double> vapour_Pa(48, 700.0);
  const RoomYearInput input{.outdoor_temperature_C = temperature_C,
                            .outdoor_vapour_Pa = vapour_Pa,
                            .room_temperature_C = room_at_20};
  // e - e_outdoor = G R_v T / Q.
  const double excess_Pa = 0.1 * constants::gas_constant_water_J_kgK * constants::kelvin(20.0) / 25.0;
  const auto before = room_year(model, input);
  for (const double here_Pa : before.vapour_Pa) {
    EXPECT_NEAR(here_Pa, 700.0 + excess_Pa, 1e-10);
  }
  // Sealing: as the steady rule of room_humidity.hpp.
  auto sealed = model;
  sealed.airing_m3_h.fill(20.0);
  const auto after = room_year(sealed, input);
  EXPECT_NEAR(mean_rise_Pa(before, after), excess_after_sealing_Pa(excess_Pa, 25.0, 20.0) - excess_Pa, 1e-9);
  EXPECT_NEAR(mean_rise_Pa(after, before), -mean_rise_Pa(before, after), 1e-12);
  EXPECT_EQ(mean_rise_Pa(before, before), 0.0);
}

TEST(RoomYear, TheLessAiringTheDamper) {
  auto model = lived_in();
  auto before = room_year(model, input_of(mild()));
  for (const double share : {0.9, 0.8, 0.6, 0.4}) {
    for (std::size_t hour = 0; hour < 24; ++hour) {
      model.airing_m3_h[hour] = share * lived_in().airing_m3_h[hour];
    }
    const auto after = room_year(model, input_of(mild()));
    EXPECT_GT(mean_rise_Pa(before, after), 0.0) << share;
    before = after;
  }
}

TEST(RoomYear, AStoreSmoothsTheDay) {
  auto bare = lived_in();
  bare.buffering_m3 = 0.0;
  const auto swing_Pa = [](const RoomYear& year) { return year.vapour_Pa[7] - year.vapour_Pa[6]; };
  EXPECT_GT(swing_Pa(room_year(bare, input_of(mild()))),
            2.0 * swing_Pa(room_year(lived_in(), input_of(mild()))));
}

TEST(RoomYear, CappedBalanceAlsoClosesOnItself) {
  auto model = lived_in();
  for (const double production_kg_h : {0.2, 0.4, 5.0}) {
    model.production_kg_h.fill(production_kg_h);
    const auto year = room_year(model, input_of(mild()));
    EXPECT_GT(year.capped_hours, 0u);
    EXPECT_NEAR(closing_vapour_Pa(model, input_of(mild())), year.vapour_Pa.back(), 1e-9);
  }
  EXPECT_EQ(room_year(model, input_of(mild())).capped_hours, year_h);
  // Little air and a large store: what the year began with is still there at its end.
  ProductionAndAiring slow{.room_volume_m3 = 1e5, .buffering_m3 = 1e6};
  slow.production_kg_h.fill(0.1);
  slow.airing_m3_h.fill(20.0);
  const auto year = room_year(slow, input_of(mild()));
  EXPECT_EQ(year.capped_hours, 0u);
  EXPECT_NEAR(closing_vapour_Pa(slow, input_of(mild())), year.vapour_Pa.back(), 1e-7);
}

TEST(RoomYear, HourByHourIsTheSameYear) {
  const auto model = lived_in();
  const auto year = room_year(model, input_of(mild()));
  double before_Pa = closing_vapour_Pa(model, input_of(mild()));
  for (std::size_t hour = 0; hour < year_h; ++hour) {
    const RoomHour at{.hour = hour, .room_C = 20.0, .outdoor_vapour_Pa = mild().vapour_Pa[hour]};
    before_Pa = capped_vapour(room_vapour_Pa(model, at, before_Pa), 20.0).vapour_Pa;
    ASSERT_EQ(before_Pa, year.vapour_Pa[hour]);
  }
}

}  // namespace
}  // namespace dewgap
