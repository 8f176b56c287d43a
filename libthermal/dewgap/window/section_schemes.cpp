// The two schemes' networks: section_schemes_kernel.hpp.
#include <algorithm>

#include "dewgap/window/section_schemes_kernel.hpp"

namespace dewgap::section_kernel {
namespace {

double conductivity_at(const Mesh& mesh, const Conductivities& conductivity_W_mK, std::size_t cell) {
  return mesh.item[cell] ? conductivity_W_mK[*mesh.item[cell]] : 0.0;
}

bool across_x(CellSide side) {
  return side == CellSide::west || side == CellSide::east;
}

/// Which crossings have a given temperature, and by which boundary: the mean where two boundaries meet, the
/// first of them by order of the faces.
struct GivenPlaces {
  std::vector<int> faces;
  std::vector<double> temperature_C;
  std::vector<std::size_t> boundary;
};

GivenPlaces given_places(const Mesh& mesh, const std::vector<std::optional<FaceAir>>& air, const Plan& plan) {
  const std::size_t crossings = (mesh.columns() + 1) * (mesh.rows() + 1);
  GivenPlaces given{std::vector<int>(crossings, 0), std::vector<double>(crossings, 0.0),
                    std::vector<std::size_t>(crossings, 0)};
  for (const auto& part : mesh.faces) {
    const auto& beside = air[part.face];
    if (!beside || beside->resistance_m2K_W > 0.0) {
      continue;
    }
    for (const std::size_t end : {part.end_1, part.end_2}) {
      if (given.faces[end]++ == 0) {
        given.boundary[end] = plan.faces[part.face].boundary;
      }
      const double share = 1.0 / given.faces[end];
      given.temperature_C[end] += share * (beside->temperature_C - given.temperature_C[end]);
    }
  }
  return given;
}

/// Conductances along the grid lines, as if no crossing were given.
void link_crossings(const Mesh& mesh, const Conductivities& conductivity_W_mK, numerics::GridNetwork& grid) {
  for (std::size_t row = 0; row < mesh.rows(); ++row) {
    for (std::size_t column = 0; column < mesh.columns(); ++column) {
      const double conductivity = conductivity_at(mesh, conductivity_W_mK, mesh.cell(column, row));
      const double along_x = 0.5 * conductivity * mesh.y.width_m(row) / mesh.x.width_m(column);
      const double along_y = 0.5 * conductivity * mesh.x.width_m(column) / mesh.y.width_m(row);
      grid.east[mesh.crossing(column, row)] += along_x;
      grid.east[mesh.crossing(column, row + 1)] += along_x;
      grid.north[mesh.crossing(column, row)] += along_y;
      grid.north[mesh.crossing(column + 1, row)] += along_y;
    }
  }
}

/// Takes a link away and joins its free end to the given temperature of the other.
class GivenEnds {
 public:
  GivenEnds(SchemeNetwork& network, const GivenPlaces& given) : network_(network), given_(given) {}

  void cut(double& conductance, std::size_t one, std::size_t other) {
    if (conductance > 0.0 && (given_.faces[one] > 0 || given_.faces[other] > 0)) {
      if (given_.faces[one] == 0) {
        network_.films.push_back(
            {one, no_face, given_.boundary[other], conductance, given_.temperature_C[other]});
      } else if (given_.faces[other] == 0) {
        network_.films.push_back(
            {other, no_face, given_.boundary[one], conductance, given_.temperature_C[one]});
      } else {
        const double flow_W_m = conductance * (given_.temperature_C[one] - given_.temperature_C[other]);
        network_.given_heat.push_back({given_.boundary[one], flow_W_m});
        network_.given_heat.push_back({given_.boundary[other], -flow_W_m});
      }
      conductance = 0.0;
    }
  }

 private:
  static constexpr std::size_t no_face = 0;  // such links are never asked for theirs
  SchemeNetwork& network_;
  const GivenPlaces& given_;
};

void add_films(const Mesh& mesh, const std::vector<std::optional<FaceAir>>& air, const Plan& plan,
               const GivenPlaces& given, SchemeNetwork& network) {
  for (std::size_t f = 0; f < mesh.faces.size(); ++f) {
    const MeshFace& part = mesh.faces[f];
    const auto& beside = air[part.face];
    if (!beside || beside->resistance_m2K_W == 0.0) {
      continue;
    }
    const std::size_t boundary = plan.faces[part.face].boundary;
    const double half_W_mK = 0.5 * part.length_m / beside->resistance_m2K_W;
    for (const std::size_t end : {part.end_1, part.end_2}) {
      if (given.faces[end] == 0) {
        network.films.push_back({end, f, boundary, half_W_mK, beside->temperature_C});
      } else {
        const double flow_W_m = half_W_mK * (beside->temperature_C - given.temperature_C[end]);
        network.given_heat.push_back({boundary, flow_W_m});
        network.given_heat.push_back({given.boundary[end], -flow_W_m});
      }
    }
  }
}

void sum_films(SchemeNetwork& network) {
  for (const auto& film : network.films) {
    network.grid.ground[film.node] += film.conductance_W_mK;
    network.grid.source[film.node] += film.conductance_W_mK * film.temperature_C;
  }
}

/// The flux through faces, outwards by the film's share.
void add_film_flux(const Mesh& mesh, const SchemeNetwork& network, const SchemeSolution& solution,
                   CellFlux& flux) {
  const std::size_t columns = mesh.columns();
  for (const auto& film : network.films) {
    const MeshFace& part = mesh.faces[film.mesh_face];
    const double outward_W_m2 =
        film.conductance_W_mK * (solution.temperature_C[film.node] - film.temperature_C) / part.length_m;
    const std::size_t column = part.cell % columns;
    const std::size_t row = part.cell / columns;
    switch (part.side) {
      case CellSide::west:
        flux.east_W_m2[row * (columns + 1) + column] = -outward_W_m2;
        break;
      case CellSide::east:
        flux.east_W_m2[row * (columns + 1) + column + 1] = outward_W_m2;
        break;
      case CellSide::south:
        flux.north_W_m2[row * columns + column] = -outward_W_m2;
        break;
      case CellSide::north:
        flux.north_W_m2[(row + 1) * columns + column] = outward_W_m2;
        break;
    }
  }
}

}  // namespace

std::vector<std::optional<FaceAir>> air_of_faces(const Section& section, const Plan& plan) {
  std::vector<std::optional<FaceAir>> air;
  for (const auto& face : plan.faces) {
    const auto* side = std::get_if<AirSide>(&section.boundaries[face.boundary].condition);
    air.push_back(side == nullptr
                      ? std::nullopt
                      : std::optional(FaceAir{side->temperature_C, face.surface_resistance_m2K_W}));
  }
  return air;
}

SchemeNetwork cell_network(const Mesh& mesh, const std::vector<std::optional<FaceAir>>& air, const Plan& plan,
                           const Conductivities& conductivity_W_mK) {
  SchemeNetwork network{numerics::GridNetwork(mesh.columns(), mesh.rows()), {}, {}, {}};
  for (std::size_t row = 0; row < mesh.rows(); ++row) {
    for (std::size_t column = 0; column < mesh.columns(); ++column) {
      const std::size_t cell = mesh.cell(column, row);
      const double here = conductivity_at(mesh, conductivity_W_mK, cell);
      const double x_m = mesh.x.width_m(column);
      const double y_m = mesh.y.width_m(row);
      const double east =
          column + 1 < mesh.columns() ? conductivity_at(mesh, conductivity_W_mK, cell + 1) : 0.0;
      const double north =
          row + 1 < mesh.rows() ? conductivity_at(mesh, conductivity_W_mK, cell + mesh.columns()) : 0.0;
      if (here > 0.0 && east > 0.0) {
        network.grid.east[cell] = y_m / (0.5 * x_m / here + 0.5 * mesh.x.width_m(column + 1) / east);
      }
      if (here > 0.0 && north > 0.0) {
        network.grid.north[cell] = x_m / (0.5 * y_m / here + 0.5 * mesh.y.width_m(row + 1) / north);
      }
    }
  }
  for (std::size_t f = 0; f < mesh.faces.size(); ++f) {
    const MeshFace& part = mesh.faces[f];
    if (const auto& beside = air[part.face]) {
      const double depth_m = across_x(part.side) ? mesh.x.width_m(part.cell % mesh.columns())
                                                 : mesh.y.width_m(part.cell / mesh.columns());
      const double half_m2K_W = 0.5 * depth_m / conductivity_at(mesh, conductivity_W_mK, part.cell);
      network.films.push_back({part.cell, f, plan.faces[part.face].boundary,
                               part.length_m / (beside->resistance_m2K_W + half_m2K_W),
                               beside->temperature_C});
    }
  }
  sum_films(network);
  return network;
}

SchemeNetwork vertex_network(const Mesh& mesh, const std::vector<std::optional<FaceAir>>& air,
                             const Plan& plan, const Conductivities& conductivity_W_mK) {
  SchemeNetwork network{numerics::GridNetwork(mesh.columns() + 1, mesh.rows() + 1), {}, {}, {}};
  const GivenPlaces given = given_places(mesh, air, plan);
  numerics::GridNetwork& grid = network.grid;
  link_crossings(mesh, conductivity_W_mK, grid);
  GivenEnds ends(network, given);
  for (std::size_t node = 0; node < grid.size(); ++node) {
    ends.cut(grid.east[node], node, node + 1);
    ends.cut(grid.north[node], node, node + grid.columns);
    if (given.faces[node] > 0) {
      network.given.push_back({node, given.temperature_C[node]});
    }
  }
  add_films(mesh, air, plan, given, network);
  sum_films(network);
  return network;
}

SchemeSolution solve_scheme(const SchemeNetwork& network, std::size_t boundaries,
                            numerics::NetworkMethod method) {
  numerics::NetworkSolution solved = numerics::solve(network.grid, method);
  SchemeSolution solution{solved.status, std::move(solved.potential), std::vector<double>(boundaries, 0.0),
                          solved.iterations};
  for (const auto& film : network.films) {
    solution.flow_W_m[film.boundary] +=
        film.conductance_W_mK * (film.temperature_C - solution.temperature_C[film.node]);
  }
  for (const auto& heat : network.given_heat) {
    solution.flow_W_m[heat.boundary] += heat.flow_W_m;
  }
  for (const auto& given : network.given) {
    solution.temperature_C[given.crossing] = given.temperature_C;
  }
  return solution;
}

CellFlux flux_of(const Mesh& mesh, const SchemeNetwork& network, const SchemeSolution& solution) {
  const std::size_t columns = mesh.columns();
  CellFlux flux{std::vector<double>((columns + 1) * mesh.rows(), 0.0),
                std::vector<double>(columns * (mesh.rows() + 1), 0.0)};
  const auto& temperature_C = solution.temperature_C;
  for (std::size_t row = 0; row < mesh.rows(); ++row) {
    for (std::size_t column = 0; column < columns; ++column) {
      const std::size_t cell = mesh.cell(column, row);
      if (network.grid.east[cell] > 0.0) {
        flux.east_W_m2[row * (columns + 1) + column + 1] =
            network.grid.east[cell] * (temperature_C[cell] - temperature_C[cell + 1]) / mesh.y.width_m(row);
      }
      if (network.grid.north[cell] > 0.0) {
        flux.north_W_m2[(row + 1) * columns + column] =
            network.grid.north[cell] * (temperature_C[cell] - temperature_C[cell + columns]) /
            mesh.x.width_m(column);
      }
    }
  }
  add_film_flux(mesh, network, solution, flux);
  return flux;
}

std::vector<double> at_crossings(const Mesh& mesh, const CellFlux& flux, const SchemeSolution& solution,
                                 const Conductivities& conductivity_W_mK) {
  const std::size_t columns = mesh.columns();
  std::vector<double> sum((columns + 1) * (mesh.rows() + 1), 0.0);
  std::vector<double> weight(sum.size(), 0.0);
  for (std::size_t row = 0; row < mesh.rows(); ++row) {
    for (std::size_t column = 0; column < columns; ++column) {
      const std::size_t cell = mesh.cell(column, row);
      const double conductivity = conductivity_at(mesh, conductivity_W_mK, cell);
      if (conductivity == 0.0) {
        continue;
      }
      for (const std::size_t up : {0u, 1u}) {
        for (const std::size_t right : {0u, 1u}) {
          const double rise_x = (right == 1 ? -0.5 : 0.5) * mesh.x.width_m(column) / conductivity *
                                flux.east_W_m2[row * (columns + 1) + column + right];
          const double rise_y = (up == 1 ? -0.5 : 0.5) * mesh.y.width_m(row) / conductivity *
                                flux.north_W_m2[(row + up) * columns + column];
          const std::size_t crossing = mesh.crossing(column + right, row + up);
          sum[crossing] += conductivity * (solution.temperature_C[cell] + rise_x + rise_y);
          weight[crossing] += conductivity;
        }
      }
    }
  }
  for (std::size_t crossing = 0; crossing < sum.size(); ++crossing) {
    sum[crossing] = weight[crossing] > 0.0 ? sum[crossing] / weight[crossing] : 0.0;
  }
  return sum;
}

}  // namespace dewgap::section_kernel
