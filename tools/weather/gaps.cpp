#include <fmt/format.h>

#include <algorithm>

#include "tools/weather/gaps_kernel.hpp"

namespace dewgap::tools::weather {
namespace {

constexpr double most_missing = 0.10;  // our convention

std::vector<bool> without_row(const YearOrder& order) {
  std::vector<bool> missing(order.row_of_slot.size());
  for (std::size_t slot = 0; slot < missing.size(); ++slot) missing[slot] = !order.row_of_slot[slot];
  return missing;
}

std::size_t count(const std::vector<bool>& flags) {
  return static_cast<std::size_t>(std::count(flags.begin(), flags.end(), true));
}

std::string hours_text(std::size_t hours) {
  return fmt::format("{} hour{}", hours, hours == 1 ? "" : "s");
}

class GapCheck {
 public:
  GapCheck(const YearOrder& order, const CsvRows& table, int longest_repair_h, Problems& problems)
      : order_(order),
        table_(table),
        longest_h_(static_cast<std::size_t>(longest_repair_h)),
        problems_(problems),
        no_row_(without_row(order)) {}

  /// False when so much is missing that single columns need not be looked at.
  bool check_rows() {
    const auto hours = no_row_.size();
    for (const auto& gap : gaps_of(no_row_)) {
      const bool to_the_end = (gap.first_slot + gap.length_h) % hours == order_.first_slot;
      if (gap.length_h <= longest_h_) continue;
      if (to_the_end) {
        const auto& last = table_.rows.back();
        problems_.add({last.line, 1}, fmt::format("the file ends here, {} before a whole year of {} hours",
                                                  hours_text(gap.length_h), hours));
        return false;
      }
    }
    if (is_too_much(count(no_row_))) {
      problems_.add(
          {table_.header.line, 1},
          fmt::format("{} of {} hours have no row ({:.1f} %); at most 10 % may be missing{}", count(no_row_),
                      hours, per_cent_of_year(count(no_row_)), stretches_text(no_row_)));
      return false;
    }
    for (const auto& gap : gaps_of(no_row_))
      if (gap.length_h > longest_h_) tell_rows(gap);
    return true;
  }

  void check_column(const HourlyValues& hourly) {
    std::vector<bool> missing(hourly.values.size());
    for (std::size_t slot = 0; slot < missing.size(); ++slot) missing[slot] = !hourly.values[slot];
    if (is_too_much(count(missing))) {
      problems_.add(hourly.column.mark,
                    fmt::format("{}: {} of {} hours have no value ({:.1f} %); at most 10 % may be missing{}",
                                hourly.column.name(), count(missing), missing.size(),
                                per_cent_of_year(count(missing)), stretches_text(missing)));
      return;
    }
    for (const auto& gap : gaps_of(missing))
      if (gap.length_h > longest_h_) tell_cells(hourly, gap);
  }

 private:
  /// Hours since the file's first row.
  std::size_t since_first(const Gap& gap) const {
    return (gap.first_slot + no_row_.size() - order_.first_slot) % no_row_.size();
  }
  /// "12 hours from 5 January, 04:00 (line 106)".
  std::string stretch_text(const Gap& gap) const {
    const auto hours = no_row_.size();
    const auto& row = order_.row_of_slot[gap.first_slot];
    const auto& after = order_.row_of_slot[(gap.first_slot + gap.length_h) % hours];
    const auto line = row     ? fmt::format(" (line {})", table_.rows[*row].line)
                      : after ? fmt::format(" (before line {})", table_.rows[*after].line)
                              : std::string();
    return fmt::format("{} from {}{}", hours_text(gap.length_h), slot_text(gap.first_slot, hours), line);
  }
  /// The longest stretch and the first.
  std::string stretches_text(const std::vector<bool>& missing) const {
    const auto gaps = gaps_of(missing);
    const auto longest = std::max_element(gaps.begin(), gaps.end(),
                                          [](const Gap& a, const Gap& b) { return a.length_h < b.length_h; });
    const auto first = std::min_element(gaps.begin(), gaps.end(), [&](const Gap& a, const Gap& b) {
      return since_first(a) < since_first(b);
    });
    if (longest == first)
      return fmt::format("; the longest stretch, the first too: {}", stretch_text(*first));
    return fmt::format("; the longest stretch: {}; the first: {}", stretch_text(*longest),
                       stretch_text(*first));
  }
  bool is_too_much(std::size_t missing) const {
    return static_cast<double>(missing) > most_missing * static_cast<double>(no_row_.size());
  }
  double per_cent_of_year(std::size_t missing) const {
    return 100.0 * static_cast<double>(missing) / static_cast<double>(no_row_.size());
  }
  std::string limit_text() const {
    return longest_h_ == 0 ? "gaps are not to be filled in"
                           : fmt::format("gaps of at most {} are filled in", hours_text(longest_h_));
  }

  void tell_rows(const Gap& gap) {
    const auto hours = no_row_.size();
    const auto& after = table_.rows[*order_.row_of_slot[(gap.first_slot + gap.length_h) % hours]];
    problems_.add_of_kind(
        "rows", {after.line, 1},
        fmt::format("{} {} missing before this row, from {}; {}", hours_text(gap.length_h),
                    gap.length_h == 1 ? "is" : "are", slot_text(gap.first_slot, hours), limit_text()));
  }

  /// At the first row of the gap; a gap without any row was told already.
  void tell_cells(const HourlyValues& hourly, const Gap& gap) {
    const auto hours = no_row_.size();
    for (std::size_t i = 0; i < gap.length_h; ++i) {
      const auto& row = order_.row_of_slot[(gap.first_slot + i) % hours];
      if (!row) continue;
      problems_.add_of_kind(
          "cells " + hourly.column.name(), table_.rows[*row].mark_of(hourly.column.position),
          fmt::format("{}: {} without a value, from {}; {}", hourly.column.name(), hours_text(gap.length_h),
                      slot_text(gap.first_slot, hours), limit_text()));
      return;
    }
  }

  const YearOrder& order_;
  const CsvRows& table_;
  std::size_t longest_h_;
  Problems& problems_;
  std::vector<bool> no_row_;
};

}  // namespace

std::vector<Gap> gaps_of(const std::vector<bool>& is_missing) {
  const auto slots = is_missing.size();
  const auto begins = [&](std::size_t slot) {
    return is_missing[slot] && !is_missing[slot == 0 ? slots - 1 : slot - 1];
  };
  std::vector<Gap> gaps;
  for (std::size_t slot = 0; slot < slots; ++slot) {
    if (!begins(slot)) continue;
    std::size_t length = 1;
    while (is_missing[(slot + length) % slots]) ++length;
    gaps.push_back({slot, length});
  }
  if (gaps.empty() && slots > 0 && is_missing.front()) gaps.push_back({0, slots});
  return gaps;
}

void require_small_gaps(const std::vector<HourlyValues>& of_slots, const YearOrder& order,
                        const CsvRows& table, int longest_repair_h, Problems& problems) {
  GapCheck check(order, table, longest_repair_h, problems);
  if (!check.check_rows()) return;
  for (const auto& hourly : of_slots) check.check_column(hourly);
}

}  // namespace dewgap::tools::weather
