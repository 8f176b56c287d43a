#include "dewgap/fitting/shelves_kernel.hpp"

#include <algorithm>
#include <cstddef>
#include <optional>

namespace dewgap::fitting {
namespace {

constexpr double rounding_mm = 1e-6;

/// A piece as it will lie: `across` along the shelf, `up` the shelf's height.
struct Lying {
  CutPiece piece;
  double across_mm;
  double up_mm;
  bool turned;
};

/// A strip across a stock sheet, cut from edge to edge.
struct Shelf {
  std::size_t sheet;
  double y_mm;
  double height_mm;
  double used_mm;  ///< along it, with the kerf behind the last piece
};

Lying lying(const CutPiece& piece, const StockSize& stock, Turning turning) {
  const Lying upright{piece, static_cast<double>(piece.width_mm), static_cast<double>(piece.height_mm),
                      false};
  const Lying turned{piece, upright.up_mm, upright.across_mm, true};
  if (turning == Turning::kept_upright) {
    return upright;
  }
  // flat where it fits: low shelves leave the most
  const Lying& flat = upright.up_mm <= upright.across_mm ? upright : turned;
  const Lying& tall = upright.up_mm <= upright.across_mm ? turned : upright;
  return flat.across_mm <= stock.width_m * 1e3 + rounding_mm ? flat : tall;
}

class Packing {
 public:
  Packing(const StockSize& stock, double kerf_mm)
      : width_mm_(stock.width_m * 1e3), height_mm_(stock.height_m * 1e3), kerf_mm_(kerf_mm) {}

  bool fits_a_sheet(const Lying& piece) const {
    return piece.across_mm <= width_mm_ + rounding_mm && piece.up_mm <= height_mm_ + rounding_mm;
  }

  void add(const Lying& piece) {
    const auto has_room = [&](const Shelf& shelf) {
      return piece.up_mm <= shelf.height_mm + rounding_mm &&
             shelf.used_mm + piece.across_mm <= width_mm_ + rounding_mm;
    };
    const auto found = std::find_if(shelves_.begin(), shelves_.end(), has_room);
    Shelf& shelf = found != shelves_.end() ? *found : new_shelf(piece.up_mm);
    layouts_[shelf.sheet].pieces.push_back({piece.piece, shelf.used_mm, shelf.y_mm, piece.turned});
    layouts_[shelf.sheet].used_share += piece.across_mm * piece.up_mm / (width_mm_ * height_mm_);
    shelf.used_mm += piece.across_mm + kerf_mm_;
  }

  const std::vector<StockLayout>& layouts() const { return layouts_; }

 private:
  Shelf& new_shelf(double height_mm) {
    for (std::size_t sheet = 0; sheet < layouts_.size(); ++sheet) {
      if (top_mm_[sheet] + height_mm <= height_mm_ + rounding_mm) {
        return shelf_on(sheet, height_mm);
      }
    }
    layouts_.emplace_back();
    top_mm_.push_back(0.0);
    return shelf_on(layouts_.size() - 1, height_mm);
  }

  Shelf& shelf_on(std::size_t sheet, double height_mm) {
    shelves_.push_back({sheet, top_mm_[sheet], height_mm, 0.0});
    top_mm_[sheet] += height_mm + kerf_mm_;
    return shelves_.back();
  }

  double width_mm_;
  double height_mm_;
  double kerf_mm_;
  std::vector<StockLayout> layouts_;
  std::vector<double> top_mm_;  ///< of the shelves on each sheet, with the kerf
  std::vector<Shelf> shelves_;
};

}  // namespace

Packed pack_shelves(const std::vector<CutPiece>& pieces, const StockSize& stock,
                    const CutListOptions& options) {
  std::vector<Lying> all;
  for (const auto& piece : pieces) {
    all.push_back(lying(piece, stock, options.turning));
  }
  std::stable_sort(all.begin(), all.end(), [](const Lying& a, const Lying& b) { return a.up_mm > b.up_mm; });
  Packing packing(stock, options.kerf_m * 1e3);
  Packed packed;
  for (const auto& piece : all) {
    if (packing.fits_a_sheet(piece)) {
      packing.add(piece);
    } else {
      packed.do_not_fit.push_back(piece.piece);
    }
  }
  packed.layouts = packing.layouts();
  return packed;
}

}  // namespace dewgap::fitting
