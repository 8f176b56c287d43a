#include "gap/random_cases.hpp"

#include <cmath>
#include <map>
#include <string>

#include "dewgap/air/humid_air.hpp"
#include "dewgap/numerics/csv_text.hpp"
#include "dewgap/numerics/sampling.hpp"
#include "support/reference.hpp"

namespace dewgap::test {
namespace {

using State = std::map<std::string, double>;

std::vector<State> draw_states(std::size_t count, std::uint64_t seed) {
  const auto table = read_test_table("gap/states.csv");
  const auto points = numerics::unit_cube_samples(count, table.row_count(), seed);
  std::vector<State> states(count);
  for (std::size_t i = 0; i < count; ++i) {
    for (std::size_t j = 0; j < table.row_count(); ++j) {
      const double low = table.number(j, "low");
      const double high = table.number(j, "high");
      states[i][table.text(j, "name")] = low + points[i * table.row_count() + j] * (high - low);
    }
  }
  return states;
}

std::vector<PlacedOpening> joints(double coefficient_m3_h_m, double height_m) {
  const auto at = [&](double height) {
    return PlacedOpening{joint_resistance(coefficient_m3_h_m, 2.0 / 3.0, 1.0), height};
  };
  return {at(0.0), at(0.5 * height_m), at(height_m)};
}

GapCase case_of(State s) {
  GapCase c;
  c.stack.layer_count = 2;
  c.stack.height_m = s["height"];
  c.stack.layers[1] = {.thickness_m = 0.004, .conductivity_W_mK = 0.18};
  c.stack.gaps[0] = {.width_m = s["gap_width"]};
  c.outdoors = {.air_temperature_C = s["outdoor_C"],
                .sky_temperature_C = s["outdoor_C"] - s["sky_depression"],
                .ground_temperature_C = s["outdoor_C"],
                .sky_view_factor = 0.5,
                .convection_W_m2K = s["outdoor_convection"]};
  c.room = {.air_temperature_C = s["room_C"], .radiant_temperature_C = s["room_C"]};
  c.outdoor_vapour_Pa = vapour_pressure_Pa(s["outdoor_C"], s["outdoor_humidity"]);
  c.room_vapour_Pa = vapour_pressure_Pa(s["room_C"], s["room_humidity"]);
  c.gap_area_m2 = s["area"];
  c.network.to_room = joints(std::pow(10.0, s["seal_leakage_log10"]), s["height"]);
  c.network.to_outdoors = joints(std::pow(10.0, s["joint_leakage_log10"]), s["height"]);
  c.network.reference_height_m = 0.5 * s["height"];
  c.pressure = {.mean_Pa = s["mean_pressure"], .standard_deviation_Pa = s["pressure_sd"]};
  c.diffusion_to_room_kg_sPa = std::pow(10.0, s["diffusion_log10"]);
  c.edge_temperature_factor = s["edge_factor"];
  return c;
}

}  // namespace

std::vector<GapCase> random_gap_cases(std::size_t count, std::uint64_t seed) {
  std::vector<GapCase> cases;
  for (const auto& state : draw_states(count, seed)) {
    cases.push_back(case_of(state));
  }
  return cases;
}

}  // namespace dewgap::test
