// What is written beside a section: the names of its parts, the legend of its hatches.
#include <fmt/format.h>

#include <algorithm>
#include <map>

#include "tools/answer/figures_text.hpp"
#include "tools/section/picture_kernel.hpp"

namespace dewgap::tools::section_picture_kernel {
namespace {

/// First and last cell of each cell's unbroken run of its own item, along its row or its column.
struct Run {
  std::size_t first = 0;
  std::size_t last = 0;
};

class Anchors {
 public:
  Anchors(const SolvedSection& solved, const Layout& layout)
      : field_(solved.result.field), shown_(layout.shown), best_(solved.file.section.items.size()) {
    columns_ = field_.x_m.size() - 1;
    rows_ = field_.y_m.size() - 1;
  }

  /// The roomiest place of each item that is seen.
  std::map<std::uint32_t, SectionPoint> places() {
    const auto along_rows = runs(true), along_columns = runs(false);
    for (std::size_t row = 0; row < rows_; ++row)
      for (std::size_t column = 0; column < columns_; ++column)
        if (const auto item = field_.item_of_cell(column, row))
          offer(*item, row, along_rows[row * columns_ + column], along_columns[row * columns_ + column]);
    std::map<std::uint32_t, SectionPoint> places;
    for (std::uint32_t item = 0; item < best_.size(); ++item)
      if (best_[item].room > 0.0) places[item] = best_[item].at;
    return places;
  }

 private:
  struct Best {
    double room = 0.0;
    SectionPoint at;
  };

  std::vector<Run> runs(bool along_row) const {
    std::vector<Run> all(columns_ * rows_);
    const auto outer = along_row ? rows_ : columns_;
    const auto inner = along_row ? columns_ : rows_;
    const auto cell = [&](std::size_t o, std::size_t i) {
      return along_row ? o * columns_ + i : i * columns_ + o;
    };
    for (std::size_t o = 0; o < outer; ++o)
      for (std::size_t first = 0; first < inner;) {
        std::size_t last = first;
        while (last + 1 < inner && field_.item[cell(o, last + 1)] == field_.item[cell(o, first)]) ++last;
        for (std::size_t i = first; i <= last; ++i) all[cell(o, i)] = {first, last};
        first = last + 1;
      }
    return all;
  }

  void offer(std::uint32_t item, std::size_t row, Run across, Run up) {
    const double left = std::max(field_.x_m[across.first], shown_.low.x_m);
    const double right = std::min(field_.x_m[across.last + 1], shown_.high.x_m);
    const double low = std::max(field_.y_m[up.first], shown_.low.y_m);
    const double high = std::min(field_.y_m[up.last + 1], shown_.high.y_m);
    if (right <= left || high <= low || field_.y_m[row] < shown_.low.y_m ||
        field_.y_m[row + 1] > shown_.high.y_m)
      return;
    const double room = std::min(right - left, high - low);
    // Towards the right, where the names stand.
    const SectionPoint at{left + (right - left > 2.0 * (high - low) ? 0.85 : 0.6) * (right - left),
                          0.5 * (low + high)};
    if (room > best_[item].room * (1.0 + 1e-9) && holds(item, at)) best_[item] = {room, at};
  }

  bool holds(std::uint32_t item, SectionPoint at) const {
    const auto place = [](const std::vector<double>& lines_m, double at_m) {
      return static_cast<std::size_t>(std::upper_bound(lines_m.begin(), lines_m.end(), at_m) -
                                      lines_m.begin()) -
             1;
    };
    const auto column = place(field_.x_m, at.x_m), row = place(field_.y_m, at.y_m);
    return column < columns_ && row < rows_ && field_.item_of_cell(column, row) == item;
  }

  const TemperatureField& field_;
  ShownPart shown_;
  std::vector<Best> best_;
  std::size_t columns_ = 0;
  std::size_t rows_ = 0;
};

}  // namespace

std::vector<PartLabel> part_labels(const SolvedSection& solved, const Layout& layout) {
  std::vector<PartLabel> labels;
  for (const auto& [item, at] : Anchors(solved, layout).places())
    labels.push_back({layout.at(at), solved.file.section.items[item].name, FontWeight::regular});
  if (const auto& lowest = solved.result.lowest_room_face) {
    const auto at = layout.at(lowest->at);
    if (at.x >= layout.left - 0.01 && at.x <= layout.left + layout.width() + 0.01 &&
        at.y >= layout.section_top - 0.01 && at.y <= layout.section_top + layout.height() + 0.01)
      labels.push_back(
          {at, fmt::format("lowest on room side {} C", figure(lowest->temperature_C, 1)), FontWeight::bold});
  }
  std::stable_sort(labels.begin(), labels.end(),
                   [](const PartLabel& one, const PartLabel& other) { return one.part.y < other.part.y; });
  return labels;
}

std::vector<LegendEntry> legend_entries(const SolvedSection& solved) {
  std::vector<LegendEntry> entries;
  for (const auto& look : solved.file.looks) {
    auto words = look.material;
    if (look.conductivity_W_mK) words += fmt::format(", {} W/(m K)", *look.conductivity_W_mK);
    const bool known = std::any_of(entries.begin(), entries.end(),
                                   [&](const LegendEntry& one) { return one.words == words; });
    if (!known) entries.push_back({look.hatch, std::move(words)});
  }
  return entries;
}

Point Picture::label_at(std::size_t place) const {
  const double middle = layout_.section_top + layout_.height() / 2.0;
  const double count = static_cast<double>(labels_.size());
  const double step = std::clamp(layout_.height() / std::max(count, 1.0), label_step, 9.0);
  const double first = std::max(layout_.section_top + 1.0, middle - 0.5 * step * (count - 1.0));
  return {label_left(), first + step * static_cast<double>(place) + 0.35 * text_size};
}

void Picture::labels() {
  // Lines that cross change their places.
  const auto turn = [](Point a, Point b, Point c) {
    return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x) > 0.0;
  };
  for (std::size_t round = 0; round < labels_.size(); ++round)
    for (std::size_t i = 0; i + 1 < labels_.size(); ++i) {
      const Point a = labels_[i].part, b = label_at(i), c = labels_[i + 1].part, d = label_at(i + 1);
      if (turn(a, b, c) != turn(a, b, d) && turn(c, d, a) != turn(c, d, b))
        std::swap(labels_[i], labels_[i + 1]);
    }
  drawing_.begin_group("parts");
  for (std::size_t i = 0; i < labels_.size(); ++i)
    drawing_.label(labels_[i].part, label_at(i), labels_[i].words,
                   {.size = text_size, .weight = labels_[i].weight, .most_width = label_width});
  drawing_.end_group();
}

void Picture::legend(double y) {
  constexpr double swatch = 9.0;
  constexpr std::size_t in_a_row = 3;
  const double column = (drawing_.canvas().width - 8.0) / in_a_row;
  drawing_.begin_group("materials");
  for (std::size_t i = 0; i < legend_.size(); ++i) {
    const double x = 4.0 + column * static_cast<double>(i % in_a_row);
    const double down = y + legend_row * static_cast<double>(i / in_a_row);
    drawing_.hatched(Box{x, down, swatch, 4.0}, legend_[i].hatch);
    drawing_.text({x + swatch + 1.5, down + 3.0}, legend_[i].words,
                  {.size = text_size, .most_width = column - swatch - 4.0});
  }
  drawing_.end_group();
}

}  // namespace dewgap::tools::section_picture_kernel
