// Is a claim of 80 % right in 80 %? Simulated windows, observations of them with error, and what is claimed
// of each from all the others. See README.md beside this file.
#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <exception>
#include <stdexcept>
#include <string>
#include <string_view>

#include "calibration/report.hpp"

namespace dewgap::calibration {
namespace {

struct Order {
  BankPlan plan;
  std::size_t truths = 1000;
  double least_effective = 50.0;
  std::filesystem::path bank;  ///< folder; empty: the bank is not kept
  enum class Year { whole, one_month } year = Year::whole;
};

std::size_t number_of(std::string_view option, const char* text) {
  char* end = nullptr;
  const auto value = std::strtoull(text, &end, 10);
  if (*text == '\0' || *end != '\0' || value == 0 || value > 1'000'000) {
    throw std::runtime_error(std::string(option) + " takes a whole number from 1 to 1000000");
  }
  return static_cast<std::size_t>(value);
}

Order order_from(int count, char** words) {
  Order order;
  for (int i = 1; i < count; ++i) {
    const std::string_view word = words[i];
    if (word == "--smoke") {
      order.plan.windows = 32;
      order.truths = 64;
      order.least_effective = 5.0;
      order.year = Order::Year::one_month;
      continue;
    }
    if (i + 1 == count) {
      throw std::runtime_error("unknown option, or without its value: " + std::string(word));
    }
    const char* value = words[++i];
    if (word == "--windows") {
      order.plan.windows = number_of(word, value);
    } else if (word == "--truths") {
      order.truths = number_of(word, value);
    } else if (word == "--threads") {
      order.plan.threads = number_of(word, value);
    } else if (word == "--seed") {
      order.plan.seed = number_of(word, value);
    } else if (word == "--bank") {
      order.bank = value;
    } else {
      throw std::runtime_error("unknown option: " + std::string(word));
    }
  }
  return order;
}

BankPart part_for(const Order& order, const Archetype& archetype, std::uint64_t seed) {
  auto scene = std::make_shared<Scene>(archetype);
  if (order.year == Order::Year::one_month) {
    keep_one_month(scene->year);
  }
  const auto file = order.bank / ("windows_" + std::to_string(seed) + ".bank");
  if (!order.bank.empty()) {
    std::filesystem::create_directories(order.bank);
    if (auto saved = saved_part(file, scene, order.plan, seed)) {
      return std::move(*saved);
    }
  }
  std::fprintf(stderr, "running %zu windows: %s\n", order.plan.windows, archetype.name.c_str());
  auto part = simulated(scene, order.plan, seed);
  if (!order.bank.empty()) {
    save_part(file, part, order.plan, seed);
  }
  return part;
}

std::vector<BankPart> bank_for(const Order& order) {
  std::vector<BankPart> bank;
  for (const auto& archetype : archetypes()) {
    bank.push_back(part_for(order, archetype, 1000 * order.plan.seed + bank.size()));
  }
  return bank;
}

/// The windows in another order, so that the first ones are a blind choice: those of a low-discrepancy draw
/// are linked by their own order (every fourth one lies in the same quarter of some prior).
BankPart shuffled(BankPart part, std::uint64_t seed) {
  Dice dice(seed);
  for (std::size_t k = 0; k < part.samples.size(); ++k) {
    const std::size_t other = k + dice.below(part.samples.size() - k);
    std::swap(part.samples[k], part.samples[other]);
    std::swap(part.years[k], part.years[other]);
  }
  return part;
}

/// Throws when the library's likelihoods of a question's answers lead astray: they are no probabilities.
void require_probabilities(const std::vector<AskedQuestion>& asked) {
  constexpr double by_rounding = 1e-6;
  for (const auto& one : asked) {
    if (one.question.kind == Question::Kind::choice && !(astray(one) < by_rounding)) {
      throw std::runtime_error("the answers' likelihoods do not sum to 1: " + one.question.name);
    }
  }
}

/// By hearing.
using Verdicts = std::array<Judged, all_hearings.size()>;

/// Its first windows are judged by the others.
Verdicts judged_part(const Order& order, const BankPart& part, std::size_t count) {
  const auto asked = asked_questions(part, order.plan.threads);
  print_astray(part, asked);
  require_probabilities(asked);
  const std::size_t truths = std::min(count, part.samples.size() / 2);
  Verdicts verdicts;
  for (auto& judged : verdicts) {
    judged.least_effective = order.least_effective;
    judged.claims.fill(std::vector<std::vector<Claims>>(truths));
  }
  in_parallel(truths, order.plan.threads, [&](std::size_t k) {
    const auto observed = observed_at(part, asked, k, 7919 * order.plan.seed + k);
    for (const auto hearing : all_hearings) {
      for (const auto weighing : all_weighings) {
        verdicts.at(static_cast<std::size_t>(hearing)).claims.at(static_cast<std::size_t>(weighing))[k] =
            staged_claims(part, k, truths, observed, weighing, hearing);
      }
    }
  });
  print_kind(part, verdicts.front());
  return verdicts;
}

Verdicts judged_bank(const Order& order, const std::vector<BankPart>& bank) {
  Verdicts all;
  for (const auto& part : bank) {
    const auto verdicts =
        judged_part(order, shuffled(part, order.plan.seed), (order.truths + bank.size() - 1) / bank.size());
    for (std::size_t h = 0; h < all.size(); ++h) {
      all.at(h).least_effective = order.least_effective;
      for (std::size_t w = 0; w < all_weighings.size(); ++w) {
        const auto& more = verdicts.at(h).claims.at(w);
        auto& claims = all.at(h).claims.at(w);
        claims.insert(claims.end(), more.begin(), more.end());
      }
    }
  }
  return all;
}

/// Whether every prior does something; says which does not.
bool priors_are_sound(const std::vector<BankPart>& bank) {
  const auto effects = prior_effects(bank);
  print_priors(bank, effects);
  const auto never = rows_never_sampled();
  for (const auto& row : never) {
    std::printf("  never sampled: %s\n", row.c_str());
  }
  return never.empty() &&
         std::all_of(effects.begin(), effects.end(), [](const PriorEffect& effect) { return effect.varies; });
}

int run(const Order& order) {
  const auto bank = bank_for(order);
  print_bank(bank);
  const auto verdicts = judged_bank(order, bank);
  const auto& so_far = verdicts.front();
  print_reliability(so_far);
  for (const auto hearing : all_hearings) {
    print_summary(verdicts.at(static_cast<std::size_t>(hearing)), hearing);
  }
  print_ranks(so_far);
  bool sound = priors_are_sound(bank);
  if (summary_of(so_far, Weighing::stated, Stage::joints).settled == 0) {
    std::puts("No window is settled: there is nothing to judge.");
    sound = false;
  }
  return sound ? EXIT_SUCCESS : EXIT_FAILURE;
}

}  // namespace
}  // namespace dewgap::calibration

int main(int count, char** words) {
  try {
    return dewgap::calibration::run(dewgap::calibration::order_from(count, words));
  } catch (const std::exception& failure) {
    std::fprintf(stderr, "calibrate_evidence: %s\n", failure.what());
    return EXIT_FAILURE;
  }
}
