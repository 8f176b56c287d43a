// Vapour pressure of a room through a year of hours.
//
// Hour i begins i hours after midnight of 1 January by the clock (summer time is left out), and the year is
// closed on itself: December's end feeds January. Hours in a row must be whole days, 24 to 8784. Relative
// humidity is 0..1 over water at the room's temperature, as a hygrometer shows it. NaN and values outside a
// stated range throw InvalidInput.
#pragma once

#include <array>
#include <cstddef>
#include <span>
#include <variant>
#include <vector>

namespace dewgap {

/// Seven days: what furnishings and walls of a room smooth out. Between an hour, which the class excess never
/// follows, and the month that ISO 13788 means it for. Our convention.
inline constexpr double room_running_mean_h = 168.0;

/// Trailing exponential mean at the end of each hour, whose values are steady within the hour:
/// y_i = a y_(i-1) + (1 - a) x_i, a = exp(-1 h / time constant), with y_(-1) = y_last. Closed exactly (the
/// sum of the geometric series), whatever the time constant, 1 to 87600 h; the year's mean stays the same to
/// rounding. At least one value, each within +-1e9.
std::vector<double> running_mean(std::span<const double> hourly, double time_constant_h);

/// ISO 13788:2012 Annex A's shape, on running means instead of months: vapour = running mean of outdoor
/// vapour + excess at the running mean of outdoor temperature (vapour_excess_Pa). 0 to 5000 Pa.
struct ClassExcess {
  double excess_at_zero_Pa = 600.0;
};

/// A humidity that is kept, 0 to 1.
struct ConstantHumidity {
  double relative_humidity = 0.5;
};

/// A humidity by the hour of the day, each 0 to 1: entry 0 begins at midnight.
struct DailySchedule {
  std::array<double, 24> relative_humidity{};
};

/// Moisture set free and air exchanged with outdoors, by the hour of the day. Volumes are of room air. The
/// hygroscopic store is given as the air that would store as much per pascal; it follows at once and is the
/// same at every humidity (our convention). Furnished rooms: a few to some twenty times their air. A change
/// of the room's temperature moves no vapour.
struct ProductionAndAiring {
  std::array<double, 24> production_kg_h{};  ///< 0 to 50
  std::array<double, 24> airing_m3_h{};      ///< 0 to 1e5; over the day 0.01 at least on average
  double room_volume_m3 = 50.0;              ///< 1 to 1e5
  double buffering_m3 = 0.0;                 ///< 0 to 1e6
};

using RoomHumidityModel = std::variant<ClassExcess, ConstantHumidity, DailySchedule, ProductionAndAiring>;

/// Share of saturation at the room's temperature above which walls and panes take the rest, so that the air
/// does not go higher: our convention.
inline constexpr double room_saturation_share = 0.95;

struct RoomYearInput {
  std::span<const double> outdoor_temperature_C;    ///< -80 to 60; its running mean -60 to 50
  std::span<const double> outdoor_vapour_Pa;        ///< 0 to 10000, as many
  std::span<const double> room_temperature_C;       ///< -30 to 50, as many, or one for all
  double running_mean_h = room_running_mean_h;      ///< for ClassExcess, 1 to 87600
  double saturation_share = room_saturation_share;  ///< 0.5 to 1
};

struct RoomYear {
  std::vector<double> vapour_Pa;
  std::size_t capped_hours = 0;  ///< hours that would have been above the share of saturation
  double most_capped_Pa = 0.0;   ///< what was cut from the worst of them
};

/// The year by a model, capped. With ProductionAndAiring the cap acts within the balance: what walls and
/// panes took does not come back.
RoomYear room_year(const RoomHumidityModel& model, const RoomYearInput& input);

/// What sealing does: mean of after - before, Pa. Both of the same length, not empty.
double mean_rise_Pa(const RoomYear& before, const RoomYear& after);

// The same hour by hour, for a year that is worked out on the fly. Not capped: capped_vapour below.
// `hour` counts from the year's beginning. Room -30 to 50 C.

/// Running means as of running_mean: temperature -60 to 50 C, vapour 0 to 10000 Pa.
double room_vapour_Pa(const ClassExcess& model, double running_outdoor_C, double running_outdoor_vapour_Pa);
double room_vapour_Pa(const ConstantHumidity& model, double room_C);
double room_vapour_Pa(const DailySchedule& model, std::size_t hour, double room_C);

struct RoomHour {
  std::size_t hour = 0;
  double room_C = 20.0;
  double outdoor_vapour_Pa = 0.0;  ///< 0 to 10000
};
/// One hour of the balance, implicit: (V + B) (e - e_before) = G R_v T - Q (e - e_outdoor), over one hour.
/// vapour_before_Pa 0 to 1e9. Every call checks the model's entries of this hour and its volumes.
double room_vapour_Pa(const ProductionAndAiring& model, const RoomHour& at, double vapour_before_Pa);

/// Vapour before the first hour for which the capped balance ends as it began, exactly.
double closing_vapour_Pa(const ProductionAndAiring& model, const RoomYearInput& input);

/// A room's vapour pressure after the cap, and what the cap cut off; 0 where it did not act.
struct CappedVapour {
  double vapour_Pa;
  double cut_Pa;
};
/// vapour_Pa 0 to 1e9, share 0.5 to 1.
CappedVapour capped_vapour(double vapour_Pa, double room_C, double saturation_share = room_saturation_share);

}  // namespace dewgap
