#include "tools/answer/text_answer.hpp"

#include <fmt/format.h>

#include <vector>

#include "tools/answer/figures_text.hpp"
#include "tools/answer/text_parts_kernel.hpp"
#include "tools/answer/words.hpp"

namespace dewgap::tools {
namespace parts {

/// What to do stands before the shares it rests on: what to mend first, the tape, then why.
void AnswerPage::verdict() {
  const auto& assessment = job_.assessment;
  const auto name = fmt::format("{}{}", name_of(assessment.headline),
                                assessment.figures && figures().provisional ? " (provisional)" : "");
  if (assessment.headline == Headline::hold || assessment.headline == Headline::leave) {
    paragraph(fmt::format("{}: {}", name, assessment.because), "", "  ");
    for (const auto& step : assessment.after) item(step);
    return;
  }
  const auto& steps = assessment.after;
  paragraph(steps.empty() ? name + "." : fmt::format("{}: {}", name, steps.front()), "", "  ");
  for (std::size_t i = 1; i < steps.size(); ++i) item(steps[i]);
  tape();
  paragraph(assessment.because);
}

void AnswerPage::heading() {
  const auto& assessment = job_.assessment;
  if (!job_.survey.name.empty()) line(job_.survey.name);
  verdict();
  if (assessment.headline == Headline::hold) return;
  const auto& by = job_.survey.settle_first.answered_by;
  line(fmt::format("Safety questions settled{}.",
                   by.empty() ? std::string() : fmt::format(" by {}", one_line(by, 33))));
  few_cases();
}

/// That what was seen leaves few samples, so that ranges are rough.
void AnswerPage::few_cases() {
  constexpr double enough = 20.0;
  if (figures().effective_samples < enough)
    line(fmt::format("Few cases fit all you saw: {}.", figure(figures().effective_samples, 0)));
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

void AnswerPage::cautions(std::string Caution::*wording) {
  std::vector<std::string> all;
  for (const auto& caution : job_.assessment.cautions) all.push_back(caution.*wording);
  list("STOP", all);
}

/// With a year of hours what would change it has told what most hangs on, and perhaps the first look.
void AnswerPage::look_first() {
  if (!is_by_the_year() && !figures().influences.empty())
    line(fmt::format("Most hangs on {}.", figures().influences.front().label));
  std::vector<std::string> looks;
  for (const auto& look : figures().settle_first)
    if (figures().flip.find(look) == std::string::npos) looks.push_back(look);
  if (room_ == RoomOnPage::scarce && !looks.empty())
    looks.resize(looks.size() == figures().settle_first.size() ? 1 : 0);
  list("LOOK FIRST", looks);
}

void AnswerPage::first_frost() {
  if (room_ == RoomOnPage::scarce)
    line("FIRST FROST: drops or wet timber: sheet off, dry, ask again.");
  else
    paragraph(
        "FIRST FROST, next morning: mist on the old glass gone by noon is harmless; drops or wet timber: "
        "sheet off, dry, ask again.",
        "", "  ");
}

/// As many guesses as fit on two lines (one where room is scarce), and how many more.
void AnswerPage::guessed() {
  const std::size_t most_lines = room_ == RoomOnPage::ample ? 2 : 1;
  const auto& list = figures().guessed;
  std::vector<std::string> fitting;
  std::string named;
  for (std::size_t i = 0; i < list.size(); ++i) {
    named += (i == 0 ? "" : "; ") + list[i];
    const std::size_t more = list.size() - i - 1;
    const auto tail = more == 0 ? std::string() : fmt::format("; {} more in --json", more);
    auto lines = wrapped(fmt::format("GUESSED: {}{}.", named, tail), page_columns, "", "  ");
    if (lines.size() > most_lines && i > 0) break;
    fitting = std::move(lines);
  }
  for (const auto& one : fitting) line(one);
}

namespace {

/// The questions that hold, with the cautions in full where the screen has room for them.
std::string page_of_hold(const AnsweredJob& job) {
  constexpr std::size_t most_lines = 40;
  for (const auto wording : {&Caution::say, &Caution::brief}) {
    AnswerPage page(job);
    page.heading();
    page.open_questions();
    page.blank();
    page.cautions(wording);
    if (page.line_count() <= most_lines || wording == &Caution::brief) return page.text();
  }
  return {};
}

AnswerPage page_of_answer(const AnsweredJob& job, RoomOnPage room) {
  AnswerPage page(job, room);
  page.heading();
  for (const auto& warning : weather_warnings(job.weather)) page.paragraph(warning, "", "  ");
  if (job.assessment.headline == Headline::leave) page.tape();
  page.why_this_tape();
  page.look_first();
  page.now_and_with_sheet();
  if (job.weather) page.paragraph(weather_file_sentence(*job.weather), "", "  ");
  page.cut_and_fix();
  page.cautions(&Caution::brief);
  if (job.assessment.headline != Headline::leave) page.first_frost();
  page.guessed();
  return page;
}

}  // namespace
}  // namespace parts

std::string text_answer(const AnsweredJob& job) {
  if (job.assessment.headline == Headline::hold || !job.assessment.figures) return parts::page_of_hold(job);
  constexpr std::size_t most_lines = 44;
  const auto page = parts::page_of_answer(job, parts::RoomOnPage::ample);
  if (page.line_count() <= most_lines) return page.text();
  return parts::page_of_answer(job, parts::RoomOnPage::scarce).text();
}

}  // namespace dewgap::tools
