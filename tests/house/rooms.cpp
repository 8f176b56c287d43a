#include "rooms.hpp"

#include <algorithm>
#include <array>
#include <regex>
#include <stdexcept>

#include "house.hpp"

namespace dewgap::house {
namespace {

// Cells of a row of a Markdown table, without the spaces and the code marks round them.
std::vector<std::string> cells_of(const std::string& line) {
  static const std::regex cell(R"(\|\s*([^|]*[^|\s])\s*(?=\|))");
  std::vector<std::string> cells;
  for (std::sregex_iterator it(line.begin(), line.end(), cell), end; it != end; ++it) {
    cells.push_back((*it)[1]);
  }
  return cells;
}

std::vector<std::string> words_of(const std::string& list) {
  static const std::regex word(R"([a-z_]+)");
  std::vector<std::string> words;
  for (std::sregex_iterator it(list.begin(), list.end(), word), end; it != end; ++it) {
    words.push_back(it->str());
  }
  return words;
}

bool starts_with_any(std::string_view text, const auto& starts) {
  return std::any_of(starts.begin(), starts.end(),
                     [&](std::string_view start) { return text.starts_with(start); });
}

// General-purpose libraries that no public header shows.
constexpr std::array<std::string_view, 7> hidden_libraries{"Eigen/",  "unsupported/", "boost/",   "fmt/",
                                                           "toml++/", "CLI/",         "nlohmann/"};
// Libraries of the command line: no room uses them.
constexpr std::array<std::string_view, 4> tool_libraries{"fmt/", "toml++/", "CLI/", "nlohmann/"};
// The library reads and writes no file.
constexpr std::array<std::string_view, 6> input_output{"fstream", "iostream", "filesystem",
                                                       "cstdio",  "stdio.h",  "print"};

std::string complaint(std::string_view path, const Include& include, std::string_view why) {
  return std::string(path) + ":" + std::to_string(include.line) + ": " + include.path + " " +
         std::string(why);
}

bool is_embedded_text_of(std::string_view room, std::string_view include) {
  return include == "embedded/room_" + std::string(room) + ".hpp";
}

// Empty when the include is in order.
std::string why_wrong(const RoomOrder& order, std::string_view path, const Include& include) {
  const auto room = room_of(path);
  const std::string_view target = include.path;
  const bool is_public = path.ends_with(".hpp") && is_public_header(path);
  if (starts_with_any(target, tool_libraries)) {
    return "is a library of the command line";
  }
  if (std::find(input_output.begin(), input_output.end(), target) != input_output.end()) {
    return "is for files and terminals, which only tools/ knows";
  }
  if (is_public && starts_with_any(target, hidden_libraries)) {
    return "is shown by a public header";
  }
  if (is_public && target.starts_with("dewgap/") && !is_public_header(target)) {
    return "is private and shown by a public header";
  }
  if (target.starts_with("dewgap/")) {
    return order.may_include(room).contains(room_of(target)) ? "" : "does not lie below the room " + room;
  }
  if (include.form == IncludeForm::quoted && !is_embedded_text_of(room, target)) {
    return "is neither written from the include root nor the room's own embedded text";
  }
  return "";
}

}  // namespace

RoomOrder::RoomOrder(std::string_view developers_guide) {
  allowed_[std::string(root_room)] = {std::string(root_room)};
  bool inside = false;
  for (const auto& line : lines_of(developers_guide)) {
    const auto cells = cells_of(line);
    if (cells.size() == 3 && cells.front() == "room" && cells.back() == "may include") {
      inside = true;
    } else if (inside && cells.size() < 3) {
      break;
    } else if (inside && words_of(cells.front()).size() == 1 && cells.front() != root_room) {
      add_row(words_of(cells.front()).front(), cells.back());
    }
  }
  if (rooms_.empty()) {
    throw std::runtime_error("no table of rooms with the columns 'room' and 'may include'");
  }
}

void RoomOrder::add_row(const std::string& room, const std::string& named) {
  std::set<std::string> allowed{room, std::string(root_room)};
  for (const auto& below : named == "all" ? rooms_ : words_of(named)) {
    if (std::find(rooms_.begin(), rooms_.end(), below) == rooms_.end()) {
      throw std::runtime_error("room '" + room + "' may include '" + below +
                               "', which does not stand above it");
    }
    const auto& further = allowed_.at(below);
    allowed.insert(further.begin(), further.end());
  }
  rooms_.push_back(room);
  allowed_[room] = allowed;
}

const std::set<std::string>& RoomOrder::may_include(std::string_view room) const {
  const auto found = allowed_.find(room);
  if (found == allowed_.end()) {
    throw std::runtime_error("room '" + std::string(room) + "' is not in DEVELOPERS.md");
  }
  return found->second;
}

std::string room_of(std::string_view path) {
  constexpr std::string_view start = "dewgap/";
  if (!path.starts_with(start)) {
    throw std::runtime_error("not a path of the library: " + std::string(path));
  }
  path.remove_prefix(start.size());
  const auto slash = path.find('/');
  return std::string(slash == std::string_view::npos ? root_room : path.substr(0, slash));
}

bool is_public_header(std::string_view path) {
  return path.ends_with(".hpp") && !path.ends_with("_kernel.hpp") && room_of(path) != "numerics";
}

std::vector<std::string> wrong_includes(const RoomOrder& order, std::string_view path,
                                        std::string_view source) {
  std::vector<std::string> wrong;
  for (const auto& include : includes_of(source)) {
    if (const auto why = why_wrong(order, path, include); !why.empty()) {
      wrong.push_back(complaint(path, include, why));
    }
  }
  return wrong;
}

}  // namespace dewgap::house
