#include "dewgap/fitting/shopping_kernel.hpp"

#include <cmath>
#include <map>
#include <set>
#include <string>

#include "dewgap/fitting/practice.hpp"
#include "dewgap/fitting/text_kernel.hpp"

namespace dewgap::fitting {
namespace {

/// "4", "0.1", "2.5": as few digits as tell it.
std::string thickness_text(double thickness_mm) {
  const bool whole = std::abs(thickness_mm - std::round(thickness_mm)) < 1e-6;
  const bool tenths = std::abs(10.0 * thickness_mm - std::round(10.0 * thickness_mm)) < 1e-6;
  return fixed_text(thickness_mm, whole ? 0 : tenths ? 1 : 2) + " mm";
}

int with_spares(int count, int percent) {
  return count + (count * percent + 99) / 100;
}

void add_sheets(std::vector<ShoppingItem>& items, const CutList& list) {
  for (const auto& group : list.groups) {
    if (group.layouts.empty()) {
      continue;
    }
    items.push_back({ShoppingKind::stock_sheet, static_cast<int>(group.layouts.size()),
                     std::string(name_of(group.sheet)) + " " + thickness_text(group.thickness_mm) + ", " +
                         fixed_text(group.stock.width_m * 1e3, 0) + " x " +
                         whole_mm_text(group.stock.height_m)});
  }
}

/// Fixings, by what has to be bought of each.
struct Counted {
  int clips = 0;
  std::map<std::string, int> screws;
  int washers = 0;
  std::set<std::string> pilot_bits;
  std::set<std::string> hole_bits;
};

void count_screws(Counted& counted, const CutListWindow& window) {
  const auto& plan = window.plan;
  const int count = plan.sheet_count * plan.fixing_count;
  const std::string shank = "screws " + fixed_text(practice::screw_shank_m * 1e3, 1);
  counted.screws[plan.screw_length_mm > 0.0 ? shank + " x " + fixed_text(plan.screw_length_mm, 0) + " mm"
                                            : shank + " mm, length once the timber is measured"] += count;
  counted.washers += count;
  counted.hole_bits.insert("for plastic, " + fixed_text(plan.hole_diameter_mm, 1) + " mm");
  // the tight screw's hole is the usual one
  counted.hole_bits.insert("for plastic, " + fixed_text(practice::hole_diameter_m * 1e3, 1) + " mm");
}

Counted count_fixings(const std::vector<CutListWindow>& windows) {
  Counted counted;
  for (const auto& window : windows) {
    const auto& plan = window.plan;
    if (plan.fixing != FixingKind::turn_clips && plan.fixing != FixingKind::screws) {
      continue;
    }
    counted.pilot_bits.insert("for timber, " + fixed_text(plan.pilot_diameter_mm, 1) + " mm");
    if (plan.fixing == FixingKind::screws) {
      count_screws(counted, window);
    } else {
      counted.clips += plan.sheet_count * plan.fixing_count;
    }
  }
  return counted;
}

void add_fixings(std::vector<ShoppingItem>& items, const Counted& counted, int spare_percent) {
  if (counted.clips > 0) {
    items.push_back({ShoppingKind::turn_clip, with_spares(counted.clips, spare_percent),
                     "turn clips, each with its screw"});
  }
  for (const auto& [what, count] : counted.screws) {
    items.push_back({ShoppingKind::screw, with_spares(count, spare_percent), what});
  }
  if (counted.washers > 0) {
    items.push_back(
        {ShoppingKind::washer, with_spares(counted.washers, spare_percent), "washers 12 mm across, soft"});
  }
  for (const auto& what : counted.pilot_bits) {
    items.push_back({ShoppingKind::pilot_bit, 1, what});
  }
  for (const auto& what : counted.hole_bits) {
    items.push_back({ShoppingKind::hole_bit, 1, what});
  }
}

}  // namespace

std::vector<ShoppingItem> shopping_for(const std::vector<CutListWindow>& windows, const CutList& list,
                                       const CutListOptions& options) {
  std::vector<ShoppingItem> items;
  add_sheets(items, list);
  if (list.tape_m > 0.0) {
    const double rolls = list.tape_m * (1.0 + options.tape_waste_share) / options.tape_roll_m;
    items.push_back({ShoppingKind::tape_roll, static_cast<int>(std::ceil(rolls - 1e-9)),
                     "tape, rolls of " + fixed_text(options.tape_roll_m, 1) + " m"});
  }
  add_fixings(items, count_fixings(windows), options.spare_fixings_percent);
  if (list.piece_count > 0) {
    items.push_back({ShoppingKind::label, list.piece_count, "labels: window, and 'top'"});
  }
  return items;
}

}  // namespace dewgap::fitting
