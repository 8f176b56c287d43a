#include <gtest/gtest.h>

#include "dewgap/assessment/vent_choice_kernel.hpp"
#include "dewgap/assessment/verdict_kernel.hpp"

namespace dewgap::test {
namespace {

const std::vector<VentOption> three{VentOption::sealed, VentOption::breaks_bottom,
                                    VentOption::breaks_bottom_and_top};

/// One case: band and heat of sealed, breaks at the bottom, breaks at bottom and top.
SampleYear case_of(std::array<YearBand, 3> bands, std::array<float, 3> heat_kWh = {100.0f, 100.0f, 100.0f}) {
  SampleYear sample;
  for (std::size_t i = 0; i < three.size(); ++i) {
    const auto place = place_of(three[i]);
    sample.options.at(place).band = bands.at(i);
    sample.options.at(place).heat_kWh = heat_kWh.at(i);
  }
  return sample;
}

constexpr auto dry = YearBand::dry;
constexpr auto mist = YearBand::harmless_mist;
constexpr auto runs = YearBand::runs;

std::vector<SampleYear> many(const SampleYear& first, std::size_t of_first, const SampleYear& second,
                             std::size_t of_second) {
  std::vector<SampleYear> years(of_first, first);
  years.insert(years.end(), of_second, second);
  return years;
}

TEST(VentChoice, BandComesBeforeHeat) {
  const auto wins = winners(case_of({runs, mist, dry}, {50.0f, 60.0f, 200.0f}), three);
  EXPECT_EQ(wins, (std::vector<bool>{false, false, true}));
}

TEST(VentChoice, HeatWithinTheTieSharesTheWin) {
  // 3 kWh below 150 kWh, 2 % above it.
  EXPECT_EQ(winners(case_of({dry, dry, dry}, {100.0f, 102.9f, 103.1f}), three),
            (std::vector<bool>{true, true, false}));
  EXPECT_EQ(winners(case_of({dry, dry, dry}, {1000.0f, 1019.0f, 1021.0f}), three),
            (std::vector<bool>{true, true, false}));
  EXPECT_EQ(winners(case_of({mist, dry, dry}, {10.0f, 102.0f, 100.0f}), three),
            (std::vector<bool>{false, true, true}));
}

TEST(VentChoice, TiesGoToTheSimplest) {
  // Sealed in 20 of 21 cases acceptable, breaks in all: within the tie of 5 %.
  const auto years = many(case_of({dry, dry, dry}), 20, case_of({runs, dry, dry}), 1);
  const auto choice = choose(years, std::vector<double>(21, 1.0), three);
  EXPECT_EQ(choice.choice, VentOption::sealed);
  EXPECT_EQ(choice.tied, (std::vector<std::size_t>{1, 2}));
  EXPECT_DOUBLE_EQ(choice.share(), 20.0 / 21.0);
}

TEST(VentChoice, BeyondTheTieTheMostAcceptableWins) {
  const auto years = many(case_of({dry, dry, dry}), 18, case_of({runs, runs, dry}), 2);
  const auto choice = choose(years, std::vector<double>(20, 1.0), three);
  EXPECT_EQ(choice.choice, VentOption::breaks_bottom_and_top);
  EXPECT_TRUE(choice.tied.empty());
}

TEST(VentChoice, CasesCountByTheirWeight) {
  const std::vector<SampleYear> years{case_of({dry, dry, dry}), case_of({runs, dry, dry})};
  EXPECT_EQ(choose(years, {97.0, 3.0}, three).choice, VentOption::sealed);
  const auto heavy = choose(years, {90.0, 10.0}, three);
  EXPECT_EQ(heavy.choice, VentOption::breaks_bottom);
  EXPECT_DOUBLE_EQ(heavy.acceptable_share[0], 0.9);
  EXPECT_DOUBLE_EQ(heavy.best_share[1], 1.0);
}

std::string unclear(const std::vector<SampleYear>& years) {
  const std::vector<double> counts(years.size(), 1.0);
  return unclear_because(years, counts, three, choose(years, counts, three));
}

TEST(VentChoice, SixteenOfOneMindAreClear) {
  EXPECT_EQ(unclear(many(case_of({dry, dry, dry}), 16, {}, 0)), "");
  EXPECT_EQ(unclear(many(case_of({runs, runs, runs}), 16, {}, 0)), "");
}

TEST(VentChoice, NearTheLineItIsNotClear) {
  const auto near = many(case_of({dry, dry, dry}), 12, case_of({runs, runs, runs}), 4);
  EXPECT_NE(unclear(near).find("too near the line"), std::string::npos) << unclear(near);
  // The same share of many more cases is.
  EXPECT_EQ(unclear(many(case_of({dry, dry, dry}), 1200, case_of({runs, runs, runs}), 400)), "");
}

TEST(VentChoice, ARivalThatIsHardlyWorseIsNotClear) {
  // Two of sixteen cases set sealed apart: beyond the tie, yet no more than chance may do.
  const auto years = many(case_of({runs, dry, dry}), 2, case_of({dry, dry, dry}), 14);
  EXPECT_EQ(choose(years, std::vector<double>(16, 1.0), three).choice, VentOption::breaks_bottom);
  EXPECT_NE(unclear(years).find("comes too near"), std::string::npos) << unclear(years);
  EXPECT_EQ(unclear(many(case_of({runs, dry, dry}), 8, case_of({dry, dry, dry}), 8)), "");
}

TEST(VentChoice, CasesThatCountTwiceAreNotTwoCases) {
  // One case picked a thousand times is one case: nothing is clear.
  const std::vector<SampleYear> years{case_of({dry, dry, dry})};
  EXPECT_NE(unclear_because(years, {1000.0}, three, choose(years, {1000.0}, three)), "");
}

}  // namespace
}  // namespace dewgap::test
