// Solves the heat balance of a step, hour after hour, starting from the hours before. Private to gap/.
#pragma once

#include <algorithm>

#include "dewgap/gap/hour_heat_kernel.hpp"

namespace dewgap::gap_kernel {

template <std::size_t Panes>
struct StepPrediction {
  std::array<double, 2 * Panes> face_K{};
  double gap_air_K = 0.0;
};

/// What a solved step says of heat.
template <std::size_t Panes>
struct StepHeat {
  SolveStatus status = SolveStatus::converged;
  int newton_steps = 0;
  std::array<double, 2 * Panes> face_K{};
  double gap_air_K = 0.0;
  double gap_convection_W_m2K = 0.0;
  double room_convection_W_m2K = 0.0;
  double room_flux_W_m2 = 0.0;
  double outdoor_flux_W_m2 = 0.0;
  double closure_W_m2 = 0.0;
  ValidityFlags flags;
};

/// The stack of `Layers` layers, prepared once; its outermost `Panes` are the panes.
template <std::size_t Layers, std::size_t Panes>
class StepHeatSolver {
 public:
  explicit StepHeatSolver(const Stack& stack)
      : height_m_(stack.height_m),
        tilt_deg_(stack.tilt_deg),
        equations_(glazing_kernel::real_equations<Layers>(stack, {}, {})) {}

  void set_weather(const OutdoorClimate& outdoors, const RoomClimate& room) {
    auto& ends = equations_.ends;
    ends.outdoor_convection_W_m2K = outdoors.convection_W_m2K;
    ends.outdoor_air_K = constants::kelvin(outdoors.air_temperature_C);
    const double room_K = constants::kelvin(room.air_temperature_C);
    if (room_K != ends.film.air_temperature_K() || room.film_factor != film_factor_) {
      ends.film = glazing_kernel::RoomFilm::natural(room_K, height_m_, tilt_deg_, room.film_factor);
      film_factor_ = room.film_factor;
    }
    equations_.parts.long_wave.set_surroundings(glazing_kernel::surroundings_of(outdoors, room));
    outdoors_ = outdoors;
    room_ = room;
  }
  void set_sun(const std::array<double, 2>& absorbed_W_m2) {
    for (std::size_t f = 0; f < 2 * Panes; ++f) {
      equations_.parts.heat_W_m2[f] = 0.5 * absorbed_W_m2[f / 2];  // half at each face
    }
  }
  void set_stream(const GapAirStream& stream) {
    equations_.parts.gaps[0].stream_W_m2K = stream.heat_capacity_flow_W_m2K;
    equations_.parts.gaps[0].inlet_temperature_K = constants::kelvin(stream.inlet_temperature_C);
  }
  /// Air of the room that passes behind a curtain keeps the room's temperature.
  void set_curtain_inlet(double room_C) {
    equations_.parts.gaps[Layers - 2].inlet_temperature_K = constants::kelvin(room_C);
  }

  /// Where the step is likely to end; the search starts there.
  StepPrediction<Panes> predict(const StepTerms<Panes>& terms) {
    next_ = start(terms);
    const auto temperature_K = equations_.parts.face_temperatures_K(next_);
    StepPrediction<Panes> prediction;
    std::copy_n(temperature_K.begin(), 2 * Panes, prediction.face_K.begin());
    if constexpr (Panes == 2) {
      prediction.gap_air_K =
          equations_.parts.gaps[0].exchange(temperature_K[1], temperature_K[2]).air_temperature_K;
    }
    return prediction;
  }

  /// From where the prediction, or the solution before, left off.
  StepHeat<Panes> solve(const StepTerms<Panes>& terms, const numerics::NewtonOptions& options) {
    auto found = solve_from(next_, terms, options);
    if (found.status != SolveStatus::converged) {
      found = solve_again(terms, options, found.iterations);
    }
    if (found.status != SolveStatus::converged) {
      forget();
      StepHeat<Panes> unsettled;
      unsettled.status = found.status;
      unsettled.newton_steps = found.iterations;
      return unsettled;
    }
    next_ = found.solution;
    return report(found);
  }

  /// The last solution is the step's: the next step is predicted from it.
  void accept() {
    before_ = now_;
    now_ = next_;
    known_ = std::min(known_ + 1, 2);
  }

  /// Starts the next step afresh: after hours in which another stack stood here.
  void forget() { known_ = 0; }

 private:
  using Found = numerics::NewtonResult<2 * Layers>;

  // Predictor: on a straight line through the two steps before, then along the tangent: the last Jacobian's
  // factors applied to what the new weather leaves unbalanced there (Euler's predictor of continuation
  // methods).
  FaceVector<Layers> start(const StepTerms<Panes>& terms) const {
    if (known_ == 0) {
      return glazing_kernel::real_start<Layers>(equations_, outdoors_, room_);
    }
    auto x = now_;
    if (known_ == 2) {
      for (std::size_t i = 0; i < x.size(); ++i) {
        x[i] += now_[i] - before_[i];
      }
    }
    if (factors_.held()) {
      const StepEquations<Layers, Panes> equations{equations_, terms};
      const auto tangent = factors_.solve(equations.evaluate(x).residual);
      const double share = equations.step_limit(tangent);
      for (std::size_t i = 0; i < x.size(); ++i) {
        x[i] -= share * tangent[i];
      }
    }
    return x;
  }

  Found solve_from(const FaceVector<Layers>& x, const StepTerms<Panes>& terms,
                   const numerics::NewtonOptions& options) {
    return numerics::solve_newton(StepEquations<Layers, Panes>{equations_, terms}, x, options, factors_);
  }

  // Where Newton's method stalled (strong streams in wide gaps, a film about to dry out): from a cold start,
  // then with the gap's convection held at the step before, which makes the balance monotone.
  Found solve_again(const StepTerms<Panes>& terms, const numerics::NewtonOptions& options, int spent) {
    const auto cold = glazing_kernel::real_start<Layers>(equations_, outdoors_, room_);
    auto found = solve_from(cold, terms, options);
    found.iterations += spent;
    if constexpr (Layers > 1) {
      if (found.status != SolveStatus::converged && held_convection_W_m2K_ > 0.0) {
        auto& held = equations_.parts.gaps[0].held_W_m2K;
        held = held_convection_W_m2K_;
        const int so_far = found.iterations;
        found = solve_from(cold, terms, options);
        found.iterations += so_far;
        held = 0.0;
      }
    }
    return found;
  }

  StepHeat<Panes> report(const Found& found) {
    const auto& parts = equations_.parts;
    const auto state = parts.state(found.solution);
    StepHeat<Panes> heat;
    heat.newton_steps = found.iterations;
    for (std::size_t f = 0; f < 2 * Panes; ++f) {
      heat.face_K[f] = state.temperature_K[f];
    }
    if constexpr (Panes == 2) {
      const auto gap = parts.gaps[0].exchange(heat.face_K[1], heat.face_K[2]);
      heat.gap_air_K = gap.air_temperature_K;
      heat.gap_convection_W_m2K = gap.convection_W_m2K;
      held_convection_W_m2K_ = gap.convection_W_m2K;
      heat.flags.raise(gap.flags);
    }
    const auto& ends = equations_.ends;
    const double surface_K = state.temperature_K[2 * Layers - 1];
    const auto film = ends.film.at(surface_K);
    heat.flags.raise(film.flags);
    heat.room_convection_W_m2K = film.convection_W_m2K;
    heat.room_flux_W_m2 = film.convection_W_m2K * (ends.film.air_temperature_K() - surface_K) +
                          parts.long_wave.room_flux_W_m2(state.irradiance_W_m2, state.black_W_m2);
    heat.outdoor_flux_W_m2 = ends.outdoor_convection_W_m2K * (state.temperature_K[0] - ends.outdoor_air_K) +
                             parts.long_wave.outdoor_flux_W_m2(state.irradiance_W_m2, state.black_W_m2);
    for (const double left : found.residual) {
      heat.closure_W_m2 = std::max(heat.closure_W_m2, std::abs(left));
    }
    return heat;
  }

  double height_m_;
  double tilt_deg_;
  double film_factor_ = 0.0;
  double held_convection_W_m2K_ = 0.0;
  int known_ = 0;
  OutdoorClimate outdoors_;
  RoomClimate room_;
  RealEquations<Layers> equations_;
  FaceVector<Layers> now_{};
  FaceVector<Layers> before_{};
  FaceVector<Layers> next_{};
  numerics::KeptLuFactors<2 * Layers> factors_;
};

}  // namespace dewgap::gap_kernel
