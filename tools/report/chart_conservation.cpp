// Pictures for the conservation page: frame moisture through the year, and a section to scale.
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
constexpr double small_text = 3.1;

// ---- moisture

constexpr double plot_left = 9.0;
constexpr double plot_top = 8.0;
constexpr double plot_bottom = 40.0;

double most_moisture(const Json& moisture) {
  constexpr double step_pct = 10.0;
  double most = 25.0;
  for (const auto& month : moisture.at("months"))
    most = std::max({most, month.at("now_pct").get<double>(), month.at("with_sheet_pct").get<double>()});
  return step_pct * std::ceil(most / step_pct);
}

std::vector<Point> moisture_line(const Json& moisture, const char* key, double most) {
  const double step = (width - plot_left) / 12.0;
  std::vector<Point> line;
  for (const auto& month : moisture.at("months"))
    line.push_back({plot_left + step * (static_cast<double>(line.size()) + 0.5),
                    plot_bottom - (plot_bottom - plot_top) * month.at(key).get<double>() / most});
  return line;
}

void moisture_axes(SvgDrawing& drawing, const Json& moisture, double most) {
  const double per_pct = (plot_bottom - plot_top) / most;
  for (double percent = 0.0; percent <= most; percent += 10.0) {
    const double y = plot_bottom - per_pct * percent;
    drawing.line({plot_left, y}, {width, y}, {"#bbb", 0.15, "none", {}});
    drawing.text({plot_left - 1.0, y + 1.1}, fmt::format("{:.0f}", percent),
                 {.size = small_text, .anchor = Anchor::end});
  }
  const double threshold = moisture.at("threshold_pct").get<double>();
  const double y = plot_bottom - per_pct * threshold;
  drawing.line({plot_left, y}, {width, y}, {"#000", 0.35, "none", "0.8 0.8"});
  drawing.text({(plot_left + width) / 2, y - 1.0},
               fmt::format("{} %: wood can decay above", figure_text(moisture.at("threshold_pct"), "0")),
               {.size = small_text, .anchor = Anchor::middle});
  const double step = (width - plot_left) / 12.0;
  for (int month = 1; month <= 12; ++month)
    drawing.text({plot_left + step * (month - 0.5), plot_bottom + 4.0}, month_letter(month),
                 {.size = small_text, .anchor = Anchor::middle});
}

// ---- section

double given_mm(const Json& window, std::string_view key, double otherwise) {
  for (const auto& value : window.at("answer").at("survey"))
    if (value.at("key") == key && value.at("value").is_number()) return value.at("value").get<double>();
  return otherwise;
}

/// Millimetres of the bottom rail's section; x grows towards the room, y upwards from the sheet's edge.
struct Rail {
  double glass = 0.0;
  double gap = 0.0;
  double tape = 0.0;
  double sheet = 0.0;
  double overlap = 20.0;
  double tape_width = 12.0;
  double face = 40.0;
  double pilot_depth = 0.0;
};

Rail rail_of(const Json& window) {
  const auto& section = window.at("section");
  Rail rail;
  for (const auto& layer : section.at("frost_night").at("with_sheet").at("layers")) {
    if (layer.at("part") == "old glass") rail.glass = layer.at("thickness_mm").get<double>();
    if (layer.at("part") == "sheet") rail.sheet = layer.at("thickness_mm").get<double>();
  }
  rail.gap = section.at("gap_width_mm").get<double>();
  rail.tape = section.at("tape_thickness_mm").get<double>();
  rail.tape_width = given_mm(window, "sheet.tape_width_mm", rail.tape_width);
  rail.face = given_mm(window, "window.fixing_face_mm", rail.face);
  const auto& answer = window.at("answer");
  if (answer.contains("cut_and_fix") && answer.at("cut_and_fix").contains("pilot_depth_mm"))
    rail.pilot_depth = answer.at("cut_and_fix").at("pilot_depth_mm").get<double>();
  return rail;
}

class RailSection {
 public:
  RailSection(const Rail& rail, const std::string& id)
      : rail_(rail),
        per_mm_(std::min(1.0, 62.0 / (rail.glass + rail.gap + rail.sheet + 12.0))),
        drawing_(
            {width, 78.0, DrawingUnit::fluid, id, "Section through the bottom rail, to scale",
             fmt::format("From outdoors, left, to the room, right: old glass, gap of {:.0f} mm, tape and "
                         "sheet on the face of the rail.",
                         rail.gap)}) {}

  std::string svg() {
    const double face_x = x(rail_.gap - rail_.tape);
    const double top = 44.0, foot = top + per_mm_ * rail_.face;
    drawing_.hatched(Box{x(-rail_.glass), 4.0, per_mm_ * rail_.glass, top - 4.0 + 3.0}, Material::glass);
    drawing_.hatched(
        Box{x(-rail_.glass) - 6.0, top, face_x - x(-rail_.glass) + 6.0, std::min(foot, 72.0) - top},
        Material::timber);
    drawing_.hatched(Box{face_x, top + 2.0, per_mm_ * rail_.tape, per_mm_ * rail_.tape_width},
                     Material::foam_tape);
    drawing_.hatched(
        Box{x(rail_.gap), 4.0, std::max(1.0, per_mm_ * rail_.sheet), top - 4.0 + per_mm_ * rail_.overlap},
        Material::acrylic);
    pilot(face_x, top + per_mm_ * rail_.overlap + 4.0);
    labels(face_x, top);
    return drawing_.svg();
  }

 private:
  double x(double from_glass_mm) const { return 12.0 + per_mm_ * (rail_.glass + from_glass_mm); }

  void pilot(double face_x, double y) {
    if (rail_.pilot_depth <= 0.0) return;
    const double deep = std::min(per_mm_ * rail_.pilot_depth, face_x - 3.0);
    for (const double shift : {-1.5, 1.5})
      drawing_.line({face_x - deep, y + shift * per_mm_}, {face_x, y + shift * per_mm_},
                    dashed("1.2 0.8", 0.4));
    drawing_.line({face_x - deep - 1.0, y}, {face_x + 4.0, y}, dashed("3 0.8 0.8 0.8", 0.2));
  }

  void labels(double face_x, double top) {
    const TextStyle words{.size = small_text};
    const double out = x(rail_.gap) + per_mm_ * rail_.sheet + 3.0;
    drawing_.label({x(-rail_.glass / 2), 10.0}, {x(4.0), 10.0}, "old glass", words);
    drawing_.label({x(rail_.gap) + 0.5, 20.0}, {out, 20.0}, "sheet", words);
    drawing_.label({face_x + 0.5, top + 5.0}, {out, top + 5.0}, "tape", words);
    if (rail_.pilot_depth > 0.0)
      drawing_.label({face_x, top + per_mm_ * rail_.overlap + 4.0},
                     {out, top + per_mm_ * rail_.overlap + 5.0}, "fixing", words);
    drawing_.dimension({{x(0.0), 30.0}, {x(rail_.gap), 30.0}, 4.0, fmt::format("{:.0f}", rail_.gap)});
    drawing_.line({width - 4.0 - 20.0 * per_mm_, 75.0}, {width - 4.0, 75.0}, {"#000", 0.8, "none", {}});
    drawing_.text({width - 4.0, 73.0}, "20 mm", {.size = small_text, .anchor = Anchor::end});
    drawing_.text({0.0, 77.0}, "outdoors on the left", words);
  }

  Rail rail_;
  double per_mm_ = 1.0;
  SvgDrawing drawing_;
};

}  // namespace

std::string chart_timber(const Json& moisture, const std::string& id) {
  SvgDrawing drawing({width, 46.0, DrawingUnit::fluid, id, "Moisture of the bottom rail by month",
                      moisture.at("sentence").get<std::string>()});
  const double most = most_moisture(moisture);
  moisture_axes(drawing, moisture, most);
  drawing.polyline(moisture_line(moisture, "now_pct", most), {"#000", 0.6, "none", "1.8 1"});
  drawing.polyline(moisture_line(moisture, "with_sheet_pct", most), {shade(0.85), 0.9, "none", {}});
  drawing.line({plot_left, 3.0}, {plot_left + 7.0, 3.0}, {"#000", 0.6, "none", "1.8 1"});
  drawing.text({plot_left + 8.5, 4.0}, "now", {.size = small_text});
  drawing.line({plot_left + 22.0, 3.0}, {plot_left + 29.0, 3.0}, {shade(0.85), 0.9, "none", {}});
  drawing.text({plot_left + 30.5, 4.0}, "with the sheet (% of dry wood)", {.size = small_text});
  return drawing.svg();
}

std::string chart_rail(const Json& window, const std::string& id) {
  return RailSection(rail_of(window), id).svg();
}

}  // namespace dewgap::tools
