#include "random_stacks.hpp"

#include <gtest/gtest.h>

#include <algorithm>

#include "support/reference.hpp"

namespace dewgap::test {
namespace {

/// One row of the table, by name.
class Ranges {
 public:
  Ranges(const numerics::CsvTable& table, std::size_t row) : table_(table), row_(row) {}
  double at(std::string_view column) const { return table_.number(row_, column); }
  double log_draw(Draw& draw, const std::string& stem, const std::string& unit = "") const {
    return draw.log_between(at(stem + "_min" + unit), at(stem + "_max" + unit));
  }
  double draw_between(Draw& draw, const std::string& stem, const std::string& unit) const {
    return draw.between(at(stem + "_min" + unit), at(stem + "_max" + unit));
  }

 private:
  const numerics::CsvTable& table_;
  std::size_t row_;
};

StackLayer random_layer(Draw& draw, const Ranges& ranges) {
  StackLayer layer;
  layer.thickness_m = ranges.log_draw(draw, "thickness", "_m");
  layer.conductivity_W_mK = ranges.log_draw(draw, "conductivity", "_W_mK");
  layer.long_wave_transmittance = draw.chance(ranges.at("transmit_share")) ? 0.9 * draw.unit() : 0.0;
  const double most = std::min(0.99, 1.0 - layer.long_wave_transmittance);
  const double least = std::min(most, ranges.at("emissivity_min"));
  layer.emissivity_outer = draw.between(least, most);
  layer.emissivity_inner = draw.between(least, most);
  layer.absorbed_sun_W_m2 = ranges.at("sun_max_W_m2") * draw.unit();
  layer.outer_face_heat_W_m2 = ranges.at("face_heat_max_W_m2") * draw.between(-1.0, 1.0);
  layer.inner_face_heat_W_m2 = ranges.at("face_heat_max_W_m2") * draw.between(-1.0, 1.0);
  return layer;
}

StackGap random_gap(Draw& draw, const Ranges& ranges) {
  StackGap gap;
  gap.width_m = ranges.log_draw(draw, "gap", "_m");
  if (draw.chance(ranges.at("mixture_share"))) {
    gap.gas.air = draw.unit();
    gap.gas.argon = (1.0 - gap.gas.air) * draw.unit();
    gap.gas.krypton = 1.0 - gap.gas.air - gap.gas.argon;
  }
  if (draw.chance(ranges.at("stream_share"))) {
    const double root = draw.unit();
    gap.air_stream.heat_capacity_flow_W_m2K = ranges.at("stream_max_W_m2K") * root * root;
    gap.air_stream.inlet_temperature_C = draw.between(ranges.at("outdoor_min_C"), ranges.at("room_max_C"));
  }
  gap.convection_factor = ranges.log_draw(draw, "factor");
  return gap;
}

RandomStack random_stack(Draw& draw, const Ranges& ranges) {
  RandomStack state;
  auto& stack = state.stack;
  stack.layer_count = 1 + static_cast<std::size_t>(ranges.at("layers_max") * draw.unit());
  for (std::size_t i = 0; i < stack.layer_count; ++i) {
    stack.layers[i] = random_layer(draw, ranges);
  }
  for (std::size_t i = 0; i + 1 < stack.layer_count; ++i) {
    stack.gaps[i] = random_gap(draw, ranges);
  }
  stack.height_m = ranges.log_draw(draw, "height", "_m");
  stack.tilt_deg = draw.chance(ranges.at("tilted_share")) ? 90.0 * draw.unit() : 90.0;
  stack.correlation = static_cast<GapCorrelation>(static_cast<int>(3.0 * draw.unit()));
  auto& outdoors = state.outdoors;
  outdoors.air_temperature_C = ranges.draw_between(draw, "outdoor", "_C");
  outdoors.ground_temperature_C = ranges.draw_between(draw, "outdoor", "_C");
  outdoors.sky_temperature_C = ranges.draw_between(draw, "sky", "_C");
  outdoors.sky_view_factor = draw.unit();
  outdoors.convection_W_m2K = ranges.log_draw(draw, "outdoor_convection", "_W_m2K");
  auto& room = state.room;
  room.air_temperature_C = ranges.draw_between(draw, "room", "_C");
  room.radiant_temperature_C = ranges.draw_between(draw, "room", "_C");
  room.film_convection_W_m2K = draw.chance(ranges.at("fixed_film_share")) ? draw.between(0.5, 10.0) : 0.0;
  room.film_factor = ranges.log_draw(draw, "factor");
  return state;
}

}  // namespace

double RandomStack::sources_W_m2() const {
  double sum = 0.0;
  for (std::size_t i = 0; i < stack.layer_count; ++i) {
    const auto& layer = stack.layers[i];
    sum += layer.absorbed_sun_W_m2 + layer.outer_face_heat_W_m2 + layer.inner_face_heat_W_m2;
  }
  return sum;
}

bool RandomStack::has_sources() const {
  return std::any_of(stack.layers.begin(), stack.layers.end(), [](const StackLayer& layer) {
    return layer.absorbed_sun_W_m2 != 0.0 || layer.outer_face_heat_W_m2 != 0.0 ||
           layer.inner_face_heat_W_m2 != 0.0;
  });
}

bool RandomStack::has_stream() const {
  return std::any_of(stack.gaps.begin(), stack.gaps.end(),
                     [](const StackGap& gap) { return gap.air_stream.heat_capacity_flow_W_m2K > 0.0; });
}

void for_each_random_stack(const std::function<void(const RandomStack&)>& check, int one_in) {
  const auto table = read_test_table("glazing/states.csv");
  for (std::size_t row = 0; row < table.row_count(); ++row) {
    const Ranges ranges(table, row);
    Draw draw(static_cast<std::uint64_t>(ranges.at("seed")));
    const int count = static_cast<int>(ranges.at("stacks"));
    for (int i = 0; i < count; ++i) {
      const auto state = random_stack(draw, ranges);
      if (i % one_in != 0) {
        continue;
      }
      check(state);
      if (testing::Test::HasFailure()) {
        ADD_FAILURE() << "first at stack " << i << " of '" << table.text(row, "name") << "'";
        return;
      }
    }
  }
}

}  // namespace dewgap::test
