// The parts of the calibration: does it find what it is for, and does it weigh as the library does?
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <numeric>

#include "calibration/prior_effects.hpp"
#include "calibration/report.hpp"
#include "dewgap/assessment/evidence_kernel.hpp"

namespace dewgap::calibration {
namespace {

constexpr std::size_t few = 24;

std::shared_ptr<Scene> month_of(std::size_t archetype) {
  auto scene = std::make_shared<Scene>(archetypes().at(archetype));
  keep_one_month(scene->year);
  return scene;
}

const BankPart& sash_part() {
  static const BankPart part = simulated(month_of(0), {.windows = few}, 5);
  return part;
}

const std::vector<AskedQuestion>& sash_questions() {
  static const auto asked = asked_questions(sash_part(), 2);
  return asked;
}

/// Claims of every size, each true with the chance given for its share.
template <class Chance>
std::vector<Claim> drawn_claims(Chance chance) {
  Dice dice(3);
  std::vector<Claim> claims;
  for (std::size_t i = 0; i < 4000; ++i) {
    const double share = dice.uniform();
    claims.push_back({share, dice.uniform() < chance(share)});
  }
  return claims;
}

TEST(Reliability, RightClaimsPassAndBoldOnesFail) {
  const auto right = reliability_of(drawn_claims([](double share) { return share; }));
  EXPECT_GT(right.probability, 0.01);
  EXPECT_LT(right.largest_deviation, 3.3);
  EXPECT_NEAR(right.brier, 1.0 / 6.0, 0.01);  // mean of p (1 - p)
  EXPECT_NEAR(right.brier_of_base, 0.25, 0.01);
  const auto bold = reliability_of(drawn_claims([](double share) { return 0.5 + 0.7 * (share - 0.5); }));
  EXPECT_LT(bold.probability, 1e-6);
  EXPECT_GT(bold.largest_deviation, 3.3);
  EXPECT_GT(bold.bins.front().seen, bold.bins.front().claimed);
  EXPECT_LT(bold.bins.back().seen, bold.bins.back().claimed);
}

TEST(Reliability, CertainClaimsThatFailAreFound) {
  std::vector<Claim> claims(200, Claim{0.999, true});
  claims.insert(claims.end(), 200, Claim{0.5, true});
  const auto wrong = reliability_of(claims);
  EXPECT_EQ(wrong.bins.back().count, 200u);
  EXPECT_FALSE(wrong.bins.back().has_deviation);
  EXPECT_LT(wrong.probability, 1e-6);
}

TEST(Dice, AnswersComeAsOftenAsTheirChance) {
  for (const auto& one : sash_questions()) {
    for (std::size_t i = 0; i < few; ++i) {
      double sum = 0.0;
      for (const auto& answer : one.chance) {
        sum += std::exp(answer[i]);
      }
      EXPECT_NEAR(sum, 1.0, 1e-9) << one.question.name;
    }
  }
}

TEST(Questions, TheLibraryStatesTheProbabilitiesOfWords) {
  std::size_t choices = 0;
  for (const auto& one : sash_questions()) {
    if (one.question.kind == Question::Kind::reading) {
      continue;
    }
    ++choices;
    EXPECT_NEAR(astray(one), 0.0, 1e-9) << one.question.name;
    for (std::size_t i = 0; i < few; ++i) {
      double sum = 0.0;
      for (const auto& answer : one.stated) {
        sum += std::exp(answer[i]);
      }
      EXPECT_NEAR(sum, 1.0, 1e-9) << one.question.name;
    }
  }
  EXPECT_GT(choices, 10u);
}

TEST(Questions, FeelersFindTheirReading) {
  const auto& feelers = sash_questions().front();
  ASSERT_EQ(feelers.question.kind, Question::Kind::reading);
  // The tighter the joint, the likelier the answer that nothing goes in anywhere; and of a leaky one, all
  // coins.
  std::vector<std::size_t> by_leakage(few);
  std::iota(by_leakage.begin(), by_leakage.end(), 0u);
  std::sort(by_leakage.begin(), by_leakage.end(), [](std::size_t a, std::size_t b) {
    return sash_part().samples[a][Unknown::joint_leakage] < sash_part().samples[b][Unknown::joint_leakage];
  });
  for (const auto* matrix : {&feelers.stated, &feelers.chance}) {
    EXPECT_GT(matrix->front()[by_leakage.front()], matrix->front()[by_leakage.back()]);
    EXPECT_LT(matrix->back()[by_leakage.front()], matrix->back()[by_leakage.back()]);
  }
  EXPECT_LT(astray(feelers), 0.5);
}

TEST(Staged, PartsAddUpToTheLibrarysOwnWeights) {
  const auto& part = sash_part();
  const auto observed = observed_at(part, sash_questions(), 7, 11);
  Setting setting = part.scene->setting;
  setting.survey = &observed.notes.survey;
  auto terms = all_evidence(setting, part.samples);
  auto winter = winter_evidence(setting, part.samples, observed.notes.readings, VentOption::sealed);
  std::move(winter.begin(), winter.end(), std::back_inserter(terms));
  for (const auto& term : terms) {
    EXPECT_TRUE(term.use.used) << term.use.observation;
  }
  const auto expected = weights_from(terms, few);
  std::vector<double> sum(few, 0.0);
  for (const auto& [stage, found] : observed.evidence) {
    for (std::size_t i = 0; i < few; ++i) {
      sum[i] += stage == Stage::winter_mist ? 0.0 : found.stated[i];
    }
  }
  const auto weights = weights_of_cases(0, sum);
  for (std::size_t i = 0; i < few; ++i) {
    EXPECT_NEAR(weights[i], expected[i], 1e-12);
  }
}

TEST(Staged, NoJudgedWindowIsAmongTheCases) {
  const auto& part = sash_part();
  auto other = part;
  std::rotate(other.years.begin(), other.years.begin() + 1,
              other.years.begin() + 8);  // those that are judged
  const std::vector<double> flat(few, 0.0);
  const auto a = claims_of(part, 7, 8, flat);
  const auto b = claims_of(other, 7, 8, flat);
  for (std::size_t j = 0; j < a.acceptable.size(); ++j) {
    EXPECT_EQ(a.acceptable.at(j)->share, b.acceptable.at(j)->share);
  }
  EXPECT_NEAR(a.effective, static_cast<double>(few - 8), 1e-9);
}

TEST(Bank, IsReadAgainAndAnotherPlansIsNot) {
  const auto file = std::filesystem::temp_directory_path() / "dewgap_calibration_test.bank";
  const BankPlan plan{.windows = few};
  save_part(file, sash_part(), plan, 5);
  const auto again = saved_part(file, sash_part().scene, plan, 5);
  ASSERT_TRUE(again);
  EXPECT_EQ(again->samples.size(), sash_part().samples.size());
  EXPECT_EQ(again->samples.back().value, sash_part().samples.back().value);
  EXPECT_FALSE(saved_part(file, sash_part().scene, plan, 6));
  EXPECT_FALSE(saved_part(file, sash_part().scene, {.windows = few + 1}, 5));
  auto stale = sash_part();
  stale.years.front().options.front().heat_kWh += 1.0f;
  save_part(file, stale, plan, 5);
  EXPECT_FALSE(saved_part(file, sash_part().scene, plan, 5));
  std::filesystem::remove(file);
}

TEST(Bank, ThreadsDoNotMatter) {
  const auto alone = simulated(month_of(1), {.windows = 6, .threads = 1}, 9);
  const auto together = simulated(month_of(1), {.windows = 6, .threads = 3}, 9);
  ASSERT_EQ(alone.years.size(), together.years.size());
  for (std::size_t i = 0; i < alone.years.size(); ++i) {
    EXPECT_EQ(alone.years[i].options.front().heat_kWh, together.years[i].options.front().heat_kWh);
  }
}

TEST(Priors, EveryRowIsSampledAndEveryUnknownVaries) {
  EXPECT_EQ(rows_never_sampled(), std::vector<std::string>{});
  for (const auto& effect : prior_effects({sash_part()})) {
    EXPECT_TRUE(effect.varies) << key_of(effect.unknown);
  }
}

TEST(Priors, AnUnknownThatNeverVariesIsFound) {
  auto part = sash_part();
  for (auto& sample : part.samples) {
    sample[Unknown::edge_factor] = 0.9;
  }
  for (const auto& effect : prior_effects({part})) {
    EXPECT_EQ(effect.varies, effect.unknown != Unknown::edge_factor) << key_of(effect.unknown);
  }
}

TEST(Peak, IsFoundFromThreePoints) {
  const auto at = [](double x) { return 4.0 - 0.5 * (x - 0.3) * (x - 0.3) / (0.2 * 0.2); };
  const auto peak = peak_of(1.0, 0.5, {at(1.0), at(1.5), at(2.0)});
  EXPECT_NEAR(peak.middle, 0.3, 1e-9);
  EXPECT_NEAR(peak.sd, 0.2, 1e-9);
  EXPECT_THROW(peak_of(0.0, 1.0, {0.0, 0.0, 0.0}), std::runtime_error);
}

}  // namespace
}  // namespace dewgap::calibration
