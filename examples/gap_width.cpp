// How wide should the gap be? Prints, for gaps of 10 to 100 mm, the glass U-value and how dry the gap stays on a winter
// day, for an invented bedroom window whose old sash leaks and whose tape does not quite seal.
#include <cstdio>

#include "dewgap/air/humid_air.hpp"
#include "dewgap/gap/steady.hpp"

namespace {

dewgap::GapCase bedroom_window(double gap_m) {
  dewgap::GapCase window;
  window.stack.layer_count = 2;
  window.stack.height_m = 1.2;
  window.stack.layers[0] = {.thickness_m = 0.003, .conductivity_W_mK = 1.0};
  window.stack.layers[1] = {
      .thickness_m = 0.004, .conductivity_W_mK = 0.18, .emissivity_outer = 0.9, .emissivity_inner = 0.9};
  window.stack.gaps[0].width_m = gap_m;
  window.outdoors = {.air_temperature_C = 2.0, .sky_temperature_C = -6.0, .ground_temperature_C = 2.0};
  window.room = {.air_temperature_C = 19.0, .radiant_temperature_C = 19.0};
  window.outdoor_vapour_Pa = dewgap::vapour_pressure_Pa(2.0, 0.85);
  window.room_vapour_Pa = dewgap::vapour_pressure_Pa(19.0, 0.55);
  window.gap_area_m2 = 0.8;
  window.network.to_outdoors = {{dewgap::joint_resistance(0.6, 2.0 / 3.0, 4.0), 0.6}};  // worn joints
  window.network.to_room = {{dewgap::joint_resistance(0.01, 2.0 / 3.0, 4.0), 0.6}};     // tape
  window.network.reference_height_m = 0.6;
  window.pressure = {.mean_Pa = -0.5, .standard_deviation_Pa = 0.8};  // outdoor air drawn in, with gusts
  return window;
}

}  // namespace

int main() {
  std::puts("gap mm   U W/(m2 K)   coldest face C   potential dew point C   air goes");
  for (const double gap_mm : {10.0, 20.0, 30.0, 50.0, 75.0, 100.0}) {
    const auto state = dewgap::solve_gap(bedroom_window(gap_mm / 1000.0));
    if (state.status != dewgap::SolveStatus::converged) {
      std::puts("did not converge");
      return 1;
    }
    std::printf("%6.0f   %10.2f   %14.1f   %21.1f   %s\n", gap_mm, state.heat.u_value_W_m2K, state.coldest_face_C,
                state.potential_dew_point_C, dewgap::name_of(state.way).data());
  }
  return 0;
}
