// What one hour's equations call: once as the library has prepared it for its loops, once as its public
// functions and the formula of an opening say it, called at every evaluation. Values first; slopes are asked
// for at the same point.
#pragma once

#include <array>
#include <cstddef>

#include "dewgap/air/saturation_table_kernel.hpp"
#include "dewgap/airflow/flow_lanes_kernel.hpp"
#include "dewgap/glazing/stack_ends_kernel.hpp"

namespace dewgap::bench {

inline constexpr std::size_t gust_points = 7;
inline constexpr std::size_t lane_count = 8;  ///< seven points and one that stands idle
using GustLane = airflow_kernel::Lane<lane_count>;

/// One side's openings at the gust points, one a lane. `in`: of the openings through which air enters the
/// gap.
struct SideFlows {
  GustLane net{};
  GustLane in{};
};
struct SideSlopes {
  GustLane net{};
  GustLane in{};
};

/// Pressure over the gap's at the reference height, and how it rises with height.
struct SidePressure {
  GustLane level_Pa{};
  double gradient_Pa_m = 0.0;
};

enum class Side : std::size_t { room = 0, outdoors = 1 };

/// Faces of the gap and the air that passes it.
struct GapFaces {
  double outer_K = 0.0;
  double inner_K = 0.0;
  double stream_W_m2K = 0.0;
  double inlet_K = 0.0;
};

/// Tables, fits and flat arrays made beforehand; value and slope come together and the slope is kept.
class PreparedCorrelations {
 public:
  PreparedCorrelations(const Stack& stack, const GapNetwork& network);
  void set_room(double room_K, double factor);

  /// `place` 0 to 3: pane, sheet, sill, room face.
  double saturation_Pa(std::size_t place, double surface_C) {
    at_[place] = table_->at(surface_C);
    return at_[place].pressure_Pa;
  }
  double saturation_slope_Pa_K(std::size_t place, double) const { return at_[place].slope_Pa_K; }

  const glazing_kernel::GapExchange& gap(const GapFaces& faces) {
    gap_.stream_W_m2K = faces.stream_W_m2K;
    gap_.inlet_temperature_K = faces.inlet_K;
    exchange_ = gap_.exchange(faces.outer_K, faces.inner_K);
    return exchange_;
  }
  const glazing_kernel::GapExchange& gap_slopes(const GapFaces&) const { return exchange_; }

  double room_film_W_m2K(double face_K) {
    film_at_ = film_.at(face_K);
    return film_at_.convection_W_m2K;
  }
  double room_film_slope_W_m2K2(double) const { return film_at_.slope_W_m2K2; }

  SideFlows flows(Side side, const SidePressure& pressure);
  SideSlopes flow_slopes(Side side, const SidePressure&) const {
    return slopes_[static_cast<std::size_t>(side)];
  }

 private:
  const air_kernel::SaturationTable* table_;
  glazing_kernel::GapModel gap_;
  glazing_kernel::RoomFilm film_;
  double height_m_;
  double film_factor_ = 0.0;
  airflow_kernel::LaneNetwork network_;
  std::array<air_kernel::SaturationPoint, 4> at_{};
  glazing_kernel::GapExchange exchange_;
  SurfaceFilm film_at_;
  std::array<SideSlopes, 2> slopes_{};
};

/// Nothing prepared; slopes are worked out when they are asked for.
class CalledCorrelations {
 public:
  CalledCorrelations(const Stack& stack, const GapNetwork& network) : stack_(stack), network_(network) {}
  void set_room(double room_K, double factor);

  double saturation_Pa(std::size_t, double surface_C) const;
  double saturation_slope_Pa_K(std::size_t, double surface_C) const;
  glazing_kernel::GapExchange gap(const GapFaces& faces) const;
  glazing_kernel::GapExchange gap_slopes(const GapFaces& faces) const;
  double room_film_W_m2K(double face_K) const;
  double room_film_slope_W_m2K2(double face_K) const;
  SideFlows flows(Side side, const SidePressure& pressure) const;
  SideSlopes flow_slopes(Side side, const SidePressure& pressure) const;

 private:
  const std::vector<PlacedOpening>& openings(Side side) const {
    return side == Side::room ? network_.to_room : network_.to_outdoors;
  }
  Stack stack_;
  GapNetwork network_;
  double room_C_ = 20.0;
  double film_factor_ = 1.0;
};

}  // namespace dewgap::bench
