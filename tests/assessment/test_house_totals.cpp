// Sums over windows, held against their margins, their stated correlation, and cases run together.
#include <gtest/gtest.h>

#include <cmath>

#include "dewgap/assessment/house_totals_kernel.hpp"
#include "dewgap/assessment/summary_kernel.hpp"
#include "dewgap/numerics/sampling.hpp"
#include "house_cases.hpp"

namespace dewgap {
namespace {

using test::dry_sash;
using test::house_of;
using test::steady_alone;
using test::width;
using test::window_of;

TEST(HouseTotals, SharedErrorsOfLikeWindowsCorrelateAsTheirUnknownsSay) {
  // Pearson's measure of the cases' ranks against the sum of squared loadings, worked out anew here.
  const auto answer = house_of({dry_sash("left"), dry_sash("right")});
  const auto& samples = window_of(answer, 1).assessment.figures->saving_samples;
  const double by_chance = 1.0 / (numerics::effective_sample_size(samples.weights) - 1.0);
  double shared = 0.0;
  double all = 0.0;
  for (std::size_t k = 0; k < unknown_count; ++k) {
    const double r = samples.heat_saved_kWh.rank_correlation[k];
    const double loading =
        2.0 * std::sin(std::acos(-1.0) * std::sqrt(std::max(0.0, r * r - by_chance)) / 6.0);
    all += loading * loading;
    shared += sharing_of(static_cast<Unknown>(k)) == Sharing::window ? 0.0 : loading * loading;
  }
  const std::vector<Survey> surveys{dry_sash("left"), dry_sash("right")};
  const std::vector<CountedWindow> counted{{&window_of(answer, 1), &surveys[0]},
                                           {&window_of(answer, 2), &surveys[1]}};
  const auto cases =
      house_cases(counted, &SavingSamples::heat_saved_kWh, Errors::shared_ones_pull_together, 1);
  const std::vector<double> alike(cases[0].size(), 1.0);
  const double ranks = numerics::weighted_rank_correlation(cases[0], cases[1], alike);
  EXPECT_NEAR(2.0 * std::sin(std::acos(-1.0) * ranks / 6.0), shared / all, 0.02);
  EXPECT_GT(shared / all, 0.1);
  EXPECT_LT(shared / all, 0.99) << "joints and tape are a window's own";
}

TEST(HouseTotals, MarginsOfTheHousesCasesAreTheWindowsOwn) {
  const auto answer = house_of({dry_sash("left"), dry_sash("right")});
  const std::vector<Survey> surveys{dry_sash("left"), dry_sash("right")};
  const std::vector<CountedWindow> counted{{&window_of(answer, 1), &surveys[0]},
                                           {&window_of(answer, 2), &surveys[1]}};
  for (const auto errors : {Errors::shared_ones_pull_together, Errors::none_shared}) {
    const auto cases = house_cases(counted, &SavingSamples::heat_saved_kWh, errors, 7);
    for (std::size_t v = 0; v < 2; ++v) {
      const auto spread = numerics::weighted_spread(cases[v], std::vector<double>(cases[v].size(), 1.0));
      const auto own = own_spread(counted[v], &SavingSamples::heat_saved_kWh);
      EXPECT_NEAR(spread.p10, own.p10, 0.002 * width(own));
      EXPECT_NEAR(spread.p50, own.p50, 0.002 * width(own));
      EXPECT_NEAR(spread.p90, own.p90, 0.002 * width(own));
    }
  }
}

/// Two windows alike run case by case: what is shared the same in both, what is a window's own drawn anew.
Spread total_case_by_case(const Survey& survey, std::size_t count) {
  const auto setting = setting_for(survey);
  const auto beliefs = beliefs_for(survey);
  const auto left = draw_samples(beliefs, count, 1, 1.0);
  auto right = draw_samples(beliefs, count, 2, 1.0);
  std::vector<double> sums;
  for (std::size_t i = 0; i < count; ++i) {
    for (std::size_t k = 0; k < unknown_count; ++k) {
      if (sharing_of(static_cast<Unknown>(k)) != Sharing::window) {
        right[i].value[k] = left[i].value[k];
      }
    }
    sums.push_back(heat_saved_kWh(run_sample(setting, left[i]), VentOption::sealed, survey) +
                   heat_saved_kWh(run_sample(setting, right[i]), VentOption::sealed, survey));
  }
  return numerics::weighted_spread(sums, std::vector<double>(count, 1.0));
}

TEST(HouseTotals, TheTotalIsThatOfCasesRunTogether) {
  auto survey = dry_sash("alike");
  survey.room.centre_mists.reset();  // nothing looked at: all cases weigh the same
  auto options = steady_alone();
  options.assess.samples = 1024;
  const auto answer = house_of({survey, survey}, options);
  ASSERT_TRUE(answer.totals) << answer.windows[0].assessment.because;
  ASSERT_EQ(window_of(answer, 1).assessment.figures->vent, VentOption::sealed);
  const auto told = answer.totals->heat_saved_kWh.likely;
  const auto run = total_case_by_case(survey, 1024);
  // A copula by ranks is not the physics: a twelfth of the range, decided before the first run.
  const double allowed = width(run) / 12.0;
  EXPECT_NEAR(told.p10, run.p10, allowed);
  EXPECT_NEAR(told.p50, run.p50, allowed);
  EXPECT_NEAR(told.p90, run.p90, allowed);
}

}  // namespace
}  // namespace dewgap
