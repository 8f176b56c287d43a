#include "calibration/staged.hpp"

#include <algorithm>
#include <cmath>

#include "dewgap/assessment/vent_choice_kernel.hpp"
#include "dewgap/numerics/sampling.hpp"

namespace dewgap::calibration {
namespace {

/// Places from 1 by falling share; equal ones share the mean of their places.
std::vector<double> places_by(const std::vector<double>& share) {
  std::vector<double> places;
  for (const double own : share) {
    const auto above = std::count_if(share.begin(), share.end(), [own](double s) { return s > own; });
    const auto level = std::count(share.begin(), share.end(), own);
    places.push_back(static_cast<double>(above) + 0.5 * static_cast<double>(level + 1));
  }
  return places;
}

void rank_best(const VentChoice& choice, const std::vector<bool>& truly_best, Claims& claims) {
  const auto places = places_by(choice.best_share);
  double sum = 0.0;
  double count = 0.0;
  for (std::size_t j = 0; j < places.size(); ++j) {
    sum += truly_best[j] ? places[j] : 0.0;
    count += truly_best[j] ? 1.0 : 0.0;
    claims.best_share_of_best += truly_best[j] ? choice.best_share[j] : 0.0;
  }
  claims.best_share_of_best /= count;
  claims.rank_of_best = sum / count;
  claims.place_by_chance = 0.5 * static_cast<double>(places.size() + 1);
  const auto first = std::max_element(choice.best_share.begin(), choice.best_share.end());
  claims.first_is_best = truly_best[static_cast<std::size_t>(first - choice.best_share.begin())];
}

std::vector<double> sum_of(const std::vector<double>& a, const std::vector<double>& b) {
  std::vector<double> sum(a.size());
  std::transform(a.begin(), a.end(), b.begin(), sum.begin(), std::plus<>());
  return sum;
}

}  // namespace

std::vector<double> weights_of_cases(std::size_t first_case, const std::vector<double>& log_likelihood) {
  const auto first = log_likelihood.begin() + static_cast<std::ptrdiff_t>(first_case);
  const double top = *std::max_element(first, log_likelihood.end());
  std::vector<double> weights(log_likelihood.size(), 0.0);
  double sum = 0.0;
  for (std::size_t i = first_case; i < weights.size(); ++i) {
    weights[i] = std::exp(log_likelihood[i] - top);
    sum += weights[i];
  }
  for (double& weight : weights) {
    weight /= sum;
  }
  return weights;
}

Claims claims_of(const BankPart& part, std::size_t truth, std::size_t first_case,
                 const std::vector<double>& log_likelihood) {
  const auto& options = part.scene->options;
  const auto weights = weights_of_cases(first_case, log_likelihood);
  const auto choice = choose(part.years, weights, options);
  const auto& year = part.years[truth];
  Claims claims{.effective = numerics::effective_sample_size(weights)};
  for (std::size_t j = 0; j < options.size(); ++j) {
    claims.acceptable.at(place_of(options[j])) =
        Claim{choice.acceptable_share[j], is_acceptable(year_of(year, options[j]))};
  }
  claims.chosen = {choice.share(), is_acceptable(year_of(year, choice.choice))};
  rank_best(choice, winners(year, options), claims);
  return claims;
}

std::vector<Claims> staged_claims(const BankPart& part, std::size_t truth, std::size_t first_case,
                                  const Observed& observed, Weighing weighing, Hearing hearing) {
  std::vector<double> so_far(part.samples.size(), 0.0);
  std::vector<Claims> all;
  for (const auto stage : all_stages) {
    const auto& found = observed.evidence.at(stage);
    const auto with = sum_of(so_far, weighing == Weighing::stated ? found.stated : found.chance);
    all.push_back(claims_of(part, truth, first_case, with));
    if (hearing == Hearing::all_so_far &&
        stage != Stage::winter_mist) {  // the two kinds of winter reading are alternatives
      so_far = with;
    }
  }
  return all;
}

}  // namespace dewgap::calibration
