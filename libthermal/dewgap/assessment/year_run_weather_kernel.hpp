// One sample's weather and room, hour by hour. Internal to assessment/.
#pragma once

#include <algorithm>
#include <cstddef>
#include <limits>

#include "dewgap/air/saturation_table_kernel.hpp"
#include "dewgap/assessment/year_design_kernel.hpp"
#include "dewgap/assessment/year_run_kernel.hpp"

namespace dewgap {

/// An hour as all options share it. The room's vapour in `given` is that of the old window as it is.
struct SampleHour {
  HourConditions given;
  std::size_t month = 0;        ///< 0 to 11
  std::size_t hour_of_day = 0;  ///< that it begins at
  bool heating = false;         ///< running mean below the base
  bool cold_half = false;       ///< of the year: October to March north of the equator
  double running_vapour_Pa = 0.0;
  double excess_Pa = 0.0;        ///< of the room, before any sealing
  double highest_room_Pa = 0.0;  ///< what walls and panes leave

  double room_vapour_Pa(double excess_factor) const {
    return std::min(highest_room_Pa, running_vapour_Pa + excess_factor * excess_Pa);
  }
};

/// How a sample's cloud scales the sky's depression: 1 at the prior's middle, linear in clear sky,
/// 1 + share (1 - cloud) / (1 - middle) - share. With the prior's bounds 0.3 to 1 and a share of 0.5 that is
/// 0.5 to 1.5: the year's own course is kept, and on average its mean. Our convention.
double sky_scale(double cloud_cover, double belief_share);

/// October to March north of the equator, April to September south of it.
bool in_cold_half(const YearSetting& year, std::size_t month);

class SampleWeather {
 public:
  /// Throws InvalidInput when the sample's weather leaves -60 to 48 C.
  SampleWeather(const YearSetting& year, const UnknownValues& sample, double excess_scale);

  /// Hours of the columns in any order; in order a day's wind direction is drawn once.
  SampleHour at(std::size_t hour);
  /// As they go into the pressure: wind at the station, and its angle from the window's normal, 0 to 180.
  double station_wind_m_s(std::size_t hour) const;
  double wind_angle_deg(std::size_t hour) const;
  /// Moisture of the wood when the sheet goes up: as it felt, else in equilibrium with that month.
  double fitted_timber_kg_kg();

 private:
  double facade_coefficient(std::size_t hour);
  Moment moment_at(std::size_t hour) const;
  OutdoorClimate outdoors_at(std::size_t hour, const Moment& moment) const;
  void add_room(std::size_t hour, SampleHour& now) const;

  const YearSetting& year_;
  const Setting& setting_;
  UnknownValues sample_;
  const air_kernel::SaturationTable& saturation_;
  double excess_scale_;
  double offset_K_;
  double sky_scale_;
  double sky_view_;
  double window_wind_ratio_;
  double highest_wind_m_s_;
  AbsorbedShares absorbed_;
  double prevailing_angle_deg_;
  std::size_t day_ = std::numeric_limits<std::size_t>::max();  ///< that day_coefficient_ holds for
  double day_coefficient_ = 0.0;
};

}  // namespace dewgap
