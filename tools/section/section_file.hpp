// A drawn section as a file: TOML, lengths in mm, x to the right, y upwards.
//
// [section] name, note, cavities, shown_mm; [materials] own conductivities; [stack] and [[layers]] one behind
// the other; [[items]] drawn over them and over each other; [[sides]] air and cut-offs with their edges;
// [[points]] whose temperature is asked for; [frame] what Uf or Psi is made of. Every key: keys_kernel.hpp,
// keys.cpp.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "dewgap/errors.hpp"
#include "dewgap/window/section.hpp"
#include "tools/drawing/svg.hpp"
#include "tools/job/reader.hpp"
#include "tools/job/toml_tree.hpp"

namespace dewgap::tools {

/// What an item is made of, for people.
struct ItemLook {
  std::string material;                     ///< "softwood", "cavity, slightly ventilated"
  std::optional<double> conductivity_W_mK;  ///< of a solid
  Material hatch = Material::other_1;
};

/// Where an item, a layer or a side stands in the file.
struct FilePart {
  std::string name;
  std::string path;  ///< `items "bottom rail"`
  TextMark mark;
};

struct NamedPoint {
  std::string name;
  SectionPoint at;
  TextMark mark;
};

/// The part of a section that its drawing shows.
struct ShownPart {
  SectionPoint low;
  SectionPoint high;
};

/// [frame]: the frame's projected length and what stands beside it, ISO 10077-2 annex C.
struct FrameBeside {
  double length_m = 0.0;                ///< bf
  std::vector<std::string> beside;      ///< panes and gaps from one air to the other
  double beside_m = 0.0;                ///< bp or bg: visible
  std::optional<double> u_value_W_m2K;  ///< of the frame: Psi is asked for
  TextMark mark;
};

struct SectionFile {
  std::string name;
  std::string note;
  dewgap::Section section;
  std::vector<ItemLook> looks;  ///< in the order of the section's items, as the next
  std::vector<FilePart> items;  ///< layers first
  std::vector<FilePart> sides;  ///< in the order of the section's boundaries
  std::vector<NamedPoint> points;
  CavityRule cavities = CavityRule::standard_difference;
  std::optional<ShownPart> shown;
  std::optional<FrameBeside> frame;
};

/// `file` is a section only when `problems` is empty.
struct ReadSection {
  SectionFile file;
  std::vector<FileProblem> problems;
};

/// Everything wrong with the keys and values of a section file at once, in the order of its lines; a fault of
/// syntax stands alone. What is wrong with the drawing itself, solve_section finds.
ReadSection read_section(std::string_view text);

/// What solve_section refused, at the lines of the items and sides that it names or that touch the place.
std::vector<FileProblem> drawing_problems(const SectionFile& file, const InvalidInput& refused);

}  // namespace dewgap::tools
