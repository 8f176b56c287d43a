// The Nusselt number of one gap, prepared for many Rayleigh numbers. Private to glazing.
#pragma once

#include "dewgap/glazing/convection.hpp"

namespace dewgap::glazing_kernel {

/// Standards print g as 9.81 (EN 673, ISO 15099; from memory).
inline constexpr double gravity_m_s2 = 9.81;

/// A value and its slope over the Rayleigh number.
struct Curve {
  double value = 0.0;
  double slope = 0.0;
};

/// Correlation with everything that does not depend on the Rayleigh number worked out once.
class GapNusseltLaw {
 public:
  GapNusseltLaw() = default;
  GapNusseltLaw(double aspect_ratio, double tilt_deg, GapCorrelation correlation);

  /// rayleigh >= 0.
  GapNusselt at(double rayleigh) const;

 private:
  void weigh_tilted(double tilt_deg);
  void weigh_en_673(double tilt_deg);
  Curve vertical(double rayleigh, double log_rayleigh) const;
  Curve sixty_degrees(double rayleigh, double log_rayleigh) const;
  Curve up_to_sixty_degrees(double rayleigh) const;
  ValidityFlags flags(double rayleigh) const;

  GapCorrelation correlation_ = GapCorrelation::wright;
  double aspect_ratio_ = 40.0;
  double tilt_deg_ = 90.0;
  // Nu = constant + vertical Nu_90 + sixty Nu_60 + inclined Nu_Hollands; for EN 673 the weights of its three
  // positions.
  double weight_constant_ = 0.0;
  double weight_vertical_ = 1.0;
  double weight_sixty_ = 0.0;
  double weight_inclined_ = 0.0;
  double tall_factor_vertical_ = 0.0;  // 0.242 A^-0.272
  double factor_sixty_ = 0.0;          // 0.104 + 0.175/A
  double cos_tilt_ = 0.0;
  double sin_power_ = 0.0;  // sin(1.8 tilt)^1.6
};

}  // namespace dewgap::glazing_kernel
