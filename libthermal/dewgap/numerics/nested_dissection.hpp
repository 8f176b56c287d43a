// An order of elimination for lattices: halves first, the line that parts them last. Private to the library.
#pragma once

#include <cstddef>
#include <vector>

namespace dewgap::numerics {

/// Nested dissection of George (SIAM J. Numer. Anal. 10, 1973) by position: the longer side of a block is
/// parted by its middle line, which is numbered after both halves. Nodes of the lattice (row after row) where
/// `present` is false are left out. Returns the present nodes in the order of their elimination.
std::vector<std::size_t> nested_dissection_order(std::size_t columns, std::size_t rows,
                                                 const std::vector<bool>& present);

}  // namespace dewgap::numerics
