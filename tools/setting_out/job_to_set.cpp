#include "tools/setting_out/job_to_set.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "tools/answer/plain_text.hpp"
#include "tools/job/units.hpp"

namespace dewgap::tools {
namespace {

std::vector<std::string> questions(const Assessment& assessment) {
  std::vector<std::string> all;
  for (const auto& gate : assessment.open_gates) all.push_back(gate.question);
  return all;
}

void add_once(std::vector<std::string>& list, const std::string& sentence) {
  if (std::find(list.begin(), list.end(), sentence) == list.end()) list.push_back(sentence);
}

/// Everything that stands against cutting and drilling as measured.
std::vector<std::string> refusals(const WindowToSet& window, const std::optional<SheetPlan>& plan) {
  std::vector<std::string> all;
  for (const auto& finding : window.findings)
    if (finding.severity == FitSeverity::blocks) add_once(all, finding.sentence);
  if (!plan) {
    for (const auto& step : window.job->assessment.after) add_once(all, step);
    add_once(all, "The sheet cannot be sized from what was measured.");
    return all;
  }
  const bool told_of_catch =
      std::any_of(window.findings.begin(), window.findings.end(), [](const auto& finding) {
        return finding.kind == FitKind::catch_stands_out && finding.severity == FitSeverity::blocks;
      });
  for (const auto& refusal : plan->refused)
    if (!told_of_catch || refusal.kind != RefusalKind::catch_in_the_way) add_once(all, refusal.sentence);
  if (plan->batten_first) add_once(all, plan->batten_reason);
  return all;
}

void set_out(WindowToSet& window) {
  const auto& survey = window.job->survey;
  const auto& figures = *window.job->assessment.figures;
  auto plan = figures.plan;
  window.findings = fit_check(fit_check_input(survey, plan));
  window.reasons = refusals(window, plan);
  if (!window.reasons.empty()) {
    window.state = WorkState::refused;
    return;
  }
  window.state = WorkState::set_out;
  window.steps = order_of_work(*plan, survey.sheet.material);
  window.plan = std::move(plan);
}

WindowToSet window_to_set(const AnsweredJob& job, std::size_t number) {
  WindowToSet window;
  window.number = number;
  window.name = job.survey.name;
  window.job = &job;
  const auto& assessment = job.assessment;
  if (assessment.headline == Headline::hold || !assessment.figures) {
    window.state = WorkState::hold;
    window.reasons = questions(assessment);
  } else if (assessment.headline == Headline::leave) {
    window.state = WorkState::leave;
    window.reasons = {assessment.because};
    for (const auto& step : assessment.after) window.reasons.push_back(step);
  } else {
    set_out(window);
  }
  return window;
}

}  // namespace

std::string_view json_word(WorkState state) {
  switch (state) {
    case WorkState::set_out:
      return "set_out";
    case WorkState::hold:
      return "hold";
    case WorkState::leave:
      return "leave";
    case WorkState::refused:
      return "refused";
  }
  return "hold";
}

std::string_view name_of(Member member) {
  switch (member) {
    case Member::left:
      return "left";
    case Member::top:
      return "top";
    case Member::right:
      return "right";
    case Member::bottom:
      return "bottom";
  }
  return "left";
}

std::string WindowToSet::title(std::size_t columns) const {
  return one_line(name.empty() ? fmt::format("Window {}", number) : fmt::format("{}: {}", number, name),
                  columns);
}

double tape_thickness_mm(const Survey& survey) {
  constexpr double usual_m = 0.006;  // common practice, no source; as the answer takes it
  return millimetres.from_base(survey.sheet.tape_thickness_m.value_or(usual_m));
}

double tape_width_mm(const Survey& survey) {
  constexpr double usual_m = 0.012;
  return millimetres.from_base(survey.sheet.tape_width_m.value_or(usual_m));
}

JobToSet job_to_set(const AnsweredHouse& house) {
  JobToSet job;
  job.name = house.name;
  std::vector<CutListWindow> to_cut;
  for (const auto& answered : house.windows) {
    job.windows.push_back(window_to_set(answered, job.windows.size() + 1));
    const auto& window = job.windows.back();
    if (window.plan)
      to_cut.push_back({fmt::format("W{}", window.number), answered.survey.sheet.material, *window.plan});
  }
  if (!to_cut.empty()) job.cut_list = cut_list(to_cut);
  return job;
}

}  // namespace dewgap::tools
