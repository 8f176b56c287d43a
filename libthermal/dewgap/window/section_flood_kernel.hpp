// Which blocks of a drawing hang together.
#pragma once

#include <cstddef>
#include <vector>

#include "dewgap/window/section_plan_kernel.hpp"

namespace dewgap::section_kernel {

/// Blocks reached from the starts across sides of blocks, through those that `passes` admits alone; a start
/// that it does not admit counts for nothing.
template <class Passes>
std::vector<bool> reached_from(const Plan& plan, const std::vector<std::size_t>& starts, Passes&& passes) {
  std::vector<bool> reached(plan.item.size(), false);
  std::vector<std::size_t> open;
  const auto visit = [&](std::size_t block) {
    if (!reached[block] && passes(block)) {
      reached[block] = true;
      open.push_back(block);
    }
  };
  for (const std::size_t start : starts) visit(start);
  while (!open.empty()) {
    const std::size_t block = open.back();
    open.pop_back();
    const std::size_t column = block % plan.columns();
    if (column > 0) visit(block - 1);
    if (column + 1 < plan.columns()) visit(block + 1);
    if (block >= plan.columns()) visit(block - plan.columns());
    if (block + plan.columns() < plan.item.size()) visit(block + plan.columns());
  }
  return reached;
}

}  // namespace dewgap::section_kernel
