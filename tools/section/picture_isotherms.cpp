// Isotherms, their labels and their key; the names of the sides.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "tools/answer/figures_text.hpp"
#include "tools/drawing/shade.hpp"
#include "tools/section/picture_kernel.hpp"

namespace dewgap::tools::section_picture_kernel {
namespace {

constexpr double line_width = 0.45;
constexpr double label_size = 2.6;
constexpr double lightest = 0.42;  // share of the scale of shades that still shows on white

Box grown(const Box& box, double by) {
  return {box.x - by, box.y - by, box.width + 2.0 * by, box.height + 2.0 * by};
}

double length(const std::vector<Point>& line) {
  double sum = 0.0;
  for (std::size_t i = 0; i + 1 < line.size(); ++i)
    sum += std::hypot(line[i + 1].x - line[i].x, line[i + 1].y - line[i].y);
  return sum;
}

/// The point a share of the way along.
Point along(const std::vector<Point>& line, double share) {
  double left = share * length(line);
  for (std::size_t i = 0; i + 1 < line.size(); ++i) {
    const double step = std::hypot(line[i + 1].x - line[i].x, line[i + 1].y - line[i].y);
    if (step >= left && step > 0.0)
      return {std::lerp(line[i].x, line[i + 1].x, left / step),
              std::lerp(line[i].y, line[i + 1].y, left / step)};
    left -= step;
  }
  return line.back();
}

/// Lowest and highest of the shown field.
std::pair<double, double> extremes(const TemperatureField& field, const ShownPart& shown) {
  double low = 1e9, high = -1e9;
  for (std::size_t row = 0; row + 1 < field.y_m.size(); ++row)
    for (std::size_t column = 0; column + 1 < field.x_m.size(); ++column) {
      if (!field.item_of_cell(column, row) || field.x_m[column + 1] <= shown.low.x_m ||
          field.x_m[column] >= shown.high.x_m || field.y_m[row + 1] <= shown.low.y_m ||
          field.y_m[row] >= shown.high.y_m)
        continue;
      for (const std::size_t up : {0U, 1U})
        for (const std::size_t right : {0U, 1U}) {
          low = std::min(low, field.at_crossing_C(column + right, row + up));
          high = std::max(high, field.at_crossing_C(column + right, row + up));
        }
    }
  return {low, high};
}

}  // namespace

std::string Picture::ink(std::size_t level) const {
  const double last = static_cast<double>(std::max<std::size_t>(levels_.at_C.size(), 2) - 1);
  return shade(1.0 - (1.0 - lightest) * static_cast<double>(level) / last);  // cold is dark
}

std::string Picture::level_text(std::size_t level) const {
  const int decimals = std::max(0, static_cast<int>(std::ceil(-std::log10(levels_.step_K) - 1e-9)));
  return figure(levels_.at_C[level], decimals);
}

void Picture::isotherms() {
  const auto [low, high] = extremes(solved_.result.field, layout_.shown);
  levels_ = isotherm_levels(low, high);
  drawing_.begin_group("lines of equal temperature");
  for (std::size_t level = 0; level < levels_.at_C.size(); ++level) {
    lines_.emplace_back();
    for (const auto& line : isotherm(solved_.result.field, levels_.at_C[level]))
      for (const auto& part : clipped(line, layout_.shown.low, layout_.shown.high)) {
        std::vector<Point> paper;
        for (const auto& point : simplified(part, layout_.tolerance_m(0.03)))
          paper.push_back(layout_.at(point));
        drawing_.polyline(paper, {"#fff", line_width + 0.6, "none", {}});
        drawing_.polyline(paper, {ink(level), line_width, "none", {}});
        lines_.back().push_back(std::move(paper));
      }
  }
  drawing_.end_group();
}

bool Picture::is_free(const Box& box) const {
  const Box page{1.0, 13.0, drawing_.canvas().width - 2.0, bottom() - 14.0};
  return box.x >= page.x && box.y >= page.y && box.x + box.width <= page.x + page.width &&
         box.y + box.height <= page.y + page.height &&
         std::none_of(taken_.begin(), taken_.end(), [&](const Box& one) { return overlaps(one, box); });
}

/// Other isotherms and leaders that a text would cover.
std::size_t Picture::crowd(const Box& box, std::size_t level) const {
  std::size_t count = 0;
  for (std::size_t other = 0; other < lines_.size(); ++other)
    for (const auto& line : lines_[other])
      for (std::size_t i = 0; other != level && i + 1 < line.size(); ++i)
        count += crosses(line[i], line[i + 1], box) ? 1U : 0U;
  for (std::size_t i = 0; i < labels_.size(); ++i)
    count += crosses(labels_[i].part, label_at(i), box) ? 1U : 0U;
  return count;
}

void Picture::label_level(std::size_t level) {
  const auto words = level_text(level);
  struct Choice {
    std::size_t crowd;
    Point at;
  };
  for (const auto& line : lines_[level]) {
    if (length(line) < 6.0 && lines_[level].size() > 1) continue;
    std::optional<Choice> best;
    for (int i = 0; i < 39; ++i) {
      const double share = 0.5 + (i % 2 == 0 ? 1 : -1) * 0.0245 * ((i + 1) / 2);  // from the middle outwards
      auto at = along(line, share);
      at.y += 0.36 * label_size;
      const auto box = grown(centred_box(at, words, label_size), 0.4);
      if (!is_free(box)) continue;
      const auto many = crowd(box, level);
      if (!best || many < best->crowd) best = Choice{many, at};
      if (many == 0) break;
    }
    if (!best) continue;
    const auto box = grown(centred_box(best->at, words, label_size), 0.25);
    drawing_.rect(box, filled("#fff"));
    drawing_.text(best->at, words, {.size = label_size, .anchor = Anchor::middle});
    taken_.push_back(grown(box, 0.3));
  }
}

void Picture::isotherm_labels() {
  drawing_.begin_group("temperatures, C");
  for (std::size_t level = 0; level < lines_.size(); ++level) label_level(level);
  drawing_.end_group();
}

bool Picture::over_section(const Box& box) const {
  const auto& field = solved_.result.field;
  const auto cell = [](const std::vector<double>& lines_m, double at_m) {
    return static_cast<std::ptrdiff_t>(std::upper_bound(lines_m.begin(), lines_m.end(), at_m) -
                                       lines_m.begin()) -
           1;
  };
  for (int i = 0; i <= 8; ++i)
    for (int k = 0; k <= 2; ++k) {
      const double x = box.x + box.width * i / 8.0, y = box.y + box.height * k / 2.0;
      const auto column = cell(field.x_m, layout_.shown.low.x_m + 1e-3 * layout_.ratio * (x - layout_.left));
      const auto row =
          cell(field.y_m, layout_.shown.high.y_m - 1e-3 * layout_.ratio * (y - layout_.section_top));
      const bool on_field =
          column >= 0 && row >= 0 && column + 1 < std::ssize(field.x_m) && row + 1 < std::ssize(field.y_m);
      if (on_field && field.item_of_cell(static_cast<std::size_t>(column), static_cast<std::size_t>(row)))
        return true;
    }
  return false;
}

void Picture::name_side(std::size_t side) {
  const auto& boundary = solved_.file.section.boundaries[side];
  const auto* air = std::get_if<AirSide>(&boundary.condition);
  if (air == nullptr) return;
  const std::string role = air->role == AirRole::room ? "room" : "outdoors";
  const auto words = fmt::format("{} {} C", role, figure(air->temperature_C, 0));
  std::vector<SectionLine> faces;
  for (const auto& face : solved_.result.faces)
    if (face.boundary == side)
      for (auto& part : clipped({face.from, face.to}, layout_.shown.low, layout_.shown.high))
        faces.push_back(part);
  std::stable_sort(faces.begin(), faces.end(), [](const SectionLine& one, const SectionLine& other) {
    const auto size = [](const SectionLine& line) {
      return std::hypot(line[1].x_m - line[0].x_m, line[1].y_m - line[0].y_m);
    };
    return size(one) > size(other);
  });
  std::optional<std::pair<std::size_t, Point>> best;
  for (const auto& face : faces)
    for (const double share : {0.5, 0.35, 0.65, 0.2, 0.8, 0.08, 0.92}) {
      const Point from = layout_.at(face[0]), to = layout_.at(face[1]);
      const double size = std::hypot(to.x - from.x, to.y - from.y);
      // The section lies on the left of the way, y upwards; on paper, outwards is to its right.
      const Point outwards{-(to.y - from.y) / size, (to.x - from.x) / size};
      const double half = text_width_em(words, FontWeight::bold) * text_size / 2.0;
      const double away = std::abs(outwards.x) * (half + 2.5) + std::abs(outwards.y) * 3.2;
      const Point at{std::lerp(from.x, to.x, share) + outwards.x * away,
                     std::lerp(from.y, to.y, share) + outwards.y * away + 0.35 * text_size};
      const auto box = grown(centred_box(at, words, text_size, FontWeight::bold), 0.5);
      if (!is_free(box) || over_section(box)) continue;
      const auto many = crowd(box, lines_.size());
      if (!best || many < best->first) best = std::pair(many, at);
    }
  if (!best) return;
  const auto box = centred_box(best->second, words, text_size, FontWeight::bold);
  drawing_.rect(grown(box, 0.3), filled("#fff"));
  drawing_.text(best->second, words,
                {.size = text_size, .anchor = Anchor::middle, .weight = FontWeight::bold});
  taken_.push_back(grown(box, 0.6));
}

void Picture::side_names() {
  drawing_.begin_group("sides");
  for (std::size_t side = 0; side < solved_.file.section.boundaries.size(); ++side) name_side(side);
  drawing_.end_group();
}

/// Scale bar, shades of the isotherms, what lines without a temperature mean.
void Picture::key(double y) {
  double bar_mm = std::pow(10.0, std::floor(std::log10(45.0 * layout_.ratio)));
  for (const double times : {5.0, 2.0})
    if (times * bar_mm <= 45.0 * layout_.ratio) {
      bar_mm *= times;
      break;
    }
  const double size = bar_mm / layout_.ratio;
  drawing_.begin_group("scale and key");
  for (int i = 0; i < 2; ++i)
    drawing_.rect({4.0 + i * size / 2.0, y + 1.0, size / 2.0, 1.2},
                  {"#000", 0.25, i == 0 ? "#000" : "#fff", {}});
  drawing_.text({4.0, y + 6.0}, fmt::format("{} mm", svg_number(bar_mm)), {.size = text_size});
  const double start = 56.0;
  const double step =
      std::min(11.0, 130.0 / static_cast<double>(std::max<std::size_t>(levels_.at_C.size(), 1)));
  for (std::size_t level = 0; level < levels_.at_C.size(); ++level) {
    const double x = start + step * static_cast<double>(level);
    drawing_.line({x, y + 1.6}, {x + 0.75 * step, y + 1.6}, {ink(level), 3.0 * line_width, "none", {}});
    drawing_.text(
        {x + 0.375 * step, y + 6.0}, level_text(level),
        {.size = label_size, .anchor = Anchor::middle, .most_width = step - 0.6, .least_size = 1.6});
  }
  const double end = start + step * static_cast<double>(levels_.at_C.size());
  drawing_.text({end, y + 6.0}, "C", {.size = label_size});
  const double cut = end + 8.0;
  drawing_.line({cut, y + 1.6}, {cut + 14.0, y + 1.6}, dashed("3 0.8 0.6 0.8", 0.3));
  drawing_.text({cut, y + 6.0}, "cut-off: no heat passes",
                {.size = label_size, .most_width = drawing_.canvas().width - cut - 2.0, .least_size = 1.6});
  drawing_.end_group();
}

}  // namespace dewgap::tools::section_picture_kernel
