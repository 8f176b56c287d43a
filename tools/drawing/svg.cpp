#include "tools/drawing/svg.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include "tools/drawing/hatch_kernel.hpp"
#include "tools/drawing/markup.hpp"

namespace dewgap::tools {
namespace {

constexpr double px_per_mm = 96.0 / 25.4;  // CSS

std::string attributes(const Ink& ink) {
  auto text = fmt::format(R"( fill="{}" stroke="{}")", ink.fill, ink.stroke);
  if (ink.stroke != "none") text += fmt::format(R"( stroke-width="{}")", svg_number(ink.width));
  if (!ink.dash.empty()) text += fmt::format(R"( stroke-dasharray="{}")", ink.dash);
  return text;
}

std::string joined(const std::vector<Point>& points) {
  std::string text;
  for (const auto& point : points)
    text += fmt::format("{}{},{}", text.empty() ? "" : " ", svg_number(point.x), svg_number(point.y));
  return text;
}

std::string_view anchor_word(Anchor anchor) {
  switch (anchor) {
    case Anchor::start:
      return "start";
    case Anchor::middle:
      return "middle";
    case Anchor::end:
      return "end";
  }
  return "start";
}

/// Smallest upright box about a box that is turned about a point.
Box turned_box(const Box& box, Point about, double degrees) {
  const double turn = degrees * std::acos(-1.0) / 180.0;
  double left = 1e9, top = 1e9, right = -1e9, bottom = -1e9;
  for (const double x : {box.x, box.x + box.width})
    for (const double y : {box.y, box.y + box.height}) {
      const double across = x - about.x, down = y - about.y;
      const double new_x = about.x + across * std::cos(turn) - down * std::sin(turn);
      const double new_y = about.y + across * std::sin(turn) + down * std::cos(turn);
      left = std::min(left, new_x);
      right = std::max(right, new_x);
      top = std::min(top, new_y);
      bottom = std::max(bottom, new_y);
    }
  return {left, top, right - left, bottom - top};
}

Box text_box(Point at, const FittedText& fitted, const TextStyle& style) {
  constexpr double ascent = 0.76;
  constexpr double height = 0.98;
  const double width = text_width_em(fitted.text, style.weight) * fitted.size;
  const double shift = style.anchor == Anchor::start ? 0.0 : style.anchor == Anchor::end ? width : width / 2;
  const Box box{at.x - shift, at.y - ascent * fitted.size, width, height * fitted.size};
  return style.turned_deg == 0.0 ? box : turned_box(box, at, style.turned_deg);
}

}  // namespace

std::string svg_number(double value) {
  if (!std::isfinite(value)) throw std::domain_error("a drawing's number is not finite");
  auto text = fmt::format("{:.3f}", value);
  text.erase(text.find_last_not_of('0') + 1);
  if (text.ends_with('.')) text.pop_back();
  return text == "-0" ? "0" : text;
}

SvgDrawing::SvgDrawing(Canvas canvas) : canvas_(std::move(canvas)) {
  if (canvas_.id.empty() ||
      canvas_.id.find_first_not_of("abcdefghijklmnopqrstuvwxyz0123456789-") != std::string::npos)
    throw std::domain_error("a drawing's id is of small letters, digits and '-'");
}

void SvgDrawing::line(Point from, Point to, const Ink& ink) {
  add(fmt::format(R"(<line x1="{}" y1="{}" x2="{}" y2="{}"{}/>)", svg_number(from.x), svg_number(from.y),
                  svg_number(to.x), svg_number(to.y), attributes(ink)));
}

void SvgDrawing::rect(Box box, const Ink& ink) {
  add(fmt::format(R"(<rect x="{}" y="{}" width="{}" height="{}"{}/>)", svg_number(box.x), svg_number(box.y),
                  svg_number(box.width), svg_number(box.height), attributes(ink)));
}

void SvgDrawing::circle(Point centre, double radius, const Ink& ink) {
  add(fmt::format(R"(<circle cx="{}" cy="{}" r="{}"{}/>)", svg_number(centre.x), svg_number(centre.y),
                  svg_number(radius), attributes(ink)));
}

void SvgDrawing::polyline(const std::vector<Point>& points, const Ink& ink) {
  add(fmt::format(R"(<polyline points="{}"{}/>)", joined(points), attributes(ink)));
}

void SvgDrawing::polygon(const std::vector<Point>& points, const Ink& ink) {
  add(fmt::format(R"(<polygon points="{}"{}/>)", joined(points), attributes(ink)));
}

void SvgDrawing::path(std::string_view data, const Ink& ink) {
  add(fmt::format(R"(<path d="{}"{}/>)", escaped(data), attributes(ink)));
}

void SvgDrawing::text(Point at, std::string_view words, const TextStyle& style) {
  const FittedText fitted =
      style.most_width > 0.0
          ? fitted_text(words, style.most_width, style.size, style.least_size, style.weight)
          : fitted_text(words, 1e9, style.size, style.size, style.weight);
  text_boxes_.push_back(text_box(at, fitted, style));
  auto extra = style.weight == FontWeight::bold ? std::string(R"( font-weight="bold")") : std::string();
  if (style.turned_deg != 0.0)
    extra += fmt::format(R"x( transform="rotate({} {} {})")x", svg_number(style.turned_deg), svg_number(at.x),
                         svg_number(at.y));
  add(fmt::format(R"(<text x="{}" y="{}" font-size="{}" text-anchor="{}" fill="{}"{}>{}</text>)",
                  svg_number(at.x), svg_number(at.y), svg_number(fitted.size), anchor_word(style.anchor),
                  style.colour, extra, escaped(fitted.text)));
}

double SvgDrawing::text_lines(Point at, std::string_view words, const TextStyle& style) {
  constexpr double line_height = 1.22;
  for (const auto& one : fitted_lines(words, style.most_width, style.size, style.weight)) {
    text(at, one, style);
    at.y += line_height * style.size;
  }
  return at.y;
}

void SvgDrawing::hatched(Box box, Material material) {
  hatches_.insert(material);
  rect(box, {"#000", 0.25, fmt::format("url(#{})", hatch_id(material, canvas_.id)), {}});
}

void SvgDrawing::hatched(const std::vector<Point>& points, Material material) {
  hatches_.insert(material);
  polygon(points, {"#000", 0.25, fmt::format("url(#{})", hatch_id(material, canvas_.id)), {}});
}

void SvgDrawing::begin_group(std::string_view name) {
  ++open_groups_;
  add(name.empty() ? "<g>" : fmt::format("<g><title>{}</title>", escaped(name)));
}

void SvgDrawing::end_group() {
  if (open_groups_-- == 0) throw std::logic_error("no group is open");
  add("</g>");
}

std::string SvgDrawing::svg() const {
  if (open_groups_ != 0) throw std::logic_error("a group is still open");
  const auto width = svg_number(canvas_.width), height = svg_number(canvas_.height);
  const std::string_view unit = canvas_.unit == DrawingUnit::mm ? "mm" : "";
  const auto size = canvas_.unit == DrawingUnit::fluid
                        ? std::string(R"(width="100%")")
                        : fmt::format(R"(width="{0}{2}" height="{1}{2}")", width, height, unit);
  std::string defs;
  for (const auto material : hatches_)
    defs += hatch_pattern(material, canvas_.id, canvas_.unit == DrawingUnit::px ? px_per_mm : 1.0) + "\n";
  return fmt::format(R"(<svg xmlns="http://www.w3.org/2000/svg" {0} viewBox="0 0 {1} {2}" role="img" )"
                     "aria-labelledby=\"{3}-title {3}-desc\" font-family=\"sans-serif\">\n"
                     "<title id=\"{3}-title\">{4}</title>\n<desc id=\"{3}-desc\">{5}</desc>\n{6}{7}</svg>\n",
                     size, width, height, canvas_.id, escaped(canvas_.title), escaped(canvas_.description),
                     defs.empty() ? std::string() : "<defs>\n" + defs + "</defs>\n", body_);
}

}  // namespace dewgap::tools
