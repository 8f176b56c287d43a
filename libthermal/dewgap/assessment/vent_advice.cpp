#include "dewgap/assessment/vent_advice.hpp"

#include <algorithm>
#include <cmath>

#include "dewgap/assessment/vent_inverse_kernel.hpp"
#include "dewgap/assessment/vent_mornings_kernel.hpp"
#include "dewgap/assessment/vent_remedies_kernel.hpp"
#include "dewgap/assessment/vent_words_kernel.hpp"
#include "dewgap/assessment/verdict_kernel.hpp"
#include "dewgap/errors.hpp"
#include "dewgap/numerics/sampling.hpp"

namespace dewgap {
namespace {

constexpr double most_left_out_share = 0.05;  // of the picks; more is no answer: our convention

/// Figures of one option over the runs.
template <class YearOf>
OptionAdvice figures_of(const VentRuns& runs, YearOf year_of_run) {
  const auto spread = [&](float OptionYear::*figure) {
    std::vector<double> values;
    for (const auto& run : runs.years) {
      values.push_back(static_cast<double>(year_of_run(run).*figure));
    }
    return case_spread(values, runs.counts);
  };
  OptionAdvice advice;
  const auto picks = static_cast<double>(runs.picks());
  for (std::size_t i = 0; i < runs.years.size(); ++i) {
    const double share = runs.counts[i] / picks;
    const OptionYear& year = year_of_run(runs.years[i]);
    advice.band_share.at(static_cast<std::size_t>(year.band)) += share;
    advice.acceptable_share += is_acceptable(year) ? share : 0.0;
  }
  advice.hours_wet = spread(&OptionYear::hours_wet);
  advice.longest_wet_run_h = spread(&OptionYear::longest_wet_run_h);
  advice.peak_film_g_m2 = spread(&OptionYear::peak_film_g_m2);
  advice.drained_g_m2 = spread(&OptionYear::drained_g_m2);
  advice.peak_pool_g_m2 = spread(&OptionYear::peak_pool_g_m2);
  advice.frost_hours = spread(&OptionYear::frost_hours);
  advice.misty_mornings = spread(&OptionYear::misty_mornings);
  advice.timber_hours_above_caution = spread(&OptionYear::timber_hours_above_caution);
  advice.room_face_peak_month_humidity = spread(&OptionYear::room_face_peak_month_humidity);
  advice.heat_kWh = spread(&OptionYear::heat_kWh);
  return advice;
}

OptionAdvice advice_for(const VentRuns& runs, VentOption option) {
  auto advice =
      figures_of(runs, [option](const SampleYear& run) -> const OptionYear& { return year_of(run, option); });
  std::vector<double> against_sealed;
  for (const auto& run : runs.years) {
    against_sealed.push_back(
        static_cast<double>(year_of(run, option).heat_kWh - year_of(run, VentOption::sealed).heat_kWh));
  }
  advice.heat_against_sealed_kWh = case_spread(against_sealed, runs.counts);
  advice.option = option;
  return advice;
}

/// The bound that would have paid for enough cases, when this one did not.
std::optional<std::size_t> hours_needed(const VentRuns& runs, const YearSetting& year) {
  const bool are_enough = runs.picks() + runs.picks_left_out >= least_picks;
  return are_enough ? std::nullopt : std::optional(least_window_hours(year));
}

/// Why no shares can be shown; empty when they can.
std::string nothing_to_show(const VentRuns& runs, const std::optional<std::size_t>& least_hours) {
  if (least_hours) {
    return "Too few window-hours for eight cases: it takes " + std::to_string(*least_hours) + ".";
  }
  const std::size_t made = runs.picks() + runs.picks_left_out;
  const auto left_out = static_cast<double>(runs.picks_left_out);
  if (runs.picks() == 0 || left_out > std::max(1.0, most_left_out_share * static_cast<double>(made))) {
    return "The balance did not settle in " + std::to_string(runs.picks_left_out) + " of " +
           std::to_string(made) + " cases.";
  }
  return {};
}

double median_humidity_rise(const Setting& setting, const VentCases& cases, const VentRuns& runs,
                            VentOption choice) {
  std::vector<double> rises;
  for (const std::size_t i : runs.cases) {
    rises.push_back(room_humidity_rise(setting, cases.samples[i], choice));
  }
  return numerics::weighted_quantile(rises, runs.counts, 0.5);
}

void add_options(const VentRuns& runs, const std::vector<VentOption>& options, const VentChoice& choice,
                 VentAdvice& advice) {
  advice.choice = choice.choice;
  for (const std::size_t place : choice.tied) {
    advice.tied.push_back(options[place]);
  }
  for (std::size_t j = 0; j < options.size(); ++j) {
    advice.options.push_back(advice_for(runs, options[j]));
    advice.options.back().best_share = choice.best_share[j];
  }
  advice.as_it_is = figures_of(runs, [](const SampleYear& run) -> const OptionYear& { return run.as_it_is; });
  advice.lifted_tape_acceptable_share = figures_of(runs, [](const SampleYear& run) -> const OptionYear& {
                                          return run.lifted;
                                        }).acceptable_share;
}

void add_what_decides(const Setting& setting, const VentCases& cases, const VentRuns& runs,
                      const std::vector<VentOption>& options, const VentChoice& choice, VentAdvice& advice) {
  advice.deciders = deciders_of(cases, runs, choice.choice);
  advice.moved_most = moved_most(cases, runs, options, choice);
  const auto look = next_look(setting, cases, runs, options, choice);
  advice.next_look = look.look;
  advice.flip = look.flip;
  if (look.flip.empty()) {
    advice.flip = advice.deciders.empty()
                      ? "No quick look would change this."
                      : "No quick look would change this; most hangs on " + advice.deciders[0].label + ".";
  }
}

void add_inverse(const Setting& setting, const VentCases& cases, VentOption choice, VentAdvice& advice) {
  auto answers = inverse_answers(setting, middle_case(cases), choice);
  advice.dry_room_humidity = std::move(answers.room_humidity);
  advice.dry_seal_leakage = std::move(answers.seal_leakage);
  advice.dry_outdoor_leakage = std::move(answers.outdoor_leakage);
}

/// What costs hours beyond the cases themselves, within what is left of the bound.
void add_remedies_and_drying(const YearSetting& year, const VentCases& cases, const VentRuns& runs,
                             const std::vector<VentOption>& options, const VentChoice& choice,
                             HourBudget& budget, VentAdvice& advice) {
  auto remedies = year_remedies(year, cases, runs, options, choice, budget);
  advice.remedies = std::move(remedies.sentences);
  advice.realistic_remedy = remedies.realistic;
  const auto drying = drying_of(year, cases, runs, options, budget);
  for (std::size_t j = 0; j < options.size(); ++j) {
    advice.options[j].drying_days = drying[j].days;
    advice.options[j].cases_dried = drying[j].cases;
    advice.options[j].not_dry_in_a_year_share = drying[j].not_in_a_year_share;
  }
}

VentAdvice blank_advice(const VentCases& cases, const YearSetting& year, const VentAdviceOptions& options,
                        const std::vector<WinterReading>& readings) {
  VentAdvice advice;
  for (const auto& term : cases.evidence) {
    advice.evidence.push_back(term.use);
  }
  advice.effective_samples = cases.effective;
  advice.prior_samples = cases.drawn;
  advice.seed = options.seed;
  advice.weather_source = year.source;
  advice.modelled = year.modelled;
  advice.mornings = mornings_of(readings, cases.evidence);
  advice.readings = readings_used(advice.mornings);
  advice.mornings_foretold_share = foretold_share_of(advice.mornings);
  return advice;
}

/// What was seen against the model unsettles any choice; empty when it is settled.
std::string unsettled_because(const VentAdvice& advice, const VentRuns& runs,
                              const std::vector<VentOption>& options, const VentChoice& choice) {
  auto because = against_the_model(advice.mornings_foretold_share);
  return because.empty() ? unclear_because(runs.years, runs.counts, options, choice) : because;
}

}  // namespace

void VentAdviceOptions::validate() const {
  require_in_range(static_cast<double>(prior_samples), {64.0, 1e6}, "prior_samples", "");
  require_in_range(static_cast<double>(most_window_hours), {1e4, 1e12}, "most_window_hours", "h");
  if (samples != 0) {
    require_in_range(static_cast<double>(samples), {8.0, 1e6}, "samples", "");
  }
}

VentAdvice vent_advice(const Survey& survey, const std::optional<HourlyYear>& weather,
                       const std::vector<WinterReading>& readings, VentAdviceOptions options,
                       const Progress& progress) {
  validate(survey);
  options.validate();
  std::for_each(readings.begin(), readings.end(), [](const WinterReading& reading) { validate(reading); });
  const Setting setting = setting_for(survey);
  const auto year = year_setting(setting, weather_of(setting, weather));
  const auto cases = draw_cases(setting, readings, options);
  auto advice = blank_advice(cases, year, options, readings);
  if (cases.effective < least_effective_cases) {
    advice.not_settled_because =
        "Only " + whole(cases.effective) + " of " + whole(least_effective_cases) +
        " effective cases are left: the observations hardly fit together, or leave hardly any case.";
    return advice;
  }
  HourBudget budget(options.most_window_hours, progress);
  const auto runs = run_cases(year, cases, options, budget);
  advice.samples = runs.picks();
  advice.cases_run = runs.cases.size();
  advice.samples_left_out = runs.picks_left_out;
  advice.least_window_hours = hours_needed(runs, year);
  advice.not_settled_because = nothing_to_show(runs, advice.least_window_hours);
  if (advice.not_settled_because.empty()) {
    const auto offered = offered_options(survey);
    const auto choice = choose(runs.years, runs.counts, offered);
    advice.not_settled_because = unsettled_because(advice, runs, offered, choice);
    advice.settled = advice.not_settled_because.empty();
    add_options(runs, offered, choice, advice);
    advice.air = years_air(runs, choice.choice);
    add_what_decides(setting, cases, runs, offered, choice, advice);
    advice.room_humidity_rise = median_humidity_rise(setting, cases, runs, choice.choice);
    if (options.inverse_answers) {
      add_inverse(setting, cases, choice.choice, advice);
    }
    add_remedies_and_drying(year, cases, runs, offered, choice, budget, advice);
  }
  advice.window_hours = budget.spent();
  return advice;
}

}  // namespace dewgap
