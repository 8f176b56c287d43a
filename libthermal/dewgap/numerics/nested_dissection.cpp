#include "dewgap/numerics/nested_dissection.hpp"

namespace dewgap::numerics {
namespace {

constexpr std::size_t smallest_side = 3;  // blocks below it are numbered row by row

struct Block {
  std::size_t left, right, bottom, top;  // right and top not included
};

class Dissection {
 public:
  Dissection(std::size_t columns, const std::vector<bool>& present) : columns_(columns), present_(present) {}

  void number(const Block& block) {
    const std::size_t width = block.right - block.left;
    const std::size_t height = block.top - block.bottom;
    if (width < smallest_side && height < smallest_side) {
      take(block);
    } else if (width >= height) {
      const std::size_t middle = block.left + width / 2;
      number({block.left, middle, block.bottom, block.top});
      number({middle + 1, block.right, block.bottom, block.top});
      take({middle, middle + 1, block.bottom, block.top});
    } else {
      const std::size_t middle = block.bottom + height / 2;
      number({block.left, block.right, block.bottom, middle});
      number({block.left, block.right, middle + 1, block.top});
      take({block.left, block.right, middle, middle + 1});
    }
  }

  std::vector<std::size_t> order;

 private:
  void take(const Block& block) {
    for (std::size_t row = block.bottom; row < block.top; ++row) {
      for (std::size_t column = block.left; column < block.right; ++column) {
        const std::size_t node = row * columns_ + column;
        if (present_[node]) {
          order.push_back(node);
        }
      }
    }
  }

  std::size_t columns_;
  const std::vector<bool>& present_;
};

}  // namespace

std::vector<std::size_t> nested_dissection_order(std::size_t columns, std::size_t rows,
                                                 const std::vector<bool>& present) {
  Dissection dissection(columns, present);
  dissection.order.reserve(columns * rows);
  dissection.number({0, columns, 0, rows});
  return dissection.order;
}

}  // namespace dewgap::numerics
