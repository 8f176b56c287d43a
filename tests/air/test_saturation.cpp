#include "dewgap/air/saturation.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <stdexcept>
#include <string>
#include <vector>

#include "dewgap/errors.hpp"
#include "support/not_a_number.hpp"
#include "support/reference.hpp"

namespace dewgap {
namespace {

constexpr double infinity = std::numeric_limits<double>::infinity();

/// Formula and phase with the temperatures that they permit.
struct Case {
  std::string name;
  SaturationFormula formula;
  Phase phase;
  double min_C;
  double max_C;
};

const std::vector<Case>& all_cases() {
  static const std::vector<Case> cases{
      {"iso_13788 stable", SaturationFormula::iso_13788, Phase::stable, -60.0, 80.0},
      {"iso_13788 water", SaturationFormula::iso_13788, Phase::water, 0.0, 80.0},
      {"iso_13788 ice", SaturationFormula::iso_13788, Phase::ice, -60.0, 0.0},
      {"sonntag stable", SaturationFormula::sonntag, Phase::stable, -80.0, 100.0},
      {"sonntag water", SaturationFormula::sonntag, Phase::water, -80.0, 100.0},
      {"sonntag ice", SaturationFormula::sonntag, Phase::ice, -80.0, 0.0},
      {"murphy_koop stable", SaturationFormula::murphy_koop, Phase::stable, -80.0, 100.0},
      {"murphy_koop water", SaturationFormula::murphy_koop, Phase::water, -80.0, 100.0},
      {"murphy_koop ice", SaturationFormula::murphy_koop, Phase::ice, -80.0, 0.0},
  };
  return cases;
}

double saturation_of(const test::ReferenceRow& row) {
  const std::string name = row.text("formula") + " " + row.text("phase");
  for (const Case& one : all_cases()) {
    if (one.name == name) {
      return saturation_pressure_Pa(row.number("temperature_C"), one.formula, one.phase);
    }
  }
  throw std::runtime_error("no such formula and phase: " + name);
}

TEST(Saturation, Iso13788Values) {
  test::check_reference("humid_air/iso_13788_saturation.csv", saturation_of);
}

TEST(Saturation, BoundsAgainstIapws) {
  test::check_reference("humid_air/iapws_saturation.csv", saturation_of);
}

TEST(Saturation, BoundsAgainstAshrae) {
  test::check_reference("humid_air/ashrae_saturation.csv", saturation_of);
}

TEST(Saturation, TwoFormulasOverSupercooledWater) {
  // The bounds that the header states.
  for (double t = -80.0; t <= 0.0; t += 0.5) {
    const double sonntag = saturation_pressure_Pa(t, SaturationFormula::sonntag, Phase::water);
    const double murphy_koop = saturation_pressure_Pa(t, SaturationFormula::murphy_koop, Phase::water);
    const double bound = t >= -20.0 ? 0.0007 : t >= -40.0 ? 0.0065 : 0.13;
    EXPECT_NEAR(sonntag / murphy_koop, 1.0, bound) << t;
  }
}

TEST(Saturation, WaterExceedsIceBelowZero) {
  for (const auto formula : {SaturationFormula::sonntag, SaturationFormula::murphy_koop}) {
    for (double t = -80.0; t <= 0.0; t += 1.0) {
      EXPECT_GT(saturation_pressure_Pa(t, formula, Phase::water),
                saturation_pressure_Pa(t, formula, Phase::ice));
    }
  }
}

TEST(Saturation, TriplePointOfWaterAndIceAgree) {
  // Both curves of a formula pass the triple point, 0.01 C, within 0.001 Pa: the ice curve is continued by
  // its slope.
  for (const auto formula : {SaturationFormula::sonntag, SaturationFormula::murphy_koop}) {
    const double ice = saturation_pressure_Pa(0.0, formula, Phase::ice) +
                       0.01 * saturation_slope_Pa_K(0.0, formula, Phase::ice);
    EXPECT_NEAR(ice, 611.657, 0.015);
    EXPECT_NEAR(saturation_pressure_Pa(0.01, formula, Phase::water), 611.657, 0.001);
  }
}

TEST(Saturation, Iso13788IsContinuousAtZero) {
  const auto iso = SaturationFormula::iso_13788;
  EXPECT_EQ(saturation_pressure_Pa(0.0, iso, Phase::water), 610.5);
  EXPECT_EQ(saturation_pressure_Pa(0.0, iso, Phase::ice), 610.5);
  for (const auto phase : {Phase::stable, Phase::water, Phase::ice}) {
    EXPECT_EQ(dew_point_C(610.5, iso, phase), 0.0);
  }
  EXPECT_NEAR(dew_point_C(610.5 + 1e-9, iso), 0.0, 1e-10);
  EXPECT_NEAR(dew_point_C(610.5 - 1e-9, iso), 0.0, 1e-10);
}

TEST(Saturation, StableIsIceBelowZeroAndWaterFromZero) {
  for (const auto formula :
       {SaturationFormula::iso_13788, SaturationFormula::sonntag, SaturationFormula::murphy_koop}) {
    EXPECT_EQ(saturation_pressure_Pa(-3.0, formula), saturation_pressure_Pa(-3.0, formula, Phase::ice));
    EXPECT_EQ(saturation_pressure_Pa(0.0, formula), saturation_pressure_Pa(0.0, formula, Phase::water));
    EXPECT_EQ(saturation_pressure_Pa(3.0, formula), saturation_pressure_Pa(3.0, formula, Phase::water));
  }
}

TEST(Saturation, SlopeMatchesCentralDifferences) {
  constexpr double h = 1e-3;
  for (const Case& one : all_cases()) {
    for (double t = one.min_C + 0.25; t < one.max_C; t += 0.5) {
      const double difference = (saturation_pressure_Pa(t + h, one.formula, one.phase) -
                                 saturation_pressure_Pa(t - h, one.formula, one.phase)) /
                                (2.0 * h);
      const double slope = saturation_slope_Pa_K(t, one.formula, one.phase);
      EXPECT_GT(slope, 0.0);
      EXPECT_NEAR(slope / difference, 1.0, 1e-8) << one.name << " " << t;
    }
  }
}

TEST(DewPoint, UndoesSaturation) {
  for (const Case& one : all_cases()) {
    for (double t = one.min_C; t <= one.max_C; t += 0.25) {
      const double pressure = saturation_pressure_Pa(t, one.formula, one.phase);
      EXPECT_NEAR(dew_point_C(pressure, one.formula, one.phase), t, 1e-9) << one.name << " " << t;
    }
  }
}

TEST(DewPoint, StableHasNoGapAtZero) {
  for (const auto formula : {SaturationFormula::sonntag, SaturationFormula::murphy_koop}) {
    const double ice = saturation_pressure_Pa(0.0, formula, Phase::ice);
    const double water = saturation_pressure_Pa(0.0, formula, Phase::water);
    ASSERT_LT(ice, water);
    EXPECT_LT(water - ice, 0.07);
    EXPECT_EQ(dew_point_C(0.5 * (ice + water), formula), 0.0);
    EXPECT_NEAR(dew_point_C(water + 1e-6, formula), 0.0, 1e-7);
    EXPECT_NEAR(dew_point_C(ice - 1e-6, formula), 0.0, 1e-7);
  }
}

TEST(DewPoint, FrostPointLiesAboveDewPointBelowZero) {
  const double pressure = saturation_pressure_Pa(-15.0, SaturationFormula::murphy_koop, Phase::water);
  EXPECT_GT(dew_point_C(pressure, SaturationFormula::murphy_koop, Phase::ice), -14.0);
}

TEST(Saturation, BadTemperature) {
  for (const Case& one : all_cases()) {
    for (const double t : {one.min_C - 0.001, one.max_C + 0.001, test::not_a_number, infinity, -infinity}) {
      EXPECT_THROW(saturation_pressure_Pa(t, one.formula, one.phase), InvalidInput) << one.name << " " << t;
      EXPECT_THROW(saturation_slope_Pa_K(t, one.formula, one.phase), InvalidInput) << one.name << " " << t;
    }
  }
}

TEST(DewPoint, BadPressure) {
  for (const Case& one : all_cases()) {
    const double lowest = saturation_pressure_Pa(one.min_C, one.formula, one.phase);
    const double highest = saturation_pressure_Pa(one.max_C, one.formula, one.phase);
    for (const double p : {0.999 * lowest, 1.001 * highest, 0.0, -5.0, test::not_a_number, infinity}) {
      EXPECT_THROW(dew_point_C(p, one.formula, one.phase), InvalidInput) << one.name << " " << p;
    }
  }
}

TEST(Saturation, UnknownFormulaOrPhase) {
  EXPECT_THROW(saturation_pressure_Pa(1.0, static_cast<SaturationFormula>(9)), InvalidInput);
  EXPECT_THROW(saturation_pressure_Pa(1.0, SaturationFormula::sonntag, static_cast<Phase>(9)), InvalidInput);
  EXPECT_THROW(dew_point_C(700.0, static_cast<SaturationFormula>(9)), InvalidInput);
}

}  // namespace
}  // namespace dewgap
