// Every unknown of priors.csv is drawn, and moves a figure: one that nobody uses would be a row without
// meaning.
#include <gtest/gtest.h>

#include <cmath>
#include <set>
#include <vector>

#include "assessment/year_cases.hpp"
#include "dewgap/assessment/sample_run_kernel.hpp"

namespace dewgap::test {
namespace {

constexpr double least_change = 1e-5;  // of the figure: rounding is not a change

std::vector<double> figures(const SampleYear& all) {
  std::vector<double> list;
  const auto add = [&](const OptionYear& year) {
    for (const double figure : figures_of(year)) {
      list.push_back(figure);
    }
  };
  add(all.as_it_is);
  add(all.lifted);
  for (const auto& option : all.options) {
    add(option);
  }
  return list;
}

std::vector<double> figures(const SampleFigures& f) {
  return {f.options[0].month.margin_K,
          f.options[0].frost.margin_K,
          f.glass_u_before,
          f.glass_u_after,
          f.window_u_after,
          f.draught_before_m3_h,
          f.saved.glass_kWh,
          f.saved.air_kWh,
          f.saved.sun_lost_kWh};
}

bool differ(const std::vector<double>& one, const std::vector<double>& other) {
  for (std::size_t i = 0; i < one.size(); ++i) {
    if (std::abs(one[i] - other[i]) > least_change * std::max(std::abs(one[i]), std::abs(other[i]))) {
      return true;
    }
  }
  return false;
}

/// The sample with one unknown at another quantile of its belief.
UnknownValues moved(const Survey& survey, Unknown unknown, double quantile) {
  auto sample = damp_sample(survey);
  sample[unknown] = beliefs_for(survey)[static_cast<std::size_t>(unknown)].prior.at(quantile);
  return sample;
}

TEST(Unknowns, EveryOneIsDrawn) {
  const auto samples = draw_samples(beliefs_for(worn_sash_survey()), 64, 1, 1.0);
  for (std::size_t j = 0; j < unknown_count; ++j) {
    std::set<double> seen;
    for (const auto& sample : samples) {
      seen.insert(sample.value[j]);
    }
    EXPECT_EQ(seen.size(), 64U) << key_of(static_cast<Unknown>(j));
  }
}

TEST(Unknowns, EveryOneMovesAFigure) {
  const auto survey = worn_sash_survey();
  const YearCase at(survey);
  const auto year = cut(at.year, first_of_december, month_h);
  std::size_t moved_year = 0;
  for (std::size_t j = 0; j < unknown_count; ++j) {
    const auto unknown = static_cast<Unknown>(j);
    const auto low = moved(survey, unknown, 0.1);
    const auto high = moved(survey, unknown, 0.9);
    const bool in_year = differ(figures(run_sample_year(year, low)), figures(run_sample_year(year, high)));
    const bool in_steady =
        differ(figures(run_sample(at.setting, low)), figures(run_sample(at.setting, high)));
    EXPECT_TRUE(in_year || in_steady) << key_of(unknown);
    EXPECT_TRUE(in_year || j < steady_unknown_count) << key_of(unknown);
    EXPECT_FALSE(in_steady && j >= steady_unknown_count) << key_of(unknown);
    moved_year += in_year ? 1 : 0;
  }
  // Frame, and what of the sun passes, are the steady check's alone.
  EXPECT_EQ(moved_year, unknown_count - 3);
}

}  // namespace
}  // namespace dewgap::test
