// A step solved until flows and timber are those of its own end.
#include <algorithm>
#include <cmath>

#include "dewgap/gap/hour_kernel.hpp"

namespace dewgap::gap_kernel {

template <std::size_t Panes>
typename GapHours<Panes>::Guess GapHours<Panes>::predict(const HourConditions& given, Terms& terms) {
  if constexpr (Panes == 2) {
    if (!past_known_) {
      air_before_ = passing_air(given, past_.gap_C);
      linearise_timber(given, terms,
                       {.gap_C = past_.gap_C, .pane_C = past_.gap_C, .vapour_Pa = store_.vapour_Pa});
    }
    set_air(given, air_before_, terms);
  }
  const auto prediction = drawn_ ? night_->predict(terms) : day_.predict(terms);
  if constexpr (Panes == 2) {
    return guess_of(prediction.face_K, prediction.gap_air_K, vapour_at(terms, prediction.face_K));
  }
  return {};
}

template <std::size_t Panes>
VapourAtEnd GapHours<Panes>::vapour_at(const Terms& terms,
                                       const std::array<double, 2 * Panes>& face_K) const {
  return terms.gap_vapour(celsius(face_K[1]), celsius(face_K[2 * Panes - 2])).end;
}

template <std::size_t Panes>
typename GapHours<Panes>::Guess GapHours<Panes>::guess_of(const std::array<double, 2 * Panes>& face_K,
                                                          double gap_air_K, const VapourAtEnd& vapour) const {
  return {.gap_C = celsius(gap_air_K), .pane_C = celsius(face_K[1]), .vapour_Pa = vapour.vapour_Pa};
}

template <std::size_t Panes>
typename GapHours<Panes>::Pass GapHours<Panes>::solve_pass(const HourConditions& given, const Terms& terms,
                                                           const Guess& guess) {
  Pass pass{.guess = guess, .air = passing_air(given, guess.gap_C), .terms = terms};
  if constexpr (Panes == 2) {
    linearise_timber(given, terms, guess);
    set_air(given, pass.air, pass.terms);
  }
  pass.heat = drawn_ ? night_->solve(pass.terms, newton_) : day_.solve(pass.terms, newton_);
  if constexpr (Panes == 2) {
    if (pass.settled()) {
      pass.vapour = vapour_at(pass.terms, pass.heat.face_K);
      pass.found = guess_of(pass.heat.face_K, pass.heat.gap_air_K, pass.vapour);
    }
  }
  return pass;
}

/// Whether what the pass found is what it guessed, as far as flows and timber depend on it.
template <std::size_t Panes>
bool GapHours<Panes>::is_as_guessed(const Pass& pass) const {
  constexpr double permitted_miss_K = 0.05;
  constexpr double permitted_timber_miss_K = 0.1;
  constexpr double permitted_timber_miss_Pa = 10.0;
  const bool flows = std::abs(pass.miss_K()) <= permitted_miss_K;
  const bool timber =
      !timber_ || (std::abs(pass.found.pane_C - pass.guess.pane_C) <= permitted_timber_miss_K &&
                   std::abs(pass.found.vapour_Pa - pass.guess.vapour_Pa) <= permitted_timber_miss_Pa);
  return flows && timber;
}

/// The pass that finds what it guessed: first by the prediction, then by the secant. At most five passes;
/// near balanced columns the last is taken.
template <std::size_t Panes>
typename GapHours<Panes>::Pass GapHours<Panes>::solve_passes(const HourConditions& given) {
  constexpr int most_passes = 5;
  auto terms = terms_for(given);
  if constexpr (Panes == 2) {
    add_surfaces(given, terms);
  }
  auto pass = solve_pass(given, terms, predict(given, terms));
  if constexpr (Panes == 2) {
    int steps = pass.heat.newton_steps;
    double before_C = 0.0;
    double before_miss_K = 0.0;
    for (int i = 1; i < most_passes && pass.settled() && !is_as_guessed(pass); ++i) {
      const double miss_K = pass.miss_K();
      const double by_secant = (pass.guess.gap_C - before_C) / (before_miss_K - miss_K);
      // With negative feedback the share is below one; a first try takes half.
      const double share = i == 1 || !std::isfinite(by_secant) ? 0.5 : std::clamp(by_secant, 0.02, 1.5);
      before_C = pass.guess.gap_C;
      before_miss_K = miss_K;
      pass = solve_pass(given, terms,
                        {.gap_C = pass.guess.gap_C + share * miss_K,
                         .pane_C = pass.found.pane_C,
                         .vapour_Pa = pass.found.vapour_Pa});
      steps += pass.heat.newton_steps;
    }
    pass.heat.newton_steps = steps;
  }
  return pass;
}

template GapHours<1>::Pass GapHours<1>::solve_passes(const HourConditions&);
template GapHours<2>::Pass GapHours<2>::solve_passes(const HourConditions&);

}  // namespace dewgap::gap_kernel
