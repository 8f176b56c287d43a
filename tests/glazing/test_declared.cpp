// The declared U-value against handbook tables and against EN 673 worked by hand.
#include "dewgap/glazing/declared.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>

#include "dewgap/errors.hpp"
#include "dewgap/glazing/emissivity.hpp"
#include "support/not_a_number.hpp"
#include "support/reference.hpp"

namespace dewgap {
namespace {

using test::check_reference;
using test::ReferenceRow;

DeclaredGlazing double_glazing(double gap_mm, double emissivity_normal, GasMixture gas) {
  DeclaredGlazing glazing;
  glazing.panes.resize(2);
  glazing.gaps.resize(1);
  glazing.gaps[0].width_m = gap_mm / 1000.0;
  glazing.gaps[0].gas = gas;
  glazing.gaps[0].emissivity_outer = uncoated_glass_emissivity;
  glazing.gaps[0].emissivity_inner =
      emissivity_normal == 0.89 ? uncoated_glass_emissivity : corrected_emissivity(emissivity_normal);
  return glazing;
}

TEST(Declared, CibseGuideATableA323) {
  check_reference(
      "cibse_guide_a_2006/table_a3_23.csv",
      [](const ReferenceRow& row) {
        DeclaredGlazing glazing;
        if (row.number("panes") == 2.0) {
          const double argon = row.number("argon_fraction");
          glazing = double_glazing(row.number("gap_mm"), row.number("emissivity_normal"),
                                   {1.0 - argon, argon, 0.0});
        }
        const auto declared = declared_u_value(glazing);
        EXPECT_EQ(declared.status, SolveStatus::converged);
        return u_value_with_resistances_W_m2K(declared, 0.13, 0.04);
      },
      0.00915);
}

TEST(Declared, Iso100771TableC2) {
  check_reference("iso_10077_1_2006/table_c2.csv", [](const ReferenceRow& row) {
    const double fill = row.number("gas_fraction");
    GasMixture gas;
    gas.air = row.text("gas") == "air" ? fill : 1.0 - fill;
    gas.argon = row.text("gas") == "argon" ? fill : 0.0;
    gas.krypton = row.text("gas") == "krypton" ? fill : 0.0;
    const auto declared =
        declared_u_value(double_glazing(row.number("gap_mm"), row.number("emissivity_normal"), gas));
    return u_value_with_resistances_W_m2K(declared, 0.13, 0.04);  // ISO 10077-1 Annex A, from memory
  });
}

TEST(Declared, SinglePaneByHand) {
  const auto declared = declared_u_value({});
  EXPECT_EQ(declared.status, SolveStatus::converged);
  EXPECT_TRUE(declared.gap_conductance_W_m2K.empty());
  EXPECT_NEAR(declared.resistance_without_films_m2K_W, 0.004, 1e-15);
  EXPECT_NEAR(declared.u_value_W_m2K, 1.0 / (1.0 / 25.0 + 0.004 + 1.0 / 7.7), 1e-12);
}

// EN 673 as the standard tells to work it: gap conductances from guessed differences, the 15 K shared anew in
// proportion to the resistances, until it settles.
std::vector<double> conductances_by_iteration(const DeclaredGlazing& glazing) {
  std::vector<double> difference_K(glazing.gaps.size(), 15.0 / static_cast<double>(glazing.gaps.size()));
  std::vector<double> conductance(glazing.gaps.size());
  for (int round = 0; round < 200; ++round) {
    double sum = 0.0;
    for (std::size_t i = 0; i < glazing.gaps.size(); ++i) {
      const auto& gap = glazing.gaps[i];
      const auto gas = gas_properties_en_673(gap.gas, 10.0);
      const double grashof = 9.81 * std::pow(gap.width_m, 3) * difference_K[i] *
                             std::pow(gas.density_kg_m3, 2) / (283.0 * std::pow(gas.viscosity_Pa_s, 2));
      const double prandtl = gas.viscosity_Pa_s * gas.specific_heat_J_kgK / gas.conductivity_W_mK;
      const double nusselt = std::max(1.0, 0.035 * std::pow(grashof * prandtl, 0.38));
      conductance[i] = nusselt * gas.conductivity_W_mK / gap.width_m +
                       radiation_conductance_W_m2K(gap.emissivity_outer, gap.emissivity_inner, 283.0);
      sum += 1.0 / conductance[i];
    }
    for (std::size_t i = 0; i < glazing.gaps.size(); ++i) {
      difference_K[i] = 15.0 / (conductance[i] * sum);
    }
  }
  return conductance;
}

TEST(Declared, SharesTheDifferenceAsTheStandardsOwnIterationDoes) {
  DeclaredGlazing glazing;
  glazing.panes.resize(4);
  glazing.panes[1].conductivity_W_mK = 0.19;
  glazing.gaps = {{0.012, {0.1, 0.9, 0.0}, 0.837, 0.05}, {0.020, {}, 0.837, 0.837}, {0.080, {}, 0.2, 0.837}};
  const auto declared = declared_u_value(glazing);
  ASSERT_EQ(declared.status, SolveStatus::converged);
  EXPECT_LE(declared.residual_K, 1e-10);
  const auto by_hand = conductances_by_iteration(glazing);
  double resistance = 0.012 / 1.0 + 0.004 / 0.19;
  for (std::size_t i = 0; i < by_hand.size(); ++i) {
    EXPECT_NEAR(declared.gap_conductance_W_m2K[i], by_hand[i], 1e-9);
    resistance += 1.0 / by_hand[i];
  }
  EXPECT_NEAR(declared.resistance_without_films_m2K_W, resistance, 1e-10);
}

TEST(Declared, FallsAsEmissivityFalls) {
  for (const double gap_mm : {4.0, 12.0, 16.0, 50.0, 150.0}) {
    double before = std::numeric_limits<double>::infinity();
    for (double e = 0.89; e >= 0.03; e -= 0.01) {
      const double u = declared_u_value(double_glazing(gap_mm, e, {})).u_value_W_m2K;
      EXPECT_LT(u, before) << "gap " << gap_mm << " mm, emissivity " << e;
      before = u;
    }
  }
}

TEST(Declared, LosesMoreUpwards) {
  auto glazing = double_glazing(16.0, 0.89, {});
  const double vertical = declared_u_value(glazing).u_value_W_m2K;
  glazing.position = DeclaredPosition::inclined_45;
  const double inclined = declared_u_value(glazing).u_value_W_m2K;
  glazing.position = DeclaredPosition::horizontal;
  const double horizontal = declared_u_value(glazing).u_value_W_m2K;
  EXPECT_LT(vertical, inclined);
  EXPECT_LT(inclined, horizontal);
}

TEST(Declared, RejectsInvalidInput) {
  const auto refused = [](auto change) {
    auto glazing = double_glazing(16.0, 0.89, {});
    change(glazing);
    EXPECT_THROW(declared_u_value(glazing), InvalidInput);
  };
  for (const double bad : {test::not_a_number, -1.0, 1000.0}) {
    refused([bad](DeclaredGlazing& g) { g.panes[1].thickness_m = bad; });
    refused([bad](DeclaredGlazing& g) { g.panes[0].conductivity_W_mK = bad; });
    refused([bad](DeclaredGlazing& g) { g.gaps[0].width_m = bad; });
    refused([bad](DeclaredGlazing& g) { g.gaps[0].emissivity_outer = bad; });
    refused([bad](DeclaredGlazing& g) { g.gaps[0].emissivity_inner = bad; });
    refused([bad](DeclaredGlazing& g) { g.gaps[0].gas.air = bad; });
    refused([bad](DeclaredGlazing& g) { g.gaps[0].gas.argon = bad; });
    refused([bad](DeclaredGlazing& g) { g.gaps[0].gas.krypton = bad; });
    refused([bad](DeclaredGlazing& g) { g.outdoor_film_W_m2K = bad; });
    refused([bad](DeclaredGlazing& g) { g.room_emissivity = bad; });
    EXPECT_THROW(u_value_with_resistances_W_m2K(declared_u_value({}), bad, 0.04), InvalidInput);
    EXPECT_THROW(u_value_with_resistances_W_m2K(declared_u_value({}), 0.13, bad), InvalidInput);
  }
  refused([](DeclaredGlazing& g) { g.gaps.clear(); });
  refused([](DeclaredGlazing& g) { g.panes.clear(); });
  refused([](DeclaredGlazing& g) { g.panes.resize(6), g.gaps.resize(5); });
  EXPECT_THROW(u_value_with_resistances_W_m2K(DeclaredUValue{}, 0.13, 0.04), InvalidInput);
}

TEST(Emissivity, En12898Correction) {
  check_reference("en_12898/emissivity_correction.csv", [](const ReferenceRow& row) {
    return corrected_emissivity(row.number("emissivity_normal"));
  });
}

TEST(Emissivity, RisesWithoutJumpsAndMeetsPlainGlass) {
  double before = corrected_emissivity(0.03);
  for (double e = 0.031; e <= 0.89; e += 0.001) {
    const double now = corrected_emissivity(e);
    EXPECT_GT(now, before);
    EXPECT_LT(now - before, 0.0015);
    before = now;
  }
  EXPECT_NEAR(corrected_emissivity(0.89), uncoated_glass_emissivity, 0.0005);
}

TEST(Emissivity, RadiationConductanceByHand) {
  EXPECT_NEAR(radiation_conductance_W_m2K(1.0, 1.0, 283.15), 4.0 * 5.67e-8 * std::pow(283.15, 3), 1e-12);
  EXPECT_DOUBLE_EQ(radiation_conductance_W_m2K(0.2, 0.8, 290.0),
                   radiation_conductance_W_m2K(0.8, 0.2, 290.0));
}

TEST(Emissivity, RejectsInvalidInput) {
  for (const double bad : {std::numeric_limits<double>::quiet_NaN(), 0.0, 1.5}) {
    EXPECT_THROW(corrected_emissivity(bad), InvalidInput);
    EXPECT_THROW(radiation_conductance_W_m2K(bad, 0.5, 283.15), InvalidInput);
    EXPECT_THROW(radiation_conductance_W_m2K(0.5, bad, 283.15), InvalidInput);
    EXPECT_THROW(radiation_conductance_W_m2K(0.5, 0.5, bad), InvalidInput);
  }
}

}  // namespace
}  // namespace dewgap
