// What an item or a layer of a section file is made of.
#pragma once

#include <map>

#include "tools/section/keys_kernel.hpp"
#include "tools/section/materials.hpp"
#include "tools/section/section_file.hpp"

namespace dewgap::tools::section_file {

/// The user's own materials go before those carried.
class Materials {
 public:
  /// [materials]: a conductivity by name. Returns what is wrong with it.
  std::vector<FileProblem> read(const TomlNode::Table& own);
  std::optional<double> conductivity(const std::string& name) const;
  std::vector<std::string> names() const;
  Material hatch_of(const std::string& name) { return hatches_.hatch_of(name); }

 private:
  std::map<std::string, double> own_;
  HatchChoice hatches_;
};

struct Filled {
  SectionFill fill;
  ItemLook look;
};

/// One of material, cavity and conductance; what is wrong is reported, and the fill then is of no meaning.
Filled fill_of(TableKeys& keys, Materials& materials);

}  // namespace dewgap::tools::section_file
