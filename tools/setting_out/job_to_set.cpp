#include "tools/setting_out/job_to_set.hpp"

#include <fmt/format.h>

#include "tools/answer/plain_text.hpp"
#include "tools/job/units.hpp"

namespace dewgap::tools {
namespace {

std::vector<std::string> questions(const Assessment& assessment) {
  std::vector<std::string> all;
  for (const auto& gate : assessment.open_gates) all.push_back(gate.question);
  return all;
}

void set_out(WindowToSet& window) {
  const auto& survey = window.job->survey;
  const auto& figures = *window.job->assessment.figures;
  window.findings = figures.cut.findings;
  window.sun = figures.cut.sun;
  for (const auto& mend : figures.cut.against) window.reasons.push_back(mend.say);
  if (!may_be_cut(window.job->assessment)) {
    if (window.reasons.empty()) window.reasons.push_back("The sheet cannot be sized from what was measured.");
    window.state = WorkState::refused;
    return;
  }
  window.state = WorkState::set_out;
  window.plan = figures.plan;
  window.steps = order_of_work(*window.plan, survey.sheet.material);
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
      to_cut.push_back({fmt::format("W{}", window.number), answered.survey.sheet.material, *window.plan,
                        answered.survey.sheet.stock});
  }
  if (!to_cut.empty()) job.cut_list = cut_list(to_cut);
  return job;
}

}  // namespace dewgap::tools
