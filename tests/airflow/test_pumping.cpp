// Sheets that flex, gusts that pump, and air that cools.
#include "dewgap/airflow/pumping.hpp"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <limits>
#include <numbers>

#include "dewgap/errors.hpp"
#include "random_networks.hpp"
#include "support/not_a_number.hpp"
#include "support/reference.hpp"

namespace dewgap {
namespace {

constexpr double pi = std::numbers::pi;

double stiffness_Nm(const FlexingSheet& s) {
  return s.youngs_modulus_Pa * std::pow(s.thickness_m, 3) /
         (12.0 * (1.0 - s.poisson_ratio * s.poisson_ratio));
}

// Navier's double series of the volume: 64 a b / (pi^8 D) sum of 1 / (m^2 n^2 (m^2 / a^2 + n^2 / b^2)^2), odd
// m, n.
double navier_volume(const FlexingSheet& s) {
  double sum = 0.0;
  for (int m = 801; m > 0; m -= 2) {
    for (int n = 801; n > 0; n -= 2) {
      const double wave = std::pow(m / s.width_m, 2) + std::pow(n / s.height_m, 2);
      sum += 1.0 / (1.0 * m * m * n * n * wave * wave);
    }
  }
  return 64.0 * s.width_m * s.height_m / (std::pow(pi, 8) * stiffness_Nm(s)) * sum;
}

TEST(FlexingSheetPlate, CentralDeflectionOfTheHandbook) {
  const double largest_known_difference = 4e-5;
  test::check_reference(
      "plate_deflection/central.csv",
      [](const test::ReferenceRow& row) {
        const FlexingSheet sheet{.width_m = 0.2, .height_m = 0.2 * row.number("long_over_short")};
        return plate_deflection_per_pressure_m_Pa(sheet) * stiffness_Nm(sheet) / std::pow(0.2, 4);
      },
      largest_known_difference);
}

TEST(FlexingSheetPlate, VolumeIsThatOfNaviersDoubleSeries) {
  for (const double height : {0.4, 0.5, 0.9, 2.0}) {
    const FlexingSheet sheet{.width_m = 0.5, .height_m = height, .thickness_m = 0.003};
    EXPECT_NEAR(plate_volume_per_pressure_m3_Pa(sheet) / navier_volume(sheet), 1.0, 1e-9) << height;
  }
}

TEST(FlexingSheetPlate, LongStripIsABeam) {
  // q a^5 / (120 D) per metre of strip, less what the two ends hold back.
  const FlexingSheet sheet{.width_m = 0.05, .height_m = 5.0};
  const double strip = std::pow(0.05, 5) / (120.0 * stiffness_Nm(sheet));
  EXPECT_NEAR(plate_volume_per_pressure_m3_Pa(sheet) / (5.0 * strip), 1.0, 0.01);
  const FlexingSheet half{.width_m = 0.05, .height_m = 2.5};
  const double middle = plate_volume_per_pressure_m3_Pa(sheet) - plate_volume_per_pressure_m3_Pa(half);
  EXPECT_NEAR(middle / (2.5 * strip), 1.0, 1e-9);
}

TEST(FlexingSheetPlate, ScalesWithItsStiffnessAndTurnsRound) {
  const FlexingSheet sheet{.width_m = 0.7, .height_m = 1.1};
  const double volume = plate_volume_per_pressure_m3_Pa(sheet);
  FlexingSheet thick = sheet;
  thick.thickness_m *= 2.0;
  EXPECT_NEAR(plate_volume_per_pressure_m3_Pa(thick) / volume, 1.0 / 8.0, 1e-14);
  FlexingSheet turned = sheet;
  std::swap(turned.width_m, turned.height_m);
  EXPECT_EQ(plate_volume_per_pressure_m3_Pa(turned), volume);
  const FlexingSheet twice{.width_m = 1.4, .height_m = 2.2};
  EXPECT_NEAR(plate_volume_per_pressure_m3_Pa(twice) / volume, 64.0, 1e-10);
  EXPECT_EQ(plate_volume_per_pressure_m3_Pa(0.7, 1.1, 0.004, 3.2e9, 0.37), volume);
  EXPECT_NEAR(plate_valid_to_Pa(sheet) * plate_deflection_per_pressure_m_Pa(sheet), 0.002, 1e-17);
}

TEST(FlexingSheetPlate, RefusesWhatIsOutsideItsRange) {
  EXPECT_THROW(plate_volume_per_pressure_m3_Pa({.width_m = 0.0}), InvalidInput);
  EXPECT_THROW(plate_volume_per_pressure_m3_Pa({.height_m = 6.0}), InvalidInput);
  EXPECT_THROW(plate_volume_per_pressure_m3_Pa({.thickness_m = test::not_a_number}), InvalidInput);
  EXPECT_THROW(plate_deflection_per_pressure_m_Pa({.youngs_modulus_Pa = 1.0}), InvalidInput);
  EXPECT_THROW(plate_valid_to_Pa({.poisson_ratio = 0.6}), InvalidInput);
}

// A pressure made of many waves of random phase is nearly normal. Its rises summed over a long time, and its
// upward crossings counted.
TEST(Pumping, IsTheMeanRiseOfANormalPressure) {
  constexpr std::size_t waves = 60;
  test::Draw draw(42);
  std::array<double, waves> pulsation{};
  std::array<double, waves> phase{};
  for (std::size_t i = 0; i < waves; ++i) {
    pulsation[i] = draw.between(0.1, 2.0);
    phase[i] = draw.between(0.0, 2.0 * pi);
  }
  const auto pressure = [&](double time_s) {
    double sum = 0.0;
    for (std::size_t i = 0; i < waves; ++i) {
      sum += std::cos(pulsation[i] * time_s + phase[i]);
    }
    return sum;
  };
  constexpr double step_s = 0.05;
  constexpr int steps = 200000;
  double rise = 0.0;
  int crossings = 0;
  double before = pressure(0.0);
  for (int i = 1; i <= steps; ++i) {
    const double now = pressure(i * step_s);
    rise += std::max(now - before, 0.0);
    crossings += before < 0.0 && now >= 0.0 ? 1 : 0;
    before = now;
  }
  const double duration_s = steps * step_s;
  const double sigma = std::sqrt(0.5 * waves);
  EXPECT_NEAR(pumped_m3_s(1e-4, sigma, crossings / duration_s) / (1e-4 * rise / duration_s), 1.0, 0.02);
}

TEST(Pumping, NarrowBandIsTwiceItsMeanAmplitudeACycle) {
  EXPECT_NEAR(pumped_m3_s(2e-5, 3.0, 0.1), 0.1 * 2.0 * 3.0 * std::sqrt(pi / 2.0) * 2e-5, 1e-18);
  EXPECT_EQ(pumped_m3_s(2e-5, 0.0, 0.1), 0.0);
  EXPECT_THROW(pumped_m3_s(-1e-5, 1.0, 0.1), InvalidInput);
  EXPECT_THROW(pumped_m3_s(1e-5, std::numeric_limits<double>::quiet_NaN(), 0.1), InvalidInput);
  EXPECT_THROW(pumped_m3_s(1e-5, 1.0, 20.0), InvalidInput);
}

TEST(Breathing, OfOneSwingADayIsThermalBreathing) {
  EXPECT_NEAR(breathed_in_m3_s(0.03, 15.0, 9.85, 86400.0) * 86400.0, 0.03 * 15.0 / 283.0, 1e-15);
  EXPECT_EQ(breathed_in_m3_s(0.03, -2.0, 10.0, 3600.0), 0.0);
  EXPECT_NEAR(breathed_in_m3_s(0.03, 2.0, 9.85, 3600.0) * 3600.0, 0.03 * 2.0 / 283.0, 1e-15);
  EXPECT_THROW(breathed_in_m3_s(0.03, 2.0, 10.0, 0.0), InvalidInput);
  EXPECT_THROW(breathed_in_m3_s(0.03, 200.0, 10.0, 3600.0), InvalidInput);
}

TEST(Breathing, SharesTheSidesByConductance) {
  const FlowResistance hole{1e3, 1e6};
  const FlowResistance shut;
  EXPECT_DOUBLE_EQ(room_share_of_conductance({{{hole, 0.1}}, {{hole, 0.9}}, 0.5}), 0.5);
  EXPECT_DOUBLE_EQ(room_share_of_conductance({{{hole, 0.1}, {hole, 0.2}, {hole, 0.3}}, {{hole, 0.9}}, 0.5}),
                   0.75);
  EXPECT_EQ(room_share_of_conductance({{{hole, 0.1}}, {{shut, 0.9}}, 0.5}), 1.0);
  EXPECT_EQ(room_share_of_conductance({{{shut, 0.1}}, {{hole, 0.9}}, 0.5}), 0.0);
  EXPECT_EQ(room_share_of_conductance({{{shut, 0.1}}, {}, 0.5}), 0.0);
  EXPECT_TRUE(open_to_either_side({{{shut, 0.1}}, {{hole, 0.9}}, 0.5}));
  EXPECT_FALSE(open_to_either_side({{{shut, 0.1}}, {}, 0.5}));
  EXPECT_THROW(room_share_of_conductance({{{{-1.0, 0.0}, 0.1}}, {}, 0.5}), InvalidInput);
}

TEST(Breathing, MirroredNetworksMirrorTheirShare) {
  test::for_each_random_state([](const test::RandomState& s) {
    const double share = room_share_of_conductance(s.network);
    const double image = room_share_of_conductance({s.network.to_outdoors, s.network.to_room, 0.5});
    ASSERT_NEAR(share + image, 1.0, 1e-14);
  });
}

}  // namespace
}  // namespace dewgap
