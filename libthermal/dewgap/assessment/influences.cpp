#include <algorithm>
#include <cmath>

#include "dewgap/assessment/summary_kernel.hpp"
#include "dewgap/numerics/sampling.hpp"

namespace dewgap {
namespace {

bool spoken_of(Unknown unknown, const std::vector<EvidenceTerm>& evidence) {
  return std::any_of(evidence.begin(), evidence.end(), [unknown](const EvidenceTerm& term) {
    return term.use.used && term.speaks_of == unknown;
  });
}

double squared_rank_correlation(const std::vector<double>& x, const std::vector<double>& y,
                                const std::vector<double>& weights) {
  const double rho = numerics::weighted_rank_correlation(x, y, weights);
  return rho * rho;
}

}  // namespace

std::vector<Influence> influences_of(const Beliefs& beliefs, const std::vector<EvidenceTerm>& evidence,
                                     const WeightedRuns& runs, VentOption chosen) {
  std::vector<double> saving;
  std::vector<double> margin;
  for (const auto& f : runs.figures) {
    saving.push_back(f.saved.total_kWh());
    margin.push_back(f.options[index_of(chosen)].month.margin_K);
  }
  std::vector<Influence> influences;
  for (std::size_t j = 0; j < steady_unknown_count; ++j) {
    const auto unknown = static_cast<Unknown>(j);
    std::vector<double> values;
    for (const auto& sample : runs.samples) {
      values.push_back(sample[unknown]);
    }
    const bool looked_at = spoken_of(unknown, evidence) || beliefs[j].basis == Basis::measured ||
                           beliefs[j].basis == Basis::described;
    influences.push_back({.unknown = unknown,
                          .label = beliefs[j].prior.label,
                          .settle_by = beliefs[j].prior.settle_by,
                          .guessed = !looked_at,
                          .on_saving = squared_rank_correlation(values, saving, runs.weights),
                          .on_dryness = squared_rank_correlation(values, margin, runs.weights)});
  }
  std::stable_sort(influences.begin(), influences.end(), [](const Influence& a, const Influence& b) {
    return std::max(a.on_saving, a.on_dryness) > std::max(b.on_saving, b.on_dryness);
  });
  return influences;
}

}  // namespace dewgap
