#include "dewgap/dwelling/facade_wind.hpp"

#include <cmath>
#include <numbers>

#include "dewgap/errors.hpp"
#include "dewgap/numerics/sampling.hpp"
#include "dewgap/numerics/split_mix.hpp"

namespace dewgap {
namespace {

constexpr PermittedRange coefficient_range{-1.5, 1.2};
constexpr PermittedRange compass_range_deg{0.0, 360.0};
constexpr PermittedRange half_circle_deg{0.0, 180.0};

/// The angle without its sign, once round the circle taken off as often as needed: 0 to 180.
double folded_deg(double angle_deg) {
  const double within = std::fmod(std::abs(angle_deg), 360.0);
  return within > 180.0 ? 360.0 - within : within;
}

}  // namespace

double facade_pressure_coefficient(const PressureCoefficients& coefficients, double angle_from_normal_deg) {
  require_in_range(coefficients.windward, coefficient_range, "windward", "");
  require_in_range(coefficients.leeward, coefficient_range, "leeward", "");
  require_in_range(coefficients.side, coefficient_range, "side", "");
  require_in_range(angle_from_normal_deg, {-360.0, 360.0}, "angle_from_normal_deg", "degrees");
  const double cosine = std::cos(folded_deg(angle_from_normal_deg) * std::numbers::pi / 180.0);
  // C = side + b cos + 2 c cos^2 (cos(2 angle) = 2 cos^2 - 1), windward at cos = 1, leeward at -1.
  const double odd = 0.5 * (coefficients.windward - coefficients.leeward);
  const double even = 0.5 * (coefficients.windward + coefficients.leeward) - coefficients.side;
  return coefficients.side + cosine * (odd + even * cosine);
}

double angle_from_normal_deg(double wind_from_compass_deg, double facing_compass_deg) {
  require_in_range(wind_from_compass_deg, compass_range_deg, "wind_from_compass_deg", "degrees");
  require_in_range(facing_compass_deg, compass_range_deg, "facing_compass_deg", "degrees");
  return folded_deg(wind_from_compass_deg - facing_compass_deg);
}

double modelled_wind_angle_deg(double prevailing_angle_deg, std::size_t day, std::uint64_t seed) {
  require_in_range(prevailing_angle_deg, half_circle_deg, "prevailing_angle_deg", "degrees");
  // A stream of its own for each day, so that days can be asked for in any order.
  numerics::SplitMix64 stream(numerics::SplitMix64(seed).next() + day);
  const double deviate = numerics::normal_quantile(stream.inside_unit_interval());
  return folded_deg(prevailing_angle_deg + modelled_wind_spread_deg * deviate);
}

}  // namespace dewgap
