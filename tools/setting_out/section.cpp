// Cut through the left member at half height, seen from above: outdoors at the top, the room below.
#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "dewgap/fitting/practice.hpp"
#include "tools/answer/figures_text.hpp"
#include "tools/setting_out/drawings.hpp"

namespace dewgap::tools {
namespace {

constexpr double label_column = 80.0;
constexpr double text_size = 2.8;

Material material_of(FrameKind frame) {
  return is_timber(frame) ? Material::timber : Material::metal;
}

Material material_of(SheetKind sheet) {
  return sheet == SheetKind::glass ? Material::glass : Material::acrylic;
}

/// What the cut shows, mm; y from the fixing face towards the room.
struct CutThrough {
  double face = 40.0;
  bool face_measured = false;
  double member_depth = 60.0;
  double glass_behind = 30.0;
  bool glass_measured = false;
  double glass = 4.0;
  double tape_thickness = 6.0;
  double tape_width = 12.0;
  double sheet = 4.0;
  double overlap = 20.0;  ///< of the sheet over the member
};

CutThrough cut_through(const WindowToSet& window) {
  const auto& survey = window.job->survey;
  const auto& old = survey.window;
  const auto& plan = *window.plan;
  CutThrough cut;
  cut.face_measured = old.fixing_face_m.has_value();
  cut.face = std::clamp(1000.0 * old.fixing_face_m.value_or(0.040), 10.0, 80.0);
  cut.glass_measured = !old.glass_to_fixing_face_m.empty();
  if (cut.glass_measured) cut.glass_behind = 1000.0 * old.glass_to_fixing_face_m.front();
  cut.glass = 1000.0 * old.glass_thickness_m.value_or(0.004);
  cut.member_depth = std::max({1000.0 * old.frame_thickness_m.value_or(0.0),
                               cut.glass_behind + cut.glass + 8.0, plan.pilot_depth_mm + 8.0});
  cut.tape_thickness = tape_thickness_mm(survey);
  cut.tape_width = tape_width_mm(survey);
  cut.sheet = plan.thickness_mm;
  const auto& widths = old.opening_widths_m;
  double opening = 1000.0 * *std::max_element(widths.begin(), widths.end());
  if (survey.sheet.cover != Cover::frame) opening = 1000.0 * old.glass_width_m.value_or(0.0);
  const double side = (plan.width_mm - opening) / 2.0;
  if (opening > 0.0 && side > 0.0) cut.overlap = std::min(side, cut.face);
  if (survey.sheet.cover == Cover::reveal) cut.overlap = -2.0;
  return cut;
}

class Section {
 public:
  Section(const WindowToSet& window, const std::string& id)
      : window_(window),
        plan_(*window.plan),
        cut_(cut_through(window)),
        ratio_(drawing_ratio(width(), height(), 92.0, 95.0)),
        drawing_(canvas(id)) {}

  SvgDrawing drawn() {
    member();
    glass();
    if (is_in_reveal()) {
      in_reveal();
    } else {
      tape_and_sheet();
      held();
    }
    break_lines();
    drawing_.text({2.0, 4.5}, "outdoors", {.size = text_size});
    drawing_.text({2.0, drawing_.canvas().height - 2.0}, "room", {.size = text_size});
    std::stable_sort(labels_.begin(), labels_.end(),
                     [](const PartLabel& one, const PartLabel& other) { return one.part.y < other.part.y; });
    for (std::size_t i = 0; i < labels_.size(); ++i) {
      const double step =
          std::min(8.0, (drawing_.canvas().height - 10.0) / static_cast<double>(labels_.size()));
      drawing_.label(labels_[i].part, {label_left(), 6.0 + step * static_cast<double>(i) + text_size},
                     labels_[i].words, {.size = text_size, .most_width = label_column - 4.0});
    }
    return std::move(drawing_);
  }

 private:
  struct PartLabel {
    Point part;
    std::string words;
  };

  static constexpr double opening_shown = 34.0;
  bool is_in_reveal() const { return window_.job->survey.sheet.cover == Cover::reveal; }
  double room_side() const { return cut_.tape_thickness + cut_.sheet + 7.0; }
  double width() const { return 4.0 + cut_.face + opening_shown; }
  double height() const { return cut_.member_depth + room_side(); }
  double label_left() const { return 6.0 + width() / ratio_ + 6.0; }

  Canvas canvas(const std::string& id) const {
    return {.width = label_left() + label_column,
            .height = std::max(14.0 + height() / ratio_, 58.0),
            .id = id,
            .title = fmt::format("Cut through the left side, from above, {}", ratio_text(ratio_)),
            .description = fmt::format(
                "Member, glass {} mm behind its face, tape {} mm thick, sheet {} mm, and what holds it.",
                figure(cut_.glass_behind, 0), figure(cut_.tape_thickness, 1), figure(cut_.sheet, 1))};
  }

  /// x from the member's outer edge, y from the fixing face, towards the room.
  Point at(double x, double y) const {
    return {6.0 + (4.0 + x) / ratio_, 7.0 + (cut_.member_depth + y) / ratio_};
  }
  Box box(double x, double y, double across, double down) const {
    const auto corner = at(x, y);
    return {corner.x, corner.y, across / ratio_, down / ratio_};
  }
  double sheet_edge() const { return cut_.face - cut_.overlap; }
  double right_end() const { return cut_.face + opening_shown; }

  void add_label(double x, double y, std::string words) { labels_.push_back({at(x, y), std::move(words)}); }

  void glass() {
    constexpr double rebate = 6.0;
    const double y = -cut_.glass_behind - cut_.glass;
    drawing_.hatched(box(cut_.face - rebate, y, opening_shown + rebate, cut_.glass), Material::glass);
  }

  void member() {
    const auto& old = window_.job->survey.window;
    drawing_.hatched(box(0, -cut_.member_depth, cut_.face, cut_.member_depth), material_of(old.frame));
    add_label(cut_.face + 0.6 * opening_shown, -cut_.glass_behind - 0.5 * cut_.glass,
              cut_.glass_measured ? fmt::format("old glass, {} behind the face", figure(cut_.glass_behind, 0))
                                  : std::string("old glass (distance not measured)"));
    add_label(0.8 * cut_.face, -0.75 * cut_.member_depth,
              cut_.face_measured ? fmt::format("{}, face {} wide", name_of(old.frame), figure(cut_.face, 0))
                                 : fmt::format("{} (face not measured)", name_of(old.frame)));
  }

  void tape_and_sheet() {
    const double edge = sheet_edge();
    const double tape = std::min(cut_.tape_width, std::max(cut_.overlap, 2.0));
    drawing_.hatched(box(edge, 0, tape, cut_.tape_thickness), Material::foam_tape);
    drawing_.hatched(box(edge, cut_.tape_thickness, right_end() - edge, cut_.sheet),
                     material_of(window_.job->survey.sheet.material));
    if (cut_.overlap > 0.0)
      add_label(cut_.face, 0.0,
                fmt::format("edge of the opening; sheet overlaps {}", figure(cut_.overlap, 1)));
    add_label(edge + 0.5 * tape, 0.5 * cut_.tape_thickness,
              fmt::format("tape {} wide, {} squeezed", figure(tape, 0), figure(cut_.tape_thickness, 1)));
    add_label(cut_.face + 0.8 * opening_shown, cut_.tape_thickness + 0.5 * cut_.sheet,
              fmt::format("{} {} mm", name_of(window_.job->survey.sheet.material), figure(cut_.sheet, 1)));
  }

  void held() {
    if (plan_.fixing == FixingKind::turn_clips) clip();
    if (plan_.fixing == FixingKind::screws) screw();
  }

  double sheet_top() const { return cut_.tape_thickness + cut_.sheet; }

  /// Drawn to the pilot's depth, or dashed where it was not measured.
  void shank(double x, double head) {
    const double shank = 1000.0 * practice::screw_shank_m;
    const double depth = plan_.pilot_depth_mm > 0.0 ? plan_.pilot_depth_mm : 12.0;
    drawing_.rect(box(x - shank / 2.0, -depth, shank, depth + head),
                  {"#000", 0.25, "#fff", plan_.pilot_depth_mm > 0.0 ? std::string() : std::string("1 0.8")});
    add_label(x, -0.6 * depth,
              plan_.pilot_depth_mm > 0.0
                  ? fmt::format("pilot {} wide, {} deep, no more", figure(plan_.pilot_diameter_mm, 1),
                                figure(plan_.pilot_depth_mm, 0))
                  : fmt::format("pilot {} wide; depth: measure", figure(plan_.pilot_diameter_mm, 1)));
  }

  void clip() {
    const double x = sheet_edge() - plan_.fixing_offset_mm;
    drawing_.hatched(box(x - 4.0, 0, 7.0, sheet_top()), Material::metal);
    drawing_.hatched(box(x - 5.0, sheet_top(), plan_.fixing_offset_mm + 13.0, 2.0), Material::metal);
    shank(x, sheet_top() + 3.0);
    add_label(x - 3.0, sheet_top() + 1.0,
              fmt::format("turn clip, screw {} outside the edge", figure(plan_.fixing_offset_mm, 0)));
  }

  void screw() {
    const double x = sheet_edge() + plan_.fixing_offset_mm;
    const double hole = plan_.hole_diameter_mm;
    drawing_.rect(box(x - hole / 2.0, 0, hole, sheet_top()), {"#000", 0.2, "#fff", {}});
    shank(x, sheet_top() + 1.0);
    drawing_.rect(box(x - 6.0, sheet_top(), 12.0, 1.0), {"#000", 0.25, "#fff", {}});
    drawing_.rect(box(x - 4.0, sheet_top() + 1.0, 8.0, 2.4), filled("#000"));
    add_label(x + 4.0, sheet_top() + 0.5,
              fmt::format("screw, washer, hole {}{}, {} inside the edge", figure(hole, 1),
                          plan_.slots_needed ? " (slots)" : "", figure(plan_.fixing_offset_mm, 0)));
  }

  /// The sheet stands in the opening between beads.
  void in_reveal() {
    constexpr double bead = 12.0;
    constexpr double free = 2.0;
    const double left = cut_.face;
    const double back = -8.0 - cut_.sheet;
    drawing_.hatched(box(left + free, back, right_end() - left - free, cut_.sheet),
                     material_of(window_.job->survey.sheet.material));
    for (const double y : {back - cut_.tape_thickness - bead, back + cut_.sheet + cut_.tape_thickness})
      drawing_.hatched(box(left, y, bead, bead), Material::timber);
    for (const double y : {back - cut_.tape_thickness, back + cut_.sheet})
      drawing_.hatched(box(left + free, y, bead - free, cut_.tape_thickness), Material::foam_tape);
    add_label(left + 0.8 * bead, back - cut_.tape_thickness - 0.5 * bead, "bead, both sides");
    add_label(left + 0.8 * bead, back - 0.5 * cut_.tape_thickness,
              fmt::format("tape {} squeezed", figure(cut_.tape_thickness, 1)));
    add_label(left + 0.8 * opening_shown, back + 0.5 * cut_.sheet,
              fmt::format("{} {} mm, free at its edges", name_of(window_.job->survey.sheet.material),
                          figure(cut_.sheet, 1)));
  }

  /// Where the drawing leaves off and the window goes on.
  void break_lines() {
    const double x = right_end();
    const auto up = at(x, -cut_.member_depth);
    const auto down = at(x, room_side() - 4.0);
    const double middle = (up.y + down.y) / 2.0;
    drawing_.polyline({up,
                       {up.x, middle - 3.0},
                       {up.x + 1.5, middle - 1.0},
                       {up.x - 1.5, middle + 1.0},
                       {up.x, middle + 3.0},
                       down},
                      {"#000", 0.2, "none", {}});
  }

  const WindowToSet& window_;
  const SheetPlan& plan_;
  CutThrough cut_;
  double ratio_;
  SvgDrawing drawing_;
  std::vector<PartLabel> labels_;
};

}  // namespace

SvgDrawing section_drawing(const WindowToSet& window, const std::string& id) {
  return Section(window, id).drawn();
}

}  // namespace dewgap::tools
