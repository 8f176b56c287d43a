#include "tools/section/section_drawing.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "tools/answer/figures_text.hpp"
#include "tools/section/picture_kernel.hpp"

namespace dewgap::tools {
namespace section_picture_kernel {
namespace {

constexpr double key_height = 12.0;

double section_bottom(const Layout& layout, std::size_t labels) {
  return layout.section_top + std::max(layout.height(), label_step * static_cast<double>(labels)) + 8.0;
}

std::string description_of(const SolvedSection& solved) {
  const auto& result = solved.result;
  std::string text = "Materials by hatch and lines of equal temperature.";
  if (const auto& lowest = result.lowest_room_face)
    text +=
        fmt::format(" Lowest on the room side: {} C at {} (x to the right, y upwards), on {}.",
                    figure(lowest->temperature_C, 1), place_text(lowest->at), items_at(solved, lowest->at));
  if (result.coupling) text += fmt::format(" L2D {:.4g} W/(m K).", result.coupling->value_W_mK);
  return text;
}

Canvas canvas_of(const SolvedSection& solved, const Layout& layout, std::size_t labels, std::size_t legend,
                 const std::string& id) {
  const auto rows = static_cast<double>((legend + 2) / 3);
  return {.width = 2.0 * layout.left + layout.width() + label_width + 4.0,
          .height = section_bottom(layout, labels) + key_height + legend_row * rows + 4.0,
          .id = id,
          .title = "Section: " + solved.file.name,
          .description = description_of(solved)};
}

std::vector<Point> on_paper(const Layout& layout, const std::vector<SectionPoint>& points) {
  std::vector<Point> paper;
  for (const auto& point : points) paper.push_back(layout.at(point));
  return paper;
}

/// Greatest width that the part has everywhere: of a strip along axes, its area over half its way round.
double thickness(const std::vector<Point>& outline) {
  double area = 0.0, round = 0.0;
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const auto& from = outline[i];
    const auto& to = outline[(i + 1) % outline.size()];
    area += 0.5 * (from.x * to.y - to.x * from.y);
    round += std::hypot(to.x - from.x, to.y - from.y);
  }
  return round > 0.0 ? std::abs(area) / (0.5 * round) : 0.0;
}

}  // namespace

Picture::Picture(const SolvedSection& solved, const std::string& id)
    : solved_(solved),
      layout_(layout_of(solved)),
      labels_(part_labels(solved, layout_)),
      legend_(legend_entries(solved)),
      drawing_(canvas_of(solved, layout_, labels_.size(), legend_.size(), id)) {}

double Picture::bottom() const {
  return section_bottom(layout_, labels_.size());
}

SvgDrawing Picture::drawn() && {
  drawing_.rect({0, 0, drawing_.canvas().width, drawing_.canvas().height}, filled("#fff"));
  parts();
  isotherms();
  faces();
  shown_border();
  labels();
  coldest();
  side_names();
  isotherm_labels();
  headings();
  key(bottom());
  legend(bottom() + key_height);
  return std::move(drawing_);
}

void Picture::headings() {
  const double width = drawing_.canvas().width - 8.0;
  drawing_.text({4.0, 6.5}, solved_.file.name,
                {.size = 4.0, .weight = FontWeight::bold, .most_width = width});
  std::string second = fmt::format("Scale {}.", scale_text(layout_.ratio));
  if (!levels_.at_C.empty()) second += fmt::format(" Lines of equal temperature every {} K.", levels_.step_K);
  if (solved_.result.coupling)
    second +=
        fmt::format(" Heat a metre and kelvin, L2D: {:.4g} W/(m K).", solved_.result.coupling->value_W_mK);
  if (const auto factor = least_temperature_factor(solved_))
    second += fmt::format(" Temperature factor fRsi {}.", figure(*factor, 2));
  drawing_.text({4.0, 11.5}, second, {.size = text_size, .most_width = width});
}

void Picture::parts() {
  drawing_.begin_group("section");
  const auto& items = solved_.file.section.items;
  for (std::size_t i = 0; i < items.size(); ++i) {
    const auto outline = on_paper(layout_, clipped_polygon(items[i].polygon, layout_.shown));
    if (outline.size() < 3) continue;
    if (thickness(outline) < thin_part && solved_.file.looks[i].hatch != Material::air_space)
      drawing_.polygon(outline, {"#000", std::max(0.05, thin_part / 2.0 - thickness(outline)), "#000", {}});
    else
      drawing_.hatched(outline, solved_.file.looks[i].hatch);
  }
  drawing_.end_group();
}

void Picture::faces() {
  drawing_.begin_group("faces");
  for (const auto& face : solved_.result.faces)
    for (const auto& part : clipped({face.from, face.to}, layout_.shown.low, layout_.shown.high)) {
      const auto& condition = solved_.file.section.boundaries[face.boundary].condition;
      const bool air = std::holds_alternative<AirSide>(condition);
      if (!air) drawing_.line(layout_.at(part[0]), layout_.at(part[1]), {"#fff", 0.5, "none", {}});
      drawing_.line(layout_.at(part[0]), layout_.at(part[1]),
                    air ? Ink{"#000", 0.5, "none", {}} : dashed("3 0.8 0.6 0.8", 0.3));
    }
  drawing_.end_group();
}

/// Where the drawing leaves off and the section goes on.
void Picture::shown_border() {
  const auto& field = solved_.result.field;
  const auto& [low, high] = layout_.shown;
  const auto border = [&](SectionPoint from, SectionPoint to) {
    drawing_.line(layout_.at(from), layout_.at(to), {"#fff", 0.6, "none", {}});
    drawing_.line(layout_.at(from), layout_.at(to), dashed("0.6 0.9", 0.25));
  };
  if (low.x_m > field.x_m.front()) border(low, {low.x_m, high.y_m});
  if (high.x_m < field.x_m.back()) border({high.x_m, low.y_m}, high);
  if (low.y_m > field.y_m.front()) border(low, {high.x_m, low.y_m});
  if (high.y_m < field.y_m.back()) border({low.x_m, high.y_m}, high);
}

void Picture::coldest() {
  for (const auto& label : labels_) {
    if (label.weight != FontWeight::bold) continue;
    drawing_.circle(label.part, 1.5, {"#fff", 1.0, "none", {}});
    drawing_.circle(label.part, 1.5, {"#000", 0.5, "none", {}});
    drawing_.circle(label.part, 0.5, filled("#000"));
    taken_.push_back({label.part.x - 1.8, label.part.y - 1.8, 3.6, 3.6});
  }
}

}  // namespace section_picture_kernel

SvgDrawing section_picture(const SolvedSection& solved, const std::string& id) {
  return section_picture_kernel::Picture(solved, id).drawn();
}

}  // namespace dewgap::tools
