#include <algorithm>
#include <cmath>
#include <numeric>

#include "dewgap/climate/places.hpp"
#include "dewgap/climate/year_calendar_kernel.hpp"
#include "dewgap/errors.hpp"
#include "dewgap/numerics/newton.hpp"

namespace dewgap::climate {
namespace {

template <class Reduce>
std::vector<double> of_each_day(std::span<const double> hourly, Reduce&& reduce) {
  std::vector<double> daily;
  daily.reserve(hourly.size() / hours_per_day);
  for (std::size_t first = 0; first < hourly.size(); first += hours_per_day) {
    daily.push_back(reduce(hourly.subspan(first, hours_per_day)));
  }
  return daily;
}

double mean_of(std::span<const double> values) {
  return std::accumulate(values.begin(), values.end(), 0.0) / static_cast<double>(values.size());
}

}  // namespace

YearCalendar calendar_of(std::size_t hours) {
  if (hours != hours_of_common_year && hours != hours_of_common_year + hours_per_day) {
    throw InvalidInput("hours of the year",
                       "there are " + std::to_string(hours) + " instead of 8760 or 8784");
  }
  YearCalendar calendar;
  for (std::size_t month = 0; month < 12; ++month) {
    const bool leap_february = month == 1 && hours != hours_of_common_year;
    const auto days = static_cast<std::size_t>(days_of_month[month]) + (leap_february ? 1u : 0u);
    calendar.first_day[month + 1] = calendar.first_day[month] + days;
  }
  return calendar;
}

MonthlyValues monthly_means_of(std::span<const double> hourly, const YearCalendar& calendar) {
  MonthlyValues means{};
  for (std::size_t month = 0; month < means.size(); ++month) {
    means[month] = mean_of(
        hourly.subspan(hours_per_day * calendar.first_day[month], hours_per_day * calendar.days_in(month)));
  }
  return means;
}

MonthlyValues monthly_means_of_days(std::span<const double> daily, const YearCalendar& calendar) {
  MonthlyValues means{};
  for (std::size_t month = 0; month < means.size(); ++month) {
    means[month] = mean_of(daily.subspan(calendar.first_day[month], calendar.days_in(month)));
  }
  return means;
}

std::vector<double> daily_means_of(std::span<const double> hourly) {
  return of_each_day(hourly, mean_of);
}

std::vector<double> daily_maxima_of(std::span<const double> hourly) {
  return of_each_day(hourly,
                     [](std::span<const double> day) { return *std::max_element(day.begin(), day.end()); });
}

std::vector<double> daily_minima_of(std::span<const double> hourly) {
  return of_each_day(hourly,
                     [](std::span<const double> day) { return *std::min_element(day.begin(), day.end()); });
}

MonthLine::MonthLine() : calendar_(calendar_of(hours_of_common_year)) {
  const auto year_h = static_cast<double>(calendar_.hours());
  const auto middle_h = [&](std::size_t month) {
    return 12.0 * static_cast<double>(calendar_.first_day[month] + calendar_.first_day[month + 1]);
  };
  places_.reserve(calendar_.hours());
  std::size_t after = 0;
  for (std::size_t hour = 0; hour < calendar_.hours(); ++hour) {
    const double moment_h = static_cast<double>(hour) + 0.5;
    while (after < 12 && middle_h(after) <= moment_h) {
      ++after;
    }
    const std::size_t before = (after + 11) % 12;
    const double begin_h = middle_h(before) - (after == 0 ? year_h : 0.0);
    const double end_h = after == 12 ? middle_h(0) + year_h : middle_h(after);
    places_.push_back({before, after % 12, (moment_h - begin_h) / (end_h - begin_h)});
  }
}

double MonthLine::at_hour(const MonthlyValues& nodes, std::size_t hour) const {
  const auto& place = places_[hour];
  return nodes[place.before] + place.share_of_after * (nodes[place.after] - nodes[place.before]);
}

std::vector<double> MonthLine::hourly(const MonthlyValues& nodes) const {
  std::vector<double> course(places_.size());
  for (std::size_t hour = 0; hour < course.size(); ++hour) {
    course[hour] = at_hour(nodes, hour);
  }
  return course;
}

MonthlyValues MonthLine::nodes_with_means(const MonthlyValues& means) const {
  // Means are linear in the nodes: twelve equations, dominated by their diagonal.
  numerics::SquareMatrix<12> matrix;
  for (std::size_t month = 0; month < 12; ++month) {
    const double share = 1.0 / static_cast<double>(hours_per_day * calendar_.days_in(month));
    for (std::size_t hour = hours_per_day * calendar_.first_day[month];
         hour < hours_per_day * calendar_.first_day[month + 1]; ++hour) {
      matrix(month, places_[hour].before) += share * (1.0 - places_[hour].share_of_after);
      matrix(month, places_[hour].after) += share * places_[hour].share_of_after;
    }
  }
  return numerics::LuFactors<12>(matrix).solve(means);
}

std::vector<double> through_days(std::span<const double> daily) {
  const std::size_t days = daily.size();
  std::vector<double> hourly;
  hourly.reserve(days * hours_per_day);
  for (std::size_t day = 0; day < days; ++day) {
    for (std::size_t hour = 0; hour < hours_per_day; ++hour) {
      const double from_noon_days = (static_cast<double>(hour) + 0.5) / 24.0 - 0.5;
      const double neighbour =
          from_noon_days < 0.0 ? daily[(day + days - 1) % days] : daily[(day + 1) % days];
      hourly.push_back(daily[day] + std::abs(from_noon_days) * (neighbour - daily[day]));
    }
  }
  return hourly;
}

}  // namespace dewgap::climate
