// Materials of a section file: the library's by name, the user's own, and the hatch that each is drawn with.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "tools/drawing/svg.hpp"

namespace dewgap::tools {

/// Names that work without being listed: those of dewgap/materials.
std::vector<std::string> carried_materials();
/// Its best value; nothing for a name that is not carried.
std::optional<double> carried_conductivity_W_mK(std::string_view name);

/// Gives each material of a drawing a hatch: the usual one of its kind, by a word in its name ("old putty"),
/// or a spare one where that is taken or unknown. When the spare ones run out, they are used again.
class HatchChoice {
 public:
  Material hatch_of(const std::string& material);

 private:
  std::map<std::string, Material> chosen_;
  std::size_t spare_used_ = 0;
};

}  // namespace dewgap::tools
