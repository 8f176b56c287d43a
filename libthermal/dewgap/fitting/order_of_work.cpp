#include "dewgap/fitting/order_of_work.hpp"

#include <utility>

#include "dewgap/errors.hpp"
#include "dewgap/fitting/text_kernel.hpp"

namespace dewgap {
namespace {

bool has_screws(const SheetPlan& plan) {
  return plan.fixing == FixingKind::screws;
}
bool is_drilled(const SheetPlan& plan) {
  return has_screws(plan) || plan.fixing == FixingKind::turn_clips;
}

void add(std::vector<WorkStep>& steps, WorkStepKind kind, std::string sentence) {
  steps.push_back({kind, std::move(sentence)});
}

void settle(std::vector<WorkStep>& steps, const SheetPlan& plan) {
  for (const auto& refusal : plan.refused) {
    add(steps, WorkStepKind::settle, refusal.sentence);
  }
  if (plan.batten_first) {
    add(steps, WorkStepKind::batten, "Fix the batten, then measure and set out again from it.");
  }
}

void make_ready(std::vector<WorkStep>& steps, const SheetPlan& plan, SheetKind sheet) {
  add(steps, WorkStepKind::clean_and_dry,
      "Choose a dry day: wash glass and frame, let both dry right through, wipe dust off.");
  add(steps, WorkStepKind::cut,
      sheet == SheetKind::pet_film
          ? "Cut the film a hand's breadth larger all round; it is trimmed when it is up."
          : "Cut to " + std::to_string(plan.width_mm) + " x " + std::to_string(plan.height_mm) +
                " mm with the cover film on; smooth the edges; mark the top.");
  if (sheet != SheetKind::pet_film) {
    add(steps, WorkStepKind::dry_fit,
        "Hold the sheet up dry: it lies flat, covers all round, and the window works as it should.");
  }
}

std::string pilot_text(const SheetPlan& plan) {
  const std::string pilots = "Drill pilots " + fitting::fixed_text(plan.pilot_diameter_mm, 1) + " mm wide, ";
  return plan.pilot_depth_mm > 0.0 ? pilots + fitting::fixed_text(plan.pilot_depth_mm, 0) +
                                         " mm deep, with a depth stop on the bit."
                                   : pilots + "only once the timber's depth is measured.";
}

std::string sheet_holes_text(const SheetPlan& plan) {
  const std::string round = fitting::fixed_text(plan.hole_diameter_mm, 1);
  if (!plan.slots_needed) {
    return "Drill the sheet's holes " + round +
           " mm, on wood, slowly, with a bit for plastic; one stays tight.";
  }
  return "Cut the sheet's slots " + round + " x " + fitting::fixed_text(plan.slot_length_mm, 0) +
         " mm on wood, pointing at the tight screw.";
}

void mark_and_drill(std::vector<WorkStep>& steps, const SheetPlan& plan) {
  if (!is_drilled(plan)) {
    return;
  }
  add(steps, WorkStepKind::mark,
      "Mark the fixings in the order of their numbers, clockwise from the bottom left.");
  if (has_screws(plan)) {
    add(steps, WorkStepKind::drill_sheet, sheet_holes_text(plan));
  }
  add(steps, WorkStepKind::drill_pilot, pilot_text(plan));
}

void tape(std::vector<WorkStep>& steps, const SheetPlan& plan, SheetKind sheet) {
  add(steps, WorkStepKind::tape,
      sheet == SheetKind::pet_film
          ? "Stick the tape on the frame all round, corners butted tight, and press it down."
          : "Stick the tape to the sheet's edge: top and bottom right through, sides between, corners "
            "tight.");
  if (!plan.tape_breaks.empty()) {
    add(steps, WorkStepKind::breaks,
        "Leave the " + std::to_string(plan.tape_breaks.size()) +
            (plan.tape_breaks.size() == 1 ? " break" : " breaks") +
            " in the tape open where they are marked; nothing else.");
  }
}

std::string fit_text(const SheetPlan& plan, SheetKind sheet) {
  if (sheet == SheetKind::pet_film) {
    return "Lay the film on from the top, draw it flat, trim it, tighten it as its maker says.";
  }
  switch (plan.fixing) {
    case FixingKind::turn_clips:
      return "Peel the cover film, set the sheet in place, turn the clips: snug, not bent.";
    case FixingKind::screws:
      return "Peel the cover film; the tight screw first, the others with washers, snug but free to slide.";
    case FixingKind::beads:
      return "Peel the cover film, stand the sheet in with the same gap all round, fix the beads.";
    case FixingKind::tape_only:
      return "Peel the cover film, set the bottom edge first, press round by hand.";
  }
  throw InvalidInput("kind of fixing", "is not a known one");
}

void finish(std::vector<WorkStep>& steps, const SheetPlan& plan, SheetKind sheet) {
  add(steps, WorkStepKind::fit, fit_text(plan, sheet));
  add(steps, WorkStepKind::check,
      plan.tape_breaks.empty() ? "Look along the edge with a torch behind it: no light through."
                               : "Look along the edge with a torch behind it: light at the breaks only.");
  add(steps, WorkStepKind::label, "Label it: which window, which way up, the date.");
  add(steps, WorkStepKind::wipe,
      "Wipe with a soft cloth and mild soapy water: never dry, no ammonia or solvent.");
}

}  // namespace

std::vector<WorkStep> order_of_work(const SheetPlan& plan, SheetKind sheet) {
  std::vector<WorkStep> steps;
  settle(steps, plan);
  make_ready(steps, plan, sheet);
  mark_and_drill(steps, plan);
  tape(steps, plan, sheet);
  finish(steps, plan, sheet);
  return steps;
}

}  // namespace dewgap
