// Windows whose edge is asked for. Invented.
#pragma once

#include "dewgap/assessment/scenario_kernel.hpp"
#include "survey_cases.hpp"

namespace dewgap::test {

inline Survey drawn_sash() {
  Survey survey = worn_sash_survey();
  survey.edge.work_out = true;
  return survey;
}

/// A steel casement whose sheet stands on the steel. Invented.
inline Survey drawn_steel() {
  Survey survey = drawn_sash();
  survey.window.kind = WindowKind::casement;
  survey.window.frame = FrameKind::steel;
  survey.window.glass_to_fixing_face_m = {};
  survey.sheet.cover = Cover::sash;
  return survey;
}

/// A fixed light whose sheet stands so deep in the reveal that it spares the wall more than the rail loses.
inline Survey drawn_in_reveal() {
  Survey survey = drawn_sash();
  survey.window.kind = WindowKind::fixed_light;
  survey.sheet.cover = Cover::reveal;
  survey.window.glass_to_fixing_face_m = {0.200};
  return survey;
}

inline UnknownValues middle_of(const Setting& setting) {
  UnknownValues middle;
  const auto beliefs = beliefs_for(setting);
  for (std::size_t i = 0; i < unknown_count; ++i) {
    middle.value[i] = beliefs[i].fixed.value_or(beliefs[i].prior.p50);
  }
  return middle;
}

}  // namespace dewgap::test
