// Hours, days and months of a year of hours. Private to the library.
#pragma once

#include <array>
#include <cstddef>
#include <span>
#include <vector>

namespace dewgap::climate {

inline constexpr std::size_t hours_per_day = 24;
inline constexpr std::size_t hours_of_common_year = 8760;

struct YearCalendar {
  std::array<std::size_t, 13> first_day{};  ///< of each month, from 0; the last entry is the year's length

  std::size_t days() const { return first_day[12]; }
  std::size_t hours() const { return hours_per_day * days(); }
  std::size_t days_in(std::size_t month) const { return first_day[month + 1] - first_day[month]; }
};

/// The calendar of a year of 8760 or 8784 hours; any other number throws InvalidInput.
YearCalendar calendar_of(std::size_t hours);

using MonthlyValues = std::array<double, 12>;
MonthlyValues monthly_means_of(std::span<const double> hourly, const YearCalendar& calendar);
/// Mean over each month's days of a figure that each day has.
MonthlyValues monthly_means_of_days(std::span<const double> daily, const YearCalendar& calendar);
std::vector<double> daily_means_of(std::span<const double> hourly);
std::vector<double> daily_maxima_of(std::span<const double> hourly);
std::vector<double> daily_minima_of(std::span<const double> hourly);

/// A course through the months of a common year without steps: straight between nodes at their middles,
/// December joined to January.
class MonthLine {
 public:
  MonthLine();
  double at_hour(const MonthlyValues& nodes, std::size_t hour) const;
  std::vector<double> hourly(const MonthlyValues& nodes) const;
  /// The nodes whose course has these means of its months' hours.
  MonthlyValues nodes_with_means(const MonthlyValues& means) const;

 private:
  struct Place {
    std::size_t before;
    std::size_t after;
    double share_of_after;
  };
  YearCalendar calendar_;
  std::vector<Place> places_;
};

/// Straight between values at the middles of the days, hour by hour; the last day is joined to the first.
std::vector<double> through_days(std::span<const double> daily);

}  // namespace dewgap::climate
