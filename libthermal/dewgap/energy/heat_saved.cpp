#include "dewgap/energy/heat_saved.hpp"

#include <cstddef>

#include "dewgap/errors.hpp"

namespace dewgap {
namespace {

constexpr double hours_per_day = 24.0;
constexpr double W_per_kW = 1000.0;

void validate_months(const HeatSavedInput& input) {
  for (std::size_t month = 0; month < 12; ++month) {
    require_in_range(input.degree_days_Kd[month], {0.0, 3000.0}, "degree_days_Kd", "K day");
    require_in_range(input.heating_days[month], {0.0, 31.0}, "heating_days", "day");
    require_in_range(input.sun_cut_kWh_day[month], {0.0, 1000.0}, "sun_cut_kWh_day", "kWh/day");
  }
}

void validate(const HeatSavedInput& input) {
  validate_months(input);
  constexpr PermittedRange share{0.0, 1.0};
  constexpr PermittedRange cut_W_K{-1000.0, 1000.0};
  require_in_range(input.room_C, {0.0, 35.0}, "room_C", "C");
  require_in_range(input.base_C, {-30.0, input.room_C}, "base_C", "C");
  require_in_range(input.heated_share_of_day, share, "heated_share_of_day", "-");
  require_in_range(input.glass_conductance_cut_W_K, cut_W_K, "glass_conductance_cut_W_K", "W/K");
  require_in_range(input.frame_conductance_cut_W_K, cut_W_K, "frame_conductance_cut_W_K", "W/K");
  require_in_range(input.draught_cut_m3_h, {-5000.0, 5000.0}, "draught_cut_m3_h", "m3/h");
  require_in_range(input.draught_needed_share, share, "draught_needed_share", "-");
  require_in_range(input.sun_used_share, share, "sun_used_share", "-");
}

/// kWh a year that one W/K saves: DESIGN 'Degree-days and money', DD(tb) + (Ti - tb) N_heat, over the heated
/// share.
double kWh_per_W_K(const HeatSavedInput& input) {
  double kelvin_days = 0.0;
  for (std::size_t month = 0; month < 12; ++month) {
    kelvin_days += input.degree_days_Kd[month] + (input.room_C - input.base_C) * input.heating_days[month];
  }
  return kelvin_days * hours_per_day / W_per_kW * input.heated_share_of_day;
}

/// Sun that no longer comes in, of which a share would have replaced heat on heating days.
double sun_lost_kWh(const HeatSavedInput& input) {
  double lost_kWh = 0.0;
  for (std::size_t month = 0; month < 12; ++month) {
    lost_kWh += input.sun_cut_kWh_day[month] * input.heating_days[month];
  }
  return lost_kWh * input.sun_used_share;
}

/// Whole-dwelling heat H DD(tb), tb = Ti - gains / H, kWh.
double dwelling_heat_kWh(const Place& place, double room_C, double gains_W, double loss_W_K,
                         DegreeDayMethod method) {
  const double base_C = room_C - gains_W / loss_W_K;
  return loss_W_K * annual_degree_days_Kd(place, base_C, method) * hours_per_day / W_per_kW;
}

}  // namespace

HeatSaved heat_saved(const HeatSavedInput& input) {
  validate(input);
  const double per_W_K = kWh_per_W_K(input);
  // air that ventilation still needs comes in by another way and is heated all the same
  const double air_cut_W_K = input.draught_cut_m3_h * (1.0 - input.draught_needed_share) * air_heat_Wh_m3K;
  return {.glass_kWh = input.glass_conductance_cut_W_K * per_W_K,
          .frame_kWh = input.frame_conductance_cut_W_K * per_W_K,
          .air_kWh = air_cut_W_K * per_W_K,
          .sun_lost_kWh = sun_lost_kWh(input)};
}

double heat_saved_by_new_base_kWh(const Place& place, double room_C, double gains_W, double loss_before_W_K,
                                  double loss_after_W_K, DegreeDayMethod method) {
  require_in_range(room_C, {0.0, 35.0}, "room_C", "C");
  require_in_range(gains_W, {0.0, 1e6}, "gains_W", "W");
  require_in_range(loss_before_W_K, {1.0, 1e6}, "loss_before_W_K", "W/K");
  require_in_range(loss_after_W_K, {1.0, 1e6}, "loss_after_W_K", "W/K");
  return dwelling_heat_kWh(place, room_C, gains_W, loss_before_W_K, method) -
         dwelling_heat_kWh(place, room_C, gains_W, loss_after_W_K, method);
}

}  // namespace dewgap
