#include <cmath>
#include <utility>

#include "dewgap/air/humid_air.hpp"
#include "dewgap/assessment/evidence_kernel.hpp"
#include "dewgap/dwelling/room_humidity.hpp"
#include "dewgap/errors.hpp"
#include "dewgap/numerics/root_finding.hpp"
#include "dewgap/numerics/sampling.hpp"

namespace dewgap {
namespace {

constexpr double coldest_searched_C = -45.0;
constexpr double mildest_searched_C = 25.0;
constexpr double day_to_day_humidity =
    0.06;  // standard deviation of a reading about its week: our convention

std::string_view answer_of(CentreMists mists) {
  switch (mists) {
    case CentreMists::never:
      return "never";
    case CentreMists::hard_frost_only:
      return "hard_frost_only";
    case CentreMists::frosty_mornings:
      return "frosty_mornings";
    case CentreMists::cool_days:
      return "cool_days";
    case CentreMists::mild_nights:
      return "mild_nights";
  }
  return "never";
}

/// Face of the single pane, as the year of hours has it under the winter's mean sky and wind, less the room's
/// dew point at an outdoor temperature: positive is clear.
double clearance_K(const Setting& setting, const UnknownValues& sample, const Stack& pane, double outdoor_C) {
  const double outdoor_Pa = vapour_pressure_Pa(outdoor_C, winter_outdoor_humidity);
  const double room_C = sample[Unknown::room_temperature];
  const Moment moment{.outdoor_C = outdoor_C,
                      .outdoor_vapour_Pa = outdoor_Pa,
                      .station_wind_m_s = setting.month.wind_m_s,
                      .cloud_cover = sample[Unknown::cloud_cover],
                      .room_C = room_C,
                      .room_vapour_Pa = room_vapour_Pa(setting, sample, outdoor_C, outdoor_Pa, 1.0)};
  const auto heat = solve_stack(pane, outdoors_at(setting, sample, moment), room_at(sample, moment));
  if (heat.status != SolveStatus::converged) {
    throw CalculationFailed(explain(heat.status));
  }
  return heat.face_temperature_C[1] - dew_point_C(moment.room_vapour_Pa);
}

/// Of the pane's mist, or of water on the sill: that tells of a pane that runs, a dry one of a pane that
/// seldom mists.
EvidenceTerm pane_term(const std::vector<double>& misting_C, const WordAnswer& word,
                       std::string observation) {
  auto term = evidence_of(Unknown::vapour_excess, std::move(observation), word.given_answer());
  for (const double outdoor_C : misting_C) {
    term.log_likelihood.push_back(log_probability(outdoor_C, word));
  }
  return term;
}

/// What was seen of the single pane's mist: both observations from the same misting temperatures.
std::vector<EvidenceTerm> pane_terms(const Setting& setting, const std::vector<UnknownValues>& samples) {
  const auto& survey = *setting.survey;
  const bool sill_speaks = survey.timber.water_pools && !survey.timber.lets_rain_in.value_or(false);
  std::vector<EvidenceTerm> terms;
  if (!survey.room.centre_mists && !sill_speaks) {
    return terms;
  }
  std::vector<double> misting_C;
  misting_C.reserve(samples.size());
  for (const auto& sample : samples) {
    misting_C.push_back(misting_outdoor_C(setting, sample));
  }
  if (survey.room.centre_mists) {
    terms.push_back(pane_term(misting_C, word_answer("centre_mists", answer_of(*survey.room.centre_mists)),
                              "centre of the pane mists"));
  }
  if (sill_speaks) {
    terms.push_back(pane_term(misting_C,
                              word_answer("water_on_sill", *survey.timber.water_pools ? "yes" : "no"),
                              "water on the sill"));
  }
  return terms;
}

EvidenceTerm hygrometer_term(const Setting& setting, const std::vector<UnknownValues>& samples) {
  const auto& readings = setting.survey->room.hygrometer;
  auto term =
      evidence_of(Unknown::vapour_excess, "hygrometer", std::to_string(readings.size()) + " readings");
  term.kind = EvidenceTerm::Likelihood::density;
  const auto count = static_cast<double>(readings.size());
  const double sd = hygrometer_sd(readings.size());
  for (const auto& sample : samples) {
    double mean_gap = 0.0;
    for (const auto& reading : readings) {
      const double outdoor_Pa = vapour_pressure_Pa(reading.outdoor_C, winter_outdoor_humidity);
      const double excess_Pa = vapour_excess_Pa(sample[Unknown::vapour_excess], reading.outdoor_C);
      mean_gap +=
          (relative_humidity(reading.room_C, outdoor_Pa + excess_Pa) - reading.relative_humidity) / count;
    }
    term.log_likelihood.push_back(-0.5 * (mean_gap / sd) * (mean_gap / sd));
  }
  return term;
}

EvidenceTerm washing_term(const std::vector<UnknownValues>& samples, const WordAnswer& word) {
  auto term = evidence_of(Unknown::vapour_excess, "washing dried in the room", word.given_answer());
  for (const auto& sample : samples) {
    term.log_likelihood.push_back(log_probability_of_logarithm(sample[Unknown::vapour_excess], word));
  }
  return term;
}

}  // namespace

double hygrometer_sd(std::size_t count) {
  const double instrument = observation_of("hygrometer", "reading").p90 / numerics::normal_p90;
  return std::hypot(instrument, day_to_day_humidity / std::sqrt(static_cast<double>(count)));
}

double misting_outdoor_C(const Setting& setting, const UnknownValues& sample) {
  const auto pane = single_stack(setting, sample, CurtainState::open);
  const auto clearance = [&](double outdoor_C) { return clearance_K(setting, sample, pane, outdoor_C); };
  if (clearance(coldest_searched_C) > 0.0) {
    return coldest_searched_C;
  }
  if (clearance(mildest_searched_C) < 0.0) {
    return mildest_searched_C;
  }
  return numerics::find_root(clearance, coldest_searched_C, mildest_searched_C, {.absolute_tolerance = 1e-3})
      .root;
}

std::vector<EvidenceTerm> humidity_evidence(const Setting& setting,
                                            const std::vector<UnknownValues>& samples) {
  const auto& room = setting.survey->room;
  auto terms = pane_terms(setting, samples);
  if (!room.hygrometer.empty()) {
    terms.push_back(hygrometer_term(setting, samples));
  }
  if (room.washing_dried) {
    terms.push_back(washing_term(samples, word_answer("washing_dried", *room.washing_dried ? "yes" : "no")));
  }
  const auto& expert = setting.survey->expert;
  for (auto& term : terms) {
    if (expert.vapour_excess_Pa || expert.room_relative_humidity) {
      term.use.used = false;
      term.use.why_not = "an expert gave the room's humidity, which wins";
    }
  }
  return terms;
}

}  // namespace dewgap
