// What the tests of the house share: its files, their lines and their includes.
#pragma once

#include <cstddef>
#include <initializer_list>
#include <string>
#include <string_view>
#include <vector>

namespace dewgap::house {

/// Whole text of a file; `path` is relative to the root of the project. Throws std::runtime_error when it is
/// missing.
std::string read_text(std::string_view path);

/// Files below a folder with one of the extensions (".hpp"), relative to the root of the project, sorted.
/// Throws std::runtime_error when there is none: a rule that looks at no file holds nothing.
std::vector<std::string> files_under(std::string_view folder,
                                     std::initializer_list<std::string_view> extensions);

/// Whether a file or folder of the project exists.
bool exists(std::string_view path);

std::vector<std::string> lines_of(std::string_view text);

enum class IncludeForm { quoted, angled };

struct Include {
  std::size_t line = 0;  ///< from 1
  IncludeForm form = IncludeForm::quoted;
  std::string path;
};

/// The #include lines of a source, in its order.
std::vector<Include> includes_of(std::string_view source);

}  // namespace dewgap::house
