// What to cut, mark and fix.
#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <array>

#include "dewgap/fitting/practice.hpp"
#include "dewgap/materials/materials.hpp"
#include "tools/answer/figures_text.hpp"
#include "tools/answer/text_parts_kernel.hpp"
#include "tools/job/units.hpp"

namespace dewgap::tools::parts {
namespace {

std::string cut(const SheetPlan& plan, const SheetSurvey& sheet) {
  const auto count =
      plan.sheet_count == 1 ? std::string() : fmt::format(" {} sheets, each", plan.sheet_count);
  return fmt::format("CUT: {:.3g} mm {},{} {} mm wide x {} mm high, {} kg.", plan.thickness_mm,
                     name_of(sheet.material), count, plan.width_mm, plan.height_mm,
                     figure(plan.weight_kg, 1));
}

/// Without a measured depth of timber there is none to give.
std::string drilling(const SheetPlan& plan) {
  auto text = fmt::format("pilot {} wide", figure(plan.pilot_diameter_mm, 1));
  if (plan.pilot_depth_mm <= 0.0) return text;
  const bool shallow = plan.pilot_depth_mm < millimetres.from_base(practice::pilot_depth_m);
  return text + fmt::format(", {} deep{}", figure(plan.pilot_depth_mm, 0),
                            shallow ? " (3 mm of timber stay behind)" : "");
}

/// How the fixings hold; a hole or slot that had to grow is among the overrides.
std::string fixings(const SheetPlan& plan) {
  const auto offset = figure(plan.fixing_offset_mm, 0);
  if (plan.fixing == FixingKind::turn_clips)
    return fmt::format("{} turn clips, screws {} outside the sheet's edge", plan.fixing_count, offset);
  const bool grown = plan.hole_diameter_mm > millimetres.from_base(practice::hole_diameter_m);
  return fmt::format("{} screws {} inside the sheet's edge{}, only the one at {} on the bottom edge tight",
                     plan.fixing_count, offset,
                     grown || plan.slots_needed
                         ? std::string()
                         : fmt::format(", holes {} wide", figure(plan.hole_diameter_mm, 1)),
                     plan.fixed_mark_mm);
}

std::string marks(const SheetPlan& plan) {
  return fmt::format("top and bottom at {} from left, sides at {} from bottom",
                     fmt::join(plan.width_marks_mm, ", "), fmt::join(plan.height_marks_mm, ", "));
}

/// Where the physics overrode common practice; what stands among the steps to take first is told already.
std::string overrides(const SheetPlan& plan, const std::vector<std::string>& told) {
  std::string all;
  for (const auto& reason : plan.reasons)
    if (std::find(told.begin(), told.end(), reason) == told.end()) all += " " + reason;
  return all;
}

/// Without a fixing: a weep hole, which the tape's line tells, is the only one that may be drilled.
std::string held_by_tape(const SheetSurvey& sheet, VentOption vent) {
  const std::string tape =
      sheet.material == SheetKind::pet_film ? "its tape alone" : "tape or magnetic strip alone";
  return tape + (vent == VentOption::weep_to_outdoors ? ", no hole but the weep holes" : ", nothing drilled");
}

std::string held_by(const SheetPlan& plan, const SheetSurvey& sheet, VentOption vent) {
  switch (plan.fixing) {
    case FixingKind::turn_clips:
    case FixingKind::screws:
      return fmt::format("{}; {}; {}", fixings(plan), marks(plan), drilling(plan));
    case FixingKind::beads:
      return "beads or battens round the reveal, no hole in the sheet";
    case FixingKind::tape_only:
      return held_by_tape(sheet, vent);
  }
  return {};
}

std::string fix(const SheetPlan& plan, const SheetSurvey& sheet, VentOption vent) {
  const bool drilled = plan.fixing == FixingKind::turn_clips || plan.fixing == FixingKind::screws;
  return fmt::format("FIX{}{}: {}. Tape {} m{}.", drilled ? ", mm" : "",
                     plan.sheet_count == 1 ? "" : ", each sheet", held_by(plan, sheet, vent),
                     figure(plan.tape_length_m, 2), plan.sheet_count == 1 ? "" : " a sheet");
}

/// The first reason; the others stand among the steps to take first.
std::string why_not_yet(const std::vector<Mend>& against) {
  if (against.empty()) return "see above.";
  const auto more = against.size() - 1;
  return against.front().say + (more == 0 ? std::string() : fmt::format(" And {} more, above.", more));
}

}  // namespace

void AnswerPage::cut_and_fix() {
  if (job_.assessment.headline == Headline::leave) return;
  const auto& cut_check = figures().cut;
  if (!may_be_cut(job_.assessment)) {
    paragraph("DO NOT CUT YET: " + why_not_yet(cut_check.against), "", "  ");
    return;
  }
  const SheetPlan& plan = *figures().plan;
  paragraph(cut(plan, job_.survey.sheet), "", "  ");
  paragraph(fix(plan, job_.survey.sheet, figures().vent) + overrides(plan, job_.assessment.after), "", "  ");
  if (cut_check.sun.severity == FitSeverity::mind) paragraph("SUN: " + cut_check.sun.sentence, "", "  ");
}

}  // namespace dewgap::tools::parts
