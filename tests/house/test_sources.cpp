// Files stay small, lines short, and a header begins by saying what it is.
#include <gtest/gtest.h>

#include "house.hpp"

namespace dewgap::house {
namespace {

constexpr std::size_t longest_file_lines = 300;
constexpr std::size_t longest_line = 110;

std::vector<std::string> all_sources() {
  std::vector<std::string> paths;
  for (const auto* folder : {"libthermal", "tools", "tests"}) {
    const auto below = files_under(folder, {".hpp", ".cpp"});
    paths.insert(paths.end(), below.begin(), below.end());
  }
  return paths;
}

// Characters of a line in UTF-8: bytes that do not continue a character.
std::size_t width_of(const std::string& line) {
  std::size_t width = 0;
  for (const char byte : line) {
    width += (static_cast<unsigned char>(byte) & 0xC0u) != 0x80u ? 1u : 0u;
  }
  return width;
}

TEST(Sources, FilesAreUnder300Lines) {
  for (const auto& path : all_sources()) {
    EXPECT_LT(lines_of(read_text(path)).size(), longest_file_lines) << path;
  }
}

TEST(Sources, LinesFitThePage) {
  for (const auto& path : all_sources()) {
    const auto lines = lines_of(read_text(path));
    std::string wrong;
    for (std::size_t i = 0; i < lines.size(); ++i) {
      if (width_of(lines[i]) > longest_line || lines[i].find('\t') != std::string::npos) {
        wrong += " " + std::to_string(i + 1);
      }
    }
    EXPECT_TRUE(wrong.empty()) << path << ": over " << longest_line << " columns, or a tab, in line" << wrong;
  }
}

TEST(Sources, EachSaysInItsFirstLineWhatItIs) {
  for (const auto& path : files_under("libthermal/dewgap", {".hpp"})) {
    const auto lines = lines_of(read_text(path));
    ASSERT_FALSE(lines.empty()) << path;
    EXPECT_TRUE(lines.front().starts_with("// ")) << path << ": " << lines.front();
  }
}

}  // namespace
}  // namespace dewgap::house
