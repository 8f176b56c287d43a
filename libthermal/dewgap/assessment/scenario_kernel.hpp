// From a survey and one sample of the unknowns to the cases that the physics solves. Internal to assessment/.
#pragma once

#include "dewgap/assessment/beliefs_kernel.hpp"
#include "dewgap/assessment/edge_of_window.hpp"
#include "dewgap/assessment/window_model_kernel.hpp"
#include "dewgap/climate/sun.hpp"

namespace dewgap {

/// Weather and room air of one steady moment.
struct Moment {
  double outdoor_C = 0.0;
  double outdoor_vapour_Pa = 0.0;
  double station_wind_m_s = 0.0;
  double cloud_cover = 0.5;
  double room_C = 20.0;
  double room_vapour_Pa = 1000.0;
};

/// Everything about the survey that all samples share.
struct Setting {
  const Survey* survey = nullptr;
  Place place;  ///< at the window's own height
  WindowModel window;
  DesignCondition month;  ///< coldest month's means
  DesignCondition frost;  ///< its mean minimum
  double yearly_sd_K = 5.0;
  MonthlySun sun;
  double sun_seen_share = 1.0;  ///< what stands opposite takes the rest
  double glass_solar_transmittance = 0.83;
  double sheet_solar_transmittance = 0.85;
  double window_above_ground_m = 1.5;  ///< mid-height over the ground floor of the connected space
  double neutral_level_m = 2.5;
  PressureCoefficients shelter;
  std::optional<EdgeOfWindow> edge;  ///< where the survey asks for it
};
Setting setting_for(const Survey& survey);
/// What is believed of each unknown, with what the edge's section says of it.
Beliefs beliefs_for(const Setting& setting);

/// The two design conditions with a sample's own weather offset and room humidity. `excess_factor` raises the
/// room's vapour excess (sealing) or lowers it (a remedy).
Moment month_moment(const Setting& setting, const UnknownValues& sample, double excess_factor);
Moment frost_moment(const Setting& setting, const UnknownValues& sample, double excess_factor);
/// Mean of the heating season, weighted by degree-days below the sample's base.
Moment winter_moment(const Setting& setting, const UnknownValues& sample);

/// Room vapour pressure when the outdoor monthly mean is outdoor_C, Pa; at most 95 % relative humidity, where
/// walls and panes already take the rest.
double room_vapour_Pa(const Setting& setting, const UnknownValues& sample, double outdoor_C,
                      double outdoor_vapour_Pa, double excess_factor);

enum class CurtainState { open, drawn };
inline bool has_curtain(const Setting& setting) {
  return setting.survey->sheet.curtain_gap_m.has_value();
}
enum class TapeFault { none, lifted_200_mm };

/// Wind near the window over the station's.
double wind_ratio_at_window(const Setting& setting, const UnknownValues& sample);
/// Share of the sky in what the glass sees.
double sky_view_of(const Setting& setting);
/// Pressure with the facade's coefficient for the hour's wind, and with the sample's mean over winter's
/// winds.
PressureWithinHour pressure_under(const Setting& setting, const UnknownValues& sample, const Moment& moment,
                                  double facade_coefficient);
PressureWithinHour pressure_at(const Setting& setting, const UnknownValues& sample, const Moment& moment);
OutdoorClimate outdoors_at(const Setting& setting, const UnknownValues& sample, const Moment& moment);
RoomClimate room_at(const UnknownValues& sample, const Moment& moment);

/// Which published gap correlation a sample uses.
GapCorrelation correlation_of(const UnknownValues& sample);

/// Stack of the old window alone, and with the sheet.
Stack single_stack(const Setting& setting, const UnknownValues& sample, CurtainState curtain);
Stack double_stack(const Setting& setting, const UnknownValues& sample, CurtainState curtain);

GapCase gap_case_for(const Setting& setting, const UnknownValues& sample, const Moment& moment,
                     VentOption vent, CurtainState curtain, TapeFault fault);

/// Draught through the old window alone, m3/h, each direction counted half (inflow to the dwelling once).
double draught_before_m3_h(const Setting& setting, const UnknownValues& sample, const Moment& moment);
/// Draught that bypasses the sheet, through joints that it does not cover; 0 when it covers them.
double draught_past_the_sheet_m3_h(const Setting& setting, const UnknownValues& sample, const Moment& moment);
/// Draught through the gap, m3/h, counted the same way.
double draught_through_gap_m3_h(const GapState& gap);

}  // namespace dewgap
