#include <algorithm>
#include <array>
#include <cmath>

#include "dewgap/air/humid_air.hpp"
#include "dewgap/assessment/evidence_kernel.hpp"
#include "dewgap/assessment/vent_cases_kernel.hpp"
#include "dewgap/assessment/verdict_kernel.hpp"
#include "dewgap/dwelling/room_humidity.hpp"
#include "dewgap/errors.hpp"

namespace dewgap {
namespace {

/// The running mean that the room's moisture follows: a night's minimum is half a day's swing below it, as
/// the place's coldest month has it.
double mean_outdoor_C(const Setting& setting, const WinterReading& reading) {
  const double half_swing_K = setting.month.outdoor_temperature_C - setting.frost.outdoor_temperature_C;
  return reading.outdoor_C + half_swing_K;
}

/// The night of a reading: calm and clear as a frost night, at the temperature that was read. The room is the
/// case's own: a humidity that was read has an error, and is evidence by itself.
Moment night_of(const Setting& setting, const UnknownValues& sample, const WinterReading& reading,
                double excess_factor) {
  const double mean_C = mean_outdoor_C(setting, reading);
  const double mean_vapour_Pa = vapour_pressure_Pa(mean_C, winter_outdoor_humidity);
  Moment night = frost_moment(setting, sample, excess_factor);
  night.outdoor_C = reading.outdoor_C;
  night.outdoor_vapour_Pa = std::min(mean_vapour_Pa, vapour_pressure_Pa(night.outdoor_C, 1.0));
  night.room_C = reading.room_C.value_or(sample[Unknown::room_temperature]);
  night.room_vapour_Pa = room_vapour_Pa(setting, sample, mean_C, mean_vapour_Pa, excess_factor);
  return night;
}

constexpr std::array every_mist{WinterReading::Mist::none, WinterReading::Mist::edges,
                                WinterReading::Mist::lower_third, WinterReading::Mist::all_over,
                                WinterReading::Mist::runs};

/// 'none' says nothing against a gap that is drier still, nor 'runs' against one that is wetter.
double compatible_K(WinterReading::Mist mist, const GapState& gap, const Observation& meaning) {
  const double centre_K = gap.centre_face_C - gap.potential_dew_point_C;
  switch (mist) {
    case WinterReading::Mist::none:
      return std::min(gap.margin_K, meaning.p50);
    case WinterReading::Mist::runs:
      return std::max(centre_K, meaning.p50);
    case WinterReading::Mist::edges:
    case WinterReading::Mist::lower_third:
    case WinterReading::Mist::all_over:
      return centre_K;
  }
  return centre_K;
}

/// Of what was seen, among all that could have been. A gap that does not settle could be any: it is not ruled
/// out by what was seen, nor spoken for.
double log_probability_of(WinterReading::Mist seen, const GapState& gap) {
  std::vector<double> log_likelihoods;
  std::size_t given = 0;
  for (const auto mist : every_mist) {
    const auto& meaning = observation_of("gap_mist", key_of(mist));
    given = mist == seen ? log_likelihoods.size() : given;
    const bool settled = gap.status == SolveStatus::converged;
    log_likelihoods.push_back(settled ? log_likelihood(compatible_K(mist, gap, meaning), meaning) : 0.0);
  }
  return log_probability(log_likelihoods, given);
}

EvidenceTerm unused(EvidenceTerm term, std::string why_not) {
  term.use.used = false;
  term.use.why_not = std::move(why_not);
  return term;
}

std::string not_frosty() {
  return "not a frosty night: its minimum was above " + whole(frosty_below_C) + " C";
}

EvidenceTerm mist_term(const Setting& setting, const std::vector<UnknownValues>& samples,
                       const std::vector<double>& factors, const WinterReading& reading, VentOption fitted) {
  auto term = evidence_of(Unknown::vapour_excess, "mist behind the sheet, " + reading.date,
                          std::string(key_of(reading.mist)));
  if (!is_frosty(reading)) {
    return unused(std::move(term), not_frosty());
  }
  for (std::size_t i = 0; i < samples.size(); ++i) {
    const auto night = night_of(setting, samples[i], reading, factors[i]);
    const auto gap =
        solve_gap(gap_case_for(setting, samples[i], night, fitted, CurtainState::drawn, TapeFault::none));
    term.log_likelihood.push_back(log_probability_of(reading.mist, gap));
  }
  return term;
}

/// Readings of one instrument: so much each that together they have the spread of their mean.
double sd_of_each(const std::vector<WinterReading>& readings) {
  const auto count = static_cast<std::size_t>(
      std::count_if(readings.begin(), readings.end(), [](const WinterReading& reading) {
        return is_frosty(reading) && reading.room_relative_humidity.has_value();
      }));
  return count == 0 ? 1.0 : std::sqrt(static_cast<double>(count)) * hygrometer_sd(count);
}

/// As the survey's hygrometer, but for the moisture that the sheet keeps in the room.
EvidenceTerm humidity_term(const Setting& setting, const std::vector<UnknownValues>& samples,
                           const std::vector<double>& factors, const WinterReading& reading, double sd) {
  auto term =
      evidence_of(Unknown::vapour_excess, "room humidity, " + reading.date,
                  "relative humidity " + std::to_string(*reading.room_relative_humidity).substr(0, 4));
  term.kind = EvidenceTerm::Likelihood::density;
  if (!is_frosty(reading)) {
    return unused(std::move(term), not_frosty());
  }
  const double mean_C = mean_outdoor_C(setting, reading);
  const double outdoor_Pa = vapour_pressure_Pa(mean_C, winter_outdoor_humidity);
  for (std::size_t i = 0; i < samples.size(); ++i) {
    const double excess_Pa = factors[i] * vapour_excess_Pa(samples[i][Unknown::vapour_excess], mean_C);
    const double room_C = reading.room_C.value_or(samples[i][Unknown::room_temperature]);
    const double off =
        (relative_humidity(room_C, outdoor_Pa + excess_Pa) - *reading.room_relative_humidity) / sd;
    term.log_likelihood.push_back(-0.5 * off * off);
  }
  const auto& expert = setting.survey->expert;
  const bool overruled = expert.vapour_excess_Pa || expert.room_relative_humidity;
  return overruled ? unused(std::move(term), "an expert gave the room's humidity, which wins")
                   : std::move(term);
}

}  // namespace

std::string_view key_of(WinterReading::Mist mist) {
  switch (mist) {
    case WinterReading::Mist::none:
      return "none";
    case WinterReading::Mist::edges:
      return "edges";
    case WinterReading::Mist::lower_third:
      return "lower_third";
    case WinterReading::Mist::all_over:
      return "all_over";
    case WinterReading::Mist::runs:
      return "runs";
  }
  return "none";
}

void validate(const WinterReading& reading) {
  require_in_range(reading.outdoor_C, {-40.0, 30.0}, "reading.outdoor", "C");
  if (reading.room_C) {
    require_in_range(*reading.room_C, {0.0, 40.0}, "reading.room", "C");
  }
  if (reading.room_relative_humidity) {
    require_in_range(*reading.room_relative_humidity, {0.05, 1.0}, "reading.room_humidity", "(share)");
  }
}

bool is_frosty(const WinterReading& reading) {
  return reading.outdoor_C <= frosty_below_C;
}

std::vector<EvidenceTerm> winter_evidence(const Setting& setting, const std::vector<UnknownValues>& samples,
                                          const std::vector<WinterReading>& readings, VentOption fitted) {
  std::vector<EvidenceTerm> terms;
  if (readings.empty()) {
    return terms;
  }
  std::vector<double> factors;
  factors.reserve(samples.size());
  for (const auto& sample : samples) {
    factors.push_back(excess_factor_of(setting, sample, fitted));
  }
  const double sd = sd_of_each(readings);
  terms.reserve(readings.size());
  for (const auto& reading : readings) {
    validate(reading);
    terms.push_back(mist_term(setting, samples, factors, reading, fitted));
    if (reading.room_relative_humidity) {
      terms.push_back(humidity_term(setting, samples, factors, reading, sd));
    }
  }
  return terms;
}

}  // namespace dewgap
