// Filling in hours without a value.
#include <algorithm>
#include <cmath>

#include "dewgap/air/saturation.hpp"
#include "tools/weather/gaps_kernel.hpp"

namespace dewgap::tools::weather {
namespace {

constexpr double least_outside_W_m2 = 20.0;  // our convention: below it clearness means little

std::vector<bool> missing_of(const HourlyValues& hourly) {
  std::vector<bool> missing(hourly.values.size());
  for (std::size_t slot = 0; slot < missing.size(); ++slot) missing[slot] = !hourly.values[slot];
  return missing;
}

double straight(double from, double to, double share) {
  return from + share * (to - from);
}

// Along the shorter of the two arcs between two directions, 0 to 360.
double along_arc(double from_deg, double to_deg, double share) {
  const double turn_deg = std::remainder(to_deg - from_deg, 360.0);
  const double direction_deg = std::fmod(from_deg + share * turn_deg + 360.0, 360.0);
  return std::clamp(direction_deg, 0.0, 360.0);
}

class Filler {
 public:
  Filler(const SunSite& site, std::size_t hours)
      : site_(site), result_{.columns = {}, .was_filled = std::vector<bool>(hours)} {}

  void fill(const HourlyValues& hourly) {
    auto& column = result_.columns.*hourly.column.rule->column;
    column.reserve(hourly.values.size());
    for (const auto& value : hourly.values) column.push_back(value.value_or(0.0));
    for (const auto& gap : gaps_of(missing_of(hourly))) fill_gap(column, gap, hourly.column.rule->filling);
  }

  FilledColumns finish() {
    hold_vapour_at_saturation();
    result_.filled_hours =
        static_cast<std::size_t>(std::count(result_.was_filled.begin(), result_.was_filled.end(), true));
    return std::move(result_);
  }

 private:
  void fill_gap(std::vector<double>& column, const Gap& gap, Filling filling) {
    const auto slots = column.size();
    const auto before = (gap.first_slot + slots - 1) % slots;
    const auto after = (gap.first_slot + gap.length_h) % slots;
    for (std::size_t i = 0; i < gap.length_h; ++i) {
      const auto slot = (gap.first_slot + i) % slots;
      const double share = static_cast<double>(i + 1) / static_cast<double>(gap.length_h + 1);
      column[slot] = value_between(column, {before, slot, after}, share, filling);
      result_.was_filled[slot] = true;
    }
    result_.longest_gap_h = std::max(result_.longest_gap_h, gap.length_h);
  }

  struct Slots {
    std::size_t before;
    std::size_t here;
    std::size_t after;
  };

  double value_between(const std::vector<double>& column, const Slots& slots, double share,
                       Filling filling) const {
    const double from = column[slots.before];
    const double to = column[slots.after];
    switch (filling) {
      case Filling::straight:
        return straight(from, to, share);
      case Filling::along_the_arc:
        return along_arc(from, to, share);
      case Filling::while_lit:
        return sun_of(slots.here).lit_share > 0.0 ? straight(from, to, share) : 0.0;
      case Filling::by_clearness:
        return by_clearness(column, slots, share);
    }
    return straight(from, to, share);
  }

  /// Clearness straight between the two hours that have one; a dark neighbour takes the other's.
  double by_clearness(const std::vector<double>& column, const Slots& slots, double share) const {
    const auto here = sun_of(slots.here);
    if (here.lit_share <= 0.0) return 0.0;
    const auto from = clearness(column, slots.before);
    const auto to = clearness(column, slots.after);
    if (!from && !to) return straight(column[slots.before], column[slots.after], share);
    return here.extraterrestrial_W_m2 *
           straight(from.value_or(to.value_or(0.0)), to.value_or(from.value_or(0.0)), share);
  }

  std::optional<double> clearness(const std::vector<double>& column, std::size_t slot) const {
    const double outside_W_m2 = sun_of(slot).extraterrestrial_W_m2;
    if (outside_W_m2 < least_outside_W_m2) return std::nullopt;
    return std::min(1.0, column[slot] / outside_W_m2);
  }

  SunOfHour sun_of(std::size_t slot) const {
    return sun_of_hour(site_, static_cast<int>(slot / 24) + 1, static_cast<int>(slot % 24));
  }

  // A filled-in temperature or humidity must not make air that cannot be.
  void hold_vapour_at_saturation() {
    auto& columns = result_.columns;
    for (std::size_t slot = 0; slot < result_.was_filled.size(); ++slot) {
      if (!result_.was_filled[slot]) continue;
      const double air_C = columns.air_temperature_C[slot];
      if (!columns.dew_point_C.empty())
        columns.dew_point_C[slot] = std::min(columns.dew_point_C[slot], air_C);
      if (!columns.vapour_pressure_Pa.empty())
        columns.vapour_pressure_Pa[slot] =
            std::min(columns.vapour_pressure_Pa[slot],
                     saturation_pressure_Pa(air_C, SaturationFormula::murphy_koop, Phase::water));
    }
  }

  SunSite site_;
  FilledColumns result_;
};

}  // namespace

FilledColumns filled_columns(const std::vector<HourlyValues>& of_slots, const SunSite& site) {
  Filler filler(site, of_slots.front().values.size());
  for (const auto& hourly : of_slots) filler.fill(hourly);
  return filler.finish();
}

}  // namespace dewgap::tools::weather
