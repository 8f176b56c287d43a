// A file of several windows as one tree for each, with the marks of the file.
#pragma once

#include <vector>

#include "tools/job/reader_kernel.hpp"

namespace dewgap::tools {

/// A window's sections laid over those of the file. A section that this window lacks and another one has
/// stands there empty, at the window's own mark.
struct WindowTree {
  TomlNode::Table root;
  Origin origin;
};

struct HouseTrees {
  std::vector<WindowTree> windows;
  std::vector<FileProblem> problems;  ///< what concerns the file as a whole, or more than one window
  std::string job_name;               ///< of [job]; the windows have their own
};

/// `windows`: the entry of that key in `root`.
HouseTrees overlaid(const TomlNode::Table& root, const TomlEntry& windows);

}  // namespace dewgap::tools
