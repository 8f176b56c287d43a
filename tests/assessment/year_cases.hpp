// Surveys with their year of hours, shared by the tests of the year.
#pragma once

#include <array>
#include <cstddef>
#include <utility>

#include "assessment/survey_cases.hpp"
#include "dewgap/assessment/year_run_kernel.hpp"

namespace dewgap::test {

/// A survey, its setting and its columns, which point to each other.
struct YearCase {
  explicit YearCase(Survey of);
  YearCase(Survey of, const HourlyYear& weather);
  YearCase(const YearCase&) = delete;
  YearCase& operator=(const YearCase&) = delete;

  Survey survey;
  Setting setting;
  YearSetting year;
};

/// The year modelled from a survey's place.
HourlyYear modelled_year(const Survey& survey);

/// The middle of every belief.
UnknownValues middle_sample(const Survey& survey);
/// A damp room behind a leaky tape: room air runs into the gap and condenses.
UnknownValues damp_sample(const Survey& survey);

/// `hours` of the columns from `first` on. A summer that begins later is left out.
YearSetting cut(const YearSetting& year, std::size_t first, std::size_t hours);
inline constexpr std::size_t first_of_december = 91 * 24;  ///< in columns that begin in September
inline constexpr std::size_t month_h = 30 * 24;

/// Every hour as the coldest month's mean is for the sample, the wind along the wall.
YearSetting steady_month(const YearCase& at, const UnknownValues& sample, std::size_t hours);

/// All figures of an option in order.
std::array<double, 22> figures_of(const OptionYear& year);

}  // namespace dewgap::test
