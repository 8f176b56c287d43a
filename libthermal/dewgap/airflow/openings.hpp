// Openings that air passes: joints, cracks, vent breaks and weep holes.
#pragma once

#include <vector>

namespace dewgap {

/// A straight slot: pressure difference = laminar Q + quadratic Q |Q|.
/// Laminar: plane Poiseuille, 12 mu depth / (length width^3); quadratic: loss_factor rho / (2 (length
/// width)^2). Leaves out the developing length of the flow (it adds to loss_factor in short, wide slots),
/// taper and roughness.
struct SlotShape {
  double width_m = 0.0004;   ///< the narrow side (tape thickness of a break), 1e-5 to 0.1
  double length_m = 1.0;     ///< along the joint, 1e-4 to 50
  double depth_m = 0.020;    ///< in the direction of flow, 1e-4 to 0.5
  double loss_factor = 1.5;  ///< entry 0.5 and exit 1; +1 a right-angled bend (handbook, from memory)
};

/// Dry air at 5 C and 101325 Pa: that in an old joint on a cold day. Sutherland's viscosity, ideal-gas
/// density.
inline constexpr double joint_air_density_kg_m3 = 1.27;
inline constexpr double joint_air_viscosity_Pa_s = 1.74e-5;

/// One opening as the network sees it: dp = laminar_Pa_s_m3 Q + quadratic_Pa_s2_m6 Q |Q|. Both 0 means shut.
/// Neither may be negative.
struct FlowResistance {
  double laminar_Pa_s_m3 = 0.0;
  double quadratic_Pa_s2_m6 = 0.0;
  bool shut() const { return laminar_Pa_s_m3 <= 0.0 && quadratic_Pa_s2_m6 <= 0.0; }
};

/// The resistance of a slot. Density 0.5 to 2 kg/m3, viscosity 1e-6 to 1e-4 Pa s. A 20 mm deep joint passes
/// 0.00086, 0.0551, 0.372 and 3.16 m3/(h m) at 1 Pa when it is 0.1, 0.4, 0.76 and 1.7 mm wide.
FlowResistance slot_resistance(const SlotShape& slot, double air_density_kg_m3 = joint_air_density_kg_m3,
                               double air_viscosity_Pa_s = joint_air_viscosity_Pa_s);

/// A round or square hole in thin material, 1e-8 to 1 m2, discharge coefficient 0.3 to 1.
/// Laminar: creeping flow through a round hole of the same area, 3 mu / radius^3 (Sampson, Phil. Trans. R.
/// Soc. A 182 (1891) 449, from memory), which keeps the slope at zero finite; quadratic: rho / (2 (Cd A)^2).
/// Their sum is an interpolation between the two limits: at a Reynolds number of 100 (a 20 mm break) it
/// passes as much as a coefficient of 0.563, so 0.6 is an upper bound.
FlowResistance orifice_resistance(double area_m2, double discharge_coefficient = 0.6,
                                  double air_density_kg_m3 = joint_air_density_kg_m3,
                                  double air_viscosity_Pa_s = joint_air_viscosity_Pa_s);

/// Weep: `count` (1 to 1000) equal round holes, 0.5 to 100 mm wide, bored through `depth_m` (0 to 0.5 m) of a
/// rail. Laminar: Sampson's thin hole and Hagen-Poiseuille friction, 8 mu depth / (pi radius^4), added, which
/// is within 1 % of creeping flow through a bore of any length (Dagan, Weinbaum and Pfeffer, J. Fluid Mech.
/// 115 (1982) 505, from memory); quadratic: that of orifice_resistance. A bore longer than two diameters
/// passes up to a third more at high Reynolds numbers (coefficient 0.8 rather than 0.6). Leaves out: water
/// that stands in the bore, insect mesh.
FlowResistance weep_resistance(double diameter_m, double depth_m, int count,
                               double air_density_kg_m3 = joint_air_density_kg_m3,
                               double air_viscosity_Pa_s = joint_air_viscosity_Pa_s);

/// A measured or tabulated joint: Q = coefficient length (dp / 1 Pa)^exponent, refitted to laminar +
/// quadratic so that flow is exact at 1 Pa and at 10 Pa. coefficient_m3_h_m is at 1 Pa per metre, 0 to 1000;
/// exponent 0.5 to 1; length 0 to 100 m; no coefficient or no length is shut. With exponent 2/3 the refit
/// stays within 5 % of the power law from 1 to 10 Pa, passes a third less at 0.1 Pa (a power law's slope at
/// zero is infinite, a joint's is not) and 22 % less at 100 Pa.
FlowResistance joint_resistance(double coefficient_m3_h_m, double exponent, double length_m);

/// Flow through the opening at a pressure difference, m3/s, odd and strictly increasing in it; 0 when shut.
double flow_m3_s(const FlowResistance& opening, double difference_Pa);

/// Joint leakage with its range, from airflow/joint_leakage.csv. Published figures (9.81 Pa) are brought to 1
/// Pa by their own exponent. Low and high are the ends of what is plausible, not of what was measured.
struct JointLeakage {
  const char* name;   ///< name and source live as long as the program
  double low_m3_h_m;  ///< at 1 Pa per metre of joint
  double best_m3_h_m;
  double high_m3_h_m;
  double exponent;
  const char* source;
};
enum class JointState { worn, ordinary, repaired, weather_stripped, painted_shut, putty_line };
JointLeakage joint_leakage(JointState state);

/// What slides into the joint, as a slot width, m: paper 0.1 mm, paper folded twice 0.4, bank card 0.76
/// (ISO/IEC 7810), coin 1.7. The flow at 1 Pa of a 20 mm deep joint follows from slot_resistance.
enum class Feeler { nothing, paper, folded_paper, bank_card, coin };
double feeler_width_m(Feeler feeler);

}  // namespace dewgap
