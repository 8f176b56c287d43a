// The report's pictures, drawn from its document: lines, hatches and shades that hold in black and white.
#pragma once

#include <nlohmann/json.hpp>
#include <string>

namespace dewgap::tools {

/// Each takes a part of the document as report_document.hpp has it, and an id that is unique in the page.
/// Fluid SVG, about 90 units wide.

/// A cut through the window: temperature as an unbroken line, dew points dashed. `scale` has every
/// temperature of the pictures that are held beside each other.
struct TemperatureScale {
  double low_C = 0.0;
  double high_C = 0.0;
};
TemperatureScale scale_of(const nlohmann::ordered_json& condition);
std::string chart_section(const nlohmann::ordered_json& state, TemperatureScale scale, const std::string& id);

/// Misty mornings by month, of the middle and of a wetter case.
std::string chart_months(const nlohmann::ordered_json& year, const std::string& id);
/// Day by hour of one case, wet and frosty hours filled.
std::string chart_hours(const nlohmann::ordered_json& one_case, const std::string& id,
                        const std::string& name);
/// Each way to make the tape, with the share of plausible cases that stay dry, mist, run or do damage.
std::string chart_vents(const nlohmann::ordered_json& answer, const std::string& id);
/// Frame moisture through the year, without and with the sheet, with the caution line.
std::string chart_timber(const nlohmann::ordered_json& moisture, const std::string& id);
/// Section through the bottom rail, to scale.
std::string chart_rail(const nlohmann::ordered_json& window, const std::string& id);

/// "J", "F", ...: of a month from 1.
std::string_view month_letter(int month);
std::string_view month_name(int month);

}  // namespace dewgap::tools
