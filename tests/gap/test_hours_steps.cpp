// Hourly steps against half-hourly ones on the same weather.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "gap/gap_cases.hpp"
#include "gap/hour_cases.hpp"
#include "gap/random_cases.hpp"

namespace dewgap::test {
namespace {

constexpr double wet_from_kg_m2 = 0.001;

struct YearOfFilm {
  double mass_h_kg_m2 = 0.0;  ///< integral of the film over time
  double wet_h = 0.0;
};

/// Time above the limit on a straight line between the ends of a step; a film that dries out does so in a
/// part of it.
double share_above(double before, double after, double drying_part) {
  if (before > wet_from_kg_m2 && after > wet_from_kg_m2) {
    return 1.0;
  }
  if (before <= wet_from_kg_m2 && after <= wet_from_kg_m2) {
    return 0.0;
  }
  const double crossing = (wet_from_kg_m2 - before) / (after - before);
  return after > before ? 1.0 - crossing : drying_part * crossing;
}

YearOfFilm film_of(const GapDesign& design, const std::vector<HourConditions>& steps) {
  YearOfFilm year;
  double before = 0.0;
  run_gap_hours(design, {}, steps, [&](std::size_t i, const HourState& s) {
    const double hours = steps[i].duration_s / 3600.0;
    const double part = s.pane_film_kg_m2 > 0.0 ? 1.0 : s.pane_drying_part;
    year.mass_h_kg_m2 += 0.5 * hours * part * (before + s.pane_film_kg_m2);
    year.wet_h += hours * share_above(before, s.pane_film_kg_m2, part);
    before = s.pane_film_kg_m2;
  });
  return year;
}

/// A worn sash with tape, joints, gap, timber and pressure as found on site.
GapCase usual_case(std::uint64_t seed) {
  auto c = worn_sash_case();
  const double u = std::fmod(0.618034 * static_cast<double>(seed), 1.0);
  const double v = std::fmod(0.754878 * static_cast<double>(seed), 1.0);
  const double w = std::fmod(0.569840 * static_cast<double>(seed), 1.0);
  c.stack.gaps[0].width_m = 0.012 + 0.048 * w;
  const auto joints = [](double coefficient) {
    return std::vector<PlacedOpening>{{joint_resistance(coefficient, 2.0 / 3.0, 1.2), 0.0},
                                      {joint_resistance(coefficient, 2.0 / 3.0, 2.0), 0.6},
                                      {joint_resistance(coefficient, 2.0 / 3.0, 1.2), 1.2}};
  };
  c.network.to_room = joints(0.002 * std::pow(25.0, v));
  c.network.to_outdoors = joints(0.01 * std::pow(50.0, u));
  c.room_vapour_Pa = 900.0 + 500.0 * w;
  c.outdoors.air_temperature_C = 6.0 * u;
  c.edge_temperature_factor = 0.9;
  return c;
}

struct Halved {
  int wet_windows = 0;
  int beyond_one_per_cent = 0;
  double worst = 0.0;
};

/// Film and wet hours of a year with hourly and half-hourly steps on the same weather, added to `before`.
Halved with_window(const Halved& before, const GapCase& c, const GapDesign& design, std::uint64_t seed) {
  Halved halved = before;
  const auto whole = film_of(design, weather_about(c, 365, seed, 1));
  const auto half = film_of(design, weather_about(c, 365, seed, 2));
  EXPECT_LE(std::abs(whole.wet_h - half.wet_h), std::max(0.01 * half.wet_h, 10.0))
      << seed << ": " << whole.wet_h << " h, halved " << half.wet_h;
  if (half.wet_h < 200.0) {
    return halved;  // traces: a per cent of next to nothing says nothing
  }
  const double change = std::abs(whole.mass_h_kg_m2 / half.mass_h_kg_m2 - 1.0);
  ++halved.wet_windows;
  halved.beyond_one_per_cent += change > 0.01 ? 1 : 0;
  halved.worst = std::max(halved.worst, change);
  return halved;
}

TEST(GapHoursSteps, HalvingTheStepOfUsualWindows) {
  // Mist that begins within the hour is what an hourly step sees least of: where it is thin and short, film
  // comes out up to 1.3 % low. All but one in twenty are within 1 %.
  Halved halved;
  for (std::uint64_t seed = 1; seed <= 40; ++seed) {
    const auto c = usual_case(seed);
    auto design = furnished(c, seed);
    design.drawn_stack.reset();  // a curtain drawn at once is another test
    halved = with_window(halved, c, design, seed);
  }
  EXPECT_GT(halved.wet_windows, 20);
  EXPECT_LE(20 * halved.beyond_one_per_cent, halved.wet_windows);
  EXPECT_LE(halved.worst, 0.015);
}

TEST(GapHoursSteps, HalvingTheStepOfAnyWindow) {
  // Drawn from the whole permitted range: damp timber in large amounts, and frost that builds up for weeks
  // and melts within an hour, take finer steps. At most one in six of them.
  Halved halved;
  for (std::uint64_t seed = 1; const auto& c : random_gap_cases(100, 43)) {
    if (c.stack.gaps[0].width_m <= 0.06) {
      halved = with_window(halved, c, furnished(c, seed), seed);
    }
    ++seed;
  }
  EXPECT_GT(halved.wet_windows, 10);
  EXPECT_LE(6 * halved.beyond_one_per_cent, halved.wet_windows);
  EXPECT_LE(halved.worst, 0.10);
}

}  // namespace
}  // namespace dewgap::test
