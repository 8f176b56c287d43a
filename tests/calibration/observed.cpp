#include "calibration/observed.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <stdexcept>

#include "dewgap/assessment/evidence_kernel.hpp"
#include "dewgap/numerics/sampling.hpp"

namespace dewgap::calibration {
namespace {

constexpr std::size_t hygrometer_readings = 3;
constexpr double least_humidity = 0.05;  // what a survey takes
constexpr double most_humidity = 1.0;

double in_half_degrees(double temperature_C) {
  return 0.5 * std::round(2.0 * temperature_C);
}

double in_per_cent(double humidity) {
  return std::clamp(0.01 * std::round(100.0 * humidity), least_humidity, most_humidity);
}

void add(std::vector<double>& sum, const std::vector<double>& more) {
  std::transform(sum.begin(), sum.end(), more.begin(), sum.begin(), std::plus<>());
}

std::size_t drawn_answer(const Matrix& chance, std::size_t truth, Dice& dice) {
  double left = dice.uniform();
  std::size_t last = 0;
  for (std::size_t k = 0; k < chance.size(); ++k) {
    const double here = std::exp(chance[k][truth]);
    last = here > 0.0 ? k : last;
    left -= here;
    if (left < 0.0) {
      return k;
    }
  }
  return last;  // by rounding
}

/// Errors of readings by one instrument, as hygrometer_sd has them.
struct Instrument {
  double shared = 0.0;
  double own_sd = 0.0;
};

Instrument instrument_with_error(Dice& dice) {
  // Var(1 reading) = instrument^2 + day^2, Var(mean of 2) = instrument^2 + day^2 / 2.
  const double one = hygrometer_sd(1) * hygrometer_sd(1);
  const double two = hygrometer_sd(2) * hygrometer_sd(2);
  return {.shared = std::sqrt(2.0 * two - one) * dice.normal(), .own_sd = std::sqrt(2.0 * (one - two))};
}

class Observer {
 public:
  Observer(const BankPart& part, const std::vector<AskedQuestion>& asked, std::size_t truth,
           std::uint64_t seed)
      : part_(&part), asked_(&asked), truth_(truth), dice_(seed), instrument_(instrument_with_error(dice_)) {
    observed_.notes.survey = part.scene->archetype.survey;
    const std::vector<double> nothing(part.samples.size(), 0.0);
    for (const auto stage : all_stages) {
      observed_.evidence[stage] = {nothing, nothing};
    }
  }

  Observed observed() {
    for (const auto stage : {Stage::joints, Stage::tissue, Stage::mist}) {
      ask(stage, dice_.below(occasions_of(stage)));
    }
    read_hygrometer();
    const std::size_t night = dice_.below(winter_occasions);
    ask(Stage::winter_mist, night);
    read_winter_humidity();
    return std::move(observed_);
  }

 private:
  std::size_t occasions_of(Stage stage) const {
    std::size_t most = 1;
    for (const auto& one : *asked_) {
      most = one.question.stage == stage ? std::max(most, one.question.occasions) : most;
    }
    return most;
  }

  void ask(Stage stage, std::size_t occasion) {
    for (const auto& one : *asked_) {
      const bool always = one.question.occasions == 1;
      if (one.question.stage == stage && (always || one.question.occasion == occasion)) {
        const std::size_t answer = drawn_answer(one.chance, truth_, dice_);
        one.question.answers[answer].put(observed_.notes);
        add(observed_.evidence[stage].stated, one.stated[answer]);
        add(observed_.evidence[stage].chance, one.chance[answer]);
      }
    }
  }

  const UnknownValues& truth() const { return part_->samples[truth_]; }

  double read(double true_humidity) {
    return in_per_cent(true_humidity + instrument_.shared + instrument_.own_sd * dice_.normal());
  }

  /// The room's true humidity is where the reading's own likelihood is largest for the true window.
  double true_humidity(HygrometerReading reading) const {
    std::array<double, 3> at{};
    for (std::size_t k = 0; k < at.size(); ++k) {
      reading.relative_humidity = 0.4 + 0.1 * static_cast<double>(k);
      Notes notes{.survey = part_->scene->archetype.survey};
      notes.survey.room.hygrometer = {reading};
      at[k] = log_likelihood_of(*part_->scene, notes, {truth()}).front();
    }
    return peak_of(0.4, 0.1, at).middle;
  }

  void read_hygrometer() {
    auto& readings = observed_.notes.survey.room.hygrometer;
    for (std::size_t k = 0; k < hygrometer_readings; ++k) {
      HygrometerReading reading{.room_C = in_half_degrees(truth()[Unknown::room_temperature]),
                                .outdoor_C = in_half_degrees(4.0 + 3.0 * dice_.normal())};
      reading.relative_humidity = read(true_humidity(reading));
      readings.push_back(reading);
    }
    Notes alone{.survey = part_->scene->archetype.survey};
    alone.survey.room.hygrometer = readings;
    const auto stated = log_likelihood_of(*part_->scene, alone, part_->samples);
    observed_.evidence[Stage::hygrometer] = {stated, stated};  // a normal error on a number needs no sum
  }

  /// Of the mist, then of the humidity.
  std::vector<EvidenceTerm> winter_terms(const WinterReading& reading,
                                         const std::vector<UnknownValues>& samples) const {
    auto terms = winter_evidence(part_->scene->setting, samples, {reading}, VentOption::sealed);
    if (terms.size() != 2 || !terms[0].use.used || !terms[1].use.used) {
      throw std::runtime_error("a winter's reading with humidity has two terms");
    }
    return terms;
  }

  double true_winter_humidity(WinterReading reading) const {
    std::array<double, 3> at{};
    for (std::size_t k = 0; k < at.size(); ++k) {
      reading.room_relative_humidity = 0.4 + 0.1 * static_cast<double>(k);
      at[k] = winter_terms(reading, {truth()})[1].log_likelihood.front();
    }
    return peak_of(0.4, 0.1, at).middle;
  }

  /// The mist is that of the true room, in either stage; here with the temperature that was read.
  void read_winter_humidity() {
    auto& reading = observed_.notes.readings.front();
    reading.room_C = in_half_degrees(truth()[Unknown::room_temperature]);
    reading.room_relative_humidity = read(true_winter_humidity(reading));
    const auto terms = winter_terms(reading, part_->samples);
    auto& evidence = observed_.evidence[Stage::winter_with_humidity];
    evidence.stated = terms[0].log_likelihood;
    add(evidence.stated, terms[1].log_likelihood);
    evidence.chance = observed_.evidence[Stage::winter_mist].chance;
    add(evidence.chance, terms[1].log_likelihood);
  }

  const BankPart* part_;
  const std::vector<AskedQuestion>* asked_;
  std::size_t truth_;
  Dice dice_;
  Instrument instrument_;
  Observed observed_;
};

}  // namespace

double Dice::uniform() {
  return (static_cast<double>(engine_() >> 11u) + 0.5) * 0x1p-53;
}

double Dice::normal() {
  return numerics::normal_quantile(uniform());
}

std::size_t Dice::below(std::size_t count) {
  return std::min(count - 1, static_cast<std::size_t>(uniform() * static_cast<double>(count)));
}

Observed observed_at(const BankPart& part, const std::vector<AskedQuestion>& asked, std::size_t truth,
                     std::uint64_t seed) {
  return Observer(part, asked, truth, seed).observed();
}

}  // namespace dewgap::calibration
