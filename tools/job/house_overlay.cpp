#include "tools/job/house_overlay_kernel.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <map>

#include "tools/answer/plain_text.hpp"
#include "tools/job/house_reader.hpp"
#include "tools/job/value_reader_kernel.hpp"

namespace dewgap::tools {
namespace {

using Table = TomlNode::Table;

constexpr std::array<std::string_view, 2> sections_of_the_house{"place", "house"};
constexpr std::array<std::string_view, 2> building_facts_of_a_window{"floor", "outlook"};

template <class Words>
bool is_among(std::string_view word, const Words& words) {
  return std::find(words.begin(), words.end(), word) != words.end();
}

/// Lays a section's keys over those of the same section, or puts the section there.
void lay_over(Table& root, const TomlEntry& section) {
  auto* below = entry_of(root, section.key);
  if (below == nullptr) {
    root.push_back(section);
    return;
  }
  auto* keys_below = std::get_if<Table>(&below->node.value);
  const auto* keys = std::get_if<Table>(&section.node.value);
  if (keys_below == nullptr) return;  // told already, as a fault of the file
  if (keys == nullptr) {
    *below = section;
    return;
  }
  below->mark = section.mark;  // what is missing is missing for this window
  for (const auto& entry : *keys) {
    if (auto* same = entry_of(*keys_below, entry.key))
      *same = entry;
    else
      keys_below->push_back(entry);
  }
}

class Overlaying {
 public:
  Overlaying(const Table& root, const TomlEntry& windows) : windows_(windows) {
    for (const auto& entry : root)
      if (&entry != &windows) shared_.push_back(entry);
  }

  HouseTrees run() {
    drop_shared_answers();
    take_job_name();
    const auto nodes = window_nodes();
    for (std::size_t i = 0; i < nodes.size(); ++i) add_window(i + 1, *nodes[i]);
    for (auto& window : trees_.windows) add_empty_sections(window);
    return std::move(trees_);
  }

 private:
  void report(TextMark mark, std::string what) { trees_.problems.push_back({mark, std::move(what)}); }

  /// A safety answer for all windows at once is none.
  void drop_shared_answers() {
    auto* section = entry_of(shared_, "settle_first");
    auto* keys = section == nullptr ? nullptr : std::get_if<Table>(&section->node.value);
    if (keys == nullptr) return;
    std::erase_if(*keys, [&](const TomlEntry& entry) {
      const auto* field = job_table().find("settle_first", entry.key);
      if (field == nullptr || field->need != Need::settle_first) return false;
      report(entry.mark, fmt::format("{}: {}: safety answers are given for each window; write it under "
                                     "[windows.settle_first]",
                                     field->path(), value_text(entry.node)));
      return true;
    });
  }

  void take_job_name() {
    const auto* section = entry_of(shared_, "job");
    const auto* keys = section == nullptr ? nullptr : std::get_if<Table>(&section->node.value);
    const auto* entry = keys == nullptr ? nullptr : entry_of(*keys, "name");
    if (entry == nullptr) return;
    const auto& field = *job_table().find("job", "name");
    FileAnswers answers;
    if (const auto complaint = take_value(field, entry->node, answers))
      report(entry->node.mark, refusal_text(field.path(), field, *complaint));
    trees_.job_name = answers.survey.name;
  }

  /// The windows to read, or what is wrong with their list.
  std::vector<const TomlNode*> window_nodes() {
    const auto* list = std::get_if<TomlNode::List>(&windows_.node.value);
    const bool all_tables = list != nullptr && !list->empty() &&
                            std::all_of(list->begin(), list->end(), [](const TomlNode& node) {
                              return std::holds_alternative<Table>(node.value);
                            });
    if (!all_tables) {
      report(windows_.node.mark,
             fmt::format("windows: {} is {}, not a list of windows; write [[windows]] above "
                         "each",
                         value_text(windows_.node), kind_text(windows_.node)));
      return {};
    }
    if (list->size() > most_windows)
      report((*list)[most_windows].mark,
             fmt::format("windows: {} of them; at most {} are read", list->size(), most_windows));
    std::vector<const TomlNode*> nodes;
    for (const auto& node : *list)
      if (nodes.size() < most_windows) nodes.push_back(&node);
    return nodes;
  }

  void add_window(std::size_t number, const TomlNode& node) {
    WindowTree tree{shared_, Origin(number, node)};
    marks_.push_back(node.mark);
    const TomlEntry* name = nullptr;
    for (const auto& entry : std::get<Table>(node.value)) {
      if (entry.key == "name")
        name = &entry;
      else if (is_of_the_house(tree.origin, entry) || is_window_in_window(tree.origin, entry))
        continue;
      else
        lay_over(tree.root, allowed_part(tree.origin, entry));
    }
    lay_over(tree.root, job_named(tree, number, node.mark, name));
    trees_.windows.push_back(std::move(tree));
  }

  bool is_of_the_house(const Origin& origin, const TomlEntry& entry) {
    if (!is_among(entry.key, sections_of_the_house)) return false;
    report(entry.mark, fmt::format("{}{}: is the same for all windows; write [{}] once, before the first "
                                   "[[windows]]",
                                   origin.path(entry.mark), entry.key, entry.key));
    return true;
  }

  bool is_window_in_window(const Origin& origin, const TomlEntry& entry) {
    if (entry.key != "windows") return false;
    report(entry.mark, origin.path(entry.mark) + "windows: a window holds no windows");
    return true;
  }

  /// Of [windows.building] floor and outlook; of [windows.job] all but the name.
  TomlEntry allowed_part(const Origin& origin, TomlEntry section) {
    auto* keys = std::get_if<Table>(&section.node.value);
    if (keys == nullptr) return section;
    std::erase_if(*keys, [&](const TomlEntry& entry) {
      const auto path = fmt::format("{}{}.{}", origin.path(entry.mark), section.key, entry.key);
      const bool of_the_house = section.key == "building" &&
                                job_table().find("building", entry.key) != nullptr &&
                                !is_among(entry.key, building_facts_of_a_window);
      if (of_the_house)
        report(entry.mark, path +
                               ": is the same for all windows; of the building only floor and outlook may "
                               "differ");
      const bool second_name = section.key == "job" && entry.key == "name";
      if (second_name) report(entry.mark, path + ": a window's name stands right under its [[windows]]");
      return of_the_house || second_name;
    });
    return section;
  }

  /// A [job] with the window's name as the job's.
  TomlEntry job_named(const WindowTree& tree, std::size_t number, TextMark mark, const TomlEntry* name) {
    const auto& field = *job_table().find("windows", "name");
    const auto path = fmt::format("windows[{}].name", number);
    const auto* job = entry_of(tree.root, "job");
    TomlEntry section{"job", job == nullptr ? mark : job->mark, {mark, Table{}}};
    if (name == nullptr) {
      report(mark, fmt::format("{}: missing (permitted: {})", path, permitted_text(field.rule)));
      return section;
    }
    FileAnswers answers;
    if (const auto complaint = take_value(field, name->node, answers))
      report(name->node.mark, refusal_text(path, field, *complaint));
    else if (const auto [first, is_new] = names_.emplace(answers.survey.name, number); !is_new)
      report(name->node.mark, fmt::format("{}: {} is the name of windows[{}] too; give each its own", path,
                                          value_text(name->node), first->second));
    else
      std::get<Table>(section.node.value).push_back(*name);
    return section;
  }

  void add_empty_sections(WindowTree& window) const {
    const auto number = static_cast<std::size_t>(&window - trees_.windows.data());
    for (const auto& section : job_table().sections) {
      const bool given_somewhere =
          std::any_of(trees_.windows.begin(), trees_.windows.end(),
                      [&](const WindowTree& other) { return entry_of(other.root, section.name) != nullptr; });
      if (given_somewhere && entry_of(window.root, section.name) == nullptr)
        window.root.push_back({std::string(section.name), marks_[number], {marks_[number], Table{}}});
    }
  }

  const TomlEntry& windows_;
  Table shared_;
  std::vector<TextMark> marks_;  ///< of the windows
  std::map<std::string, std::size_t> names_;
  HouseTrees trees_;
};

}  // namespace

Origin::Origin(std::size_t number, const TomlNode& node) : number_(number) {
  own(node);
}

void Origin::own(const TomlNode& node) {
  own_.emplace(node.mark.line, node.mark.column);
  if (const auto* table = std::get_if<Table>(&node.value))
    for (const auto& entry : *table) {
      own_.emplace(entry.mark.line, entry.mark.column);
      own(entry.node);
    }
  if (const auto* list = std::get_if<TomlNode::List>(&node.value))
    for (const auto& inner : *list) own(inner);
}

std::string Origin::path(TextMark mark) const {
  return owns(mark) ? fmt::format("windows[{}].", number_) : std::string();
}

HouseTrees overlaid(const TomlNode::Table& root, const TomlEntry& windows) {
  return Overlaying(root, windows).run();
}

}  // namespace dewgap::tools
