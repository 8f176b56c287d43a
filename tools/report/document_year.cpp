// The year of two plausible cases, by month and by hour, as JSON.
#include <algorithm>

#include "tools/answer/words.hpp"
#include "tools/answer/year_months.hpp"
#include "tools/answer/year_units.hpp"
#include "tools/report/document_parts_kernel.hpp"

namespace dewgap::tools::report_parts {
namespace {

using json_parts::finite;

/// What an hour is like: a letter of a day's 24.
char class_of(const GapHourRow& row) {
  constexpr double misty_kg_m2 = 0.001;
  if (!row.sheet_hangs) return '-';
  if (row.state.frost_kg_m2 > misty_kg_m2) return 'f';
  return row.wet_share > 0.0 ? 'w' : 'd';
}

struct HoursByDay {
  std::vector<std::string> days;

  void add(const GapHourRow& row) {
    const auto day = row.hour_of_year / 24;
    if (day >= days.size()) days.resize(day + 1, std::string(24, '-'));
    days[day][row.hour_of_year % 24] = class_of(row);
  }
};

Json months(const YearFigures& figures) {
  Json list = Json::array();
  for (const auto& month : figures.months_in_turn())
    list.push_back({{"month", month.month + 1},
                    {"misty_mornings", month.figures.misty_mornings},
                    {"hours_wet_h", finite(month.figures.hours_wet)},
                    {"frost_h", month.figures.frost_hours},
                    {"sheet_hangs_h", month.figures.sheet_hours},
                    {"outdoor_C", finite(month.figures.outdoor_C.value().value_or(0.0))}});
  return list;
}

struct CaseOfYear {
  Json figures;
  double wet_hours = 0.0;
  double weight = 0.0;
  std::size_t case_count = 0;
};

CaseOfYear one_case(const AnsweredJob& job, const std::optional<HourlyYear>& weather,
                    std::optional<std::size_t> number) {
  GapYearOptions options;
  options.seed = job.options.seed;
  options.plausible_case = number;
  YearFigures figures;
  HoursByDay hours;
  const auto summary =
      gap_year(job.survey, job.assessment.figures->vent, weather, options, [&](const GapHourRow& row) {
        figures.add(row);
        hours.add(row);
      });
  Json json{{"case", number.value_or(0)},
            {"misty_mornings", figures.year.misty_mornings},
            {"hours_wet_h", finite(figures.year.hours_wet)},
            {"frost_h", figures.year.frost_hours},
            {"peak_film_g_m2", finite(grams.from_base(figures.year.peak_film_kg_m2))},
            {"months", months(figures)},
            {"day_hours", hours.days}};
  return {std::move(json), figures.year.hours_wet, summary.case_weight, summary.case_count};
}

/// Ten cases from all parts of the order; the one that about a tenth of their weight is wetter than. The
/// order is that of the coldest month's means, which the year's wet hours need not follow.
Json wetter_case(const AnsweredJob& job, const std::optional<HourlyYear>& weather, std::size_t case_count) {
  constexpr std::size_t most_cases = 10;
  constexpr double drier_share = 0.85;
  const auto count = std::min(most_cases, case_count);
  std::vector<CaseOfYear> cases;
  double all = 0.0;
  for (std::size_t i = 0; i < count; ++i) {
    cases.push_back(one_case(job, weather, (2 * i + 1) * case_count / (2 * count) + 1));
    all += cases.back().weight;
  }
  std::stable_sort(cases.begin(), cases.end(),
                   [](const auto& drier, const auto& wetter) { return drier.wet_hours < wetter.wet_hours; });
  double passed = 0.0;
  for (auto& one : cases) {
    passed += one.weight;
    if (passed - one.weight / 2.0 >= drier_share * all * (1.0 - 1e-9)) return std::move(one.figures);
  }
  return std::move(cases.back().figures);
}

}  // namespace

Json year(const AnsweredJob& job, const std::optional<HourlyYear>& weather) {
  auto middle = one_case(job, weather, std::nullopt);
  return {{"option", json_word(job.assessment.figures->vent)},
          {"cases", middle.case_count},
          {"hour_letters", {{"d", "dry"}, {"w", "wet"}, {"f", "frost"}, {"-", "sheet off"}}},
          {"middle", std::move(middle.figures)},
          {"wetter", wetter_case(job, weather, middle.case_count)}};
}

}  // namespace dewgap::tools::report_parts
