// A narrow page being written line by line.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "tools/answer/plain_text.hpp"

namespace dewgap::tools {

/// So that a phone shows it.
inline constexpr std::size_t page_columns = 62;

class SheetOfLines {
 public:
  void blank() { lines_.emplace_back(); }
  /// One line, cut where it is too long.
  void line(std::string_view text) { lines_.push_back(one_line(text, page_columns)); }
  /// A paragraph; its first line starts with `first`, the others with `rest`.
  void paragraph(std::string_view text, std::string_view first = {}, std::string_view rest = {}) {
    for (auto& part : wrapped(text, page_columns, first, rest)) lines_.push_back(std::move(part));
  }
  void item(std::string_view text) { paragraph(text, "- ", "  "); }
  /// A heading and its items; the first stands on the heading's line.
  void list(std::string_view heading, const std::vector<std::string>& items) {
    for (std::size_t i = 0; i < items.size(); ++i)
      paragraph(items[i], i == 0 ? std::string(heading) + " - " : "- ", "  ");
  }
  std::size_t line_count() const { return lines_.size(); }
  std::string text() const {
    std::string all;
    for (const auto& one : lines_) all.append(one).append("\n");
    return all;
  }

 private:
  std::vector<std::string> lines_;
};

}  // namespace dewgap::tools
