// Openings that air passes: joints, cracks, vent breaks and weep holes.
#pragma once

#include <vector>

namespace dewgap {

/// A straight slot: pressure difference = laminar Q + quadratic Q |Q|.
/// Laminar: plane Poiseuille, 12 mu depth / (length width^3); quadratic: loss_factor rho / (2 (length width)^2).
struct SlotShape {
  double width_m = 0.0004;   ///< the narrow side (tape thickness of a break), 1e-5 to 0.1
  double length_m = 1.0;     ///< along the joint, 1e-4 to 50
  double depth_m = 0.020;    ///< in the direction of flow, 1e-4 to 0.5
  double loss_factor = 1.5;  ///< entry 0.5 and exit 1; +1 a right-angled bend (handbook, from memory)
};

/// One opening as the network sees it: dp = laminar_Pa_s_m3 Q + quadratic_Pa_s2_m6 Q |Q|. Both 0 means shut.
struct FlowResistance {
  double laminar_Pa_s_m3 = 0.0;
  double quadratic_Pa_s2_m6 = 0.0;
  bool shut() const { return laminar_Pa_s_m3 <= 0.0 && quadratic_Pa_s2_m6 <= 0.0; }
};

FlowResistance slot_resistance(const SlotShape& slot, double air_density_kg_m3 = 1.2,
                               double air_viscosity_Pa_s = 1.8e-5);

/// A round or square hole in thin material: laminar entry term (Re about 100 in a 20 mm break, so 0.6 is an upper
/// bound and the slope at zero stays finite) and quadratic rho / (2 (Cd A)^2).
FlowResistance orifice_resistance(double area_m2, double discharge_coefficient = 0.6, double air_density_kg_m3 = 1.2,
                                  double air_viscosity_Pa_s = 1.8e-5);

/// A measured or tabulated joint: Q = coefficient length (dp / 1 Pa)^exponent, refitted to laminar + quadratic so that
/// flow is exact at 1 Pa and at 10 Pa. coefficient_m3_h_m is at 1 Pa per metre, exponent 0.5 to 1.
FlowResistance joint_resistance(double coefficient_m3_h_m, double exponent, double length_m);

/// Flow through the opening at a pressure difference, m3/s, odd and strictly increasing in it.
double flow_m3_s(const FlowResistance& opening, double difference_Pa);

/// Published joint leakage, from airflow/joint_leakage.csv.
struct JointLeakage {
  const char* name;
  double low_m3_h_m;   ///< at 1 Pa per metre of joint
  double best_m3_h_m;
  double high_m3_h_m;
  double exponent;
  const char* source;
};
enum class JointState { worn, ordinary, repaired, weather_stripped, painted_shut, putty_line };
JointLeakage joint_leakage(JointState state);

/// What slides into the joint, as a slot width, m: paper 0.1 mm, paper folded twice 0.4, bank card 0.76 (ISO/IEC
/// 7810), coin 1.7. The flow at 1 Pa of a 20 mm deep joint follows from slot_resistance.
enum class Feeler { nothing, paper, folded_paper, bank_card, coin };
double feeler_width_m(Feeler feeler);

}  // namespace dewgap
