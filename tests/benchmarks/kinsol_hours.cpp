#include "kinsol_hours.hpp"

#include <cmath>

#include "dewgap/air/humid_air.hpp"
#include "dewgap/airflow/gauss_hermite_kernel.hpp"
#include "dewgap/airflow/pumping.hpp"
#include "dewgap/moisture/transfer.hpp"

namespace dewgap::bench {
namespace {

using constants::kelvin;

constexpr double air_store_temperature_K = 283.15;
constexpr double vapour_gas_J_kgK = constants::gas_constant_water_J_kgK;

/// Lewis relation, as the library's step has it.
double transfer_kg_m2sPa(double convection_W_m2K, double heat_capacity_J_m3K, double mean_K) {
  static const double per_ratio = mass_transfer_m_s(1.0, 1000.0) * 1000.0;
  return convection_W_m2K * per_ratio / (heat_capacity_J_m3K * vapour_gas_J_kgK * mean_K);
}

double film_kg_m2(const FilmState& film) {
  return film.water_kg_m2 + film.frost_kg_m2;
}

double latent_J_kg(double face_K) {
  return gap_kernel::film_latent_heat(face_K - constants::celsius_zero_K).value_J_kg;
}

RoomClimate room_of(const HourConditions& given) {
  return {.air_temperature_C = given.room_C,
          .radiant_temperature_C = given.room_C,
          .film_factor = given.room_film_factor};
}

/// Room, outdoors and gap in winter: typical of the unknowns, and where searches from one guess begin.
template <std::size_t size>
std::array<double, size> guess() {
  std::array<double, size> u{};
  u[0] = 280.0;
  u[1] = 280.5;
  u[2] = 286.0;
  u[3] = 287.0;
  u[4] = 900.0;
  return u;
}

template <std::size_t size>
std::array<double, size> typical() {
  auto u = guess<size>();
  std::fill(u.begin() + 5, u.end(), 1.0);
  return u;
}

}  // namespace

template <Flows flows, class Correlations>
KinsolHours<flows, Correlations>::KinsolHours(const GapDesign& design, double closure_W_m2, Start start)
    : design_(design),
      start_(start),
      equations_(design.stack, design.network),
      kinsol_(equations_, typical<Equations::size>()),
      room_share_(room_share_of_conductance(design.network)),
      pumped_volume_m3_Pa_(design.pumped_volume_m3_Pa *
                           flexing_response(design.network, design.pumped_volume_m3_Pa, design.gusts_per_s)) {
  kinsol_.set_tolerance(closure_W_m2);
  const std::array<double, 2> share{design.sill_timber_share, 1.0 - design.sill_timber_share};
  for (std::size_t i = 0; i < 2; ++i) {
    auto layer = design.timber;
    layer.area_m2 *= share[i];
    timber_[i] = {.layer = moisture_kernel::prepared(layer)};
  }
  air_store_kg_Pa_ =
      design.area_m2 * design.stack.gaps[0].width_m / (vapour_gas_J_kgK * air_store_temperature_K);
  const auto rule = airflow_kernel::normal_points(gust_points);
  for (std::size_t k = 0; k < lane_count; ++k) {
    deviate_[k] = rule[std::min(k, gust_points - 1)].deviate;
  }
  if (flows == Flows::given) {
    network_.emplace(design.network, static_cast<int>(gust_points));
  }
}

template <Flows flows, class Correlations>
void KinsolHours<flows, Correlations>::set_air(const HourConditions& given) {
  auto& hour = equations_.hour;
  const double volume_m3 = design_.area_m2 * design_.stack.gaps[0].width_m;
  const double exchanged =
      breathed_in_m3_s(volume_m3, gap_C_before_ - gap_C_, gap_C_, given.duration_s) +
      pumped_m3_s(pumped_volume_m3_Pa_, given.pressure.standard_deviation_Pa, design_.gusts_per_s);
  hour.from_room_m3_s = room_share_ * exchanged;
  hour.from_outdoors_m3_s = (1.0 - room_share_) * exchanged;
  densities_ = {
      .outdoor_kg_m3 = humid_air_density_kg_m3(given.outdoors.air_temperature_C, given.outdoor_vapour_Pa),
      .gap_kg_m3 = humid_air_density_kg_m3(guess_.gap_C, store_.vapour_Pa),
      .room_kg_m3 = humid_air_density_kg_m3(given.room_C, given.room_vapour_Pa)};
  if constexpr (flows == Flows::given) {
    const auto air = network_->at(densities_, given.pressure);
    hour.from_room_m3_s += air.from_room_m3_s;
    hour.from_outdoors_m3_s += air.from_outdoors_m3_s;
  } else {
    constexpr double g = constants::standard_gravity_m_s2;
    hour.room_gradient_Pa_m = (densities_.gap_kg_m3 - densities_.room_kg_m3) * g;
    hour.outdoors_gradient_Pa_m = (densities_.gap_kg_m3 - densities_.outdoor_kg_m3) * g;
    for (std::size_t k = 0; k < lane_count; ++k) {
      hour.half_pressure_Pa[k] =
          0.5 * (given.pressure.mean_Pa + deviate_[k] * given.pressure.standard_deviation_Pa);
    }
  }
}

template <Flows flows, class Correlations>
void KinsolHours<flows, Correlations>::set_heat(const HourConditions& given) {
  auto& hour = equations_.hour;
  equations_.set_surroundings(given.outdoors, room_of(given));
  hour.outdoor_convection_W_m2K = given.outdoors.convection_W_m2K;
  hour.outdoor_K = kelvin(given.outdoors.air_temperature_C);
  hour.room_K = kelvin(given.room_C);
  const std::array<double, 4> film{0.0, film_kg_m2(store_.pane), film_kg_m2(store_.sheet),
                                   film_kg_m2(store_.room_face)};
  for (std::size_t f = 0; f < 4; ++f) {
    hour.heat_W_m2[f] = 0.5 * given.absorbed_sun_W_m2[f / 2];
    if (faces_known_) {
      hour.capacity_W_m2K[f] = 0.5 * design_.pane_heat_capacity_J_m2K[f / 2] / given.duration_s;
      hour.before_K[f] = now_[f];
      hour.film_kg_m2s[f] = film[f] / given.duration_s;
      hour.latent_before_J_kg[f] = latent_J_kg(now_[f]);
    }
  }
  const double face_K = faces_known_ ? now_[3] : hour.room_K;
  hour.room_transfer_kg_m2sPa =
      design_.room_face_transfer_factor *
      transfer_kg_m2sPa(room_convection_W_m2K_,
                        volumetric_heat_capacity_J_m3K(given.room_C, given.room_vapour_Pa),
                        0.5 * (hour.room_K + face_K));
  hour.room_limit_kg_m2s = film[3] / given.duration_s;
}

template <Flows flows, class Correlations>
void KinsolHours<flows, Correlations>::set_surfaces(const HourConditions& given) {
  auto& hour = equations_.hour;
  const double gap_K = kelvin(gap_C_);
  const double pane_K = faces_known_ ? now_[1] : gap_K;
  const double sheet_K = faces_known_ ? now_[2] : gap_K;
  const double sill_K = kelvin(sill_C(given, pane_K - constants::celsius_zero_K));
  const double heat_capacity = volumetric_heat_capacity_J_m3K(gap_C_, store_.vapour_Pa);
  const double convection = 2.0 * gap_convection_W_m2K_;
  hour.sill_factor = design_.edge_temperature_factor;
  hour.room_vapour_Pa = given.room_vapour_Pa;
  hour.outdoor_vapour_Pa = given.outdoor_vapour_Pa;
  hour.transfer_kg_m2sPa = {
      transfer_kg_m2sPa(convection, heat_capacity, 0.5 * (gap_K + pane_K)),
      transfer_kg_m2sPa(convection, heat_capacity, 0.5 * (gap_K + sheet_K)),
      design_.film.sill_area_ratio * transfer_kg_m2sPa(convection, heat_capacity, 0.5 * (gap_K + sill_K))};
  hour.limit_kg_m2s = {film_kg_m2(store_.pane) / given.duration_s,
                       film_kg_m2(store_.sheet) / given.duration_s,
                       store_.pane.sill_kg_m2 / given.duration_s};
  hour.heat_with_air_J_m5K = heat_capacity / design_.area_m2;
  hour.vapour_with_air_kg_m5Pa = 1.0 / (vapour_gas_J_kgK * gap_K * design_.area_m2);
}

template <Flows flows, class Correlations>
void KinsolHours<flows, Correlations>::set_vapour(const HourConditions& given) {
  auto& hour = equations_.hour;
  const double stored = air_store_kg_Pa_ / given.duration_s;
  double conductance = stored + design_.diffusion_to_room_kg_sPa + design_.diffusion_to_outdoors_kg_sPa;
  double offered = stored * store_.vapour_Pa + design_.diffusion_to_room_kg_sPa * given.room_vapour_Pa +
                   design_.diffusion_to_outdoors_kg_sPa * given.outdoor_vapour_Pa;
  const std::array<double, 2> timber_C{0.5 * (sill_C(given, guess_.pane_C) + guess_.gap_C), guess_.gap_C};
  for (std::size_t i = 0; i < 2; ++i) {
    auto& node = timber_[i];
    node.from_vapour_Pa = guess_.vapour_Pa;
    node.step =
        moisture_kernel::step_prepared_layer(node.layer, node.moisture_kg_kg, node.step.relative_humidity,
                                             {.duration_s = given.duration_s,
                                              .temperature_C = timber_C[i],
                                              .air_vapour_Pa = guess_.vapour_Pa,
                                              .transfer_kg_m2sPa = design_.timber_transfer_kg_m2sPa},
                                             air_kernel::saturation_table());
    conductance += node.step.response_kg_sPa;
    offered += node.step.given_kg / given.duration_s + node.step.response_kg_sPa * node.from_vapour_Pa;
  }
  hour.conductance_kg_m2sPa = conductance / design_.area_m2;
  hour.offered_kg_m2s = offered / design_.area_m2;
}

template <Flows flows, class Correlations>
double KinsolHours<flows, Correlations>::sill_C(const HourConditions& given, double pane_C) const {
  const double outdoor_C = given.outdoors.air_temperature_C;
  return outdoor_C + design_.edge_temperature_factor * (pane_C - outdoor_C);
}

template <Flows flows, class Correlations>
typename KinsolHours<flows, Correlations>::Unknowns KinsolHours<flows, Correlations>::start_of_hour() const {
  if (known_ == 0 || start_ == Start::one_guess) {
    return guess<Equations::size>();
  }
  auto u = now_;
  if (known_ == 2 && start_ == Start::line_through_two) {
    for (std::size_t i = 0; i < u.size(); ++i) {
      u[i] += now_[i] - before_[i];
    }
  }
  return u;
}

template <Flows flows, class Correlations>
bool KinsolHours<flows, Correlations>::solve(HourState& state) {
  const auto scale = equations_.residual_scale();
  const auto start = start_of_hour();
  auto answer = kinsol_.solve(start, scale, KIN_NONE);
  state.newton_steps = static_cast<int>(answer.iterations);
  if (answer.flag != KIN_SUCCESS && answer.flag != KIN_INITIAL_GUESS_OK) {
    ++searches_again_;
    answer = kinsol_.solve(start, scale, KIN_LINESEARCH);
    state.newton_steps += static_cast<int>(answer.iterations);
    Unknowns left{};
    equations_.residual(answer.unknowns.data(),
                        left.data());  // the line search may have looked elsewhere last
  }
  if (answer.flag != KIN_SUCCESS && answer.flag != KIN_INITIAL_GUESS_OK) {
    state.status = SolveStatus::iteration_limit;
    return false;
  }
  before_ = now_;
  now_ = answer.unknowns;
  known_ = std::min(known_ + 1, 2);
  return true;
}

template <Flows flows, class Correlations>
HourState KinsolHours<flows, Correlations>::step(const HourConditions& given, const HourGuess& guess) {
  HourState state;
  guess_ = guess;
  if (!faces_known_) {
    gap_C_ = gap_C_before_ = 0.5 * (given.room_C + given.outdoors.air_temperature_C);
  }
  set_air(given);
  set_heat(given);
  set_surfaces(given);
  set_vapour(given);
  if (solve(state)) {
    settle(given, state);
  }
  return state;
}

template <Flows flows, class Correlations>
double KinsolHours<flows, Correlations>::jacobian_error() {
  constexpr std::size_t n = Equations::size;
  std::array<Unknowns, n> columns{};
  std::array<double*, n> at{};
  for (std::size_t j = 0; j < n; ++j) {
    at[j] = columns[j].data();
  }
  Unknowns high{};
  Unknowns low{};
  equations_.residual(now_.data(), high.data());
  equations_.jacobian(now_.data(), at.data());
  Unknowns difference{};
  Unknowns largest{};
  const auto usual = typical<n>();
  for (std::size_t j = 0; j < n; ++j) {
    auto moved = now_;
    const double by = 1e-6 * usual[j];
    moved[j] = now_[j] + by;
    equations_.residual(moved.data(), high.data());
    moved[j] = now_[j] - by;
    equations_.residual(moved.data(), low.data());
    for (std::size_t i = 0; i < n; ++i) {
      // In units of the usual size of each unknown, so that no column hides another.
      const double slope = usual[j] * columns[j][i];
      difference[i] = std::max(difference[i], std::abs(slope - usual[j] * (high[i] - low[i]) / (2.0 * by)));
      largest[i] = std::max(largest[i], std::abs(slope));
    }
  }
  double worst = 0.0;
  for (std::size_t i = 0; i < n; ++i) {
    worst = std::max(worst, difference[i] / largest[i]);
  }
  return worst;
}

template class KinsolHours<Flows::unknown, PreparedCorrelations>;
template class KinsolHours<Flows::given, PreparedCorrelations>;
template class KinsolHours<Flows::unknown, CalledCorrelations>;

}  // namespace dewgap::bench
