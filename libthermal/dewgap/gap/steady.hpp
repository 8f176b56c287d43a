// Heat, air and vapour of the gap solved together for one steady moment.
#pragma once

#include <array>
#include <cstddef>
#include <string_view>

#include "dewgap/airflow/gap_network.hpp"
#include "dewgap/glazing/stack.hpp"
#include "dewgap/moisture/vapour_balance.hpp"
#include "dewgap/validity.hpp"

namespace dewgap {

/// One window with a gap behind an added sheet, and the climates on its two sides.
struct GapCase {
  Stack stack;  ///< from outdoors to the room; its gap `gap_index` is the one that may mist
  std::size_t gap_index = 0;
  OutdoorClimate outdoors;
  RoomClimate room;
  double outdoor_vapour_Pa = 500.0;
  double room_vapour_Pa = 1000.0;
  double gap_area_m2 = 1.0;  ///< glass behind the sheet, 0.01 to 50
  GapNetwork network;
  PressureWithinHour pressure;
  double diffusion_to_room_kg_sPa = 0.0;  ///< sheet, tape and the still air of breaks
  double diffusion_to_outdoors_kg_sPa = 0.0;
  double timber_source_kg_s = 0.0;  ///< damp timber drying into the gap
  double edge_temperature_factor =
      1.0;  ///< (T_edge - T_out)/(T_centre - T_out) of the coldest face, 0.3 to 1.2
};

/// Which way air goes through the gap, by what enters it from either side and leaves to outdoors.
enum class AirWay {
  still,      ///< less than 1 litre an hour passes
  outwards,   ///< room air is drawn through the gap to outdoors
  inwards,    ///< outdoor air is drawn through the gap into the room
  both_ways,  ///< gusts or hours turn it: neither direction has nine tenths of the flow
  room_side,  ///< the gap breathes with the room only: the outer side is tight
};

/// By mean flows: of an hour with its gusts, or of many hours.
AirWay way_of(const GapFlows& flows);

struct GapState {
  SolveStatus status = SolveStatus::iteration_limit;
  int iterations = 0;
  double change_at_end_K = 0.0;  ///< last change of the gap's air temperature
  StackSolution heat;
  GapFlows flows;
  VapourBalance vapour;
  AirWay way = AirWay::still;
  double centre_face_C = 0.0;       ///< coldest face of the gap at the centre
  double coldest_face_C = 0.0;      ///< with the edge
  double condensation_g_m2h = 0.0;  ///< at the centre; a colder edge takes more, on a small area
  double potential_dew_point_C = 0.0;
  double actual_dew_point_C = 0.0;
  double margin_K = 0.0;  ///< coldest face less potential dew point: negative means wet
  double room_face_C = 0.0;
  double room_face_temperature_factor = 0.0;
  double room_face_humidity = 0.0;  ///< 0..1 and above
};

struct GapOptions {
  int max_iterations = 200;
  double temperature_tolerance_K = 1e-9;
  int gust_points = 7;
};

/// Repeats flows, vapour and heat until the gap's air temperature and latent heat settle (each feeds the
/// other: buoyancy, heat carried by air, heat of condensation). Throws InvalidInput; a case that does not
/// settle says so.
GapState solve_gap(const GapCase& gap_case, GapOptions options = {});

/// Room relative humidities (0..1) at which nothing condenses in the gap in this condition: the union of
/// intervals (dryness need not be monotone), at the coldest face with the edge, found by scanning 5 % to 95 %
/// and refining each edge to 0.1 %.
struct HumidityInterval {
  double low = 0.0;
  double high = 0.0;
};
struct DryRoomHumidities {
  SolveStatus status = SolveStatus::converged;
  std::size_t count = 0;
  std::array<HumidityInterval, 4> intervals{};
};
DryRoomHumidities dry_room_humidities(const GapCase& gap_case, GapOptions options = {});

std::string_view name_of(AirWay way);

}  // namespace dewgap
