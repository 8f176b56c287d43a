// Cases shared by the tests of the gap.
#pragma once

#include "dewgap/air/humid_air.hpp"
#include "dewgap/gap/steady.hpp"

namespace dewgap::test {

/// A worn sash on a cold day: 3 mm glass, 40 mm gap, acrylic sheet, one hole to the room and one to outdoors.
inline GapCase worn_sash_case() {
  GapCase c;
  c.stack.layer_count = 2;
  c.stack.height_m = 1.2;
  c.stack.layers[0] = {.thickness_m = 0.003, .conductivity_W_mK = 1.0};
  c.stack.layers[1] = {
      .thickness_m = 0.004, .conductivity_W_mK = 0.18, .emissivity_outer = 0.9, .emissivity_inner = 0.9};
  c.stack.gaps[0] = {.width_m = 0.040};
  c.outdoors = {.air_temperature_C = 0.0,
                .sky_temperature_C = -8.0,
                .ground_temperature_C = 0.0,
                .sky_view_factor = 0.5,
                .convection_W_m2K = 12.0};
  c.room = {.air_temperature_C = 19.0, .radiant_temperature_C = 19.0};
  c.outdoor_vapour_Pa = vapour_pressure_Pa(0.0, 0.85);
  c.room_vapour_Pa = vapour_pressure_Pa(19.0, 0.50);
  c.gap_area_m2 = 0.8;
  c.network.reference_height_m = 0.6;
  const auto joint = [](double coefficient, double height_m) {
    return PlacedOpening{joint_resistance(coefficient, 2.0 / 3.0, 1.0), height_m};
  };
  c.network.to_room = {joint(0.01, 0.0), joint(0.01, 1.2)};
  c.network.to_outdoors = {joint(0.5, 0.0), joint(0.5, 1.2)};
  c.pressure = {.mean_Pa = 0.5, .standard_deviation_Pa = 0.5};
  c.diffusion_to_room_kg_sPa = 1e-12;
  return c;
}

}  // namespace dewgap::test
