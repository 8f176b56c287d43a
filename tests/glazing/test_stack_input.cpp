// Every field of a stack and its surroundings refuses NaN, infinity and what lies outside its range.
#include <gtest/gtest.h>

#include <functional>
#include <limits>
#include <string>
#include <vector>

#include "dewgap/errors.hpp"
#include "dewgap/glazing/stack.hpp"
#include "support/not_a_number.hpp"

namespace dewgap {
namespace {

struct Inputs {
  Stack stack;
  OutdoorClimate outdoors;
  RoomClimate room;
};

struct Field {
  const char* name;
  std::function<double&(Inputs&)> of;
  PermittedRange permitted;
};

Inputs valid_inputs() {
  Inputs inputs;
  inputs.stack.layer_count = 2;
  inputs.stack.layers[1].conductivity_W_mK = 0.19;
  return inputs;
}

std::vector<Field> fields() {
  return {
      {"layer 2: thickness",
       [](Inputs& in) -> double& { return in.stack.layers[1].thickness_m; },
       {1e-5, 0.1}},
      {"layer 2: conductivity",
       [](Inputs& in) -> double& { return in.stack.layers[1].conductivity_W_mK; },
       {0.01, 400}},
      {"layer 2: emissivity of the outer face",
       [](Inputs& in) -> double& { return in.stack.layers[1].emissivity_outer; },
       {0.01, 0.99}},
      {"layer 1: emissivity of the inner face",
       [](Inputs& in) -> double& { return in.stack.layers[0].emissivity_inner; },
       {0.01, 0.99}},
      {"layer 1: absorbed sun",
       [](Inputs& in) -> double& { return in.stack.layers[0].absorbed_sun_W_m2; },
       {0, 1500}},
      {"layer 1: heat at the outer face",
       [](Inputs& in) -> double& { return in.stack.layers[0].outer_face_heat_W_m2; },
       {-500, 500}},
      {"layer 2: heat at the inner face",
       [](Inputs& in) -> double& { return in.stack.layers[1].inner_face_heat_W_m2; },
       {-500, 500}},
      {"gap 1: width", [](Inputs& in) -> double& { return in.stack.gaps[0].width_m; }, {0.002, 0.250}},
      {"gap 1: convection factor",
       [](Inputs& in) -> double& { return in.stack.gaps[0].convection_factor; },
       {0.3, 3}},
      {"gap 1: heat capacity flow",
       [](Inputs& in) -> double& { return in.stack.gaps[0].air_stream.heat_capacity_flow_W_m2K; },
       {0, 200}},
      {"gap 1: inlet temperature",
       [](Inputs& in) -> double& { return in.stack.gaps[0].air_stream.inlet_temperature_C; },
       {-60, 90}},
      {"stack: height", [](Inputs& in) -> double& { return in.stack.height_m; }, {0.05, 10}},
      {"stack: tilt", [](Inputs& in) -> double& { return in.stack.tilt_deg; }, {0, 90}},
      {"outdoors: air temperature",
       [](Inputs& in) -> double& { return in.outdoors.air_temperature_C; },
       {-60, 60}},
      {"outdoors: sky temperature",
       [](Inputs& in) -> double& { return in.outdoors.sky_temperature_C; },
       {-100, 60}},
      {"outdoors: ground temperature",
       [](Inputs& in) -> double& { return in.outdoors.ground_temperature_C; },
       {-60, 80}},
      {"outdoors: sky view factor",
       [](Inputs& in) -> double& { return in.outdoors.sky_view_factor; },
       {0, 1}},
      {"outdoors: convection",
       [](Inputs& in) -> double& { return in.outdoors.convection_W_m2K; },
       {0.1, 200}},
      {"room: air temperature", [](Inputs& in) -> double& { return in.room.air_temperature_C; }, {-60, 60}},
      {"room: radiant temperature",
       [](Inputs& in) -> double& { return in.room.radiant_temperature_C; },
       {-60, 80}},
      {"room: film convection",
       [](Inputs& in) -> double& { return in.room.film_convection_W_m2K; },
       {0, 100}},
      {"room: film factor", [](Inputs& in) -> double& { return in.room.film_factor; }, {0.3, 3}},
  };
}

StackSolution solve(const Inputs& inputs) {
  return solve_stack(inputs.stack, inputs.outdoors, inputs.room);
}

TEST(StackInput, EveryFieldRefusesWhatIsOutsideItsRange) {
  for (const auto& field : fields()) {
    const double beyond = 1e-6 * (field.permitted.max - field.permitted.min);
    for (const double bad :
         {std::numeric_limits<double>::quiet_NaN(), std::numeric_limits<double>::infinity(),
          -std::numeric_limits<double>::infinity(), field.permitted.min - beyond,
          field.permitted.max + beyond}) {
      auto inputs = valid_inputs();
      field.of(inputs) = bad;
      try {
        solve(inputs);
        ADD_FAILURE() << field.name << " took " << bad;
      } catch (const InvalidInput& refused) {
        EXPECT_EQ(refused.field(), field.name) << refused.what();
      }
    }
  }
}

TEST(StackInput, EveryFieldTakesTheEndsOfItsRange) {
  for (const auto& field : fields()) {
    // What a pane in this much sun would do lies beyond the gas fits; the field itself takes it.
    const bool hot = std::string(field.name).find("sun") != std::string::npos;
    for (const double end : {field.permitted.min, hot ? 300.0 : field.permitted.max}) {
      auto inputs = valid_inputs();
      field.of(inputs) = end;
      EXPECT_EQ(solve(inputs).status, SolveStatus::converged) << field.name << " at " << end;
    }
  }
}

TEST(StackInput, RefusesMoreLayersThanItHolds) {
  auto inputs = valid_inputs();
  inputs.stack.layer_count = 8;
  EXPECT_THROW(solve(inputs), InvalidInput);
  inputs.stack.layer_count = 0;
  EXPECT_THROW(solve(inputs), InvalidInput);
}

TEST(StackInput, LayersBeyondTheCountAreNotLookedAt) {
  auto inputs = valid_inputs();
  inputs.stack.layers[2].thickness_m = -1.0;
  inputs.stack.gaps[1].width_m = -1.0;
  EXPECT_EQ(solve(inputs).status, SolveStatus::converged);
}

TEST(StackInput, AFaceMustNotEmitAndTransmitMoreThanOne) {
  for (const double transmittance : {0.3, 0.95, -0.1, test::not_a_number}) {
    auto inputs = valid_inputs();
    inputs.stack.layers[1].long_wave_transmittance = transmittance;  // its emissivity is 0.837
    EXPECT_THROW(solve(inputs), InvalidInput) << transmittance;
  }
  auto inputs = valid_inputs();
  inputs.stack.layers[1].long_wave_transmittance = 0.3;
  inputs.stack.layers[1].emissivity_outer = inputs.stack.layers[1].emissivity_inner = 0.7;
  EXPECT_EQ(solve(inputs).status, SolveStatus::converged);
}

TEST(StackInput, GasFractionsMustAddUp) {
  for (const GasMixture& gas : {GasMixture{0.5, 0.4, 0.0}, GasMixture{1.2, -0.2, 0.0},
                                GasMixture{std::numeric_limits<double>::quiet_NaN(), 0.0, 0.0},
                                GasMixture{0.5, std::numeric_limits<double>::quiet_NaN(), 0.5},
                                GasMixture{0.5, 0.5, std::numeric_limits<double>::quiet_NaN()}}) {
    auto inputs = valid_inputs();
    inputs.stack.gaps[0].gas = gas;
    EXPECT_THROW(solve(inputs), InvalidInput);
  }
}

TEST(StackInput, OptionsAreChecked) {
  const auto inputs = valid_inputs();
  const auto with = [&](StackOptions options) {
    return solve_stack(inputs.stack, inputs.outdoors, inputs.room, options);
  };
  EXPECT_THROW(with({0, 1e-9}), InvalidInput);
  EXPECT_THROW(with({1001, 1e-9}), InvalidInput);
  EXPECT_THROW(with({60, 1e-14}), InvalidInput);
  EXPECT_THROW(with({60, std::numeric_limits<double>::quiet_NaN()}), InvalidInput);
}

TEST(StackInput, AGapHotterThanTheGasFitsReachIsRefused) {
  auto inputs = valid_inputs();
  inputs.stack.layer_count = 3;
  inputs.stack.layers[0].emissivity_inner = 0.02;
  inputs.stack.layers[2].emissivity_outer = 0.02;
  inputs.stack.layers[1].absorbed_sun_W_m2 = 900.0;
  EXPECT_THROW(solve(inputs), InvalidInput);
}

}  // namespace
}  // namespace dewgap
