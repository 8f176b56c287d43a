#include "dewgap/fitting/sheet_plan.hpp"

#include <algorithm>
#include <cmath>
#include <iterator>

#include "dewgap/errors.hpp"
#include "dewgap/fitting/fixings_kernel.hpp"
#include "dewgap/fitting/movement.hpp"
#include "dewgap/fitting/plan_checks_kernel.hpp"
#include "dewgap/fitting/sheet_size_kernel.hpp"
#include "dewgap/fitting/text_kernel.hpp"

namespace dewgap {
namespace {

constexpr PermittedRange rigid_range_m{0.002, 0.015};
constexpr PermittedRange film_range_m{1e-5, 5e-4};

void validate(const SheetPlanInput& input) {
  if (input.sheet_thickness_m) {
    const bool film = input.sheet == SheetKind::pet_film;
    require_in_range(*input.sheet_thickness_m, film ? film_range_m : rigid_range_m, "sheet_thickness_m", "m");
  }
  if (input.fixing_face_m) {
    require_in_range(*input.fixing_face_m, {0.005, 0.5}, "fixing_face_m", "m");
  }
  if (input.screw_depth_m) {
    require_in_range(*input.screw_depth_m, {0.0, 0.3}, "screw_depth_m", "m");
  }
  require_in_range(input.overlap_m, {0.0, 0.2}, "overlap_m", "m");
  require_in_range(static_cast<double>(input.sheet_count), {1.0, 200.0}, "sheet_count", "");
  require_in_range(input.temperature_range_K, {0.0, 120.0}, "temperature_range_K", "K");
  require_in_range(input.tape_thickness_m, {1e-4, 0.05}, "tape_thickness_m", "m");
  require_in_range(input.tape_width_m, {0.002, 0.06}, "tape_width_m", "m");
  require_in_range(input.relative_humidity_range, {0.0, 1.0}, "relative_humidity_range", "");
  require_in_range(input.catch_stands_out_m.value_or(0.0), {0.0, 0.3}, "catch_stands_out_m", "m");
  require_in_range(input.batten_depth_m, {0.0, 0.2}, "batten_depth_m", "m");
  require_in_range(input.load.gust_Pa, {0.0, 2000.0}, "load.gust_Pa", "Pa");
  require_in_range(input.load.hand_push_N, {0.0, 1000.0}, "load.hand_push_N", "N");
}

/// The thickness given, else the trade's, else what the span needs.
double thickness_m(const SheetPlanInput& input, const std::optional<ThicknessAdvice>& advice) {
  if (input.sheet_thickness_m) {
    return *input.sheet_thickness_m;
  }
  if (!advice) {
    return sheet_properties(input.sheet).usual_thickness_m;
  }
  const double thickest_m = stocked_thicknesses_m(input.sheet).back();
  return std::max(advice->trade_thickness_m, advice->least_thickness_m.value_or(thickest_m));
}

/// Width of a tape laid flush with the sheet's edge, no wider than the overlap that bears it, nor, in a
/// narrow reveal, than half the sheet.
double laid_tape_width_m(const SheetPlanInput& input, const fitting::CutSize& size) {
  const bool in_reveal = input.seat == SheetSeat::inside_reveal;
  const double bearing_m =
      in_reveal ? 0.5e-3 * std::min(size.width_mm, size.height_mm) : size.least_overlap_m;
  return std::min(input.tape_width_m, bearing_m);
}

SheetPlan with_tape(SheetPlan plan, const SheetPlanInput& input, const fitting::CutSize& size) {
  const double wide_m = laid_tape_width_m(input, size);
  // middle line
  plan.tape_length_m = 2e-3 * (size.width_mm + size.height_mm) - 4.0 * wide_m;
  const auto tape = plan_tape({.width_mm = size.width_mm,
                               .height_mm = size.height_mm,
                               .tape_width_mm = wide_m * 1e3,
                               .width_marks_mm = plan.width_marks_mm,
                               .breaks = input.breaks});
  plan.tape_breaks = tape.breaks;
  plan.tape_pieces = tape.pieces;
  plan.tape_pieces_length_m = tape.length_m;
  for (const auto& sentence : tape.refused) {
    plan.refused.push_back({RefusalKind::break_has_no_place, sentence});
  }
  return plan;
}

SheetPlan with_fixings(SheetPlan plan, const fitting::Fixings& fixings) {
  plan.fixing = fixings.kind;
  plan.fixings_per_width = static_cast<int>(fixings.width_marks_mm.size());
  plan.fixings_per_height = static_cast<int>(fixings.height_marks_mm.size());
  plan.fixing_count = 2 * (plan.fixings_per_width + plan.fixings_per_height);
  plan.width_marks_mm = fixings.width_marks_mm;
  plan.height_marks_mm = fixings.height_marks_mm;
  plan.fixing_offset_mm = fixings.offset_m * 1e3;
  plan.hole_diameter_mm = fixings.hole_diameter_m * 1e3;
  plan.slots_needed = fixings.slots_needed;
  plan.slot_length_mm = fixings.slot_length_m * 1e3;
  plan.holes = fitting::holes_of(fixings, plan.width_mm, plan.height_mm);
  plan.refused = fixings.refused;
  plan.fixed_mark_mm = fixings.fixed_mark_mm;
  plan.pilot_diameter_mm = fixings.pilot_diameter_m * 1e3;
  plan.pilot_depth_mm = fixings.pilot_depth_m * 1e3;
  plan.batten_first = !fixings.batten_reason.empty();
  plan.batten_reason = fixings.batten_reason;
  std::copy(fixings.reasons.begin(), fixings.reasons.end(), std::back_inserter(plan.reasons));
  std::copy(fixings.notes.begin(), fixings.notes.end(), std::back_inserter(plan.notes));
  return plan;
}

}  // namespace

SheetPlan plan_sheet(const SheetPlanInput& input) {
  validate(input);
  const auto size = fitting::cut_size(input);
  const double width_m = size.width_mm * 1e-3;
  const double height_m = size.height_mm * 1e-3;
  const auto advice = fitting::span_advice(input, width_m, height_m);
  const double thick_m = thickness_m(input, advice);
  const double longer_m = std::max(width_m, height_m);
  const auto movement = sheet_movement(input.sheet, longer_m, fitting::conditions_of(input));

  SheetPlan plan;
  plan.sheet_count = input.sheet_count;
  plan.width_mm = size.width_mm;
  plan.height_mm = size.height_mm;
  plan.thickness_mm = 1000.0 * thick_m;
  plan.weight_kg = width_m * height_m * thick_m * sheet_properties(input.sheet).density_kg_m3.best;
  plan.movement_mm = movement.thermal_m * 1e3;
  plan.moisture_movement_mm = movement.moisture_m * 1e3;
  plan.out_of_square_mm = size.out_of_square_m * 1e3;
  plan.notes = size.notes;
  if (advice && !input.sheet_thickness_m && longer_m > practice::long_side_m) {
    plan.reasons.push_back("A side is over 2 m: 5 mm sheet.");
  }
  plan = with_fixings(std::move(plan), fitting::fixings_for(input, size));
  if (plan.fixing == FixingKind::screws && plan.pilot_depth_mm > 0.0) {
    plan.screw_length_mm = (thick_m + input.tape_thickness_m) * 1e3 + plan.pilot_depth_mm;
  }
  plan = with_tape(std::move(plan), input, size);
  if (advice) {
    plan = fitting::with_bending(std::move(plan), input, *advice);
  }
  return fitting::with_refusals(std::move(plan), input);
}

}  // namespace dewgap
