// What has to be mended at a window before a sheet is fitted: rain, wet or soft timber, a catch in the way,
// what the sheet cannot be set out without.
#pragma once

#include <string>
#include <vector>

#include "dewgap/assessment/survey.hpp"

namespace dewgap {

enum class MendKind {
  water,       ///< rain that gets in, timber that is wet: no tape mends it
  window,      ///< soft timber, a pool on the sill
  obstacle,    ///< in the sheet's way
  setting_out  ///< to be measured or built before a sheet can be cut: nothing once one hangs
};

struct Mend {
  MendKind kind = MendKind::water;
  std::string say;  ///< a sentence
};

/// In the order in which to do them; empty when nothing stands in the way. For a valid survey.
std::vector<Mend> mends_before_fitting(const Survey& survey);
/// The sentences of the same.
std::vector<std::string> mend_first(const Survey& survey);

}  // namespace dewgap
