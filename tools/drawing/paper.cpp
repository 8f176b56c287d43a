#include "tools/drawing/paper.hpp"

#include <fmt/format.h>

#include "tools/drawing/markup.hpp"
#include "tools/drawing/svg.hpp"

namespace dewgap::tools {
namespace {

constexpr std::string_view common_style = R"(
@page { size: A4 portrait; margin: 11mm 12mm; }
* { box-sizing: border-box; }
html { color: #000; background: #fff; }
body { margin: 0 auto; padding: 4mm; max-width: 194mm; font: 9.2pt/1.28 sans-serif; overflow-wrap: anywhere; }
h1 { font-size: 15pt; line-height: 1.15; margin: 0 0 1.5mm; }
h2 { font-size: 11pt; margin: 3mm 0 0.8mm; border-bottom: 0.3mm solid #000; break-after: avoid; }
h3 { font-size: 9.5pt; margin: 2.5mm 0 0.8mm; break-after: avoid; }
p { margin: 0 0 1.2mm; }
ul { margin: 0 0 1.5mm; padding-left: 5mm; }
li { margin-bottom: 0.6mm; break-inside: avoid; }
ul.tick { list-style: none; padding: 0; columns: 2; column-gap: 6mm; }
ul.tick li { padding-left: 6mm; position: relative; }
ul.tick li::before { content: ""; position: absolute; left: 0; top: 0.4mm; width: 3.4mm; height: 3.4mm;
  border: 0.35mm solid #000; }
svg { display: block; max-width: 100%; height: auto; }
figure { margin: 1.5mm 0; break-inside: avoid; }
figcaption { font-size: 8.5pt; }
table { border-collapse: collapse; font-size: 8.5pt; margin: 1mm 0 2mm; }
caption { text-align: left; white-space: nowrap; font-weight: bold; }
th, td { border: 0.2mm solid #000; padding: 0.3mm 1.3mm; text-align: left; vertical-align: top; }
td.n { text-align: right; white-space: nowrap; }
th { background: #e8e8e8; }
tr { break-inside: avoid; }
.stop { border: 0.8mm solid #000; padding: 2.5mm 3mm; margin: 2mm 0; }
.stop strong { font-size: 13pt; }
.wide { overflow-x: auto; }
.small { font-size: 8pt; }
td.s { white-space: nowrap; }
.two ul { columns: 2; column-gap: 6mm; font-size: 8.5pt; }
.page { break-after: page; padding-bottom: 2mm; }
.page:last-child { break-after: auto; }
@media screen { .page { border-bottom: 0.3mm dashed #000; margin-bottom: 6mm; } }
@media print { body { padding: 0; max-width: none; } }
@media screen and (max-width: 600px) { ul.tick, .two ul { columns: 1; } }
)";

std::string list(std::string_view tag, const std::vector<std::string>& items) {
  if (items.empty()) return {};
  std::string text(tag);
  for (const auto& item : items) text += fmt::format("<li>{}</li>\n", isolated(item));
  return text + "</ul>\n";
}

bool is_number(const std::string& cell) {
  return !cell.empty() && cell.find_first_not_of("0123456789. ") == std::string::npos;
}

std::string_view class_of(const std::string& cell) {
  constexpr std::size_t short_cell = 14;
  if (is_number(cell)) return " class=\"n\"";
  return cell.size() <= short_cell ? " class=\"s\"" : "";
}

}  // namespace

std::string paper_document(const PaperDocument& document) {
  return fmt::format(
      "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n"
      "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; "
      "style-src 'unsafe-inline'\">\n"
      "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n"
      "<title>{}</title>\n<style>{}{}</style>\n</head>\n<body>\n<main>\n{}</main>\n</body>\n</html>\n",
      escaped(document.title), common_style, document.style, document.body);
}

std::string tick_list(const std::vector<std::string>& items) {
  return list("<ul class=\"tick\">\n", items);
}

std::string plain_list(const std::vector<std::string>& items) {
  return list("<ul>\n", items);
}

std::string paper_table(const PaperTable& table) {
  std::string text = "<div class=\"wide\" tabindex=\"0\"><table>\n";
  if (!table.caption.empty()) text += fmt::format("<caption>{}</caption>\n", escaped(table.caption));
  text += "<thead><tr>";
  for (const auto& cell : table.head) text += fmt::format("<th scope=\"col\">{}</th>", escaped(cell));
  text += "</tr></thead>\n<tbody>\n";
  for (const auto& row : table.rows) {
    text += "<tr>";
    for (const auto& cell : row) text += fmt::format("<td{}>{}</td>", class_of(cell), isolated(cell));
    text += "</tr>\n";
  }
  return text + "</tbody>\n</table></div>\n";
}

std::string scale_check() {
  constexpr double bar_mm = 50.0;
  SvgDrawing drawing({.width = 130,
                      .height = 7,
                      .id = "scale-check",
                      .title = "A bar of 50 mm",
                      .description = "Hold a rule to it: when it is not 50 mm long, print at 100 per cent."});
  drawing.line({0.5, 3.5}, {0.5 + bar_mm, 3.5}, {"#000", 0.5, "none", {}});
  for (const double x : {0.5, 0.5 + bar_mm}) drawing.line({x, 1.5}, {x, 5.5}, {"#000", 0.5, "none", {}});
  drawing.text({bar_mm + 3, 4.6}, "50 mm. If it is not, print at 100 %, not 'fit to page'.", {.size = 2.9});
  return drawing.svg();
}

}  // namespace dewgap::tools
