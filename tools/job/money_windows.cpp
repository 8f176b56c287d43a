#include <fmt/format.h>

#include <algorithm>
#include <map>

#include "tools/answer/plain_text.hpp"
#include "tools/job/money_windows_kernel.hpp"

namespace dewgap::tools {
namespace {

/// The value of a table's key; nothing when there is none.
const TomlNode* value_in(const TomlNode::Table& table, std::string_view key) {
  const auto* entry = entry_of(table, key);
  return entry == nullptr ? nullptr : &entry->node;
}

template <class Kind>
const Kind* as(const TomlNode* node) {
  return node == nullptr ? nullptr : std::get_if<Kind>(&node->value);
}

std::string no_such_window(const std::string& name, const std::vector<std::string>& windows) {
  std::string known;
  for (const auto& window : windows)
    known += fmt::format("{}\"{}\"", known.empty() ? "" : ", ", one_line(window, 40));
  return fmt::format("\"{}\" is no window of the job (permitted: {})", one_line(name, 40), known);
}

}  // namespace

std::vector<FileProblem> window_cost_problems(const TomlNode::Table& root,
                                              const std::optional<std::vector<std::string>>& windows) {
  std::vector<FileProblem> problems;
  const auto* money = as<TomlNode::Table>(value_in(root, "money"));
  const auto* list = money == nullptr ? nullptr : as<TomlNode::List>(value_in(*money, "windows"));
  if (list == nullptr) return problems;
  std::map<std::string, std::size_t> seen;
  for (std::size_t i = 0; i < list->size(); ++i) {
    const auto* window = std::get_if<TomlNode::Table>(&(*list)[i].value);
    const auto* node = window == nullptr ? nullptr : value_in(*window, "name");
    const auto* name = as<std::string>(node);
    if (name == nullptr) continue;  // told by the field
    const auto path = fmt::format("money.windows[{}].name", i + 1);
    const auto [first, is_new] = seen.emplace(*name, i + 1);
    if (!is_new)
      problems.push_back({node->mark, fmt::format("{}: \"{}\" is the name of money.windows[{}] too", path,
                                                  one_line(*name, 40), first->second)});
    if (windows && std::find(windows->begin(), windows->end(), *name) == windows->end())
      problems.push_back({node->mark, path + ": " + no_such_window(*name, *windows)});
  }
  return problems;
}

}  // namespace dewgap::tools
