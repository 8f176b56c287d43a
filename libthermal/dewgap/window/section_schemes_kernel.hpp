// The two schemes of section.hpp as networks of conductances, and their solutions.
#pragma once

#include <optional>
#include <vector>

#include "dewgap/numerics/grid_network.hpp"
#include "dewgap/window/section_mesh_kernel.hpp"

namespace dewgap::section_kernel {

/// The air beside each face of the plan; nothing for a cut-off.
struct FaceAir {
  double temperature_C;
  double resistance_m2K_W;
};
std::vector<std::optional<FaceAir>> air_of_faces(const Section& section, const Plan& plan);

/// From a node of the network to the air behind a face.
struct FilmLink {
  std::size_t node;
  std::size_t mesh_face;
  std::size_t boundary;
  double conductance_W_mK;
  double temperature_C;
};

/// Heat that passes between a boundary's air and a crossing whose temperature is given by another.
struct GivenHeat {
  std::size_t boundary;
  double flow_W_m;
};

/// A crossing on a face of no resistance.
struct GivenCrossing {
  std::size_t crossing;
  double temperature_C;
};

struct SchemeNetwork {
  numerics::GridNetwork grid;
  std::vector<FilmLink> films;
  std::vector<GivenCrossing> given;
  std::vector<GivenHeat> given_heat;
};

/// Conductivity of each item that is solved, W/(m K), in the order of Section::items.
using Conductivities = std::vector<double>;

/// Nodes in the middle of cells; half cells in series between them, and with the film at a face.
SchemeNetwork cell_network(const Mesh& mesh, const std::vector<std::optional<FaceAir>>& air, const Plan& plan,
                           const Conductivities& conductivity_W_mK);
/// Nodes at crossings; half cells side by side along each grid line, half of each face's film at its ends.
SchemeNetwork vertex_network(const Mesh& mesh, const std::vector<std::optional<FaceAir>>& air,
                             const Plan& plan, const Conductivities& conductivity_W_mK);

struct SchemeSolution {
  SolveStatus status;
  std::vector<double> temperature_C;  ///< of each node
  std::vector<double> flow_W_m;       ///< into the section, by boundary
  int iterations = 0;
};
SchemeSolution solve_scheme(const SchemeNetwork& network, std::size_t boundaries,
                            numerics::NetworkMethod method = numerics::NetworkMethod::automatic);

/// Normal components of the cell scheme's flux on all sides of cells, W/m2: east over the sides that lie on
/// the grid's x lines, north over those on its y lines.
struct CellFlux {
  std::vector<double> east_W_m2;   ///< (columns + 1) x rows
  std::vector<double> north_W_m2;  ///< columns x (rows + 1)
};
CellFlux flux_of(const Mesh& mesh, const SchemeNetwork& network, const SchemeSolution& solution);

/// The cell scheme's temperatures at crossings: the mean, weighted with conductivity, of what each cell about
/// it gives by its fluxes.
std::vector<double> at_crossings(const Mesh& mesh, const CellFlux& flux, const SchemeSolution& solution,
                                 const Conductivities& conductivity_W_mK);

}  // namespace dewgap::section_kernel
