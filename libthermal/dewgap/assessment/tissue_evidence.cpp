#include <algorithm>
#include <array>
#include <cmath>
#include <numeric>

#include "dewgap/air/constants.hpp"
#include "dewgap/assessment/evidence_kernel.hpp"
#include "dewgap/numerics/sampling.hpp"

namespace dewgap {
namespace {

constexpr double least_difference_K = 10.0;
constexpr double misread_share = 0.03;     // a strip misread whatever the pressure: our convention
constexpr double reading_spread_Pa = 0.3;  // hand, breath and swirl: our convention
constexpr double unknown_wind_m_s = 3.5;

constexpr std::array all_ways{TissueWay::in, TissueWay::out, TissueWay::hangs, TissueWay::both_ways};

/// Likelihood of an answer at a pressure p (positive outwards) with its spread within the hour.
double likelihood_of(TissueWay way, double pressure_Pa, double sd_Pa) {
  const double threshold_Pa = observation_of("tissue", "threshold").p50;
  const double sd = std::hypot(sd_Pa, reading_spread_Pa);
  const double out = numerics::normal_probability((pressure_Pa - threshold_Pa) / sd);
  const double in = numerics::normal_probability((-pressure_Pa - threshold_Pa) / sd);
  const double hangs = std::max(0.0, 1.0 - in - out);
  const double both = std::min(1.0, 4.0 * in * out);
  double likelihood = 0.0;
  switch (way) {
    case TissueWay::out:
      likelihood = out * (1.0 - in);
      break;
    case TissueWay::in:
      likelihood = in * (1.0 - out);
      break;
    case TissueWay::hangs:
      likelihood = hangs;
      break;
    case TissueWay::both_ways:
      likelihood = both;
      break;
  }
  return misread_share + (1.0 - misread_share) * likelihood;
}

/// Of that answer among all.
double probability_of(TissueWay way, double pressure_Pa, double sd_Pa) {
  const double sum = std::accumulate(
      all_ways.begin(), all_ways.end(), 0.0,
      [&](double so_far, TissueWay any) { return so_far + likelihood_of(any, pressure_Pa, sd_Pa); });
  return likelihood_of(way, pressure_Pa, sd_Pa) / sum;
}

std::string answer_of(TissueWay way) {
  switch (way) {
    case TissueWay::in:
      return "in";
    case TissueWay::out:
      return "out";
    case TissueWay::hangs:
      return "hangs";
    case TissueWay::both_ways:
      return "both ways";
  }
  return "hangs";
}

double wind_of_test_m_s(const TissueTest& tissue) {
  if (!tissue.wind) {
    return unknown_wind_m_s;
  }
  switch (*tissue.wind) {
    case WindToday::calm:
      return observation_of("wind_today", "calm").p50;
    case WindToday::breeze:
      return observation_of("wind_today", "breeze").p50;
    case WindToday::windy:
      return observation_of("wind_today", "windy").p50;
  }
  return unknown_wind_m_s;
}

std::string why_not_used(const Survey& survey) {
  if (survey.expert.mean_pressure_Pa) {
    return "an expert gave the pressure, which wins";
  }
  if (!survey.tissue.colder_outside_K) {
    return "how much colder it was outside was not noted";
  }
  if (*survey.tissue.colder_outside_K < least_difference_K) {
    return "less than 10 K colder outside: recorded, not used";
  }
  return {};
}

/// Pressure of a sample on the day of the test at a height over mid-window: stack grows by drho g per metre.
struct TestPressure {
  PressureWithinHour middle;
  double stack_Pa_m = 0.0;
};

TestPressure pressure_of_test(const Setting& setting, const UnknownValues& sample) {
  const auto& tissue = setting.survey->tissue;
  Moment moment;
  moment.room_C = sample[Unknown::room_temperature];
  moment.outdoor_C = moment.room_C - *tissue.colder_outside_K;
  moment.station_wind_m_s = wind_of_test_m_s(tissue);
  UnknownValues day = sample;
  if (tissue.extract_on && !*tissue.extract_on) {
    day[Unknown::extract_depression] = 0.0;
  }
  TestPressure result;
  result.middle = pressure_at(setting, day, moment);
  // Ideal gas: rho = p / (R T), so the difference per metre is rho_out g (1 - T_out / T_in).
  const double outdoor_K = constants::kelvin(moment.outdoor_C);
  const double density =
      constants::standard_pressure_Pa / (constants::gas_constant_dry_air_J_kgK * outdoor_K);
  result.stack_Pa_m =
      density * constants::standard_gravity_m_s2 * (1.0 - outdoor_K / constants::kelvin(moment.room_C));
  return result;
}

EvidenceTerm tissue_term(const Setting& setting, const std::vector<UnknownValues>& samples, TissueWay way,
                         double height_over_middle_m, const std::string& where) {
  auto term = evidence_of(Unknown::neutral_level_offset, "tissue at the " + where, answer_of(way));
  term.use.why_not = why_not_used(*setting.survey);
  term.use.used = term.use.why_not.empty();
  if (!term.use.used) {
    return term;
  }
  for (const auto& sample : samples) {
    const auto test = pressure_of_test(setting, sample);
    const double pressure_Pa = test.middle.mean_Pa + test.stack_Pa_m * height_over_middle_m;
    term.log_likelihood.push_back(
        std::log(probability_of(way, pressure_Pa, test.middle.standard_deviation_Pa)));
  }
  return term;
}

}  // namespace

std::vector<EvidenceTerm> tissue_evidence(const Setting& setting, const std::vector<UnknownValues>& samples) {
  const auto& tissue = setting.survey->tissue;
  const double half_height_m = 0.5 * setting.window.height_m;
  std::vector<EvidenceTerm> terms;
  if (tissue.bottom) {
    terms.push_back(tissue_term(setting, samples, *tissue.bottom, -half_height_m, "bottom"));
  }
  if (tissue.meeting_rail) {
    terms.push_back(tissue_term(setting, samples, *tissue.meeting_rail, 0.0, "meeting rail"));
  }
  if (tissue.top) {
    terms.push_back(tissue_term(setting, samples, *tissue.top, half_height_m, "top"));
  }
  return terms;
}

}  // namespace dewgap
