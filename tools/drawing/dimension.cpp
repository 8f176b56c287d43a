// Lines that measure and point.
#include <algorithm>
#include <cmath>

#include "tools/drawing/svg.hpp"

namespace dewgap::tools {
namespace {

struct Way {
  Point along;  ///< of length 1
  double length = 0.0;
};

Way way_between(Point from, Point to) {
  const double length = std::hypot(to.x - from.x, to.y - from.y);
  if (length <= 0.0) return {{1.0, 0.0}, 0.0};
  return {{(to.x - from.x) / length, (to.y - from.y) / length}, length};
}

Point moved(Point point, Point way, double distance) {
  return {point.x + distance * way.x, point.y + distance * way.y};
}

}  // namespace

void SvgDrawing::arrow(Point from, Point to, const Ink& ink) {
  const auto way = way_between(from, to);
  const Point side{-way.along.y, way.along.x};
  const double size = std::min(way.length, 1.2 + 4.0 * ink.width);
  const Point back = moved(to, way.along, -size);
  line(from, moved(to, way.along, -0.6 * size), ink);
  polygon({to, moved(back, side, 0.38 * size), moved(back, side, -0.38 * size)}, filled(ink.stroke));
}

void SvgDrawing::dimension(const Dimension& dimension) {
  constexpr double gap = 0.8;     // between the part and its extension line
  constexpr double beyond = 1.2;  // of the extension line past the dimension line
  constexpr double tick = 0.9;
  const auto way = way_between(dimension.from, dimension.to);
  // y runs downwards: to the left of the way is its direction turned against the clock.
  const Point left{way.along.y, -way.along.x};
  const double sign = dimension.distance < 0.0 ? -1.0 : 1.0;
  const Point one = moved(dimension.from, left, dimension.distance);
  const Point other = moved(dimension.to, left, dimension.distance);
  const Ink thin{"#000", 0.15, "none", {}};
  begin_group();
  line(moved(dimension.from, left, sign * gap), moved(one, left, sign * beyond), thin);
  line(moved(dimension.to, left, sign * gap), moved(other, left, sign * beyond), thin);
  line(one, other, thin);
  const Point slant{(way.along.x + left.x) * tick, (way.along.y + left.y) * tick};
  for (const Point end : {one, other})
    line({end.x - slant.x, end.y - slant.y}, {end.x + slant.x, end.y + slant.y}, {"#000", 0.4, "none", {}});
  double turned = std::atan2(way.along.y, way.along.x) * 180.0 / std::acos(-1.0);
  if (turned > 90.0 || turned < -90.0) turned += turned > 0.0 ? -180.0 : 180.0;
  // Above the line as read: downwards-reading text would stand on its head.
  const double radians = turned * std::acos(-1.0) / 180.0;
  const Point up{std::sin(radians), -std::cos(radians)};
  const Point middle{(one.x + other.x) / 2.0, (one.y + other.y) / 2.0};
  if (!dimension.text.empty())
    text(moved(middle, up, 0.34 * dimension.text_size + 0.3), dimension.text,
         {.size = dimension.text_size, .anchor = Anchor::middle, .turned_deg = turned});
  end_group();
}

void SvgDrawing::label(Point part, Point at, std::string_view words, const TextStyle& style) {
  const double lift = 0.35 * style.size;
  const double side = style.anchor == Anchor::start ? -0.6 : style.anchor == Anchor::end ? 0.6 : 0.0;
  line(part, {at.x + side, at.y - lift}, {"#000", 0.15, "none", {}});
  circle(part, 0.35, filled("#000"));
  text(at, words, style);
}

}  // namespace dewgap::tools
