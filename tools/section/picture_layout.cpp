// Where a section stands on paper.
#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "tools/section/picture_kernel.hpp"

namespace dewgap::tools::section_picture_kernel {
namespace {

/// Smallest usual scale's ratio at which a length fits: 10:1, 5:1, 2:1, 1:1, 1:1.5 and so on.
double usual_ratio(double needed) {
  double decade = std::pow(10.0, std::floor(std::log10(needed)));
  for (;; decade *= 10.0)
    for (const double step : {1.0, 1.5, 2.0, 2.5, 3.0, 4.0, 5.0, 7.5}) {
      const bool whole_enlargement = step == 1.0 || step == 2.0 || step == 5.0;
      if (step * decade >= needed * (1.0 - 1e-9) && (decade >= 1.0 || whole_enlargement))
        return step * decade;
    }
}

ShownPart whole(const SolvedSection& solved) {
  const auto& field = solved.result.field;
  return {{field.x_m.front(), field.y_m.front()}, {field.x_m.back(), field.y_m.back()}};
}

/// Sutherland and Hodgman: the part of a polygon on one side of a line.
template <class Inside, class Cut>
std::vector<SectionPoint> cut_off(const std::vector<SectionPoint>& polygon, Inside&& inside, Cut&& cut) {
  std::vector<SectionPoint> left;
  for (std::size_t i = 0; i < polygon.size(); ++i) {
    const auto& from = polygon[i];
    const auto& to = polygon[(i + 1) % polygon.size()];
    if (inside(from)) left.push_back(from);
    if (inside(from) != inside(to)) left.push_back(cut(from, to));
  }
  return left;
}

}  // namespace

Layout layout_of(const SolvedSection& solved) {
  Layout layout;
  const auto all = whole(solved);
  layout.shown = solved.file.shown.value_or(all);
  auto& [low, high] = layout.shown;
  low = {std::max(low.x_m, all.low.x_m), std::max(low.y_m, all.low.y_m)};
  high = {std::min(high.x_m, all.high.x_m), std::min(high.y_m, all.high.y_m)};
  if (!(high.x_m > low.x_m && high.y_m > low.y_m))
    throw InvalidInput("section: shown_mm", "holds nothing of the section");
  layout.ratio = usual_ratio(
      std::max(1e3 * (high.x_m - low.x_m) / most_width, 1e3 * (high.y_m - low.y_m) / most_height));
  layout.left = std::max(side_margin, (least_page_width - 4.0 - label_width - layout.width()) / 2.0);
  return layout;
}

std::string scale_text(double ratio) {
  return ratio < 1.0 ? svg_number(1.0 / ratio) + ":1" : "1:" + svg_number(ratio);
}

std::vector<SectionPoint> clipped_polygon(const std::vector<SectionPoint>& polygon, const ShownPart& shown) {
  auto left = polygon;
  for (const bool upper : {false, true}) {
    const double x_m = upper ? shown.high.x_m : shown.low.x_m;
    const double y_m = upper ? shown.high.y_m : shown.low.y_m;
    left = cut_off(
        left, [&](SectionPoint p) { return upper ? p.x_m <= x_m : p.x_m >= x_m; },
        [&](SectionPoint from, SectionPoint) {
          return SectionPoint{x_m, from.y_m};
        });  // edges lie along axes
    left = cut_off(
        left, [&](SectionPoint p) { return upper ? p.y_m <= y_m : p.y_m >= y_m; },
        [&](SectionPoint from, SectionPoint) {
          return SectionPoint{from.x_m, y_m};
        });
  }
  return left;
}

bool overlaps(const Box& one, const Box& other) {
  return one.x < other.x + other.width && other.x < one.x + one.width && one.y < other.y + other.height &&
         other.y < one.y + one.height;
}

Box centred_box(Point at, std::string_view words, double size, FontWeight weight) {
  const double width = text_width_em(words, weight) * size;
  return {at.x - width / 2.0, at.y - 0.76 * size, width, 0.98 * size};  // as SvgDrawing::text_boxes has it
}

bool crosses(Point from, Point to, const Box& box) {
  const SectionPoint low{box.x, box.y}, high{box.x + box.width, box.y + box.height};
  return !clipped({{from.x, from.y}, {to.x, to.y}}, low, high).empty();
}

}  // namespace dewgap::tools::section_picture_kernel
