// Small drawings of where to measure and what to look for.
#include <fmt/format.h>

#include <array>

#include "tools/setting_out/survey_card.hpp"

namespace dewgap::tools {
namespace {

constexpr double text_size = 2.65;  // mm: 7.5 pt
const Ink thin{"#000", 0.2, "none", {}};
const Ink bold{"#000", 0.45, "none", {}};
const TextStyle plain{.size = text_size};
const TextStyle centred{.size = text_size, .anchor = Anchor::middle};
const TextStyle ending{.size = text_size, .anchor = Anchor::end};

/// A sliding sash: frame, two sashes, meeting rail.
void sash_window(SvgDrawing& drawing, Box box) {
  drawing.rect(box, bold);
  const double middle = box.y + box.height / 2.0;
  drawing.rect({box.x + 1.5, box.y + 1.5, box.width - 3.0, box.height / 2.0 - 2.0}, thin);
  drawing.rect({box.x + 1.5, middle + 0.5, box.width - 3.0, box.height / 2.0 - 2.0}, thin);
}

SvgDrawing measures() {
  SvgDrawing drawing({.width = 36,
                      .height = 31,
                      .id = "card-measures",
                      .title = "Where to measure the opening",
                      .description =
                          "Widths at top, middle and bottom; heights at left, middle and right; both "
                          "diagonals from corner to corner."});
  const Box box{9, 4, 22, 22};
  drawing.rect(box, bold);
  for (const double y : {6.5, 15.0, 23.5}) {
    drawing.arrow({20, y}, {9.2, y}, thin);
    drawing.arrow({20, y}, {30.8, y}, thin);
  }
  for (const double x : {11.5, 20.0, 28.5}) {
    drawing.arrow({x, 15}, {x, 4.2}, thin);
    drawing.arrow({x, 15}, {x, 25.8}, thin);
  }
  drawing.line({9, 4}, {31, 26}, dashed("1 0.8", 0.2));
  drawing.line({9, 26}, {31, 4}, dashed("1 0.8", 0.2));
  drawing.text({20, 2.9}, "3 widths", centred);
  drawing.text({5.5, 15}, "3 heights", {.size = text_size, .anchor = Anchor::middle, .turned_deg = -90.0});
  drawing.text({20, 29.6}, "2 diagonals", centred);
  return drawing;
}

SvgDrawing depths() {
  SvgDrawing drawing({.width = 50,
                      .height = 30,
                      .id = "card-depths",
                      .title = "Cut through the side, from above",
                      .description =
                          "From the glass to the face that takes the sheet; width of that face; how far "
                          "a catch stands past it; depth of timber that a screw may enter."});
  drawing.text({1, 3.2}, "outdoors", plain);
  drawing.hatched(Box{6, 5, 14, 15}, Material::timber);
  drawing.hatched(Box{18, 8, 30, 1.4}, Material::glass);
  drawing.hatched(Box{11, 20, 3, 3}, Material::metal);
  drawing.dimension(
      {.from = {24, 9.4}, .to = {24, 20}, .distance = -2.0, .text = "", .text_size = text_size});
  drawing.line({20, 20}, {27, 20}, dashed("0.8 0.6", 0.2));
  drawing.text({28, 14}, "glass to face", plain);
  drawing.text({28, 17.4}, "on each sash", plain);
  drawing.label({12.5, 22}, {17, 24.6}, "catch: how far out", plain);
  drawing.dimension({.from = {6, 20}, .to = {20, 20}, .distance = -6.5, .text = "", .text_size = text_size});
  drawing.text({22, 28.4}, "fixing face", plain);
  drawing.arrow({4, 20}, {4, 8}, thin);
  drawing.text({3.1, 13.5}, "screw", {.size = text_size, .anchor = Anchor::middle, .turned_deg = -90.0});
  return drawing;
}

SvgDrawing joint_gauge() {
  SvgDrawing drawing({.width = 52,
                      .height = 27,
                      .id = "card-gauge",
                      .title = "Joint gauge",
                      .description =
                          "Eight marked points round the sashes; what slides in: paper 0.1 mm, paper folded "
                          "twice 0.4 mm, bank card 0.8 mm, coin 1.7 mm."});
  sash_window(drawing, {4, 2, 18, 23});
  constexpr std::array points{Point{9, 25}, Point{17, 25}, Point{22, 19}, Point{22, 8},
                              Point{17, 2}, Point{9, 2},   Point{4, 8},   Point{4, 19}};
  for (std::size_t i = 0; i < points.size(); ++i) {
    drawing.circle(points[i], 1.75, {"#000", 0.25, "#fff", {}});
    drawing.text({points[i].x, points[i].y + 0.95}, fmt::format("{}", i + 1), centred);
  }
  struct Gauge {
    std::string_view name;
    double thickness;
  };
  constexpr std::array gauges{Gauge{"paper 0.1", 0.1}, Gauge{"folded 0.4", 0.4}, Gauge{"card 0.8", 0.76},
                              Gauge{"coin 1.7", 1.7}};
  double y = 5.0;
  for (const auto& gauge : gauges) {
    drawing.rect({26, y - gauge.thickness / 2.0, 8, gauge.thickness}, filled("#000"));
    drawing.text({35.5, y + 0.95}, gauge.name, plain);
    y += 5.4;
  }
  return drawing;
}

/// A strip of tissue at a joint, and which way it blows.
void strip(SvgDrawing& drawing, double y, double lean) {
  drawing.path(
      fmt::format("M17 {0}q{1} 1.5 {2} 4.5", svg_number(y), svg_number(0.2 * lean), svg_number(lean)), bold);
}

SvgDrawing tissue() {
  SvgDrawing drawing({.width = 46,
                      .height = 29,
                      .id = "card-tissue",
                      .title = "Tissue test",
                      .description =
                          "From the side: a strip of tissue held at the bottom, the meeting rail and the "
                          "top. It blows into the room, out to the window, hangs, or goes both ways."});
  drawing.text({1, 3}, "outdoors", plain);
  drawing.text({45, 3}, "room", ending);
  drawing.rect({13, 4, 2.5, 24}, thin);
  for (const double y : {5.0, 14.5, 22.5}) drawing.line({13, y + 1}, {15.5, y + 1}, bold);
  strip(drawing, 5.0, 5.0);
  strip(drawing, 14.0, 0.0);
  strip(drawing, 22.0, -4.0);
  drawing.arrow({22, 7}, {28, 7}, bold);
  drawing.text({29, 8}, "top: in", plain);
  drawing.text({20, 17.2}, "rail: hangs", plain);
  drawing.arrow({11.5, 25}, {6, 25}, bold);
  drawing.text({20, 26}, "bottom: out", plain);
  return drawing;
}

SvgDrawing mist() {
  SvgDrawing drawing({.width = 34,
                      .height = 25,
                      .id = "card-mist",
                      .title = "Where mist counts",
                      .description =
                          "Mist in the middle of the pane counts, curtains open; mist at its edge alone "
                          "does not."});
  drawing.rect({2, 2, 15, 21}, bold);
  drawing.rect({3.5, 3.5, 12, 18}, thin);
  for (const double y : {8.5, 10.3, 12.1, 13.9, 15.7})
    drawing.line({6.2, y}, {12.8, y}, dashed("0.5 0.7", 0.5));
  drawing.line({4, 20.4}, {15, 20.4}, dashed("0.5 1.4", 0.4));
  drawing.label({12.5, 11}, {19.5, 12}, "counts", plain);
  drawing.label({14, 20.4}, {19.5, 21.4}, "does not", plain);
  return drawing;
}

SvgDrawing thumb() {
  SvgDrawing drawing(
      {.width = 34,
       .height = 20,
       .id = "card-thumb",
       .title = "Thumb on the bottom rail",
       .description = "Press a thumb or the point of an awl into the bottom rail near its corners."});
  drawing.rect({1.5, 1, 21, 9}, thin);
  drawing.hatched(Box{1.5, 10, 21, 5}, Material::timber);
  drawing.path(
      "M33 4.5C28 3.5 25 5 22 7.5C19.5 9.6 18.6 10.4 18.9 11.6C19.3 12.8 21.2 12.4 23 11.2C26 9.4 29 9.6 33 "
      "9.8",
      {"#000", 0.4, "#fff", {}});
  drawing.path("M19.4 11C20.2 10.4 20.8 10.9 20.9 11.7", thin);
  drawing.text({1.5, 18.6}, "bottom rail: press", plain);
  return drawing;
}

}  // namespace

std::vector<CardDrawing> card_drawings() {
  std::vector<CardDrawing> all;
  all.push_back({"window", measures()});
  all.push_back({"window", depths()});
  all.push_back({"joints", joint_gauge()});
  all.push_back({"tissue", tissue()});
  all.push_back({"timber", thumb()});
  all.push_back({"room", mist()});
  return all;
}

}  // namespace dewgap::tools
