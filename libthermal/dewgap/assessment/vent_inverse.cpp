#include "dewgap/assessment/vent_inverse_kernel.hpp"

#include <algorithm>
#include <cmath>

#include "dewgap/air/humid_air.hpp"
#include "dewgap/numerics/root_finding.hpp"

namespace dewgap {
namespace {

constexpr double decades = 3.0;
constexpr int scan_steps = 48;
constexpr double edge_tolerance = 0.005;  // on the logarithm

GapCase coldest_month_case(const Setting& setting, const UnknownValues& sample, VentOption option) {
  const auto month = month_moment(setting, sample, excess_factor_of(setting, sample, option));
  return gap_case_for(setting, sample, month, option, CurtainState::open, TapeFault::none);
}

/// The leakage's three decades about its middle, within the bounds of its prior.
std::vector<HumidityBand> dry_leakage(const Setting& setting, const UnknownValues& middle, VentOption option,
                                      Unknown leakage) {
  const auto& prior = prior_of(leakage);
  const double reach = std::pow(10.0, 0.5 * decades);
  const double low = std::max(prior.lowest, middle[leakage] / reach);
  const double high = std::min(prior.highest, middle[leakage] * reach);
  return dry_intervals(low, high, scan_steps, [&](double value) -> std::optional<double> {
    UnknownValues sample = middle;
    sample[leakage] = value;
    const auto gap = solve_gap(coldest_month_case(setting, sample, option));
    return gap.status == SolveStatus::converged ? std::optional(gap.margin_K) : std::nullopt;
  });
}

}  // namespace

std::vector<HumidityBand> dry_intervals(double low, double high, int steps,
                                        const std::function<std::optional<double>(double)>& margin) {
  bool has_hole = false;
  const auto margin_at = [&](double logarithm) {
    const auto value = margin(std::exp(logarithm));
    has_hole = has_hole || !value;
    return value.value_or(-1.0);
  };
  const double first = std::log(low);
  const double last = std::log(high);
  std::vector<HumidityBand> dry;
  double before = first;
  double opened = first;
  bool inside = margin_at(first) >= 0.0;
  for (int i = 1; i <= steps; ++i) {
    const double now = i == steps ? last : first + (last - first) * i / steps;
    if ((margin_at(now) >= 0.0) != inside) {
      const double edge =
          numerics::find_root(margin_at, before, now, {.absolute_tolerance = edge_tolerance}).root;
      if (inside) {
        dry.push_back({.low = std::exp(opened), .high = std::exp(edge)});
      }
      opened = edge;
      inside = !inside;
    }
    before = now;
  }
  if (inside) {
    dry.push_back({.low = std::exp(opened), .high = high});
  }
  return has_hole ? std::vector<HumidityBand>{} : dry;
}

InverseAnswers inverse_answers(const Setting& setting, const UnknownValues& middle, VentOption option) {
  InverseAnswers answers;
  const auto humidities = dry_room_humidities(coldest_month_case(setting, middle, option));
  for (std::size_t i = 0; i < humidities.count; ++i) {
    answers.room_humidity.push_back(
        {.low = humidities.intervals.at(i).low, .high = humidities.intervals.at(i).high});
  }
  const auto outdoor = setting.window.joints_in_series && setting.window.joint_length_m > 0.0
                           ? Unknown::joint_leakage
                           : Unknown::putty_leakage;
  answers.seal_leakage = dry_leakage(setting, middle, option, Unknown::seal_leakage);
  answers.outdoor_leakage = dry_leakage(setting, middle, option, outdoor);
  return answers;
}

double room_humidity_rise(const Setting& setting, const UnknownValues& sample, VentOption option) {
  const auto before = month_moment(setting, sample, 1.0);
  const auto after = month_moment(setting, sample, excess_factor_of(setting, sample, option));
  return relative_humidity(after.room_C, after.room_vapour_Pa) -
         relative_humidity(before.room_C, before.room_vapour_Pa);
}

}  // namespace dewgap
