// The sheet as seen from the room.
#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <map>

#include "tools/answer/figures_text.hpp"
#include "tools/setting_out/drawings.hpp"

namespace dewgap::tools {
namespace {

constexpr double most_width = 88.0;  // of the sheet on paper, mm
constexpr double most_height = 118.0;
constexpr double left_margin = 34.0;
constexpr double right_margin = 14.0;
constexpr double top_margin = 16.0;
constexpr double bottom_margin = 20.0;  // 5 without marks
constexpr double small_text = 2.75;     // mm: 7.8 pt

class Elevation {
 public:
  Elevation(const WindowToSet& window, const std::string& id)
      : window_(window),
        plan_(*window.plan),
        ratio_(drawing_ratio(plan_.width_mm, plan_.height_mm, most_width, most_height)),
        drawing_(canvas(id)) {}

  SvgDrawing drawn() {
    tape();
    drawing_.rect(box(0, 0, plan_.width_mm, plan_.height_mm), {"#000", 0.5, "none", {}});
    opening_behind();
    for (const auto& hole : plan_.holes) fixing(hole);
    breaks();
    running_measures();
    overall_measures();
    top_mark();
    return std::move(drawing_);
  }

 private:
  Canvas canvas(const std::string& id) const {
    return {.width = left_margin + plan_.width_mm / ratio_ + right_margin,
            .height =
                top_margin + plan_.height_mm / ratio_ + (plan_.width_marks_mm.empty() ? 5.0 : bottom_margin),
            .id = id,
            .title = fmt::format("Sheet {} mm wide, {} mm high, from the room, {}", plan_.width_mm,
                                 plan_.height_mm, ratio_text(ratio_)),
            .description = description()};
  }

  std::string description() const {
    auto text = plan_.holes.empty()
                    ? std::string("No fixing marks.")
                    : fmt::format("{} fixings, numbered clockwise from the bottom left.", plan_.holes.size());
    return text + (plan_.tape_breaks.empty()
                       ? std::string(" Tape unbroken all round.")
                       : fmt::format(" The tape has {} breaks.", plan_.tape_breaks.size()));
  }

  /// On paper; the sheet's y runs upwards from its bottom edge.
  Point at(double x_mm, double y_mm) const {
    return {left_margin + x_mm / ratio_, top_margin + (plan_.height_mm - y_mm) / ratio_};
  }
  /// From the sheet's lower left corner of the box, mm.
  Box box(double x_mm, double y_mm, double width_mm, double height_mm) const {
    const auto corner = at(x_mm, y_mm + height_mm);
    return {corner.x, corner.y, width_mm / ratio_, height_mm / ratio_};
  }
  double on_sheet(double paper_mm) const { return paper_mm * ratio_; }

  /// Drawn no thinner than can be seen.
  double tape_band() const { return std::max(tape_width_mm(window_.job->survey), on_sheet(1.2)); }

  void tape() {
    const double band = tape_band();
    const double width = plan_.width_mm;
    const double height = plan_.height_mm;
    for (const auto& piece : pieces()) {
      switch (piece.member) {
        case Member::left:
          drawing_.hatched(box(0, piece.from_mm, band, piece.length_mm), Material::foam_tape);
          break;
        case Member::right:
          drawing_.hatched(box(width - band, piece.from_mm, band, piece.length_mm), Material::foam_tape);
          break;
        case Member::top:
          drawing_.hatched(box(piece.from_mm, height - band, piece.length_mm, band), Material::foam_tape);
          break;
        case Member::bottom:
          drawing_.hatched(box(piece.from_mm, 0, piece.length_mm, band), Material::foam_tape);
          break;
      }
    }
  }

  /// The plan's own, or once round.
  std::vector<TapePiece> pieces() const {
    if (!plan_.tape_pieces.empty()) return plan_.tape_pieces;
    const double width = plan_.width_mm;
    const double height = plan_.height_mm;
    return {{Member::left, 0, height},
            {Member::top, 0, width},
            {Member::right, 0, height},
            {Member::bottom, 0, width}};
  }

  /// Hidden edge of the opening or glass that the sheet covers.
  void opening_behind() {
    const auto& survey = window_.job->survey;
    const auto& old = survey.window;
    double width = largest_mm(old.opening_widths_m);
    double height = largest_mm(old.opening_heights_m);
    if (survey.sheet.cover == Cover::reveal) return;
    if (survey.sheet.cover != Cover::frame) {
      width = 1000.0 * old.glass_width_m.value_or(0.0);
      height = 1000.0 * old.glass_height_m.value_or(0.0);
    }
    if (width >= plan_.width_mm || height >= plan_.height_mm || width <= 0.0 || height <= 0.0) return;
    const double side = (plan_.width_mm - width) / 2.0;
    const double up = (plan_.height_mm - height) / 2.0;
    drawing_.rect(box(side, up, width, height), dashed("2 1.2", 0.2));
  }

  void fixing(const Hole& hole) {
    const auto place = at(hole.x_mm, hole.y_mm);
    if (plan_.fixing == FixingKind::turn_clips) {
      clip(place, hole.member);
    } else if (hole.slot_length_mm > 0.0) {
      slot(place, hole);
    } else {
      drawing_.circle(place, 1.0, {"#000", 0.3, "#fff", {}});
    }
    if (hole.tight) drawing_.circle(place, 0.7, filled("#000"));
    number(hole);
  }

  void clip(Point place, Member member) {
    const bool upright = member == Member::left || member == Member::right;
    const double inwards = 2.0;
    const double x = member == Member::left ? inwards : member == Member::right ? -inwards : 0.0;
    const double y = member == Member::top ? inwards : member == Member::bottom ? -inwards : 0.0;
    const double across = upright ? std::abs(x) + 1.0 : 1.4;
    const double down = upright ? 1.4 : std::abs(y) + 1.0;
    drawing_.rect({place.x + x / 2.0 - across / 2.0, place.y + y / 2.0 - down / 2.0, across, down},
                  {"#000", 0.25, "#fff", {}});
    drawing_.circle(place, 0.45, filled("#000"));
  }

  void slot(Point place, const Hole& hole) {
    constexpr double half = 1.2;
    const double turn = hole.slot_angle_deg * std::acos(-1.0) / 180.0;
    const Point way{half * std::cos(turn), -half * std::sin(turn)};
    const Point one{place.x - way.x, place.y - way.y};
    const Point other{place.x + way.x, place.y + way.y};
    drawing_.line(one, other, {"#000", 1.7, "none", {}});
    drawing_.line(one, other, {"#fff", 1.1, "none", {}});
  }

  /// Its number: outside the sheet at the sides, inside at bottom and top, so that corners have room.
  void number(const Hole& hole) {
    const auto words = fmt::format("{}", hole.number);
    const double clear = tape_band() + on_sheet(1.2);
    const double height = plan_.height_mm;
    const double drop = on_sheet(0.36 * small_text);
    TextStyle style{.size = small_text, .anchor = Anchor::middle, .weight = FontWeight::bold};
    switch (hole.member) {
      case Member::left:
        style.anchor = Anchor::end;
        return drawing_.text(at(-on_sheet(2.2), hole.y_mm - drop), words, style);
      case Member::right:
        style.anchor = Anchor::start;
        return drawing_.text(at(plan_.width_mm + on_sheet(2.2), hole.y_mm - drop), words, style);
      case Member::top:
        return drawing_.text(at(hole.x_mm, height - clear - on_sheet(small_text)), words, style);
      case Member::bottom:
        return drawing_.text(at(hole.x_mm, clear + on_sheet(0.8)), words, style);
    }
  }

  /// Each with where it is, written towards the middle; below each other where the sheet is narrow.
  void breaks() {
    constexpr double roomy = 46.0;  // mm on paper for two labels beside each other
    const double band = tape_band();
    const double height = plan_.height_mm;
    std::map<Member, int> rows;
    for (const auto& one : plan_.tape_breaks) {
      const bool top = one.member == Member::top;
      int& below = rows[one.member];
      const double middle = (one.from_mm + one.to_mm) / 2.0;
      const bool left = middle < plan_.width_mm / 2.0;
      const double row = band + on_sheet(5.8 + 3.4 * below);
      const auto part = at(middle, top ? height - band / 2.0 : band / 2.0);
      const auto words = at(middle, top ? height - row - on_sheet(small_text) : row);
      drawing_.line(part, {words.x, words.y + (top ? -0.76 * small_text : 0.4)}, {"#000", 0.15, "none", {}});
      drawing_.text({words.x + (left ? -0.4 : 0.4), words.y},
                    fmt::format("break {}-{}", figure(one.from_mm, 0), figure(one.to_mm, 0)),
                    {.size = small_text, .anchor = left ? Anchor::start : Anchor::end});
      if (plan_.width_mm / ratio_ < roomy || plan_.tape_breaks.size() > 4) ++below;
    }
  }

  /// Distances of the marks from the left edge below the sheet, from the bottom edge to its left.
  void running_measures() {
    const Ink thin{"#000", 0.15, "none", {}};
    const TextStyle style{.size = small_text, .anchor = Anchor::end};
    const double row = top_margin + plan_.height_mm / ratio_ + 5.0;
    const double column = left_margin - 9.6;
    for (const int mark : plan_.width_marks_mm) {
      const double x = at(mark, 0).x;
      drawing_.line({x, row - 3.0}, {x, row}, thin);
      drawing_.text({x + 0.36 * small_text, row + 0.8}, fmt::format("{}", mark),
                    {.size = small_text, .anchor = Anchor::end, .turned_deg = -90.0});
    }
    for (const int mark : plan_.height_marks_mm) {
      const double y = at(0, mark).y;
      drawing_.line({column, y}, {column + 2.6, y}, thin);
      drawing_.text({column - 0.8, y + 0.36 * small_text}, fmt::format("{}", mark), style);
    }
    if (plan_.width_marks_mm.empty()) return;
    const auto corner = at(0, 0);
    drawing_.text({column - 1.6, corner.y + 6.6}, "from 0 here", style);
    drawing_.arrow({column - 1.2, corner.y + 5.6}, {corner.x - 0.4, corner.y + 0.6}, thin);
  }

  void overall_measures() {
    drawing_.dimension({.from = at(0, plan_.height_mm),
                        .to = at(plan_.width_mm, plan_.height_mm),
                        .distance = 8.0,
                        .text = fmt::format("cut width {}", plan_.width_mm),
                        .text_size = 3.2});
    drawing_.dimension({.from = at(0, 0),
                        .to = at(0, plan_.height_mm),
                        .distance = 21.0,
                        .text = fmt::format("cut height {}", plan_.height_mm),
                        .text_size = 3.2});
  }

  void top_mark() {
    const double room = plan_.height_mm / ratio_;
    const auto middle = at(plan_.width_mm / 2.0, plan_.height_mm);
    const double y = middle.y + std::min(0.36 * room, 17.0);
    drawing_.arrow({middle.x, y + 1.0}, {middle.x, y - 4.0}, {"#000", 0.5, "none", {}});
    drawing_.text({middle.x, y + 5.0}, "TOP",
                  {.size = 4.2, .anchor = Anchor::middle, .weight = FontWeight::bold});
    if (room > 34.0)
      drawing_.text(
          {middle.x, y + 9.0}, "seen from the room",
          {.size = small_text, .anchor = Anchor::middle, .most_width = 0.7 * plan_.width_mm / ratio_});
  }

  const WindowToSet& window_;
  const SheetPlan& plan_;
  double ratio_;
  SvgDrawing drawing_;
};

}  // namespace

double drawing_ratio(double width_mm, double height_mm, double most_width_mm, double most_height_mm) {
  constexpr std::array usual{1.0,  2.0,  2.5,  5.0,  7.5,  10.0, 12.5, 15.0,
                             20.0, 25.0, 30.0, 40.0, 50.0, 75.0, 100.0};
  for (const double ratio : usual)
    if (width_mm <= ratio * most_width_mm && height_mm <= ratio * most_height_mm) return ratio;
  return std::max(width_mm / most_width_mm, height_mm / most_height_mm);
}

double largest_mm(const std::array<double, 3>& lengths_m) {
  return 1000.0 * *std::max_element(lengths_m.begin(), lengths_m.end());
}

std::string ratio_text(double ratio) {
  return "1:" + svg_number(ratio);
}

SvgDrawing elevation_drawing(const WindowToSet& window, const std::string& id) {
  return Elevation(window, id).drawn();
}

}  // namespace dewgap::tools
