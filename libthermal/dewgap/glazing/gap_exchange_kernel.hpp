// Convection in one gap between its two faces and its air. Private to glazing.
#pragma once

#include <array>

#include "dewgap/glazing/gap_gas_kernel.hpp"
#include "dewgap/glazing/gap_nusselt_kernel.hpp"

namespace dewgap::glazing_kernel {

/// Heat that the two faces of a gap give to its air, W/m2, with slopes over both face temperatures.
struct GapExchange {
  double convection_W_m2K = 0.0;  ///< face to face
  double air_temperature_K = 0.0;
  double from_outer_W_m2 = 0.0;  ///< from the face on the outdoor side into the gap's air
  double from_inner_W_m2 = 0.0;
  std::array<double, 2>
      from_outer_slope{};  ///< over the temperature of the outdoor-side and the room-side face
  std::array<double, 2> from_inner_slope{};
  ValidityFlags flags;
};

/// One gap, prepared.
struct GapModel {
  GapGas gas;
  GapNusseltLaw law_up;    ///< room-side face the warmer one: heat flows outwards, upwards where tilted
  GapNusseltLaw law_down;  ///< outdoor-side face the warmer one
  double width_m = 0.02;
  double convection_factor = 1.0;
  double stream_W_m2K = 0.0;
  double inlet_temperature_K = 0.0;
  double held_W_m2K = 0.0;  ///< above 0: convection held at this, whatever the faces' temperatures

  GapExchange exchange(double outer_face_K, double inner_face_K) const;
};

}  // namespace dewgap::glazing_kernel
