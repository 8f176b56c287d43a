#include <algorithm>
#include <set>

#include "dewgap/assessment/frame_moisture_kernel.hpp"
#include "dewgap/assessment/vent_cases_kernel.hpp"
#include "dewgap/assessment/verdict_kernel.hpp"
#include "dewgap/assessment/year_run_option_kernel.hpp"
#include "dewgap/assessment/year_tally_kernel.hpp"
#include "dewgap/errors.hpp"
#include "dewgap/numerics/parallel.hpp"
#include "dewgap/numerics/resampling.hpp"

namespace dewgap {
namespace {

constexpr double most_unsettled_share = 0.001;  // as a year's options have it

/// Adds up one window's timber.
class TimberTally {
 public:
  explicit TimberTally(double start_kg_kg) : last_kg_kg_(start_kg_kg) {
    year_.start_kg_kg = start_kg_kg;
    year_.peak_kg_kg = start_kg_kg;
  }

  void add(std::size_t month, double timber_kg_kg) {
    above_.step(last_kg_kg_, timber_kg_kg, 1.0);
    last_kg_kg_ = timber_kg_kg;
    year_.peak_kg_kg = std::max(year_.peak_kg_kg, timber_kg_kg);
    year_.month_mean_kg_kg.at(month) += timber_kg_kg;
    ++hours_.at(month);
  }
  void add_unsettled(std::size_t month) {
    ++unsettled_;
    add(month, last_kg_kg_);
  }

  double unsettled() const { return static_cast<double>(unsettled_); }
  TimberYear year() const {
    TimberYear year = year_;
    for (std::size_t m = 0; m < hours_.size(); ++m) {
      year.month_mean_kg_kg.at(m) /= std::max(1.0, hours_.at(m));
    }
    year.hours_above_caution = above_.total_h();
    year.longest_run_h = above_.longest_h();
    return year;
  }

 private:
  TimberYear year_;
  Spell above_{timber_caution_kg_kg};
  std::array<double, 12> hours_{};
  double last_kg_kg_;
  std::size_t unsettled_ = 0;
};

PairedTimber step_through(const YearSetting& year, const UnknownValues& sample, VentOption option) {
  SampleWeather weather(year, sample, 1.0);
  const auto design = sheet_design(*year.setting, sample, option, TapeFault::none);
  const double start_kg_kg = fitted_store(weather, design).timber_kg_kg;
  auto old_window = old_window_hours(*year.setting, sample);
  OpenTimber old_timber(design, sample[Unknown::edge_factor], start_kg_kg);
  OptionRun sheet(year, sample, option, 1.0);
  TimberTally without(start_kg_kg);
  TimberTally with(start_kg_kg);
  for (std::size_t hour = 0; hour < year.outdoor_C.size(); ++hour) {
    const auto now = weather.at(hour);
    const auto old = old_window.step(now.given);
    if (old.status == SolveStatus::converged) {
      without.add(now.month, old_timber.step(now, old));
    } else {
      without.add_unsettled(now.month);
    }
    const auto beside = sheet.step(hour);
    if (beside.state.status == SolveStatus::converged) {
      with.add(now.month, beside.state.timber_kg_kg);
    } else {
      with.add_unsettled(now.month);
    }
  }
  if (std::max(without.unsettled(), with.unsettled()) >
      most_unsettled_share * static_cast<double>(year.outdoor_C.size())) {
    throw CalculationFailed(explain(SolveStatus::iteration_limit));
  }
  return {.without = without.year(), .with = with.year()};
}

double wettest_month(const TimberYear& year) {
  return *std::max_element(year.month_mean_kg_kg.begin(), year.month_mean_kg_kg.end());
}

FrameMoisture::Range range_of(const std::vector<PairedTimber>& pairs) {
  const std::vector<double> counts(pairs.size(), 1.0);
  const auto spread = [&](auto figure) {
    std::vector<double> values;
    std::transform(pairs.begin(), pairs.end(), std::back_inserter(values), figure);
    return case_spread(values, counts);
  };
  const auto wetter = [](const PairedTimber& p) {
    return p.with.hours_above_caution > p.without.hours_above_caution;
  };
  return {.peak_without_kg_kg = spread([](const PairedTimber& p) { return p.without.peak_kg_kg; }),
          .peak_with_kg_kg = spread([](const PairedTimber& p) { return p.with.peak_kg_kg; }),
          .peak_difference_kg_kg =
              spread([](const PairedTimber& p) { return p.with.peak_kg_kg - p.without.peak_kg_kg; }),
          .wettest_month_difference_kg_kg =
              spread([](const PairedTimber& p) { return wettest_month(p.with) - wettest_month(p.without); }),
          .hours_above_without = spread([](const PairedTimber& p) { return p.without.hours_above_caution; }),
          .hours_above_with = spread([](const PairedTimber& p) { return p.with.hours_above_caution; }),
          .hours_above_difference = spread([](const PairedTimber& p) {
            return p.with.hours_above_caution - p.without.hours_above_caution;
          }),
          .wetter_share = static_cast<double>(std::count_if(pairs.begin(), pairs.end(), wetter)) /
                          static_cast<double>(pairs.size())};
}

struct PlausiblePairs {
  std::vector<PairedTimber> pairs;
  std::set<std::size_t> cases;  ///< that they are of
};

/// Cases picked by weight, those that settle.
PlausiblePairs plausible_pairs(const YearSetting& year, const VentCases& cases,
                               const FrameMoistureOptions& options) {
  const auto picks = numerics::resampled(cases.weights, options.samples, options.seed);
  std::vector<std::optional<PairedTimber>> runs(picks.size());
  numerics::for_each_index(runs.size(), [&](std::size_t i) {
    runs[i] = paired_timber(year, cases.samples[picks[i]], options.option);
  });
  PlausiblePairs found;
  for (std::size_t i = 0; i < runs.size(); ++i) {
    if (runs[i]) {
      found.pairs.push_back(*runs[i]);
      found.cases.insert(picks[i]);
    }
  }
  return found;
}

std::string sentence_of(const FrameMoisture& frame) {
  const auto peak = [](const TimberYear& year) { return whole(100.0 * year.peak_kg_kg) + " %"; };
  std::string sentence = "The outermost timber beside the glass reaches " + peak(frame.without) +
                         " moisture without and " + peak(frame.with) + " with the sheet; above 20 % for " +
                         whole(frame.without.hours_above_caution) + " and " +
                         whole(frame.with.hours_above_caution) + " hours a year.";
  if (frame.range) {
    sentence += " The sheet adds such hours in " + share_of_cases(frame.range->wetter_share) + ".";
  }
  return sentence;
}

}  // namespace

std::optional<PairedTimber> paired_timber(const YearSetting& year, const UnknownValues& sample,
                                          VentOption option) {
  try {
    return step_through(year, sample, option);
  } catch (const CalculationFailed&) {
    return std::nullopt;
  }
}

void FrameMoistureOptions::validate() const {
  require_in_range(static_cast<double>(samples), {0.0, 4096.0}, "samples", "");
}

std::optional<FrameMoisture> frame_moisture(const Survey& survey, const FrameMoistureOptions& options,
                                            const std::optional<HourlyYear>& weather) {
  validate(survey);
  options.validate();
  if (!is_offered(options.option, survey)) {
    throw InvalidInput("option",
                       std::string(name_of(options.option)) + ": cannot be offered for this window");
  }
  if (!is_timber(survey.window.frame)) {
    return std::nullopt;
  }
  const Setting setting = setting_for(survey);
  const auto year = year_setting(setting, weather_of(setting, weather));
  const auto cases = draw_cases(setting, {}, {.seed = options.seed});
  const auto middle = paired_timber(year, middle_case(cases), options.option);
  if (!middle) {
    throw CalculationFailed(explain(SolveStatus::iteration_limit));
  }
  FrameMoisture frame;
  frame.option = options.option;
  frame.without = middle->without;
  frame.with = middle->with;
  for (std::size_t m = 0; m < frame.month_difference_kg_kg.size(); ++m) {
    frame.month_difference_kg_kg.at(m) =
        frame.with.month_mean_kg_kg.at(m) - frame.without.month_mean_kg_kg.at(m);
  }
  frame.peak_difference_kg_kg = frame.with.peak_kg_kg - frame.without.peak_kg_kg;
  frame.hours_above_difference = frame.with.hours_above_caution - frame.without.hours_above_caution;
  if (options.samples > 0) {
    const auto [pairs, different] = plausible_pairs(year, cases, options);
    frame.samples = pairs.size();
    frame.cases_run = different.size();
    frame.samples_left_out = options.samples - pairs.size();
    frame.range = pairs.empty() ? std::nullopt : std::optional(range_of(pairs));
  }
  frame.sentence = sentence_of(frame);
  frame.seed = options.seed;
  frame.weather_source = year.source;
  return frame;
}

}  // namespace dewgap
