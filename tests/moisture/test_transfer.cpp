#include "dewgap/moisture/transfer.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "dewgap/air/constants.hpp"
#include "dewgap/air/humid_air.hpp"
#include "dewgap/errors.hpp"
#include "support/not_a_number.hpp"
#include "support/reference.hpp"

namespace dewgap {
namespace {

double gas_law(double temperature_C) {
  return constants::gas_constant_water_J_kgK * constants::kelvin(temperature_C);
}

TEST(Transfer, PermeabilityOfStillAir) {
  test::check_reference("vapour_transfer/permeability.csv", [](const test::ReferenceRow& row) {
    const double temperature_C = row.number("temperature_C");
    const double permeability = vapour_permeability_air_kg_msPa(temperature_C);
    return row.text("quantity") == "diffusivity" ? permeability * gas_law(temperature_C) : permeability;
  });
}

TEST(Transfer, LewisRelationMeetsTheShortcut) {
  test::check_reference("vapour_transfer/shortcut.csv", [](const test::ReferenceRow& row) {
    const double temperature_C = row.number("temperature_C");
    const double heat_capacity =
        volumetric_heat_capacity_J_m3K(temperature_C, vapour_pressure_Pa(temperature_C, 0.5));
    return mass_transfer_m_s(row.number("convection_W_m2K"), heat_capacity) / gas_law(temperature_C);
  });
}

TEST(Transfer, RoundedPermeabilityStaysWithinItsStatedDistanceFromSchirmer) {
  for (double t = -20.0; t <= 40.0; t += 5.0) {
    const double schirmer = 2.306e-5 * std::pow(constants::kelvin(t) / 273.15, 1.81) / gas_law(t);
    EXPECT_NEAR(vapour_permeability_air_kg_msPa(t) / schirmer, 1.015, 0.001) << t;
  }
}

TEST(Transfer, LewisNumberOneIsPlainReynoldsAnalogy) {
  EXPECT_DOUBLE_EQ(mass_transfer_m_s(3.0, 1200.0, 1.0), 3.0 / 1200.0);
  EXPECT_DOUBLE_EQ(mass_transfer_m_s(6.0, 1200.0), 2.0 * mass_transfer_m_s(3.0, 1200.0));
  EXPECT_GT(mass_transfer_m_s(3.0, 1200.0, 0.84), mass_transfer_m_s(3.0, 1200.0, 0.87));
  EXPECT_EQ(mass_transfer_m_s(0.0, 1200.0), 0.0);
}

TEST(Transfer, ConductancesScaleWithTheirGeometry) {
  const double delta = vapour_permeability_air_kg_msPa(10.0);
  EXPECT_DOUBLE_EQ(sheet_vapour_conductance_kg_sPa(1.2, 0.004, 5e3, 10.0), delta * 1.2 / (5e3 * 0.004));
  EXPECT_DOUBLE_EQ(tape_vapour_conductance_kg_sPa(4.4, 0.001, 0.012, 2e3, 10.0),
                   delta * 4.4 * 0.001 / (2e3 * 0.012));
  EXPECT_DOUBLE_EQ(opening_vapour_conductance_kg_sPa(2e-5, 0.012, 10.0), delta * 2e-5 / 0.012);
  EXPECT_DOUBLE_EQ(vapour_permeability_air_kg_msPa(10.0, 101325.0 / 2.0), 2.0 * delta);
  EXPECT_EQ(sheet_vapour_conductance_kg_sPa(0.0, 0.004, 5e3, 10.0), 0.0);
  // A tape as wide as it is thick, of still air, is an opening of its own area.
  EXPECT_DOUBLE_EQ(tape_vapour_conductance_kg_sPa(1.0, 0.01, 0.01, 1.0, 10.0),
                   opening_vapour_conductance_kg_sPa(0.01, 0.01, 10.0));
}

TEST(Transfer, RefusesWhatIsOutsideItsRange) {
  EXPECT_THROW(mass_transfer_m_s(-1.0, 1200.0), InvalidInput);
  EXPECT_THROW(mass_transfer_m_s(3.0, test::not_a_number), InvalidInput);
  EXPECT_THROW(mass_transfer_m_s(3.0, 1200.0, 0.0), InvalidInput);
  EXPECT_THROW(vapour_permeability_air_kg_msPa(test::not_a_number), InvalidInput);
  EXPECT_THROW(vapour_permeability_air_kg_msPa(10.0, 0.0), InvalidInput);
  EXPECT_THROW(sheet_vapour_conductance_kg_sPa(-1.0, 0.004, 5e3, 10.0), InvalidInput);
  EXPECT_THROW(sheet_vapour_conductance_kg_sPa(1.0, 0.0, 5e3, 10.0), InvalidInput);
  EXPECT_THROW(sheet_vapour_conductance_kg_sPa(1.0, 0.004, 0.5, 10.0), InvalidInput);
  EXPECT_THROW(tape_vapour_conductance_kg_sPa(4.0, 0.001, 0.0, 2e3, 10.0), InvalidInput);
  EXPECT_THROW(opening_vapour_conductance_kg_sPa(1e-4, 0.0, 10.0), InvalidInput);
}

}  // namespace
}  // namespace dewgap
