// The year: misty mornings by month, and hours of the day by day of the year.
#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "tools/drawing/shade.hpp"
#include "tools/drawing/svg.hpp"
#include "tools/report/charts.hpp"
#include "tools/report/figure_text.hpp"

namespace dewgap::tools {
namespace {

using Json = nlohmann::ordered_json;

constexpr double width = 90.0;
constexpr double plot_left = 8.0;
constexpr double small_text = 3.1;

constexpr std::array<std::string_view, 12> names{"January",   "February", "March",    "April",
                                                 "May",       "June",     "July",     "August",
                                                 "September", "October",  "November", "December"};

Ink fill_of_middle() {
  return {"#000", 0.2, shade(0.85), {}};
}
Ink fill_of_wetter() {
  return {"#000", 0.2, shade(0.25), {}};
}

/// A key of the drawing: a box and its words.
void key(SvgDrawing& drawing, Point at, const Ink& ink, std::string_view words) {
  drawing.rect({at.x, at.y - 2.6, 3.4, 2.9}, ink);
  drawing.text({at.x + 4.6, at.y}, words, {.size = small_text, .most_width = width - at.x - 4.6});
}

// ---- months

constexpr double bars_top = 12.0;
constexpr double bars_bottom = 38.0;

double highest(const Json& year) {
  double most = 4.0;
  for (const auto* one : {"middle", "wetter"})
    for (const auto& month : year.at(one).at("months"))
      most = std::max(most, month.at("misty_mornings").get<double>());
  return most;
}

void bar(SvgDrawing& drawing, Box place, const Json& mornings, double most, const Ink& ink) {
  const double tall = (bars_bottom - bars_top) * mornings.get<double>() / most;
  if (tall <= 0.0) return;
  drawing.rect({place.x, bars_bottom - tall, place.width, tall}, ink);
  drawing.text({place.x + place.width / 2, bars_bottom - tall - 0.8}, figure_text(mornings, "0"),
               {.size = 2.6, .anchor = Anchor::middle});
}

void month_bars(SvgDrawing& drawing, const Json& year, double most) {
  const double step = (width - plot_left) / 12.0;
  const auto& middle = year.at("middle").at("months");
  const auto& wetter = year.at("wetter").at("months");
  for (std::size_t i = 0; i < middle.size(); ++i) {
    const double x = plot_left + step * static_cast<double>(i);
    bar(drawing, {x + 0.5, 0, step / 2 - 0.6, 0}, middle[i].at("misty_mornings"), most, fill_of_middle());
    bar(drawing, {x + step / 2, 0, step / 2 - 0.6, 0}, wetter[i].at("misty_mornings"), most,
        fill_of_wetter());
    drawing.text({x + step / 2, bars_bottom + 4.0}, month_letter(middle[i].at("month").get<int>()),
                 {.size = small_text, .anchor = Anchor::middle});
  }
}

std::string months_description(const Json& year) {
  return fmt::format("Misty mornings behind the sheet in a year: {} in the middle case, {} in a wetter one.",
                     figure_text(year.at("middle").at("misty_mornings"), "0"),
                     figure_text(year.at("wetter").at("misty_mornings"), "0"));
}

// ---- hours

constexpr double hours_top = 8.0;
constexpr double hour_height = 1.05;

/// Path of all hours of one letter: runs of days, hour by hour.
std::string path_of(const std::vector<std::string>& days, char letter, double day_width) {
  std::string path;
  for (std::size_t hour = 0; hour < 24; ++hour) {
    for (std::size_t day = 0; day < days.size();) {
      auto end = day;
      while (end < days.size() && days[end][hour] == letter) ++end;
      if (end > day)
        path += fmt::format("M{} {}h{}v{}h-{}z", svg_number(plot_left + day_width * static_cast<double>(day)),
                            svg_number(hours_top + hour_height * static_cast<double>(hour)),
                            svg_number(day_width * static_cast<double>(end - day)), svg_number(hour_height),
                            svg_number(day_width * static_cast<double>(end - day)));
      day = std::max(end, day + 1);
    }
  }
  return path;
}

/// Days in turn from the month in which the sheet goes up.
std::vector<std::string> days_in_turn(const Json& one_case) {
  constexpr std::array<int, 12> first_day{0, 31, 59, 90, 120, 151, 181, 212, 243, 273, 304, 334};
  auto days = one_case.at("day_hours").get<std::vector<std::string>>();
  const auto month = one_case.at("months").front().at("month").get<std::size_t>();
  std::rotate(days.begin(), days.begin() + first_day.at(month - 1), days.end());
  return days;
}

void hour_axes(SvgDrawing& drawing, const Json& one_case) {
  const double bottom = hours_top + 24 * hour_height;
  drawing.rect({plot_left, hours_top, width - plot_left, bottom - hours_top}, {"#000", 0.2, "#fff", {}});
  const double step = (width - plot_left) / 12.0;
  for (std::size_t i = 0; i < 12; ++i) {
    const double x = plot_left + step * static_cast<double>(i);
    drawing.text({x + step / 2, bottom + 4.0}, month_letter(one_case.at("months")[i].at("month").get<int>()),
                 {.size = small_text, .anchor = Anchor::middle});
    if (i > 0) drawing.line({x, hours_top}, {x, bottom}, {"#ccc", 0.12, "none", {}});
  }
  for (const int hour : {0, 6, 12, 18, 24})
    drawing.text({plot_left - 1.0, hours_top + hour * hour_height + 1.0}, fmt::format("{}", hour),
                 {.size = small_text, .anchor = Anchor::end});
}

}  // namespace

std::string_view month_name(int month) {
  return names.at(static_cast<std::size_t>(month - 1));
}

std::string_view month_letter(int month) {
  return month_name(month).substr(0, 1);
}

std::string chart_months(const Json& year, const std::string& id) {
  SvgDrawing drawing(
      {width, 44.0, DrawingUnit::fluid, id, "Misty mornings by month", months_description(year)});
  const double most = highest(year);
  key(drawing, {plot_left, 3.0}, fill_of_middle(), "middle case");
  key(drawing, {plot_left + 32.0, 3.0}, fill_of_wetter(), "a wetter case (1 in 10)");
  drawing.line({plot_left, bars_bottom}, {width, bars_bottom}, {"#000", 0.3, "none", {}});
  month_bars(drawing, year, most);
  drawing.text({plot_left - 1.0, bars_bottom}, "0", {.size = small_text, .anchor = Anchor::end});
  drawing.text({plot_left - 1.0, bars_top + 1.0}, fmt::format("{:.0f}", most),
               {.size = small_text, .anchor = Anchor::end});
  return drawing.svg();
}

std::string chart_hours(const Json& one_case, const std::string& id, const std::string& name) {
  const double bottom = hours_top + 24 * hour_height;
  SvgDrawing drawing(
      {width, bottom + 5.5, DrawingUnit::fluid, id, "Wet hours, day by hour, " + name,
       fmt::format("Each column is a day, from the month in which the sheet goes up, each row an "
                   "hour of the day from 0 to 24. {} hours of the year are wet, {} frosty.",
                   figure_text(one_case.at("hours_wet_h"), "0"), figure_text(one_case.at("frost_h"), "0"))});
  hour_axes(drawing, one_case);
  const auto days = days_in_turn(one_case);
  const double day_width = (width - plot_left) / static_cast<double>(days.size());
  drawing.path(path_of(days, '-', day_width), {"none", 0.0, shade(0.12), {}});
  drawing.path(path_of(days, 'w', day_width), {"none", 0.0, shade(0.62), {}});
  drawing.path(path_of(days, 'f', day_width), {"none", 0.0, "#000", {}});
  key(drawing, {plot_left, 4.0}, {"#000", 0.2, shade(0.62), {}}, "mist or water");
  key(drawing, {plot_left + 30.0, 4.0}, {"#000", 0.2, "#000", {}}, "frost");
  key(drawing, {plot_left + 47.0, 4.0}, {"#000", 0.2, shade(0.12), {}}, "sheet off");
  return drawing.svg();
}

}  // namespace dewgap::tools
