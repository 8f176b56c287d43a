#include "dewgap/moisture/year_bands.hpp"

#include "dewgap/errors.hpp"

namespace dewgap {
namespace {

constexpr PermittedRange hours_h{0.0, 8784.0};

void require_run_within(double run_h, double hours, std::string_view run, std::string_view all) {
  require_in_range(hours, hours_h, all, "h");
  require_in_range(run_h, {0.0, hours}, run, "h");
}

void require_valid(const DampYear& year) {
  require_run_within(year.longest_wet_run_h, year.hours_wet, "longest_wet_run_h", "hours_wet");
  require_run_within(year.longest_pool_run_h, year.pool_hours, "longest_pool_run_h", "pool_hours");
  require_run_within(year.longest_timber_run_h, year.timber_hours_above_caution, "longest_timber_run_h",
                     "timber_hours_above_caution");
  require_in_range(year.peak_film_g_m2, {0.0, 1e6}, "peak_film_g_m2", "g/m2");
  require_in_range(year.run_off_kg_m2, {0.0, 1e4}, "run_off_kg_m2", "kg/m2");
  if (year.after_summer != AfterSummer::dried && year.after_summer != AfterSummer::still_wet) {
    throw InvalidInput("after_summer", "is neither dried nor still_wet");
  }
}

bool damages(const DampYear& year, double timber_excess_h) {
  return year.after_summer == AfterSummer::still_wet || timber_excess_h > damage_timber_excess_h ||
         year.longest_pool_run_h > damage_pool_run_h;
}

bool harmless(const DampYear& year, double timber_excess_h) {
  return film_band(year.peak_film_g_m2) <= FilmBand::mist && year.run_off_kg_m2 <= mist_run_off_kg_m2 &&
         year.longest_wet_run_h <= mist_longest_run_h && year.longest_pool_run_h <= mist_longest_run_h &&
         timber_excess_h <= mist_timber_excess_h;
}

bool hardly_wet(const DampYear& year) {
  return year.hours_wet < dry_hours_below_h && year.pool_hours < dry_hours_below_h &&
         year.peak_film_g_m2 < dry_peak_below_g_m2;
}

}  // namespace

YearBand year_band(const DampYear& year, double timber_run_as_it_is_h) {
  require_valid(year);
  require_in_range(timber_run_as_it_is_h, hours_h, "timber_run_as_it_is_h", "h");
  const double timber_excess_h = year.longest_timber_run_h - timber_run_as_it_is_h;
  if (damages(year, timber_excess_h)) {
    return YearBand::damages;
  }
  if (!harmless(year, timber_excess_h)) {
    return YearBand::runs;
  }
  return hardly_wet(year) ? YearBand::dry : YearBand::harmless_mist;
}

std::string_view name_of(YearBand band) {
  switch (band) {
    case YearBand::dry:
      return "dry";
    case YearBand::harmless_mist:
      return "harmless mist";
    case YearBand::runs:
      return "runs";
    case YearBand::damages:
      return "damages";
  }
  return "unknown band";
}

}  // namespace dewgap
