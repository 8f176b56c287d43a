#include "tools/setting_out/survey_card.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "tools/drawing/markup.hpp"
#include "tools/drawing/paper.hpp"

namespace dewgap::tools {
namespace {

constexpr std::string_view card_style = R"(
@page { size: A4 portrait; margin: 6mm 7mm; }
body { max-width: 202mm; font-size: 7.5pt; line-height: 1.13; }
h1 { font-size: 12pt; margin: 0 0 0.6mm; }
h2 { font-size: 8.6pt; margin: 0.9mm 0 0.3mm; border-bottom: 0.25mm solid #000; clear: both; }
h2 code { font-weight: normal; }
code { font: 7.5pt/1 monospace; letter-spacing: -0.2mm; white-space: nowrap; }
p { margin: 0 0 0.35mm; }
.card { columns: 2; column-gap: 4mm; column-rule: 0.2mm solid #000; }
.field { break-inside: avoid; overflow-wrap: normal; }
.gate { border: 0.6mm solid #000; padding: 0.6mm 1.4mm 0.8mm; margin: 0.6mm 0; }
.gate h2 { border: 0; margin: 0 0 0.4mm; }
.box { display: inline-block; width: 2.3mm; height: 2.3mm; border: 0.25mm solid #000; margin: 0 0.4mm 0 1mm;
  vertical-align: -0.2mm; }
.word { white-space: nowrap; }
.room { display: inline-block; border-bottom: 0.2mm solid #000; width: 11mm; height: 2.4mm; margin: 0 0.6mm; }
.long { width: 30mm; }
.several { display: flex; justify-content: space-between; }
.several figure { float: none; margin: 0.3mm 0; }
figure { float: right; margin: 0.4mm 0 0.4mm 1.5mm; }
table { margin: 0.5mm 0 1mm; width: 100%; font-size: 7.5pt; }
td { height: 4mm; }
@media screen and (max-width: 600px) { .card { columns: 1; } }
)";

std::string boxes(const std::vector<std::string_view>& words) {
  std::string text;
  for (const auto word : words)
    text += fmt::format(" <span class=\"word\"><span class=\"box\"></span>{}</span>", escaped(word));
  return text;
}

std::string rooms(std::size_t count, std::string_view unit) {
  std::string text;
  for (std::size_t i = 0; i < count; ++i) text += " <span class=\"room\"></span>";
  return fmt::format("<span class=\"word\">{} {}</span>", text, escaped(unit));
}

/// A letter for each marked point under every word: as many rows as points would take the page.
std::string point_rooms(const WordsRule& rule) {
  std::string text;
  for (const auto word : rule.words)
    text += fmt::format(" <span class=\"word\">{}<span class=\"room\"></span></span>", escaped(word));
  return text + fmt::format(" <span class=\"word\">(point numbers, 1 to {})</span>", rule.most);
}

/// Where the answer goes.
struct AnswerRoom {
  std::string operator()(const NumberRule& rule) const { return rooms(1, rule.unit.symbol); }
  std::string operator()(const NumberOrNoneRule& rule) const {
    return rooms(1, rule.unit.symbol) + boxes({none_there});
  }
  std::string operator()(const WholeNumberRule&) const { return rooms(1, ""); }
  std::string operator()(const NumbersRule& rule) const { return rooms(rule.most, rule.unit.symbol); }
  std::string operator()(const WordRule& rule) const { return boxes(rule.words); }
  std::string operator()(const WordsRule& rule) const { return point_rooms(rule); }
  std::string operator()(const TickRule&) const { return boxes({"yes", "no"}); }
  std::string operator()(const TextRule&) const { return " <span class=\"room long\"></span>"; }
  std::string operator()(const CompassRule&) const {
    return " <span class=\"room\"></span> (north, north-east, ...)";
  }
};

std::string field_line(const Field& field) {
  const bool any_text = std::holds_alternative<TextRule>(field.rule) && field.need != Need::required;
  const bool may_be_unknown = field.need != Need::required && !any_text;
  return fmt::format("<p class=\"field\">{}: <code>{}</code>{}{}</p>\n", escaped(field.help),
                     escaped(field.key), std::visit(AnswerRoom{}, field.rule),
                     may_be_unknown ? boxes({"?"}) : std::string());
}

std::string rows_to_fill(const Section& section, const FieldTable& table) {
  constexpr int rows = 3;
  std::string head;
  std::string row = "<tr>";
  for (const auto& field : table.fields)
    if (field.section == section.name && field.asked == Asked::short_job) {
      head +=
          fmt::format("<th scope=\"col\">{} <code>{}</code></th>", escaped(field.help), escaped(field.key));
      row += "<td></td>";
    }
  std::string text = fmt::format("<table><thead><tr>{}</tr></thead><tbody>\n", head);
  for (int i = 0; i < rows; ++i) text += row + "</tr>\n";
  return text + "</tbody></table>\n";
}

std::string figures(std::string_view section) {
  std::string text;
  std::size_t count = 0;
  for (const auto& one : card_drawings())
    if (one.section == section && ++count > 0)
      text += fmt::format("<figure>\n{}</figure>\n", one.drawing.svg());
  return count > 1 ? "<div class=\"several\">\n" + text + "</div>\n" : text;
}

bool is_asked(const Section& section, const FieldTable& table) {
  return std::any_of(table.fields.begin(), table.fields.end(), [&](const Field& field) {
    return field.section == section.name && field.asked == Asked::short_job;
  });
}

std::string section_part(const Section& section, const FieldTable& table) {
  const bool gates = section.name == "settle_first";
  auto text = fmt::format("{}<h2>{} <code>[{}]</code></h2>\n", gates ? "<div class=\"gate\">" : "",
                          escaped(section.help), escaped(section.name));
  text += figures(section.name);
  if (section.begin_repeat) {
    text += rows_to_fill(section, table);
  } else {
    for (const auto& field : table.fields)
      if (field.section == section.name && field.asked == Asked::short_job) text += field_line(field);
  }
  return gates ? text + "</div>\n" : text;
}

}  // namespace

std::string survey_card(const FieldTable& table) {
  std::string body =
      "<h1>One window: what to measure and look at</h1>\n"
      "<p>Whole millimetres. Tick one box a line. <b>?</b> is 'not known': an answer too, it widens the "
      "result. The small words are the keys of the job file, in its order. No fire lit while a fan runs for "
      "the tissue test.</p>\n"
      "<p><span class=\"word\">Date <span class=\"room\"></span></span> <span class=\"word\">filled in by "
      "<span class=\"room long\"></span></span></p>\n<div class=\"card\">\n";
  for (const auto& section : table.sections)
    if (is_asked(section, table)) body += section_part(section, table);
  return paper_document({"Survey card for one window", std::string(card_style),
                         "<section class=\"page\">\n" + body + "</div>\n</section>\n"});
}

}  // namespace dewgap::tools
