// Walks over the cells of a solved section: edge_spots_kernel.hpp.
#include <array>
#include <cmath>

#include "dewgap/window/edge_spots_kernel.hpp"

namespace dewgap::edge_kernel {
namespace {

/// Keeps the colder of what it has and a crossing.
void take(const TemperatureField& field, std::size_t column, std::size_t row, const std::string& item,
          std::optional<Spot>& coldest) {
  const double temperature_C = field.at_crossing_C(column, row);
  if (!coldest || temperature_C < coldest->temperature_C) {
    coldest = Spot{{field.x_m[column], field.y_m[row]}, temperature_C, item};
  }
}

/// Of each item: 1 air, 2 solid, 0 neither.
std::vector<int> sides_of(const SectionResult& result, const ItemChoice& air, const ItemChoice& solid) {
  std::vector<int> sides;
  for (const auto& name : result.items) {
    sides.push_back(air(name) ? 1 : (solid(name) ? 2 : 0));
  }
  return sides;
}

}  // namespace

std::optional<Spot> coldest_between(const SectionResult& result, const ItemChoice& air,
                                    const ItemChoice& solid) {
  const TemperatureField& field = result.field;
  const std::vector<int> sides = sides_of(result, air, solid);
  std::optional<Spot> coldest;
  const auto visit = [&](std::size_t column, std::size_t row, std::size_t next_column, std::size_t next_row) {
    const auto one = field.item_of_cell(column, row);
    const auto other = field.item_of_cell(next_column, next_row);
    if (!one || !other || sides[*one] + sides[*other] != 3 || sides[*one] * sides[*other] != 2) {
      return;
    }
    const std::string& item = result.items[sides[*one] == 2 ? *one : *other];
    take(field, next_column, next_row, item, coldest);  // both ends of the cells' common side
    take(field, next_row == row ? next_column : column + 1, next_row == row ? row + 1 : next_row, item,
         coldest);
  };
  const std::size_t columns = field.x_m.size() - 1;
  const std::size_t rows = field.y_m.size() - 1;
  for (std::size_t row = 0; row < rows; ++row) {
    for (std::size_t column = 0; column < columns; ++column) {
      if (column + 1 < columns) visit(column, row, column + 1, row);
      if (row + 1 < rows) visit(column, row, column, row + 1);
    }
  }
  return coldest;
}

std::string item_at(const SectionResult& result, SectionPoint point, const ItemChoice& choice) {
  constexpr double same_m = 1e-8;
  const TemperatureField& field = result.field;
  std::optional<std::uint32_t> first;
  for (std::size_t row = 0; row + 1 < field.y_m.size(); ++row) {
    if (point.y_m < field.y_m[row] - same_m || point.y_m > field.y_m[row + 1] + same_m) {
      continue;
    }
    for (std::size_t column = 0; column + 1 < field.x_m.size(); ++column) {
      if (point.x_m < field.x_m[column] - same_m || point.x_m > field.x_m[column + 1] + same_m) {
        continue;
      }
      const auto item = field.item_of_cell(column, row);
      if (item && choice(result.items[*item]) && (!first || *item < *first)) {
        first = item;
      }
    }
  }
  return first ? result.items[*first] : std::string();
}

}  // namespace dewgap::edge_kernel
