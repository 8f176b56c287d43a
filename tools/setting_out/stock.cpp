// A stock sheet with the pieces cut from it.
#include <fmt/format.h>

#include "tools/answer/figures_text.hpp"
#include "tools/setting_out/drawings.hpp"

namespace dewgap::tools {
namespace {

constexpr double margin = 8.0;
constexpr double caption = 9.0;

std::string piece_size(const PlacedPiece& placed) {
  return fmt::format("{} x {}", placed.piece.width_mm, placed.piece.height_mm);
}

/// Name, size and which edge is the top.
void write_piece(SvgDrawing& drawing, const PlacedPiece& placed, const Box& box) {
  const double middle = box.x + box.width / 2.0;
  const double size = std::min(3.2, box.height / 5.0);
  const double width = box.width - 1.5;
  const TextStyle style{.size = size, .anchor = Anchor::middle, .most_width = width, .least_size = 1.6};
  auto bold = style;
  bold.weight = FontWeight::bold;
  const double y = box.y + box.height / 2.0;
  drawing.text({middle, y - 0.3 * size}, placed.piece.label, bold);
  drawing.text({middle, y + 0.9 * size}, piece_size(placed), style);
  drawing.text({middle, y + 2.1 * size}, placed.turned ? "top: left" : "top: up", style);
}

}  // namespace

SvgDrawing stock_drawing(const CutGroup& group, std::size_t layout, const std::string& id) {
  const auto& one = group.layouts.at(layout);
  const double width = 1000.0 * group.stock.width_m;
  const double height = 1000.0 * group.stock.height_m;
  const double ratio = drawing_ratio(width, height, 70.0, 105.0);
  SvgDrawing drawing(
      {.width = margin + width / ratio + 4.0,
       .height = caption + height / ratio + 3.0,
       .id = id,
       .title = fmt::format("Stock sheet {}, {}", layout + 1, ratio_text(ratio)),
       .description = fmt::format("{} pieces on {} x {} mm, {} of it used.", one.pieces.size(),
                                  figure(width, 0), figure(height, 0), share_text(one.used_share))});
  const double left = margin;
  const double bottom = caption + height / ratio;
  drawing.rect({left, caption, width / ratio, height / ratio}, {"#000", 0.5, "none", {}});
  for (const auto& placed : one.pieces) {
    const double across = placed.turned ? placed.piece.height_mm : placed.piece.width_mm;
    const double up = placed.turned ? placed.piece.width_mm : placed.piece.height_mm;
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
  drawing.dimension({.from = {left, bottom},
                     .to = {left, caption},
                     .distance = 3.0,
                     .text = figure(height, 0),
                     .text_size = 2.8});
  return drawing;
}

}  // namespace dewgap::tools
