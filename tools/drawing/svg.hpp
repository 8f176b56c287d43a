// A drawing as SVG: shapes, hatched materials, text that stays inside, dimension lines. The same calls give
// the same bytes.
#pragma once

#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "tools/drawing/text_fit.hpp"

namespace dewgap::tools {

/// x to the right, y downwards, in the canvas's unit.
struct Point {
  double x = 0.0;
  double y = 0.0;
};

/// Upper left corner and size.
struct Box {
  double x = 0.0;
  double y = 0.0;
  double width = 0.0;
  double height = 0.0;
};

/// What a unit of the drawing is on paper; fluid: as wide as its place.
enum class DrawingUnit { mm, px, fluid };

struct Canvas {
  double width = 0.0;
  double height = 0.0;
  DrawingUnit unit = DrawingUnit::mm;
  std::string id;           ///< letters, digits and '-'; unique in a page: names of hatches start with it
  std::string title;        ///< a few words, the drawing's name for those who do not see it
  std::string description;  ///< a sentence or two: what it shows, with its main figures
};

/// Colours as SVG writes them. The default is a thin black line.
struct Ink {
  std::string stroke = "#000";
  double width = 0.25;
  std::string fill = "none";
  std::string dash;  ///< "2 1"; empty: unbroken
};
inline Ink filled(std::string colour) {
  return {"none", 0.0, std::move(colour), {}};
}
inline Ink dashed(std::string pattern, double width = 0.25) {
  return {"#000", width, "none", std::move(pattern)};
}

enum class Anchor { start, middle, end };

struct TextStyle {
  double size = 3.0;
  Anchor anchor = Anchor::start;
  FontWeight weight = FontWeight::regular;
  double turned_deg = 0.0;  ///< clockwise about its point
  double most_width = 0.0;  ///< shrunk, then cut to this; 0: as wide as it is
  double least_size = 2.4;
  std::string colour = "#000";
};

/// other_1 to other_4: hatches that mean no material by custom.
enum class Material {
  glass,
  timber,
  acrylic,
  foam_tape,
  masonry,
  metal,
  putty,
  plaster,
  mortar,
  stone,
  insulation,
  rubber,
  plastic,
  air_space,
  other_1,
  other_2,
  other_3,
  other_4
};
/// For labels: "acrylic", "foam tape".
std::string_view name_of(Material material);

/// A measure between two points, drawn `distance` to the left of the way from one to the other (seen in the
/// drawing; negative: to the right), with extension lines, ticks and its text along the line.
struct Dimension {
  Point from;
  Point to;
  double distance = 6.0;
  std::string text;
  double text_size = 3.0;
};

class SvgDrawing {
 public:
  explicit SvgDrawing(Canvas canvas);

  void line(Point from, Point to, const Ink& ink = {});
  void rect(Box box, const Ink& ink = {});
  void circle(Point centre, double radius, const Ink& ink = {});
  void polyline(const std::vector<Point>& points, const Ink& ink = {});
  void polygon(const std::vector<Point>& points, const Ink& ink = {});
  /// Path data as SVG has it; numbers in it by svg_number.
  void path(std::string_view data, const Ink& ink = {});
  /// One line of text, escaped, its baseline starting (middle, end) at the point.
  void text(Point at, std::string_view words, const TextStyle& style = {});
  /// Lines at most `style.most_width` wide below each other; returns the baseline after the last.
  double text_lines(Point at, std::string_view words, const TextStyle& style);
  /// Filled with the material's hatch and outlined.
  void hatched(Box box, Material material);
  void hatched(const std::vector<Point>& points, Material material);
  void arrow(Point from, Point to, const Ink& ink = {});
  void dimension(const Dimension& dimension);
  /// A short name of a part, with a line to it.
  void label(Point part, Point at, std::string_view words, const TextStyle& style = {});

  /// What is drawn until end_group belongs together; the name is its <title>, empty: none.
  void begin_group(std::string_view name = {});
  void end_group();

  /// Where text stands, as estimated: for tests that none is clipped or written over another.
  const std::vector<Box>& text_boxes() const { return text_boxes_; }
  const Canvas& canvas() const { return canvas_; }

  /// The <svg> element, fit to stand in HTML or, with its namespace, alone.
  std::string svg() const;

 private:
  void add(std::string element) { body_.append(element).append("\n"); }

  Canvas canvas_;
  std::string body_;
  std::set<Material> hatches_;
  std::vector<Box> text_boxes_;
  int open_groups_ = 0;
};

/// A number with at most three digits after the point, none that are noughts at the end: "12.5", "0".
std::string svg_number(double value);

}  // namespace dewgap::tools
