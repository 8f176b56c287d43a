#include <algorithm>
#include <cmath>
#include <functional>

#include "dewgap/assessment/vent_words_kernel.hpp"
#include "dewgap/assessment/verdict_kernel.hpp"
#include "dewgap/numerics/resampling.hpp"
#include "dewgap/numerics/sampling.hpp"

namespace dewgap {
namespace {

constexpr double least_plausible = 0.05;  // an answer less likely than that is not waited for: our convention
constexpr double cold_day_K = 12.0;       // colder outside when the tissue is held up
constexpr std::size_t feeler_points = 8;
// The day and the number of readings of a hygrometer left in the room.
constexpr double hygrometer_outdoor_C = 5.0;
constexpr std::size_t hygrometer_readings = 6;

/// What may be found, and how likely that is in a case: by the evidence of a survey that says so, or by
/// itself.
struct Answer {
  std::string said;
  std::function<void(Survey&)> put;
  std::function<double(const UnknownValues&)> likelihood = {};
};

/// Words as in priors.csv, so that the same look is not asked for twice.
struct Look {
  std::string what;
  std::vector<Answer> answers;
};

Look mist_look() {
  const auto when = [](const char* said, CentreMists mists) {
    return Answer{said, [mists](Survey& survey) { survey.room.centre_mists = mists; }};
  };
  return {"Ask in which weather the centre of the pane mists",
          {when("never", CentreMists::never), when("in hard frost only", CentreMists::hard_frost_only),
           when("on frosty mornings", CentreMists::frosty_mornings),
           when("on cool days", CentreMists::cool_days), when("on mild nights", CentreMists::mild_nights)}};
}

Look paper_look() {
  const auto pull = [](const char* said, PaperPull how) {
    return Answer{said, [how](Survey& survey) { survey.joints.paper = how; }};
  };
  return {"Shut paper in the joint and pull",
          {pull("it pulls free", PaperPull::pulls_free), pull("it drags", PaperPull::drags),
           pull("it tears", PaperPull::tears)}};
}

Look feeler_look() {
  const auto slides = [](const char* said, Feeler feeler) {
    return Answer{said, [feeler](Survey& survey) { survey.joints.feelers.assign(feeler_points, feeler); }};
  };
  return {"Slide paper, a bank card, a coin into the joint at 8 points",
          {slides("nothing goes in", Feeler::nothing), slides("paper goes in", Feeler::paper),
           slides("folded paper goes in", Feeler::folded_paper),
           slides("a bank card goes in", Feeler::bank_card), slides("a coin goes in", Feeler::coin)}};
}

Look tissue_look() {
  const auto blows = [](const char* said, TissueWay way) {
    return Answer{said, [way](Survey& survey) {
                    survey.tissue.bottom = way;  // what the top adds is not counted on
                    survey.tissue.colder_outside_K = cold_day_K;
                  }};
  };
  return {"Tissue at the bottom and top of the window, cold day",
          {blows("it blows in", TissueWay::in), blows("it is drawn out", TissueWay::out),
           blows("it hangs", TissueWay::hangs), blows("it goes both ways", TissueWay::both_ways)}};
}

Look hygrometer_look() {
  const auto reads = [](const char* said, double humidity) {
    return Answer{said, [humidity](Survey& survey) {
                    survey.room.hygrometer.assign(hygrometer_readings,
                                                  {.room_C = survey.room.temperature_C.value_or(18.5),
                                                   .relative_humidity = humidity,
                                                   .outdoor_C = hygrometer_outdoor_C});
                  }};
  };
  return {"A hygrometer morning and evening for a few days",
          {reads("it reads 40 %", 0.40), reads("it reads 50 %", 0.50), reads("it reads 60 %", 0.60),
           reads("it reads 70 %", 0.70), reads("it reads 80 %", 0.80)}};
}

/// Logarithm of a lognormal prior's density, but for a constant: two half-normal sides that meet at the
/// median.
double log_density(double value, const Prior& prior) {
  const double middle = std::log(prior.p50);
  const double off = std::log(value) - middle;
  const double side = off < 0.0 ? middle - std::log(prior.p10) : std::log(prior.p90) - middle;
  const double z = numerics::normal_p90 * off / side;
  return -0.5 * z * z - std::log(side);
}

/// Found after fitting: the prior of a checked seal takes the place of the one that nobody has looked at.
Look tape_look() {
  const auto checked = [](const UnknownValues& sample) {
    const double leakage = sample[Unknown::seal_leakage];
    return std::exp(log_density(leakage, prior_of(Unknown::seal_leakage, "checked")) -
                    log_density(leakage, prior_of(Unknown::seal_leakage)));
  };
  return {"Once it is fitted, look along the tape for gaps with a torch",
          {Answer{"it is unbroken, corners joined", {}, checked}}};
}

/// Looks not yet taken that could say something, cheapest first.
std::vector<Look> looks_left(const Setting& setting) {
  const Survey& survey = *setting.survey;
  const bool humidity_is_open = !survey.expert.vapour_excess_Pa && !survey.expert.room_relative_humidity;
  const bool leakage_is_open = !survey.expert.joint_leakage_m3_h_m && setting.window.joint_length_m > 0.0;
  const bool pressure_is_open = !survey.expert.mean_pressure_Pa;
  std::vector<Look> looks;
  const auto offer = [&looks](bool is_open, Look look) {
    if (is_open) {
      looks.push_back(std::move(look));
    }
  };
  offer(humidity_is_open && !survey.room.centre_mists, mist_look());
  offer(leakage_is_open && !survey.joints.paper, paper_look());
  offer(leakage_is_open && survey.joints.feelers.empty(), feeler_look());
  offer(pressure_is_open && !survey.tissue.bottom, tissue_look());
  offer(humidity_is_open && survey.room.hygrometer.empty(), hygrometer_look());
  offer(!survey.expert.seal_leakage_m3_h_m && !survey.sheet.tape_unbroken, tape_look());
  return looks;
}

/// The survey without observations that weight samples: what an answer says by itself is then all the
/// evidence.
Survey without_observations(const Survey& survey) {
  Survey bare = survey;
  bare.joints = {};
  bare.tissue = {};
  bare.room.centre_mists.reset();
  bare.room.washing_dried.reset();
  bare.room.hygrometer.clear();
  return bare;
}

/// Likelihood of an answer in every case that was run.
std::vector<double> likelihoods(const Setting& setting, const std::vector<UnknownValues>& samples,
                                const Answer& answer) {
  std::vector<double> likelihood;
  if (answer.likelihood) {
    std::transform(samples.begin(), samples.end(), std::back_inserter(likelihood), answer.likelihood);
    return likelihood;
  }
  Survey asked = without_observations(*setting.survey);
  answer.put(asked);
  Setting with_answer = setting;
  with_answer.survey = &asked;
  const auto terms = all_evidence(with_answer, samples);
  for (const double log_value : terms.front().log_likelihood) {
    likelihood.push_back(std::exp(log_value));
  }
  return likelihood;
}

struct Expected {
  std::string said;
  double mean_likelihood = 0.0;
  std::vector<double> weights;  ///< of the runs after the answer
};

std::vector<Expected> expected_answers(const Setting& setting, const std::vector<UnknownValues>& samples,
                                       const std::vector<double>& counts, const Look& look) {
  std::vector<Expected> all;
  for (const auto& answer : look.answers) {
    Expected expected{.said = answer.said, .mean_likelihood = 0.0, .weights = counts};
    const auto likelihood = likelihoods(setting, samples, answer);
    for (std::size_t i = 0; i < samples.size(); ++i) {
      expected.weights[i] *= likelihood[i];
      expected.mean_likelihood += expected.weights[i];
    }
    all.push_back(std::move(expected));
  }
  return all;
}

/// Crosses the line or brings another option, and the chosen one's share moves by more than these few cases
/// do by chance: the 90 % interval of its new share leaves its present one out.
bool would_flip(const VentChoice& now, const VentChoice& then, double effective) {
  const bool crosses = (now.share() >= enough_share) != (then.share() >= enough_share);
  const bool still_wins =
      then.place == now.place || std::find(then.tied.begin(), then.tied.end(), now.place) != then.tied.end();
  const double share = std::min(1.0, then.acceptable_share[now.place]);
  const auto interval = numerics::share_interval_90(share * effective, effective);
  const bool moves = now.share() < interval.low || now.share() > interval.high;
  return moves && (crosses || !still_wins);
}

std::string flip_sentence(const Look& look, const Expected& answer, const VentOption option, double share) {
  return look.what + ": if " + answer.said + ", " + std::string(name_of(option)) + " is acceptable in " +
         share_of_cases(share) + ".";
}

}  // namespace

NextLook next_look(const Setting& setting, const VentCases& cases, const VentRuns& runs,
                   const std::vector<VentOption>& options, const VentChoice& choice) {
  std::vector<UnknownValues> samples;
  for (const std::size_t i : runs.cases) {
    samples.push_back(cases.samples[i]);
  }
  const auto flips = [&](const Expected& answer) {
    const double effective = numerics::effective_sample_size(answer.weights);
    return effective >= least_reweighted_cases &&
           would_flip(choice, choose(runs.years, answer.weights, options), effective);
  };
  for (const auto& look : looks_left(setting)) {
    const auto answers = expected_answers(setting, samples, runs.counts, look);
    double sum = 0.0;
    for (const auto& answer : answers) {
      sum += answer.mean_likelihood;
    }
    const Expected* likeliest = nullptr;
    for (const auto& answer : answers) {
      const bool is_plausible = sum > 0.0 && answer.mean_likelihood >= least_plausible * sum;
      if (!is_plausible || !flips(answer)) {
        continue;
      }
      likeliest =
          likeliest != nullptr && likeliest->mean_likelihood >= answer.mean_likelihood ? likeliest : &answer;
    }
    if (likeliest != nullptr) {
      const auto then = choose(runs.years, likeliest->weights, options);
      return {.look = look.what, .flip = flip_sentence(look, *likeliest, then.choice, then.share())};
    }
  }
  return {};
}

}  // namespace dewgap
