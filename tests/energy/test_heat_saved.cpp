#include "dewgap/energy/heat_saved.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <stdexcept>
#include <string>

#include "dewgap/errors.hpp"
#include "support/not_a_number.hpp"

namespace dewgap {
namespace {

const Place& place_of(const char* key) {
  const auto* place = find_place(key);
  if (place == nullptr) {
    throw std::runtime_error(std::string("no such place: ") + key);
  }
  return *place;
}

/// Heat that a cut of the glass's conductance saves by the marginal rule, kWh.
double marginal_kWh(const Place& place, double room_C, double base_C, double cut_W_K) {
  return heat_saved({.degree_days_Kd = degree_days_Kd(place, base_C, DegreeDayMethod::schoenau_kehrig),
                     .heating_days = heating_days(place, base_C),
                     .room_C = room_C,
                     .base_C = base_C,
                     .glass_conductance_cut_W_K = cut_W_K})
      .total_kWh();
}

HeatSavedInput hand_case() {
  HeatSavedInput input;
  input.degree_days_Kd[0] = 300.0;
  input.degree_days_Kd[6] = 10.0;
  input.heating_days[0] = 30.0;
  input.heating_days[6] = 5.0;
  input.sun_cut_kWh_day[0] = 0.1;
  input.sun_cut_kWh_day[6] = 0.4;
  input.room_C = 20.0;
  input.base_C = 16.0;
  input.glass_conductance_cut_W_K = 3.0;
  input.frame_conductance_cut_W_K = 0.5;
  input.draught_cut_m3_h = 10.0;
  input.draught_needed_share = 0.25;
  input.sun_used_share = 0.5;
  return input;
}

TEST(HeatSaved, ByHand) {
  // 310 + 4 x 35 = 450 K day = 10.8 kK h
  const auto saved = heat_saved(hand_case());
  EXPECT_NEAR(saved.glass_kWh, 3.0 * 10.8, 1e-9);
  EXPECT_NEAR(saved.frame_kWh, 0.5 * 10.8, 1e-9);
  EXPECT_NEAR(saved.air_kWh, 7.5 * (1.2 * 1006.0 / 3600.0) * 10.8, 1e-9);
  EXPECT_NEAR(saved.sun_lost_kWh, 0.5 * (0.1 * 30.0 + 0.4 * 5.0), 1e-9);
  EXPECT_NEAR(saved.total_kWh(), saved.glass_kWh + saved.frame_kWh + saved.air_kWh - 2.5, 1e-9);
}

TEST(HeatSaved, SunLostEntersOnce) {
  auto input = hand_case();
  const auto with_sun = heat_saved(input);
  input.sun_cut_kWh_day = {};
  const auto without = heat_saved(input);
  EXPECT_EQ(with_sun.glass_kWh, without.glass_kWh);
  EXPECT_EQ(with_sun.frame_kWh, without.frame_kWh);
  EXPECT_EQ(with_sun.air_kWh, without.air_kWh);
  EXPECT_EQ(without.sun_lost_kWh, 0.0);
  EXPECT_NEAR(without.total_kWh() - with_sun.total_kWh(), 2.5, 1e-9);
}

TEST(HeatSaved, AirIsCountedOnceAndNotWhereItIsStillNeeded) {
  auto input = hand_case();
  input.draught_needed_share = 0.0;
  const double all_kWh = heat_saved(input).air_kWh;
  // 10 m3/h of 0.3353 Wh/(m3 K): the same as a conductance of that many W/K, once
  input.glass_conductance_cut_W_K = 10.0 * air_heat_Wh_m3K;
  EXPECT_NEAR(heat_saved(input).glass_kWh, all_kWh, 1e-9);
  input.draught_needed_share = 1.0;
  EXPECT_EQ(heat_saved(input).air_kWh, 0.0);
}

TEST(HeatSaved, IsLinearInTheCutsAndTheHeatedShare) {
  auto input = hand_case();
  const auto once = heat_saved(input);
  input.glass_conductance_cut_W_K *= 2.0;
  input.frame_conductance_cut_W_K *= -1.0;
  input.heated_share_of_day = 0.5;
  const auto changed = heat_saved(input);
  EXPECT_NEAR(changed.glass_kWh, once.glass_kWh, 1e-9);
  EXPECT_NEAR(changed.frame_kWh, -0.5 * once.frame_kWh, 1e-9);
  EXPECT_NEAR(changed.air_kWh, 0.5 * once.air_kWh, 1e-9);
  EXPECT_EQ(changed.sun_lost_kWh, once.sun_lost_kWh);
}

TEST(HeatSaved, MarginalRuleIsTheFirstOrderLimitOfTheNewBase) {
  // A dwelling of 200 W/K with 900 W of gains: base 4.5 K below a room at 20 C.
  const auto& place = place_of("london");
  const double loss_W_K = 200.0;
  const double gains_W = 900.0;
  double last_error = 0.0;
  for (const double cut_W_K : {16.0, 8.0, 4.0, 2.0, 1.0}) {
    const double exact = heat_saved_by_new_base_kWh(place, 20.0, gains_W, loss_W_K, loss_W_K - cut_W_K,
                                                    DegreeDayMethod::schoenau_kehrig);
    const double error = std::abs(marginal_kWh(place, 20.0, 15.5, cut_W_K) / exact - 1.0);
    EXPECT_GT(error, 0.0);
    if (last_error > 0.0) {
      EXPECT_NEAR(last_error / error, 2.0, 0.1);  // halves with the cut: first order
    }
    last_error = error;
    EXPECT_LT(error, 0.5 * cut_W_K / loss_W_K);
  }
  EXPECT_LT(last_error, 0.002);
}

TEST(HeatSaved, MarginalRuleIsTheSlopeOfTheNewBase) {
  for (const char* key : {"london", "berlin", "stockholm"}) {
    const auto& place = place_of(key);
    const double step_W_K = 0.05;
    const double slope = heat_saved_by_new_base_kWh(place, 21.0, 1000.0, 250.0 + step_W_K, 250.0 - step_W_K,
                                                    DegreeDayMethod::schoenau_kehrig) /
                         (2.0 * step_W_K);
    EXPECT_NEAR(marginal_kWh(place, 21.0, 17.0, 1.0) / slope, 1.0, 1e-6) << key;
  }
}

/// Share by which dH DD(tb) alone understates the marginal saving, room at 20 C.
double understatement(const char* key, double base_C) {
  const auto& place = place_of(key);
  const double alone_kWh =
      annual_degree_days_Kd(place, base_C, DegreeDayMethod::schoenau_kehrig) * 24.0 / 1000.0;
  const double share = 1.0 - alone_kWh / marginal_kWh(place, 20.0, base_C, 1.0);
  ::testing::Test::RecordProperty(std::string(key) + "_" + std::to_string(base_C), std::to_string(share));
  return share;
}

TEST(HeatSaved, DegreeDaysAloneUnderstateByAQuarterToTwoFifths) {
  for (const char* key : {"dublin", "edinburgh", "amsterdam", "berlin", "munich", "krakow", "stockholm"}) {
    EXPECT_GE(understatement(key, 15.5), 0.25) << key;
    EXPECT_LE(understatement(key, 15.5), 0.40) << key;
  }
}

TEST(HeatSaved, DegreeDaysAloneUnderstateByTheGainsShareOfTheRoomsDegrees) {
  // The share is (Ti - tb) N / (DD + (Ti - tb) N): none without gains, more the farther the base lies below
  // the room.
  EXPECT_NEAR(understatement("london", 20.0), 0.0, 1e-12);
  double last = 0.0;
  for (const double base_C : {19.0, 17.5, 16.5, 15.5, 14.5, 13.5}) {
    const double share = understatement("london", base_C);
    EXPECT_GT(share, last);
    EXPECT_LT(share, 1.0);
    last = share;
  }
}

TEST(HeatSaved, DegreeDaysAloneUnderstateLessInAColderPlace) {
  EXPECT_LT(understatement("helsinki", 15.5), understatement("stockholm", 15.5));
  EXPECT_LT(understatement("stockholm", 15.5), understatement("london", 15.5));
  EXPECT_LT(understatement("london", 17.5), understatement("london", 15.5));
}

TEST(HeatSaved, NewBaseIsZeroForNoChangeAndAddsUp) {
  const auto& place = place_of("london");
  const auto saved = [&](double before, double after) {
    return heat_saved_by_new_base_kWh(place, 20.0, 900.0, before, after, DegreeDayMethod::hitchin);
  };
  EXPECT_EQ(saved(200.0, 200.0), 0.0);
  EXPECT_NEAR(saved(200.0, 190.0) + saved(190.0, 170.0), saved(200.0, 170.0), 1e-9);
  EXPECT_NEAR(saved(200.0, 190.0), -saved(190.0, 200.0), 1e-12);
}

TEST(HeatSaved, WithoutGainsTheNewBaseIsTheRoom) {
  const auto& place = place_of("london");
  const double exact =
      heat_saved_by_new_base_kWh(place, 20.0, 0.0, 200.0, 190.0, DegreeDayMethod::schoenau_kehrig);
  EXPECT_NEAR(exact,
              10.0 * annual_degree_days_Kd(place, 20.0, DegreeDayMethod::schoenau_kehrig) * 24.0 / 1000.0,
              1e-9);
  EXPECT_NEAR(exact, marginal_kWh(place, 20.0, 20.0, 10.0), 1e-9);
}

TEST(HeatSaved, RejectsBadMonths) {
  using In = HeatSavedInput;
  for (const auto field : {&In::degree_days_Kd, &In::heating_days, &In::sun_cut_kWh_day}) {
    for (const double bad : {-0.1, 3001.0, test::not_a_number}) {
      auto input = hand_case();
      (input.*field)[3] = bad;
      EXPECT_THROW(heat_saved(input), InvalidInput) << bad;
    }
  }
}

TEST(HeatSaved, RejectsBadInput) {
  using In = HeatSavedInput;
  for (const auto field : {&In::room_C, &In::base_C, &In::heated_share_of_day, &In::glass_conductance_cut_W_K,
                           &In::frame_conductance_cut_W_K, &In::draught_cut_m3_h, &In::draught_needed_share,
                           &In::sun_used_share}) {
    for (const double bad : {-5001.0, 5001.0, test::not_a_number}) {
      auto input = hand_case();
      input.*field = bad;
      EXPECT_THROW(heat_saved(input), InvalidInput) << bad;
    }
  }
  auto input = hand_case();
  input.base_C = input.room_C + 0.1;
  EXPECT_THROW(heat_saved(input), InvalidInput);
}

TEST(HeatSaved, NewBaseRejectsBadInput) {
  const auto& place = place_of("london");
  const auto saved = [&](double room_C, double gains_W, double before_W_K, double after_W_K) {
    return heat_saved_by_new_base_kWh(place, room_C, gains_W, before_W_K, after_W_K,
                                      DegreeDayMethod::hitchin);
  };
  for (const double bad : {-1.0, 1e7, test::not_a_number}) {
    EXPECT_THROW(saved(bad, 900.0, 200.0, 190.0), InvalidInput);
    EXPECT_THROW(saved(20.0, bad, 200.0, 190.0), InvalidInput);
    EXPECT_THROW(saved(20.0, 900.0, bad, 190.0), InvalidInput);
    EXPECT_THROW(saved(20.0, 900.0, 200.0, bad), InvalidInput);
  }
  EXPECT_THROW(saved(20.0, 900.0, 0.0, 190.0), InvalidInput);
  EXPECT_THROW(saved(20.0, 9000.0, 200.0, 190.0), InvalidInput);  // a base of -25 C
}

}  // namespace
}  // namespace dewgap
