#include "dewgap/fitting/plan_checks_kernel.hpp"

#include <algorithm>
#include <utility>

#include "dewgap/errors.hpp"
#include "dewgap/fitting/text_kernel.hpp"

namespace dewgap {

StockSize usual_stock(SheetKind sheet) {
  switch (sheet) {
    case SheetKind::acrylic:
    case SheetKind::polycarbonate:
    case SheetKind::petg:
      return {2.05, 3.05};
    case SheetKind::glass:
      return {2.25, 3.21};
    case SheetKind::pet_film:
      return {1.52, 30.0};
  }
  throw InvalidInput("kind of sheet", "is not a known one");
}

namespace fitting {
namespace {

/// Beyond this many times the limit a sheet is refused; below, membrane action, which is left out, may save
/// it. Our convention.
constexpr double refused_at = 2.0;
constexpr double seen_again_m = 1e-9;

bool fits_stock(const SheetPlan& plan, const StockSize& stock) {
  const auto [short_mm, long_mm] = std::minmax(plan.width_mm, plan.height_mm);
  const auto [narrow_m, wide_m] = std::minmax(stock.width_m, stock.height_m);
  return short_mm * 1e-3 <= narrow_m + seen_again_m && long_mm * 1e-3 <= wide_m + seen_again_m;
}

void require_stock(const StockSize& stock) {
  require_in_range(stock.width_m, {0.1, 100.0}, "stock.width_m", "m");
  require_in_range(stock.height_m, {0.1, 100.0}, "stock.height_m", "m");
}

std::optional<Refusal> check_stock(const SheetPlan& plan, const SheetPlanInput& input) {
  const StockSize stock = input.stock.value_or(usual_stock(input.sheet));
  require_stock(stock);
  if (fits_stock(plan, stock)) {
    return std::nullopt;
  }
  return Refusal{RefusalKind::larger_than_stock,
                 "The sheet is larger than stock, " + whole_mm_text(stock.width_m) + " x " +
                     whole_mm_text(stock.height_m) + ": divide it over a bar or batten."};
}

std::optional<Refusal> check_catch(const SheetPlanInput& input) {
  const bool on_a_face = input.seat == SheetSeat::overlapping || input.seat == SheetSeat::on_sash;
  const double catch_m = input.catch_stands_out_m.value_or(0.0);
  const double back_m = input.tape_thickness_m + input.batten_depth_m;
  if (!on_a_face || catch_m <= back_m) {
    return std::nullopt;
  }
  return Refusal{RefusalKind::catch_in_the_way, "A catch stands " + whole_mm_text(catch_m) +
                                                    " out: bring the sheet forward or end it short."};
}

std::optional<Refusal> check_diagonals(const SheetPlanInput& input) {
  if (opening_shape(input.opening).diagonals_possible) {
    return std::nullopt;
  }
  return Refusal{RefusalKind::diagonals_wrong,
                 "No opening with these sides has these diagonals: measure again."};
}

std::string thicker_text(const ThicknessAdvice& advice) {
  return advice.least_thickness_m ? "take " + whole_mm_text(*advice.least_thickness_m) + "."
                                  : "no stocked sheet is enough; divide it.";
}

}  // namespace

std::optional<ThicknessAdvice> span_advice(const SheetPlanInput& input, double width_m, double height_m) {
  if (input.sheet == SheetKind::pet_film) {
    return std::nullopt;
  }
  return least_thickness(input.sheet, width_m, height_m, input.load);
}

SheetPlan with_bending(SheetPlan plan, const SheetPlanInput& input, const ThicknessAdvice& advice) {
  const double width_m = plan.width_mm * 1e-3;
  const double height_m = plan.height_mm * 1e-3;
  const double thick_m = plan.thickness_mm * 1e-3;
  const auto answer = plate_under_pressure(input.sheet, width_m, height_m, thick_m, input.load.gust_Pa);
  plan.deflection_mm = answer.deflection_m * 1e3;
  plan.deflection_limit_mm = advice.limit_m * 1e3;
  plan.deflection_is_upper_bound = answer.large_deflection;
  plan.push_deflection_mm =
      deflection_under_push_m(input.sheet, width_m, height_m, thick_m, input.load.hand_push_N) * 1e3;
  if (!input.sheet_thickness_m && advice.least_thickness_m && !advice.reason.empty()) {
    plan.reasons.push_back(advice.reason);
    return plan;
  }
  const bool stressed = answer.stress_Pa > design_stress_Pa(input.sheet).best;
  if (answer.deflection_m <= advice.limit_m && !stressed) {
    return plan;
  }
  const std::string sentence =
      bends_text(thick_m, answer.deflection_m, advice.limit_m, input.load.gust_Pa) + thicker_text(advice);
  plan.reasons.push_back(sentence);
  if (answer.deflection_m > refused_at * advice.limit_m || !advice.least_thickness_m) {
    plan.refused.push_back({RefusalKind::too_thin_for_span, sentence});
  }
  return plan;
}

SheetPlan with_refusals(SheetPlan plan, const SheetPlanInput& input) {
  for (const auto& refusal : {check_diagonals(input), check_catch(input), check_stock(plan, input)}) {
    if (refusal) {
      plan.refused.push_back(*refusal);
    }
  }
  return plan;
}

}  // namespace fitting
}  // namespace dewgap
