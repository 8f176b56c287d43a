// What to cut, mark and fix.
#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <array>

#include "dewgap/fitting/practice.hpp"
#include "tools/answer/figures_text.hpp"
#include "tools/answer/text_parts_kernel.hpp"
#include "tools/job/units.hpp"

namespace dewgap::tools::parts {
namespace {

std::string cut(const SheetPlan& plan, SheetKind material) {
  const auto thickness = plan.thickness_mm > 0 ? fmt::format("{} mm ", plan.thickness_mm) : std::string();
  return fmt::format("CUT: {}{}, {} mm wide x {} mm high, {} kg.", thickness, name_of(material),
                     plan.width_mm, plan.height_mm, figure(plan.weight_kg, 1));
}

std::string drilling(const SheetPlan& plan) {
  const bool shallow = plan.pilot_depth_mm < millimetres.from_base(practice::pilot_depth_m);
  return fmt::format("pilot {} wide, {} deep{}", figure(plan.pilot_diameter_mm, 1),
                     figure(plan.pilot_depth_mm, 0), shallow ? " (the timber ends there)" : "");
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

/// Where the physics overrode common practice.
std::string overrides(const SheetPlan& plan) {
  std::string all;
  for (const auto& reason : plan.reasons) all += " " + reason;
  return all;
}

}  // namespace

void AnswerPage::cut_and_fix() {
  if (!figures().plan || job_.assessment.headline == Headline::leave) return;
  const SheetPlan& plan = *figures().plan;
  paragraph(cut(plan, job_.survey.sheet.material), "", "  ");
  const auto tape = fmt::format("Tape {} m.{}", figure(plan.tape_length_m, 2), overrides(plan));
  if (plan.fixing == FixingKind::tape_only)
    paragraph("FIX: " + tape, "", "  ");
  else
    paragraph(fmt::format("FIX, mm: {}; {}; {}. {}", fixings(plan), marks(plan), drilling(plan), tape), "",
              "  ");
}

}  // namespace dewgap::tools::parts
