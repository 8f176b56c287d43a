// A section file read and solved, for tests.
#pragma once

#include <gtest/gtest.h>

#include <string>

#include "run_cli.hpp"
#include "tools/section/solved_section.hpp"

namespace dewgap::test {

inline std::string section_example(const std::string& name) {
  return examples_dir + "/section/" + name + ".toml";
}

/// Fails the test when the file is not a section.
inline tools::SolvedSection solved_file(const std::string& text, SectionOptions options = {}) {
  const auto read = tools::read_section(text);
  EXPECT_EQ(tools::problem_lines("section", read.problems), "");
  options.cavities = read.file.cavities;
  for (const auto& point : read.file.points) options.watched.push_back(point.at);
  return {read.file, options, solve_section(read.file.section, options)};
}

}  // namespace dewgap::test
