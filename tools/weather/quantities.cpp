#include "tools/weather/quantities_kernel.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "tools/job/spelling.hpp"

namespace dewgap::tools::weather {
namespace {

constexpr std::array temperatures{ColumnUnit{"C", "C"}, ColumnUnit{"K", "K", 1.0, -273.15},
                                  ColumnUnit{"F", "F", 5.0 / 9.0, -32.0}};
constexpr std::array shares{ColumnUnit{"percent", "per cent", 0.01}, ColumnUnit{"share", ""}};
constexpr std::array pressures{ColumnUnit{"Pa", "Pa"}, ColumnUnit{"hPa", "hPa", 100.0},
                               ColumnUnit{"kPa", "kPa", 1000.0}};
constexpr std::array speeds{ColumnUnit{"m_s", "m/s"}, ColumnUnit{"km_h", "km/h", 1.0 / 3.6}};
constexpr std::array directions{ColumnUnit{"deg", "deg"}};
// Energy of an hour: 1 Wh/m2 in it is a mean of 1 W/m2, 3.6 kJ/m2 as well.
constexpr std::array irradiances{ColumnUnit{"W_m2", "W/m2"}, ColumnUnit{"Wh_m2", "Wh/m2"},
                                 ColumnUnit{"kJ_m2", "kJ/m2", 1.0 / 3.6}};

using Columns = WeatherColumns;
constexpr std::array rules{
    QuantityRule{Quantity::air_temperature,
                 "air_temperature",
                 temperatures,
                 {-80.0, 60.0},
                 Filling::straight,
                 &Columns::air_temperature_C},
    QuantityRule{Quantity::relative_humidity,
                 "relative_humidity",
                 shares,
                 {0.0, 1.05},
                 Filling::straight,
                 &Columns::relative_humidity},
    QuantityRule{Quantity::dew_point,
                 "dew_point",
                 temperatures,
                 {-80.0, 45.0},
                 Filling::straight,
                 &Columns::dew_point_C},
    QuantityRule{Quantity::vapour_pressure,
                 "vapour_pressure",
                 pressures,
                 {0.0, 10000.0},
                 Filling::straight,
                 &Columns::vapour_pressure_Pa},
    QuantityRule{Quantity::wind, "wind", speeds, {0.0, 120.0}, Filling::straight, &Columns::wind_m_s},
    QuantityRule{Quantity::wind_direction,
                 "wind_direction",
                 directions,
                 {0.0, 360.0},
                 Filling::along_the_arc,
                 &Columns::wind_direction_deg},
    QuantityRule{Quantity::global,
                 "global",
                 irradiances,
                 {-10.0, 1500.0},
                 Filling::by_clearness,
                 &Columns::global_W_m2},
    QuantityRule{Quantity::beam_normal,
                 "beam_normal",
                 irradiances,
                 {-10.0, 1450.0},
                 Filling::while_lit,
                 &Columns::beam_normal_W_m2},
    QuantityRule{Quantity::diffuse,
                 "diffuse",
                 irradiances,
                 {-10.0, 1500.0},
                 Filling::by_clearness,
                 &Columns::diffuse_W_m2},
    QuantityRule{
        Quantity::cloud_cover, "cloud_cover", shares, {0.0, 1.0}, Filling::straight, &Columns::cloud_cover},
    QuantityRule{Quantity::sky_temperature,
                 "sky_temperature",
                 temperatures,
                 {-100.0, 60.0},
                 Filling::straight,
                 &Columns::sky_temperature_C},
    QuantityRule{Quantity::long_wave,
                 "long_wave",
                 irradiances,
                 {55.0, 690.0},
                 Filling::straight,
                 &Columns::long_wave_W_m2}};

bool same_word(std::string_view one, std::string_view other) {
  return in_small_letters(one) == in_small_letters(other);
}

const ColumnUnit* unit_named(const QuantityRule& rule, std::string_view suffix) {
  const auto found = std::find_if(rule.units.begin(), rule.units.end(),
                                  [&](const ColumnUnit& unit) { return same_word(unit.suffix, suffix); });
  return found == rule.units.end() ? nullptr : &*found;
}

/// The rule whose name the column's begins with, the longest one.
const QuantityRule* rule_that_begins(std::string_view name) {
  const QuantityRule* longest = nullptr;
  for (const auto& rule : rules) {
    const auto length = rule.name.size();
    const bool begins =
        same_word(name.substr(0, length), rule.name) && (name.size() == length || name[length] == '_');
    if (begins && (longest == nullptr || length > longest->name.size())) longest = &rule;
  }
  return longest;
}

/// Words after a quantity's name that name no unit of any kind, so another quantity or a remark: those that
/// end in a unit after another word, marks of quality, and longer phrases.
bool is_another_quantity(std::string_view rest) {
  constexpr std::array<std::string_view, 7> remarks{"flag",   "quality", "source",     "code",
                                                    "remark", "note",    "uncertainty"};
  if (std::any_of(remarks.begin(), remarks.end(), [&](auto word) { return same_word(word, rest); }))
    return true;
  for (const auto& rule : rules)
    for (const auto& unit : rule.units)
      if (in_small_letters(rest).ends_with("_" + in_small_letters(unit.suffix))) return true;
  constexpr std::array<std::string_view, 6> per{"s", "h", "min", "m2", "cm2", "ft2"};
  const auto last = rest.rfind('_');
  return last != std::string_view::npos && std::none_of(per.begin(), per.end(), [&](auto word) {
           return same_word(word, rest.substr(last + 1));
         });
}

// Not "-0", and no digits beyond what a limit in another unit needs.
double neat(double limit) {
  return std::round(limit * 100.0) / 100.0 + 0.0;
}

}  // namespace

std::span<const QuantityRule> quantity_rules() {
  return rules;
}

const QuantityRule& rule_of(Quantity quantity) {
  return *std::find_if(rules.begin(), rules.end(),
                       [&](const QuantityRule& rule) { return rule.quantity == quantity; });
}

std::optional<std::variant<NamedColumn, WrongUnit>> column_named(std::string_view name) {
  const auto* rule = rule_that_begins(name);
  if (rule == nullptr) return std::nullopt;
  const auto rest = name.substr(std::min(name.size(), rule->name.size() + 1));
  if (const auto* unit = unit_named(*rule, rest)) return NamedColumn{rule, unit};
  if (is_another_quantity(rest)) return std::nullopt;
  return WrongUnit{rule, std::string(rest)};
}

std::string joined_by_or(const std::vector<std::string>& words) {
  std::string text;
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (i > 0) text += i + 1 == words.size() ? " or " : ", ";
    text += words[i];
  }
  return text;
}

std::string permitted_names(const QuantityRule& rule) {
  std::vector<std::string> names;
  for (const auto& unit : rule.units) names.push_back(fmt::format("{}_{}", rule.name, unit.suffix));
  return joined_by_or(names);
}

std::string permitted_values(const QuantityRule& rule, const ColumnUnit& unit) {
  const auto text = fmt::format("{} to {}", neat(unit.from_base(rule.permitted.min)),
                                neat(unit.from_base(rule.permitted.max)));
  return unit.symbol.empty() ? text : fmt::format("{} {}", text, unit.symbol);
}

}  // namespace dewgap::tools::weather
