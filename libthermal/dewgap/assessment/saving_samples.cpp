#include "dewgap/assessment/saving_samples_kernel.hpp"
#include "dewgap/numerics/sampling.hpp"

namespace dewgap {
namespace {

/// Fills in the correlations of a figure whose values are there.
SampledFigure with_correlations(SampledFigure figure, const WeightedRuns& runs) {
  for (std::size_t j = 0; j < steady_unknown_count; ++j) {
    std::vector<double> unknown;
    unknown.reserve(runs.samples.size());
    for (const auto& sample : runs.samples) {
      unknown.push_back(sample[static_cast<Unknown>(j)]);
    }
    figure.rank_correlation[j] = numerics::weighted_rank_correlation(unknown, figure.values, runs.weights);
  }
  return figure;
}

}  // namespace

SavingSamples saving_samples_of(const WeightedRuns& runs, VentOption chosen, const Survey& survey) {
  SavingSamples samples;
  samples.weights = runs.weights;
  for (std::size_t i = 0; i < runs.figures.size(); ++i) {
    const auto& figures = runs.figures[i];
    const double cut_m3_h =
        figures.draught_before_m3_h - figures.options[index_of(chosen)].draught_after_m3_h;
    samples.heat_saved_kWh.values.push_back(heat_saved_kWh(figures, chosen, survey));
    samples.draught_cut_m3_h.values.push_back(cut_m3_h);
    samples.ventilation_needed_m3_h.values.push_back(cut_m3_h * runs.samples[i][Unknown::draught_needed]);
  }
  for (auto* figure :
       {&samples.heat_saved_kWh, &samples.draught_cut_m3_h, &samples.ventilation_needed_m3_h}) {
    *figure = with_correlations(std::move(*figure), runs);
  }
  return samples;
}

}  // namespace dewgap
