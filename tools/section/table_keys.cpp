// One table of a section file read along its keys.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "tools/answer/plain_text.hpp"
#include "tools/job/spelling.hpp"
#include "tools/section/keys_kernel.hpp"

namespace dewgap::tools::section_file {
namespace {

std::vector<std::string> keys_of(std::string_view table) {
  std::vector<std::string> keys;
  for (const auto& key : section_keys())
    if (key.table == table) keys.emplace_back(key.key);
  return keys;
}

std::string not_a(const TomlNode& node, std::string_view wanted) {
  return fmt::format("{} is {}, not {}", value_text(node), kind_text(node), wanted);
}

/// What is wrong with a text; nothing when it is right.
std::optional<std::string> text_complaint(const std::string& text, std::size_t most_bytes) {
  if (text.find_first_not_of(" \t") == std::string::npos) return "is empty";
  if (text.size() > most_bytes) return fmt::format("\"{}\" is too long", one_line(text, 40));
  const auto control = [](char c) { return static_cast<unsigned char>(c) < 0x20 || c == 0x7F; };
  if (std::any_of(text.begin(), text.end(), control))
    return fmt::format("\"{}\" holds a control character", one_line(text, 40));
  return std::nullopt;
}

}  // namespace

std::optional<double> number_in(const TomlNode& node) {
  if (const auto* whole = std::get_if<std::int64_t>(&node.value)) return static_cast<double>(*whole);
  if (const auto* real = std::get_if<double>(&node.value)) return *real;
  return std::nullopt;
}

std::string nearest_hint(std::string_view word, const std::vector<std::string>& known) {
  const auto nearest = nearest_word(word, known);
  return nearest.empty() ? std::string() : fmt::format("; nearest known: {}", nearest);
}

TableKeys::TableKeys(std::string_view table, std::string path, const TomlNode::Table& keys, TextMark mark)
    : table_(table), path_(std::move(path)), keys_(keys), mark_(mark) {
  const auto known = keys_of(table);
  for (const auto& entry : keys)
    if (std::find(known.begin(), known.end(), entry.key) == known.end())
      report(entry.mark,
             fmt::format("{}: unknown key{}", one_line(entry.key, 40), nearest_hint(entry.key, known)));
  for (const auto& key : section_keys())
    if (key.table == table && key.need == KeyNeed::required && !has(key.key))
      report(mark, fmt::format("{}: missing (permitted: {})", key.key, permitted_text(key.rule)));
}

const TomlEntry* TableKeys::find(std::string_view key) const {
  return entry_of(keys_, key);
}

const SectionKey& TableKeys::rule_of(std::string_view key) const {
  const auto& keys = section_keys();
  return *std::find_if(keys.begin(), keys.end(),
                       [&](const SectionKey& one) { return one.table == table_ && one.key == key; });
}

TextMark TableKeys::mark_of(std::string_view key) const {
  const auto* entry = find(key);
  return entry == nullptr ? mark_ : entry->node.mark;
}

void TableKeys::report(TextMark mark, const std::string& what) {
  problems_.push_back({mark, fmt::format("{}: {}", path_, what)});
}

void TableKeys::refuse(std::string_view key, const std::string& complaint) {
  report(mark_of(key),
         fmt::format("{}: {} (permitted: {})", key, complaint, permitted_text(rule_of(key).rule)));
}

std::optional<double> TableKeys::number_of(std::string_view key, const TomlNode& node,
                                           const NumberKey& rule) {
  const auto number = number_in(node);
  if (!number) {
    refuse(key, not_a(node, "a number"));
    return std::nullopt;
  }
  if (!std::isfinite(*number)) {
    refuse(key, fmt::format("{} is not a finite number", value_text(node)));
    return std::nullopt;
  }
  if (*number < rule.permitted.min || *number > rule.permitted.max) {
    refuse(key, fmt::format("{} is out of range", value_text(node)));
    return std::nullopt;
  }
  return number;
}

std::optional<double> TableKeys::number(std::string_view key) {
  const auto* entry = find(key);
  if (entry == nullptr) return std::nullopt;
  return number_of(key, entry->node, std::get<NumberKey>(rule_of(key).rule));
}

std::vector<double> TableKeys::numbers(std::string_view key) {
  const auto* entry = find(key);
  if (entry == nullptr) return {};
  const auto& rule = std::get<NumbersKey>(rule_of(key).rule);
  const auto* list = std::get_if<TomlNode::List>(&entry->node.value);
  if (list == nullptr) {
    refuse(key, not_a(entry->node, "a list"));
    return {};
  }
  if (list->size() < rule.least || list->size() > rule.most) {
    refuse(key, fmt::format("{} holds {}", value_text(entry->node), list->size()));
    return {};
  }
  std::vector<double> numbers;
  for (const auto& node : *list) {
    const auto number = number_of(key, node, {rule.unit, rule.permitted});
    if (!number) return {};
    numbers.push_back(*number);
  }
  return numbers;
}

std::optional<SectionPoint> TableKeys::point_of(const TomlNode& node) const {
  const auto* list = std::get_if<TomlNode::List>(&node.value);
  if (list == nullptr || list->size() != 2) return std::nullopt;
  const auto x = number_in(list->front());
  const auto y = number_in(list->back());
  const auto inside = [](std::optional<double> at) {
    return at && *at >= place_mm.min && *at <= place_mm.max;
  };
  if (!inside(x) || !inside(y)) return std::nullopt;
  return SectionPoint{1e-3 * *x, 1e-3 * *y};
}

std::vector<SectionPoint> TableKeys::points(std::string_view key) {
  const auto* entry = find(key);
  if (entry == nullptr) return {};
  const auto& rule = std::get<PointsKey>(rule_of(key).rule);
  const auto* list = std::get_if<TomlNode::List>(&entry->node.value);
  if (list == nullptr) {
    refuse(key, not_a(entry->node, "a list"));
    return {};
  }
  if (list->size() < rule.least || list->size() > rule.most) {
    refuse(key, fmt::format("holds {} points", list->size()));
    return {};
  }
  std::vector<SectionPoint> points;
  for (const auto& node : *list) {
    const auto point = point_of(node);
    if (!point) {
      refuse(key, fmt::format("{} is no point", value_text(node)));
      return {};
    }
    points.push_back(*point);
  }
  return points;
}

std::string TableKeys::text(std::string_view key) {
  const auto* entry = find(key);
  if (entry == nullptr) return {};
  const auto* text = std::get_if<std::string>(&entry->node.value);
  if (text == nullptr) {
    refuse(key, not_a(entry->node, "text"));
    return {};
  }
  if (const auto complaint = text_complaint(*text, std::get<TextKey>(rule_of(key).rule).most_bytes)) {
    refuse(key, *complaint);
    return {};
  }
  return *text;
}

std::vector<std::string> TableKeys::texts(std::string_view key) {
  const auto* entry = find(key);
  if (entry == nullptr) return {};
  const auto* list = std::get_if<TomlNode::List>(&entry->node.value);
  std::vector<std::string> texts;
  for (const auto& node : list == nullptr ? TomlNode::List{} : *list)
    if (const auto* text = std::get_if<std::string>(&node.value)) texts.push_back(*text);
  if (list == nullptr || texts.size() != list->size() ||
      texts.size() > std::get<TextsKey>(rule_of(key).rule).most) {
    refuse(key, fmt::format("{} is no list of names", value_text(entry->node)));
    return {};
  }
  return texts;
}

std::optional<std::size_t> TableKeys::word(std::string_view key) {
  const auto* entry = find(key);
  if (entry == nullptr) return std::nullopt;
  const auto& words = std::get<WordKey>(rule_of(key).rule).words;
  const auto* text = std::get_if<std::string>(&entry->node.value);
  const auto at = text == nullptr ? words.end() : std::find(words.begin(), words.end(), *text);
  if (at != words.end()) return static_cast<std::size_t>(at - words.begin());
  const auto nearest = text == nullptr ? std::string() : nearest_permitted(*text, words);
  refuse(key, fmt::format("{} is none of the permitted words{}", value_text(entry->node),
                          nearest.empty() ? "" : fmt::format("; is \"{}\" meant?", nearest)));
  return std::nullopt;
}

}  // namespace dewgap::tools::section_file
