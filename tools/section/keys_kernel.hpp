// The keys of a section file, and a table of the file read along them.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "dewgap/errors.hpp"
#include "dewgap/window/section.hpp"
#include "tools/job/reader.hpp"
#include "tools/job/toml_tree.hpp"

namespace dewgap::tools::section_file {

struct NumberKey {
  std::string_view unit;
  PermittedRange permitted;
};
struct NumbersKey {
  std::size_t least;
  std::size_t most;
  std::string_view unit;
  PermittedRange permitted;
};
/// [[x, y], ...] in mm.
struct PointsKey {
  std::size_t least;
  std::size_t most;
};
struct TextKey {
  std::size_t most_bytes;
  std::string_view permitted = {};  ///< in words; empty: any text
};
struct TextsKey {
  std::size_t most;
};
struct WordKey {
  std::vector<std::string_view> words;
};
using KeyRule = std::variant<NumberKey, NumbersKey, PointsKey, TextKey, TextsKey, WordKey>;

enum class KeyNeed { required, optional };

struct SectionKey {
  std::string_view table;
  std::string_view key;
  KeyNeed need;
  KeyRule rule;
};

/// What may stand in a file; [materials] has names of the user's own.
const std::vector<SectionKey>& section_keys();
std::vector<std::string> table_names();
std::string permitted_text(const KeyRule& rule);

/// Coordinates and sizes of a file, mm.
inline constexpr PermittedRange place_mm{-100'000.0, 100'000.0};
inline constexpr PermittedRange size_mm{0.01, 200'000.0};
inline constexpr PermittedRange conductivity_W_mK{1e-4, 1e4};
inline constexpr std::size_t most_parts = 400;  ///< items and layers

/// A finite number of a node, whole or not.
std::optional<double> number_in(const TomlNode& node);
/// "; nearest known: softwood", or nothing.
std::string nearest_hint(std::string_view word, const std::vector<std::string>& known);

/// One table of the file. Unknown and missing keys are reported at once, values as they are asked for; what
/// is not right is reported and given as nothing.
class TableKeys {
 public:
  TableKeys(std::string_view table, std::string path, const TomlNode::Table& keys, TextMark mark);

  bool has(std::string_view key) const { return find(key) != nullptr; }
  /// Of the value; of the table where the key is missing.
  TextMark mark_of(std::string_view key) const;
  TextMark mark() const { return mark_; }
  const std::string& path() const { return path_; }

  std::optional<double> number(std::string_view key);
  std::vector<double> numbers(std::string_view key);
  std::vector<SectionPoint> points(std::string_view key);  ///< in m
  std::string text(std::string_view key);
  std::vector<std::string> texts(std::string_view key);
  std::optional<std::size_t> word(std::string_view key);  ///< its place among the rule's words

  /// `what` without the table's path.
  void report(TextMark mark, const std::string& what);
  /// "key: complaint (permitted: ...)" at the key's value.
  void refuse(std::string_view key, const std::string& complaint);
  const std::vector<FileProblem>& problems() const { return problems_; }

 private:
  const TomlEntry* find(std::string_view key) const;
  const SectionKey& rule_of(std::string_view key) const;
  std::optional<double> number_of(std::string_view key, const TomlNode& node, const NumberKey& rule);
  std::optional<SectionPoint> point_of(const TomlNode& node) const;

  std::string_view table_;
  std::string path_;
  const TomlNode::Table& keys_;
  TextMark mark_;
  std::vector<FileProblem> problems_;
};

}  // namespace dewgap::tools::section_file
