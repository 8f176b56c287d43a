// The heat balance of the panes over one step, with what they store and what films set free. Private to gap/.
#pragma once

#include <array>
#include <cstddef>

#include "dewgap/air/constants.hpp"
#include "dewgap/air/saturation_table_kernel.hpp"
#include "dewgap/gap/hour_vapour_kernel.hpp"
#include "dewgap/gap/latent_heat_kernel.hpp"
#include "dewgap/glazing/stack_ends_kernel.hpp"

namespace dewgap::gap_kernel {

using glazing_kernel::FaceVector;
using glazing_kernel::RealEquations;
using glazing_kernel::StackBalance;

inline double celsius(double temperature_K) {
  return temperature_K - constants::celsius_zero_K;
}

/// A face that a film may lie on.
struct FilmedFace {
  double held_kg_m2 = 0.0;
  LatentHeat latent_before;  ///< at the temperature that the step starts from
};

/// The room-side face: the room's air is a reservoir of vapour.
struct RoomFaceStep {
  double transfer_kg_m2sPa = 0.0;
  double room_vapour_Pa = 0.0;
  double limit_kg_m2s = 0.0;
};

/// What the step adds to the balance of a stack whose outermost `Panes` layers are panes.
template <std::size_t Panes>
struct StepTerms {
  static constexpr std::size_t pane_faces = 2 * Panes;
  static constexpr std::size_t room_face = pane_faces - 1;

  const air_kernel::SaturationTable* saturation = nullptr;
  double duration_s = 3600.0;
  std::array<double, pane_faces> capacity_W_m2K{};  ///< half a pane's heat capacity over the step's duration
  std::array<double, pane_faces> temperature_before_K{};
  std::array<FilmedFace, pane_faces> films{};
  VapourStep vapour;  ///< only with a gap
  double outdoor_C = 0.0;
  double sill_factor = 1.0;
  RoomFaceStep room;

  double sill_C(double pane_face_C) const { return outdoor_C + sill_factor * (pane_face_C - outdoor_C); }

  /// Vapour of the gap for face temperatures, with d(rate of surface i)/d(temperature of a face).
  struct GapVapour {
    VapourAtEnd end;
    OnSurfaces by_face_Pa_K{};  ///< saturation over the temperature of the face that moves it
  };
  GapVapour gap_vapour(double pane_C, double sheet_C) const {
    const auto pane = saturation->at(pane_C);
    const auto sheet = saturation->at(sheet_C);
    const auto sill = saturation->at(sill_C(pane_C));
    return {vapour.solve({pane.pressure_Pa, sheet.pressure_Pa, sill.pressure_Pa}),
            {pane.slope_Pa_K, sheet.slope_Pa_K, sill_factor * sill.slope_Pa_K}};
  }

  template <std::size_t Layers>
  void apply(const FaceVector<Layers>& temperature_K, StackBalance<Layers>& balance) const {
    for (std::size_t f = 0; f < pane_faces; ++f) {
      // Heat stored: C (T_before - T) / duration.
      balance.add_heat(f, capacity_W_m2K[f] * (temperature_before_K[f] - temperature_K[f]));
      balance.add_slope(f, f, -capacity_W_m2K[f]);
    }
    if constexpr (Panes == 2) {
      apply_gap(temperature_K, balance);
    }
    apply_room_face(temperature_K, balance);
  }

  /// Latent heat set free at a face that takes vapour at `rate`, W/m2: what comes, and what lies there
  /// already and freezes, melts, warms or cools.
  double latent_heat_W_m2(std::size_t face, double face_C, double rate_kg_m2s) const {
    const auto& film = films[face];
    const auto latent = film_latent_heat(face_C);
    return latent.value_J_kg * rate_kg_m2s +
           film.held_kg_m2 * (latent.value_J_kg - film.latent_before.value_J_kg) / duration_s;
  }

  double room_face_rate_kg_m2s(double saturation_Pa) const {
    return std::max(room.transfer_kg_m2sPa * (room.room_vapour_Pa - saturation_Pa), -room.limit_kg_m2s);
  }

 private:
  double latent_slope(std::size_t face, double face_C, double rate, double rate_slope) const {
    const auto latent = film_latent_heat(face_C);
    return latent.value_J_kg * rate_slope + latent.slope_J_kgK * (rate + films[face].held_kg_m2 / duration_s);
  }

  template <std::size_t Layers>
  void apply_gap(const FaceVector<Layers>& temperature_K, StackBalance<Layers>& balance) const {
    const std::array<double, 2> face_C{celsius(temperature_K[1]), celsius(temperature_K[2])};
    const auto at = gap_vapour(face_C[0], face_C[1]);
    const auto& end = at.end;
    const auto& by = at.by_face_Pa_K;
    // How e follows each saturation pressure: a / slope, for a surface that is not run dry.
    OnSurfaces e_by{};
    for (std::size_t i = 0; i < wet_surfaces; ++i) {
      e_by[i] = end.follows[i] ? vapour.transfer_kg_m2sPa[i] / end.slope_kg_m2sPa : 0.0;
    }
    // The pane's face moves its own saturation and the sill's.
    const std::array<double, 2> e_by_face{e_by[on_pane] * by[on_pane] + e_by[on_sill] * by[on_sill],
                                          e_by[on_sheet] * by[on_sheet]};
    for (std::size_t i = 0; i < 2; ++i) {
      const std::size_t face = i + 1;
      balance.add_heat(face, latent_heat_W_m2(face, face_C[i], end.rate_kg_m2s[i]));
      const double transfer = end.follows[i] ? vapour.transfer_kg_m2sPa[i] : 0.0;
      for (std::size_t j = 0; j < 2; ++j) {
        const double rate_slope = transfer * (e_by_face[j] - (i == j ? by[i] : 0.0));
        balance.add_slope(face, j + 1,
                          i == j ? latent_slope(face, face_C[i], end.rate_kg_m2s[i], rate_slope)
                                 : film_latent_heat(face_C[i]).value_J_kg * rate_slope);
      }
    }
  }

  template <std::size_t Layers>
  void apply_room_face(const FaceVector<Layers>& temperature_K, StackBalance<Layers>& balance) const {
    const double face_C = celsius(temperature_K[room_face]);
    const auto at = saturation->at(face_C);
    const double rate = room_face_rate_kg_m2s(at.pressure_Pa);
    const bool follows = rate > -room.limit_kg_m2s;
    balance.add_heat(room_face, latent_heat_W_m2(room_face, face_C, rate));
    balance.add_slope(
        room_face, room_face,
        latent_slope(room_face, face_C, rate, follows ? -room.transfer_kg_m2sPa * at.slope_Pa_K : 0.0));
  }
};

/// The system that numerics::solve_newton takes.
template <std::size_t Layers, std::size_t Panes>
struct StepEquations {
  const RealEquations<Layers>& stack;
  const StepTerms<Panes>& terms;

  StackBalance<Layers> evaluate(const FaceVector<Layers>& x) const {
    const auto state = stack.parts.state(x);
    auto balance = stack.parts.balance(x, state);
    stack.ends.apply(state.temperature_K, balance);
    terms.apply(state.temperature_K, balance);
    balance.close();
    return balance;
  }
  double step_limit(const FaceVector<Layers>& step) const { return stack.step_limit(step); }
};

}  // namespace dewgap::gap_kernel
