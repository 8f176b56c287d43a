#include "dewgap/energy/sun_cut.hpp"

#include <gtest/gtest.h>

#include "dewgap/errors.hpp"
#include "support/not_a_number.hpp"

namespace dewgap {
namespace {

MonthlySun rising_sun() {
  MonthlySun sun;
  for (std::size_t month = 0; month < 12; ++month) {
    sun.plane_kWh_m2_day[month] = 0.5 + 0.25 * static_cast<double>(month);
  }
  return sun;
}

TEST(SunCut, ByHand) {
  const auto cut = sun_cut_kWh_day(rising_sun(), 1.2, 0.83, 0.82);
  EXPECT_NEAR(cut[0], 1.2 * 0.5 * 0.83 * 0.18, 1e-12);
  EXPECT_NEAR(cut[11], 1.2 * 3.25 * 0.83 * 0.18, 1e-12);
}

TEST(SunCut, AClearSheetCutsNothingAndAnOpaqueOneEverythingThatCameIn) {
  const auto none = sun_cut_kWh_day(rising_sun(), 1.2, 0.83, 1.0);
  const auto all = sun_cut_kWh_day(rising_sun(), 1.2, 0.83, 0.0);
  for (std::size_t month = 0; month < 12; ++month) {
    EXPECT_EQ(none[month], 0.0);
    EXPECT_NEAR(all[month], 1.2 * 0.83 * rising_sun().plane_kWh_m2_day[month], 1e-12);
  }
}

TEST(SunCut, RejectsBadInput) {
  for (const double bad : {-0.1, 101.0, test::not_a_number}) {
    EXPECT_THROW(sun_cut_kWh_day(rising_sun(), bad, 0.83, 0.82), InvalidInput);
    EXPECT_THROW(sun_cut_kWh_day(rising_sun(), 1.2, bad, 0.82), InvalidInput);
    EXPECT_THROW(sun_cut_kWh_day(rising_sun(), 1.2, 0.83, bad), InvalidInput);
    auto sun = rising_sun();
    sun.plane_kWh_m2_day[6] = bad;
    EXPECT_THROW(sun_cut_kWh_day(sun, 1.2, 0.83, 0.82), InvalidInput);
  }
}

}  // namespace
}  // namespace dewgap
