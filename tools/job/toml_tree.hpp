// A TOML text as a plain tree with a line and column on every key and value.
#pragma once

#include <algorithm>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace dewgap::tools {

/// Counted from 1.
struct TextMark {
  int line = 1;
  int column = 1;
};

struct TomlEntry;

/// A value. `OtherValue` is a date or time, which no field takes.
struct TomlNode {
  struct OtherValue {
    std::string_view kind;
  };
  using List = std::vector<TomlNode>;
  using Table = std::vector<TomlEntry>;  ///< in the order of the keys' marks
  TextMark mark;
  std::variant<bool, std::int64_t, double, std::string, List, Table, OtherValue> value;
};

struct TomlEntry {
  std::string key;
  TextMark mark;
  TomlNode node;
};

/// The entry of a key in a table; nothing when there is none.
template <class Entries>
auto entry_of(Entries& table, std::string_view key) -> decltype(&table.front()) {
  const auto at =
      std::find_if(table.begin(), table.end(), [&](const TomlEntry& entry) { return entry.key == key; });
  return at == table.end() ? nullptr : &*at;
}

struct TomlFault {
  TextMark mark;
  std::string what;
  std::string hint;  ///< what to write instead, where that can be guessed
};

/// The tree of a text, or the fault that stopped the reading.
struct TomlText {
  TomlNode::Table root;
  std::optional<TomlFault> fault;
};

/// Limits that keep reading a hostile text cheap.
inline constexpr std::size_t most_input_bytes = 1'000'000;
inline constexpr std::size_t most_line_bytes = 2'400;

/// Refuses what is empty, too long, binary (a NUL byte, bytes that are not UTF-8) or not TOML; a key given
/// twice is not TOML.
TomlText read_toml(std::string_view text);

/// The value as people typed it, shortened to `most_characters`.
std::string value_text(const TomlNode& node, std::size_t most_characters = 40);
/// "a number", "text", "a list".
std::string_view kind_text(const TomlNode& node);

}  // namespace dewgap::tools
