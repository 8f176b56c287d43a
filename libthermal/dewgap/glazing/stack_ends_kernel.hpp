// The two sets of boundary conditions of the stack's equations, and what prepares and settles them. Private
// to glazing.
#pragma once

#include <cstddef>

#include "dewgap/errors.hpp"
#include "dewgap/glazing/room_film_kernel.hpp"
#include "dewgap/glazing/stack_kernel.hpp"

namespace dewgap::glazing_kernel {

/// Real conditions: convection to outdoor air and to the room's air; radiation is in the exchange.
struct RealEnds {
  double outdoor_convection_W_m2K = 20.0;
  double outdoor_air_K = 273.15;
  RoomFilm film;

  template <std::size_t Layers>
  void apply(const FaceVector<Layers>& temperature_K, StackBalance<Layers>& balance) const {
    constexpr std::size_t last = 2 * Layers - 1;
    balance.add_heat(0, outdoor_convection_W_m2K * (outdoor_air_K - temperature_K[0]));
    balance.add_slope(0, 0, -outdoor_convection_W_m2K);
    const auto room = film.at(temperature_K[last]);
    const double difference = film.air_temperature_K() - temperature_K[last];
    balance.add_heat(last, room.convection_W_m2K * difference);
    balance.add_slope(last, last, room.slope_W_m2K2 * difference - room.convection_W_m2K);
  }
};

/// EN 673: the gaps share a temperature difference about a mean; nothing is said of the two sides. A single
/// pane, which has no gap, has the difference over itself.
struct DeclaredEnds {
  double mean_K = 283.0;
  double shared_difference_K = 15.0;

  /// What the gaps share less what they should.
  template <std::size_t Faces>
  double excess_K(const numerics::Vector<Faces>& temperature_K) const {
    if constexpr (Faces == 2) {
      return temperature_K[1] - temperature_K[0] - shared_difference_K;
    }
    double sum = -shared_difference_K;
    for (std::size_t f = 1; f + 1 < Faces; ++f) {
      sum += f % 2 == 0 ? temperature_K[f] : -temperature_K[f];
    }
    return sum;
  }

  /// Replaces the balances of the two outermost faces.
  template <std::size_t Layers>
  void apply(const FaceVector<Layers>& temperature_K, StackBalance<Layers>& balance) const {
    constexpr std::size_t last = 2 * Layers - 1;
    balance.replace(0, excess_K(temperature_K));
    if constexpr (Layers == 1) {
      balance.add_slope(0, 0, -1.0);
      balance.add_slope(0, 1, 1.0);
    }
    for (std::size_t f = 1; f < last; ++f) {
      balance.add_slope(0, f, f % 2 == 0 ? 1.0 : -1.0);
    }
    balance.replace(last, 0.5 * (temperature_K[0] + temperature_K[last]) - mean_K);
    balance.add_slope(last, 0, 0.5);
    balance.add_slope(last, last, 0.5);
  }
};

template <std::size_t Layers>
using RealEquations = StackEquations<Layers, RealEnds>;

/// Radiation from the two sides: sky by its view factor, ground and facing walls for the rest; the room is
/// black.
LongWaveSurroundings surroundings_of(const OutdoorClimate& outdoors, const RoomClimate& room);

/// The prepared equations of a stack of `Layers` layers under real conditions. Input must be valid.
template <std::size_t Layers>
RealEquations<Layers> real_equations(const Stack& stack, const OutdoorClimate& outdoors,
                                     const RoomClimate& room);

/// Where Newton's method starts: temperatures along estimated resistances, no sun and no streams.
template <std::size_t Layers>
FaceVector<Layers> real_start(const RealEquations<Layers>& equations, const OutdoorClimate& outdoors,
                              const RoomClimate& room);

/// Newton's method on the equations from `start`; see stack_settle.cpp for gaps with air streams.
template <std::size_t Layers>
numerics::NewtonResult<2 * Layers> settle(const RealEquations<Layers>& equations,
                                          const FaceVector<Layers>& start, const StackOptions& options);

/// Throws InvalidInput for a field outside its range.
void require_valid(const Stack& stack, const OutdoorClimate& outdoors, const RoomClimate& room);

/// work.template operator()<Layers>() for the layer count at hand.
template <class Work>
auto with_layer_count(std::size_t layer_count, Work&& work) {
  static_assert(max_stack_layers == 7);
  switch (layer_count) {
    case 1:
      return work.template operator()<1>();
    case 2:
      return work.template operator()<2>();
    case 3:
      return work.template operator()<3>();
    case 4:
      return work.template operator()<4>();
    case 5:
      return work.template operator()<5>();
    case 6:
      return work.template operator()<6>();
    case 7:
      return work.template operator()<7>();
    default:
      throw InvalidInput("layer count", static_cast<double>(layer_count), {1.0, 7.0}, "");
  }
}

}  // namespace dewgap::glazing_kernel
