#include "dewgap/errors.hpp"
#include "dewgap/materials/materials_kernel.hpp"
#include "dewgap/numerics/csv_text.hpp"

namespace dewgap::materials_kernel {
namespace {

InvalidInput fault(std::string_view kind, std::string_view property, std::string_view why) {
  return InvalidInput("materials table",
                      std::string(kind) + ", " + std::string(property) + ": " + std::string(why));
}

void require_text(const numerics::CsvTable& table, std::size_t row, std::string_view column) {
  if (table.text(row, column).empty()) {
    throw fault(table.text(row, "kind"), table.text(row, "property"), std::string(column) + " is empty");
  }
}

void require_status(const numerics::CsvTable& table, std::size_t row) {
  const std::string& status = table.text(row, "status");
  if (status != "published" && status != "from_memory") {
    throw fault(table.text(row, "kind"), table.text(row, "property"),
                "status is '" + status + "', not published or from_memory");
  }
}

}  // namespace

PropertyTable::PropertyTable(std::string_view csv) {
  const numerics::CsvTable table(csv, "materials table");
  for (std::size_t row = 0; row < table.row_count(); ++row) {
    for (const std::string_view column : {"kind", "property", "unit", "source"}) {
      require_text(table, row, column);
    }
    require_status(table, row);
    const std::string& kind = table.text(row, "kind");
    const std::string& property = table.text(row, "property");
    const PropertyRange range{table.number(row, "low"), table.number(row, "best"), table.number(row, "high")};
    if (!(range.low <= range.best && range.best <= range.high)) {
      throw fault(kind, property, "low, best and high are out of order");
    }
    const bool added = entries_.try_emplace({kind, property}, Entry{range, table.text(row, "unit")}).second;
    if (!added) {
      throw fault(kind, property, "occurs twice");
    }
  }
}

PropertyRange PropertyTable::range(std::string_view kind, std::string_view property,
                                   std::string_view unit) const {
  const auto found = entries_.find({std::string(kind), std::string(property)});
  if (found == entries_.end()) {
    throw fault(kind, property, "has no row");
  }
  if (found->second.unit != unit) {
    throw fault(kind, property, "is in " + found->second.unit + ", expected " + std::string(unit));
  }
  return found->second.range;
}

}  // namespace dewgap::materials_kernel
