// What to cut, mark and fix.
#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <array>

#include "tools/answer/figures_text.hpp"
#include "tools/answer/text_parts_kernel.hpp"

namespace dewgap::tools::parts {
namespace {

std::string cut(const SheetPlan& plan, SheetKind material) {
  const auto thickness = plan.thickness_mm > 0 ? fmt::format("{} mm ", plan.thickness_mm) : std::string();
  return fmt::format("CUT: {}{}, {} mm wide x {} mm high, {} kg.", thickness, name_of(material),
                     plan.width_mm, plan.height_mm, figure(plan.weight_kg, 1));
}

std::string marks(const SheetPlan& plan) {
  return fmt::format("FIX, mm: {} {}, top and bottom at {} from the left, sides at {} from the bottom.",
                     plan.fixing_count, plan.fixing == FixingKind::turn_clips ? "turn clips" : "screws",
                     fmt::join(plan.width_marks_mm, ", "), fmt::join(plan.height_marks_mm, ", "));
}

std::string drilling(const SheetPlan& plan) {
  const auto offset = figure(plan.fixing_offset_mm, 0);
  const auto pilot = fmt::format("pilot {} wide, {} deep", figure(plan.pilot_diameter_mm, 0),
                                 figure(plan.pilot_depth_mm, 0));
  if (plan.fixing == FixingKind::turn_clips)
    return fmt::format("Screws {} outside the sheet's edge; {}.", offset, pilot);
  return fmt::format("{} {} wide, {} inside the edge; {}. Tight screw only on the bottom edge, {} from the left.",
                     plan.slots_needed ? "Slots" : "Holes", figure(plan.hole_diameter_mm, 1), offset, pilot,
                     plan.fixed_mark_mm);
}

/// Where the physics overrode common practice: the reasons less those that tell where a size comes from or
/// what stands above.
std::string overrides(const SheetPlan& plan) {
  constexpr std::array<std::string_view, 3> told{"Width: ", "Height: ", "Tight screw only "};
  std::string all;
  for (const auto& reason : plan.reasons)
    if (std::none_of(told.begin(), told.end(), [&](std::string_view start) { return reason.starts_with(start); }))
      all += " " + reason;
  return all;
}

}  // namespace

void AnswerPage::cut_and_fix() {
  if (!figures().plan || job_.assessment.headline == Headline::leave) return;
  const SheetPlan& plan = *figures().plan;
  paragraph(cut(plan, job_.survey.sheet.material), "", "  ");
  const auto tape = fmt::format("Tape {} m.{}", figure(plan.tape_length_m, 2), overrides(plan));
  if (plan.fixing == FixingKind::tape_only) {
    paragraph("FIX: " + tape, "", "  ");
    return;
  }
  paragraph(marks(plan), "", "  ");
  paragraph(drilling(plan) + " " + tape, "  ", "  ");
}

}  // namespace dewgap::tools::parts
