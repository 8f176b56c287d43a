// Where a verb reads and writes.
#pragma once

#include <iosfwd>

namespace dewgap::tools {

struct Streams {
  std::istream& in;
  std::ostream& out;
  std::ostream& err;
};

}  // namespace dewgap::tools
