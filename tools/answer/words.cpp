#include "tools/answer/words.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>

#include "dewgap/fitting/practice.hpp"
#include "tools/answer/figures_text.hpp"
#include "tools/answer/plain_text.hpp"
#include "tools/job/units.hpp"

namespace dewgap::tools {

namespace {
constexpr std::size_t longest_source = 60;  // of a file, in text; the JSON has it whole
}

std::string_view json_word(Headline headline) {
  switch (headline) {
    case Headline::fit:
      return "fit";
    case Headline::fit_after:
      return "fit_after";
    case Headline::hold:
      return "hold";
    case Headline::leave:
      return "leave";
  }
  return "hold";
}

std::string_view json_word(VentOption option) {
  switch (option) {
    case VentOption::sealed:
      return "sealed";
    case VentOption::breaks_bottom:
      return "breaks_bottom";
    case VentOption::breaks_bottom_and_top:
      return "breaks_bottom_and_top";
    case VentOption::breaks_bottom_longer:
      return "breaks_bottom_longer";
    case VentOption::weep_to_outdoors:
      return "weep_to_outdoors";
    case VentOption::joints_stripped:
      return "joints_stripped";
    case VentOption::off_in_summer:
      return "off_in_summer";
  }
  return "sealed";
}

std::string_view json_word(GateKind gate) {
  switch (gate) {
    case GateKind::way_out:
      return "way_out";
    case GateKind::burning:
      return "burning";
    case GateKind::fresh_air:
      return "fresh_air";
    case GateKind::protection:
      return "protection";
    case GateKind::old_glass:
      return "old_glass";
  }
  return "way_out";
}

std::string_view json_word(Basis basis) {
  switch (basis) {
    case Basis::measured:
      return "measured";
    case Basis::described:
      return "described";
    case Basis::archetype:
      return "archetype";
    case Basis::defaulted:
      return "default";
  }
  return "default";
}

std::string_view json_word(FixingKind fixing) {
  switch (fixing) {
    case FixingKind::turn_clips:
      return "turn_clips";
    case FixingKind::screws:
      return "screws";
    case FixingKind::tape_only:
      return "tape_only";
    case FixingKind::beads:
      return "beads";
  }
  return "tape_only";
}

std::string_view json_word(YearBand band) {
  switch (band) {
    case YearBand::dry:
      return "dry";
    case YearBand::harmless_mist:
      return "harmless_mist";
    case YearBand::runs:
      return "runs";
    case YearBand::damages:
      return "damages";
  }
  return "damages";
}

std::vector<std::string_view> modelled_words(const ModelledColumns& modelled) {
  std::vector<std::string_view> words;
  const auto add = [&](bool is_modelled, std::string_view word) {
    if (is_modelled) words.push_back(word);
  };
  add(modelled.air_temperature, "temperature");
  add(modelled.vapour_pressure, "humidity");
  add(modelled.wind, "wind");
  add(modelled.wind_direction, "wind direction");
  add(modelled.sun, "sun");
  add(modelled.sun_split, "direct and diffuse sun");
  add(modelled.cloud_cover, "cloud");
  add(modelled.sky_temperature, "sky temperature");
  return words;
}

const OptionAdvice* option_of(const VentAdvice& advice, VentOption option) {
  for (const auto& one : advice.options)
    if (one.option == option) return &one;
  return nullptr;
}

std::string weather_sentence(const std::string& source, const ModelledColumns& modelled,
                             const std::optional<UsedWeather>& file) {
  // Without a file all of it is modelled, and the source says so.
  auto text = fmt::format("WEATHER: {}", source.empty() ? "a file that names no source"
                                         : file         ? one_line(source, longest_source)
                                                        : source);
  const auto words = modelled_words(modelled);
  if (file && !words.empty()) text += fmt::format("; modelled: {}", fmt::join(words, ", "));
  if (file && file->repaired_hours > 0)
    text += fmt::format("; hours repaired: {}, at most {} on end", file->repaired_hours,
                        file->longest_repaired_gap_h);
  return text + ".";
}

std::string weather_file_sentence(const UsedWeather& file) {
  constexpr std::size_t most_named = 2;
  constexpr std::size_t longest_name = 20;
  const auto& figures = file.figures;
  auto text = fmt::format(
      "FILE: {}; mean {} C, coldest month {} C; humidity {} %, wind {} m/s, sun {} kWh/m2 a year",
      coordinates_text(figures.latitude_deg, figures.longitude_deg), figure(figures.mean_C, 1),
      figure(figures.coldest_month_C(), 1), figure(per_cent.from_base(figures.relative_humidity), 0),
      figure(figures.wind_m_s, 1), figure(figures.sun_kWh_m2, 0));
  const auto& ignored = file.ignored_columns;
  for (std::size_t i = 0; i < std::min(most_named, ignored.size()); ++i)
    text += (i == 0 ? "; not used: " : ", ") + one_line(ignored[i], longest_name);
  if (ignored.size() > most_named) text += fmt::format(" and {} more", ignored.size() - most_named);
  return text + ".";
}

std::vector<std::string> weather_warnings(const std::optional<UsedWeather>& file) {
  std::vector<std::string> lines;
  if (file)
    for (const auto& warning : file->warnings) lines.push_back("WARNING: " + warning);
  return lines;
}

std::string tape_order(VentOption option) {
  const double break_mm = millimetres.from_base(practice::vent_break_m);
  switch (option) {
    case VentOption::sealed:
      return "all round; corners joined, no daylight.";
    case VentOption::breaks_bottom:
      return fmt::format("all round but two {:.0f} mm breaks, bottom left and bottom right.", break_mm);
    case VentOption::breaks_bottom_and_top:
      return fmt::format("all round but four {:.0f} mm breaks, left and right at bottom and top.", break_mm);
    case VentOption::breaks_bottom_longer:
      return "all round but two 100 mm breaks, bottom left and bottom right.";
    case VentOption::weep_to_outdoors:
      return "all round; two 6 mm weep holes down to outdoors through the rail.";
    case VentOption::joints_stripped:
      return "all round; draught-strip the old window's joints first.";
    case VentOption::off_in_summer:
      return "all round; off in spring, dry the window, back in autumn.";
  }
  return {};
}

std::string_view vent_verdict(VentOption option) {
  switch (option) {
    case VentOption::sealed:
      return "TAPE ALL ROUND";
    case VentOption::breaks_bottom:
      return "BREAKS: two 20 mm at the bottom";
    case VentOption::breaks_bottom_longer:
      return "BREAKS: two 100 mm at the bottom";
    case VentOption::breaks_bottom_and_top:
      return "BREAKS: two 20 mm at the bottom, two at the top";
    case VentOption::weep_to_outdoors:
      return "TAPE ALL ROUND, two 6 mm weep holes to outdoors";
    case VentOption::joints_stripped:
      return "TAPE ALL ROUND, the old joints draught-stripped first";
    case VentOption::off_in_summer:
      return "TAPE ALL ROUND, off in spring, back in autumn";
  }
  return {};
}

std::string_view short_name(VentOption option) {
  switch (option) {
    case VentOption::sealed:
      return "Tape all round";
    case VentOption::breaks_bottom:
      return "2 breaks 20, bottom";
    case VentOption::breaks_bottom_longer:
      return "2 breaks 100, bottom";
    case VentOption::breaks_bottom_and_top:
      return "4 breaks 20, both ends";
    case VentOption::weep_to_outdoors:
      return "Weep holes to outdoors";
    case VentOption::joints_stripped:
      return "Old joints stripped";
    case VentOption::off_in_summer:
      return "Off in summer";
  }
  return {};
}

}  // namespace dewgap::tools
