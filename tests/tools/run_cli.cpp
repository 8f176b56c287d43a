#include "run_cli.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <sstream>

#include "tools/cli.hpp"

namespace dewgap::test {

CliResult run_cli(const std::vector<std::string>& arguments, const std::string& stdin_text) {
  std::istringstream in(stdin_text);
  std::ostringstream out;
  std::ostringstream err;
  const int code = tools::run(arguments, {in, out, err});
  return {code, out.str(), err.str()};
}

std::string text_of(const std::string& path) {
  std::ifstream stream(path, std::ios::binary);
  EXPECT_TRUE(stream) << path;
  std::ostringstream text;
  text << stream.rdbuf();
  return text.str();
}

std::vector<std::string> files_in(const std::string& folder, const std::string& extension) {
  std::vector<std::string> found;
  for (const auto& entry : std::filesystem::directory_iterator(folder))
    if (entry.path().extension() == extension) found.push_back(entry.path().string());
  std::sort(found.begin(), found.end());
  EXPECT_FALSE(found.empty()) << folder;
  return found;
}

std::vector<std::string> lines_of(const std::string& text) {
  std::vector<std::string> lines;
  std::istringstream stream(text);
  for (std::string line; std::getline(stream, line);) lines.push_back(line);
  return lines;
}

std::string replaced(std::string text, const std::string& from, const std::string& to) {
  for (auto at = text.find(from); at != std::string::npos; at = text.find(from, at + to.size()))
    text.replace(at, from.size(), to);
  return text;
}

std::string example_house_of(std::size_t windows) {
  const auto text = text_of(examples_dir + "/house/quince-row.toml");
  std::size_t end = 0;
  for (std::size_t i = 0; i <= windows && end != std::string::npos; ++i)
    end = text.find("[[windows]]", end + 1);
  return text.substr(0, end);
}

std::vector<std::string> example_jobs() {
  auto jobs = files_in(examples_dir, ".toml");
  std::erase_if(jobs, [](const std::string& path) { return path.ends_with("money.toml"); });
  return jobs;
}

}  // namespace dewgap::test
