#include <algorithm>
#include <cstddef>
#include <string>

#include "dewgap/errors.hpp"
#include "dewgap/glazing/stack_ends_kernel.hpp"

namespace dewgap {
namespace {

/// A field's name, put together only when it is needed for a message.
struct FieldName {
  const char* what;
  const char* part = "";
  std::size_t number = 0;  // from 1, counted from outdoors; 0 for none
};

[[noreturn]] void refuse(double value, PermittedRange permitted, const FieldName& field, const char* unit) {
  std::string name{field.part};
  if (field.number > 0) {
    name += " " + std::to_string(field.number);
  }
  throw InvalidInput(name.empty() ? std::string(field.what) : name + ": " + field.what, value, permitted,
                     unit);
}

// require_in_range without a name at hand; inline, since a solve checks some thirty fields.
inline void require(double value, PermittedRange permitted, const FieldName& field, const char* unit) {
  const bool inside = value >= permitted.min && value <= permitted.max;  // false for NaN
  if (!inside) [[unlikely]] {
    refuse(value, permitted, field, unit);
  }
}

void require_valid_layer(const StackLayer& layer, std::size_t number) {
  const auto field = [number](const char* what) { return FieldName{what, "layer", number}; };
  require(layer.thickness_m, {1e-5, 0.1}, field("thickness"), "m");
  require(layer.conductivity_W_mK, {0.01, 400.0}, field("conductivity"), "W/(m K)");
  require(layer.long_wave_transmittance, {0.0, 0.9}, field("long-wave transmittance"), "");
  // Emissivity, transmittance and reflectance of a face add up to 1. A hair is left for decimal fractions.
  const double most = std::min(0.99, 1.0 - layer.long_wave_transmittance + 1e-12);
  require(layer.emissivity_outer, {0.01, most}, field("emissivity of the outer face"), "");
  require(layer.emissivity_inner, {0.01, most}, field("emissivity of the inner face"), "");
  require(layer.absorbed_sun_W_m2, {0.0, 1500.0}, field("absorbed sun"), "W/m2");
  require(layer.outer_face_heat_W_m2, {-500.0, 500.0}, field("heat at the outer face"), "W/m2");
  require(layer.inner_face_heat_W_m2, {-500.0, 500.0}, field("heat at the inner face"), "W/m2");
}

void require_valid_gap(const StackGap& gap, std::size_t number) {
  const auto field = [number](const char* what) { return FieldName{what, "gap", number}; };
  require(gap.width_m, {0.002, 0.250}, field("width"), "m");
  require(gap.gas.air, {0.0, 1.0}, field("air fraction"), "");
  require(gap.gas.argon, {0.0, 1.0}, field("argon fraction"), "");
  require(gap.gas.krypton, {0.0, 1.0}, field("krypton fraction"), "");
  require(gap.gas.air + gap.gas.argon + gap.gas.krypton, {1.0 - 1e-9, 1.0 + 1e-9},
          field("sum of the gas fractions"), "");
  require(gap.convection_factor, {0.3, 3.0}, field("convection factor"), "");
  require(gap.air_stream.heat_capacity_flow_W_m2K, {0.0, 200.0}, field("heat capacity flow"), "W/(m2 K)");
  require(gap.air_stream.inlet_temperature_C, {-60.0, 90.0}, field("inlet temperature"), "C");
}

void require_valid_outdoors(const OutdoorClimate& outdoors) {
  const auto field = [](const char* what) { return FieldName{what, "outdoors"}; };
  require(outdoors.air_temperature_C, {-60.0, 60.0}, field("air temperature"), "C");
  require(outdoors.sky_temperature_C, {-100.0, 60.0}, field("sky temperature"), "C");
  require(outdoors.ground_temperature_C, {-60.0, 80.0}, field("ground temperature"), "C");
  require(outdoors.sky_view_factor, {0.0, 1.0}, field("sky view factor"), "");
  require(outdoors.convection_W_m2K, {0.1, 200.0}, field("convection"), "W/(m2 K)");
}

void require_valid_room(const RoomClimate& room) {
  const auto field = [](const char* what) { return FieldName{what, "room"}; };
  require(room.air_temperature_C, {-60.0, 60.0}, field("air temperature"), "C");
  require(room.radiant_temperature_C, {-60.0, 80.0}, field("radiant temperature"), "C");
  require(room.film_convection_W_m2K, {0.0, 100.0}, field("film convection"), "W/(m2 K)");
  require(room.film_factor, {0.3, 3.0}, field("film factor"), "");
}

}  // namespace

namespace glazing_kernel {

void require_valid(const Stack& stack, const OutdoorClimate& outdoors, const RoomClimate& room) {
  require(static_cast<double>(stack.layer_count), {1.0, static_cast<double>(max_stack_layers)},
          {"layer count"}, "");
  require(stack.height_m, {0.05, 10.0}, {"height", "stack"}, "m");
  require(stack.tilt_deg, {0.0, 90.0}, {"tilt", "stack"}, "deg");
  for (std::size_t i = 0; i < stack.layer_count; ++i) {
    require_valid_layer(stack.layers[i], i + 1);
  }
  for (std::size_t i = 0; i + 1 < stack.layer_count; ++i) {
    require_valid_gap(stack.gaps[i], i + 1);
  }
  require_valid_outdoors(outdoors);
  require_valid_room(room);
}

}  // namespace glazing_kernel

void StackOptions::validate() const {
  require(static_cast<double>(max_iterations), {1.0, 1000.0}, {"maximum of iterations"}, "");
  require(flux_tolerance, {1e-13, 1e-3}, {"flux tolerance"}, "");
}

}  // namespace dewgap
