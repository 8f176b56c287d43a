// Reading a job from its tree, for files of one window and of several.
#pragma once

#include <cstddef>
#include <set>
#include <string>
#include <utility>

#include "tools/job/reader.hpp"

namespace dewgap::tools {

/// Which keys of a tree stand under a [[windows]] of the file, and how messages call them.
class Origin {
 public:
  Origin() = default;  ///< none do
  /// All of the node's keys do, and it is [[windows]] number `number`, from 1.
  Origin(std::size_t number, const TomlNode& node);

  bool owns(TextMark mark) const { return own_.contains({mark.line, mark.column}); }
  /// What stands before a key's path: "windows[2]." or nothing.
  std::string path(TextMark mark) const;
  /// What stands before a section's name in its header: "windows." or nothing.
  std::string header(TextMark mark) const { return owns(mark) ? "windows." : ""; }

 private:
  void own(const TomlNode& node);

  std::size_t number_ = 0;
  std::set<std::pair<int, int>> own_;
};

ReadFile read_job_tree(const TomlNode::Table& root, const Origin& origin);

/// The fault, and a line more with what to write instead.
std::vector<FileProblem> told(const TomlFault& fault);

/// "key: complaint (permitted: ...)".
std::string refusal_text(const std::string& path, const Field& field, const std::string& complaint);

void sort_by_line(std::vector<FileProblem>& problems);

}  // namespace dewgap::tools
