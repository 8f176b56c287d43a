#include "tools/job/starter.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "tools/answer/plain_text.hpp"

namespace dewgap::tools {
namespace {

constexpr std::size_t comment_columns = 100;

std::string comment(std::string_view text) {
  std::string lines;
  for (const auto& line : wrapped(text, comment_columns, "# ", "#   ")) lines.append(line).append("\n");
  return lines;
}

std::string starter_head(const FieldTable& table) {
  std::string head =
      comment(fmt::format("A {} file. Figures in it are invented: put your own.", table.file_kind));
  head += comment("Units are in the keys. \"not known\" is an answer, and the answer's range then grows.");
  if (&table == &job_table()) head += comment("Every other key: `dewgap starter --table`.");
  return head;
}

/// A question to settle first is a line without an answer, and that line is a comment.
std::string starter_field(const Field& field) {
  const auto* text = std::get_if<TextRule>(&field.rule);
  const bool any_text = text != nullptr && text->permitted.empty();
  const auto lines = comment(any_text ? std::string(field.help)
                                      : fmt::format("{}: {}", field.help, permitted_text(field.rule)));
  if (field.need == Need::settle_first) return lines + fmt::format("# {} =\n", field.key);
  return lines + fmt::format("{} = {}\n", field.key, field.example);
}

bool is_in_short_job(const Section& section, const FieldTable& table) {
  return std::any_of(table.fields.begin(), table.fields.end(), [&](const Field& field) {
    return field.section == section.name && field.asked == Asked::short_job;
  });
}

/// A section that may repeat is shown as a comment: its readings would be invented.
std::string repeated_section(const Section& section, const FieldTable& table) {
  std::string lines = comment(section.help) + fmt::format("# [[{}]]\n", section.name);
  for (const auto& field : table.fields)
    if (field.section == section.name)
      lines += fmt::format("# {} =   # {}: {}\n", field.key, field.help, permitted_text(field.rule));
  return lines;
}

std::string starter_section(const Section& section, const FieldTable& table) {
  if (section.begin_repeat) return repeated_section(section, table);
  std::string lines = comment(section.help) + fmt::format("[{}]\n", section.name);
  for (const auto& field : table.fields)
    if (field.section == section.name && field.asked == Asked::short_job) lines += starter_field(field);
  return lines;
}

/// Of the building only what may differ from window to window stands under a window, and the rest above all.
bool stands_here(const Field& field, std::string_view before) {
  const bool of_a_window = field.key == "floor" || field.key == "outlook";
  return field.section != "building" || of_a_window != before.empty();
}

/// A section's fields for a file of several windows, `before` its name in the header.
std::string house_section(std::string_view name, std::string_view before) {
  const auto& section = *job_table().find_section(name);
  std::string lines = comment(section.help) + fmt::format("[{}{}]\n", before, name);
  for (const auto& field : job_table().fields)
    if (field.section == name && stands_here(field, before) &&
        (field.asked == Asked::short_job || name == "house"))
      lines += starter_field(field);
  return lines;
}

std::string house_window(std::string_view name, const std::vector<std::string_view>& sections) {
  std::string lines = fmt::format("\n[[windows]]\nname = \"{}\"\n", name);
  for (const auto section : sections) lines += "\n" + house_section(section, "windows.");
  return lines;
}

std::string_view need_text(Need need) {
  switch (need) {
    case Need::required:
      return "needed";
    case Need::optional:
      return "may be \"not known\"";
    case Need::settle_first:
      return "unanswered is HOLD";
  }
  return {};
}

}  // namespace

std::string starter_file(const FieldTable& table) {
  std::string text = starter_head(table);
  for (const auto& section : table.sections)
    if (is_in_short_job(section, table)) text.append("\n").append(starter_section(section, table));
  return text;
}

std::string starter_house() {
  std::string text = starter_head(job_table());
  text += comment("These sections hold for all windows; a window's own overrides them key by key.");
  for (const auto* name : {"house", "place", "building", "sheet"})
    text.append("\n").append(house_section(name, ""));
  text += "\n" + comment("Each window begins with its name. Copy, add and take away as many as there are.");
  text += house_window("Front room (invented)",
                       {"settle_first", "window", "joints", "tissue", "timber", "room", "building"});
  text += house_window("Back bedroom (invented)", {"settle_first", "window", "room"});
  return text;
}

std::string field_list(const FieldTable& table) {
  std::string text = fmt::format("# Keys of a {} file\n", table.file_kind);
  for (const auto& section : table.sections) {
    text += fmt::format(
        "\n## {}\n{}.\n\n| key | what | permitted | |\n| --- | --- | --- | --- |\n",
        section.begin_repeat ? fmt::format("[[{}]]", section.name) : fmt::format("[{}]", section.name),
        section.help);
    for (const auto& field : table.fields)
      if (field.section == section.name)
        text += fmt::format("| `{}` | {} | {} | {} |\n", field.key, field.help, permitted_text(field.rule),
                            need_text(field.need));
  }
  return text;
}

}  // namespace dewgap::tools
