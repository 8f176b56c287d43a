#include "dewgap/fitting/cut_list.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <numeric>
#include <tuple>

#include "dewgap/errors.hpp"
#include "dewgap/fitting/shelves_kernel.hpp"
#include "dewgap/fitting/shopping_kernel.hpp"
#include "dewgap/fitting/text_kernel.hpp"

namespace dewgap {
namespace {

void require_stock(const std::optional<StockSize>& stock) {
  if (stock) {
    require_in_range(stock->width_m, {0.1, 100.0}, "stock.width_m", "m");
    require_in_range(stock->height_m, {0.1, 100.0}, "stock.height_m", "m");
  }
}

void validate(const std::vector<CutListWindow>& windows, const CutListOptions& options) {
  require_in_range(options.kerf_m, {0.0, 0.02}, "kerf_m", "m");
  require_in_range(options.tape_roll_m, {0.5, 1000.0}, "tape_roll_m", "m");
  require_in_range(options.tape_waste_share, {0.0, 1.0}, "tape_waste_share", "");
  require_in_range(static_cast<double>(options.spare_fixings_percent), {0.0, 100.0}, "spare_fixings_percent",
                   "%");
  require_stock(options.stock);
  for (const auto& window : windows) {
    require_stock(window.stock);
    require_in_range(static_cast<double>(window.plan.width_mm), {1.0, 10000.0}, "plan.width_mm", "mm");
    require_in_range(static_cast<double>(window.plan.height_mm), {1.0, 10000.0}, "plan.height_mm", "mm");
    require_in_range(window.plan.thickness_mm, {0.01, 50.0}, "plan.thickness_mm", "mm");
    require_in_range(static_cast<double>(window.plan.sheet_count), {1.0, 200.0}, "plan.sheet_count", "");
  }
}

/// " a" to " z", then " aa" and on; nothing for a window's only sheet.
std::string letter_of(int index, int count) {
  if (count == 1) {
    return {};
  }
  std::string letters;
  for (int left = index; left >= 0; left = left / 26 - 1) {
    letters.insert(letters.begin(), static_cast<char>('a' + left % 26));
  }
  return " " + letters;
}

std::vector<CutPiece> pieces_of(const CutListWindow& window, std::size_t index) {
  std::vector<CutPiece> pieces;
  for (int i = 0; i < window.plan.sheet_count; ++i) {
    pieces.push_back({window.label + letter_of(i, window.plan.sheet_count), index, window.plan.width_mm,
                      window.plan.height_mm});
  }
  return pieces;
}

StockSize stock_of(const CutListWindow& window, const CutListOptions& options) {
  return window.stock ? *window.stock : options.stock.value_or(usual_stock(window.sheet));
}

/// What goes into one group: material, and thickness and stock in hundredths of a millimetre.
using GroupKey = std::tuple<SheetKind, long, long, long>;

GroupKey key_of(const CutListWindow& window, const StockSize& stock) {
  const auto hundredths = [](double length_mm) { return std::lround(length_mm * 100.0); };
  return {window.sheet, hundredths(window.plan.thickness_mm), hundredths(1e3 * stock.width_m),
          hundredths(1e3 * stock.height_m)};
}

CutGroup laid_out(CutGroup group, const CutListOptions& options) {
  std::stable_sort(group.pieces.begin(), group.pieces.end(), [](const CutPiece& a, const CutPiece& b) {
    return static_cast<double>(a.width_mm) * a.height_mm > static_cast<double>(b.width_mm) * b.height_mm;
  });
  const auto packed = fitting::pack_shelves(group.pieces, group.stock, options);
  group.layouts = packed.layouts;
  group.do_not_fit = packed.do_not_fit;
  for (const auto& piece : group.pieces) {
    group.area_m2 += piece.width_mm * 1e-3 * piece.height_mm * 1e-3;
  }
  group.weight_kg =
      group.area_m2 * group.thickness_mm * 1e-3 * sheet_properties(group.sheet).density_kg_m3.best;
  return group;
}

}  // namespace

CutList cut_list(const std::vector<CutListWindow>& windows, const CutListOptions& options) {
  validate(windows, options);
  std::map<GroupKey, CutGroup> groups;
  CutList list;
  for (std::size_t i = 0; i < windows.size(); ++i) {
    const auto& window = windows[i];
    const auto stock = stock_of(window, options);
    auto& group = groups[key_of(window, stock)];
    group.sheet = window.sheet;
    group.stock = stock;
    group.thickness_mm = window.plan.thickness_mm;
    const auto pieces = pieces_of(window, i);
    group.pieces.insert(group.pieces.end(), pieces.begin(), pieces.end());
    list.tape_m += window.plan.sheet_count * window.plan.tape_pieces_length_m;
  }
  for (auto& [key, group] : groups) {
    list.groups.push_back(laid_out(std::move(group), options));
    list.piece_count += static_cast<int>(list.groups.back().pieces.size());
    list.area_m2 += list.groups.back().area_m2;
    list.weight_kg += list.groups.back().weight_kg;
  }
  list.shopping = fitting::shopping_for(windows, list, options);
  return list;
}

}  // namespace dewgap
