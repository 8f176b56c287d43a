#include "dewgap/moisture/vapour_balance.hpp"

#include <algorithm>

#include "dewgap/air/constants.hpp"
#include "dewgap/air/saturation.hpp"
#include "dewgap/errors.hpp"

namespace dewgap {
namespace {

constexpr PermittedRange temperatures_C{-60.0, 80.0};
constexpr PermittedRange vapours_Pa{0.0, 20000.0};

void require_valid(const VapourBalanceInput& input) {
  require_in_range(input.from_room_m3_s, {0.0, 10.0}, "from_room_m3_s", "m3/s");
  require_in_range(input.from_outdoors_m3_s, {0.0, 10.0}, "from_outdoors_m3_s", "m3/s");
  require_in_range(input.room_vapour_Pa, vapours_Pa, "room_vapour_Pa", "Pa");
  require_in_range(input.outdoor_vapour_Pa, vapours_Pa, "outdoor_vapour_Pa", "Pa");
  require_in_range(input.room_temperature_C, temperatures_C, "room_temperature_C", "C");
  require_in_range(input.outdoor_temperature_C, temperatures_C, "outdoor_temperature_C", "C");
  require_in_range(input.gap_temperature_C, temperatures_C, "gap_temperature_C", "C");
  require_in_range(input.face_temperature_C, temperatures_C, "face_temperature_C", "C");
  require_in_range(input.diffusion_to_room_kg_sPa, {0.0, 1e-3}, "diffusion_to_room_kg_sPa", "kg/(s Pa)");
  require_in_range(input.diffusion_to_outdoors_kg_sPa, {0.0, 1e-3}, "diffusion_to_outdoors_kg_sPa",
                   "kg/(s Pa)");
  require_in_range(input.source_kg_s, {0.0, 1.0}, "source_kg_s", "kg/s");
  require_in_range(input.face_area_m2, {0.0, 1000.0}, "face_area_m2", "m2");
  require_in_range(input.face_mass_transfer_m_s, {0.0, 1.0}, "face_mass_transfer_m_s", "m/s");
}

/// Conductances on vapour pressure, kg/(s Pa). Ideal gas: a flow V carries V / (R_v T) per Pa.
struct Conductances {
  double air_from_room = 0.0;
  double air_from_outdoors = 0.0;
  double to_face = 0.0;
};

Conductances conductances_of(const VapourBalanceInput& input) {
  constexpr double gas_constant = constants::gas_constant_water_J_kgK;
  const double gap_K = constants::kelvin(input.gap_temperature_C);
  const double film_K = constants::kelvin(0.5 * (input.gap_temperature_C + input.face_temperature_C));
  return {.air_from_room = input.from_room_m3_s / (gas_constant * gap_K),
          .air_from_outdoors = input.from_outdoors_m3_s / (gas_constant * gap_K),
          // Lewis relation on vapour pressure: beta_p = h_m / (R_v T_film).
          .to_face = input.face_mass_transfer_m_s * input.face_area_m2 / (gas_constant * film_K)};
}

VapourBalance undetermined_balance(const VapourBalanceInput& input) {
  const double dew_C = dew_point_C(input.outdoor_vapour_Pa);
  return {.potential_vapour_Pa = input.outdoor_vapour_Pa,
          .potential_dew_point_C = dew_C,
          .vapour_Pa = input.outdoor_vapour_Pa,
          .dew_point_C = dew_C,
          .face_saturation_Pa = saturation_pressure_Pa(input.face_temperature_C),
          .undetermined = true};
}

void require_dew_point(double potential_Pa) {
  const PermittedRange permitted{saturation_pressure_Pa(-80.0), saturation_pressure_Pa(100.0)};
  require_in_range(potential_Pa, permitted, "potential vapour pressure of the gap", "Pa");
}

}  // namespace

VapourBalance solve_vapour_balance(const VapourBalanceInput& input) {
  require_valid(input);
  const Conductances by = conductances_of(input);
  const double room = by.air_from_room + input.diffusion_to_room_kg_sPa;
  const double outdoors = by.air_from_outdoors + input.diffusion_to_outdoors_kg_sPa;
  const double exchange = room + outdoors;
  if (exchange <= 0.0) {
    return undetermined_balance(input);
  }
  // Steady balance without sink: exchange e = room e_room + outdoors e_outdoors + source, around the outdoor
  // vapour so that a gap fed by one side only is at exactly that side's vapour pressure.
  const double damper_Pa = input.room_vapour_Pa - input.outdoor_vapour_Pa;
  const double air_Pa =
      outdoors > 0.0 ? input.outdoor_vapour_Pa + room / exchange * damper_Pa : input.room_vapour_Pa;
  VapourBalance balance{.potential_vapour_Pa = air_Pa + input.source_kg_s / exchange};
  require_dew_point(balance.potential_vapour_Pa);
  balance.face_saturation_Pa = saturation_pressure_Pa(input.face_temperature_C);
  // Wet branch: exchange (e_potential - e) = face (e - e_face), a weighted mean of potential and face.
  const double supersaturation_Pa = std::max(0.0, balance.potential_vapour_Pa - balance.face_saturation_Pa);
  const double taken = by.to_face / (exchange + by.to_face);
  balance.vapour_Pa = balance.potential_vapour_Pa - taken * supersaturation_Pa;
  balance.condensation_kg_s = exchange * taken * supersaturation_Pa;
  balance.potential_dew_point_C = dew_point_C(balance.potential_vapour_Pa);
  balance.dew_point_C = dew_point_C(balance.vapour_Pa);
  // In and out: air both ways, diffusion net of both directions on each side.
  const double from_room_kg_s = input.diffusion_to_room_kg_sPa * (input.room_vapour_Pa - balance.vapour_Pa);
  const double from_outdoors_kg_s =
      input.diffusion_to_outdoors_kg_sPa * (input.outdoor_vapour_Pa - balance.vapour_Pa);
  balance.vapour_in_kg_s = by.air_from_room * input.room_vapour_Pa +
                           by.air_from_outdoors * input.outdoor_vapour_Pa + std::max(0.0, from_room_kg_s) +
                           std::max(0.0, from_outdoors_kg_s) + input.source_kg_s;
  balance.vapour_out_kg_s = (by.air_from_room + by.air_from_outdoors) * balance.vapour_Pa +
                            std::max(0.0, -from_room_kg_s) + std::max(0.0, -from_outdoors_kg_s);
  return balance;
}

double condensation_g_m2h(double condensation_kg_s, double face_area_m2) {
  require_in_range(condensation_kg_s, {0.0, 1.0}, "condensation_kg_s", "kg/s");
  require_in_range(face_area_m2, {1e-6, 1000.0}, "face_area_m2", "m2");
  return condensation_kg_s / face_area_m2 * 1000.0 * 3600.0;
}

}  // namespace dewgap
