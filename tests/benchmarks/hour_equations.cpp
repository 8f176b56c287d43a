#include "hour_equations.hpp"

#include <algorithm>
#include <cmath>

#include "dewgap/airflow/gauss_hermite_kernel.hpp"

namespace dewgap::bench {
namespace {

using glazing_kernel::BlackEmission;

double celsius(double kelvin) {
  return kelvin - constants::celsius_zero_K;
}

}  // namespace

template <Flows flows, class Correlations>
HourEquations<flows, Correlations>::HourEquations(const Stack& stack, const GapNetwork& network)
    : correlations_(stack, network) {
  const auto prepared = glazing_kernel::real_equations<2>(stack, {}, {});
  long_wave_ = prepared.parts.long_wave;
  for (std::size_t i = 0; i < 2; ++i) {
    conductance_W_m2K_[i] = 1.0 / prepared.parts.resistance_m2K_W[i];
  }
  const auto rule = airflow_kernel::normal_points(gust_points);
  for (std::size_t k = 0; k < gust_points; ++k) {
    weight_[k] = rule[k].weight;
  }
}

template <Flows flows, class Correlations>
void HourEquations<flows, Correlations>::set_surroundings(const OutdoorClimate& outdoors,
                                                          const RoomClimate& room) {
  long_wave_.set_surroundings(glazing_kernel::surroundings_of(outdoors, room));
  correlations_.set_room(constants::kelvin(room.air_temperature_C), room.film_factor);
}

template <Flows flows, class Correlations>
std::array<double, HourEquations<flows, Correlations>::size>
HourEquations<flows, Correlations>::residual_scale() const {
  std::array<double, size> scale{};
  std::fill_n(scale.begin(), 4, 1.0);
  scale[4] = latent_scale_J_kg;
  constexpr double carried_K = 20.0;  // air that enters is so much warmer or colder
  std::fill(scale.begin() + 5, scale.end(), carried_K * hour.heat_with_air_J_m5K);
  return scale;
}

template <Flows flows, class Correlations>
void HourEquations<flows, Correlations>::evaluate_air(const double* pressure_Pa) {
  room_pressure_.gradient_Pa_m = hour.room_gradient_Pa_m;
  outdoor_pressure_.gradient_Pa_m = hour.outdoors_gradient_Pa_m;
  for (std::size_t k = 0; k < lane_count; ++k) {
    const double gap_Pa = pressure_Pa[std::min(k, gust_points - 1)];
    room_pressure_.level_Pa[k] = hour.half_pressure_Pa[k] - gap_Pa;
    outdoor_pressure_.level_Pa[k] = -hour.half_pressure_Pa[k] - gap_Pa;
  }
  room_side_ = correlations_.flows(Side::room, room_pressure_);
  outdoor_side_ = correlations_.flows(Side::outdoors, outdoor_pressure_);
  for (std::size_t k = 0; k < gust_points; ++k) {
    from_room_m3_s_ += weight_[k] * room_side_.in[k];
    from_outdoors_m3_s_ += weight_[k] * outdoor_side_.in[k];
  }
}

template <Flows flows, class Correlations>
void HourEquations<flows, Correlations>::evaluate_vapour(const double* u) {
  const double pane_C = celsius(u[1]);
  const double outdoor_C = celsius(hour.outdoor_K);
  surface_C_ = {pane_C, celsius(u[2]), outdoor_C + hour.sill_factor * (pane_C - outdoor_C), celsius(u[3])};
  for (std::size_t i = 0; i < 3; ++i) {
    // No more leaves a surface than it holds.
    const double wanted = hour.transfer_kg_m2sPa[i] * (u[4] - correlations_.saturation_Pa(i, surface_C_[i]));
    follows_[i] = wanted >= -hour.limit_kg_m2s[i];
    rate_kg_m2s_[i] = follows_[i] ? wanted : -hour.limit_kg_m2s[i];
  }
  const double wanted =
      hour.room_transfer_kg_m2sPa * (hour.room_vapour_Pa - correlations_.saturation_Pa(3, surface_C_[3]));
  room_follows_ = wanted > -hour.room_limit_kg_m2s;
  room_rate_kg_m2s_ = room_follows_ ? wanted : -hour.room_limit_kg_m2s;
}

template <Flows flows, class Correlations>
void HourEquations<flows, Correlations>::evaluate_heat(const double* u, double* f) {
  const double air_m3_s = from_room_m3_s_ + from_outdoors_m3_s_;
  gap_ = {.outer_K = u[1],
          .inner_K = u[2],
          .stream_W_m2K = hour.heat_with_air_J_m5K * air_m3_s,
          .inlet_K = air_m3_s > 0.0
                         ? (from_room_m3_s_ * hour.room_K + from_outdoors_m3_s_ * hour.outdoor_K) / air_m3_s
                         : hour.room_K};
  const auto& exchange = correlations_.gap(gap_);
  gap_air_K_ = exchange.air_temperature_K;
  gap_convection_W_m2K_ = exchange.convection_W_m2K;
  room_convection_W_m2K_ = correlations_.room_film_W_m2K(u[3]);
  const auto emission = BlackEmission::stefan_boltzmann();
  std::array<double, 4> black{};
  for (std::size_t i = 0; i < 4; ++i) {
    black[i] = emission.power_W_m2(u[i]);
  }
  const auto irradiance = long_wave_.irradiance_W_m2(black);
  const std::array<double, 4> vapour_kg_m2s{0.0, rate_kg_m2s_[0], rate_kg_m2s_[1], room_rate_kg_m2s_};
  for (std::size_t i = 0; i < 4; ++i) {
    const std::size_t behind = i % 2 == 0 ? i + 1 : i - 1;
    f[i] = hour.heat_W_m2[i] + hour.capacity_W_m2K[i] * (hour.before_K[i] - u[i]) +
           long_wave_.emissivity(i) * (irradiance[i] - black[i]) +
           conductance_W_m2K_[i / 2] * (u[behind] - u[i]);
    if (i > 0) {
      const double latent = gap_kernel::film_latent_heat(celsius(u[i])).value_J_kg;
      f[i] += latent * vapour_kg_m2s[i] + hour.film_kg_m2s[i] * (latent - hour.latent_before_J_kg[i]);
    }
  }
  f[0] += hour.outdoor_convection_W_m2K * (hour.outdoor_K - u[0]);
  f[1] -= exchange.from_outer_W_m2;
  f[2] -= exchange.from_inner_W_m2;
  f[3] += room_convection_W_m2K_ * (hour.room_K - u[3]);
}

template <Flows flows, class Correlations>
void HourEquations<flows, Correlations>::residual(const double* u, double* f) {
  from_room_m3_s_ = hour.from_room_m3_s;
  from_outdoors_m3_s_ = hour.from_outdoors_m3_s;
  if constexpr (flows == Flows::unknown) {
    evaluate_air(u + 5);
    for (std::size_t k = 0; k < gust_points; ++k) {
      f[5 + k] = room_side_.net[k] + outdoor_side_.net[k];
    }
  }
  evaluate_vapour(u);
  evaluate_heat(u, f);
  f[4] = hour.offered_kg_m2s - hour.conductance_kg_m2sPa * u[4] +
         hour.vapour_with_air_kg_m5Pa * (from_room_m3_s_ * (hour.room_vapour_Pa - u[4]) +
                                         from_outdoors_m3_s_ * (hour.outdoor_vapour_Pa - u[4])) -
         rate_kg_m2s_[0] - rate_kg_m2s_[1] - rate_kg_m2s_[2];
}

template <Flows flows, class Correlations>
void HourEquations<flows, Correlations>::jacobian(const double* u, double* const* columns) const {
  heat_slopes(u, columns);
  vapour_slopes(u, columns);
  if constexpr (flows == Flows::unknown) {
    air_slopes(u, columns);
  }
}

template <Flows flows, class Correlations>
void HourEquations<flows, Correlations>::heat_slopes(const double* u, double* const* columns) const {
  const auto at = [columns](std::size_t row, std::size_t column) -> double& { return columns[column][row]; };
  const auto emission = BlackEmission::stefan_boltzmann();
  const auto& exchange = correlations_.gap_slopes(gap_);
  std::array<double, 4> black_slope{};
  for (std::size_t i = 0; i < 4; ++i) {
    black_slope[i] = emission.slope_W_m2K(u[i]);
  }
  for (std::size_t i = 0; i < 4; ++i) {
    const double e = long_wave_.emissivity(i);
    const double conductance = conductance_W_m2K_[i / 2];
    at(i, i) = -hour.capacity_W_m2K[i] - conductance + e * (long_wave_.share(i, i) - 1.0) * black_slope[i];
    at(i, i % 2 == 0 ? i + 1 : i - 1) = conductance;
  }
  for (std::size_t i = 1; i < 3; ++i) {
    const std::size_t facing = 3 - i;
    at(i, facing) += long_wave_.emissivity(i) * long_wave_.share(i, facing) * black_slope[facing];
    at(1, i) -= exchange.from_outer_slope[i - 1];
    at(2, i) -= exchange.from_inner_slope[i - 1];
    // Latent heat: over the face's own temperature and over the gap's vapour.
    const auto latent = gap_kernel::film_latent_heat(celsius(u[i]));
    const double transfer = follows_[i - 1] ? hour.transfer_kg_m2sPa[i - 1] : 0.0;
    at(i, i) += latent.slope_J_kgK * (rate_kg_m2s_[i - 1] + hour.film_kg_m2s[i]) -
                latent.value_J_kg * transfer * saturation_slope(i - 1);
    at(i, 4) = latent.value_J_kg * transfer;
  }
  at(0, 0) -= hour.outdoor_convection_W_m2K;
  at(3, 3) += correlations_.room_film_slope_W_m2K2(u[3]) * (hour.room_K - u[3]) - room_convection_W_m2K_;
  const auto latent = gap_kernel::film_latent_heat(celsius(u[3]));
  at(3, 3) += latent.slope_J_kgK * (room_rate_kg_m2s_ + hour.film_kg_m2s[3]) -
              (room_follows_ ? latent.value_J_kg * hour.room_transfer_kg_m2sPa * saturation_slope(3) : 0.0);
}

template <Flows flows, class Correlations>
void HourEquations<flows, Correlations>::vapour_slopes(const double*, double* const* columns) const {
  std::array<double, 3> transfer{};
  for (std::size_t i = 0; i < 3; ++i) {
    transfer[i] = follows_[i] ? hour.transfer_kg_m2sPa[i] : 0.0;
  }
  columns[1][4] = transfer[0] * saturation_slope(0) + transfer[2] * hour.sill_factor * saturation_slope(2);
  columns[2][4] = transfer[1] * saturation_slope(1);
  columns[4][4] = -hour.conductance_kg_m2sPa -
                  hour.vapour_with_air_kg_m5Pa * (from_room_m3_s_ + from_outdoors_m3_s_) - transfer[0] -
                  transfer[1] - transfer[2];
}

template <Flows flows, class Correlations>
void HourEquations<flows, Correlations>::air_slopes(const double* u, double* const* columns) const {
  // What a face takes from the gap's air for more air of one side: 2 h c (T_side - T_gap) / (4 h + C).
  const double h = gap_convection_W_m2K_;
  const double by_side = 2.0 * h * hour.heat_with_air_J_m5K / (4.0 * h + gap_.stream_W_m2K);
  const double room_heat = by_side * (hour.room_K - gap_air_K_);
  const double outdoor_heat = by_side * (hour.outdoor_K - gap_air_K_);
  const double room_vapour = hour.vapour_with_air_kg_m5Pa * (hour.room_vapour_Pa - u[4]);
  const double outdoor_vapour = hour.vapour_with_air_kg_m5Pa * (hour.outdoor_vapour_Pa - u[4]);
  const auto room_slopes = correlations_.flow_slopes(Side::room, room_pressure_);
  const auto outdoor_slopes = correlations_.flow_slopes(Side::outdoors, outdoor_pressure_);
  for (std::size_t k = 0; k < gust_points; ++k) {
    const double room = -weight_[k] * room_slopes.in[k];
    const double outdoors = -weight_[k] * outdoor_slopes.in[k];
    double* const column = columns[5 + k];
    column[1] = column[2] = room * room_heat + outdoors * outdoor_heat;
    column[4] = room * room_vapour + outdoors * outdoor_vapour;
    column[5 + k] = -room_slopes.net[k] - outdoor_slopes.net[k];
  }
}

template class HourEquations<Flows::unknown, PreparedCorrelations>;
template class HourEquations<Flows::given, PreparedCorrelations>;
template class HourEquations<Flows::unknown, CalledCorrelations>;

}  // namespace dewgap::bench
