#include "dewgap/fitting/fit_check.hpp"

#include <algorithm>
#include <iterator>

#include "dewgap/errors.hpp"
#include "dewgap/fitting/fit_findings_kernel.hpp"

namespace dewgap {
namespace {

void require(const std::optional<double>& value, PermittedRange range, std::string_view field) {
  if (value) {
    require_in_range(*value, range, field, "m");
  }
}

void validate(const FitCheckInput& input) {
  constexpr PermittedRange part_m{0.0, 0.3};
  require(input.catch_stands_out_m, part_m, "catch_stands_out_m");
  require(input.handle_stands_out_m, part_m, "handle_stands_out_m");
  require(input.stay_stands_out_m, part_m, "stay_stands_out_m");
  require(input.sheet_back_m, {-0.3, 0.3}, "sheet_back_m");
  require(input.between_sashes_m, {0.0, 0.2}, "between_sashes_m");
  require(input.shutter.clearance_m, {-0.2, 2.0}, "shutter.clearance_m");
  require(input.blind.clearance_m, {-0.2, 2.0}, "blind.clearance_m");
  require(input.fixing_face_m, {0.0, 0.5}, "fixing_face_m");
  require(input.screw_depth_m, {0.0, 0.3}, "screw_depth_m");
  require_in_range(input.sheet_thickness_m, {1e-5, 0.05}, "sheet_thickness_m", "m");
  require_in_range(input.tape_thickness_m, {1e-4, 0.05}, "tape_thickness_m", "m");
  require_in_range(input.sheet_flex_m, {0.0, 0.3}, "sheet_flex_m", "m");
  require_in_range(input.overlap_m, {0.0, 0.2}, "overlap_m", "m");
  for (const double depth_m : input.glass_to_fixing_face_m) {
    require_in_range(depth_m, {0.0, 0.5}, "glass_to_fixing_face_m", "m");
  }
}

}  // namespace

double fitting::sheet_back_m(const FitCheckInput& input) {
  return input.sheet_back_m.value_or(input.tape_thickness_m);
}

std::string_view name_of(FitKind kind) {
  switch (kind) {
    case FitKind::catch_stands_out:
      return "catch";
    case FitKind::handle_stands_out:
      return "handle";
    case FitKind::stay_stands_out:
      return "stay";
    case FitKind::opens:
      return "opening";
    case FitKind::sashes_pass:
      return "sashes passing";
    case FitKind::two_planes:
      return "two planes";
    case FitKind::gap_depth:
      return "gap";
    case FitKind::shutter:
      return "shutter";
    case FitKind::blind:
      return "blind";
    case FitKind::fixing_face:
      return "fixing face";
    case FitKind::timber_depth:
      return "timber depth";
    case FitKind::out_of_square:
      return "out of square";
    case FitKind::taper:
      return "taper";
    case FitKind::bow:
      return "bow";
    case FitKind::diagonals:
      return "diagonals";
  }
  throw InvalidInput("kind of finding", "is not a known one");
}

std::string_view name_of(FitSeverity severity) {
  switch (severity) {
    case FitSeverity::blocks:
      return "blocks";
    case FitSeverity::mind:
      return "mind";
    case FitSeverity::look:
      return "look at this";
    case FitSeverity::fine:
      return "fine";
  }
  throw InvalidInput("severity", "is not a known one");
}

std::vector<FitFinding> fit_check(const FitCheckInput& input) {
  validate(input);
  std::vector<FitFinding> all;
  for (auto&& group : {fitting::findings_of_parts(input), fitting::findings_of_opening(input),
                       fitting::findings_of_hold(input), fitting::findings_of_shape(input)}) {
    all.insert(all.end(), group.begin(), group.end());
  }
  const auto before = [](const FitFinding& a, const FitFinding& b) {
    return a.severity != b.severity ? a.severity < b.severity : a.kind < b.kind;
  };
  std::stable_sort(all.begin(), all.end(), before);
  return all;
}

FitSeverity worst_of(const std::vector<FitFinding>& findings) {
  FitSeverity worst = FitSeverity::fine;
  for (const auto& finding : findings) {
    worst = std::min(worst, finding.severity);
  }
  return worst;
}

}  // namespace dewgap
