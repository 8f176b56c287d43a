#include "tools/weather/year_order_kernel.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "tools/answer/plain_text.hpp"

namespace dewgap::tools::weather {
namespace {

using std::chrono::minutes;
using Clock = std::chrono::local_time<minutes>;

constexpr std::size_t common_year_h = 8760;
constexpr std::size_t leap_year_h = 8784;
constexpr minutes most_jump_of_clock{120};  // double summer time

std::chrono::year_month_day date_of(Clock clock) {
  return std::chrono::year_month_day(std::chrono::floor<std::chrono::days>(clock));
}

/// The slot of a moment in a year of so many hours, by its month, day and hour.
std::size_t slot_of(Clock clock, std::size_t hours) {
  const auto date = date_of(clock);
  const auto year = std::chrono::year(hours == leap_year_h ? 2000 : 2001);
  const auto days = std::chrono::local_days(year / date.month() / date.day()) -
                    std::chrono::local_days(year / std::chrono::January / 1);
  const auto since_midnight = clock - std::chrono::floor<std::chrono::days>(clock);
  return static_cast<std::size_t>(24 * days.count() + since_midnight / minutes(60));
}

/// How many hours a year from this moment has: to the same moment of the next year.
std::size_t hours_of_year_from(Clock first) {
  const auto date = date_of(first);
  const auto next = date + std::chrono::years(1);
  if (!next.ok()) return leap_year_h;  // from a 29 February on
  const auto days = std::chrono::local_days(next) - std::chrono::local_days(date);
  return static_cast<std::size_t>(24 * days.count());
}

bool is_leap_day(const Stamp& stamp) {
  const std::chrono::year_month_day date(stamp.day);
  return date.month() == std::chrono::February && date.day() == std::chrono::day(29);
}

class Ordering {
 public:
  Ordering(const std::vector<Stamp>& stamps, const TimeColumns& columns, Problems& problems)
      : stamps_(stamps), columns_(columns), problems_(problems), problems_before_(problems.count()) {}

  YearOrder order(std::optional<double> utc_offset_h) {
    order_.utc_offset_h = utc_offset_h;
    put_on_one_clock();
    require_whole_hours();
    stop_if_any_was_added();
    const auto hours = columns_.time ? hours_of_year_from(clocks_.front()) : hours_of_months_and_days();
    order_.row_of_slot.resize(hours);
    order_.first_slot = columns_.time ? slot_of(clocks_.front(), hours) : nominal_slot(0, hours);
    place_rows();
    stop_if_any_was_added();
    add_notes();
    return std::move(order_);
  }

 private:
  /// Without whole hours in their order nothing can follow; what was wrong before does not matter here.
  void stop_if_any_was_added() const {
    if (problems_.count() > problems_before_) problems_.stop_if_any();
  }

  void put_on_one_clock() {
    std::optional<minutes> least;
    std::optional<minutes> most;
    for (const auto& stamp : stamps_) {
      if (stamp.utc_offset.has_value() != stamps_.front().utc_offset.has_value())
        problems_.add_of_kind("offset", stamp.mark,
                              "the UTC offset stands with some times and not with others");
      if (!stamp.utc_offset) continue;
      least = std::min(least.value_or(*stamp.utc_offset), *stamp.utc_offset);
      most = std::max(most.value_or(*stamp.utc_offset), *stamp.utc_offset);
    }
    if (least && *most - *least > most_jump_of_clock)
      problems_.add(stamps_.front().mark, "the UTC offsets of the times differ by more than two hours");
    if (least && !order_.utc_offset_h) order_.utc_offset_h = static_cast<double>(least->count()) / 60.0;
    const auto wanted = minutes(std::lround(60.0 * order_.utc_offset_h.value_or(0.0)));
    moved_ = least && (*least != wanted || *most != wanted);
    clocks_.reserve(stamps_.size());
    for (const auto& stamp : stamps_)
      clocks_.push_back(stamp.day + stamp.time +
                        (stamp.utc_offset ? wanted - *stamp.utc_offset : minutes(0)));
  }

  void require_whole_hours() {
    const auto past_hour = [](Clock clock) { return (clock.time_since_epoch() % minutes(60)).count(); };
    const auto found =
        std::find_if(clocks_.begin(), clocks_.end(), [&](Clock c) { return past_hour(c) != 0; });
    if (found == clocks_.end()) return;
    const auto row = static_cast<std::size_t>(found - clocks_.begin());
    const auto step = row > 0 ? *found - clocks_[row - 1] : minutes(60);
    const bool finer = step > minutes(0) && step < minutes(60);
    problems_.add(
        stamps_[row].mark,
        fmt::format("\"{}\" is not on the hour{}; {}", one_line(stamps_[row].text, 40),
                    moved_ ? fmt::format(" of the clock of UTC{:+}", *order_.utc_offset_h) : "",
                    finer ? fmt::format("rows are {} minutes apart, {}; take means of whole hours "
                                        "first",
                                        step.count(),
                                        step == minutes(30) ? "half-hourly data" : "finer than hourly data")
                          : "means of whole hours are needed, told by start or end"));
  }

  std::size_t hours_of_months_and_days() const {
    return std::any_of(stamps_.begin(), stamps_.end(), is_leap_day) ? leap_year_h : common_year_h;
  }

  /// By month and day: the hour that ends as the year begins is its last.
  std::size_t nominal_slot(std::size_t row, std::size_t hours) const {
    const auto& stamp = stamps_[row];
    const auto day_slot = slot_of(stamp.day, hours);
    const auto hour = static_cast<std::ptrdiff_t>(stamp.time / minutes(60));
    return (day_slot + static_cast<std::size_t>(hour + static_cast<std::ptrdiff_t>(hours))) % hours;
  }

  /// Hours since the first row; for months and days round the year.
  std::ptrdiff_t since_first(std::size_t row) const {
    if (columns_.time) return (clocks_[row] - clocks_.front()) / minutes(60);
    const auto hours = order_.row_of_slot.size();
    return static_cast<std::ptrdiff_t>((nominal_slot(row, hours) + hours - order_.first_slot) % hours);
  }

  void place_rows() {
    const auto hours = order_.row_of_slot.size();
    std::ptrdiff_t latest = -1;
    for (std::size_t row = 0; row < stamps_.size(); ++row) {
      const auto since = since_first(row);
      if (since <= latest) {
        tell_disorder(row, since);
      } else if (since >= static_cast<std::ptrdiff_t>(hours)) {
        problems_.add_of_kind(
            "beyond", stamps_[row].mark,
            fmt::format("lies {} hours or more after the first row; a file holds one year", hours));
      } else {
        latest = since;
        order_.row_of_slot[(order_.first_slot + static_cast<std::size_t>(since)) % hours] = row;
      }
    }
  }

  void tell_disorder(std::size_t row, std::ptrdiff_t since) {
    const auto hours = order_.row_of_slot.size();
    const auto slot =
        (order_.first_slot + static_cast<std::size_t>(std::max<std::ptrdiff_t>(since, 0))) % hours;
    const auto& earlier = order_.row_of_slot[slot];
    if (since >= 0 && earlier) {
      const bool may_be_summer_time = columns_.time && !stamps_[row].utc_offset;
      problems_.add_of_kind(
          "twice", stamps_[row].mark,
          fmt::format(
              "this hour occurs twice, first in line {}{}", stamps_[*earlier].mark.line,
              may_be_summer_time ? " (a clock with summer time? write the UTC offset with each time)" : ""));
      return;
    }
    const bool other_year = columns_.time && date_of(clocks_[row]).year() != date_of(clocks_.front()).year();
    problems_.add_of_kind("order", stamps_[row].mark,
                          fmt::format("this hour comes before that of the row above{}",
                                      other_year ? "; a typical year that joins months of different years is "
                                                   "told by month, day and hour columns"
                                                 : ""));
  }

  void add_notes() {
    if (columns_.stamped == Stamped::end)
      order_.notes.emplace_back("The times name the end of each hour; it is kept by its start.");
    if (moved_)
      order_.notes.push_back(
          fmt::format("The times were put on one clock, UTC{:+} all year.", *order_.utc_offset_h));
    if (order_.first_slot != 0)
      order_.notes.push_back(
          fmt::format("The file begins on {}; its hours were put in the order January to December.",
                      slot_text(order_.first_slot, order_.row_of_slot.size())));
  }

  const std::vector<Stamp>& stamps_;
  const TimeColumns& columns_;
  Problems& problems_;
  std::size_t problems_before_;
  std::vector<Clock> clocks_;
  bool moved_ = false;
  YearOrder order_;
};

}  // namespace

YearOrder order_of_year(const std::vector<Stamp>& stamps, const TimeColumns& columns,
                        std::optional<double> utc_offset_h, Problems& problems) {
  return Ordering(stamps, columns, problems).order(utc_offset_h);
}

std::string slot_text(std::size_t slot, std::size_t hours) {
  constexpr std::array names{"January", "February", "March",     "April",   "May",      "June",
                             "July",    "August",   "September", "October", "November", "December"};
  const auto year = std::chrono::year(hours == leap_year_h ? 2000 : 2001);
  const std::chrono::year_month_day date{std::chrono::local_days(year / std::chrono::January / 1) +
                                         std::chrono::days(slot / 24)};
  return fmt::format("{} {}, {:02}:00", static_cast<unsigned>(date.day()),
                     names.at(static_cast<unsigned>(date.month()) - 1), slot % 24);
}

}  // namespace dewgap::tools::weather
