#include "tools/job/toml_tree.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "tools/answer/plain_text.hpp"
#include "tools/job/syntax_hint.hpp"
#include "tools/job/toml_parser_kernel.hpp"

namespace dewgap::tools {
namespace {

TextMark mark_of(const toml::source_region& source) {
  return {std::max(1, static_cast<int>(source.begin.line)),
          std::max(1, static_cast<int>(source.begin.column))};
}

TomlNode node_of(const toml::node& source);

TomlNode::Table table_of(const toml::table& source) {
  TomlNode::Table table;
  for (const auto& [key, node] : source)
    table.push_back({std::string(key.str()), mark_of(key.source()), node_of(node)});
  std::stable_sort(table.begin(), table.end(), [](const TomlEntry& a, const TomlEntry& b) {
    return std::pair(a.mark.line, a.mark.column) < std::pair(b.mark.line, b.mark.column);
  });
  return table;
}

TomlNode::List list_of(const toml::array& source) {
  TomlNode::List list;
  for (const auto& node : source) list.push_back(node_of(node));
  return list;
}

TomlNode node_of(const toml::node& source) {
  TomlNode node{mark_of(source.source()), TomlNode::OtherValue{"a date or time"}};
  if (const auto* table = source.as_table())
    node.value = table_of(*table);
  else if (const auto* list = source.as_array())
    node.value = list_of(*list);
  else if (const auto* text = source.as_string())
    node.value = text->get();
  else if (const auto* whole = source.as_integer())
    node.value = whole->get();
  else if (const auto* number = source.as_floating_point())
    node.value = number->get();
  else if (const auto* tick = source.as_boolean())
    node.value = tick->get();
  return node;
}

/// Where byte `at` of the text lies.
TextMark mark_at(std::string_view text, std::size_t at) {
  const auto before = text.substr(0, at);
  const auto line_start = before.rfind('\n');
  return {1 + static_cast<int>(std::count(before.begin(), before.end(), '\n')),
          1 + static_cast<int>(line_start == std::string_view::npos ? at : at - line_start - 1)};
}

std::optional<TomlFault> overlong_line(std::string_view text) {
  std::size_t start = 0;
  while (start < text.size()) {
    const std::size_t end = std::min(text.find('\n', start), text.size());
    if (end - start > most_line_bytes)
      return TomlFault{mark_at(text, start),
                       fmt::format("line of {} bytes; at most {} are read", end - start, most_line_bytes),
                       {}};
    start = end + 1;
  }
  return std::nullopt;
}

std::optional<TomlFault> unreadable(std::string_view text) {
  if (text.size() > most_input_bytes)
    return TomlFault{
        {}, fmt::format("larger than {} bytes; a file of this kind is a few thousand", most_input_bytes), {}};
  if (const auto at = text.find('\0'); at != std::string_view::npos)
    return TomlFault{mark_at(text, at), "a binary file: byte 0 found; this must be text", {}};
  if (const auto at = first_invalid_utf8(text))
    return TomlFault{mark_at(text, *at), "not UTF-8 text; save the file as UTF-8", {}};
  if (text.find_first_not_of(" \t\r\n") == std::string_view::npos)
    return TomlFault{{}, "the file is empty; `dewgap starter` prints one to fill in", {}};
  return overlong_line(text);
}

/// Line `number` of the text, from 1.
std::string_view line_of(std::string_view text, int number) {
  for (; number > 1; --number) text.remove_prefix(std::min(text.find('\n'), text.size() - 1) + 1);
  return text.substr(0, text.find('\n'));
}

/// The parser's description, with a word of ours where its own would not be understood.
std::string fault_text(std::string_view description) {
  if (description.find("maximum nested value depth") != std::string_view::npos)
    return fmt::format("lists or sections nested more than {} deep", TOML_MAX_NESTED_VALUES);
  const bool twice = description.find("cannot redefine") != std::string_view::npos;
  return one_line(fmt::format("{}{}", twice ? "duplicate, given twice: " : "", description), 240);
}

}  // namespace

TomlText read_toml(std::string_view text) {
  if (auto fault = unreadable(text)) return {{}, std::move(fault)};
  const toml::parse_result parsed = toml::parse(text);
  if (!parsed) {
    const auto& error = parsed.error();
    const TextMark mark = mark_of(error.source());
    return {{}, TomlFault{mark, fault_text(error.description()), syntax_hint(line_of(text, mark.line))}};
  }
  return {table_of(parsed.table()), std::nullopt};
}

namespace {

struct ValueText {
  std::string operator()(bool value) const { return value ? "true" : "false"; }
  std::string operator()(std::int64_t value) const { return fmt::format("{}", value); }
  std::string operator()(double value) const { return fmt::format("{}", value); }
  std::string operator()(const std::string& value) const { return fmt::format("\"{}\"", value); }
  std::string operator()(const TomlNode::List& list) const {
    std::string text = "[";
    for (std::size_t i = 0; i < list.size() && text.size() < 200; ++i)
      text += (i == 0 ? "" : ", ") + std::visit(*this, list[i].value);
    return text + "]";
  }
  std::string operator()(const TomlNode::Table&) const { return "{...}"; }
  std::string operator()(const TomlNode::OtherValue&) const { return "this value"; }
};

struct KindText {
  std::string_view operator()(bool) const { return "true or false"; }
  std::string_view operator()(std::int64_t) const { return "a whole number"; }
  std::string_view operator()(double) const { return "a number"; }
  std::string_view operator()(const std::string&) const { return "text"; }
  std::string_view operator()(const TomlNode::List&) const { return "a list"; }
  std::string_view operator()(const TomlNode::Table&) const { return "a section"; }
  std::string_view operator()(const TomlNode::OtherValue& other) const { return other.kind; }
};

}  // namespace

std::string value_text(const TomlNode& node, std::size_t most_characters) {
  return one_line(std::visit(ValueText{}, node.value), most_characters);
}

std::string_view kind_text(const TomlNode& node) {
  return std::visit(KindText{}, node.value);
}

}  // namespace dewgap::tools
