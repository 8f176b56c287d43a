// What has to be mended at a window before a sheet is fitted: rain, wet or soft timber, what is in the way,
// what the sheet cannot be cut without.
#pragma once

#include <string>
#include <vector>

#include "dewgap/assessment/survey.hpp"
#include "dewgap/assessment/vent_option.hpp"

namespace dewgap {

enum class MendKind {
  water,       ///< rain that gets in, timber that is wet: no tape mends it
  window,      ///< soft timber, a pool on the sill
  obstacle,    ///< in the sheet's way
  setting_out  ///< to be measured, built or chosen before a sheet can be cut: nothing once one hangs
};

struct Mend {
  MendKind kind = MendKind::water;
  std::string say;  ///< a sentence
};

/// In the order in which to do them, the last ones those of cut_check; empty when nothing stands in the way.
/// For a valid survey, and the tape made as `vent` has it.
std::vector<Mend> mends_before_fitting(const Survey& survey, VentOption vent = VentOption::sealed);
/// The sentences of the same.
std::vector<std::string> mend_first(const Survey& survey, VentOption vent = VentOption::sealed);

}  // namespace dewgap
