#include "tools/weather/stamps_kernel.hpp"

#include <fmt/format.h>

#include <charconv>
#include <cmath>

#include "tools/answer/plain_text.hpp"

namespace dewgap::tools::weather {
namespace {

using std::chrono::minutes;

constexpr int nominal_year = 2000;  // a leap year

std::optional<int> whole_number(std::string_view text) {
  int value = 0;
  const auto* end = text.data() + text.size();
  const auto [stopped, error] = std::from_chars(text.data(), end, value);
  if (text.empty() || text.front() == '-' || error != std::errc() || stopped != end) return std::nullopt;
  return value;
}

/// Takes digits from the front, exactly so many.
std::optional<int> take_digits(std::string_view& text, std::size_t count) {
  if (text.size() < count) return std::nullopt;
  const auto value = whole_number(text.substr(0, count));
  text.remove_prefix(count);
  return value;
}

bool take(std::string_view& text, std::string_view any_of) {
  if (text.empty() || any_of.find(text.front()) == std::string_view::npos) return false;
  text.remove_prefix(1);
  return true;
}

std::optional<std::chrono::local_days> day_of(int year, int month, int day) {
  const std::chrono::year_month_day date{std::chrono::year(year),
                                         std::chrono::month(static_cast<unsigned>(month)),
                                         std::chrono::day(static_cast<unsigned>(day))};
  if (!date.ok()) return std::nullopt;
  return std::chrono::local_days(date);
}

/// hh:mm, hh:mm:00, up to 24:00.
std::optional<minutes> take_clock(std::string_view& text) {
  const auto hour = take_digits(text, 2);
  if (!hour || !take(text, ":")) return std::nullopt;
  const auto minute = take_digits(text, 2);
  if (!minute) return std::nullopt;
  int second = 0;
  if (take(text, ":")) {
    const auto seconds = take_digits(text, 2);
    if (!seconds) return std::nullopt;
    second = *seconds;
  }
  const int total = 60 * *hour + *minute;
  if (*minute > 59 || total > 24 * 60 || second != 0) return std::nullopt;
  return minutes(total);
}

struct Zone {
  std::optional<minutes> utc_offset;
};
/// Nothing, Z, +01:00, +0100 or +01, up to 14 hours.
std::optional<Zone> zone_of(std::string_view text) {
  if (text.empty()) return Zone{};
  if (text == "Z" || text == "z") return Zone{minutes(0)};
  const bool west = text.front() == '-';
  if (!take(text, "+-")) return std::nullopt;
  const auto hour = take_digits(text, 2);
  if (!hour) return std::nullopt;
  int minute = 0;
  if (!text.empty()) {
    take(text, ":");
    const auto rest = take_digits(text, 2);
    if (!rest || !text.empty() || *rest > 59) return std::nullopt;
    minute = *rest;
  }
  const int total = 60 * *hour + minute;
  if (total > 14 * 60) return std::nullopt;
  return Zone{minutes(west ? -total : total)};
}

std::optional<Stamp> stamp_of(std::string_view text) {
  const auto whole = text;
  const auto year = take_digits(text, 4);
  if (!year || !take(text, "-")) return std::nullopt;
  const auto month = take_digits(text, 2);
  if (!month || !take(text, "-")) return std::nullopt;
  const auto day = take_digits(text, 2);
  if (!day || !take(text, "Tt ")) return std::nullopt;
  const auto time = take_clock(text);
  const auto zone = zone_of(text);
  const auto date = day_of(*year, *month, *day);
  if (!time || !zone || !date) return std::nullopt;
  return Stamp{{}, whole, *date, *time, zone->utc_offset};
}

class StampReading {
 public:
  StampReading(const TimeColumns& columns, Problems& problems) : columns_(columns), problems_(problems) {}

  std::optional<Stamp> read(const Row& row) {
    auto stamp = columns_.time ? read_one(row) : read_parts(row);
    if (stamp && columns_.stamped == Stamped::end) stamp->time -= minutes(60);
    return stamp;
  }

 private:
  std::optional<Stamp> read_one(const Row& row) {
    const auto text = row.cells[*columns_.time].text;
    auto stamp = stamp_of(text);
    if (!stamp)
      tell(row, *columns_.time,
           "is no time (permitted: such as 2024-01-31T13:00, with Z or +01:00 after it)");
    else
      stamp->mark = row.mark_of(*columns_.time);
    return stamp;
  }

  std::optional<Stamp> read_parts(const Row& row) {
    const auto month = part(row, columns_.month, "month", 1, 12);
    const auto day = part(row, columns_.day, "day", 1, 31);
    const bool ends = columns_.stamped == Stamped::end;
    const auto hour = part(row, columns_.hour, ends ? "hour_end" : "hour_start", 0, ends ? 24 : 23);
    if (!month || !day || !hour) return std::nullopt;
    const auto date = day_of(nominal_year, *month, *day);
    if (!date) {
      tell(row, columns_.day, fmt::format("is no day of month {}", *month));
      return std::nullopt;
    }
    return Stamp{row.mark_of(columns_.month), {}, *date, minutes(60 * *hour), std::nullopt};
  }

  std::optional<int> part(const Row& row, std::size_t position, std::string_view name, int least, int most) {
    const auto text = row.cells[position].text;
    const auto fraction = number_of(text);
    const auto value = whole_number(text);
    if (value && *value >= least && *value <= most) return value;
    if (fraction && *fraction == std::trunc(*fraction) && *fraction >= least && *fraction <= most)
      return static_cast<int>(*fraction);
    const bool within_an_hour = fraction && *fraction > least && *fraction < most && name.starts_with("hour");
    tell(row, position,
         within_an_hour ? fmt::format("is not on the hour; take means of whole hours first")
                        : fmt::format("is no {} (permitted: a whole number, {} to {})", name, least, most));
    return std::nullopt;
  }

  void tell(const Row& row, std::size_t position, const std::string& what) {
    problems_.add_of_kind("time" + what, row.mark_of(position),
                          fmt::format("\"{}\" {}", one_line(row.cells[position].text, 40), what));
  }

  const TimeColumns& columns_;
  Problems& problems_;
};

}  // namespace

std::vector<Stamp> read_stamps(const CsvRows& table, const TimeColumns& columns, Problems& problems) {
  StampReading reading(columns, problems);
  std::vector<Stamp> stamps;
  stamps.reserve(table.rows.size());
  for (const auto& row : table.rows)
    if (const auto stamp = reading.read(row)) stamps.push_back(*stamp);
  return stamps;
}

}  // namespace dewgap::tools::weather
