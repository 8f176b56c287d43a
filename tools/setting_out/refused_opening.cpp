// The opening of a window that cannot be done as measured: what was measured, and no sheet.
#include <fmt/format.h>

#include <array>

#include "tools/answer/figures_text.hpp"
#include "tools/job/units.hpp"
#include "tools/setting_out/drawings.hpp"

namespace dewgap::tools {
namespace {

constexpr double most_width = 70.0;  // of the opening on paper, mm
constexpr double most_height = 80.0;
constexpr double margin = 16.0;
constexpr double text_size = 2.75;

/// "903, 900, 901": as measured, none of them chosen.
std::string three(const std::array<double, 3>& lengths_m) {
  return fmt::format("{}, {}, {}", figure(millimetres.from_base(lengths_m[0]), 0),
                     figure(millimetres.from_base(lengths_m[1]), 0),
                     figure(millimetres.from_base(lengths_m[2]), 0));
}

}  // namespace

SvgDrawing refused_opening_drawing(const WindowToSet& window, const std::string& id) {
  const auto& old = window.job->survey.window;
  const double width_mm = largest_mm(old.opening_widths_m);
  const double height_mm = largest_mm(old.opening_heights_m);
  const double ratio = drawing_ratio(width_mm, height_mm, most_width, most_height);
  const Box box{margin, margin, width_mm / ratio, height_mm / ratio};
  SvgDrawing drawing({.width = box.width + 2.0 * margin,
                      .height = box.height + 1.5 * margin,
                      .id = id,
                      .title = "The opening as measured, from the room, " + ratio_text(ratio),
                      .description = "No sheet is drawn: it is not to be cut."});
  drawing.rect(box, dashed("2 1.2", 0.3));
  drawing.dimension({.from = {box.x, box.y},
                     .to = {box.x + box.width, box.y},
                     .distance = 5.0,
                     .text = three(old.opening_widths_m),
                     .text_size = text_size});
  drawing.dimension({.from = {box.x, box.y + box.height},
                     .to = {box.x, box.y},
                     .distance = 5.0,
                     .text = three(old.opening_heights_m),
                     .text_size = text_size});
  drawing.text({box.x + box.width / 2.0, box.y + box.height + 6.0}, "not to be cut",
               {.size = 3.6,
                .anchor = Anchor::middle,
                .weight = FontWeight::bold,
                .most_width = box.width + margin,
                .least_size = text_size});
  return drawing;
}

}  // namespace dewgap::tools
