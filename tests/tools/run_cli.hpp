// Runs the command line in-process, and the files that the tests read.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

namespace dewgap::test {

struct CliResult {
  int exit_code = -1;
  std::string out;
  std::string err;
};

CliResult run_cli(const std::vector<std::string>& arguments, const std::string& stdin_text = {});

/// Whole text of a file; fails the test when it is missing.
std::string text_of(const std::string& path);

/// Every file of a folder with this extension, sorted.
std::vector<std::string> files_in(const std::string& folder, const std::string& extension);

std::vector<std::string> lines_of(const std::string& text);

inline bool holds(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

/// So that a phone shows it.
inline constexpr std::size_t most_columns = 62;

/// Text with every `from` replaced.
std::string replaced(std::string text, const std::string& from, const std::string& to);

inline const std::string examples_dir = DEWGAP_EXAMPLES_DIR;
inline const std::string tools_test_dir = DEWGAP_TOOLS_TEST_DIR;
inline const std::string tools_dir = DEWGAP_TOOLS_DIR;

/// The example house with its first so many windows alone: a report takes seconds for each.
std::string example_house_of(std::size_t windows);

/// The example jobs: every TOML file of examples/ but the money file.
std::vector<std::string> example_jobs();

}  // namespace dewgap::test
