#include "assessment/year_cases.hpp"

#include <algorithm>
#include <vector>

#include "dewgap/air/humid_air.hpp"
#include "dewgap/climate/synthesised_year.hpp"

namespace dewgap::test {
namespace {

template <class Value>
std::vector<Value> part(const std::vector<Value>& column, std::size_t first, std::size_t hours) {
  if (column.empty()) {
    return {};
  }
  const auto begin = column.begin() + static_cast<std::ptrdiff_t>(first);
  return {begin, begin + static_cast<std::ptrdiff_t>(hours)};
}

}  // namespace

HourlyYear modelled_year(const Survey& survey) {
  return synthesised_year(*find_place(survey.place.nearest)).hours;
}

YearCase::YearCase(Survey of) : YearCase(of, modelled_year(of)) {}

YearCase::YearCase(Survey of, const HourlyYear& weather)
    : survey(std::move(of)), setting(setting_for(survey)), year(year_setting(setting, weather)) {}

UnknownValues middle_sample(const Survey& survey) {
  const auto beliefs = beliefs_for(survey);
  UnknownValues sample;
  for (std::size_t i = 0; i < unknown_count; ++i) {
    sample.value[i] = beliefs[i].fixed.value_or(beliefs[i].prior.at(0.5));
  }
  return sample;
}

UnknownValues damp_sample(const Survey& survey) {
  auto sample = middle_sample(survey);
  sample[Unknown::vapour_excess] = 800.0;
  sample[Unknown::seal_leakage] = 0.05;
  sample[Unknown::neutral_level_offset] = -1.5;
  return sample;
}

YearSetting cut(const YearSetting& year, std::size_t first, std::size_t hours) {
  YearSetting shorter = year;
  for (auto column :
       {&YearSetting::outdoor_C, &YearSetting::outdoor_vapour_Pa, &YearSetting::running_outdoor_C,
        &YearSetting::running_vapour_Pa, &YearSetting::sky_depression_K, &YearSetting::wind_m_s,
        &YearSetting::wind_angle_deg, &YearSetting::sun_W_m2}) {
    shorter.*column = part(year.*column, first, hours);
  }
  shorter.hour_of_year = part(year.hour_of_year, first, hours);
  shorter.month = part(year.month, first, hours);
  shorter.off_hour = year.off_hour > first ? year.off_hour - first : hours;
  return shorter;
}

YearSetting steady_month(const YearCase& at, const UnknownValues& sample, std::size_t hours) {
  auto year = cut(at.year, 0, hours);
  const auto month = month_moment(at.setting, sample, 1.0);
  const double offset_K = sample[Unknown::climate_offset];
  const auto fill = [](std::vector<double>& column, double value) {
    std::fill(column.begin(), column.end(), value);
  };
  fill(year.outdoor_C, month.outdoor_C - offset_K);
  fill(year.running_outdoor_C, month.outdoor_C - offset_K);
  fill(year.outdoor_vapour_Pa, month.outdoor_vapour_Pa);
  fill(year.running_vapour_Pa, month.outdoor_vapour_Pa);
  fill(year.sky_depression_K, month.outdoor_C - outdoors_at(at.setting, sample, month).sky_temperature_C);
  fill(year.wind_m_s, month.station_wind_m_s);
  fill(year.sun_W_m2, 0.0);
  year.wind_angle_deg.assign(hours, 90.0);
  year.has_wind_direction = true;
  year.cloud_belief_share = 0.0;
  year.lowest_outdoor_C = year.highest_outdoor_C = year.outdoor_C.front();
  return year;
}

std::array<double, 22> figures_of(const OptionYear& y) {
  const std::array<float, 20> plain{y.hours_wet,
                                    y.longest_wet_run_h,
                                    y.peak_film_g_m2,
                                    y.run_off_g_m2,
                                    y.drained_g_m2,
                                    y.peak_pool_g_m2,
                                    y.pool_hours,
                                    y.longest_pool_run_h,
                                    y.frost_hours,
                                    y.misty_mornings,
                                    y.edge_mist_hours,
                                    y.peak_timber,
                                    y.timber_hours_above_caution,
                                    y.longest_timber_run_h,
                                    y.room_face_peak_month_humidity,
                                    y.heat_kWh,
                                    y.inwards_share,
                                    y.outwards_share,
                                    y.unsettled_hours};
  std::array<double, 22> all{};
  std::copy(plain.begin(), plain.end(), all.begin());
  all[20] = static_cast<double>(y.band);
  all[21] = y.wet_after_summer ? 1.0 : 0.0;
  return all;
}

}  // namespace dewgap::test
