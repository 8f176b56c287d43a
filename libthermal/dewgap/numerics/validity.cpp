#include "dewgap/validity.hpp"

namespace dewgap {

std::string_view explain(ValidityFlag flag) {
  switch (flag) {
    case ValidityFlag::none:
      return "every correlation was used inside its validated range";
    case ValidityFlag::gap_aspect_ratio:
      return "the gap's height to width ratio lies outside the range of the gap correlation";
    case ValidityFlag::gap_rayleigh_number:
      return "the gap's Rayleigh number lies outside the range of the gap correlation";
    case ValidityFlag::gap_jump_blended:
      return "the gap lies in a band where a jump of the published correlation was blended";
    case ValidityFlag::gap_wide_correlations_differ:
      return "the gap is wider than 50 mm, where published correlations disagree";
    case ValidityFlag::room_film_rayleigh_number:
      return "the room-side film's Rayleigh number lies outside the range of its correlation";
    case ValidityFlag::tilt_untested:
      return "the gap is tilted: its correlation is from memory and checked by limits only";
    case ValidityFlag::film_transmits_long_wave:
      return "a film passes long-wave radiation, so the U-value depends on what stands behind it";
    case ValidityFlag::radiant_asymmetry_range:
      return "the radiant asymmetry lies beyond the range of the cool-wall curve";
    case ValidityFlag::downdraught_range:
      return "the window's height or coldness lies outside the range of the downdraught correlation";
    case ValidityFlag::downdraught_over_sill:
      return "the window stands on a sill, so the downdraught at the floor is an upper bound";
    case ValidityFlag::draught_rating_range:
      return "air temperature, speed or turbulence lies outside the range of the draught rating";
    case ValidityFlag::mean_vote_range:
      return "the conditions lie outside the range of the predicted mean vote";
  }
  return "unknown flag";
}

std::string_view explain(SolveStatus status) {
  switch (status) {
    case SolveStatus::converged:
      return "converged";
    case SolveStatus::iteration_limit:
      return "did not converge within the permitted iterations";
    case SolveStatus::no_bracket:
      return "no sign change: the equation has no root in the permitted range";
    case SolveStatus::singular:
      return "the equations are singular";
  }
  return "unknown status";
}

}  // namespace dewgap
