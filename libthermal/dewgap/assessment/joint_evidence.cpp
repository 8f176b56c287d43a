#include <algorithm>
#include <cmath>

#include "dewgap/airflow/openings.hpp"
#include "dewgap/assessment/evidence_kernel.hpp"

namespace dewgap {
namespace {

constexpr double joint_depth_m = 0.020;
constexpr double between_points_m3_h_m = 0.01;  // what a joint leaks where no feeler finds it: our convention
constexpr double feeler_factor = 3.0;  // 10th to 90th percentile: a third to three times the computed flow

std::string_view answer_of(Feeler feeler) {
  switch (feeler) {
    case Feeler::nothing:
      return "nothing";
    case Feeler::paper:
      return "paper";
    case Feeler::folded_paper:
      return "folded_paper";
    case Feeler::bank_card:
      return "bank_card";
    case Feeler::coin:
      return "coin";
  }
  return "nothing";
}

std::string_view answer_of(PaperPull pull) {
  switch (pull) {
    case PaperPull::pulls_free:
      return "pulls_free";
    case PaperPull::drags:
      return "drags";
    case PaperPull::tears:
      return "tears";
  }
  return "drags";
}

/// Flow per metre at 1 Pa of a joint as wide as the feeler says, m3/(h m).
double feeler_flow_m3_h_m(Feeler feeler) {
  const double width_m = 1e-3 * observation_of("feeler", answer_of(feeler)).p50;
  const auto slot = slot_resistance({.width_m = width_m, .length_m = 1.0, .depth_m = joint_depth_m});
  return 3600.0 * flow_m3_s(slot, 1.0);
}

EvidenceTerm leakage_term(const WordAnswer& word, const std::string& observation,
                          const std::vector<UnknownValues>& samples) {
  auto term = evidence_of(Unknown::joint_leakage, observation, word.given_answer());
  for (const auto& sample : samples) {
    term.log_likelihood.push_back(log_probability_of_logarithm(sample[Unknown::joint_leakage], word));
  }
  return term;
}

/// 'nothing' at every point says nothing against tighter joints, 'coin' nothing against leakier ones.
double compatible_leakage(const std::vector<Feeler>& feelers, double leakage_m3_h_m, double reading_m3_h_m) {
  const auto all_are = [&](Feeler feeler) {
    return std::all_of(feelers.begin(), feelers.end(), [feeler](Feeler one) { return one == feeler; });
  };
  if (all_are(Feeler::nothing)) {
    return std::max(leakage_m3_h_m, reading_m3_h_m);
  }
  return all_are(Feeler::coin) ? std::min(leakage_m3_h_m, reading_m3_h_m) : leakage_m3_h_m;
}

EvidenceTerm feeler_term(const std::vector<Feeler>& feelers, const std::vector<UnknownValues>& samples) {
  double mean = between_points_m3_h_m;
  for (const auto feeler : feelers) {
    mean += feeler_flow_m3_h_m(feeler) / static_cast<double>(feelers.size());
  }
  const Observation meaning{.observation = "feeler",
                            .answer = {},
                            .quantity = "joint_leakage",
                            .p10 = mean / feeler_factor,
                            .p50 = mean,
                            .p90 = mean * feeler_factor,
                            .source = "slot law of a 20 mm deep joint"};
  auto term =
      evidence_of(Unknown::joint_leakage, "feelers in the joint", std::to_string(feelers.size()) + " points");
  term.kind = EvidenceTerm::Likelihood::density;
  for (const auto& sample : samples) {
    const double leakage = compatible_leakage(feelers, sample[Unknown::joint_leakage], mean);
    term.log_likelihood.push_back(log_likelihood_of_logarithm(leakage, meaning));
  }
  return term;
}

}  // namespace

std::vector<EvidenceTerm> joint_evidence(const Survey& survey, const std::vector<UnknownValues>& samples) {
  const auto& joints = survey.joints;
  std::vector<EvidenceTerm> terms;
  const bool overruled = survey.expert.joint_leakage_m3_h_m.has_value();
  if (!joints.feelers.empty()) {
    terms.push_back(feeler_term(joints.feelers, samples));
  }
  const auto tick = [&](const std::optional<bool>& seen, const char* observation) {
    if (seen) {
      terms.push_back(leakage_term(word_answer(observation, *seen ? "yes" : "no"), observation, samples));
    }
  };
  tick(joints.rattles, "rattles");
  tick(joints.daylight_at_meeting_rail, "daylight");
  tick(joints.curtain_moves, "curtain_moves");
  if (joints.paper) {
    terms.push_back(
        leakage_term(word_answer("paper", answer_of(*joints.paper)), "paper shut in the joint", samples));
  }
  for (auto& term : terms) {
    if (overruled) {
      term.use.used = false;
      term.use.why_not = "an expert gave the leakage, which wins";
    }
  }
  return terms;
}

}  // namespace dewgap
