// The cut through the window.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "tools/drawing/shade.hpp"
#include "tools/drawing/svg.hpp"
#include "tools/report/charts.hpp"
#include "tools/report/figure_text.hpp"

namespace dewgap::tools {
namespace {

using Json = nlohmann::ordered_json;

constexpr double width = 90.0;
constexpr double height = 52.0;
constexpr double plot_left = 9.0;
constexpr double plot_top = 8.0;
constexpr double plot_bottom = 45.0;
constexpr double air_width = 21.0;
constexpr double slope_width = 6.0;
constexpr double least_pane = 2.2;
constexpr double small_text = 3.1;

/// Where a layer stands in the drawing.
struct DrawnLayer {
  const Json* layer = nullptr;
  double left = 0.0;
  double right = 0.0;
  bool is_air() const {
    const auto material = layer->at("material").get<std::string>();
    return material == "air";
  }
};

double number(const Json& json, const char* key) {
  return json.at(key).get<double>();
}

std::vector<DrawnLayer> drawn_layers(const Json& state) {
  double total_mm = 0.0;
  for (const auto& layer : state.at("layers")) total_mm += number(layer, "thickness_mm");
  const double room = width - plot_left - 2.0 * air_width;
  const double per_mm = std::min(1.0, (room - 4.0 * least_pane) / std::max(total_mm, 1.0));
  double drawn = 0.0;
  for (const auto& layer : state.at("layers"))
    drawn += std::max(least_pane, per_mm * number(layer, "thickness_mm"));
  std::vector<DrawnLayer> layers;
  double x = plot_left + air_width + (room - drawn) / 2.0;
  for (const auto& layer : state.at("layers")) {
    const double wide = std::max(least_pane, per_mm * number(layer, "thickness_mm"));
    layers.push_back({&layer, x, x + wide});
    x += wide;
  }
  return layers;
}

class SectionChart {
 public:
  SectionChart(const Json& state, TemperatureScale scale, const std::string& id)
      : state_(state),
        scale_(scale),
        layers_(drawn_layers(state)),
        drawing_({width, height, DrawingUnit::fluid, id, title(), description()}) {}

  std::string svg() {
    grid();
    bodies();
    temperature_line();
    dew_points();
    faces();
    return drawing_.svg();
  }

 private:
  std::string title() const {
    return state_.contains("gap_air_C") ? "Cut through the window with the sheet"
                                        : "Cut through the window now";
  }
  std::string description() const {
    return fmt::format(
        "From outdoors at {} C to the room at {} C, temperature drawn as a line; the glass face "
        "that may mist is {} C, the dew point beside it {} C. {}",
        figure_text(state_.at("outdoor_C"), "1"), figure_text(state_.at("room_C"), "1"),
        figure_text(state_.at("centre_face_C"), "1"), figure_text(state_.at("decisive_dew_point_C"), "1"),
        state_.at("sentence").get<std::string>());
  }
  double y(double celsius) const {
    return plot_bottom - (plot_bottom - plot_top) * (celsius - scale_.low_C) / (scale_.high_C - scale_.low_C);
  }
  double left() const { return layers_.empty() ? width / 2 : layers_.front().left; }
  double right() const { return layers_.empty() ? width / 2 : layers_.back().right; }

  void grid() {
    for (double celsius = scale_.low_C; celsius <= scale_.high_C + 0.1; celsius += 5.0) {
      drawing_.line({plot_left, y(celsius)}, {width, y(celsius)}, {"#bbb", 0.15, "none", {}});
      drawing_.text({plot_left - 1.0, y(celsius) + 1.1}, fmt::format("{:.0f}", celsius),
                    {.size = small_text, .anchor = Anchor::end});
    }
    drawing_.text({0.0, 3.2}, "°C", {.size = small_text});
    const TextStyle zone{.size = small_text, .anchor = Anchor::middle, .weight = FontWeight::bold};
    drawing_.text({(plot_left + left()) / 2, 3.2}, "outdoors", zone);
    drawing_.text({(right() + width) / 2, 3.2}, "room", zone);
  }

  void bodies() {
    for (const auto& drawn : layers_) {
      const double middle = (drawn.left + drawn.right) / 2;
      const bool is_first = drawn.left == layers_.front().left;
      if (!drawn.is_air()) {
        const auto material = is_first ? Material::glass : Material::acrylic;
        drawing_.hatched(
            Box{drawn.left, plot_top - 2.0, drawn.right - drawn.left, plot_bottom - plot_top + 2.0},
            material);
      }
      const TextStyle name_style{.size = small_text,
                                 .anchor = is_first                 ? Anchor::end
                                           : drawn.right == right() ? Anchor::start
                                                                    : Anchor::middle};
      const double at = is_first ? drawn.right + 2.0 : drawn.right == right() ? drawn.left - 2.0 : middle;
      drawing_.text({at, plot_bottom + 4.5}, drawn.layer->at("name").get<std::string>(), name_style);
    }
  }

  void temperature_line() {
    std::vector<Point> line{{plot_left, y(number(state_, "outdoor_C"))},
                            {left() - slope_width, y(number(state_, "outdoor_C"))}};
    for (const auto& drawn : layers_) {
      line.push_back({drawn.left, y(number(*drawn.layer, "outer_face_C"))});
      if (drawn.is_air() && state_.contains("gap_air_C") && drawn.layer->at("part") == "gap") {
        const double edge = std::min(slope_width, (drawn.right - drawn.left) / 3);
        line.push_back({drawn.left + edge, y(number(state_, "gap_air_C"))});
        line.push_back({drawn.right - edge, y(number(state_, "gap_air_C"))});
      }
      line.push_back({drawn.right, y(number(*drawn.layer, "inner_face_C"))});
    }
    line.push_back({right() + slope_width, y(number(state_, "room_C"))});
    line.push_back({width, y(number(state_, "room_C"))});
    drawing_.polyline(line, {"#000", 0.7, "none", {}});
    value((plot_left + left()) / 2 - 1, "outdoor_C", above);
    value((right() + width) / 2 + 2, "room_C", above);
  }

  static constexpr double above = -1.4;
  static constexpr double below = 4.0;

  void value(double x, const char* key, double shift) {
    drawing_.text({x, y(number(state_, key)) + shift}, figure_text(state_.at(key), "1"),
                  {.size = small_text, .anchor = Anchor::middle});
  }

  void dew_point(double from, double to, const char* key) {
    if (!state_.contains(key)) return;
    drawing_.line({from, y(number(state_, key))}, {to, y(number(state_, key))},
                  {shade(0.8), 0.55, "none", "1.6 1.1"});
    value((from + to) / 2, key, below);
  }

  void dew_points() {
    dew_point(plot_left, left(), "outdoor_dew_point_C");
    dew_point(right(), width, "room_dew_point_C");
    for (const auto& drawn : layers_)
      if (drawn.layer->at("part") == "gap") dew_point(drawn.left, drawn.right, "gap_potential_dew_point_C");
  }

  /// The face that may mist: filled where it does.
  void faces() {
    const bool is_wet = state_.at("mist") != "none";
    for (const auto& drawn : layers_) {
      if (drawn.is_air()) continue;
      if (std::abs(number(*drawn.layer, "inner_face_C") - number(state_, "centre_face_C")) > 1e-6) continue;
      drawing_.circle({drawn.right, y(number(state_, "centre_face_C"))}, 1.3,
                      {"#000", 0.4, is_wet ? "#000" : "#fff", {}});
      return;
    }
  }

  const Json& state_;
  TemperatureScale scale_;
  std::vector<DrawnLayer> layers_;
  SvgDrawing drawing_;
};

void widen(TemperatureScale& scale, const Json& state) {
  for (const auto* key : {"outdoor_C", "outdoor_dew_point_C", "room_C", "room_dew_point_C",
                          "gap_potential_dew_point_C", "centre_face_C"}) {
    if (!state.contains(key)) continue;
    scale.low_C = std::min(scale.low_C, number(state, key));
    scale.high_C = std::max(scale.high_C, number(state, key));
  }
}

}  // namespace

TemperatureScale scale_of(const Json& condition) {
  constexpr double step_K = 5.0;
  TemperatureScale scale{1e9, -1e9};
  widen(scale, condition.at("now"));
  widen(scale, condition.at("with_sheet"));
  // Room for what is written under the lowest dew point.
  return {step_K * std::floor((scale.low_C - 2.0) / step_K),
          step_K * std::ceil((scale.high_C + 1.0) / step_K)};
}

std::string chart_section(const Json& state, TemperatureScale scale, const std::string& id) {
  return SectionChart(state, scale, id).svg();
}

}  // namespace dewgap::tools
