// A value that a file gives, kept for the record with unit and basis.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "dewgap/quantity.hpp"

namespace dewgap::tools {

using GivenScalar = std::variant<std::int64_t, double, std::string>;

struct GivenValue {
  std::string key;             ///< "window.opening_widths_mm"
  std::optional<int> reading;  ///< which, from 1, in a section that may occur several times
  std::variant<GivenScalar, std::vector<GivenScalar>> value;  ///< as the file has it, in `unit`
  std::string_view unit;                                      ///< empty for words and plain numbers
  Basis basis = Basis::described;
};

}  // namespace dewgap::tools
