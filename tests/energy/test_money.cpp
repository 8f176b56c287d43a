#include "dewgap/energy/money.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "dewgap/errors.hpp"
#include "support/not_a_number.hpp"

namespace dewgap {
namespace {

MoneyTerms example_terms() {
  return {.price_per_kWh = 0.08,
          .system_efficiency = 0.8,
          .carbon_kg_per_kWh = 0.21,
          .cost = 90.0,
          .life_years = 12.0};
}

TEST(Money, ByHand) {
  const auto result = money_from_heat(240.0, example_terms());
  EXPECT_NEAR(result.fuel_kWh, 300.0, 1e-12);
  EXPECT_NEAR(result.saved_per_year, 24.0, 1e-12);
  EXPECT_NEAR(result.carbon_kg_per_year.value(), 63.0, 1e-12);
  EXPECT_NEAR(result.payback_years.value(), 3.75, 1e-12);
  EXPECT_FALSE(result.never_pays_back);
}

TEST(Money, ZeroRateIsLifeTimesSavingLessCost) {
  EXPECT_NEAR(money_from_heat(240.0, example_terms()).net_present_value.value(), 12.0 * 24.0 - 90.0, 1e-9);
}

TEST(Money, ConstantPriceIsTheAnnuity) {
  for (const double rate : {-0.05, 0.001, 0.035, 0.08, 0.5}) {
    auto terms = example_terms();
    terms.discount_rate = rate;
    const double annuity = (1.0 - std::pow(1.0 + rate, -12.0)) / rate;
    EXPECT_NEAR(money_from_heat(240.0, terms).net_present_value.value(), 24.0 * annuity - 90.0, 1e-9);
  }
}

TEST(Money, IsTheSumOfItsYears) {
  for (const double rate : {0.0, 0.03, 0.1}) {
    for (const double rise : {-0.02, 0.0, 0.04}) {
      auto terms = example_terms();
      terms.discount_rate = rate;
      terms.price_rise = rise;
      double sum = -90.0;
      for (int year = 1; year <= 12; ++year) {
        sum += 24.0 * std::pow((1.0 + rise) / (1.0 + rate), year);
      }
      EXPECT_NEAR(money_from_heat(240.0, terms).net_present_value.value(), sum, 1e-9);
    }
  }
}

TEST(Money, RiseEqualToTheRateCancelsIt) {
  auto terms = example_terms();
  terms.discount_rate = terms.price_rise = 0.04;
  EXPECT_NEAR(money_from_heat(240.0, terms).net_present_value.value(), 12.0 * 24.0 - 90.0, 1e-9);
  // and the closed form does not jump beside it
  terms.price_rise = 0.04 + 1e-12;
  EXPECT_NEAR(money_from_heat(240.0, terms).net_present_value.value(), 12.0 * 24.0 - 90.0, 1e-6);
}

TEST(Money, FallsWithTheRateAndRisesWithThePriceAndTheLife) {
  const auto value = [](double rate, double rise, double life) {
    auto terms = example_terms();
    terms.discount_rate = rate;
    terms.price_rise = rise;
    terms.life_years = life;
    return money_from_heat(240.0, terms).net_present_value.value();
  };
  EXPECT_GT(value(0.02, 0.0, 12.0), value(0.05, 0.0, 12.0));
  EXPECT_LT(value(0.02, 0.0, 12.0), value(0.02, 0.03, 12.0));
  EXPECT_LT(value(0.02, 0.0, 12.0), value(0.02, 0.0, 12.5));
  EXPECT_LT(value(0.02, 0.0, 12.5), value(0.02, 0.0, 13.0));
}

TEST(Money, NeverPaysBackWhenNothingIsSaved) {
  for (const double heat_kWh : {0.0, -40.0}) {
    const auto result = money_from_heat(heat_kWh, example_terms());
    EXPECT_TRUE(result.never_pays_back);
    EXPECT_FALSE(result.payback_years.has_value());
    EXPECT_LE(result.net_present_value.value(), -90.0);
  }
}

TEST(Money, GivesOnlyWhatItsTermsAllow) {
  const auto bare = money_from_heat(240.0, {.price_per_kWh = 0.08});
  EXPECT_FALSE(bare.carbon_kg_per_year.has_value());
  EXPECT_FALSE(bare.payback_years.has_value());
  EXPECT_FALSE(bare.net_present_value.has_value());
  EXPECT_FALSE(bare.never_pays_back);
  auto terms = example_terms();
  terms.life_years.reset();
  EXPECT_TRUE(money_from_heat(240.0, terms).payback_years.has_value());
  EXPECT_FALSE(money_from_heat(240.0, terms).net_present_value.has_value());
}

TEST(Money, AHeatPumpUsesLessFuelForTheSameHeat) {
  auto terms = example_terms();
  terms.system_efficiency = 3.0;
  EXPECT_NEAR(money_from_heat(240.0, terms).fuel_kWh, 80.0, 1e-12);
}

TEST(Money, RejectsBadInput) {
  const auto rejects = [](MoneyTerms terms) { EXPECT_THROW(money_from_heat(240.0, terms), InvalidInput); };
  for (const double bad : {-1.0, 2e9, test::not_a_number}) {
    rejects({.price_per_kWh = bad});
    rejects({.system_efficiency = bad});
    rejects({.carbon_kg_per_kWh = bad});
    rejects({.cost = bad});
    rejects({.life_years = bad});
    rejects({.discount_rate = bad});
    rejects({.price_rise = bad});
  }
  rejects({.system_efficiency = 0.29});
  rejects({.life_years = 0.5});
  EXPECT_THROW(money_from_heat(1e8, {}), InvalidInput);
  EXPECT_THROW(money_from_heat(test::not_a_number, {}), InvalidInput);
}

}  // namespace
}  // namespace dewgap
