#include <cmath>

#include "dewgap/air/constants.hpp"
#include "dewgap/glazing/stack_ends_kernel.hpp"

namespace dewgap::glazing_kernel {
namespace {

using constants::kelvin;

double black_W_m2(double temperature_C) {
  return BlackEmission::stefan_boltzmann().power_W_m2(kelvin(temperature_C));
}

GapModel gap_model(const Stack& stack, std::size_t i) {
  const auto& gap = stack.gaps[i];
  GapModel model;
  model.gas = iso_15099_fill(gap.gas);
  const double aspect_ratio = stack.height_m / gap.width_m;
  model.law_up = GapNusseltLaw(aspect_ratio, stack.tilt_deg, stack.correlation);
  model.law_down = stack.tilt_deg == 90.0
                       ? model.law_up
                       : GapNusseltLaw(aspect_ratio, 180.0 - stack.tilt_deg, stack.correlation);
  model.width_m = gap.width_m;
  model.convection_factor = gap.convection_factor;
  model.stream_W_m2K = gap.air_stream.heat_capacity_flow_W_m2K;
  model.inlet_temperature_K = kelvin(gap.air_stream.inlet_temperature_C);
  return model;
}

}  // namespace

LongWaveSurroundings surroundings_of(const OutdoorClimate& outdoors, const RoomClimate& room) {
  const double sky = outdoors.sky_view_factor;
  return {
      sky * black_W_m2(outdoors.sky_temperature_C) + (1.0 - sky) * black_W_m2(outdoors.ground_temperature_C),
      black_W_m2(room.radiant_temperature_C)};
}

template <std::size_t Layers>
RealEquations<Layers> real_equations(const Stack& stack, const OutdoorClimate& outdoors,
                                     const RoomClimate& room) {
  RealEquations<Layers> equations;
  auto& parts = equations.parts;
  parts.emission = BlackEmission::stefan_boltzmann();
  parts.long_wave = LongWaveExchange<Layers>(stack.layers, surroundings_of(outdoors, room));
  for (std::size_t i = 0; i < Layers; ++i) {
    const auto& layer = stack.layers[i];
    parts.resistance_m2K_W[i] = layer.thickness_m / layer.conductivity_W_mK;
    // Absorbed sun: half at each face.
    parts.heat_W_m2[2 * i] = 0.5 * layer.absorbed_sun_W_m2 + layer.outer_face_heat_W_m2;
    parts.heat_W_m2[2 * i + 1] = 0.5 * layer.absorbed_sun_W_m2 + layer.inner_face_heat_W_m2;
  }
  for (std::size_t i = 0; i + 1 < Layers; ++i) {
    parts.gaps[i] = gap_model(stack, i);
  }
  equations.ends.outdoor_convection_W_m2K = outdoors.convection_W_m2K;
  equations.ends.outdoor_air_K = kelvin(outdoors.air_temperature_C);
  const double room_air_K = kelvin(room.air_temperature_C);
  equations.ends.film = room.film_convection_W_m2K > 0.0
                            ? RoomFilm::fixed(room_air_K, room.film_convection_W_m2K)
                            : RoomFilm::natural(room_air_K, stack.height_m, stack.tilt_deg, room.film_factor);
  return equations;
}

template <std::size_t Layers>
FaceVector<Layers> real_start(const RealEquations<Layers>& equations, const OutdoorClimate& outdoors,
                              const RoomClimate& room) {
  const auto& parts = equations.parts;
  const auto& wave = parts.long_wave;
  const double outdoor_K = kelvin(outdoors.air_temperature_C);
  const double room_K = 0.5 * (kelvin(room.air_temperature_C) + kelvin(room.radiant_temperature_C));
  const double radiation = parts.emission.slope_W_m2K(0.5 * (outdoor_K + room_K));
  // Resistances outwards of each layer's middle, with convection of usual size.
  std::array<double, Layers> outwards{};
  double sum = 1.0 / (outdoors.convection_W_m2K + radiation * wave.emissivity(0));
  for (std::size_t i = 0; i < Layers; ++i) {
    outwards[i] = sum + 0.5 * parts.resistance_m2K_W[i];
    sum += parts.resistance_m2K_W[i];
    if (i + 1 < Layers) {
      const double still = 0.025 / parts.gaps[i].width_m;
      const double exchange =
          1.0 / (1.0 / wave.emissivity(2 * i + 1) + 1.0 / wave.emissivity(2 * i + 2) - 1.0);
      sum += 1.0 / (std::max(still, 1.6) + radiation * exchange);
    }
  }
  const double film = room.film_convection_W_m2K > 0.0 ? room.film_convection_W_m2K : 3.0;
  sum += 1.0 / (film + radiation * wave.emissivity(2 * Layers - 1));
  FaceVector<Layers> x{};
  const double flux = (room_K - outdoor_K) / sum;
  for (std::size_t i = 0; i < Layers; ++i) {
    x[2 * i] = outdoor_K + flux * outwards[i];
    x[2 * i + 1] = flux;
  }
  return x;
}

#define DEWGAP_INSTANTIATE(n)                                                                           \
  template RealEquations<n> real_equations<n>(const Stack&, const OutdoorClimate&, const RoomClimate&); \
  template FaceVector<n> real_start<n>(const RealEquations<n>&, const OutdoorClimate&, const RoomClimate&);
DEWGAP_INSTANTIATE(1)
DEWGAP_INSTANTIATE(2)
DEWGAP_INSTANTIATE(3)
DEWGAP_INSTANTIATE(4)
DEWGAP_INSTANTIATE(5)
DEWGAP_INSTANTIATE(6)
DEWGAP_INSTANTIATE(7)
#undef DEWGAP_INSTANTIATE

}  // namespace dewgap::glazing_kernel
