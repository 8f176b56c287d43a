#include "tools/job/reader.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <set>

#include "tools/answer/plain_text.hpp"
#include "tools/job/money_windows_kernel.hpp"
#include "tools/job/reader_kernel.hpp"
#include "tools/job/spelling.hpp"
#include "tools/job/survey_check_kernel.hpp"
#include "tools/job/value_reader_kernel.hpp"

namespace dewgap::tools {
namespace {

std::string hint(std::string_view word, const std::vector<std::string>& known) {
  const auto nearest = nearest_word(word, known);
  return nearest.empty() ? std::string() : fmt::format("; nearest known: {}", nearest);
}

std::string shown(std::string_view name) {
  return one_line(name, 40);
}

bool is_money(std::string_view section, std::string_view key) {
  const auto& fields = money_table().fields;
  return section == "money" || std::any_of(fields.begin(), fields.end(), [&](const Field& field) {
           return field.section == "money" && field.key == key;
         });
}

/// Walks the tree of a file along its field table.
class Reading {
 public:
  explicit Reading(const FieldTable& table, Origin origin = {}) : table_(table), origin_(std::move(origin)) {}

  void read_root(const TomlNode::Table& root) {
    for (const auto& entry : root) {
      if (const auto* section = table_.find_section(entry.key))
        read_section(*section, entry);
      else
        report_unknown_section(entry);
    }
    for (const auto& section : table_.sections)
      if (!section.begin_repeat && !not_sections_.contains(section.name))
        require_fields(section, section_mark(section.name));
  }

  ReadFile finish() {
    sort_by_line(problems_);
    return {std::move(answers_), std::move(record_), std::move(problems_)};
  }

  /// `what` begins with the key's path.
  void report(TextMark mark, const std::string& what) {
    problems_.push_back({mark, origin_.path(mark) + what});
  }
  const FileAnswers& answers() const { return answers_; }
  const GivenKeys& given() const { return given_; }
  const std::set<std::string>& spoilt_sections() const { return spoilt_; }

 private:
  void read_section(const Section& section, const TomlEntry& entry) {
    section_marks_[std::string(section.name)] = entry.mark;
    if (const auto* keys = std::get_if<TomlNode::Table>(&entry.node.value)) {
      read_keys(section, *keys);
      return;
    }
    not_sections_.insert(section.name);
    spoil(section.name, entry.node.mark,
          fmt::format("{}: {} is {}, not a section; write [{}{}] on a line of its own", section.name,
                      value_text(entry.node), kind_text(entry.node), origin_.header(entry.node.mark),
                      section.name));
  }

  void read_keys(const Section& section, const TomlNode::Table& keys) {
    for (const auto& entry : keys) {
      const auto path = fmt::format("{}.{}", section.name, entry.key);
      const auto* field = table_.find(section.name, entry.key);
      const auto* inner = table_.find_section(path);
      if (field != nullptr)
        read_field(*field, entry);
      else if (inner != nullptr)
        read_repeats(*inner, entry);
      else
        report_unknown_key(section, entry);
    }
  }

  void read_repeats(const Section& section, const TomlEntry& entry) {
    const auto* list = std::get_if<TomlNode::List>(&entry.node.value);
    const bool all_tables =
        list != nullptr && std::all_of(list->begin(), list->end(), [](const TomlNode& node) {
          return std::holds_alternative<TomlNode::Table>(node.value);
        });
    if (value_text(entry.node) == fmt::format("\"{}\"", not_known)) return;
    if (!all_tables) {
      spoil(section.name, entry.node.mark,
            fmt::format("{}: {} is {}, not a list of readings; write [[{}{}]] above each", section.name,
                        value_text(entry.node), kind_text(entry.node), origin_.header(entry.node.mark),
                        section.name));
      return;
    }
    reading_ = 0;
    for (const auto& node : *list) {
      section.begin_repeat(answers_);
      forget(section.name);
      reading_ = reading_.value() + 1;
      read_keys(section, std::get<TomlNode::Table>(node.value));
      require_fields(section, node.mark);
    }
    reading_.reset();
  }

  void read_field(const Field& field, const TomlEntry& entry) {
    given_[field.path()] = {entry.mark, value_text(entry.node)};
    if (const auto complaint = take_value(field, entry.node, answers_))
      spoil(field.section, entry.node.mark, refusal_text(field.path(), field, *complaint));
    else if (!is_not_known(entry.node))
      record(given_value(field, entry.node));
  }

  void record(GivenValue given) {
    given.reading = reading_;
    record_.push_back(std::move(given));
  }

  void require_fields(const Section& section, TextMark mark) {
    for (const auto& field : table_.fields)
      if (field.section == section.name && field.need == Need::required && !given_.contains(field.path()))
        spoil(section.name, mark,
              fmt::format("{}: missing (permitted: {})", field.path(), permitted_text(field.rule)));
  }

  void report_unknown_section(const TomlEntry& entry) {
    if (&table_ == &job_table() && is_money(entry.key, entry.key)) {
      report(entry.mark, money_elsewhere(entry.key));
      return;
    }
    if (!std::holds_alternative<TomlNode::Table>(entry.node.value)) {
      report(entry.mark,
             fmt::format("{}: this key stands in no section{}", shown(entry.key), belongs(entry)));
      return;
    }
    std::vector<std::string> known;
    for (const auto& section : table_.sections) known.emplace_back(section.name);
    report(entry.mark, fmt::format("{}: unknown section{}", shown(entry.key), hint(entry.key, known)));
  }

  void report_unknown_key(const Section& section, const TomlEntry& entry) {
    const auto path = fmt::format("{}.{}", section.name, shown(entry.key));
    if (&table_ == &job_table() && is_money(section.name, entry.key)) {
      report(entry.mark, money_elsewhere(path));
      return;
    }
    std::vector<std::string> known;
    for (const auto& field : table_.fields)
      if (field.section == section.name) known.emplace_back(field.key);
    const auto nearest = hint(entry.key, known);
    report(entry.mark, fmt::format("{}: unknown key{}", path, nearest.empty() ? belongs(entry) : nearest));
  }

  /// The section that has such a key, if any.
  std::string belongs(const TomlEntry& entry) const {
    for (const auto& field : table_.fields)
      if (field.key == entry.key)
        return fmt::format("; it belongs in [{}{}]", origin_.header(entry.mark), field.section);
    return {};
  }

  static std::string money_elsewhere(std::string_view path) {
    return fmt::format(
        "{}: money lives in its own file; give it with --money (`dewgap starter --money` prints one)",
        shown(path));
  }

  void spoil(std::string_view section, TextMark mark, const std::string& what) {
    spoilt_.emplace(section.substr(0, section.find('.')));
    report(mark, what);
  }

  void forget(std::string_view section) {
    std::erase_if(given_,
                  [&](const auto& given) { return given.first.starts_with(fmt::format("{}.", section)); });
  }

  TextMark section_mark(std::string_view name) const {
    const auto at = section_marks_.find(std::string(name));
    return at == section_marks_.end() ? TextMark{} : at->second;
  }

  const FieldTable& table_;
  Origin origin_;
  FileAnswers answers_;
  std::vector<FileProblem> problems_;
  GivenKeys given_;
  std::vector<GivenValue> record_;
  std::optional<int> reading_;  ///< inside a section that may occur several times
  std::set<std::string> spoilt_;
  std::set<std::string_view> not_sections_;
  std::map<std::string, TextMark> section_marks_;
};

/// A net present value needs both rates; none is built in.
void require_rates(Reading& reading) {
  const auto& given = reading.given();
  if (!reading.answers().money.life_years) return;
  for (const auto* key : {"money.discount_rate_pct", "money.price_rise_pct"})
    if (!given.contains(key))
      reading.report(given.at("money.life_years").mark,
                     fmt::format("{}: missing; needed with money.life_years, 0 is an answer", key));
}

/// Several windows are for read_house.
const TomlEntry* windows_entry(const TomlNode::Table& root) {
  const auto at =
      std::find_if(root.begin(), root.end(), [](const TomlEntry& entry) { return entry.key == "windows"; });
  return at == root.end() ? nullptr : &*at;
}

}  // namespace

std::vector<FileProblem> told(const TomlFault& fault) {
  std::vector<FileProblem> problems{{fault.mark, fault.what}};
  if (!fault.hint.empty()) problems.push_back({fault.mark, "hint: " + fault.hint});
  return problems;
}

std::string refusal_text(const std::string& path, const Field& field, const std::string& complaint) {
  return fmt::format("{}: {} (permitted: {}{})", path, complaint, permitted_text(field.rule),
                     field.need == Need::optional ? ", or \"not known\"" : "");
}

void sort_by_line(std::vector<FileProblem>& problems) {
  std::stable_sort(problems.begin(), problems.end(), [](const FileProblem& a, const FileProblem& b) {
    return std::pair(a.mark.line, a.mark.column) < std::pair(b.mark.line, b.mark.column);
  });
}

ReadFile read_job_tree(const TomlNode::Table& root, const Origin& origin) {
  Reading reading(job_table(), origin);
  reading.read_root(root);
  for (const auto& problem :
       survey_problems(reading.answers().survey, reading.given(), reading.spoilt_sections()))
    reading.report(problem.mark, problem.what);
  return reading.finish();
}

ReadFile read_job(std::string_view text) {
  const TomlText toml = read_toml(text);
  if (toml.fault) return {{}, {}, told(*toml.fault)};
  if (const auto* windows = windows_entry(toml.root))
    return {{}, {}, {{windows->mark, "windows: one window is read here, and this file holds several"}}};
  return read_job_tree(toml.root, {});
}

ReadFile read_money(std::string_view text, const std::optional<std::vector<std::string>>& windows) {
  const TomlText toml = read_toml(text);
  if (toml.fault) return {{}, {}, told(*toml.fault)};
  Reading reading(money_table());
  reading.read_root(toml.root);
  require_rates(reading);
  auto read = reading.finish();
  for (auto& problem : window_cost_problems(toml.root, windows)) read.problems.push_back(std::move(problem));
  sort_by_line(read.problems);
  return read;
}

std::string problem_lines(std::string_view file_name, const std::vector<FileProblem>& problems) {
  constexpr std::size_t most = 50;
  std::string lines;
  for (std::size_t i = 0; i < std::min(most, problems.size()); ++i)
    lines += fmt::format("{}:{}:{}: {}\n", harmless(file_name), problems[i].mark.line,
                         problems[i].mark.column, problems[i].what);
  if (problems.size() > most)
    lines += fmt::format("{}: and {} more\n", harmless(file_name), problems.size() - most);
  return lines;
}

}  // namespace dewgap::tools
