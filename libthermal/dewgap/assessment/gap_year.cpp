#include "dewgap/assessment/gap_year.hpp"

#include <algorithm>

#include "dewgap/assessment/vent_cases_kernel.hpp"
#include "dewgap/assessment/year_design_kernel.hpp"
#include "dewgap/assessment/year_run_weather_kernel.hpp"
#include "dewgap/assessment/year_tally_kernel.hpp"
#include "dewgap/climate/year_calendar_kernel.hpp"
#include "dewgap/errors.hpp"
#include "dewgap/gap/hour_kernel.hpp"

namespace dewgap {
namespace {

constexpr double rounding_kg_kg = 1e-9;

/// A case and how many of the equal parts of the weight it stands for.
struct PickedCase {
  std::size_t index;
  std::size_t parts;
};

/// In the order of the cases: those at the middles of the parts, each of them once.
std::vector<PickedCase> picked_cases(const VentCases& cases) {
  std::vector<PickedCase> picked;
  std::size_t index = 0;
  double passed = cases.weights.front();
  for (std::size_t part = 0; part < plausible_case_count; ++part) {
    const double target = (static_cast<double>(part) + 0.5) / static_cast<double>(plausible_case_count);
    while (passed < target && index + 1 < cases.weights.size()) {
      passed += cases.weights[++index];
    }
    if (picked.empty() || picked.back().index != index) {
      picked.push_back({.index = index, .parts = 0});
    }
    ++picked.back().parts;
  }
  return picked;
}

/// The values that were asked for; what is to be told of the case goes into the summary.
UnknownValues pick(const VentCases& cases, std::optional<std::size_t> number, GapYearSummary& summary) {
  const auto picked = picked_cases(cases);
  summary.case_count = picked.size();
  summary.cases_in_order = cases.effective >= least_effective_cases;
  if (!number) {
    return middle_case(cases);
  }
  require_in_range(static_cast<double>(*number), {1.0, static_cast<double>(picked.size())}, "plausible_case",
                   "");
  const auto& one = picked[*number - 1];
  summary.case_weight = static_cast<double>(one.parts) / static_cast<double>(plausible_case_count);
  return cases.samples[one.index];
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
  Rows(const YearSetting& year, const UnknownValues& sample, VentOption option, GapYearSummary& summary)
      : year_(year),
        calendar_(climate::calendar_of(year.outdoor_C.size())),
        option_(option),
        has_timber_(facing_timber(*year.setting, sample).area_m2 > 0.0),
        weather_(year, sample, 1.0),
        summary_(summary) {}

  GapHourRow next(std::size_t hour, const HourConditions& conditions, const HourState& state) {
    const std::size_t month = year_.month[hour];
    const std::size_t day = year_.hour_of_year[hour] / climate::hours_per_day;
    GapHourRow row{.hour_of_year = year_.hour_of_year[hour],
                   .month = month,
                   .day_of_month = day - calendar_.first_day[month] + 1,
                   .sheet_hangs = option_ != VentOption::off_in_summer || hour < year_.off_hour,
                   .conditions = conditions,
                   .state = state,
                   .timber_kg_kg = std::nullopt,
                   .wind_m_s = weather_.station_wind_m_s(hour),
                   .wind_angle_deg = weather_.wind_angle_deg(hour),
                   .sun_on_window_W_m2 = year_.sun_W_m2[hour]};
    if (has_timber_) {
      row.timber_kg_kg = state.timber_kg_kg;
      row.timber_is_full = state.timber_kg_kg >= gap_kernel::fullest_timber_kg_kg - rounding_kg_kg;
    }
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
  bool has_timber_;
  SampleWeather weather_;
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
                        const std::function<void(const GapHourRow&)>& each_hour,
                        const std::function<void(const GapYearSummary&)>& before_hours) {
  validate(survey);
  options.validate();
  require_offered(option, survey);
  const Setting setting = setting_for(survey);
  const auto cases =
      draw_cases(setting, options.readings,
                 {.prior_samples = options.prior_samples, .seed = options.seed, .fitted = options.fitted});
  GapYearSummary summary{.option = option};
  const auto sample = pick(cases, options.plausible_case, summary);
  const HourlyYear hours = weather_of(setting, weather);
  const YearSetting year = year_setting(setting, hours);
  summary.values = values_of(cases, sample);
  summary.glass_m2 = setting.window.areas.glass_m2;
  summary.utc_offset_h = hours.site.utc_offset_h;
  summary.weather_source = year.source;
  summary.modelled = year.modelled;
  summary.prior_samples = cases.drawn;
  summary.effective_samples = cases.effective;
  summary.seed = options.seed;
  if (before_hours) {
    before_hours(summary);
  }
  Rows rows(year, sample, option, summary);
  run_option_year(year, sample, option, 1.0,
                  [&](std::size_t hour, const HourConditions& conditions, const HourState& state) {
                    each_hour(rows.next(hour, conditions, state));
                  });
  rows.finish();
  return summary;
}

}  // namespace dewgap
