// Pages of windows that are not set out, and of the whole job.
#include <fmt/format.h>

#include "tools/answer/figures_text.hpp"
#include "tools/drawing/markup.hpp"
#include "tools/drawing/paper.hpp"
#include "tools/setting_out/drawings.hpp"
#include "tools/setting_out/page_parts.hpp"

namespace dewgap::tools::pages {
namespace {

std::string stop(std::string_view word, std::string_view sentence) {
  return fmt::format("<div class=\"stop\"><p><strong>{}</strong></p><p>{}</p></div>\n", escaped(word),
                     isolated(sentence));
}

std::string page_of_hold(const WindowToSet& window) {
  std::string text = stop("HOLD: no cutting, no drilling",
                          "Settle these first. Until then there is no size to cut and no mark to drill.");
  text += "<h2>Questions to settle</h2>\n";
  for (const auto& gate : window.job->assessment.open_gates)
    text += fmt::format(
        "<h3>{}</h3>\n<p>{} {}</p>\n<p class=\"answer\">Answer: </p>\n", isolated(gate.question),
        gate.answered ? "The answer given holds it." : "Nobody has answered.", isolated(gate.why));
  return text + "<p class=\"answer\">Answered by, date: </p>\n";
}

std::string page_of_leave(const WindowToSet& window) {
  std::string text = stop("LEAVE: nothing to cut", window.job->assessment.because);
  const auto& after = window.job->assessment.after;
  return after.empty() ? text : text + "<h2>What would change it</h2>\n" + plain_list(after);
}

std::string page_of_refusal(const WindowToSet& window) {
  return findings(window) + "<h2>The sheet</h2>\n" +
         stop("Not drawn: it cannot be done as measured", "What stands against it:") +
         tick_list(window.reasons) + "<figure>\n" +
         refused_opening_drawing(window, fmt::format("w{}-opening", window.number)).svg() +
         "<figcaption>The opening as measured, millimetres. No sheet is drawn.</figcaption></figure>\n" +
         "<p>See to these, put what is new in the job and ask again.</p>\n";
}

std::string state_words(WorkState state) {
  switch (state) {
    case WorkState::set_out:
      return "to cut";
    case WorkState::hold:
      return "HOLD: not on this list";
    case WorkState::leave:
      return "LEAVE: not on this list";
    case WorkState::refused:
      return "cannot be done as measured: not on this list";
  }
  return {};
}

std::string windows_table(const JobToSet& job) {
  PaperTable table{"Windows", {"mark", "window", "state", "sheets", "wide, mm", "high, mm"}, {}};
  for (const auto& window : job.windows) {
    const auto& plan = window.plan;
    table.rows.push_back({fmt::format("W{}", window.number), window.title(50), state_words(window.state),
                          plan ? fmt::format("{}", plan->sheet_count) : std::string(),
                          plan ? fmt::format("{}", plan->width_mm) : std::string(),
                          plan ? fmt::format("{}", plan->height_mm) : std::string()});
  }
  return paper_table(table);
}

/// What the words of an item leave to its kind.
std::string_view kind_words(ShoppingKind kind) {
  return kind == ShoppingKind::pilot_bit || kind == ShoppingKind::hole_bit ? "drill bit " : "";
}

std::string shopping(const CutList& list) {
  std::vector<std::string> items;
  for (const auto& item : list.shopping)
    items.push_back(fmt::format("{} x {}{}", item.count, kind_words(item.kind), item.what));
  return "<h2>Shopping list</h2>\n" + tick_list(items);
}

std::string group_title(const CutGroup& group) {
  return fmt::format("{} {} mm: {} {} on {} stock {}, {} m2, {} kg", name_of(group.sheet),
                     figure(group.thickness_mm, group.thickness_mm < 1.0 ? 2 : 1), group.pieces.size(),
                     group.pieces.size() == 1 ? "piece" : "pieces", group.layouts.size(),
                     group.layouts.size() == 1 ? "sheet" : "sheets", figure(group.area_m2, 2),
                     figure(group.weight_kg, 1));
}

std::string groups(const CutList& list) {
  std::string text;
  for (std::size_t i = 0; i < list.groups.size(); ++i) {
    const auto& group = list.groups[i];
    text += fmt::format("<h3>{}</h3>\n<div class=\"stock\">\n", escaped(group_title(group)));
    for (std::size_t layout = 0; layout < group.layouts.size(); ++layout)
      text += fmt::format("<figure>\n{}<figcaption>Stock sheet {} of {}, {} used</figcaption></figure>\n",
                          stock_drawing(group, layout, fmt::format("stock-{}-{}", i + 1, layout + 1)).svg(),
                          layout + 1, group.layouts.size(),
                          escaped(share_text(group.layouts[layout].used_share)));
    text += "</div>\n";
    std::vector<std::string> too_large;
    for (const auto& piece : group.do_not_fit)
      too_large.push_back(fmt::format("{}, {} x {} mm, is larger than the stock sheet.", piece.label,
                                      piece.width_mm, piece.height_mm));
    text += plain_list(too_large);
  }
  return text;
}

}  // namespace

std::string of_unset_window(const WindowToSet& window) {
  std::string text = "<section class=\"page\">\n";
  switch (window.state) {
    case WorkState::hold:
      text += fmt::format("<h1>Setting out {}</h1>\n", isolated_start(window.title(90), 90)) +
              page_of_hold(window);
      break;
    case WorkState::leave:
      text += fmt::format("<h1>Setting out {}</h1>\n", isolated_start(window.title(90), 90)) +
              page_of_leave(window);
      break;
    case WorkState::refused:
    case WorkState::set_out:
      text += heading(window) + page_of_refusal(window);
      break;
  }
  return text + cautions(window) + "</section>\n";
}

std::string of_job(const JobToSet& job) {
  const auto title = job.name.empty() ? std::string() : " for " + isolated_start(job.name, 80);
  std::string text = fmt::format("<section class=\"page\">\n<h1>Cut list{}</h1>\n", title);
  text += windows_table(job);
  text +=
      "<p>The mark is written on each piece, with its top edge. A kerf of 3 mm lies between neighbours; the "
      "layout is a guide, not the best there is.</p>\n";
  return text + groups(*job.cut_list) + shopping(*job.cut_list) + "</section>\n";
}

}  // namespace dewgap::tools::pages
