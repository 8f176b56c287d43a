#include "dewgap/assessment/gap_year.hpp"

#include <algorithm>

#include "dewgap/assessment/vent_cases_kernel.hpp"
#include "dewgap/assessment/year_tally_kernel.hpp"
#include "dewgap/climate/year_calendar_kernel.hpp"
#include "dewgap/errors.hpp"

namespace dewgap {
namespace {

/// The wettest come first; case n of N stands at the middle of its part of the weight.
UnknownValues case_at(const VentCases& cases, std::size_t number) {
  const double target = (static_cast<double>(number) - 0.5) / static_cast<double>(plausible_case_count);
  double passed = 0.0;
  for (std::size_t i = 0; i < cases.weights.size(); ++i) {
    passed += cases.weights[i];
    if (passed >= target) {
      return cases.samples[i];
    }
  }
  return cases.samples.back();
}

std::vector<CaseValue> values_of(const VentCases& cases, const UnknownValues& sample) {
  std::vector<CaseValue> values;
  for (std::size_t j = 0; j < unknown_count; ++j) {
    const auto& prior = cases.beliefs[j].prior;
    values.push_back({.unknown = static_cast<Unknown>(j),
                      .label = prior.label,
                      .value = sample.value[j],
                      .unit = prior.unit});
  }
  return values;
}

/// Makes rows of hours, and counts what the summary tells.
class Rows {
 public:
  Rows(const YearSetting& year, VentOption option, GapYearSummary& summary)
      : year_(year),
        calendar_(climate::calendar_of(year.outdoor_C.size())),
        option_(option),
        summary_(summary) {}

  GapHourRow next(std::size_t hour, const HourConditions& conditions, const HourState& state) {
    const std::size_t month = year_.month[hour];
    const std::size_t day = year_.hour_of_year[hour] / climate::hours_per_day;
    GapHourRow row{.hour_of_year = year_.hour_of_year[hour],
                   .month = month,
                   .day_of_month = day - calendar_.first_day[month] + 1,
                   .sheet_hangs = option_ != VentOption::off_in_summer || hour < year_.off_hour,
                   .conditions = conditions,
                   .state = state};
    add_film(row);
    count(row);
    return row;
  }

  void finish() {
    const double hours = static_cast<double>(std::max<std::size_t>(1, cold_hours_));
    summary_.inwards_share = static_cast<double>(inwards_) / hours;
    summary_.outwards_share = static_cast<double>(outwards_) / hours;
    summary_.cold_from_room_m3_s /= hours;
    summary_.cold_from_outdoors_m3_s /= hours;
  }

 private:
  void add_film(GapHourRow& row) {
    constexpr double grams = 1000.0;
    const double film_g_m2 =
        row.sheet_hangs ? grams * std::max(row.state.pane_film_kg_m2, row.state.sheet_film_kg_m2) : 0.0;
    Spell hour(wet_from_g_m2);
    hour.step(row.sheet_hangs ? film_g_m2_ : 0.0, film_g_m2,
              film_g_m2 > 0.0 ? 1.0 : last_drying_part(row.state));
    row.wet_share = hour.total_h();
    row.misty_at_8 =
        ends_in_the_morning(row.hour_of_year % climate::hours_per_day) && film_g_m2 > wet_from_g_m2;
    film_g_m2_ = film_g_m2;
  }

  void count(const GapHourRow& row) {
    ++summary_.hours;
    if (row.state.status != SolveStatus::converged) {
      ++summary_.unsettled_hours;
      return;
    }
    if (!row.sheet_hangs || !in_cold_half(year_, row.month)) {
      return;
    }
    ++cold_hours_;
    summary_.cold_from_room_m3_s += row.state.from_room_m3_s;
    summary_.cold_from_outdoors_m3_s += row.state.from_outdoors_m3_s;
    const ClearWay way = clear_way(row.state);
    outwards_ += way == ClearWay::outwards ? 1 : 0;
    inwards_ += way == ClearWay::inwards ? 1 : 0;
  }

  const YearSetting& year_;
  climate::YearCalendar calendar_;
  VentOption option_;
  GapYearSummary& summary_;
  double film_g_m2_ = 0.0;
  std::size_t cold_hours_ = 0;
  std::size_t inwards_ = 0;
  std::size_t outwards_ = 0;
};

void require_offered(VentOption option, const Survey& survey) {
  if (!is_offered(option, survey)) {
    throw InvalidInput("option", std::string(name_of(option)) + ": cannot be offered for this window");
  }
}

}  // namespace

void GapYearOptions::validate() const {
  require_in_range(static_cast<double>(prior_samples), {64.0, 1e6}, "prior_samples", "");
  if (plausible_case) {
    require_in_range(static_cast<double>(*plausible_case), {1.0, static_cast<double>(plausible_case_count)},
                     "plausible_case", "");
  }
}

GapYearSummary gap_year(const Survey& survey, VentOption option, const std::optional<HourlyYear>& weather,
                        const GapYearOptions& options,
                        const std::function<void(const GapHourRow&)>& each_hour) {
  validate(survey);
  options.validate();
  require_offered(option, survey);
  const Setting setting = setting_for(survey);
  const auto cases =
      draw_cases(setting, options.readings,
                 {.prior_samples = options.prior_samples, .seed = options.seed, .fitted = options.fitted});
  const auto sample = options.plausible_case ? case_at(cases, *options.plausible_case) : middle_case(cases);
  const HourlyYear hours = weather_of(setting, weather);
  const YearSetting year = year_setting(setting, hours);
  GapYearSummary summary{.option = option,
                         .values = values_of(cases, sample),
                         .glass_m2 = setting.window.areas.glass_m2,
                         .utc_offset_h = hours.site.utc_offset_h,
                         .weather_source = year.source,
                         .modelled = year.modelled,
                         .prior_samples = cases.drawn,
                         .effective_samples = cases.effective,
                         .seed = options.seed};
  Rows rows(year, option, summary);
  run_option_year(year, sample, option, 1.0,
                  [&](std::size_t hour, const HourConditions& conditions, const HourState& state) {
                    each_hour(rows.next(hour, conditions, state));
                  });
  rows.finish();
  return summary;
}

}  // namespace dewgap
