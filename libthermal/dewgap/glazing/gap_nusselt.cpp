#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include "dewgap/errors.hpp"
#include "dewgap/glazing/convection.hpp"
#include "dewgap/glazing/gap_nusselt_kernel.hpp"

namespace dewgap {
namespace glazing_kernel {
namespace {

constexpr double degree = std::numbers::pi / 180.0;

Curve larger(Curve a, Curve b) {
  return a.value >= b.value ? a : b;
}

Curve at_least_one(Curve a) {
  return a.value > 1.0 ? a : Curve{1.0, 0.0};
}

// factor Ra^exponent and its slope.
Curve power(double factor, double exponent, double rayleigh, double log_rayleigh) {
  const double value = factor * std::exp(exponent * log_rayleigh);
  return {value, exponent * value / rayleigh};
}

// 0 to 1 with level ends.
Curve smoothstep(double from, double to, double x) {
  const double u = std::clamp((x - from) / (to - from), 0.0, 1.0);
  return {u * u * (3.0 - 2.0 * u), 6.0 * u * (1.0 - u) / (to - from)};
}

// Wright 1996 / ISO 15099 vertical, Nu1: its three branches.
Curve wright_low(double ra, double log_ra) {
  const auto rise = power(1.7596678e-10, 2.2984755, ra, log_ra);
  return {1.0 + rise.value, rise.slope};
}
Curve wright_middle(double ra, double log_ra) {
  return power(0.028154, 0.4134, ra, log_ra);
}
Curve wright_high(double ra, double log_ra) {
  return power(0.0673838, 1.0 / 3.0, ra, log_ra);
}

// The branches jump down by 0.5 % at Ra 1e4 and up by 0.6 % at 5e4: blended over 1 % to either side (our
// convention).
constexpr double blend_half_width = 0.01;
constexpr double wright_jump_low = 1.0e4;
constexpr double wright_jump_high = 5.0e4;

bool inside_jump(double ra, double jump) {
  return std::abs(ra - jump) < blend_half_width * jump;
}

Curve blended(Curve below, Curve above, double ra, double jump) {
  const auto share = smoothstep((1.0 - blend_half_width) * jump, (1.0 + blend_half_width) * jump, ra);
  return {
      below.value + share.value * (above.value - below.value),
      below.slope + share.value * (above.slope - below.slope) + share.slope * (above.value - below.value)};
}

Curve wright(double ra, double log_ra) {
  if (inside_jump(ra, wright_jump_low)) {
    return blended(wright_low(ra, log_ra), wright_middle(ra, log_ra), ra, wright_jump_low);
  }
  if (inside_jump(ra, wright_jump_high)) {
    return blended(wright_middle(ra, log_ra), wright_high(ra, log_ra), ra, wright_jump_high);
  }
  if (ra <= wright_jump_low) {
    return wright_low(ra, log_ra);
  }
  return ra <= wright_jump_high ? wright_middle(ra, log_ra) : wright_high(ra, log_ra);
}

// ElSherbiny, Raithby and Hollands 1982, vertical, without the term of the aspect ratio.
Curve elsherbiny(double ra, double log_ra) {
  const auto fall = power(std::exp(1.36 * std::log(6310.0)), -1.36, ra, log_ra);
  const auto rise = power(0.104, 0.293, ra, log_ra);
  const double c = rise.value / (1.0 + fall.value);
  const double c_slope = (rise.slope - c * fall.slope) / (1.0 + fall.value);
  const double value = std::cbrt(1.0 + c * c * c);
  return larger({value, c * c * c_slope / (value * value)}, power(0.0605, 1.0 / 3.0, ra, log_ra));
}

}  // namespace

GapNusseltLaw::GapNusseltLaw(double aspect_ratio, double tilt_deg, GapCorrelation correlation)
    : correlation_(correlation), aspect_ratio_(aspect_ratio), tilt_deg_(tilt_deg) {
  if (correlation == GapCorrelation::en_673) {
    weigh_en_673(tilt_deg);
    return;
  }
  tall_factor_vertical_ = 0.242 * std::pow(aspect_ratio, -0.272);
  weigh_tilted(tilt_deg);
}

void GapNusseltLaw::weigh_tilted(double tilt_deg) {
  if (tilt_deg > 90.0) {
    // ISO 15099 5.3.3.5 (from memory): 1 + (Nu_90 - 1) sin tilt.
    weight_vertical_ = std::sin(tilt_deg * degree);
    weight_constant_ = 1.0 - weight_vertical_;
    return;
  }
  if (tilt_deg == 90.0) {
    return;
  }
  // ISO 15099 5.3.3.3 (from memory): linear between 60 and 90 degrees. At 60 degrees Hollands' curve gives
  // way to ElSherbiny's; the step is blended over the 5 degrees below (our convention).
  const double steep = std::max(0.0, (tilt_deg - 60.0) / 30.0);
  const double not_hollands = smoothstep(55.0, 60.0, tilt_deg).value;
  weight_vertical_ = steep;
  weight_sixty_ = not_hollands - steep;
  weight_inclined_ = 1.0 - not_hollands;
  factor_sixty_ = 0.104 + 0.175 / aspect_ratio_;
  cos_tilt_ = std::cos(tilt_deg * degree);
  sin_power_ = std::pow(std::max(0.0, std::sin(1.8 * tilt_deg * degree)), 1.6);
}

void GapNusseltLaw::weigh_en_673(double tilt_deg) {
  // EN 673 (from memory): linear between its three positions; heat flowing down as in ISO 15099.
  if (tilt_deg > 90.0) {
    weight_vertical_ = std::sin(tilt_deg * degree);
    weight_constant_ = 1.0 - weight_vertical_;
    return;
  }
  weight_vertical_ = std::max(0.0, (tilt_deg - 45.0) / 45.0);
  weight_inclined_ = std::max(0.0, (45.0 - tilt_deg) / 45.0);
  weight_sixty_ = 1.0 - weight_vertical_ - weight_inclined_;
}

Curve GapNusseltLaw::vertical(double ra, double log_ra) const {
  if (correlation_ == GapCorrelation::en_673) {
    return at_least_one(power(0.035, 0.38, ra, log_ra));  // EN 673, vertical
  }
  const auto first = correlation_ == GapCorrelation::wright ? wright(ra, log_ra) : elsherbiny(ra, log_ra);
  // Both: Nu2 = 0.242 (Ra/A)^0.272, and the larger of the two counts.
  return larger(first, power(tall_factor_vertical_, 0.272, ra, log_ra));
}

Curve GapNusseltLaw::sixty_degrees(double ra, double log_ra) const {
  if (correlation_ == GapCorrelation::en_673) {
    return at_least_one(power(0.10, 0.31, ra, log_ra));  // EN 673, 45 degrees
  }
  // ElSherbiny et al. 1982 at 60 degrees, ISO 15099 5.3.3.2 (from memory):
  // Nu1 = (1 + (0.0936 Ra^0.314 / (1 + G))^7)^(1/7), G = 0.5 / (1 + (Ra/3160)^20.6)^0.1.
  const double log_ratio = 20.6 * (log_ra - std::log(3160.0));
  const double inner = log_ratio > 600.0 ? 0.0 : 1.0 / (1.0 + std::exp(log_ratio));
  const double g = 0.5 * std::pow(inner, 0.1);
  const double g_slope = -0.1 * g * 20.6 * (1.0 - inner) / ra;
  const auto rise = power(0.0936, 0.314, ra, log_ra);
  const double c = rise.value / (1.0 + g);
  const double c_slope = (rise.slope - c * g_slope) / (1.0 + g);
  const double seventh = std::pow(c, 7.0);
  const double value = std::pow(1.0 + seventh, 1.0 / 7.0);
  const Curve first{value, value / (1.0 + seventh) * (c > 0.0 ? seventh / c : 0.0) * c_slope};
  return larger(first, power(factor_sixty_, 0.283, ra, log_ra));
}

Curve GapNusseltLaw::up_to_sixty_degrees(double ra) const {
  if (correlation_ == GapCorrelation::en_673) {
    return at_least_one(power(0.16, 0.28, ra, std::log(ra)));  // EN 673, horizontal, heat flowing up
  }
  // Hollands, Unny, Raithby and Konicek 1976, ISO 15099 5.3.3.1 (from memory):
  // Nu = 1 + 1.44 [1 - 1708/R]+ [1 - 1708 sin(1.8 tilt)^1.6 / R] + [(R/5830)^(1/3) - 1]+, R = Ra cos tilt.
  const double r = ra * cos_tilt_;
  Curve nu{1.0, 0.0};
  if (r > 1708.0) {
    const double onset = 1.0 - 1708.0 / r;
    const double shape = 1.0 - 1708.0 * sin_power_ / r;
    nu.value += 1.44 * onset * shape;
    nu.slope += 1.44 * 1708.0 / (r * r) * (shape + sin_power_ * onset) * cos_tilt_;
  }
  if (r > 5830.0) {
    const double root = std::cbrt(r / 5830.0);
    nu.value += root - 1.0;
    nu.slope += root / (3.0 * ra);
  }
  return nu;
}

ValidityFlags GapNusseltLaw::flags(double ra) const {
  // Ranges from memory: ElSherbiny A 5-110 and Ra to 2e7; Wright 1996 rests on the same cells, ISO 15099 to
  // Ra 1e6; Hollands Ra to 1e5, A from 20. EN 673 states none: ISO 15099's is used.
  ValidityFlags flags;
  const bool hollands = correlation_ != GapCorrelation::en_673 && weight_inclined_ > 0.0;
  const double max_ra = hollands ? 1.0e5 : (correlation_ == GapCorrelation::elsherbiny ? 2.0e7 : 1.0e6);
  if (ra > max_ra) {
    flags.raise(ValidityFlag::gap_rayleigh_number);
  }
  if (aspect_ratio_ < (hollands ? 20.0 : 5.0) || aspect_ratio_ > 110.0) {
    flags.raise(ValidityFlag::gap_aspect_ratio);
  }
  if (tilt_deg_ != 90.0) {
    flags.raise(ValidityFlag::tilt_untested);
  }
  return flags;
}

GapNusselt GapNusseltLaw::at(double ra) const {
  GapNusselt nu{1.0, 0.0, flags(ra)};
  // Below Ra 1e-3 every curve differs from 1 by less than 1e-14.
  if (!(ra > 1e-3)) {
    return nu;
  }
  const double log_ra = std::log(ra);
  nu.nusselt = weight_constant_;
  const auto add = [&nu](double weight, Curve part) {
    nu.nusselt += weight * part.value;
    nu.slope += weight * part.slope;
  };
  if (weight_vertical_ > 0.0) {
    const auto part = vertical(ra, log_ra);
    add(weight_vertical_, part);
    if (correlation_ == GapCorrelation::wright &&
        (inside_jump(ra, wright_jump_low) || inside_jump(ra, wright_jump_high))) {
      nu.flags.raise(ValidityFlag::gap_jump_blended);
    }
  }
  if (weight_sixty_ > 0.0) {
    add(weight_sixty_, sixty_degrees(ra, log_ra));
  }
  if (weight_inclined_ > 0.0) {
    add(weight_inclined_, up_to_sixty_degrees(ra));
  }
  return nu;
}

}  // namespace glazing_kernel

GapNusselt gap_nusselt(double rayleigh, double aspect_ratio, double tilt_deg, GapCorrelation correlation) {
  require_in_range(rayleigh, {0.0, 1.0e12}, "Rayleigh number", "");
  require_in_range(aspect_ratio, {0.2, 5000.0}, "aspect ratio of the gap", "");
  require_in_range(tilt_deg, {0.0, 180.0}, "tilt", "deg");
  return glazing_kernel::GapNusseltLaw(aspect_ratio, tilt_deg, correlation).at(rayleigh);
}

}  // namespace dewgap
