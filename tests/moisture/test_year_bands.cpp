#include "dewgap/moisture/year_bands.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <functional>
#include <string>
#include <vector>

#include "dewgap/errors.hpp"
#include "moisture/random_draw.hpp"
#include "support/not_a_number.hpp"

namespace dewgap {
namespace {

/// A field that is judged, with what a run needs besides: as many hours in all.
struct Field {
  std::string name;
  std::function<void(DampYear&, double)> set;
};

const Field wet_hours{"hours_wet", [](DampYear& y, double v) { y.hours_wet = v; }};
const Field wet_run{"longest_wet_run_h", [](DampYear& y, double v) {
                      y.hours_wet = std::max(y.hours_wet, v);
                      y.longest_wet_run_h = v;
                    }};
const Field peak{"peak_film_g_m2", [](DampYear& y, double v) { y.peak_film_g_m2 = v; }};
const Field run_off{"run_off_kg_m2", [](DampYear& y, double v) { y.run_off_kg_m2 = v; }};
const Field pool_hours{"pool_hours", [](DampYear& y, double v) { y.pool_hours = v; }};
const Field pool_run{"longest_pool_run_h", [](DampYear& y, double v) {
                       y.pool_hours = std::max(y.pool_hours, v);
                       y.longest_pool_run_h = v;
                     }};
const Field timber_run{"longest_timber_run_h", [](DampYear& y, double v) {
                         y.timber_hours_above_caution = std::max(y.timber_hours_above_caution, v);
                         y.longest_timber_run_h = v;
                       }};

YearBand with(const Field& field, double value, double as_it_is_h = 0.0) {
  DampYear year;
  field.set(year, value);
  return year_band(year, as_it_is_h);
}

double above(double value) {
  return std::nextafter(value, 1e9);
}

double below(double value) {
  return std::nextafter(value, -1.0);
}

TEST(YearBands, NothingAtAllIsDry) {
  EXPECT_EQ(year_band({}), YearBand::dry);
}

TEST(YearBands, EdgesOfDry) {
  EXPECT_EQ(with(wet_hours, below(10.0)), YearBand::dry);
  EXPECT_EQ(with(wet_hours, 10.0), YearBand::harmless_mist);
  EXPECT_EQ(with(peak, below(5.0)), YearBand::dry);
  EXPECT_EQ(with(peak, 5.0), YearBand::harmless_mist);
  EXPECT_EQ(with(pool_hours, below(10.0)), YearBand::dry);
  EXPECT_EQ(with(pool_hours, 10.0), YearBand::harmless_mist);
}

TEST(YearBands, EdgesOfHarmlessMist) {
  EXPECT_EQ(with(peak, below(30.0)), YearBand::harmless_mist);
  EXPECT_EQ(with(peak, 30.0), YearBand::runs);
  EXPECT_EQ(with(wet_run, 168.0), YearBand::harmless_mist);
  EXPECT_EQ(with(wet_run, above(168.0)), YearBand::runs);
  EXPECT_EQ(with(pool_run, 168.0), YearBand::harmless_mist);
  EXPECT_EQ(with(pool_run, above(168.0)), YearBand::runs);
  EXPECT_EQ(with(run_off, 0.001), YearBand::dry);  // water that ran has misted: here nothing else did
  EXPECT_EQ(with(run_off, above(0.001)), YearBand::runs);
  EXPECT_EQ(with(timber_run, 168.0), YearBand::dry);
  EXPECT_EQ(with(timber_run, above(168.0)), YearBand::runs);
  // Many hours wet, each spell short: still mist.
  EXPECT_EQ(with(wet_hours, 3000.0), YearBand::harmless_mist);
}

TEST(YearBands, EdgesOfDamage) {
  EXPECT_EQ(with(pool_run, 336.0), YearBand::runs);
  EXPECT_EQ(with(pool_run, above(336.0)), YearBand::damages);
  EXPECT_EQ(with(timber_run, 672.0), YearBand::runs);
  EXPECT_EQ(with(timber_run, above(672.0)), YearBand::damages);
  EXPECT_EQ(with(peak, 1e6), YearBand::runs);
  EXPECT_EQ(with(wet_run, 8784.0), YearBand::runs);
  EXPECT_EQ(year_band({.after_summer = AfterSummer::still_wet}), YearBand::damages);
}

TEST(YearBands, TimberIsHeldAgainstTheOldWindow) {
  EXPECT_EQ(with(timber_run, 2000.0, 2000.0), YearBand::dry);
  EXPECT_EQ(with(timber_run, 2168.0, 2000.0), YearBand::dry);
  EXPECT_EQ(with(timber_run, 2169.0, 2000.0), YearBand::runs);
  EXPECT_EQ(with(timber_run, 2672.0, 2000.0), YearBand::runs);
  EXPECT_EQ(with(timber_run, 2673.0, 2000.0), YearBand::damages);
  EXPECT_EQ(with(timber_run, 100.0, 8784.0), YearBand::dry);
  // Hours that are not on end do not decide.
  EXPECT_EQ(year_band({.timber_hours_above_caution = 4000.0}), YearBand::dry);
}

DampYear drawn(test::RandomDraw& draw) {
  DampYear year;
  wet_run.set(year, draw.or_none(3, draw.log_between(1.0, 4000.0)));
  year.hours_wet += draw.or_none(3, draw.log_between(1.0, 4000.0));
  peak.set(year, draw.or_none(4, draw.log_between(0.1, 200.0)));
  run_off.set(year, draw.or_none(2, draw.log_between(1e-4, 1.0)));
  pool_run.set(year, draw.or_none(2, draw.log_between(1.0, 2000.0)));
  timber_run.set(year, draw.or_none(2, draw.log_between(10.0, 4000.0)));
  year.after_summer = draw.between(0.0, 1.0) < 0.05 ? AfterSummer::still_wet : AfterSummer::dried;
  return year;
}

TEST(YearBands, AWorseYearNeverHasABetterBand) {
  const std::vector<std::function<void(DampYear&, double)>> worsen{
      [](DampYear& y, double by) { y.hours_wet += by; },
      [](DampYear& y, double by) { y.hours_wet += by, y.longest_wet_run_h += by; },
      [](DampYear& y, double by) { y.peak_film_g_m2 += by; },
      [](DampYear& y, double by) { y.run_off_kg_m2 += 1e-3 * by; },
      [](DampYear& y, double by) { y.pool_hours += by; },
      [](DampYear& y, double by) { y.pool_hours += by, y.longest_pool_run_h += by; },
      [](DampYear& y, double by) { y.timber_hours_above_caution += by; },
      [](DampYear& y, double by) { y.timber_hours_above_caution += by, y.longest_timber_run_h += by; },
      [](DampYear& y, double) { y.after_summer = AfterSummer::still_wet; }};
  test::RandomDraw draw(20);
  std::vector<int> seen(4, 0);
  int changed = 0;
  for (int i = 0; i < 20000; ++i) {
    const DampYear year = drawn(draw);
    const double as_it_is_h = draw.or_none(2, draw.between(0.0, 3000.0));
    const YearBand band = year_band(year, as_it_is_h);
    ++seen[static_cast<std::size_t>(band)];
    for (const auto& step : worsen) {
      DampYear worse = year;
      step(worse, draw.log_between(0.01, 700.0));
      const YearBand after = year_band(worse, as_it_is_h);
      ASSERT_GE(after, band);
      changed += after != band ? 1 : 0;
    }
    // A worse window as it is never makes the new one look worse.
    ASSERT_LE(year_band(year, as_it_is_h + 500.0), band);
  }
  for (const int count : seen) {
    EXPECT_GT(count, 100);
  }
  EXPECT_GT(changed, 1000);
}

TEST(YearBands, Names) {
  EXPECT_EQ(name_of(YearBand::dry), "dry");
  EXPECT_EQ(name_of(YearBand::harmless_mist), "harmless mist");
  EXPECT_EQ(name_of(YearBand::runs), "runs");
  EXPECT_EQ(name_of(YearBand::damages), "damages");
}

TEST(YearBands, RefuseWhatCannotBe) {
  for (const double bad : {-1e-9, test::not_a_number, 1e7}) {
    for (const auto& field : {wet_hours, wet_run, peak, run_off, pool_hours, pool_run, timber_run}) {
      EXPECT_THROW(with(field, bad), InvalidInput) << field.name << " " << bad;
    }
    EXPECT_THROW(year_band({}, bad), InvalidInput);
  }
  EXPECT_THROW(year_band({.hours_wet = 5.0, .longest_wet_run_h = 6.0}), InvalidInput);
  EXPECT_THROW(year_band({.longest_pool_run_h = 1.0}), InvalidInput);
  EXPECT_THROW(year_band({.longest_timber_run_h = 1.0}), InvalidInput);
  EXPECT_THROW(year_band({.after_summer = static_cast<AfterSummer>(7)}), InvalidInput);
}

}  // namespace
}  // namespace dewgap
