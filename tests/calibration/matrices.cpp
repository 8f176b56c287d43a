#include "calibration/matrices.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>
#include <stdexcept>

#include "dewgap/numerics/sampling.hpp"

namespace dewgap::calibration {
namespace {

/// Log-likelihoods of one answer alone.
std::vector<double> stated_by(const Scene& scene, const Response& answer,
                              const std::vector<UnknownValues>& samples) {
  Notes notes{.survey = scene.archetype.survey};
  answer.put(notes);
  return log_likelihood_of(scene, notes, samples);
}

Matrix chance_of_choice(const Matrix& stated) {
  Matrix chance = stated;
  for (std::size_t i = 0; i < stated.front().size(); ++i) {
    double sum = 0.0;
    for (const auto& answer : stated) {
      sum += std::exp(answer[i]);
    }
    if (!(sum > 0.0)) {
      throw std::runtime_error("no possible answer has a likelihood");
    }
    for (auto& answer : chance) {
      answer[i] -= std::log(sum);
    }
  }
  return chance;
}

/// What each answer reads of the joints' leakage, on the logarithm: from the likelihood at three leakages
/// between the ends, which are open.
std::vector<Peak> readings_of(const Scene& scene, const Question& question) {
  UnknownValues any = draw_samples(beliefs_for(scene.archetype.survey), 1, 1, 1.0).front();
  std::vector<UnknownValues> probes(3, any);
  for (std::size_t k = 0; k < probes.size(); ++k) {
    probes[k][Unknown::joint_leakage] = std::exp(static_cast<double>(k) - 3.0);
  }
  std::vector<Peak> readings;
  for (const auto& answer : question.answers) {
    const auto stated = stated_by(scene, answer, probes);
    readings.push_back(peak_of(-3.0, 1.0, {stated[0], stated[1], stated[2]}));
  }
  return readings;
}

void sort_answers(const Scene& scene, Question& question) {
  const auto readings = readings_of(scene, question);
  std::vector<std::size_t> order(readings.size());
  std::iota(order.begin(), order.end(), 0u);
  std::sort(order.begin(), order.end(),
            [&](std::size_t a, std::size_t b) { return readings[a].middle < readings[b].middle; });
  std::vector<Response> sorted;
  for (const std::size_t k : order) {
    sorted.push_back(question.answers[k]);
  }
  question.answers = std::move(sorted);
}

/// Of a normal deviate between two bounds; accurate in both tails.
double log_probability_between(double low, double high) {
  const double share = low > 0.0 ? numerics::normal_probability(-low) - numerics::normal_probability(-high)
                                 : numerics::normal_probability(high) - numerics::normal_probability(low);
  return share > 0.0 ? std::log(share) : -std::numeric_limits<double>::infinity();
}

Matrix chance_of_reading(const std::vector<Peak>& readings, const std::vector<UnknownValues>& samples) {
  Matrix chance(readings.size(), std::vector<double>(samples.size()));
  constexpr double beyond = 1e3;
  for (std::size_t k = 0; k < readings.size(); ++k) {
    const double middle = readings[k].middle;
    const double low = k == 0 ? -beyond : 0.5 * (readings[k - 1].middle + middle);
    const double high = k + 1 == readings.size() ? beyond : 0.5 * (middle + readings[k + 1].middle);
    for (std::size_t i = 0; i < samples.size(); ++i) {
      const double truth = std::log(samples[i][Unknown::joint_leakage]);
      chance[k][i] = log_probability_between((low - truth) / readings[k].sd, (high - truth) / readings[k].sd);
    }
  }
  return chance;
}

/// Of one answer, its windows weighed by the chance of the answer there.
struct Gap {
  double weight = 0.0;
  double mean = 0.0;
  double mean_square = 0.0;
};

Gap gap_of(const std::vector<double>& stated, const std::vector<double>& chance) {
  Gap gap;
  for (std::size_t i = 0; i < stated.size(); ++i) {
    const double weight = std::exp(chance[i]);
    const double apart = weight > 0.0 ? stated[i] - chance[i] : 0.0;
    gap.weight += weight;
    gap.mean += weight * apart;
    gap.mean_square += weight * apart * apart;
  }
  return gap;
}

}  // namespace

double astray(const AskedQuestion& asked) {
  double sum = 0.0;
  double weight = 0.0;
  for (std::size_t k = 0; k < asked.stated.size(); ++k) {
    const auto gap = gap_of(asked.stated[k], asked.chance[k]);
    if (gap.weight > 0.0) {
      const double mean = gap.mean / gap.weight;
      sum += gap.weight * std::sqrt(std::max(0.0, gap.mean_square / gap.weight - mean * mean));
      weight += gap.weight;
    }
  }
  return sum / weight;
}

Peak peak_of(double first, double step, const std::array<double, 3>& y) {
  // y = -(x - middle)^2 / (2 sd^2) + constant: second difference -step^2 / sd^2, slope at the middle point.
  const double curvature = (y[0] - 2.0 * y[1] + y[2]) / (step * step);
  const double slope = (y[2] - y[0]) / (2.0 * step);
  if (!(curvature < 0.0)) {
    throw std::runtime_error("a likelihood without a peak");
  }
  return {.middle = first + step - slope / curvature, .sd = std::sqrt(-1.0 / curvature)};
}

std::vector<AskedQuestion> asked_questions(const BankPart& part, std::size_t threads) {
  const auto& scene = *part.scene;
  std::vector<AskedQuestion> asked;
  for (auto& question : questions_for(scene.archetype)) {
    asked.push_back({.question = std::move(question)});
  }
  in_parallel(asked.size(), threads, [&](std::size_t q) {
    auto& one = asked[q];
    const bool is_reading = one.question.kind == Question::Kind::reading;
    if (is_reading) {
      sort_answers(scene, one.question);
    }
    for (const auto& answer : one.question.answers) {
      one.stated.push_back(stated_by(scene, answer, part.samples));
    }
    one.chance = is_reading ? chance_of_reading(readings_of(scene, one.question), part.samples)
                            : chance_of_choice(one.stated);
  });
  return asked;
}

}  // namespace dewgap::calibration
