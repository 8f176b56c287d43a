// A drawn section of frame, edge and reveal: its conduction in the plane, ISO 10211 and ISO 10077-2.
//
// Model: div(lambda grad T) = 0 in rectangles of constant conductivity, q = (T - T_air) / R_s at the faces of
// a side, no heat through a cut-off. Per metre of length at right angles to the section. Left out: heat along
// the length, moisture, radiation between faces of different temperature on one side.
//
// Two schemes on one graded grid, and why they hold the answer between them. Let two air temperatures T_1 >
// T_2 be all that drives the heat and L2D the coupling coefficient (ISO 10211, from memory: heat flow over
// T_1 - T_2).
// - Dirichlet: L2D (T_1 - T_2)^2 is the least value of  int lambda |grad T|^2 + int (T - T_air)^2 / R_s  over
//   all continuous fields T. The vertex scheme minimises it over fields that are bilinear in each cell, with
//   the squares of their linear slopes and of their faces' temperatures integrated by the trapezoidal rule,
//   which gives too much for a square of a linear function: a value that is too high on a smaller choice of
//   fields. So its L2D is too high, or exact.
// - Thomson: L2D (T_1 - T_2)^2 is the greatest value of  - int |q|^2 / lambda - int R_s (q.n)^2 - 2 int T_air
//   q.n  over all fluxes q with div q = 0 and no flow through cut-offs. The cell scheme (finite volumes, half
//   cells in series) maximises it over fluxes whose components are linear along their own direction in each
//   cell, with |q|^2 integrated by the trapezoidal rule: too much is taken off, on a smaller choice of
//   fluxes. So its L2D is too low, or exact.
// Both hold on any grid whose lines carry all edges, also at corners and jumps of the conductivity, and where
// R_s = 0 (the temperature is then given). The exact integrals of the same two fields lie nearer to each
// other, in the same order, and the error bound of the mean is its distance from the farther of those:
// about two fifths of half the schemes' difference. It holds but for rounding, for the conductivities used,
// cavities iterated or not. Where three or more air temperatures meet it bounds no single flow, and no
// coupling coefficient is given.
#pragma once

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "dewgap/window/section_result.hpp"

namespace dewgap {

/// Thinnest part and least distance between two of the drawing's lines; closer than 1e-8 m they are one line.
inline constexpr double section_least_width_m = 1e-5;

/// A solid of constant conductivity, 1e-4 to 1e4 W/(m K).
struct SolidFill {
  double conductivity_W_mK = 0.0;
};

/// An air cavity by ISO 10077-2 (2003, from memory). Slightly ventilated: open to the outdoors by a slit of 2
/// to 10 mm, twice the conductivity. A slit up to 2 mm counts as none; over 10 mm use OpenFill. Draw cavities
/// that a throat of 2 mm or less joins as two items.
enum class CavityVentilation { unventilated, slightly_ventilated };
struct CavityFill {
  CavityVentilation ventilation = CavityVentilation::unventilated;
  double emissivity_1 = 0.9;  ///< of the faces across the heat flow, 0.01 to 1
  double emissivity_2 = 0.9;
};

/// A gap of known conductance between its faces along the heat flow, 0.01 to 1000 W/(m2 K).
struct GapFill {
  double conductance_W_m2K = 0.0;
};

/// A well ventilated cavity or a duct: not solved, its walls belong to the named boundary.
struct OpenFill {
  std::string boundary;
};

using SectionFill = std::variant<SolidFill, CavityFill, GapFill, OpenFill>;

/// One part of the drawing. The polygon is closed by itself (the first point is not repeated), its edges lie
/// along x or y, and it neither crosses nor touches itself; coordinates -100 to 100 m.
struct SectionItem {
  std::string name;
  SectionFill fill;
  std::vector<SectionPoint> polygon;
  std::vector<std::string> replaces;  ///< names of earlier items that this one is drawn over
};

/// Surface resistance within reach of re-entrant corners of the faces of one boundary (ISO 10077-2 Annex B,
/// from memory: 0.20 m2 K/W). It reaches from the corner as far as the shorter of its two edges, at most
/// `reach_m`. The end of the reach moves to a line of the drawing nearer than section_least_width_m.
struct CornerFilm {
  double surface_resistance_m2K_W = 0.20;
  double reach_m = 0.030;  ///< 1e-5 to 1 m
};

/// The air on one side. A resistance of 0 gives the face the air's temperature.
enum class AirRole { room, outdoors };
struct AirSide {
  AirRole role = AirRole::room;
  double temperature_C = 20.0;             ///< -100 to 200
  double surface_resistance_m2K_W = 0.13;  ///< 0, or 1e-4 to 100
  std::optional<CornerFilm> corners;
};

/// No heat passes.
struct CutOff {};

/// All outer edges on the line x = at_m, or y = at_m.
struct EdgesOnX {
  double at_m = 0.0;
};
struct EdgesOnY {
  double at_m = 0.0;
};
/// The outer edges on the straight line between two points, along x or y.
struct EdgesBetween {
  SectionPoint from;
  SectionPoint to;
};
/// The outline from one of its points to another, walked with the section on the left (anticlockwise, y
/// upwards). From a point to itself: all the way round.
struct EdgesAlong {
  SectionPoint from;
  SectionPoint to;
};
using EdgeChoice = std::variant<EdgesOnX, EdgesOnY, EdgesBetween, EdgesAlong>;

/// Every outer edge of the drawing belongs to exactly one boundary.
struct SectionBoundary {
  std::string name;
  std::variant<AirSide, CutOff> condition;
  std::vector<EdgeChoice> edges;  ///< may be empty only when an OpenFill names the boundary
};

struct Section {
  std::vector<SectionItem> items;  ///< later ones over earlier ones, where they name them
  std::vector<SectionBoundary> boundaries;
};

/// Cavities: the difference of 10 K at 283 K of the standard, or the mean temperatures of the solved walls.
enum class CavityRule { standard_difference, solved_walls };
/// temperatures_only: for sections whose heat flow has no limit, where faces of no resistance and different
/// temperature touch. The grid is halved evenly until the points of `watched` settle.
enum class SectionAim { heat_flow_and_temperatures, temperatures_only };

struct SectionOptions {
  SectionAim aim = SectionAim::heat_flow_and_temperatures;
  CavityRule cavities = CavityRule::standard_difference;
  double coupling_error_bound = 5e-4;       ///< of the coupling, relative, 1e-9 to 0.1
  double temperature_error_bound_K = 0.02;  ///< of the lowest room-side face and watched points, 1e-6 to 10
  std::vector<SectionPoint> watched;        ///< further points whose temperature has to settle
  std::size_t max_cells = 400'000;          ///< of a grid, 100 to 4e6; the first grid is solved in any case
  int max_passes = 40;                      ///< 2 to 100
  void validate() const;                    ///< throws InvalidInput outside these ranges
};

/// Solves the section on grids that are refined where the two schemes differ most (the local terms of their
/// difference, section_estimate_kernel.hpp), until both error bounds hold. Throws InvalidInput, with the
/// names and the place in mm, for: an overlap without `replaces`, a hole, an outer edge of no or of two
/// boundaries, a polygon that is not rectilinear or crosses itself, widths below section_least_width_m,
/// values out of range, names given twice or not at all, a part that no side of given temperature warms, and
/// an unlimited heat flow unless only temperatures are asked for.
/// Memory about 0.4 kB a cell. ISO 10211 case 2 took 5 ms with the default bounds (2,150 cells) and 0.25 s
/// with 1e-5 (51,000 cells); tests/benchmarks/bench_section measures it.
SectionResult solve_section(const Section& section, const SectionOptions& options = {});

}  // namespace dewgap
