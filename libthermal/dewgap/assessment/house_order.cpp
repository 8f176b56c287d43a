#include "dewgap/assessment/house_order_kernel.hpp"

#include <algorithm>
#include <numeric>

#include "dewgap/numerics/sampling.hpp"

namespace dewgap {
namespace {

Spread scaled(const Spread& spread, double factor) {
  return {factor * spread.p10, factor * spread.p50, factor * spread.p90};
}

/// What an order goes by.
struct Range {
  double low = 0.0;
  double middle = 0.0;
  double high = 0.0;
};

Range range_of(const OrderStep& step) {
  if (!step.misty_mornings) {
    return {step.saving.p10, step.saving.p50, step.saving.p90};
  }
  const auto& spared = step.misty_mornings->spared;
  return step.misty_mornings->cases < least_cases_for_percentiles
             ? Range{spared.least, spared.p50, spared.greatest}
             : Range{spared.p10, spared.p50, spared.p90};
}

bool is_tied(const Range& a, const Range& b) {
  const double overlap = std::min(a.high, b.high) - std::max(a.low, b.low);
  const double shorter = std::min(a.high - a.low, b.high - b.low);
  return shorter > 0.0 ? overlap > tie_overlap_share * shorter : overlap >= 0.0;
}

bool peoples_room(const Survey& survey) {
  switch (survey.room.use.value_or(RoomUse::living)) {
    case RoomUse::living:
    case RoomUse::bedroom:
    case RoomUse::kitchen:
      return true;
    case RoomUse::bathroom:
    case RoomUse::hall:
    case RoomUse::other:
      return false;
  }
  return true;
}

/// Sorts by value, the largest first, and gives places; each tie is with the first of its place. For damp
/// people's rooms come before all others.
void give_places(HouseOrder& order) {
  const bool people_first = order.basis == OrderBasis::misty_mornings_spared;
  const auto group = [people_first](const OrderStep& step) { return people_first && !step.peoples_room; };
  std::stable_sort(order.steps.begin(), order.steps.end(), [&](const OrderStep& a, const OrderStep& b) {
    return group(a) != group(b) ? !group(a) : range_of(a).middle > range_of(b).middle;
  });
  const OrderStep* first = nullptr;
  for (std::size_t i = 0; i < order.steps.size(); ++i) {
    auto& step = order.steps[i];
    const bool tied =
        first != nullptr && group(*first) == group(step) && is_tied(range_of(*first), range_of(step));
    step.place = tied ? first->place : i + 1;
    first = tied ? first : &step;
  }
}

bool has_cost(const CountedWindow& window) {
  return window.survey->money && window.survey->money->cost.value_or(0.0) > 0.0;
}

double mean_of(const std::array<double, 3>& values) {
  return std::accumulate(values.begin(), values.end(), 0.0) / 3.0;
}

double sheet_area_m2(const CountedWindow& window) {
  const auto& plan = window.figures().plan;
  const double planned_m2 =
      plan ? 1e-6 * plan->width_mm * plan->height_mm * static_cast<double>(plan->sheet_count) : 0.0;
  const auto& opening = window.survey->window;
  return planned_m2 > 0.0 ? planned_m2
                          : mean_of(opening.opening_widths_m) * mean_of(opening.opening_heights_m);
}

OrderStep step_for(const CountedWindow& window) {
  OrderStep step;
  step.number = window.window->number;
  step.peoples_room = peoples_room(*window.survey);
  return step;
}

const OptionAdvice* advice_on(const Assessment::Figures& figures) {
  if (!figures.year) {
    return nullptr;
  }
  const auto& options = figures.year->options;
  const auto at = std::find_if(options.begin(), options.end(),
                               [&](const OptionAdvice& advice) { return advice.option == figures.vent; });
  return at == options.end() ? nullptr : &*at;
}

CaseSpread spared(const CaseSpread& now, const CaseSpread& with) {
  const auto [low, high] = std::minmax({now.p10 - with.p10, now.p50 - with.p50, now.p90 - with.p90});
  const auto [least, greatest] =
      std::minmax({low, high, now.least - with.least, now.greatest - with.greatest});
  return {.p10 = low, .p50 = now.p50 - with.p50, .p90 = high, .least = least, .greatest = greatest};
}

/// Names of windows, a comma between.
std::string list_of(const std::vector<std::string>& names) {
  std::string list;
  for (const auto& name : names) {
    list += (list.empty() ? "" : ", ") + name;
  }
  return list;
}

}  // namespace

std::string_view name_of(OrderBasis basis) {
  switch (basis) {
    case OrderBasis::money_saved_per_cost:
      return "money saved a year per cost";
    case OrderBasis::heat_saved_per_sheet_area:
      return "heat saved a year per m2 of sheet";
    case OrderBasis::misty_mornings_spared:
      return "misty mornings spared a year, people's rooms first";
  }
  return {};
}

HouseOrder order_for_money(const std::vector<CountedWindow>& windows) {
  HouseOrder order;
  std::vector<std::string> without_cost;
  for (const auto& window : windows) {
    if (!has_cost(window)) {
      without_cost.push_back(window.window->name);
    }
  }
  const bool costs_given = !windows.empty() && without_cost.empty();
  if (!without_cost.empty()) {
    order.basis_because = "No cost above 0 was given for: " + list_of(without_cost) + ".";
  }
  order.basis = costs_given ? OrderBasis::money_saved_per_cost : OrderBasis::heat_saved_per_sheet_area;
  for (const auto& window : windows) {
    auto step = step_for(window);
    const auto heat_kWh = own_spread(window, &SavingSamples::heat_saved_kWh);
    const double worth = costs_given ? money_from_heat(1.0, *window.survey->money).saved_per_year : 1.0;
    step.saving =
        scaled(heat_kWh, worth / (costs_given ? *window.survey->money->cost : sheet_area_m2(window)));
    order.steps.push_back(step);
  }
  give_places(order);
  return order;
}

HouseOrder order_for_damp(const std::vector<CountedWindow>& windows) {
  HouseOrder order;
  order.basis = OrderBasis::misty_mornings_spared;
  std::vector<std::string> left_out;
  for (const auto& window : windows) {
    const auto* advice = advice_on(window.figures());
    if (advice == nullptr) {
      left_out.push_back(window.window->name);
      continue;
    }
    auto step = step_for(window);
    const auto& year = *window.figures().year;
    const auto& now = year.as_it_is.misty_mornings;
    const auto& with = advice->misty_mornings;
    step.misty_mornings = {
        .now = now, .with_sheet = with, .spared = spared(now, with), .cases = year.cases_run};
    order.steps.push_back(step);
  }
  if (!left_out.empty()) {
    order.left_out_because = "No year of hours tells of: " + list_of(left_out) + ".";
  }
  give_places(order);
  return order;
}

HouseOrder with_air_lost(HouseOrder order, const std::vector<CountedWindow>& windows, std::uint64_t seed,
                         const std::optional<double>& limit_m3_h) {
  if (order.steps.empty()) {
    return order;
  }
  const auto cases =
      house_cases(windows, &SavingSamples::draught_cut_m3_h, Errors::shared_ones_pull_together, seed);
  std::vector<std::size_t> places;
  for (auto& step : order.steps) {
    const auto at = std::find_if(windows.begin(), windows.end(), [&](const CountedWindow& window) {
      return window.window->number == step.number;
    });
    places.push_back(static_cast<std::size_t>(at - windows.begin()));
    const auto sums = sums_over(cases, places);
    step.air_lost_so_far_m3_h = places.size() == 1
                                    ? own_spread(*at, &SavingSamples::draught_cut_m3_h)
                                    : numerics::weighted_spread(sums, std::vector<double>(sums.size(), 1.0));
    if (limit_m3_h && !order.passes_limit_at && step.air_lost_so_far_m3_h.p50 > *limit_m3_h) {
      order.passes_limit_at = step.number;
    }
    if (limit_m3_h && !order.may_pass_limit_at && step.air_lost_so_far_m3_h.p90 > *limit_m3_h) {
      order.may_pass_limit_at = step.number;
    }
  }
  return order;
}

}  // namespace dewgap
