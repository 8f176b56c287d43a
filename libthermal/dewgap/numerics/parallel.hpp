// Independent pieces of work on all cores. Private to the library.
#pragma once

#include <cstddef>
#include <functional>

namespace dewgap::numerics {

/// work(i) for every i below `count`, in any order and on several threads at once; ends when all are done.
/// What a piece throws is thrown again here (the first by index) once the others have ended. On one core, or
/// where threads are not to be had, in turn. The pieces must not write what another reads.
void for_each_index(std::size_t count, const std::function<void(std::size_t)>& work);

}  // namespace dewgap::numerics
