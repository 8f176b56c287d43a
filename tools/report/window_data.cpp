#include <string_view>

#include "tools/answer/plain_text.hpp"
#include "tools/report/charts.hpp"
#include "tools/report/page_data.hpp"
#include "tools/report/plain_words.hpp"
#include "tools/report/window_data_kernel.hpp"

namespace dewgap::tools::report_view {
namespace {

using kainjow::mustache::data;

constexpr std::size_t heading_columns = 60;
constexpr std::size_t nav_columns = 32;

data charts_of(const Json& window, const std::string& id, const std::string& hours_case) {
  const auto& frost = window.at("section").at("frost_night");
  const auto& month = window.at("section").at("coldest_month");
  const auto& year = window.at("year");
  data charts{data::type::object};
  charts.set("section_now", chart_section(frost.at("now"), scale_of(frost), id + "-frost-now"));
  charts.set("section_with", chart_section(frost.at("with_sheet"), scale_of(frost), id + "-frost-with"));
  charts.set("month_now", chart_section(month.at("now"), scale_of(month), id + "-month-now"));
  charts.set("month_with", chart_section(month.at("with_sheet"), scale_of(month), id + "-month-with"));
  charts.set("months", chart_months(year, id + "-months"));
  charts.set("hours", chart_hours(year.at(hours_case), id + "-hours", hours_case + " case"));
  charts.set("hours_wetter", chart_hours(year.at("wetter"), id + "-hours-wetter", "wetter case"));
  charts.set("hours_middle", chart_hours(year.at("middle"), id + "-hours-middle", "middle case"));
  charts.set("vents", chart_vents(window.at("answer"), id + "-vents"));
  charts.set("rail", chart_rail(window, id + "-rail"));
  if (window.contains("frame_moisture"))
    charts.set("timber", chart_timber(window.at("frame_moisture"), id + "-timber"));
  return charts;
}

constexpr std::string_view not_said = "not known";

/// What the job says of a tick, a measure or in words; "not known" without it.
std::string given_word(const Json& window, std::string_view key) {
  for (const auto& value : window.at("answer").at("survey"))
    if (value.at("key") == key)
      return value.at("value").is_string() ? value.at("value").get<std::string>() : "yes";
  return std::string(not_said);
}

bool is_blank(std::string_view text) {
  return text.find_first_not_of(" \t\r\n") == std::string_view::npos;
}

std::string stripped_words(const Json& window) {
  const auto given = given_word(window, "joints.weather_stripped");
  if (given == "yes") return "done already.";
  return given == "no" ? "not done yet; its figures stand among the rivals." : "not known.";
}

std::string curtain_words(const Json& window) {
  return given_word(window, "sheet.curtain_gap_mm") == not_said
             ? "none are counted; their figures stand among the rivals."
             : "drawn at night already, and counted.";
}

std::string fixing_words(const Json& holes) {
  const auto fixing = holes.at("fixing").get<std::string>();
  if (fixing == "turn_clips")
    return "Held by turn clips, each on one screw in the frame; the sheet has no hole.";
  if (fixing == "screws") return "Held by screws through the sheet into the frame.";
  if (fixing == "beads") return "Held by beads in the reveal; no hole is set out.";
  return "Held by tape alone; no hole.";
}

bool has_items(const Json& answer, const char* key) {
  return answer.contains(key) && !answer.at(key).empty();
}

void add_conservation(data& view, const Json& window) {
  const bool is_pending = window.contains("proposed_holes");
  view.set("has_conservation", data{is_pending || window.contains("section")});
  view.set("stripped_words", stripped_words(window));
  view.set("curtain_words", curtain_words(window));
  const auto tried = given_word(window, "job.tried_first");
  view.set("tried_first", is_blank(tried) || tried == not_said ? data{false} : data{tried});
  const auto* key = is_pending ? "proposed_holes" : "setting_out";
  if (!window.contains(key)) return;
  view.set("fixing_words", fixing_words(window.at(key)));
  view.set("has_holes", data{!window.at(key).at("holes").empty()});
}

void add_switches(data& view, const Json& answer) {
  view.set("has_money", data{answer.contains("money")});
  view.set("has_looks", data{has_items(answer, "look_first")});
  view.set("has_remedies", data{has_items(answer, "remedies")});
  view.set("has_guessed", data{has_items(answer, "guessed")});
  view.set("has_flags", data{has_items(answer, "flags")});
  view.set("has_width_checks", data{has_items(answer, "width_checks")});
  if (answer.contains("money")) view.set("currency", answer.at("money").at("currency").get<std::string>());
}

void add_figures(data& view, const Json& window, const Json& words, const std::string& at,
                 const std::string& id) {
  const auto& answer = window.at("answer");
  if (words.contains("chosen_place")) {
    const auto place = words.at("chosen_place").get<std::size_t>();
    view.set("chosen", page_data(answer.at("year").at("options")[place],
                                 at + "/answer/year/options/" + std::to_string(place)));
  }
  // A year without a wet hour shows nothing: then the wetter case does.
  const bool middle_is_wet = window.at("year").at("middle").at("hours_wet_h").get<double>() > 0.0;
  const std::string hours_case = middle_is_wet ? "middle" : "wetter";
  view.set("hours_case", hours_case);
  view.set("charts", charts_of(window, id, hours_case));
}

std::string name_of_window(const Json& window) {
  return plain_words(window).at("title").get<std::string>();
}

void add_headings(data& view, const Json& window, const PlaceInReport& place) {
  const bool is_of_house = place.page_of == PageOf::house;
  const auto name = name_of_window(window);
  view.set("is_of_house", data{is_of_house});
  view.set("title_level", is_of_house ? "2" : "1");
  view.set("level", is_of_house ? "3" : "2");
  view.set("short_title", one_line(name, heading_columns));
  view.set("nav_title", one_line(name, nav_columns));
  view.set("has_long_title", data{one_line(name, heading_columns) != harmless(name)});
}

}  // namespace

data window_data(const Json& window, const PlaceInReport& place) {
  const auto id = "window-" + std::to_string(place.number);
  const auto words = plain_words(window);
  auto view = page_data(window, place.at);
  view.set("window_at", place.at);
  view.set("id", id);
  view.set("words", page_data(words, place.at));
  add_headings(view, window, place);
  add_switches(view, window.at("answer"));
  add_conservation(view, window);
  if (window.contains("section")) add_figures(view, window, words, place.at, id);
  return view;
}

std::string short_title(const Json& window) {
  return one_line(name_of_window(window), heading_columns);
}

}  // namespace dewgap::tools::report_view
