// What still moves with the sheet on, and the gaps behind it.
#include <algorithm>
#include <cmath>
#include <string>

#include "dewgap/fitting/fit_findings_kernel.hpp"
#include "dewgap/fitting/text_kernel.hpp"

namespace dewgap::fitting {
namespace {

constexpr double passing_clear_m = 0.002;  // our convention
constexpr double least_gap_m = 0.006;
constexpr double one_plane_m = 0.005;

bool moves_with_the_sash(SheetSeat seat) {
  return seat == SheetSeat::on_sash || seat == SheetSeat::on_panes;
}

bool slides(const FitCheckInput& input) {
  return input.opening_way == OpeningWay::slides_up_and_down ||
         input.opening_way == OpeningWay::slides_sideways;
}

FitFinding check_opens(const FitCheckInput& input) {
  const auto say = [](FitSeverity severity, std::string sentence) {
    return FitFinding{FitKind::opens, severity, std::move(sentence), {}};
  };
  if (!input.opening_way) {
    return say(FitSeverity::look, "See which way the window opens: a sheet on the frame stops it.");
  }
  if (*input.opening_way == OpeningWay::does_not_open) {
    return say(FitSeverity::fine, "The window does not open: the sheet stops nothing.");
  }
  if (moves_with_the_sash(input.seat)) {
    return say(FitSeverity::fine, "The sheet moves with the sash: the window still opens.");
  }
  if (*input.opening_way == OpeningWay::swings_outwards) {
    return say(FitSeverity::mind,
               "Swings outwards behind the sheet, but its catch is reached only with the sheet off.");
  }
  return say(FitSeverity::mind,
             *input.opening_way == OpeningWay::swings_inwards
                 ? "Swings inwards against the sheet: it opens only with the sheet off."
                 : "Slides behind the sheet out of reach: it opens only with the sheet off.");
}

FitFinding check_sashes_pass(const FitCheckInput& input) {
  if (!input.between_sashes_m) {
    return {FitKind::sashes_pass,
            FitSeverity::look,
            "Measure the free depth between the two sashes: the outer one's sheet has to pass the inner.",
            {}};
  }
  const double needs_m = sheet_back_m(input) + input.sheet_thickness_m;
  const double left_m = *input.between_sashes_m - needs_m;
  const std::string depth = "The outer sash's sheet stands " + tenth_mm_text(needs_m) + " out, " +
                            tenth_mm_text(*input.between_sashes_m) + " is free between the sashes";
  return left_m < passing_clear_m
             ? FitFinding{FitKind::sashes_pass, FitSeverity::blocks, depth + ": they no longer pass.",
                          left_m * 1e3}
             : FitFinding{FitKind::sashes_pass, FitSeverity::fine, depth + ": they pass.", left_m * 1e3};
}

FitFinding check_two_planes(const FitCheckInput& input) {
  const auto& depths_m = input.glass_to_fixing_face_m;
  if (depths_m.size() < 2) {
    return {FitKind::two_planes,
            FitSeverity::look,
            "Measure glass to fixing face on each sash: they stand in different planes.",
            {}};
  }
  const auto [least, most] = std::minmax_element(depths_m.begin(), depths_m.end());
  const double step_m = *most - *least;
  const std::string gaps = "Gaps of " + whole_mm_text(*least + sheet_back_m(input)) + " and " +
                           whole_mm_text(*most + sheet_back_m(input));
  if (step_m <= one_plane_m) {
    return {FitKind::two_planes, FitSeverity::fine, gaps + ": as good as one plane.", step_m * 1e3};
  }
  return {FitKind::two_planes, FitSeverity::mind,
          gaps + ", a step of " + whole_mm_text(step_m) + " at the meeting rail: air passes between them.",
          step_m * 1e3};
}

FitFinding check_gap(const FitCheckInput& input) {
  const auto& depths_m = input.glass_to_fixing_face_m;
  if (depths_m.empty()) {
    return {FitKind::gap_depth, FitSeverity::look, "Measure from the glass to the fixing face.", {}};
  }
  const double gap_m = *std::min_element(depths_m.begin(), depths_m.end()) + sheet_back_m(input);
  const double left_m = gap_m - input.sheet_flex_m;
  const std::string gap = "Gap of " + tenth_mm_text(gap_m) + " behind the sheet";
  if (gap_m <= 0.0) {
    return {FitKind::gap_depth, FitSeverity::blocks, "The glass stands where the sheet would be.",
            gap_m * 1e3};
  }
  if (left_m < least_gap_m) {
    return {FitKind::gap_depth, FitSeverity::mind,
            gap + ", " + tenth_mm_text(std::max(left_m, 0.0)) + " left in a gust: it may touch the glass.",
            left_m * 1e3};
  }
  return {FitKind::gap_depth, FitSeverity::fine, gap + ": enough.", left_m * 1e3};
}

}  // namespace

std::vector<FitFinding> findings_of_opening(const FitCheckInput& input) {
  std::vector<FitFinding> all{check_opens(input)};
  if (slides(input)) {
    all.push_back(moves_with_the_sash(input.seat) ? check_sashes_pass(input) : check_two_planes(input));
  }
  all.push_back(check_gap(input));
  return all;
}

}  // namespace dewgap::fitting
