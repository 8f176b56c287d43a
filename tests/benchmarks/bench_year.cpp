#include "bench_year.hpp"

#include <algorithm>
#include <stdexcept>

#include "dewgap/air/saturation.hpp"
#include "dewgap/climate/synthesised_year.hpp"
#include "dewgap/dwelling/facade_wind.hpp"
#include "dewgap/dwelling/pressure.hpp"
#include "dewgap/dwelling/room_year.hpp"

namespace dewgap::bench {
namespace {

constexpr double room_C = 19.0;
constexpr double height_m = 1.2;
constexpr int parts = 5;  // openings that a length of joint is spread over

void append(std::vector<PlacedOpening>& openings, const std::vector<PlacedOpening>& more) {
  openings.insert(openings.end(), more.begin(), more.end());
}

GapNetwork bench_network() {
  GapNetwork network;
  network.reference_height_m = 0.5 * height_m;
  network.to_room = spread_joint_over_height(0.02, 2.0 / 3.0, 3.8, 0.0, height_m, parts);
  const auto a_break = slot_resistance({.width_m = 0.001, .length_m = 0.02, .depth_m = 0.01});
  append(network.to_room, {{a_break, 0.0}, {a_break, height_m}});
  network.to_outdoors = spread_joint_over_height(0.002, 1.0, 3.8, 0.0, height_m, parts);
  append(network.to_outdoors, spread_joint_over_height(0.4, 2.0 / 3.0, 5.0, 0.0, height_m, parts));
  return network;
}

PressureWithinHour pressure_of(const HourlyYear& year, std::size_t hour) {
  const auto shelter = pressure_coefficients(Shelter::suburb);
  const double angle_deg = modelled_wind_angle_deg(45.0, hour / 24, 1);
  return dwelling_pressure({.room_temperature_C = room_C,
                            .outdoor_temperature_C = year.air_temperature_C[hour],
                            .window_height_m = 4.0,
                            .neutral_level_m = 2.5,
                            .station_wind_m_s = year.wind_m_s[hour],
                            .wind_ratio = shelter.wind_ratio,
                            .pressure_coefficient = facade_pressure_coefficient(shelter, angle_deg)})
      .within_hour;
}

}  // namespace

GapDesign bench_design() {
  GapDesign design;
  design.stack.layer_count = 2;
  design.stack.height_m = height_m;
  design.stack.layers[0] = {.thickness_m = 0.003, .conductivity_W_mK = 1.0};
  design.stack.layers[1] = {
      .thickness_m = 0.004, .conductivity_W_mK = 0.18, .emissivity_outer = 0.9, .emissivity_inner = 0.9};
  design.stack.gaps[0] = {.width_m = 0.040};
  design.area_m2 = 0.8;
  design.network = bench_network();
  design.diffusion_to_room_kg_sPa = 1e-12;
  design.edge_temperature_factor = 0.8;
  design.film = {.sill_area_ratio = 0.033};
  design.timber = {.area_m2 = 0.08, .thickness_m = 0.003, .coat_equivalent_air_m = 0.3};
  design.soak_time_s = 5e5;
  design.pumped_volume_m3_Pa = 2e-5;
  design.room_face_transfer_factor = 1.0;
  return design;
}

std::vector<HourConditions> bench_year() {
  const Place* const place = find_place("london");
  if (place == nullptr) {
    throw std::runtime_error("the place of the benchmark is not carried");
  }
  const auto year = synthesised_year(*place).hours;
  const auto sun = plane_irradiance_of_year(year, {});
  const auto running_C = running_mean(year.air_temperature_C, room_running_mean_h);
  const auto running_Pa = running_mean(year.vapour_pressure_Pa, room_running_mean_h);
  const ClassExcess excess{.excess_at_zero_Pa = 550.0};
  std::vector<HourConditions> hours(year.air_temperature_C.size());
  for (std::size_t i = 0; i < hours.size(); ++i) {
    const double outdoor_C = year.air_temperature_C[i];
    const double vapour_Pa = year.vapour_pressure_Pa[i];
    const double dew_C =
        std::min(outdoor_C, dew_point_C(vapour_Pa, SaturationFormula::murphy_koop, Phase::water));
    const double sun_W_m2 = sun[i].total_W_m2();
    hours[i] = {.outdoors = {.air_temperature_C = outdoor_C,
                             .sky_temperature_C = sky_temperature_C(outdoor_C, dew_C, year.cloud_cover[i]),
                             .ground_temperature_C = outdoor_C,
                             .sky_view_factor = 0.5,
                             .convection_W_m2K = outdoor_convection_W_m2K(0.5 * year.wind_m_s[i])},
                .room_C = room_C,
                .outdoor_vapour_Pa = vapour_Pa,
                .room_vapour_Pa =
                    capped_vapour(room_vapour_Pa(excess, running_C[i], running_Pa[i]), room_C).vapour_Pa,
                .pressure = pressure_of(year, i),
                .absorbed_sun_W_m2 = {0.12 * sun_W_m2, 0.07 * sun_W_m2}};
  }
  return hours;
}

}  // namespace dewgap::bench
