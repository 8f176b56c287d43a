// What to cut, mark and fix.
#include <fmt/format.h>
#include <fmt/ranges.h>

#include "tools/answer/figures_text.hpp"
#include "tools/answer/text_parts_kernel.hpp"

namespace dewgap::tools::parts {

void AnswerPage::cut_and_fix() {
  if (!figures().plan || job_.assessment.headline == Headline::leave) return;
  const SheetPlan& plan = *figures().plan;
  const auto thickness = plan.thickness_mm > 0 ? fmt::format("{} mm ", plan.thickness_mm) : std::string();
  blank();
  line("CUT AND FIX, mm");
  item(fmt::format("{}{}: {} wide x {} high, {} kg; grows {} mm in use.", thickness,
                   name_of(job_.survey.sheet.material), plan.width_mm, plan.height_mm,
                   figure(plan.weight_kg, 1), figure(plan.movement_mm, 1)));
  fixings(plan);
  item(fmt::format("Tape {} m once round. {}", figure(plan.tape_length_m, 2), fmt::join(plan.reasons, " ")));
}

void AnswerPage::fixings(const SheetPlan& plan) {
  if (plan.fixing == FixingKind::tape_only) return;
  const bool clips = plan.fixing == FixingKind::turn_clips;
  item(fmt::format("{} {}: top and bottom at {} from the left; sides at {} from the bottom.",
                   plan.fixing_count, clips ? "turn clips" : "screws", fmt::join(plan.width_marks_mm, ", "),
                   fmt::join(plan.height_marks_mm, ", ")));
  auto text = fmt::format("Screws {} {} the sheet's edge; pilot {} wide, {} deep.",
                          figure(plan.fixing_offset_mm, 0), clips ? "outside" : "inside",
                          figure(plan.pilot_diameter_mm, 1), figure(plan.pilot_depth_mm, 0));
  if (!clips)
    text += fmt::format(" {} {} wide; the one tight screw: bottom edge, {} from the left.",
                        plan.slots_needed ? "Slots" : "Holes", figure(plan.hole_diameter_mm, 1),
                        plan.fixed_mark_mm);
  item(text);
}

}  // namespace dewgap::tools::parts
