// How damp a room, how leaky a seal or an old window still leave the gap dry: unions of intervals. Internal
// to assessment/.
#pragma once

#include <functional>
#include <optional>
#include <vector>

#include "dewgap/assessment/vent_cases_kernel.hpp"

namespace dewgap {

/// Where a quantity that is dry or not (margin >= 0) is dry within [low, high], both positive, scanned in
/// even steps of its logarithm and each edge refined to 0.5 %. A margin without value (a balance that did not
/// settle) makes the whole answer empty: a scan with a hole in it is no answer.
std::vector<HumidityBand> dry_intervals(double low, double high, int steps,
                                        const std::function<std::optional<double>(double)>& margin);

struct InverseAnswers {
  std::vector<HumidityBand> room_humidity;
  std::vector<HumidityBand> seal_leakage;
  std::vector<HumidityBand> outdoor_leakage;
};
/// Of one case with an option in the coldest month's means, as vent_advice.hpp states.
InverseAnswers inverse_answers(const Setting& setting, const UnknownValues& middle, VentOption option);

/// Rise of the room's relative humidity in the coldest month by sealing, share of 1.
double room_humidity_rise(const Setting& setting, const UnknownValues& sample, VentOption option);

}  // namespace dewgap
