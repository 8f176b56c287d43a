// A whole job's sheets cut from stock, and what to buy for it.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "dewgap/fitting/sheet_plan.hpp"
#include "dewgap/materials/materials.hpp"

namespace dewgap {

/// One window of the job.
struct CutListWindow {
  std::string label;  ///< its name or number
  SheetKind sheet = SheetKind::acrylic;
  SheetPlan plan;
  std::optional<StockSize> stock =
      {};  ///< what this window's sheets are cut from; absent: see CutListOptions
};

/// Whether pieces may be laid on their side to save sheet; the mark of the top stays with the piece.
enum class Turning { allowed, kept_upright };

struct CutListOptions {
  std::optional<StockSize> stock;  ///< of windows that name none; absent: usual_stock
  double kerf_m = 0.003;           ///< of a saw; 0 to 0.02
  Turning turning = Turning::allowed;
  double tape_roll_m = 10.0;       ///< 0.5 to 1000
  double tape_waste_share = 0.10;  ///< 0 to 1; our convention
  int spare_fixings_percent = 5;   ///< rounded up; 0 to 100; our convention
};

/// One sheet to cut. `label` is the window's, with " a", " b" where it takes several.
struct CutPiece {
  std::string label;
  std::size_t window = 0;  ///< index of the CutListWindow
  int width_mm = 0;        ///< as it hangs; the top edge is a width, to be marked 'top'
  int height_mm = 0;
};

/// Where a piece lies on a stock sheet, its lower left corner from the sheet's, mm. `turned`: its top edge
/// lies along the sheet's height.
struct PlacedPiece {
  CutPiece piece;
  double x_mm = 0.0;
  double y_mm = 0.0;
  bool turned = false;
};

struct StockLayout {
  std::vector<PlacedPiece> pieces;
  double used_share = 0.0;  ///< of the stock sheet's area
};

/// Sheets of one material and thickness, cut from one size of stock.
struct CutGroup {
  SheetKind sheet = SheetKind::acrylic;
  double thickness_mm = 0.0;
  StockSize stock;
  std::vector<CutPiece> pieces;      ///< largest first
  std::vector<StockLayout> layouts;  ///< one a stock sheet
  std::vector<CutPiece> do_not_fit;  ///< larger than the stock sheet
  double area_m2 = 0.0;
  double weight_kg = 0.0;
};

enum class ShoppingKind { stock_sheet, tape_roll, turn_clip, screw, washer, pilot_bit, hole_bit, label };

struct ShoppingItem {
  ShoppingKind kind = ShoppingKind::stock_sheet;
  int count = 0;
  std::string what;  ///< "acrylic 4 mm, 2050 x 3050 mm", "screws 4.2 x 50 mm", ...
};

struct CutList {
  std::vector<CutGroup> groups;
  std::vector<ShoppingItem> shopping;
  int piece_count = 0;
  double area_m2 = 0.0;
  double weight_kg = 0.0;
  double tape_m = 0.0;  ///< without waste
};

/// Lays the pieces out in shelves: sorted by height, each goes on the first shelf with room, else on a new
/// shelf, else on a new sheet (first fit decreasing height); every cut goes from edge to edge (guillotine),
/// a kerf between neighbours. A guide, not the best possible: shelf packing may take up to about 1.7 times
/// the least area and another sheet. Windows that are refused or wait for a batten are cut all the same:
/// leave them out beforehand. Film is cut off a roll of its stock's width the same way.
///
/// Throws InvalidInput for options outside their range and for a plan without a size.
CutList cut_list(const std::vector<CutListWindow>& windows, const CutListOptions& options = {});

}  // namespace dewgap
