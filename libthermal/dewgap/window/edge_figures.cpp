#include "dewgap/window/edge_figures.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "dewgap/window/edge_spots_kernel.hpp"
#include "dewgap/window/ready_sections_kernel.hpp"
#include "dewgap/window/section_readings.hpp"

namespace dewgap {
namespace {

using namespace ready_kernel;
using edge_kernel::Spot;

bool is_gap(std::string_view item) {
  return item == named::gap || item == named::gap_at_member;
}
bool is_break(std::string_view item) {
  return item == named::tape_break;
}
bool is_old_glass(std::string_view item) {
  return item == named::old_glass;
}
bool is_member(std::string_view item) {
  constexpr std::array others{named::old_glass,     named::panel,   named::joint,  named::gap,
                              named::gap_at_member, named::sheet,   named::tape,   named::tape_break,
                              named::batten,        named::masonry, named::plaster};
  return std::find(others.begin(), others.end(), item) == others.end();
}
bool is_no_air(std::string_view item) {
  return !is_gap(item) && !is_break(item) && item != named::joint;
}

/// A section, its solution, and which points were watched.
struct SolvedCut {
  SectionResult result;
  std::vector<SectionPoint> watched;
};

/// The spots whose temperature is read, wherever they turn out to be.
struct Spots {
  std::optional<Spot> in_break;
  std::optional<Spot> old_glass;
  std::optional<Spot> frame;
  std::optional<Spot> any;
};

Spots spots_of(const SectionResult& result) {
  using edge_kernel::coldest_between;
  return {coldest_between(result, is_break, is_no_air), coldest_between(result, is_gap, is_old_glass),
          coldest_between(result, is_gap, is_member), coldest_between(result, is_gap, is_no_air)};
}

bool same_place(const SectionPoint& a, const SectionPoint& b) {
  constexpr double same_m = 1e-8;
  return std::abs(a.x_m - b.x_m) < same_m && std::abs(a.y_m - b.y_m) < same_m;
}

/// Adds the spots that are not watched yet; says how many.
std::size_t watch(const Spots& spots, std::vector<SectionPoint>& watched) {
  const std::size_t before = watched.size();
  for (const auto* spot : {&spots.in_break, &spots.old_glass, &spots.frame, &spots.any}) {
    if (*spot && std::none_of(watched.begin(), watched.end(),
                              [&](const auto& point) { return same_place(point, (*spot)->at); })) {
      watched.push_back((*spot)->at);
    }
  }
  return watched.size() - before;
}

/// Solved until every spot is a watched one: the coldest place may move as the grid is refined.
SolvedCut solve_watching(const Section& section, const SectionOptions& options,
                         const std::vector<SectionPoint>& first) {
  constexpr int most_rounds = 4;
  SolvedCut cut{{}, first};
  for (int round = 0; round < most_rounds; ++round) {
    SectionOptions with_points = options;
    with_points.watched.insert(with_points.watched.end(), cut.watched.begin(), cut.watched.end());
    cut.result = solve_section(section, with_points);
    if (watch(spots_of(cut.result), cut.watched) == 0) {
      break;
    }
  }
  return cut;
}

/// Estimate of a spot's error: its own where it was watched, or the largest of the watched ones.
double error_K(const SectionResult& result, const SectionPoint& at) {
  double largest_K = 0.0;
  for (const auto& settled : result.watched) {
    if (same_place(settled.at, at)) {
      return settled.estimated_error_K;
    }
    largest_K = std::max(largest_K, settled.estimated_error_K);
  }
  return largest_K;
}

FigureWithError factor_of(const FigureWithError& temperature_C, const ReadyClimate& climate) {
  const double difference_K = climate.room_C - climate.outdoors_C;
  return {(temperature_C.value - climate.outdoors_C) / difference_K, temperature_C.error / difference_K};
}

ColdSpot spot_of(const Spot& spot, double estimated_K, const ReadyClimate& climate) {
  const FigureWithError temperature_C{spot.temperature_C, estimated_K};
  return {spot.item, spot.at, temperature_C, factor_of(temperature_C, climate), {}};
}

ColdSpot gap_spot(const Spot& spot, const SectionResult& result, const FigureWithError& centre_C,
                  const ReadyClimate& climate) {
  ColdSpot cold = spot_of(spot, error_K(result, spot.at), climate);
  const double centre_K = centre_C.value - climate.outdoors_C;
  const double factor = (spot.temperature_C - climate.outdoors_C) / centre_K;
  cold.edge_factor =
      FigureWithError{factor, (cold.temperature_C.error + factor * centre_C.error) / std::abs(centre_K)};
  return cold;
}

GapSpots gap_spots(const SectionResult& result, const Spots& spots, const SectionPoint& centre,
                   const SectionPoint& sight_line, const ReadyClimate& climate) {
  const FigureWithError centre_C{temperature_C_at(result, centre).value(), error_K(result, centre)};
  const Spot edge{sight_line, temperature_C_at(result, sight_line).value(), std::string(named::old_glass)};
  GapSpots found{centre_C,
                 gap_spot(edge, result, centre_C, climate),
                 gap_spot(spots.old_glass.value(), result, centre_C, climate),
                 {},
                 gap_spot(spots.any.value(), result, centre_C, climate)};
  if (spots.frame) {
    found.frame = gap_spot(*spots.frame, result, centre_C, climate);
  }
  return found;
}

/// The coldest that the room's air reaches: the room's faces, and those of a break in the tape.
ColdSpot room_spot(const SectionResult& result, const Spots& spots, const ReadyClimate& climate) {
  const SettledTemperature& lowest = result.lowest_room_face.value();
  if (spots.in_break && spots.in_break->temperature_C < lowest.temperature_C) {
    return spot_of(*spots.in_break, error_K(result, spots.in_break->at), climate);
  }
  return spot_of({lowest.at, lowest.temperature_C, edge_kernel::item_at(result, lowest.at, is_no_air)},
                 lowest.estimated_error_K, climate);
}

double glass_u_value(const ReadySection& ready, ReadyFilling filling) {
  const double glass_W_mK = filling == ReadyFilling::panel ? best_W_mK(BuildingKind::insulating_panel)
                                                           : ready.glass.conductivity_W_mK;
  double resistance_m2K_W =
      ready.climate.rsi_m2K_W + ready.glass.thickness_m / glass_W_mK + ready.climate.rse_m2K_W;
  if (filling == ReadyFilling::glass_and_sheet) {
    resistance_m2K_W +=
        1.0 / ready.sheet->gap_conductance_W_m2K + ready.sheet->thickness_m / ready.sheet->sheet_W_mK;
  }
  return 1.0 / resistance_m2K_W;
}

EdgeState edge_state(const ReadySection& ready, ReadyFilling filling, const SectionOptions& options) {
  const DrawnMember member = drawn(ready.member, ready.glass);
  const SectionPoint centre{member.glass_out_m + ready.glass.thickness_m,
                            member.sight_m + ready.glass.visible_m};
  const SectionPoint sight_line{centre.x_m, member.sight_m};
  const Section section = section_of(ready, filling);
  const SolvedCut cut = solve_watching(section, options, {centre, sight_line});
  const Spots spots = spots_of(cut.result);
  EdgeState state;
  state.status = cut.result.status;
  state.heat_imbalance = cut.result.heat_imbalance;
  state.glass_u_value_W_m2K = glass_u_value(ready, filling);
  const SectionCoupling& coupling = cut.result.coupling.value();
  double beside_W_mK = state.glass_u_value_W_m2K * ready.glass.visible_m;
  if (ready.reveal) {
    beside_W_mK -= wall_u_value_W_m2K(ready) * drawn_wall(*ready.reveal, member).low_m;  // low is negative
  }
  state.coupling_W_mK = {coupling.value_W_mK - beside_W_mK, coupling.error_bound_W_mK};
  state.room_side = room_spot(cut.result, spots, ready.climate);
  if (filling == ReadyFilling::glass_and_sheet) {
    state.gap = gap_spots(cut.result, spots, centre, sight_line, ready.climate);
  }
  return state;
}

void note(SectionStatus status, EdgeFigures& figures) {
  if (figures.status == SectionStatus::converged) {
    figures.status = status;
  }
}

}  // namespace

EdgeFigures edge_figures(const ReadySection& ready, const SectionOptions& options) {
  require_in_range(ready.climate.room_C - ready.climate.outdoors_C, {1.0, 100.0},
                   "climate: room less outdoors", "K");
  ReadySection bare = ready;
  bare.reveal.reset();
  EdgeFigures figures;
  figures.frame_length_m = frame_length_m(ready);
  const SectionResult with_panel = solve_section(section_of(bare, ReadyFilling::panel), options);
  const PanelBeside panel_beside{glass_u_value(ready, ReadyFilling::panel), ready.glass.visible_m};
  const SectionCoupling& panel_coupling = with_panel.coupling.value();
  figures.frame_u_value_W_m2K = {
      frame_transmittance_W_m2K(panel_coupling.value_W_mK, figures.frame_length_m, panel_beside),
      panel_coupling.error_bound_W_mK / figures.frame_length_m};
  const EdgeState alone = edge_state(bare, ReadyFilling::old_glass, options);
  figures.psi_W_mK = {
      alone.coupling_W_mK.value - figures.frame_u_value_W_m2K.value * figures.frame_length_m,  // eq. C.2
      alone.coupling_W_mK.error + panel_coupling.error_bound_W_mK};
  figures.without_sheet = ready.reveal ? edge_state(ready, ReadyFilling::old_glass, options) : alone;
  note(with_panel.status, figures);
  note(alone.status, figures);
  note(figures.without_sheet.status, figures);
  if (ready.sheet) {
    figures.with_sheet = edge_state(ready, ReadyFilling::glass_and_sheet, options);
    note(figures.with_sheet->status, figures);
  }
  return figures;
}

}  // namespace dewgap
