#include "dewgap/errors.hpp"

#include <array>
#include <charconv>

namespace dewgap {
namespace {

// Shortest text that reads back as the same number, whatever the locale.
std::string number_text(double value) {
  std::array<char, 32> buffer{};
  const auto end = std::to_chars(buffer.data(), buffer.data() + buffer.size(), value).ptr;
  return {buffer.data(), end};
}

std::string range_message(std::string_view field, double value, PermittedRange permitted,
                          std::string_view unit) {
  std::string text{field};
  text += " is " + number_text(value) + "; permitted is " + number_text(permitted.min) + " to " +
          number_text(permitted.max);
  if (!unit.empty()) {
    text += " ";
    text += unit;
  }
  return text;
}

}  // namespace

InvalidInput::InvalidInput(std::string_view field, double value, PermittedRange permitted,
                           std::string_view unit)
    : std::invalid_argument(range_message(field, value, permitted, unit)), field_(field) {}

InvalidInput::InvalidInput(std::string_view field, std::string_view why)
    : std::invalid_argument(std::string(field) + ": " + std::string(why)), field_(field) {}

}  // namespace dewgap
