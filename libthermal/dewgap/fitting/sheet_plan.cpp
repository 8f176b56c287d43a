#include "dewgap/fitting/sheet_plan.hpp"

#include <algorithm>
#include <cmath>
#include <iterator>

#include "dewgap/errors.hpp"
#include "dewgap/fitting/fixings_kernel.hpp"
#include "dewgap/fitting/movement.hpp"
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
}

double thickness_m(const SheetPlanInput& input, double longer_side_m) {
  if (input.sheet_thickness_m) {
    return *input.sheet_thickness_m;
  }
  if (input.sheet == SheetKind::pet_film) {
    return sheet_properties(input.sheet).usual_thickness_m;
  }
  return longer_side_m > practice::long_side_m ? practice::long_sheet_thickness_m
                                               : practice::sheet_thickness_m;
}

/// Middle line of a tape laid flush with the sheet's edge, no wider than the overlap that bears it.
double tape_length_m(const SheetPlanInput& input, const fitting::CutSize& size) {
  const bool in_reveal = input.seat == SheetSeat::inside_reveal;
  const double wide_m = in_reveal ? input.tape_width_m : std::min(input.tape_width_m, size.least_overlap_m);
  return 2e-3 * (size.width_mm + size.height_mm) - 4.0 * wide_m;
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

MeasuredOpening visible_glass(double width_m, double height_m) {
  return {.widths_m = {width_m, width_m, width_m},
          .heights_m = {height_m, height_m, height_m},
          .diagonals_m = {}};
}

SheetPlan plan_sheet(const SheetPlanInput& input) {
  validate(input);
  const auto size = fitting::cut_size(input);
  const double width_m = size.width_mm * 1e-3;
  const double height_m = size.height_mm * 1e-3;
  const double longer_m = std::max(width_m, height_m);
  const double thick_m = thickness_m(input, longer_m);

  SheetPlan plan;
  plan.sheet_count = input.sheet_count;
  plan.width_mm = size.width_mm;
  plan.height_mm = size.height_mm;
  plan.thickness_mm = 1000.0 * thick_m;
  plan.weight_kg = width_m * height_m * thick_m * sheet_properties(input.sheet).density_kg_m3.best;
  plan.movement_mm = thermal_movement_m(input.sheet, longer_m, input.temperature_range_K) * 1e3;
  plan.tape_length_m = tape_length_m(input, size);
  plan.out_of_square_mm = size.out_of_square_m * 1e3;
  plan.notes = size.notes;
  if (!input.sheet_thickness_m && input.sheet != SheetKind::pet_film && longer_m > practice::long_side_m) {
    plan.reasons.push_back("A side is over 2 m: 5 mm sheet.");
  }
  plan = with_fixings(std::move(plan), fitting::fixings_for(input, size));
  if (plan.fixing == FixingKind::screws && plan.pilot_depth_mm > 0.0) {
    plan.screw_length_mm = (thick_m + input.tape_thickness_m) * 1e3 + plan.pilot_depth_mm;
  }
  return plan;
}

}  // namespace dewgap
