// Trends that measured studies report, over a winter month of hours. Directions only: the studies' abstracts
// give no figures.
#include <gtest/gtest.h>

#include <algorithm>
#include <iostream>

#include "dewgap/air/saturation.hpp"
#include "gap/gap_cases.hpp"
#include "gap/hour_cases.hpp"

namespace dewgap::test {
namespace {

std::vector<PlacedOpening> joints(double coefficient_m3_h_m) {
  return {{joint_resistance(coefficient_m3_h_m, 2.0 / 3.0, 1.2), 0.0},
          {joint_resistance(coefficient_m3_h_m, 2.0 / 3.0, 2.4), 0.6},
          {joint_resistance(coefficient_m3_h_m, 2.0 / 3.0, 1.2), 1.2}};
}

GapCase window(double inner_m3_h_m, double outer_m3_h_m) {
  auto c = worn_sash_case();
  c.network.to_room = joints(inner_m3_h_m);
  c.network.to_outdoors = joints(outer_m3_h_m);
  return c;
}

struct Winter {
  double gap_vapour_Pa = 0.0;  ///< mean
  double outdoor_vapour_Pa = 0.0;
  double room_vapour_Pa = 0.0;
  double wet_h = 0.0;
  double peak_film_g_m2 = 0.0;
  double with_air_kg = 0.0;  ///< vapour of the room's that comes with air
  double diffused_kg = 0.0;
};

Winter winter_of(const GapCase& c, double mean_pressure_Pa) {
  auto steps = weather_about(c, 60, 7);
  for (auto& step : steps) {
    step.pressure.mean_Pa = mean_pressure_Pa;
  }
  Winter winter;
  const auto hours = static_cast<double>(steps.size());
  run_gap_hours(design_of(c), {.vapour_Pa = 700.0}, steps, [&](std::size_t i, const HourState& s) {
    winter.gap_vapour_Pa += s.vapour_Pa / hours;
    winter.outdoor_vapour_Pa += steps[i].outdoor_vapour_Pa / hours;
    winter.room_vapour_Pa += steps[i].room_vapour_Pa / hours;
    winter.wet_h += s.pane_film_kg_m2 > 0.001 ? 1.0 : 0.0;
    winter.peak_film_g_m2 = std::max(winter.peak_film_g_m2, 1000.0 * s.pane_film_kg_m2);
    winter.with_air_kg += 3600.0 * s.from_room_m3_s * steps[i].room_vapour_Pa / (461.5 * 283.0);
    winter.diffused_kg += s.ledger.diffused_in_kg;
  });
  return winter;
}

/// Wilson, Canadian Building Digest 5 (1960), opening: the dew point between the panes lies between the
/// room's and outdoors', and some condensation is to be expected.
TEST(MeasuredTrends, TheGapsVapourLiesBetweenOutdoorsAndTheRooms) {
  double wettest_h = 0.0;
  for (const double inner : {0.005, 0.02, 0.1}) {
    for (const double outer : {0.02, 0.1, 0.5}) {
      const auto winter = winter_of(window(inner, outer), 0.5);
      EXPECT_GT(winter.gap_vapour_Pa, winter.outdoor_vapour_Pa) << inner << ' ' << outer;
      EXPECT_LT(winter.gap_vapour_Pa, winter.room_vapour_Pa) << inner << ' ' << outer;
      wettest_h = std::max(wettest_h, winter.wet_h);
    }
  }
  EXPECT_GT(wettest_h, 24.0);
}

/// Wilson and Nowak, ASHRAE Trans. 65 (1959) 551, abstract: air leakage outweighs diffusion as the pressure
/// difference grows.
TEST(MeasuredTrends, LeakageOutweighsDiffusionAsPressureGrows) {
  auto c = window(0.002, 0.2);
  c.diffusion_to_room_kg_sPa = 2e-11;  // a thin film, or polycarbonate
  double share_before = 0.0;
  for (const double pressure_Pa : {0.0, 0.5, 1.0, 2.0, 5.0, 10.0}) {
    const auto winter = winter_of(c, pressure_Pa);
    const double share = winter.with_air_kg / (winter.with_air_kg + winter.diffused_kg);
    EXPECT_GT(share, share_before) << pressure_Pa;
    share_before = share;
  }
  EXPECT_GT(share_before, 0.5);
}

/// Canadian Building Digest 5 and heritage guides: the inner seal is to be tighter than the outer.
TEST(MeasuredTrends, AnInnerSealTighterThanTheOuterKeepsTheGapDrier) {
  const auto inner_tighter = winter_of(window(0.01, 0.2), 0.5);
  const auto alike = winter_of(window(0.1, 0.1), 0.5);
  const auto outer_tighter = winter_of(window(0.2, 0.01), 0.5);
  EXPECT_LT(inner_tighter.gap_vapour_Pa, alike.gap_vapour_Pa);
  EXPECT_LT(inner_tighter.wet_h, alike.wet_h);
  EXPECT_LT(inner_tighter.wet_h, outer_tighter.wet_h);
}

/// More outdoor leakage under outward flow first wets (it draws room air in), then dries.
TEST(MeasuredTrends, MoreOutdoorLeakageUnderOutwardFlowFirstWetsThenDries) {
  std::vector<double> film_g_m2;
  for (const double outer : {0.0005, 0.01, 0.05, 0.2, 1.0, 5.0, 20.0}) {
    auto c = window(0.005, outer);
    c.diffusion_to_outdoors_kg_sPa = 2e-12;
    const auto winter = winter_of(c, 1.0);
    film_g_m2.push_back(winter.peak_film_g_m2);
    std::cout << outer << " m3/(h m): wet " << winter.wet_h << " h, at most " << winter.peak_film_g_m2
              << " g/m2\n";
  }
  const auto most = std::max_element(film_g_m2.begin(), film_g_m2.end());
  EXPECT_NE(most, film_g_m2.begin());
  EXPECT_GT(*most, 1.1 * film_g_m2.front());
  EXPECT_LT(film_g_m2.back(), 0.5 * film_g_m2.front());
}

}  // namespace
}  // namespace dewgap::test
