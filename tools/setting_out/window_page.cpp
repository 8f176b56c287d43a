// The pages of a window that is set out.
#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "tools/answer/figures_text.hpp"
#include "tools/answer/words.hpp"
#include "tools/drawing/markup.hpp"
#include "tools/drawing/paper.hpp"
#include "tools/setting_out/drawings.hpp"
#include "tools/setting_out/page_parts.hpp"

namespace dewgap::tools::pages {
namespace {

constexpr std::array members{Member::left, Member::top, Member::right, Member::bottom};

std::string paragraph(std::string_view text) {
  return fmt::format("<p>{}</p>\n", isolated(text));
}

std::string drawing(const SvgDrawing& drawn, const std::string& caption) {
  return fmt::format("<figure>\n{}<figcaption>{}</figcaption>\n</figure>\n", drawn.svg(), escaped(caption));
}

std::string size_line(const WindowToSet& window) {
  const auto& plan = *window.plan;
  const double diagonal = std::hypot(plan.width_mm, plan.height_mm);
  return fmt::format(
      "<p><strong>Cut {}{} {} mm, {} mm wide x {} mm high</strong>, {} kg{}. Both diagonals {} mm.</p>\n",
      plan.sheet_count == 1 ? "" : fmt::format("{} sheets alike: ", plan.sheet_count),
      name_of(window.job->survey.sheet.material), figure(plan.thickness_mm, plan.thickness_mm < 1.0 ? 2 : 1),
      plan.width_mm, plan.height_mm, figure(plan.weight_kg, 1), plan.sheet_count == 1 ? "" : " each",
      figure(diagonal, 0));
}

std::string steps_before(const WindowToSet& window) {
  const auto& after = window.job->assessment.after;
  if (after.empty()) return {};
  return "<h2>First</h2>\n" + tick_list(after);
}

std::string hole_words(const SheetPlan& plan) {
  if (plan.fixing == FixingKind::turn_clips)
    return fmt::format("{} turn clips, screws {} mm outside the sheet's edge, no hole in the sheet.",
                       plan.fixing_count, figure(plan.fixing_offset_mm, 0));
  const auto hole = plan.slots_needed && plan.slot_length_mm > 0.0
                        ? fmt::format("slots {} x {} mm that point at the tight screw",
                                      figure(plan.hole_diameter_mm, 1), figure(plan.slot_length_mm, 1))
                        : fmt::format("holes {} mm wide", figure(plan.hole_diameter_mm, 1));
  return fmt::format(
      "{} screws with washers, {} mm inside the sheet's edge, {}. Only the one at {} mm on the bottom edge "
      "is "
      "tight (filled in the drawing); the others stay free to slide.",
      plan.fixing_count, figure(plan.fixing_offset_mm, 0), hole, plan.fixed_mark_mm);
}

std::string pilot_words(const SheetPlan& plan) {
  if (plan.pilot_depth_mm <= 0.0)
    return fmt::format(
        "Pilot {} mm wide. Depth: the timber was not measured, so none is given; measure first.",
        figure(plan.pilot_diameter_mm, 1));
  return fmt::format("Pilot {} mm wide, {} mm deep and no deeper: set a depth stop.",
                     figure(plan.pilot_diameter_mm, 1), figure(plan.pilot_depth_mm, 0));
}

/// A row for each side: number and distance of every mark.
std::string marks_table(const SheetPlan& plan) {
  PaperTable table{"Marks, mm", {"side", "from its", "number: distance"}, {}};
  for (const auto member : members) {
    std::string marks;
    for (const auto& hole : plan.holes)
      if (hole.member == member)
        marks += fmt::format("{}{}: {}{}", marks.empty() ? "" : ";  ", hole.number, hole.along_mm,
                             hole.tight ? " (tight)" : "");
    if (marks.empty()) continue;
    const bool level = member == Member::top || member == Member::bottom;
    table.rows.push_back({std::string(name_of(member)), level ? "left end" : "bottom end", marks});
  }
  return paper_table(table);
}

std::string fixings(const SheetPlan& plan) {
  std::string text = "<h2>Fixings</h2>\n";
  if (plan.fixing == FixingKind::beads)
    return text + paragraph("Beads round the reveal; no hole in the sheet.");
  if (plan.fixing == FixingKind::tape_only)
    return text + paragraph("Tape or magnetic strip alone; nothing is drilled.");
  text += paragraph(hole_words(plan) + " " + pilot_words(plan));
  if (plan.screw_length_mm > 0.0)
    text += paragraph(fmt::format("Screw length {} mm, through sheet and tape to the pilot's end.",
                                  figure(plan.screw_length_mm, 0)));
  return text;
}

std::string tape(const WindowToSet& window) {
  const auto& plan = *window.plan;
  std::string text =
      "<h2>Tape and marks</h2>\n" + paragraph("Tape " + tape_order(window.job->assessment.figures->vent));
  if (plan.tape_pieces.empty()) {
    return text + paragraph(fmt::format("{} m, once round.", figure(plan.tape_length_m, 2)));
  }
  PaperTable table{
      fmt::format("Tape, {} m, mm", figure(plan.tape_pieces_length_m, 2)), {"side", "from", "length"}, {}};
  for (const auto& piece : plan.tape_pieces)
    table.rows.push_back(
        {std::string(name_of(piece.member)), figure(piece.from_mm, 0), figure(piece.length_mm, 0)});
  text += "<div class=\"pair\">" + (plan.holes.empty() ? std::string() : marks_table(plan)) +
          paper_table(table) + "</div>\n";
  for (const auto& one : plan.tape_breaks)
    text += paragraph(fmt::format("Break at the {}: no tape from {} to {} mm from the left.",
                                  name_of(one.member), figure(one.from_mm, 0), figure(one.to_mm, 0)));
  return text;
}

std::string movement(const SheetPlan& plan) {
  const double both = plan.movement_mm + plan.moisture_movement_mm;
  std::string text = "<h2>Why</h2>\n";
  text += paragraph(fmt::format("Over a year the longer side moves {} mm ({} with warmth, {} with damp).",
                                figure(both, 1), figure(plan.movement_mm, 1),
                                figure(plan.moisture_movement_mm, 1)));
  if (plan.deflection_mm && plan.deflection_limit_mm)
    text += paragraph(fmt::format("A gust bends the middle {}{} mm; allowed {} mm.",
                                  plan.deflection_is_upper_bound ? "at most " : "",
                                  figure(*plan.deflection_mm, 1), figure(*plan.deflection_limit_mm, 1)));
  auto all = plan.reasons;
  all.insert(all.end(), plan.notes.begin(), plan.notes.end());
  return text + "<div class=\"two\">" + plain_list(all) + "</div>\n";
}

std::string order(const WindowToSet& window) {
  std::vector<std::string> steps;
  for (const auto& step : window.steps) steps.push_back(step.sentence);
  return steps.empty() ? std::string() : "<h2>Order of work</h2>\n" + tick_list(steps);
}

}  // namespace

std::string heading(const WindowToSet& window) {
  const auto& assessment = window.job->assessment;
  const bool provisional = assessment.figures && assessment.figures->provisional;
  return fmt::format("<h1>Setting out {}</h1>\n<p><strong>{}{}</strong> {}</p>\n",
                     isolated_start(window.title(90), 90), name_of(assessment.headline),
                     provisional ? " (provisional)" : "", isolated(assessment.because));
}

std::string cautions(const WindowToSet& window) {
  std::vector<std::string> all;
  for (const auto& caution : window.job->assessment.cautions) all.push_back(caution.say);
  return all.empty() ? std::string() : "<h2>Stop and think</h2>\n" + plain_list(all);
}

std::string findings(const WindowToSet& window) {
  if (window.findings.empty()) return {};
  std::string text = "<h2>Does it fit</h2>\n";
  PaperTable table{"", {"check", "", "what was found"}, {}};
  std::string fine;
  for (const auto& finding : window.findings) {
    if (finding.severity == FitSeverity::fine)
      fine += (fine.empty() ? "Fine: " : ", ") + std::string(name_of(finding.kind));
    else
      table.rows.push_back(
          {std::string(name_of(finding.kind)), std::string(name_of(finding.severity)), finding.sentence});
  }
  if (window.sun && window.sun->severity != FitSeverity::fine)
    table.rows.push_back({"sun", std::string(name_of(window.sun->severity)), window.sun->sentence});
  if (!table.rows.empty()) text += paper_table(table);
  if (!fine.empty()) text += paragraph(fine + ".");
  return window.sun && window.sun->severity == FitSeverity::fine ? text + paragraph(window.sun->sentence)
                                                                 : text;
}

std::string of_window(const WindowToSet& window) {
  const auto id = fmt::format("w{}", window.number);
  const auto& plan = *window.plan;
  std::string text = "<section class=\"page\">\n" + heading(window) + findings(window) + steps_before(window);
  text += "<h2>The sheet</h2>\n" + size_line(window);
  text += "<div class=\"beside\">\n" +
          drawing(elevation_drawing(window, id + "-sheet"),
                  plan.holes.empty()
                      ? "Millimetres. Dashed: the opening or glass behind."
                      : "Millimetres. Numbers in bold name the marks. Marks along the top are those "
                        "along the bottom, marks on the right those on the left. Dashed: the opening "
                        "or glass behind.") +
          "<div>\n" + cautions(window) + "</div></div>\n";
  text += scale_check() + "</section>\n<section class=\"page\">\n";
  text += fmt::format("<h2>Cut through the side of {}</h2>\n", isolated_start(window.title(60), 60));
  const auto section = section_drawing(window, id + "-cut");
  text += drawing(section, section.canvas().title + ". Millimetres.");
  return text + fixings(plan) + tape(window) + order(window) + movement(plan) + "</section>\n";
}

}  // namespace dewgap::tools::pages
