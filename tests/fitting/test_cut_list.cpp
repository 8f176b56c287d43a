#include "dewgap/fitting/cut_list.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <random>

#include "dewgap/errors.hpp"
#include "sheet_plan_cases.hpp"

namespace dewgap {
namespace {

using test::narrow_faced_opening_of;
using test::opening_of;

CutListWindow window_of(const std::string& label, double width_m, double height_m, int sheets = 1) {
  auto input = opening_of(width_m, height_m);
  input.sheet_count = sheets;
  return {.label = label, .sheet = input.sheet, .plan = plan_sheet(input)};
}

struct Lying {
  double left, right, bottom, top;
};
Lying lying(const PlacedPiece& placed) {
  const double across = placed.turned ? placed.piece.height_mm : placed.piece.width_mm;
  const double up = placed.turned ? placed.piece.width_mm : placed.piece.height_mm;
  return {placed.x_mm, placed.x_mm + across, placed.y_mm, placed.y_mm + up};
}

void expect_apart(const StockLayout& layout, const StockSize& stock, double kerf_mm) {
  for (std::size_t i = 0; i < layout.pieces.size(); ++i) {
    const auto a = lying(layout.pieces[i]);
    EXPECT_GE(a.left, 0.0);
    EXPECT_GE(a.bottom, 0.0);
    EXPECT_LE(a.right, stock.width_m * 1e3 + 1e-6);
    EXPECT_LE(a.top, stock.height_m * 1e3 + 1e-6);
    for (std::size_t j = 0; j < i; ++j) {
      const auto b = lying(layout.pieces[j]);
      const double gap = std::max({a.left - b.right, b.left - a.right, a.bottom - b.top, b.bottom - a.top});
      EXPECT_GE(gap, kerf_mm - 1e-6);
    }
  }
}

TEST(CutList, LaysEveryPieceOnceWithAKerfBetween) {
  std::mt19937 draw(11);
  std::uniform_real_distribution<double> side(0.2, 1.6);
  for (const auto turning : {Turning::allowed, Turning::kept_upright}) {
    std::vector<CutListWindow> windows;
    for (int i = 0; i < 60; ++i) {
      windows.push_back(window_of(std::to_string(i), side(draw), side(draw), 1 + i % 3));
    }
    const auto list = cut_list(windows, {.turning = turning});
    int placed = 0;
    double area_m2 = 0.0;
    for (const auto& group : list.groups) {
      EXPECT_TRUE(group.do_not_fit.empty());
      for (const auto& layout : group.layouts) {
        expect_apart(layout, group.stock, 3.0);
        placed += static_cast<int>(layout.pieces.size());
        area_m2 += layout.used_share * group.stock.width_m * group.stock.height_m;
        for (const auto& piece : layout.pieces) {
          EXPECT_TRUE(!piece.turned || turning == Turning::allowed);
        }
      }
    }
    EXPECT_EQ(placed, 120);
    EXPECT_EQ(list.piece_count, 120);
    EXPECT_NEAR(area_m2, list.area_m2, 1e-6);
  }
}

TEST(CutList, GroupsByMaterialAndThicknessAndLabelsSheets) {
  auto thick = window_of("Hall", 0.8, 2.2);
  auto glass = window_of("Bath", 0.4, 0.5);
  glass.sheet = SheetKind::glass;
  const auto list = cut_list({window_of("Kitchen", 0.96, 0.96, 2), thick, glass});
  ASSERT_EQ(list.groups.size(), 3u);
  EXPECT_EQ(list.groups[0].pieces[0].label, "Kitchen a");
  EXPECT_EQ(list.groups[0].pieces[1].label, "Kitchen b");
  EXPECT_NEAR(list.groups[0].area_m2, 2.0, 1e-9);
  EXPECT_NEAR(list.groups[0].weight_kg, 9.44, 1e-9);
  EXPECT_EQ(list.groups[1].pieces[0].label, "Hall");
  EXPECT_NEAR(list.groups[1].thickness_mm, 5.0, 1e-9);
}

TEST(CutList, FillsOneSheetByHand) {
  // 1000 x 1000 four times with 3 mm kerfs needs 2003: one of 2.05 x 3.05 m takes six
  const auto four = cut_list({window_of("A", 0.96, 0.96, 6)});
  EXPECT_EQ(four.groups[0].layouts.size(), 1u);
  const auto seven = cut_list({window_of("A", 0.96, 0.96, 7)});
  EXPECT_EQ(seven.groups[0].layouts.size(), 2u);
  const auto none = cut_list({window_of("A", 0.96, 0.96)}, {.stock = StockSize{0.9, 2.0}});
  EXPECT_TRUE(none.groups[0].layouts.empty());
  EXPECT_EQ(none.groups[0].do_not_fit.size(), 1u);
}

TEST(CutList, AWindowsOwnStockMakesAGroupOfItsOwn) {
  auto small = window_of("B", 0.5, 0.5);
  small.stock = StockSize{1.0, 1.2};
  const auto list = cut_list({window_of("A", 0.5, 0.5), small, window_of("C", 0.5, 0.5)});
  ASSERT_EQ(list.groups.size(), 2u);
  EXPECT_EQ(list.groups[0].pieces.size(), 1u);
  EXPECT_EQ(list.groups[0].stock.width_m, 1.0);
  EXPECT_EQ(list.groups[1].pieces.size(), 2u);
  EXPECT_EQ(list.groups[1].stock.width_m, usual_stock(SheetKind::acrylic).width_m);
}

int count_of(const CutList& list, ShoppingKind kind) {
  int count = 0;
  for (const auto& item : list.shopping) count += item.kind == kind ? item.count : 0;
  return count;
}

TEST(CutList, ShoppingListByHand) {
  auto screwed = narrow_faced_opening_of(0.860, 1.160);         // 14 screws
  const auto list = cut_list({window_of("A", 0.860, 1.160, 2),  // 28 clips
                              {.label = "B", .sheet = SheetKind::acrylic, .plan = plan_sheet(screwed)}});
  EXPECT_EQ(count_of(list, ShoppingKind::turn_clip), 30);  // 5 % of 28, rounded up
  EXPECT_EQ(count_of(list, ShoppingKind::screw), 15);
  EXPECT_EQ(count_of(list, ShoppingKind::washer), 15);
  EXPECT_EQ(count_of(list, ShoppingKind::pilot_bit), 1);
  EXPECT_EQ(count_of(list, ShoppingKind::hole_bit), 2);  // the grown holes, and the tight one
  EXPECT_EQ(count_of(list, ShoppingKind::label), 3);
  // three times 4.152 m and a tenth: 13.7 m
  EXPECT_NEAR(list.tape_m, 12.456, 1e-9);
  EXPECT_EQ(count_of(list, ShoppingKind::tape_roll), 2);
  EXPECT_TRUE(cut_list({}).shopping.empty());
}

TEST(CutList, RejectsBadInput) {
  EXPECT_THROW(cut_list({CutListWindow{.label = "A", .plan = {}}}), InvalidInput);
  EXPECT_THROW(cut_list({}, {.kerf_m = -0.001}), InvalidInput);
  EXPECT_THROW(cut_list({}, {.tape_roll_m = std::nan("")}), InvalidInput);
  EXPECT_THROW(cut_list({}, {.stock = StockSize{0.0, 1.0}}), InvalidInput);
  auto window = window_of("A", 0.5, 0.5);
  window.stock = StockSize{0.0, 1.0};
  EXPECT_THROW(cut_list({window}), InvalidInput);
}

}  // namespace
}  // namespace dewgap
