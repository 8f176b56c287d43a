#include "dewgap/fitting/sun_heat.hpp"

#include "dewgap/errors.hpp"
#include "dewgap/fitting/text_kernel.hpp"

namespace dewgap {
namespace {

constexpr double near_K = 10.0;

std::string sentence_of(const SunFinding& finding) {
  const std::string reaches = "In full sun the sheet reaches about " +
                              fitting::fixed_text(finding.temperature_C, 0) + " C, it bears " +
                              fitting::fixed_text(finding.limit_C, 0) + " C";
  switch (finding.severity) {
    case FitSeverity::blocks:
      return reaches + ": another material, or no blind near it.";
    case FitSeverity::mind:
      return reaches + ": keep radiators and blinds off it.";
    case FitSeverity::look:
    case FitSeverity::fine:
      return reaches + ".";
  }
  return reaches + ".";
}

}  // namespace

double lasting_limit_C(SheetKind sheet, SheetGrade grade) {
  const auto range = lasting_temperature_range_C(sheet);
  if (sheet != SheetKind::acrylic) {
    return range.low;
  }
  switch (grade) {
    case SheetGrade::not_known:
    case SheetGrade::extruded:
      return range.best;
    case SheetGrade::cast:
      return range.high;
  }
  throw InvalidInput("grade of sheet", "is not a known one");
}

SunFinding sun_finding(double temperature_C, SheetKind sheet, SheetGrade grade) {
  require_in_range(temperature_C, {-60.0, 200.0}, "temperature_C", "C");
  SunFinding finding{
      .sentence = {}, .temperature_C = temperature_C, .limit_C = lasting_limit_C(sheet, grade)};
  finding.margin_K = finding.limit_C - temperature_C;
  finding.severity = finding.margin_K < 0.0      ? FitSeverity::blocks
                     : finding.margin_K < near_K ? FitSeverity::mind
                                                 : FitSeverity::fine;
  finding.sentence = sentence_of(finding);
  return finding;
}

}  // namespace dewgap
