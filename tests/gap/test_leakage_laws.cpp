// How condensation in the gap follows the old window's leakage: flow network and vapour balance together,
// temperatures held fixed, so that what changes is the air alone.
#include <gtest/gtest.h>

#include <algorithm>
#include <functional>
#include <vector>

#include "dewgap/air/humid_air.hpp"
#include "dewgap/air/saturation.hpp"
#include "dewgap/airflow/gap_network.hpp"
#include "dewgap/moisture/transfer.hpp"
#include "dewgap/moisture/vapour_balance.hpp"

namespace dewgap {
namespace {

constexpr double room_C = 20.0;
constexpr double gap_C = 8.0;
constexpr double face_C = 3.0;
constexpr double outdoor_C = 0.0;

struct Window {
  double inner_m3_h_m = 0.02;  ///< seal of the sheet, at 1 Pa per metre
  double outer_m3_h_m = 0.2;   ///< old joint
  double room_humidity = 0.55;
  double outdoor_humidity = 0.85;
  PressureWithinHour pressure;
};

struct Outcome {
  GapFlows flows;
  VapourBalance vapour;
};

Outcome outcome_of(const Window& window) {
  const double room_Pa = vapour_pressure_Pa(room_C, window.room_humidity);
  const double outdoor_Pa = vapour_pressure_Pa(outdoor_C, window.outdoor_humidity);
  const GapNetwork network{spread_joint_over_height(window.inner_m3_h_m, 2.0 / 3.0, 4.0, 0.0, 1.0, 5),
                           spread_joint_over_height(window.outer_m3_h_m, 2.0 / 3.0, 4.0, 0.0, 1.0, 5), 0.5};
  const AirDensities densities{humid_air_density_kg_m3(outdoor_C, outdoor_Pa),
                               humid_air_density_kg_m3(gap_C, 0.5 * (room_Pa + outdoor_Pa)),
                               humid_air_density_kg_m3(room_C, room_Pa)};
  const auto flows = flows_within_hour(network, densities, window.pressure);
  return {flows, solve_vapour_balance({.from_room_m3_s = flows.from_room_m3_s,
                                       .from_outdoors_m3_s = flows.from_outdoors_m3_s,
                                       .room_vapour_Pa = room_Pa,
                                       .room_temperature_C = room_C,
                                       .outdoor_vapour_Pa = outdoor_Pa,
                                       .outdoor_temperature_C = outdoor_C,
                                       .gap_temperature_C = gap_C,
                                       .diffusion_to_room_kg_sPa = 2e-11,
                                       .diffusion_to_outdoors_kg_sPa = 1e-12,
                                       .face_area_m2 = 1.0,
                                       .face_temperature_C = face_C,
                                       .face_mass_transfer_m_s = mass_transfer_m_s(3.0, 1250.0)})};
}

/// Condensation, kg/s, for outer leakages from 1e-4 to 100 m3/(h m), each a fifth more than the one before.
std::vector<double> condensation_by_outer_leakage(Window window) {
  std::vector<double> condensation;
  for (window.outer_m3_h_m = 1e-4; window.outer_m3_h_m < 100.0; window.outer_m3_h_m *= 1.2) {
    const auto outcome = outcome_of(window);
    EXPECT_EQ(outcome.flows.status, SolveStatus::converged);
    condensation.push_back(outcome.vapour.condensation_kg_s);
  }
  return condensation;
}

TEST(LeakageLaws, SteadyInwardFlowOfDryOutdoorAirNeverWetsMoreWithMoreLeakage) {
  ASSERT_LT(dew_point_C(vapour_pressure_Pa(outdoor_C, 0.85)), face_C);
  for (const double pressure_Pa : {-0.8, -2.0, -10.0}) {
    for (const double humidity : {0.45, 0.6, 0.75}) {
      const auto condensation =
          condensation_by_outer_leakage({.room_humidity = humidity, .pressure = {pressure_Pa, 0.0}});
      EXPECT_GT(condensation.front(), 0.0) << "the tight window is wet, or the law says nothing";
      for (std::size_t i = 1; i < condensation.size(); ++i) {
        EXPECT_LE(condensation[i], condensation[i - 1] * (1.0 + 1e-9)) << pressure_Pa << " Pa, " << humidity;
      }
      EXPECT_LT(condensation.back(), 0.1 * condensation.front());
    }
  }
}

TEST(LeakageLaws, OutwardFlowWetsMoreBeforeOutdoorAirDries) {
  for (const double pressure_Pa : {0.1, 0.2, 0.4}) {
    const auto condensation = condensation_by_outer_leakage({.pressure = {pressure_Pa, 0.0}});
    const auto peak = std::max_element(condensation.begin(), condensation.end());
    ASSERT_NE(peak, condensation.begin()) << pressure_Pa;
    ASSERT_NE(peak, condensation.end() - 1) << pressure_Pa;
    // The least rise is at the least pressure: with a tight window the seal's two ends already exchange room
    // air.
    EXPECT_GT(*peak, 1.05 * condensation.front()) << pressure_Pa;
    EXPECT_LT(condensation.back(), 0.5 * *peak) << pressure_Pa;
    // One hill: up to the peak, down after it.
    EXPECT_TRUE(std::is_sorted(condensation.begin(), peak)) << pressure_Pa;
    EXPECT_TRUE(std::is_sorted(peak, condensation.end(), std::greater<>())) << pressure_Pa;
  }
}

TEST(LeakageLaws, OutwardFlowBringsTheGapToTheRoomsVapourWhateverTheSizeOfTheHoles) {
  const double room_Pa = vapour_pressure_Pa(room_C, 0.30);  // dew point below the face: nothing condenses
  for (const double size : {0.01, 0.1, 1.0, 10.0}) {
    const auto outcome = outcome_of(
        {.inner_m3_h_m = size, .outer_m3_h_m = size, .room_humidity = 0.30, .pressure = {20.0, 0.0}});
    EXPECT_EQ(outcome.flows.from_outdoors_m3_s, 0.0);
    EXPECT_EQ(outcome.vapour.condensation_kg_s, 0.0);
    EXPECT_NEAR(outcome.vapour.vapour_Pa, room_Pa, 0.01 * room_Pa) << size;
  }
}

}  // namespace
}  // namespace dewgap
