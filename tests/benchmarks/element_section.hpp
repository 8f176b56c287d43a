// Sections as general finite elements see them: conductivities of regions, films of outer edges, triangles.
#pragma once

#include <string>
#include <vector>

#include "dewgap/window/section.hpp"
#include "dewgap/window/section_mesh_kernel.hpp"

namespace dewgap::bench {

struct ElementCase {
  std::string name;
  Section section;
};

/// ISO 10211 case 2, ISO 10077-2 section D.4, and a timber sash with a sheet on it.
std::vector<ElementCase> element_cases();

/// Cavities and gaps as solids of the conductivity that they were taken for, so that both sides solve the
/// same linear problem.
Section with_fixed_cavities(Section section);

/// One mesh of triangles for the other side: the cells of a grid, halved along a diagonal.
struct GivenMesh {
  std::string kind;  ///< even, graded
  section_kernel::Mesh mesh;
};

/// even: the drawing's lines and further ones at most so far apart, halved from mesh to mesh. graded: the
/// grid that solve_section came to for the bound, which the elements get for nothing, with every eighth,
/// fourth and second of its lines and with all, then halved again and again.
struct MeshCounts {
  int even;
  int graded;
};
std::vector<GivenMesh> given_meshes(const Section& section, double bound, const MeshCounts& counts);

/// section.txt and given_N.msh for section_elements.edp.
void write_elements(const Section& section, const std::vector<GivenMesh>& meshes, int adaptations,
                    const std::string& folder);

}  // namespace dewgap::bench
