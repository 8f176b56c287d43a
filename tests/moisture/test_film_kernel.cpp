// The unchecked step of a film: by hand, and against the checked one.
#include <gtest/gtest.h>

#include "dewgap/air/saturation.hpp"
#include "dewgap/moisture/film_kernel.hpp"
#include "moisture/random_draw.hpp"

namespace dewgap {
namespace {

using moisture_kernel::film_response_kg_m2sPa;
using moisture_kernel::FilmRates;
using moisture_kernel::FilmTransfer;
using moisture_kernel::step_film_at_rates;

constexpr double hour_s = 3600.0;

TEST(FilmKernel, CondensesAndDriesByTheRate) {
  const FilmRates wetting{hour_s, 1e-6, 5.0, 2e-8, 5.0};
  const auto wet = step_film_at_rates({}, {}, wetting);
  EXPECT_DOUBLE_EQ(wet.condensed_kg_m2, 0.0036);
  EXPECT_DOUBLE_EQ(wet.state.water_kg_m2, 0.0036);
  EXPECT_DOUBLE_EQ(wet.sill_gained_kg_m2, 7.2e-5);
  EXPECT_EQ(wet.run_off_kg_m2, 0.0);
  const FilmRates drying{hour_s, -5e-7, 5.0, -1e-6, 5.0};
  const auto dry = step_film_at_rates(wet.state, {}, drying);
  EXPECT_DOUBLE_EQ(dry.evaporated_kg_m2, 0.0018);
  EXPECT_DOUBLE_EQ(dry.state.water_kg_m2, 0.0018);
  EXPECT_DOUBLE_EQ(dry.sill_lost_kg_m2, 7.2e-5);  // no more than there was
  EXPECT_EQ(dry.state.sill_kg_m2, 0.0);
}

TEST(FilmKernel, FrostAtTheRateAndItsPhase) {
  const auto frost = step_film_at_rates({.water_kg_m2 = 0.01}, {}, {hour_s, 1e-6, -2.0, 0.0, -2.0});
  EXPECT_DOUBLE_EQ(frost.state.frost_kg_m2, 0.0136);
  EXPECT_DOUBLE_EQ(frost.frozen_kg_m2, 0.01);
  EXPECT_DOUBLE_EQ(frost.deposited_kg_m2, 0.0036);
  EXPECT_EQ(frost.state.water_kg_m2, 0.0);
}

TEST(FilmKernel, ResponseIsOfWhatIsWetOrWets) {
  const FilmTransfer transfer{3e-8, 1e-9};
  const FilmRates drying{hour_s, -1e-6, 5.0, -1e-8, 5.0};
  const auto dried = step_film_at_rates({.water_kg_m2 = 0.001, .sill_kg_m2 = 1e-6}, {}, drying);
  EXPECT_EQ(film_response_kg_m2sPa(dried, drying, transfer), 0.0);
  const auto face_left = step_film_at_rates({.water_kg_m2 = 0.01, .sill_kg_m2 = 1e-6}, {}, drying);
  EXPECT_EQ(film_response_kg_m2sPa(face_left, drying, transfer), 3e-8);
  const auto both_left = step_film_at_rates({.water_kg_m2 = 0.01, .sill_kg_m2 = 1e-3}, {}, drying);
  EXPECT_EQ(film_response_kg_m2sPa(both_left, drying, transfer), 3e-8 + 1e-9);
  const FilmRates wetting{hour_s, 0.0, 5.0, 1e-9, 5.0};
  EXPECT_EQ(film_response_kg_m2sPa(step_film_at_rates({}, {}, wetting), wetting, transfer), 3e-8 + 1e-9);
}

void expect_same(const FilmStep& a, const FilmStep& b) {
  ASSERT_EQ(a.state.water_kg_m2, b.state.water_kg_m2);
  ASSERT_EQ(a.state.frost_kg_m2, b.state.frost_kg_m2);
  ASSERT_EQ(a.state.sill_kg_m2, b.state.sill_kg_m2);
  ASSERT_EQ(vapour_in_kg_m2(a), vapour_in_kg_m2(b));
  ASSERT_EQ(vapour_out_kg_m2(a), vapour_out_kg_m2(b));
  ASSERT_EQ(a.run_off_kg_m2, b.run_off_kg_m2);
  ASSERT_EQ(a.drained_kg_m2, b.drained_kg_m2);
}

TEST(FilmKernel, TheSameAsTheCheckedStepToTheLastBit) {
  test::RandomDraw draw(11);
  int ran = 0;
  for (int i = 0; i < 20000; ++i) {
    const FilmState before{.water_kg_m2 = draw.or_none(3, draw.between(0.0, 0.1)),
                           .frost_kg_m2 = draw.or_none(2, draw.between(0.0, 0.1)),
                           .sill_kg_m2 = draw.or_none(2, draw.between(0.0, 0.1))};
    const FilmSurface surface{.retention_kg_m2 = draw.between(0.02, 0.08),
                              .run_off_time_s = draw.or_none(3, draw.between(1.0, 40000.0)),
                              .weep = i % 2 == 0 ? SillWeep::none : SillWeep::open};
    const FilmConditions given{.air_vapour_Pa = draw.between(200.0, 1500.0),
                               .face_temperature_C = draw.between(-8.0, 15.0),
                               .face_transfer_kg_m2sPa = draw.between(0.0, 5e-8),
                               .sill_temperature_C = draw.between(-8.0, 15.0),
                               .sill_transfer_kg_m2sPa = draw.between(0.0, 5e-8)};
    const FilmRates rates{given.duration_s,
                          given.face_transfer_kg_m2sPa *
                              (given.air_vapour_Pa - saturation_pressure_Pa(given.face_temperature_C)),
                          given.face_temperature_C,
                          surface.sill_area_ratio * given.sill_transfer_kg_m2sPa *
                              (given.air_vapour_Pa - saturation_pressure_Pa(given.sill_temperature_C)),
                          given.sill_temperature_C};
    const auto step = step_film_at_rates(before, surface, rates);
    expect_same(step, step_film(before, surface, given));
    ran += step.run_off_kg_m2 > 0.0 ? 1 : 0;
  }
  EXPECT_GT(ran, 1000);
}

}  // namespace
}  // namespace dewgap
