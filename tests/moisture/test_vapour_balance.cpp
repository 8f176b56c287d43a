#include "dewgap/moisture/vapour_balance.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "dewgap/air/constants.hpp"
#include "dewgap/air/saturation.hpp"
#include "dewgap/errors.hpp"
#include "support/not_a_number.hpp"

namespace dewgap {
namespace {

constexpr VapourBalanceInput winter{.room_vapour_Pa = 1200.0,
                                    .room_temperature_C = 20.0,
                                    .outdoor_vapour_Pa = 500.0,
                                    .outdoor_temperature_C = 0.0,
                                    .gap_temperature_C = 9.0,
                                    .face_area_m2 = 1.0,
                                    .face_temperature_C = 12.0,
                                    .face_mass_transfer_m_s = 3e-3};

TEST(VapourBalance, FedFromOneSideItSettlesAtExactlyThatSidesVapour) {
  for (const double flow : {1e-9, 1e-5, 1e-1}) {
    for (const double gap_C : {-10.0, 0.0, 9.0, 30.0}) {
      auto input = winter;
      input.gap_temperature_C = gap_C;
      input.from_room_m3_s = flow;
      input.diffusion_to_room_kg_sPa = 1e-12;
      EXPECT_EQ(solve_vapour_balance(input).vapour_Pa, 1200.0) << flow << " " << gap_C;
      input.from_outdoors_m3_s = flow;
      input.diffusion_to_outdoors_kg_sPa = 1e-12;
      input.from_room_m3_s = input.diffusion_to_room_kg_sPa = 0.0;
      EXPECT_EQ(solve_vapour_balance(input).vapour_Pa, 500.0) << flow << " " << gap_C;
    }
  }
}

TEST(VapourBalance, DiffusionAloneDividesByConductance) {
  auto input = winter;
  input.diffusion_to_room_kg_sPa = 3e-12;
  input.diffusion_to_outdoors_kg_sPa = 1e-12;
  const auto balance = solve_vapour_balance(input);
  EXPECT_NEAR(balance.vapour_Pa, (3.0 * 1200.0 + 500.0) / 4.0, 1e-10);
  EXPECT_NEAR(balance.vapour_in_kg_s / (3e-12 * (1200.0 - balance.vapour_Pa)), 1.0, 1e-12);
  EXPECT_NEAR(balance.vapour_out_kg_s / (1e-12 * (balance.vapour_Pa - 500.0)), 1.0, 1e-12);
  EXPECT_FALSE(balance.undetermined);
  EXPECT_NEAR(balance.dew_point_C, dew_point_C(1025.0), 1e-9);
}

TEST(VapourBalance, EqualFlowsFromBothSidesMeetInTheMiddle) {
  auto input = winter;
  input.from_room_m3_s = input.from_outdoors_m3_s = 1e-4;
  EXPECT_NEAR(solve_vapour_balance(input).vapour_Pa, 850.0, 1e-10);
}

TEST(VapourBalance, SourceRaisesTheGapByItsShareOfTheExchange) {
  auto input = winter;
  input.from_outdoors_m3_s = 1e-4;
  input.source_kg_s = 1e-8;
  const double carried = 1e-4 / (constants::gas_constant_water_J_kgK * constants::kelvin(9.0));
  EXPECT_NEAR(solve_vapour_balance(input).vapour_Pa, 500.0 + 1e-8 / carried, 1e-9);
}

TEST(VapourBalance, WetFaceTakesWhatTheMassTransferCoefficientAllows) {
  auto input = winter;
  input.from_room_m3_s = 2e-5;
  input.from_outdoors_m3_s = 1e-6;
  input.face_temperature_C = 2.0;
  const auto balance = solve_vapour_balance(input);
  const double saturation = saturation_pressure_Pa(2.0);
  EXPECT_EQ(balance.face_saturation_Pa, saturation);
  EXPECT_GT(balance.potential_vapour_Pa, saturation);
  EXPECT_LT(balance.vapour_Pa, balance.potential_vapour_Pa);
  EXPECT_GT(balance.vapour_Pa, saturation);
  const double film_K = constants::kelvin(5.5);
  const double allowed =
      3e-3 * (balance.vapour_Pa - saturation) / (constants::gas_constant_water_J_kgK * film_K);
  EXPECT_NEAR(balance.condensation_kg_s / allowed, 1.0, 1e-11);
  EXPECT_LT(balance.dew_point_C, balance.potential_dew_point_C);
}

TEST(VapourBalance, CondensationBeginsContinuouslyAtSaturationOverIceOrWater) {
  for (const double face_C : {-12.0, -0.5, 0.0, 0.5, 8.0}) {
    const double saturation = saturation_pressure_Pa(face_C);
    auto input = winter;
    input.face_temperature_C = face_C;
    input.from_room_m3_s = 1e-4;
    for (const double above : {1e-9, 1e-6, 1e-3}) {
      input.room_vapour_Pa = saturation * (1.0 + above);
      const auto wet = solve_vapour_balance(input);
      EXPECT_GT(wet.condensation_kg_s, 0.0) << face_C;
      EXPECT_LT(wet.condensation_kg_s, 1e-4 / (461.0 * 260.0) * saturation * above * 1.001) << face_C;
      input.room_vapour_Pa = saturation * (1.0 - above);
      EXPECT_EQ(solve_vapour_balance(input).condensation_kg_s, 0.0) << face_C;
    }
  }
}

TEST(VapourBalance, AFaceThatTakesNothingLeavesThePotential) {
  auto input = winter;
  input.from_room_m3_s = 1e-4;
  input.face_temperature_C = -5.0;
  input.face_mass_transfer_m_s = 0.0;
  const auto balance = solve_vapour_balance(input);
  EXPECT_EQ(balance.vapour_Pa, balance.potential_vapour_Pa);
  EXPECT_EQ(balance.condensation_kg_s, 0.0);
}

TEST(VapourBalance, UndeterminedOnlyWhenNothingExchanges) {
  auto input = winter;
  const auto sealed = solve_vapour_balance(input);
  EXPECT_TRUE(sealed.undetermined);
  EXPECT_EQ(sealed.vapour_Pa, 500.0);
  EXPECT_EQ(sealed.potential_vapour_Pa, 500.0);
  EXPECT_EQ(sealed.vapour_in_kg_s + sealed.vapour_out_kg_s + sealed.condensation_kg_s, 0.0);
  EXPECT_NEAR(sealed.dew_point_C, dew_point_C(500.0), 1e-9);
  input.source_kg_s = 1e-9;
  EXPECT_TRUE(solve_vapour_balance(input).undetermined);
  input.source_kg_s = 0.0;
  for (double VapourBalanceInput::*exchange :
       {&VapourBalanceInput::from_room_m3_s, &VapourBalanceInput::from_outdoors_m3_s,
        &VapourBalanceInput::diffusion_to_room_kg_sPa, &VapourBalanceInput::diffusion_to_outdoors_kg_sPa}) {
    auto open = input;
    open.*exchange = 1e-15;
    EXPECT_FALSE(solve_vapour_balance(open).undetermined);
  }
}

TEST(VapourBalance, CondensationPerAreaIsGramsAnHour) {
  EXPECT_DOUBLE_EQ(condensation_g_m2h(1e-6, 0.5), 7.2);
  EXPECT_THROW(condensation_g_m2h(-1e-9, 1.0), InvalidInput);
  EXPECT_THROW(condensation_g_m2h(1e-9, 0.0), InvalidInput);
}

TEST(VapourBalance, RefusesWhatIsOutsideItsRange) {
  for (double VapourBalanceInput::*field :
       {&VapourBalanceInput::from_room_m3_s, &VapourBalanceInput::from_outdoors_m3_s,
        &VapourBalanceInput::room_vapour_Pa, &VapourBalanceInput::room_temperature_C,
        &VapourBalanceInput::outdoor_vapour_Pa, &VapourBalanceInput::outdoor_temperature_C,
        &VapourBalanceInput::gap_temperature_C, &VapourBalanceInput::diffusion_to_room_kg_sPa,
        &VapourBalanceInput::diffusion_to_outdoors_kg_sPa, &VapourBalanceInput::source_kg_s,
        &VapourBalanceInput::face_area_m2, &VapourBalanceInput::face_temperature_C,
        &VapourBalanceInput::face_mass_transfer_m_s}) {
    for (const double bad : {test::not_a_number, -100.0, 1e9}) {
      auto input = winter;
      input.from_room_m3_s = 1e-4;
      input.*field = bad;
      EXPECT_THROW(solve_vapour_balance(input), InvalidInput);
    }
  }
  auto flooded = winter;
  flooded.diffusion_to_room_kg_sPa = 1e-13;
  flooded.source_kg_s = 1e-7;
  EXPECT_THROW(solve_vapour_balance(flooded), InvalidInput);
}

}  // namespace
}  // namespace dewgap
