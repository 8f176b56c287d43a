#include "tools/weather/header_kernel.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <array>

#include "tools/answer/plain_text.hpp"
#include "tools/job/spelling.hpp"

namespace dewgap::tools::weather {
namespace {

constexpr std::size_t shown_columns = 40;
constexpr std::array<std::string_view, 6> time_names{"time_start", "time_end",   "month",
                                                     "day",        "hour_start", "hour_end"};

class HeaderReading {
 public:
  HeaderReading(const Row& header, Problems& problems) : header_(header), problems_(problems) {}

  Header read() {
    for (std::size_t i = 0; i < header_.cells.size(); ++i) read_cell(i);
    read_time_columns();
    require_columns();
    problems_.stop_if_any();
    return std::move(result_);
  }

 private:
  TextMark start() const { return {header_.line, 1}; }

  void read_cell(std::size_t i) {
    const auto name = header_.cells[i].text;
    const auto small = in_small_letters(name);
    const auto time_name = std::find(time_names.begin(), time_names.end(), small);
    if (time_name != time_names.end()) {
      read_time_name(static_cast<std::size_t>(time_name - time_names.begin()), i);
      return;
    }
    const auto named = column_named(name);
    if (!named) {
      unknown_names_.emplace_back(name);
      result_.unknown.push_back(name.empty() ? "(without a name)" : one_line(name, shown_columns));
    } else if (const auto* column = std::get_if<NamedColumn>(&*named)) {
      add_column({column->rule, column->unit, i, header_.mark_of(i)});
    } else {
      tell_unit(std::get<WrongUnit>(*named), i);
    }
  }

  void read_time_name(std::size_t which, std::size_t i) {
    if (times_[which])
      problems_.add(header_.mark_of(i), fmt::format("{}: this column occurs twice", time_names[which]));
    times_[which] = i;
  }

  void add_column(const DataColumn& column) {
    const auto* other = find(column.rule->quantity);
    if (other != nullptr)
      problems_.add(column.mark, fmt::format("{}: {} stands in column {} already; one of them says it",
                                             column.name(), other->name(), other->position + 1));
    result_.columns.push_back(column);
  }

  void tell_unit(const WrongUnit& wrong, std::size_t i) {
    wrong_.push_back(wrong.rule->quantity);
    const auto name = one_line(header_.cells[i].text, shown_columns);
    const auto what = wrong.unit.empty() ? std::string("the unit is missing")
                                         : fmt::format("\"{}\" is no unit known for it",
                                                       one_line(wrong.unit, shown_columns));
    problems_.add(header_.mark_of(i),
                  fmt::format("{}: {} (permitted: {})", name, what, permitted_names(*wrong.rule)));
  }

  const DataColumn* find(Quantity quantity) const {
    const auto found = std::find_if(result_.columns.begin(), result_.columns.end(),
                                    [&](const auto& column) { return column.rule->quantity == quantity; });
    return found == result_.columns.end() ? nullptr : &*found;
  }

  /// A column with a wrong unit was told already: it is not missing as well.
  bool has(Quantity quantity) const {
    return find(quantity) != nullptr || std::find(wrong_.begin(), wrong_.end(), quantity) != wrong_.end();
  }

  void read_time_columns() {
    const auto& [time_start, time_end, month, day, hour_start, hour_end] = times_;
    const bool single = time_start.has_value() || time_end.has_value();
    const bool parts = month && day && (hour_start || hour_end);
    const bool both_ends = (time_start && time_end) || (hour_start && hour_end);
    if (!single && !parts)
      problems_.add(start(),
                    "no column tells the time (permitted: time_start or time_end, such as "
                    "2024-01-31T13:00; or month, day and hour_start or hour_end)" +
                        near_miss({time_names.begin(), time_names.end()}));
    else if (both_ends)
      problems_.add(start(), "start and end of the hour are both given; one of them says it");
    else if (single && (hour_start || hour_end))
      problems_.add(start(), "the time stands in one column and in parts as well; one of them says it");
    result_.time.stamped = time_end || (!single && hour_end) ? Stamped::end : Stamped::start;
    if (single) {
      result_.time.time = time_start ? time_start : time_end;
    } else if (parts) {
      result_.time.month = *month;
      result_.time.day = *day;
      result_.time.hour = hour_start ? *hour_start : *hour_end;
    }
  }

  void require_columns() {
    if (!has(Quantity::air_temperature)) tell_missing("air temperature", {Quantity::air_temperature});
    require_humidity();
    require_sun();
    if (has(Quantity::sky_temperature) && has(Quantity::long_wave))
      problems_.add(start(), "sky_temperature and long_wave are both given; one of them says it");
  }

  void require_humidity() {
    constexpr std::array any{Quantity::relative_humidity, Quantity::dew_point, Quantity::vapour_pressure};
    const auto given = std::count_if(any.begin(), any.end(), [&](auto quantity) { return has(quantity); });
    if (given == 0) tell_missing("humidity", {any.begin(), any.end()});
    if (given > 1)
      problems_.add(start(),
                    "humidity is given more than once; keep exactly one of relative_humidity, "
                    "dew_point and vapour_pressure");
  }

  void require_sun() {
    const bool beam = has(Quantity::beam_normal);
    const bool diffuse = has(Quantity::diffuse);
    if (beam != diffuse)
      problems_.add(
          start(), fmt::format("{} stands alone; add {}, or keep global_W_m2 alone",
                               beam ? "beam_normal" : "diffuse", beam ? "diffuse_W_m2" : "beam_normal_W_m2"));
    else if (!beam && !has(Quantity::global))
      problems_.add(start(),
                    "no column for the sun (permitted: global_W_m2; or beam_normal_W_m2 and "
                    "diffuse_W_m2; or all three)" +
                        near_miss({"global_W_m2", "beam_normal_W_m2", "diffuse_W_m2"}));
  }

  void tell_missing(std::string_view what, const std::vector<Quantity>& quantities) {
    std::vector<std::string> permitted;
    std::vector<std::string_view> names;
    for (const auto quantity : quantities) {
      permitted.push_back(permitted_names(rule_of(quantity)));
      names.push_back(rule_of(quantity).name);
    }
    problems_.add(start(), fmt::format("no column for the {} (permitted: {}){}", what,
                                       fmt::join(permitted, "; or "), near_miss(names)));
  }

  /// An unknown column that is spelled nearly so.
  std::string near_miss(const std::vector<std::string_view>& permitted) const {
    for (const auto& name : unknown_names_)
      for (const auto wanted : permitted)
        if (!nearest_permitted(name.substr(0, wanted.size()), {wanted}).empty())
          return fmt::format("; is \"{}\" meant for it?", one_line(name, shown_columns));
    return {};
  }

  const Row& header_;
  Problems& problems_;
  Header result_;
  std::array<std::optional<std::size_t>, 6> times_;
  std::vector<Quantity> wrong_;
  std::vector<std::string> unknown_names_;
};

}  // namespace

Header read_header(const Row& header, Problems& problems) {
  return HeaderReading(header, problems).read();
}

}  // namespace dewgap::tools::weather
