#include "dewgap/assessment/year_run_option_kernel.hpp"

#include <algorithm>

#include "dewgap/moisture/timber_kernel.hpp"

namespace dewgap {
namespace {

constexpr double fullest_kg_kg = 1.2;  // softwood full of water; more runs off (from memory)
// The figures of a year are the same to four digits as with 1e-6 W/m2.
constexpr HourOptions hour_options{.closure_W_m2 = 1e-4};

}  // namespace

OpenTimber::OpenTimber(const GapDesign& sheet, double edge_factor, double start_kg_kg)
    : transfer_kg_m2sPa_(sheet.timber_transfer_kg_m2sPa),
      edge_factor_(edge_factor),
      moisture_kg_kg_(start_kg_kg) {
  if (sheet.timber.area_m2 > 0.0) {
    layer_ = moisture_kernel::prepared(sheet.timber);
  }
}

double OpenTimber::step(const SampleHour& now, const HourState& old_window) {
  if (!layer_) {
    return 0.0;
  }
  const double outdoor_C = now.given.outdoors.air_temperature_C;
  const auto after = moisture_kernel::step_prepared_layer(
      *layer_, moisture_kg_kg_, humidity_,
      {.duration_s = now.given.duration_s,
       .temperature_C = outdoor_C + edge_factor_ * (old_window.face_C[1] - outdoor_C),
       .air_vapour_Pa = now.given.room_vapour_Pa,
       .transfer_kg_m2sPa = transfer_kg_m2sPa_},
      air_kernel::saturation_table());
  moisture_kg_kg_ = std::min(after.moisture_kg_kg, fullest_kg_kg);
  humidity_ = after.relative_humidity;
  return moisture_kg_kg_;
}

GapStore fitted_store(SampleWeather& weather, const GapDesign& design) {
  return {.vapour_Pa = weather.at(0).given.room_vapour_Pa,
          .timber_kg_kg = design.timber.area_m2 > 0.0 ? weather.fitted_timber_kg_kg() : 0.0};
}

gap_kernel::GapHours<2> sheet_hours(const GapDesign& design, const GapStore& start) {
  gap_kernel::require_valid(design);
  gap_kernel::require_valid(start);
  return {design, start, hour_options};
}

gap_kernel::GapHours<1> old_window_hours(const Setting& setting, const UnknownValues& sample) {
  const auto design = old_window_design(setting, sample);
  gap_kernel::require_valid(design);
  return {design, GapStore{}, hour_options};
}

OptionRun::OptionRun(const YearSetting& year, const UnknownValues& sample, VentOption option,
                     double excess_scale)
    : year_(year),
      option_(option),
      weather_(year, sample, excess_scale),
      excess_factor_(excess_factor_under(*year.setting, sample, option, TapeFault::none,
                                         old_winter(*year.setting, sample))),
      has_timber_(facing_timber(*year.setting, sample).area_m2 > 0.0),
      gap_([&] {
        const auto design = sheet_design(*year.setting, sample, option, TapeFault::none);
        return sheet_hours(design, fitted_store(weather_, design));
      }()),
      old_window_(old_window_hours(*year.setting, sample)),
      timber_(sheet_design(*year.setting, sample, option, TapeFault::none), sample[Unknown::edge_factor],
              gap_.store().timber_kg_kg) {}

bool OptionRun::hangs_at(std::size_t hour) const {
  return option_ != VentOption::off_in_summer || hour < year_.off_hour;
}

void OptionRun::start_wet(GapStore store, std::size_t hour) {
  store.vapour_Pa = weather_.at(hour).room_vapour_Pa(excess_factor_);
  gap_kernel::require_valid(store);
  gap_.set_store(store);
  timber_.set(store.timber_kg_kg);
  hangs_ = true;
}

void OptionRun::take_off() {
  timber_.set(gap_.store().timber_kg_kg);
  hangs_ = false;
}

void OptionRun::put_back(double room_vapour_Pa) {
  gap_.set_store({.vapour_Pa = room_vapour_Pa, .timber_kg_kg = timber_.moisture_kg_kg()});
  hangs_ = true;
}

OptionHour OptionRun::step(std::size_t hour) {
  const auto now = weather_.at(hour);
  OptionHour out{.given = now.given, .sheet_hangs = hangs_at(hour)};
  if (out.sheet_hangs) {
    out.given.room_vapour_Pa = now.room_vapour_Pa(excess_factor_);
    if (!hangs_) {
      put_back(out.given.room_vapour_Pa);
    }
    out.state = gap_.step(out.given);
    return out;
  }
  if (hangs_) {
    take_off();
  }
  out.state = old_window_.step(out.given);
  if (out.state.status == SolveStatus::converged) {
    timber_.step(now, out.state);
  }
  out.state.timber_kg_kg = timber_.moisture_kg_kg();
  return out;
}

}  // namespace dewgap
