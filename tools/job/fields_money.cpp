// The money file: [money] and [[money.windows]].
#include "tools/job/field_kernel.hpp"

namespace dewgap::tools::rows {
namespace {

using enum Need;
using enum Asked;

template <class Where>
FieldRule money_number(Unit unit, PermittedRange permitted, Where where) {
  return NumberRule{unit, permitted,
                    [where](FileAnswers& answers, double value) { where(answers.money) = value; }};
}

constexpr PermittedRange permitted_cost{0, 1e9};

/// What one of the rivals costs, at every window that has not its own.
FieldRule rival_cost(std::optional<double> RivalCosts::*cost) {
  return NumberRule{currency, permitted_cost,
                    [cost](FileAnswers& answers, double value) { answers.rival_costs.*cost = value; }};
}

/// The same at the window that the reading is at.
FieldRule rival_cost_there(std::optional<double> RivalCosts::*cost) {
  return NumberRule{currency, permitted_cost, [cost](FileAnswers& answers, double value) {
                      answers.window_costs.back().rivals.*cost = value;
                    }};
}

std::vector<Field> price_fields() {
  return {
      {"money", "currency", required, short_job, "name of the currency, used in print only", "\"EUR\"",
       TextRule{12, [](FileAnswers& a, const std::string& v) { a.currency = v; }, nullptr, {}}},
      {"money", "price_per_kWh", required, short_job, "of the fuel", "0.12",
       money_number(
           currency_per_kilowatt_hour, {0, 1e5}, [](MoneyTerms & m) -> auto& { return m.price_per_kWh; })},
      {"money", "efficiency", required, short_job, "heat delivered per fuel; a heat pump is above 1", "0.85",
       money_number(
           plain, {0.3, 6}, [](MoneyTerms & m) -> auto& { return m.system_efficiency; })},
      {"money", "carbon_kg_per_kWh", optional, short_job, "of the fuel", "\"not known\"",
       money_number(
           carbon_of_fuel, {0, 3}, [](MoneyTerms & m) -> auto& { return m.carbon_kg_per_kWh; })},
  };
}

std::vector<Field> life_fields() {
  return {
      {"money", "life_years", optional, short_job, "how long the sheet lasts", "\"not known\"",
       money_number(
           years, {1, 60}, [](MoneyTerms & m) -> auto& { return m.life_years; })},
      {"money", "discount_rate_pct", optional, short_job, "needed with life_years", "\"not known\"",
       money_number(
           per_cent_a_year, {-5, 50}, [](MoneyTerms & m) -> auto& { return m.discount_rate; })},
      {"money", "price_rise_pct", optional, short_job,
       "of the fuel above general inflation; needed with life_years", "\"not known\"",
       money_number(
           per_cent_a_year, {-10, 30}, [](MoneyTerms & m) -> auto& { return m.price_rise; })},
  };
}

std::vector<Field> cost_fields() {
  return {
      {"money", "cost", optional, short_job, "of the sheet as fitted, one window", "\"not known\"",
       money_number(
           currency, permitted_cost, [](MoneyTerms & m) -> auto& { return m.cost; })},
      {"money", "cost_repair_and_strip", optional, short_job,
       "of repairing and draught-stripping the old window instead or besides", "\"not known\"",
       rival_cost(&RivalCosts::repair_and_strip)},
      {"money", "cost_lined_curtains", optional, short_job, "of lined curtains instead", "\"not known\"",
       rival_cost(&RivalCosts::lined_curtains)},
      {"money", "cost_shutters", optional, short_job, "of shutters instead", "\"not known\"",
       rival_cost(&RivalCosts::shutters)},
  };
}

std::vector<Field> window_cost_fields() {
  return {
      {"money.windows", "name", required, short_job, "as the job has it", "\"Front room (invented)\"",
       TextRule{
           2000, [](FileAnswers& a, const std::string& v) { a.window_costs.back().name = v; }, nullptr, {}}},
      {"money.windows", "cost", optional, short_job, "of the sheet as fitted there", "\"not known\"",
       NumberRule{currency, permitted_cost,
                  [](FileAnswers& a, double v) { a.window_costs.back().sheet = v; }}},
      {"money.windows", "cost_repair_and_strip", optional, short_job, "of repair and draught-stripping there",
       "\"not known\"", rival_cost_there(&RivalCosts::repair_and_strip)},
      {"money.windows", "cost_lined_curtains", optional, short_job, "of lined curtains there",
       "\"not known\"", rival_cost_there(&RivalCosts::lined_curtains)},
      {"money.windows", "cost_shutters", optional, short_job, "of shutters there", "\"not known\"",
       rival_cost_there(&RivalCosts::shutters)},
  };
}

}  // namespace

std::vector<Section> money_sections() {
  return {{"money", "your own figures; nothing is built in", nullptr},
          {"money.windows",
           "a window each whose costs differ; what stands here goes before the same key of [money], for that "
           "window alone",
           [](FileAnswers& answers) { answers.window_costs.emplace_back(); }}};
}

std::vector<Field> money_fields() {
  std::vector<Field> fields;
  for (auto rows : {price_fields(), cost_fields(), life_fields(), window_cost_fields()})
    for (auto& row : rows) fields.push_back(std::move(row));
  return fields;
}

}  // namespace dewgap::tools::rows
