// The ways to make the tape beside each other.
#include <fmt/format.h>

#include <array>

#include "tools/drawing/shade.hpp"
#include "tools/drawing/svg.hpp"
#include "tools/report/charts.hpp"
#include "tools/report/figure_text.hpp"
#include "tools/report/plain_words.hpp"

namespace dewgap::tools {
namespace {

using Json = nlohmann::ordered_json;

constexpr double width = 90.0;
constexpr double row_height = 9.4;
constexpr double bar_height = 3.6;
constexpr double head_height = 11.5;
constexpr double text_size = 3.2;

struct Band {
  std::string_view key;
  std::string_view words;
  double darkness;
};
constexpr std::array<Band, 4> bands{Band{"dry", "dry", 0.0}, Band{"harmless_mist", "harmless mist", 0.3},
                                    Band{"runs", "water runs", 0.65}, Band{"damages", "damage", 1.0}};

Ink ink_of(const Band& band) {
  return {"#000", 0.2, band.darkness == 0.0 ? "#fff" : shade(band.darkness), {}};
}

void keys(SvgDrawing& drawing) {
  double x = 0.0;
  for (const auto& band : bands) {
    drawing.rect({x, 0.4, 3.4, 2.9}, ink_of(band));
    drawing.text({x + 4.4, 3.0}, band.words, {.size = text_size});
    x += 7.0 + text_size * text_width_em(band.words);
  }
  drawing.text({width, 8.4}, "good enough", {.size = 2.8, .anchor = Anchor::end});
}

void shares(SvgDrawing& drawing, const Json& by_band, double top) {
  double x = 0.0;
  for (const auto& band : bands) {
    const double wide = width * by_band.at(band.key).get<double>();
    if (wide > 0.0) drawing.rect({x, top, wide, bar_height}, ink_of(band));
    x += wide;
  }
}

void row(SvgDrawing& drawing, std::size_t place, const std::string& name, const Json& option,
         bool is_chosen) {
  const double top = head_height + row_height * static_cast<double>(place);
  const auto weight = is_chosen ? FontWeight::bold : FontWeight::regular;
  drawing.text({0.0, top}, name, {.size = text_size, .weight = weight, .most_width = width - 16.0});
  drawing.text({width, top}, figure_text(option.at("share_acceptable"), "share"),
               {.size = text_size, .anchor = Anchor::end, .weight = weight});
  shares(drawing, option.at("share_by_band"), top + 1.2);
}

/// Without a year there is one share alone of each option: good enough or not.
Json bands_of(const Json& steady_option) {
  const double good = steady_option.at("share_acceptable").get<double>();
  return {{"share_acceptable", good},
          {"share_by_band", {{"dry", 0.0}, {"harmless_mist", good}, {"runs", 1.0 - good}, {"damages", 0.0}}}};
}

}  // namespace

std::string chart_vents(const Json& answer, const std::string& id) {
  const bool has_year = answer.contains("year") && answer.at("year").contains("options");
  const auto& options = has_year ? answer.at("year").at("options") : answer.at("vent").at("options");
  const auto chosen = answer.at("vent").at("choice").get<std::string>();
  const std::string best = answer.at("headline") == "leave" ? " (best of these)" : " (advised)";
  const std::size_t rows = options.size() + (has_year ? 1 : 0);
  std::string description = "Share of plausible cases that are good enough, dry or with harmless mist: ";
  for (const auto& option : options)
    description += option_name(option.at("option").get<std::string>()) + " " +
                   figure_text(option.at("share_acceptable"), "share") + "; ";
  SvgDrawing drawing({width, head_height + row_height * static_cast<double>(rows) - 2.5, DrawingUnit::fluid,
                      id, "Ways to make the tape, side by side", description});
  keys(drawing);
  std::size_t place = 0;
  for (const auto& option : options) {
    const bool is_chosen = option.at("option") == chosen;
    const auto name = option_name(option.at("option").get<std::string>());
    row(drawing, place++, is_chosen ? name + best : name, has_year ? option : bands_of(option), is_chosen);
  }
  if (has_year)
    row(drawing, place++, "no sheet: the old window as it is", answer.at("year").at("as_it_is"), false);
  return drawing.svg();
}

}  // namespace dewgap::tools
