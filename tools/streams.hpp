// Where a verb reads and writes.
#pragma once

#include <iosfwd>

namespace dewgap::tools {

struct Streams {
  std::istream& in;
  std::ostream& out;
  std::ostream& err;
  bool err_is_terminal = false;  ///< one whose line can be rewritten: long work then shows how far it is
};

}  // namespace dewgap::tools
