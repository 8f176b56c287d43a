// What stands past the fixing face, and what hangs in front of it.
#include <algorithm>
#include <cmath>
#include <string>

#include "dewgap/fitting/fit_findings_kernel.hpp"
#include "dewgap/fitting/text_kernel.hpp"

namespace dewgap::fitting {
namespace {

constexpr double part_clear_m = 0.003;  // our convention
constexpr double hung_clear_m = 0.005;

struct Part {
  FitKind kind;
  std::string label;
  std::optional<double> stands_out_m;
};

FitFinding finding(FitKind kind, FitSeverity severity, std::string sentence,
                   std::optional<double> figure_m = std::nullopt) {
  std::optional<double> figure_mm;
  if (figure_m) {
    figure_mm = *figure_m * 1e3;
  }
  return {kind, severity, std::move(sentence), figure_mm};
}

/// What to do about a part that the sheet would lie on.
std::string way_past(SheetSeat seat, double missing_m) {
  const std::string forward = "bring it forward " + whole_mm_text(std::ceil(missing_m * 1e3 - 1e-6) * 1e-3);
  return forward + (seat == SheetSeat::on_sash ? ", or end it short." : ", or take the part off.");
}

FitFinding check_part(const Part& part, const FitCheckInput& input) {
  if (input.seat == SheetSeat::on_panes) {
    return finding(part.kind, FitSeverity::fine, part.label + ": a sheet on the panes leaves it free.");
  }
  if (!part.stands_out_m) {
    return finding(part.kind, FitSeverity::look,
                   part.label + ": measure how far it stands past the fixing face.");
  }
  const double out_m = *part.stands_out_m;
  if (out_m == 0.0) {
    return finding(part.kind, FitSeverity::fine, part.label + ": nothing stands past the fixing face.", 0.0);
  }
  const double left_m = sheet_back_m(input) - input.sheet_flex_m - out_m;
  const std::string stands = part.label + " stands " + tenth_mm_text(out_m) +
                             " out, the sheet's back is at " + tenth_mm_text(sheet_back_m(input));
  if (sheet_back_m(input) < out_m) {
    return finding(part.kind, FitSeverity::blocks,
                   stands + ": " + way_past(input.seat, part_clear_m - left_m), left_m);
  }
  if (left_m < part_clear_m) {
    return finding(part.kind, FitSeverity::mind, stands + ": it may knock when the sheet flexes.", left_m);
  }
  return finding(part.kind, FitSeverity::fine, stands + ": clear.", left_m);
}

FitFinding check_hung(FitKind kind, const std::string& label, const HungPart& part,
                      const FitCheckInput& input) {
  if (!part.there) {
    return finding(kind, FitSeverity::look,
                   label + ": see whether there is one, and its way past the sheet.");
  }
  if (*part.there == HungPart::There::no) {
    return finding(kind, FitSeverity::fine, label + ": none.");
  }
  if (!part.clearance_m) {
    return finding(kind, FitSeverity::look,
                   label + ": measure from the fixing face to its nearest point, in use and on its way.");
  }
  const double needs_m = sheet_back_m(input) + input.sheet_thickness_m;
  const double left_m = *part.clearance_m - needs_m;
  const std::string comes = label + " comes to " + tenth_mm_text(*part.clearance_m) +
                            " of the face, the sheet stands " + tenth_mm_text(needs_m) + " out";
  if (left_m < 0.0) {
    return finding(kind, FitSeverity::blocks, comes + ": they collide.", left_m);
  }
  return left_m < hung_clear_m ? finding(kind, FitSeverity::mind, comes + ": clips may catch it.", left_m)
                               : finding(kind, FitSeverity::fine, comes + ": clear.", left_m);
}

}  // namespace

std::vector<FitFinding> findings_of_parts(const FitCheckInput& input) {
  std::vector<FitFinding> all;
  for (const Part& part : {Part{FitKind::catch_stands_out, "Catch", input.catch_stands_out_m},
                           Part{FitKind::handle_stands_out, "Handle", input.handle_stands_out_m},
                           Part{FitKind::stay_stands_out, "Stay", input.stay_stands_out_m}}) {
    all.push_back(check_part(part, input));
  }
  all.push_back(check_hung(FitKind::shutter, "Shutter", input.shutter, input));
  all.push_back(check_hung(FitKind::blind, "Blind", input.blind, input));
  return all;
}

}  // namespace dewgap::fitting
