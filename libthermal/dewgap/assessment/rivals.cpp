#include "dewgap/assessment/rivals.hpp"

#include <algorithm>

#include "dewgap/assessment/rival_words_kernel.hpp"
#include "dewgap/assessment/rivals_kernel.hpp"
#include "dewgap/assessment/steady_run_kernel.hpp"
#include "dewgap/assessment/verdict_kernel.hpp"
#include "dewgap/errors.hpp"
#include "dewgap/numerics/parallel.hpp"
#include "dewgap/numerics/sampling.hpp"

namespace dewgap {
namespace {

constexpr double most_left_out_share = 0.02;  // of the weight, as in assess

/// All rivals in all cases: row a case, column a kind.
struct RivalRuns {
  std::vector<RivalKind> kinds;
  std::vector<std::vector<RivalFigures>> cases;
  std::vector<double> weights;  ///< sum 1

  std::size_t place_of(RivalKind kind) const {
    return static_cast<std::size_t>(
        std::distance(kinds.begin(), std::find(kinds.begin(), kinds.end(), kind)));
  }
  template <class Figure>
  std::vector<double> values(Figure figure) const {
    std::vector<double> all;
    std::transform(cases.begin(), cases.end(), std::back_inserter(all), figure);
    return all;
  }
  template <class Figure>
  Spread spread(Figure figure) const {
    return numerics::weighted_spread(values(figure), weights);
  }
  template <class Holds>
  double share(Holds holds) const {
    double sum = 0.0;
    for (std::size_t i = 0; i < cases.size(); ++i) {
      sum += holds(cases[i]) ? weights[i] : 0.0;
    }
    return sum;
  }
};

using Case = std::vector<RivalFigures>;

/// Cases in which a rival's balance does not settle are left out for all rivals, while they are few.
RivalRuns run_rivals(const Setting& setting, const WeightedRuns& runs, const SheetAsFitted& sheet,
                     std::uint64_t seed) {
  RivalRuns all{.kinds = offered_rivals(*setting.survey, sheet.vent), .cases = {}, .weights = {}};
  std::vector<Case> cases(runs.samples.size());
  numerics::for_each_index(cases.size(), [&](std::size_t i) {
    try {
      cases[i] = rivals_of_sample(setting, runs.samples[i], runs.figures[i], sheet, all.kinds, i, seed);
    } catch (const CalculationFailed&) {
      cases[i].clear();
    }
  });
  double kept = 0.0;
  for (std::size_t i = 0; i < cases.size(); ++i) {
    if (!cases[i].empty()) {
      all.cases.push_back(std::move(cases[i]));
      all.weights.push_back(runs.weights[i]);
      kept += runs.weights[i];
    }
  }
  if (kept < 1.0 - most_left_out_share) {
    throw CalculationFailed(explain(SolveStatus::iteration_limit));
  }
  for (double& weight : all.weights) {
    weight /= kept;
  }
  return all;
}

AgainstSheet against_sheet(const RivalRuns& runs, std::size_t rival) {
  const std::size_t sheet = runs.place_of(RivalKind::sheet);
  // Beyond rounding: of what is alike neither is better.
  constexpr double alike = 1e-9;
  const auto more = [&](std::size_t one, std::size_t other, double RivalFigures::*figure) {
    return runs.share([=](const Case& c) { return c[one].*figure > c[other].*figure + alike; });
  };
  AgainstSheet against;
  against.sheet_saves_more_kWh =
      runs.spread([=](const Case& c) { return c[sheet].heat_saved_kWh - c[rival].heat_saved_kWh; });
  against.sheet_saves_more_share = more(sheet, rival, &RivalFigures::heat_saved_kWh);
  against.rival_saves_more_share = more(rival, sheet, &RivalFigures::heat_saved_kWh);
  against.sheet_warmer_share = more(sheet, rival, &RivalFigures::frost_room_face_C);
  against.rival_warmer_share = more(rival, sheet, &RivalFigures::frost_room_face_C);
  against.sheet_drier_share = more(sheet, rival, &RivalFigures::frost_margin_K);
  against.rival_drier_share = more(rival, sheet, &RivalFigures::frost_margin_K);
  return against;
}

/// The user's terms with this rival's own cost. Life, and with it net present value, is the sheet's alone.
MoneyTerms terms_for(RivalKind kind, const MoneyTerms& sheet, const RivalCosts& costs) {
  MoneyTerms terms = sheet;
  switch (kind) {
    case RivalKind::sheet:
    case RivalKind::sheet_off_in_summer:
      return terms;
    case RivalKind::sheet_and_strip: {
      const bool both = sheet.cost && costs.repair_and_strip;
      terms.cost = both ? std::optional(*sheet.cost + *costs.repair_and_strip) : std::nullopt;
      break;
    }
    case RivalKind::repair_and_strip:
      terms.cost = costs.repair_and_strip;
      break;
    case RivalKind::lined_curtains:
      terms.cost = costs.lined_curtains;
      break;
    case RivalKind::shutters:
      terms.cost = costs.shutters;
      break;
    case RivalKind::do_nothing:
      terms.cost.reset();
      break;
  }
  terms.life_years.reset();
  return terms;
}

/// The heat's percentiles turned round: what saves most costs least a kWh.
std::optional<Spread> cost_per_kWh(const std::optional<double>& cost, const Spread& heat_saved_kWh) {
  if (!cost || !(heat_saved_kWh.p10 > 0.0)) {
    return std::nullopt;
  }
  return Spread{*cost / heat_saved_kWh.p90, *cost / heat_saved_kWh.p50, *cost / heat_saved_kWh.p10};
}

void add_money(Rival& rival, const std::vector<double>& heat_saved_kWh, const std::vector<double>& weights,
               const MoneyTerms& terms) {
  rival.money = money_over(heat_saved_kWh, weights, terms);
  rival.cost = terms.cost;
  rival.cost_per_yearly_kWh = cost_per_kWh(terms.cost, rival.heat_saved_kWh);
}

Rival rival_of(const RivalRuns& runs, std::size_t k, const Survey& survey, const RivalCosts& costs) {
  const auto spread = [&](double RivalFigures::*figure) {
    return runs.spread([=](const Case& c) { return c[k].*figure; });
  };
  Rival rival;
  rival.kind = runs.kinds[k];
  rival.name = name_of(rival.kind);
  rival.heat_saved_kWh = spread(&RivalFigures::heat_saved_kWh);
  rival.frost_room_face_C = spread(&RivalFigures::frost_room_face_C);
  rival.frost_pane_C = spread(&RivalFigures::frost_pane_C);
  rival.draught_m3_h = spread(&RivalFigures::draught_m3_h);
  rival.month_margin_K = spread(&RivalFigures::month_margin_K);
  rival.frost_margin_K = spread(&RivalFigures::frost_margin_K);
  rival.dry_month_share = runs.share([=](const Case& c) { return c[k].month_margin_K >= 0.0; });
  rival.dry_frost_share = runs.share([=](const Case& c) { return c[k].frost_margin_K >= 0.0; });
  if (survey.money && rival.kind != RivalKind::do_nothing) {
    add_money(rival, runs.values([=](const Case& c) { return c[k].heat_saved_kWh; }), runs.weights,
              terms_for(rival.kind, *survey.money, costs));
  }
  if (rival.kind != RivalKind::sheet) {
    rival.against_sheet = against_sheet(runs, k);
  }
  const std::size_t nothing = runs.place_of(RivalKind::do_nothing);
  const auto colder_K =
      runs.spread([=](const Case& c) { return c[nothing].frost_pane_C - c[k].frost_pane_C; });
  auto words = words_for(colder_K.p50, rival);
  rival.sentence = std::move(words.sentence);
  rival.condition = std::move(words.condition);
  rival.damp = std::move(words.damp);
  return rival;
}

const OptionAdvice* advice_of(const VentAdvice& year, VentOption option) {
  const auto at = std::find_if(year.options.begin(), year.options.end(),
                               [option](const OptionAdvice& advice) { return advice.option == option; });
  return at == year.options.end() ? nullptr : &*at;
}

/// The year's figures for what it stepped through: the old window, the options of the sheet.
const OptionAdvice* advice_for(const VentAdvice& year, RivalKind kind, VentOption vent) {
  switch (kind) {
    case RivalKind::do_nothing:
      return &year.as_it_is;
    case RivalKind::sheet:
      return advice_of(year, vent);
    case RivalKind::sheet_off_in_summer:
      return advice_of(year, VentOption::off_in_summer);
    case RivalKind::sheet_and_strip:
      return nearest_steady(vent) == VentOption::sealed ? advice_of(year, VentOption::joints_stripped)
                                                        : nullptr;
    case RivalKind::repair_and_strip:
    case RivalKind::lined_curtains:
    case RivalKind::shutters:
      return nullptr;
  }
  return nullptr;
}

/// A year of hours that has shares to show.
const VentAdvice* year_of(const Assessment& answer) {
  const bool has_year = answer.figures && answer.figures->year && !answer.figures->year->options.empty();
  return has_year ? &*answer.figures->year : nullptr;
}

SheetAsFitted sheet_of(const Assessment& answer) {
  SheetAsFitted sheet{.vent = answer.figures->vent};
  if (const auto* year = year_of(answer)) {
    const auto against_sealed_kWh = [&](VentOption option) {
      const auto* advice = advice_of(*year, option);
      return advice ? advice->heat_against_sealed_kWh.p50 : 0.0;
    };
    sheet.costs_kWh = against_sealed_kWh(sheet.vent) - against_sealed_kWh(nearest_steady(sheet.vent));
    sheet.off_costs_kWh = against_sealed_kWh(VentOption::off_in_summer);
  }
  return sheet;
}

std::vector<Rival> rivals_beside(const Setting& setting, const WeightedRuns& runs, const SheetAsFitted& sheet,
                                 std::uint64_t seed, const RivalCosts& costs) {
  const auto all = run_rivals(setting, runs, sheet, seed);
  std::vector<Rival> list;
  for (std::size_t k = 0; k < all.kinds.size(); ++k) {
    list.push_back(rival_of(all, k, *setting.survey, costs));
  }
  return list;
}

WeightedRuns runs_of(const Setting& setting, const AssessOptions& options) {
  auto run = weighted_draw(setting, options, 1.0);
  run_all(setting, run.weighted);
  return run.weighted;
}

}  // namespace

std::vector<Rival> rivals(const Survey& survey, const AssessOptions& options, const RivalCosts& costs) {
  validate(survey);
  options.validate();
  if (!open_gates(survey.settle_first).empty()) {
    return {};
  }
  const Setting setting = setting_for(survey);
  const auto runs = runs_of(setting, options);
  return rivals_beside(setting, runs, {.vent = choose_vent(vent_outcomes(runs))}, options.seed, costs);
}

std::vector<Rival> rivals(const Survey& survey, const AssessOptions& options, const Assessment& answer,
                          const RivalCosts& costs) {
  validate(survey);
  options.validate();
  if (!open_gates(survey.settle_first).empty() || !answer.figures) {
    return {};
  }
  const Setting setting = setting_for(survey);
  const auto sheet = sheet_of(answer);
  auto list = rivals_beside(setting, runs_of(setting, options), sheet, options.seed, costs);
  if (const auto* year = year_of(answer)) {
    for (auto& rival : list) {
      if (const auto* advice = advice_for(*year, rival.kind, sheet.vent)) {
        rival.misty_mornings = advice->misty_mornings;
        rival.acceptable_share = advice->acceptable_share;
      }
    }
  }
  return list;
}

}  // namespace dewgap
