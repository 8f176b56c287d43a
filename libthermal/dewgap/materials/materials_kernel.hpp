// The table of properties behind the typed structs. Shared inside this room and with its tests; not
// installed.
#pragma once

#include <map>
#include <string>
#include <string_view>
#include <utility>

#include "dewgap/materials/materials.hpp"

namespace dewgap::materials_kernel {

/// A parsed materials table: columns kind, property, low, best, high, unit, source, status.
class PropertyTable {
 public:
  /// Throws InvalidInput for a row that lacks a number, unit, source or status, whose low, best and high are
  /// out of order, or that occurs twice.
  explicit PropertyTable(std::string_view csv);

  /// The range of a property. Throws InvalidInput when the row is missing or its unit is not `unit`.
  PropertyRange range(std::string_view kind, std::string_view property, std::string_view unit) const;

 private:
  struct Entry {
    PropertyRange range;
    std::string unit;
  };
  std::map<std::pair<std::string, std::string>, Entry> entries_;
};

}  // namespace dewgap::materials_kernel
