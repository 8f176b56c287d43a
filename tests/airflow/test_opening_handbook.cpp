// Openings against handbooks: orifice, power law, friction between walls and in a bore; and the weep made of
// them.
#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <numbers>

#include "dewgap/airflow/openings.hpp"
#include "dewgap/errors.hpp"
#include "support/not_a_number.hpp"
#include "support/reference.hpp"

namespace dewgap {
namespace {

constexpr double pi = std::numbers::pi;
constexpr double viscosity_Pa_s = 1.8e-5;

TEST(OpeningHandbook, Orifice) {
  const auto orifice_flow = [](const test::ReferenceRow& row) {
    const auto hole =
        orifice_resistance(row.number("area_m2"), row.number("coefficient"), row.number("density_kg_m3"));
    return flow_m3_s(hole, row.number("pressure_Pa"));
  };
  const double laminar_term = 1e-4;  // of a known difference of 0.0775 m3/s
  test::check_reference("opening_flow/orifice.csv", orifice_flow, laminar_term);
}

TEST(OpeningHandbook, PowerLaw) {
  test::check_reference("opening_flow/power_law.csv", [](const test::ReferenceRow& row) {
    const double m3_h_m = 3.6 * row.number("coefficient_L_sm");
    const auto joint = joint_resistance(m3_h_m, row.number("exponent"), 1.0);
    return 1000.0 * flow_m3_s(joint, row.number("pressure_Pa"));
  });
}

TEST(OpeningHandbook, PlanePoiseuille) {
  test::check_reference("opening_flow/plane_poiseuille.csv", [](const test::ReferenceRow& row) {
    const SlotShape slot{.width_m = 1e-3 * row.number("width_mm"),
                         .length_m = row.number("length_m"),
                         .depth_m = 1e-3 * row.number("depth_mm"),
                         .loss_factor = 0.0};
    return flow_m3_s(slot_resistance(slot, 1.2, viscosity_Pa_s), row.number("pressure_Pa"));
  });
}

// f Re = 2 dp diameter^2 / (depth mu velocity), by hydraulic diameter.
double friction_times_reynolds(double laminar_Pa_s_m3, double area_m2, double diameter_m, double depth_m) {
  return 2.0 * laminar_Pa_s_m3 * area_m2 * diameter_m * diameter_m / (depth_m * viscosity_Pa_s);
}

TEST(OpeningHandbook, FrictionFactor) {
  test::check_reference("opening_flow/friction_factor.csv", [](const test::ReferenceRow& row) {
    if (row.text("shape") == "round_bore") {
      const auto weep = weep_resistance(5e-4, 0.5, 1, 1.2, viscosity_Pa_s);
      return friction_times_reynolds(weep.laminar_Pa_s_m3, pi * 5e-4 * 5e-4 / 4.0, 5e-4, 0.5);
    }
    const auto slot =
        slot_resistance({.width_m = 1e-3, .length_m = 2.0, .depth_m = 0.1}, 1.2, viscosity_Pa_s);
    return friction_times_reynolds(slot.laminar_Pa_s_m3, 1e-3 * 2.0, 2e-3, 0.1);
  });
}

TEST(Weep, WithoutDepthIsTheOrifice) {
  const auto weep = weep_resistance(0.006, 0.0, 1);
  const auto hole = orifice_resistance(pi * 0.003 * 0.003);
  EXPECT_DOUBLE_EQ(weep.laminar_Pa_s_m3, hole.laminar_Pa_s_m3);
  EXPECT_DOUBLE_EQ(weep.quadratic_Pa_s2_m6, hole.quadratic_Pa_s2_m6);
}

TEST(Weep, EqualHolesPassAsManyTimesTheFlow) {
  const auto one = weep_resistance(0.006, 0.05, 1);
  const auto three = weep_resistance(0.006, 0.05, 3);
  for (const double dp : {0.01, 1.0, 20.0}) {
    EXPECT_NEAR(flow_m3_s(three, dp) / flow_m3_s(one, dp), 3.0, 1e-13);
  }
}

TEST(Weep, DeeperPassesLessAndWiderMore) {
  double before = std::numeric_limits<double>::infinity();
  for (double depth = 0.0; depth <= 0.5; depth += 0.05) {
    const double flow = flow_m3_s(weep_resistance(0.004, depth, 2), 2.0);
    EXPECT_LT(flow, before);
    before = flow;
  }
  EXPECT_GT(flow_m3_s(weep_resistance(0.008, 0.05, 1), 2.0),
            4.0 * flow_m3_s(weep_resistance(0.004, 0.05, 1), 2.0));
}

TEST(Weep, RefusesWhatIsOutsideItsRange) {
  EXPECT_THROW(weep_resistance(0.0, 0.05, 1), InvalidInput);
  EXPECT_THROW(weep_resistance(test::not_a_number, 0.05, 1), InvalidInput);
  EXPECT_THROW(weep_resistance(0.2, 0.05, 1), InvalidInput);
  EXPECT_THROW(weep_resistance(0.006, -0.01, 1), InvalidInput);
  EXPECT_THROW(weep_resistance(0.006, 0.6, 1), InvalidInput);
  EXPECT_THROW(weep_resistance(0.006, 0.05, 0), InvalidInput);
  EXPECT_THROW(weep_resistance(0.006, 0.05, 1, 0.1), InvalidInput);
  EXPECT_THROW(weep_resistance(0.006, 0.05, 1, 1.2, test::not_a_number), InvalidInput);
}

}  // namespace
}  // namespace dewgap
