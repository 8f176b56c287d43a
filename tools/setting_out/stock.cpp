// A stock sheet with the pieces cut from it.
#include <fmt/format.h>

#include "tools/answer/figures_text.hpp"
#include "tools/setting_out/drawings.hpp"

namespace dewgap::tools {
namespace {

constexpr double margin = 8.0;
constexpr double caption = 9.0;
constexpr double least_size = 1.6;
/// A sheet is never this long: what is comes off a roll, and only what is used of it is drawn.
constexpr double roll_from_mm = 6000.0;
constexpr double rest_of_roll_mm = 150.0;

std::string piece_size(const PlacedPiece& placed) {
  return fmt::format("{} x {}", placed.piece.width_mm, placed.piece.height_mm);
}

double height_of(const PlacedPiece& placed) {
  return placed.turned ? placed.piece.width_mm : placed.piece.height_mm;
}

/// From the bottom edge to the top of the highest piece, mm.
double used_height(const StockLayout& layout) {
  double highest = 0.0;
  for (const auto& placed : layout.pieces) highest = std::max(highest, placed.y_mm + height_of(placed));
  return highest;
}

/// Name, size and which edge is the top; of a small piece the name alone, its size stands in the cut list.
void write_piece(SvgDrawing& drawing, const PlacedPiece& placed, const Box& box) {
  const double middle = box.x + box.width / 2.0;
  const double size = std::min(3.2, box.height / 5.0);
  const double width = box.width - 1.5;
  const TextStyle style{.size = std::max(size, least_size),
                        .anchor = Anchor::middle,
                        .most_width = width,
                        .least_size = least_size};
  if (size < least_size || width < 4.0 * least_size) {
    auto small = style;
    small.weight = FontWeight::bold;
    drawing.text({middle, box.y + box.height / 2.0 + 0.35 * style.size}, placed.piece.label, small);
    return;
  }
  auto bold = style;
  bold.weight = FontWeight::bold;
  const double y = box.y + box.height / 2.0;
  drawing.text({middle, y - 0.3 * size}, placed.piece.label, bold);
  drawing.text({middle, y + 0.9 * size}, piece_size(placed), style);
  drawing.text({middle, y + 2.1 * size}, placed.turned ? "top: left" : "top: up", style);
}

std::string description_of(const CutGroup& group, const StockLayout& layout) {
  const auto stock = fmt::format("{} x {} mm", figure(1000.0 * group.stock.width_m, 0),
                                 figure(1000.0 * group.stock.height_m, 0));
  return fmt::format("{} piece{} on {}, {} of it used.", layout.pieces.size(),
                     layout.pieces.size() == 1 ? "" : "s", stock, share_text(layout.used_share));
}

}  // namespace

SvgDrawing stock_drawing(const CutGroup& group, std::size_t layout, const std::string& id) {
  const auto& one = group.layouts.at(layout);
  const double width = 1000.0 * group.stock.width_m;
  const double whole_height = 1000.0 * group.stock.height_m;
  const bool off_a_roll = whole_height > roll_from_mm;
  const double height =
      off_a_roll ? std::min(whole_height, used_height(one) + rest_of_roll_mm) : whole_height;
  const double ratio = drawing_ratio(width, height, 70.0, 105.0);
  SvgDrawing drawing({.width = margin + width / ratio + 4.0,
                      .height = caption + height / ratio + 3.0,
                      .id = id,
                      .title = fmt::format("{} {}, {}", off_a_roll ? "Off roll" : "Stock sheet", layout + 1,
                                           ratio_text(ratio)),
                      .description = description_of(group, one)});
  const double left = margin;
  const double bottom = caption + height / ratio;
  drawing.rect({left, caption, width / ratio, height / ratio}, {"#000", 0.5, "none", {}});
  if (off_a_roll)  // the roll goes on
    drawing.line({left, caption}, {left + width / ratio, caption}, {"#fff", 0.7, "none", {}});
  for (const auto& placed : one.pieces) {
    const double across = placed.turned ? placed.piece.height_mm : placed.piece.width_mm;
    const double up = height_of(placed);
    const Box box{left + placed.x_mm / ratio, bottom - (placed.y_mm + up) / ratio, across / ratio,
                  up / ratio};
    drawing.rect(box, {"#000", 0.3, "#f0f0f0", {}});
    write_piece(drawing, placed, box);
  }
  drawing.dimension({.from = {left, caption},
                     .to = {left + width / ratio, caption},
                     .distance = 3.0,
                     .text = figure(width, 0),
                     .text_size = 2.8});
  const double dimensioned = off_a_roll ? used_height(one) : height;
  drawing.dimension({.from = {left, bottom},
                     .to = {left, bottom - dimensioned / ratio},
                     .distance = 3.0,
                     .text = off_a_roll ? figure(dimensioned, 0) + " used" : figure(dimensioned, 0),
                     .text_size = 2.8});
  return drawing;
}

}  // namespace dewgap::tools
