// One hour of the gap as a user of a general solver writes it: one system of face temperatures, the gap's
// vapour pressure and, if wanted, the gap's pressure at each gust point. Residual and analytic Jacobian.
//
// With PreparedCorrelations the solvers alone are compared, not what they call; with CalledCorrelations the
// hour stands as it would without the library's private kernels.
#pragma once

#include <array>
#include <cstddef>

#include "dewgap/gap/latent_heat_kernel.hpp"
#include "hour_correlations.hpp"

namespace dewgap::bench {

/// Whether the gust points' pressures are unknowns, or the flows come from the library's own network.
enum class Flows { unknown, given };

inline constexpr double latent_scale_J_kg = 2.5e6;  ///< brings vapour's imbalance to W/m2

/// All of one hour that its unknowns do not change. Faces from outdoors; surfaces: pane, sheet, sill.
struct HourData {
  std::array<double, 4> heat_W_m2{};
  std::array<double, 4> capacity_W_m2K{};
  std::array<double, 4> before_K{};
  std::array<double, 4> film_kg_m2s{};  ///< held over duration
  std::array<double, 4> latent_before_J_kg{};
  double outdoor_convection_W_m2K = 20.0;
  double outdoor_K = 273.15;
  double room_K = 293.15;
  double room_transfer_kg_m2sPa = 0.0;
  double room_limit_kg_m2s = 0.0;
  double room_vapour_Pa = 0.0;
  double outdoor_vapour_Pa = 0.0;
  double sill_factor = 1.0;
  std::array<double, 3> transfer_kg_m2sPa{};
  std::array<double, 3> limit_kg_m2s{};
  // What passes without air: the air's own store, diffusion, timber.
  double conductance_kg_m2sPa = 0.0;
  double offered_kg_m2s = 0.0;
  double vapour_with_air_kg_m5Pa = 0.0;  ///< per Pa and m3/s of air, per m2 of glass
  double heat_with_air_J_m5K = 0.0;      ///< per K and m3/s, per m2
  // Air that enters: breathing and pumping; with given flows all of it.
  double from_room_m3_s = 0.0;
  double from_outdoors_m3_s = 0.0;
  double room_gradient_Pa_m = 0.0;
  double outdoors_gradient_Pa_m = 0.0;
  GustLane half_pressure_Pa{};
};

/// Unknowns: four face temperatures (K), the gap's vapour pressure (Pa), then pressures of the gust points
/// (Pa). Residuals in that order: W/m2, kg/(m2 s), m3/s.
template <Flows flows, class Correlations>
class HourEquations {
 public:
  static constexpr std::size_t size = flows == Flows::unknown ? 5 + gust_points : 5;

  HourEquations(const Stack& stack, const GapNetwork& network);

  void set_surroundings(const OutdoorClimate& outdoors, const RoomClimate& room);

  HourData hour;

  void residual(const double* u, double* f);
  /// Column by column, at the point of the last residual; the matrix is zero on entry.
  void jacobian(const double* u, double* const* columns) const;
  /// Puts imbalances on one footing, W/m2.
  std::array<double, size> residual_scale() const;

  // Worked out by the last residual.
  double from_room_m3_s() const { return from_room_m3_s_; }
  double from_outdoors_m3_s() const { return from_outdoors_m3_s_; }
  double gap_air_K() const { return gap_air_K_; }
  double gap_convection_W_m2K() const { return gap_convection_W_m2K_; }
  double room_convection_W_m2K() const { return room_convection_W_m2K_; }
  const std::array<double, 3>& rate_kg_m2s() const { return rate_kg_m2s_; }
  double room_rate_kg_m2s() const { return room_rate_kg_m2s_; }

 private:
  void evaluate_air(const double* pressure_Pa);
  void evaluate_vapour(const double* u);
  void evaluate_heat(const double* u, double* f);
  void heat_slopes(const double* u, double* const* columns) const;
  void vapour_slopes(const double* u, double* const* columns) const;
  void air_slopes(const double* u, double* const* columns) const;

  double saturation_slope(std::size_t place) const {
    return correlations_.saturation_slope_Pa_K(place, surface_C_[place]);
  }

  Correlations correlations_;
  std::array<double, 2> conductance_W_m2K_{};
  glazing_kernel::LongWaveExchange<2> long_wave_;
  GustLane weight_{};

  SidePressure room_pressure_;
  SidePressure outdoor_pressure_;
  SideFlows room_side_;
  SideFlows outdoor_side_;
  double from_room_m3_s_ = 0.0;
  double from_outdoors_m3_s_ = 0.0;
  std::array<double, 4> surface_C_{};  ///< pane, sheet, sill, room face
  std::array<double, 3> rate_kg_m2s_{};
  std::array<bool, 3> follows_{};
  double room_rate_kg_m2s_ = 0.0;
  bool room_follows_ = true;
  GapFaces gap_;
  double gap_air_K_ = 0.0;
  double gap_convection_W_m2K_ = 0.0;
  double room_convection_W_m2K_ = 0.0;
};

extern template class HourEquations<Flows::unknown, PreparedCorrelations>;
extern template class HourEquations<Flows::given, PreparedCorrelations>;
extern template class HourEquations<Flows::unknown, CalledCorrelations>;

}  // namespace dewgap::bench
