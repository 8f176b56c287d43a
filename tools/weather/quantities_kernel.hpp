// The quantities that a weather file may hold, their names, units and ranges.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <variant>

#include "dewgap/climate/weather_columns.hpp"
#include "dewgap/errors.hpp"

namespace dewgap::tools::weather {

enum class Quantity {
  air_temperature,
  relative_humidity,
  dew_point,
  vapour_pressure,
  wind,
  wind_direction,
  global,
  beam_normal,
  diffuse,
  cloud_cover,
  sky_temperature,
  long_wave,
};

/// A unit of the files: base = factor (value + offset), the base being the library's own unit.
struct ColumnUnit {
  std::string_view suffix;  ///< as in the column's name
  std::string_view symbol;  ///< as people write it
  double factor = 1.0;
  double offset = 0.0;

  double to_base(double value) const { return factor * (value + offset); }
  double from_base(double base) const { return base / factor - offset; }
};

/// How a missing hour is filled in.
enum class Filling { straight, along_the_arc, while_lit, by_clearness };

struct QuantityRule {
  Quantity quantity;
  std::string_view name;
  std::span<const ColumnUnit> units;
  PermittedRange permitted;  ///< in the base unit, of a value in the file
  Filling filling = Filling::straight;
  std::vector<double> WeatherColumns::*column = nullptr;

  bool is_sun() const {
    return quantity == Quantity::global || quantity == Quantity::beam_normal || quantity == Quantity::diffuse;
  }
};

std::span<const QuantityRule> quantity_rules();
const QuantityRule& rule_of(Quantity quantity);

struct NamedColumn {
  const QuantityRule* rule;
  const ColumnUnit* unit;
};
/// A known quantity whose unit is not, or is not named.
struct WrongUnit {
  const QuantityRule* rule;
  std::string unit;
};
/// What a column's name says; nothing for an unknown one. A name that only begins like a quantity and ends in
/// one of its units ("wind_gust_m_s") is another quantity, so unknown.
std::optional<std::variant<NamedColumn, WrongUnit>> column_named(std::string_view name);

/// "air_temperature_C, air_temperature_K or air_temperature_F".
std::string permitted_names(const QuantityRule& rule);
/// "-80 to 60 C", in the unit of the file.
std::string permitted_values(const QuantityRule& rule, const ColumnUnit& unit);
/// "none of C, K or F" would do: words joined by commas and a last "or".
std::string joined_by_or(const std::vector<std::string>& words);

}  // namespace dewgap::tools::weather
