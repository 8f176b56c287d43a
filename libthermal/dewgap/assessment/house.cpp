#include "dewgap/assessment/house.hpp"

#include <algorithm>

#include "dewgap/assessment/house_order_kernel.hpp"
#include "dewgap/assessment/verdict_kernel.hpp"
#include "dewgap/errors.hpp"

namespace dewgap {
namespace {

constexpr std::size_t most_windows = 60;

void require_same(bool same, const char* field) {
  if (!same) {
    throw InvalidInput(field, "must be the same for all windows of a house");
  }
}

bool same_prices(const std::optional<MoneyTerms>& a, const std::optional<MoneyTerms>& b) {
  if (!a || !b) {
    return a.has_value() == b.has_value();
  }
  return a->price_per_kWh == b->price_per_kWh && a->system_efficiency == b->system_efficiency &&
         a->carbon_kg_per_kWh == b->carbon_kg_per_kWh;
}

void require_one_house(const std::vector<Survey>& windows) {
  require_in_range(static_cast<double>(windows.size()), {1.0, static_cast<double>(most_windows)}, "windows",
                   "");
  const auto& one = windows.front();
  for (const auto& other : windows) {
    require_same(one.place.nearest == other.place.nearest &&
                     one.place.distance_km == other.place.distance_km &&
                     one.place.elevation_m == other.place.elevation_m,
                 "place");
    const auto& a = one.building;
    const auto& b = other.building;
    require_same(a.floors == b.floors && a.open_stairwell == b.open_stairwell &&
                     a.working_chimney == b.working_chimney && a.hours_heated == b.hours_heated &&
                     a.bill_kWh == b.bill_kWh,
                 "building");
    require_same(same_prices(one.money, other.money), "money");
  }
}

/// The bill caps the sum, not each window.
Survey without_cap(Survey survey) {
  survey.building.bill_kWh.reset();
  return survey;
}

int listed_place(Headline headline) {
  switch (headline) {
    case Headline::hold:
      return 0;
    case Headline::fit:
    case Headline::fit_after:
      return 1;
    case Headline::leave:
      return 2;
  }
  return 2;
}

std::vector<HouseWindow> assessed(const std::vector<Survey>& windows, const HouseOptions& options,
                                  const Progress& progress) {
  std::vector<HouseWindow> answers;
  for (std::size_t i = 0; i < windows.size(); ++i) {
    const Progress part = [&](std::size_t done, std::size_t most) {
      if (progress) {
        progress(i * most + done, windows.size() * most);
      }
    };
    HouseWindow window{.number = i + 1, .name = windows[i].name, .assessment = {}, .counted = false};
    window.assessment = assess_in_weather(without_cap(windows[i]), options.assess, options.weather, part);
    window.counted = listed_place(window.assessment.headline) == 1 && window.assessment.figures;
    answers.push_back(std::move(window));
  }
  std::stable_sort(answers.begin(), answers.end(), [](const HouseWindow& a, const HouseWindow& b) {
    return listed_place(a.assessment.headline) < listed_place(b.assessment.headline);
  });
  return answers;
}

std::string names_with(const std::vector<HouseWindow>& windows, Headline headline) {
  std::string list;
  for (const auto& window : windows) {
    if (window.assessment.headline == headline) {
      list += (list.empty() ? "" : ", ") + window.name;
    }
  }
  return list;
}

void warn_of_limit(const HouseAnswer& answer, const std::vector<Survey>& windows,
                   std::vector<std::string>& warnings) {
  const auto& order = answer.for_money;
  const auto at = order.passes_limit_at ? order.passes_limit_at : order.may_pass_limit_at;
  if (!at) {
    return;
  }
  warnings.push_back("In the order for the money, the air that the house loses " +
                     std::string(order.passes_limit_at ? "passes" : "may pass") + " your limit of " +
                     tenths(*answer.ventilation_limit_m3_h) + " m3/h with " + windows[*at - 1].name +
                     ": settle another way for fresh air before going that far.");
}

std::vector<std::string> warnings_of(const HouseAnswer& answer, const std::vector<Survey>& windows) {
  std::vector<std::string> warnings;
  if (const auto held = names_with(answer.windows, Headline::hold); !held.empty()) {
    warnings.push_back("On HOLD, and in no total: " + held + ".");
  }
  if (windows.size() > 1) {
    warnings.emplace_back(
        "Doing half the house shifts the draught to the rest: the windows left as they are then let in more "
        "air than today, and what the first few save is a little less than stated.");
    warnings.emplace_back(
        "Each window is judged as if the others stayed as they are: with several sealed, the house keeps "
        "more "
        "of its damp than each answer counts.");
  }
  warn_of_limit(answer, windows, warnings);
  if (answer.totals && answer.totals->capped_share > 0.0) {
    warnings.push_back("The bill of " + whole(*answer.totals->bill_kWh) +
                       " kWh caps the saving of the whole house in " +
                       whole(100.0 * answer.totals->capped_share) + " % of the plausible cases.");
  }
  return warnings;
}

std::vector<CountedWindow> counted_of(const std::vector<HouseWindow>& answers,
                                      const std::vector<Survey>& windows) {
  std::vector<CountedWindow> counted;
  for (const auto& answer : answers) {
    if (answer.counted) {
      counted.push_back({.window = &answer, .survey = &windows[answer.number - 1]});
    }
  }
  return counted;
}

}  // namespace

void HouseOptions::validate() const {
  assess.validate();
  if (ventilation_limit_m3_h) {
    require_in_range(*ventilation_limit_m3_h, {0.0, 10000.0}, "ventilation_limit_m3_h", "m3/h");
  }
}

HouseAnswer assess_house(const std::vector<Survey>& windows, const HouseOptions& options,
                         const Progress& progress) {
  options.validate();
  require_one_house(windows);
  HouseAnswer answer;
  answer.seed = options.assess.seed;
  answer.ventilation_limit_m3_h = options.ventilation_limit_m3_h;
  answer.windows = assessed(windows, options, progress);
  const auto counted = counted_of(answer.windows, windows);
  if (!counted.empty()) {
    answer.totals = totals_over(counted, answer.seed);
  }
  const auto along = [&](HouseOrder order) {
    return with_air_lost(std::move(order), counted, answer.seed, options.ventilation_limit_m3_h);
  };
  answer.for_money = along(order_for_money(counted));
  answer.for_damp = along(order_for_damp(counted));
  answer.warnings = warnings_of(answer, windows);
  return answer;
}

}  // namespace dewgap
