#include "house.hpp"

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <regex>
#include <sstream>
#include <stdexcept>

namespace dewgap::house {
namespace {

std::filesystem::path absolute(std::string_view path) {
  return std::filesystem::path(DEWGAP_SOURCE_DIR) / path;
}

}  // namespace

std::string read_text(std::string_view path) {
  std::ifstream in(absolute(path), std::ios::binary);
  if (!in) {
    throw std::runtime_error("missing: " + std::string(path));
  }
  std::ostringstream text;
  text << in.rdbuf();
  return text.str();
}

std::vector<std::string> files_under(std::string_view folder,
                                     std::initializer_list<std::string_view> extensions) {
  std::vector<std::string> found;
  for (const auto& entry : std::filesystem::recursive_directory_iterator(absolute(folder))) {
    const auto extension = entry.path().extension().string();
    if (entry.is_regular_file() &&
        std::find(extensions.begin(), extensions.end(), extension) != extensions.end()) {
      found.push_back(entry.path().lexically_relative(DEWGAP_SOURCE_DIR).generic_string());
    }
  }
  if (found.empty()) {
    throw std::runtime_error("no such file under " + std::string(folder));
  }
  std::sort(found.begin(), found.end());
  return found;
}

bool exists(std::string_view path) {
  return std::filesystem::exists(absolute(path));
}

std::vector<std::string> lines_of(std::string_view text) {
  std::vector<std::string> lines;
  std::istringstream in{std::string(text)};
  for (std::string line; std::getline(in, line);) {
    lines.push_back(line);
  }
  return lines;
}

std::vector<Include> includes_of(std::string_view source) {
  static const std::regex pattern(R"(^\s*#\s*include\s*(["<])([^">]+)[">])");
  std::vector<Include> includes;
  std::size_t number = 0;
  for (const auto& line : lines_of(source)) {
    ++number;
    std::smatch match;
    if (std::regex_search(line, match, pattern)) {
      includes.push_back({number, match[1] == "<" ? IncludeForm::angled : IncludeForm::quoted, match[2]});
    }
  }
  return includes;
}

}  // namespace dewgap::house
