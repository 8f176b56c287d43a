// The one exception family of the library, and the checks that raise it.
#pragma once

#include <stdexcept>
#include <string>
#include <string_view>

namespace dewgap {

/// Permitted range of an input, both ends included.
struct PermittedRange {
  double min;
  double max;
};

/// Invalid input. The message gives the field, the value, the permitted range and the unit.
class InvalidInput : public std::invalid_argument {
 public:
  /// A number outside its permitted range; NaN and infinities are always outside.
  InvalidInput(std::string_view field, double value, PermittedRange permitted, std::string_view unit);
  /// A combination that makes no sense, told in words.
  InvalidInput(std::string_view field, std::string_view why);

  const std::string& field() const noexcept { return field_; }

 private:
  std::string field_;
};

/// A use case could not be computed from valid input, because an inner calculation did not converge.
class CalculationFailed : public std::runtime_error {
 public:
  explicit CalculationFailed(std::string_view why) : std::runtime_error(std::string(why)) {}
};

/// Throws InvalidInput unless permitted.min <= value <= permitted.max; NaN throws.
inline void require_in_range(double value, PermittedRange permitted, std::string_view field,
                             std::string_view unit) {
  const bool inside = value >= permitted.min && value <= permitted.max;  // false for NaN
  if (!inside) [[unlikely]] {
    throw InvalidInput(field, value, permitted, unit);
  }
}

}  // namespace dewgap
