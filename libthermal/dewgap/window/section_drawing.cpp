// Items painted on the lattice of their own edges: section_plan_kernel.hpp.
#include <algorithm>
#include <cmath>

#include "dewgap/errors.hpp"
#include "dewgap/window/section_flood_kernel.hpp"
#include "dewgap/window/section_plan_kernel.hpp"
#include "dewgap/window/section_words_kernel.hpp"

namespace dewgap::section_kernel {
namespace {

struct NamedLine {
  double at_m;
  std::string_view item;
};

/// Distinct lines in order; lines closer than the least width, but not the same, are an error.
std::vector<double> distinct_lines(std::vector<NamedLine> lines, std::string_view axis) {
  std::sort(lines.begin(), lines.end(), [](const auto& a, const auto& b) { return a.at_m < b.at_m; });
  std::vector<double> distinct_m;
  std::string_view last_item;
  for (const auto& line : lines) {
    const bool first = distinct_m.empty();
    const double apart_m = first ? 0.0 : line.at_m - distinct_m.back();
    if (!first && apart_m <= same_line_m) {
      continue;
    }
    if (!first && apart_m < section_least_width_m) {
      throw InvalidInput(line.item, "has an edge at " + std::string(axis) + " " + millimetres(line.at_m) +
                                        " mm, " + millimetres(apart_m) + " mm from that of '" +
                                        std::string(last_item) + "' at " + millimetres(distinct_m.back()) +
                                        " mm; permitted is 0 or at least " +
                                        millimetres(section_least_width_m) + " mm");
    }
    distinct_m.push_back(line.at_m);
    last_item = line.item;
  }
  return distinct_m;
}

/// Columns of the lattice inside the polygon at a height, by crossings counted from the left.
std::vector<bool> columns_inside(const Plan& plan, const SectionItem& item, double y_m) {
  std::vector<bool> crossed(plan.x_m.size(), false);
  const auto& points = item.polygon;
  for (std::size_t i = 0; i < points.size(); ++i) {
    const auto& from = points[i];
    const auto& to = points[(i + 1) % points.size()];
    if ((from.y_m < y_m) != (to.y_m < y_m)) {
      const std::size_t line = line_at(plan.x_m, from.x_m);
      crossed[line] = !crossed[line];
    }
  }
  std::vector<bool> inside(plan.columns(), false);
  bool within = false;
  for (std::size_t column = 0; column < plan.columns(); ++column) {
    within = within != crossed[column];
    inside[column] = within;
  }
  return inside;
}

/// The bounding box of chosen blocks, in words.
std::string extent_of(const Plan& plan, const std::vector<bool>& chosen) {
  SectionPoint low{plan.x_m.back(), plan.y_m.back()};
  SectionPoint high{plan.x_m.front(), plan.y_m.front()};
  for (std::size_t block = 0; block < chosen.size(); ++block) {
    if (chosen[block]) {
      const std::size_t column = block % plan.columns();
      const std::size_t row = block / plan.columns();
      low = {std::min(low.x_m, plan.x_m[column]), std::min(low.y_m, plan.y_m[row])};
      high = {std::max(high.x_m, plan.x_m[column + 1]), std::max(high.y_m, plan.y_m[row + 1])};
    }
  }
  return extent(low, high);
}

[[noreturn]] void throw_overlap(const Section& section, const Plan& plan, std::size_t later,
                                std::uint32_t earlier, const std::vector<std::size_t>& blocks) {
  std::vector<bool> both(plan.item.size(), false);
  for (const std::size_t block : blocks) {
    both[block] = plan.item[block] == earlier;
  }
  throw InvalidInput(section.items[later].name,
                     "overlaps '" + section.items[earlier].name + "' at " + extent_of(plan, both) +
                         "; draw them apart, or let it name the other in `replaces`");
}

void paint(const Section& section, std::size_t place, Plan& plan) {
  const SectionItem& item = section.items[place];
  std::vector<std::size_t> blocks;
  for (std::size_t row = 0; row < plan.rows(); ++row) {
    const auto inside = columns_inside(plan, item, 0.5 * (plan.y_m[row] + plan.y_m[row + 1]));
    for (std::size_t column = 0; column < plan.columns(); ++column) {
      if (inside[column]) {
        blocks.push_back(row * plan.columns() + column);
      }
    }
  }
  for (const std::size_t block : blocks) {
    const ItemPlace owner = plan.item[block];
    if (owner && std::find(item.replaces.begin(), item.replaces.end(), section.items[*owner].name) ==
                     item.replaces.end()) {
      throw_overlap(section, plan, place, *owner, blocks);
    }
  }
  for (const std::size_t block : blocks) {
    plan.item[block] = static_cast<std::uint32_t>(place);
  }
}

/// A block of no item that cannot be reached from outside is a hole.
void check_holes(const Plan& plan) {
  const auto empty = [&](std::size_t block) { return !plan.item[block].has_value(); };
  const std::size_t columns = plan.columns();
  std::vector<std::size_t> rim;
  for (std::size_t block = 0; block < plan.item.size(); ++block) {
    if (block % columns == 0 || block % columns + 1 == columns || block < columns ||
        block + columns >= plan.item.size()) {
      rim.push_back(block);
    }
  }
  const std::vector<bool> reached = reached_from(plan, rim, empty);
  for (std::size_t block = 0; block < plan.item.size(); ++block) {
    if (empty(block) && !reached[block]) {
      throw InvalidInput("items", "leave a hole at " + extent_of(plan, reached_from(plan, {block}, empty)) +
                                      "; fill it with an item, a cavity for instance");
    }
  }
}

/// An item that later ones replace wholly, and a cavity cut into parts.
void check_remains(const Section& section, const Plan& plan) {
  for (std::uint32_t place = 0; place < section.items.size(); ++place) {
    const auto its = [&](std::size_t block) { return plan.item[block] == place; };
    const auto first = std::find(plan.item.begin(), plan.item.end(), ItemPlace(place));
    if (first == plan.item.end()) {
      throw InvalidInput(section.items[place].name, "is wholly replaced by later items");
    }
    const bool cavity = std::holds_alternative<CavityFill>(section.items[place].fill) ||
                        std::holds_alternative<GapFill>(section.items[place].fill);
    if (cavity) {
      const std::vector<bool> reached =
          reached_from(plan, {static_cast<std::size_t>(first - plan.item.begin())}, its);
      for (std::size_t block = 0; block < plan.item.size(); ++block) {
        if (its(block) && !reached[block]) {
          throw InvalidInput(section.items[place].name,
                             "is a cavity that later items cut into parts; draw each part as an item");
        }
      }
    }
  }
}

}  // namespace

std::size_t line_at(const std::vector<double>& lines_m, double at_m) {
  const auto next = std::lower_bound(lines_m.begin(), lines_m.end(), at_m - same_line_m);
  return static_cast<std::size_t>(next - lines_m.begin());
}

Plan draw_items(const Section& section) {
  std::vector<NamedLine> x_lines;
  std::vector<NamedLine> y_lines;
  Plan plan;
  for (const auto& item : section.items) {
    for (const auto& point : item.polygon) {
      x_lines.push_back({point.x_m, item.name});
      y_lines.push_back({point.y_m, item.name});
    }
    plan.open.push_back(std::holds_alternative<OpenFill>(item.fill));
  }
  plan.x_m = distinct_lines(std::move(x_lines), "x");
  plan.y_m = distinct_lines(std::move(y_lines), "y");
  plan.item.assign(plan.columns() * plan.rows(), std::nullopt);
  for (std::size_t place = 0; place < section.items.size(); ++place) {
    paint(section, place, plan);
  }
  check_holes(plan);
  check_remains(section, plan);
  return plan;
}

Plan with_lines(const Plan& plan, const std::vector<double>& x_m, const std::vector<double>& y_m) {
  const auto merged = [](std::vector<double> lines_m, const std::vector<double>& further_m) {
    for (const double at_m : further_m) {
      const std::size_t place = line_at(lines_m, at_m);
      if (place == lines_m.size() || lines_m[place] > at_m + same_line_m) {
        lines_m.insert(lines_m.begin() + static_cast<std::ptrdiff_t>(place), at_m);
      }
    }
    return lines_m;
  };
  const auto block_of = [](const std::vector<double>& lines_m, double a_m, double b_m) {
    const auto next = std::upper_bound(lines_m.begin(), lines_m.end(), 0.5 * (a_m + b_m));
    return static_cast<std::size_t>(next - lines_m.begin()) - 1;
  };
  Plan finer{merged(plan.x_m, x_m), merged(plan.y_m, y_m), {}, plan.open, plan.faces};
  for (std::size_t row = 0; row < finer.rows(); ++row) {
    const std::size_t old_row = block_of(plan.y_m, finer.y_m[row], finer.y_m[row + 1]);
    for (std::size_t column = 0; column < finer.columns(); ++column) {
      finer.item.push_back(
          plan.item_of(block_of(plan.x_m, finer.x_m[column], finer.x_m[column + 1]), old_row));
    }
  }
  return finer;
}

}  // namespace dewgap::section_kernel
