#include "tools/answer/text_answer.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "tools/answer/figures_text.hpp"
#include "tools/answer/text_parts_kernel.hpp"

namespace dewgap::tools {
namespace parts {

void AnswerPage::heading() {
  const auto& assessment = job_.assessment;
  if (!job_.survey.name.empty()) line(job_.survey.name);
  paragraph(fmt::format("{}: {}", name_of(assessment.headline), assessment.because), "", "  ");
  if (assessment.headline == Headline::hold) return;
  for (const auto& step : assessment.after) item(step);
  const auto& by = job_.survey.settle_first.answered_by;
  paragraph(fmt::format("Settled{}: way out, burning, air, consent, glass.",
                        by.empty() ? std::string() : fmt::format(" by {}", one_line(by, 30))),
            "", "  ");
}

void AnswerPage::open_questions() {
  blank();
  line("SETTLE FIRST");
  for (const auto& gate : job_.assessment.open_gates) {
    item(gate.question);
    paragraph(
        fmt::format("{} {}", gate.answered ? "The answer given holds it." : "Nobody has answered.", gate.why),
        "  ", "  ");
  }
  paragraph("Put the answers under [settle_first] in the job; nothing is worked out before.");
}

void AnswerPage::cautions() {
  if (job_.assessment.cautions.empty()) return;
  blank();
  line("STOP AND THINK");
  const bool held = job_.assessment.headline == Headline::hold;  // a page with room for the whole sentence
  for (const auto& caution : job_.assessment.cautions) item(held ? caution.say : caution.brief);
}

void AnswerPage::look_first() {
  if (figures().settle_first.empty()) return;
  line("LOOK FIRST, a minute each; these decide most");
  for (const auto& look : figures().settle_first) item(look);
}

void AnswerPage::first_frost() {
  paragraph(
      "FIRST FROST: next morning look at the lower corners of the old glass. Mist gone by noon: harmless. "
      "Drops run "
      "or timber wet: sheet off, dry, ask again. Note date, place, humidity.",
      "", "  ");
}

void AnswerPage::guessed() {
  constexpr std::size_t most = 4;
  const auto& list = figures().guessed;
  if (list.empty()) return;
  std::string all;
  for (std::size_t i = 0; i < std::min(most, list.size()); ++i) all += (i == 0 ? "" : "; ") + list[i];
  if (list.size() > most) all += fmt::format("; and {} more, see --json", list.size() - most);
  paragraph(fmt::format("GUESSED: {}.", all), "", "  ");
}

}  // namespace parts

std::string text_answer(const AnsweredJob& job) {
  parts::AnswerPage page(job);
  page.heading();
  if (job.assessment.headline == Headline::hold || !job.assessment.figures) {
    page.open_questions();
    page.cautions();
    return page.text();
  }
  page.tape();
  page.look_first();
  page.now_and_with_sheet();
  page.cut_and_fix();
  page.cautions();
  page.first_frost();
  page.guessed();
  return page.text();
}

}  // namespace dewgap::tools
