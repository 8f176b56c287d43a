// One sample of the unknowns run through a year of hours under every vent option. Internal to assessment/.
#pragma once

#include <array>
#include <cstddef>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "dewgap/assessment/scenario_kernel.hpp"
#include "dewgap/climate/hourly_year.hpp"
#include "dewgap/gap/hours.hpp"
#include "dewgap/moisture/year_bands.hpp"

namespace dewgap {

/// What all samples share of the weather: columns worked out once a survey, per hour of the heating year
/// (from the month in which sheets go up: September north of the equator, March south of it). Hours begin by
/// the clock of the year's site.
///  - Temperature: the year's. A modelled year of another height than the window's is moved by 6.5 K/km; a
///  measured
///    one is taken as it is.
///  - Vapour: the year's; each sample holds it at saturation over water at its own temperature.
///  - Sky: the year's own effective temperature, or Berdahl and Martin's by its cloud (sky_temperature_C).
///  - Sun: on the window's plane, the mean of four quarters where its facing is not known, times the share
///  that
///    passes what stands opposite. At all angles of incidence as at normal.
struct YearSetting {
  const Setting* setting = nullptr;
  std::vector<double> outdoor_C;
  std::vector<double> outdoor_vapour_Pa;
  std::vector<double> running_outdoor_C;  ///< running mean that the room's moisture follows
  std::vector<double> running_vapour_Pa;
  std::vector<double> sky_depression_K;  ///< outdoor air less effective sky at the year's own cloud
  std::vector<double> wind_m_s;
  std::vector<double> wind_angle_deg;  ///< from the facade's normal; empty: modelled by day for each sample
  std::vector<double> sun_W_m2;        ///< on the window's plane, past what stands opposite
  std::vector<std::size_t> hour_of_year;  ///< from 1 January
  std::vector<std::size_t> month;         ///< 0 to 11
  double lowest_outdoor_C = 0.0;
  double highest_outdoor_C = 0.0;
  /// How far a sample's cloud_cover moves the sky's depression: share of the prior's own reach, see
  /// sky_scale.
  double cloud_belief_share = 0.0;
  bool has_wind_direction = false;
  std::size_t fitted_hour = 0;  ///< where in these columns the season's sheet goes up (0)
  std::size_t off_hour = 0;     ///< and where the one that is taken off in summer comes down (spring)
  std::string source;           ///< of the weather; says 'modelled from monthly normals' when it is
  ModelledColumns modelled;
};
/// Throws InvalidInput for a year that is not one (require_valid).
YearSetting year_setting(const Setting& setting, const HourlyYear& year);
/// The weather that was given, or one synthesised from the place's normals.
HourlyYear weather_of(const Setting& setting, const std::optional<HourlyYear>& given);

/// One option's year, small enough to keep for many samples. Films are those of the gap's faces, the larger
/// of the two; of the old window as it is, that of the pane's room side. off_in_summer counts the hours in
/// which its sheet hangs, but for timber, room face and heat. Between step ends a film's mass goes straight.
struct OptionYear {
  float hours_wet = 0;  ///< film over 1 g/m2, parts of hours counted
  float longest_wet_run_h = 0;
  float peak_film_g_m2 = 0;  ///< water; frost once it melts
  float run_off_g_m2 = 0;    ///< not of the old window as it is: it leaves this account
  float drained_g_m2 = 0;
  float peak_pool_g_m2 = 0;  ///< per m2 of glass
  float pool_hours = 0;      ///< pool over 1 g per m2 of glass
  float longest_pool_run_h = 0;
  float frost_hours = 0;      ///< frost over 1 g/m2
  float misty_mornings = 0;   ///< days with film over 1 g/m2 at 8 o'clock
  float edge_mist_hours = 0;  ///< gap's air at or above saturation at its cold edge
  float peak_timber = 0;  ///< kg/kg, of the bottom rail towards the gap; of the old window, towards the room
  float timber_hours_above_caution = 0;
  float longest_timber_run_h = 0;
  float room_face_peak_month_humidity =
      0;  ///< largest monthly mean of surface humidity, edge included; mould from 0.8
  /// Lost in heating hours (running mean below the base) through the glass and by the air of what the sheet
  /// covers, over the heated share: all of the stopped draught is credited but what ventilation needs. Only
  /// differences between options mean something: frame, uncovered joints and sun that passes are left out.
  float heat_kWh = 0;
  /// Of the cold half year's hours with a clear direction: net flow at least half of what enters (our
  /// convention).
  float inwards_share = 0;
  float outwards_share = 0;
  /// Means of the cold half year's hours while the sheet hangs: air into the gap, and what leaves it to
  /// outdoors.
  float cold_from_room_m3_s = 0;
  float cold_from_outdoors_m3_s = 0;
  float cold_to_outdoors_m3_s = 0;
  float unsettled_hours = 0;
  YearBand band = YearBand::dry;
  bool wet_after_summer = false;
};

struct SampleYear {
  SolveStatus status =
      SolveStatus::converged;  ///< not converged when over 0.1 % of an option's hours did not settle
  OptionYear as_it_is;
  std::array<OptionYear, every_vent_option.size()> options{};
  OptionYear lifted;  ///< sealed, with a 200 mm length of tape lifted
};

/// Whether an option can be offered for a survey at all: weep holes in a timber frame (nobody drills one at
/// site through a steel section or a profile of PVC-U or aluminium: common practice, no source) of a building
/// that is known to be unprotected; stripping where there are joints in series with the gap that are neither
/// stripped nor painted shut.
bool is_offered(VentOption option, const Survey& survey);

/// Window-hours that one sample costs: the old window, the offered options and the lifted tape. off_in_summer
/// costs none of its own: it is sealed while its sheet hangs and the old window after.
std::size_t window_hours_a_sample(const YearSetting& year);

/// The whole year for one sample: the hour's weather is worked out once and every offered option stepped in
/// it. `excess_scale` scales the room's vapour excess (a remedy). Options not offered stay empty. A sample
/// whose winter balance or more than 0.1 % of an option's hours do not settle says so in its status. Throws
/// InvalidInput when the sample's weather leaves -60 to 48 C. No memory that grows with the hours.
///
/// Our conventions: a room at least 2 K above outdoors; a curtain drawn from 18 to 7 o'clock; the room's
/// excess follows running means, raised by what draught the sheet stops at winter's mean; winds above 40 m/s
/// count as that.
SampleYear run_sample_year(const YearSetting& year, const UnknownValues& sample, double excess_scale = 1.0);

/// One option alone, from dry, as fitted; each hour handed out: for tables and pictures. off_in_summer hands
/// out the old window's hours once its sheet is off. Throws CalculationFailed when the sample's winter
/// balance does not settle.
void run_option_year(
    const YearSetting& year, const UnknownValues& sample, VentOption option, double excess_scale,
    const std::function<void(std::size_t hour, const HourConditions&, const HourState&)>& each);

/// Days until a gap that starts wet (film at its retention on both faces, a pool of `pool_g_m2` per m2 of
/// glass, timber at `timber_kg_kg`) is dry under an option from `start_hour` of the columns on, round the
/// year's end: film and pool under 1 g/m2 and timber, where there is any, at most 0.18 (our convention). No
/// value: not within a year. Pool 0 to 1e6 g/m2, timber 0 to 2.5. Throws as run_option_year.
std::optional<double> days_until_dry(const YearSetting& year, const UnknownValues& sample, VentOption option,
                                     double pool_g_m2, double timber_kg_kg, std::size_t start_hour);

}  // namespace dewgap
