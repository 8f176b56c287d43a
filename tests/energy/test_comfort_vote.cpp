#include <gtest/gtest.h>

#include <cmath>

#include "dewgap/energy/comfort.hpp"
#include "support/reference.hpp"

namespace dewgap {
namespace {

/// Annex D's own vapour pressure, Pa.
double annex_vapour_Pa(double air_C, double humidity_per_cent) {
  return 10.0 * humidity_per_cent * std::exp(16.6536 - 4030.183 / (air_C + 235.0));
}

ThermalSensation of_row(const test::ReferenceRow& row) {
  const double air_C = row.number("air_C");
  return thermal_sensation(
      {.metabolic_met = row.number("metabolic_met"), .clothing_clo = row.number("clothing_clo")},
      {.air_C = air_C,
       .mean_radiant_C = row.number("mean_radiant_C"),
       .air_speed_m_s = row.number("air_speed_m_s"),
       .vapour_Pa = annex_vapour_Pa(air_C, row.number("humidity_per_cent"))});
}

TEST(ThermalSensation, ExampleOutputOfIso7730) {
  test::check_reference(
      "iso_7730/table_d1.csv",
      [](const test::ReferenceRow& row) {
        const auto sensation = of_row(row);
        EXPECT_EQ(sensation.status, SolveStatus::converged);
        return row.text("quantity") == "vote" ? sensation.mean_vote : sensation.dissatisfied_per_cent;
      },
      2.5);
}

TEST(ThermalSensation, RisesWithWarmthClothingAndWork) {
  double last = -10.0;
  for (double air_C = 12.0; air_C <= 32.0; air_C += 0.5) {
    const auto sensation = thermal_sensation({}, {.air_C = air_C, .mean_radiant_C = air_C});
    EXPECT_GT(sensation.mean_vote, last);
    EXPECT_GE(sensation.dissatisfied_per_cent, 5.0);
    EXPECT_LT(sensation.dissatisfied_per_cent, 100.0);
    last = sensation.mean_vote;
  }
  const double usual = thermal_sensation({}, {}).mean_vote;
  EXPECT_GT(thermal_sensation({.clothing_clo = 1.3}, {}).mean_vote, usual);
  EXPECT_GT(thermal_sensation({.metabolic_met = 1.6}, {}).mean_vote, usual);
  EXPECT_LT(thermal_sensation({}, {.mean_radiant_C = 17.0}).mean_vote, usual);
  EXPECT_LT(thermal_sensation({}, {.air_speed_m_s = 0.4}).mean_vote, usual);
}

TEST(ThermalSensation, ClothingGivesOnWhatItGets) {
  const auto bare = thermal_sensation({.clothing_clo = 0.0}, {});
  EXPECT_NEAR(bare.clothing_C, 35.7 - 0.028 * 1.2 * 58.15, 1e-9) << "bare skin is the surface";
  const auto clothed = thermal_sensation({.clothing_clo = 1.0}, {});
  EXPECT_LT(clothed.clothing_C, bare.clothing_C);
  EXPECT_GT(clothed.clothing_C, 20.0);
}

TEST(ThermalSensation, FlagsWhatItWasNotMadeFor) {
  EXPECT_TRUE(thermal_sensation({}, {}).flags.empty());
  EXPECT_TRUE(thermal_sensation({.metabolic_met = 5.0}, {}).flags.has(ValidityFlag::mean_vote_range));
  EXPECT_TRUE(thermal_sensation({}, {.air_C = 9.0}).flags.has(ValidityFlag::mean_vote_range));
  EXPECT_TRUE(thermal_sensation({}, {.vapour_Pa = 2800.0}).flags.has(ValidityFlag::mean_vote_range));
  EXPECT_TRUE(thermal_sensation({.clothing_clo = 0.0}, {.air_C = 15.0, .mean_radiant_C = 15.0})
                  .flags.has(ValidityFlag::mean_vote_range))
      << "a vote below -2";
}

}  // namespace
}  // namespace dewgap
