#include "dewgap/dwelling/pressure.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <string>

#include "dewgap/air/humid_air.hpp"
#include "dewgap/errors.hpp"
#include "support/not_a_number.hpp"
#include "support/reference.hpp"

namespace dewgap {
namespace {

constexpr std::array all_shelters{Shelter::open, Shelter::fields, Shelter::suburb, Shelter::facing_wall};

Shelter shelter_of(const std::string& name) {
  if (name == "open") {
    return Shelter::open;
  }
  if (name == "fields") {
    return Shelter::fields;
  }
  if (name == "suburb") {
    return Shelter::suburb;
  }
  if (name == "facing_wall") {
    return Shelter::facing_wall;
  }
  throw std::runtime_error("no such shelter: " + name);
}

TEST(PressureCoefficients, AreThoseOfTheSources) {
  test::check_reference("wind_at_window/pressure_coefficients.csv", [](const test::ReferenceRow& row) {
    const auto coefficients = pressure_coefficients(shelter_of(row.text("shelter")));
    const auto& side = row.text("side");
    if (side == "windward") {
      return coefficients.windward;
    }
    return side == "leeward" ? coefficients.leeward : coefficients.side;
  });
}

TEST(PressureCoefficients, WindRatioFollowsTheProfiles) {
  test::check_reference("wind_at_window/wind_ratio.csv", [](const test::ReferenceRow& row) {
    return pressure_coefficients(shelter_of(row.text("shelter"))).wind_ratio;
  });
}

TEST(PressureCoefficients, WallOppositeLiesWithinMeasuredStreets) {
  double lowest = std::numeric_limits<double>::infinity();
  double highest = 0.0;
  const auto streets = test::read_reference("wind_at_window/street_canyon.csv");
  for (std::size_t row = 0; row < streets.row_count(); ++row) {
    lowest = std::min(lowest, streets.number(row, "expected"));
    highest = std::max(highest, streets.number(row, "expected"));
  }
  const double ratio = pressure_coefficients(Shelter::facing_wall).wind_ratio;
  EXPECT_GT(ratio, lowest);
  EXPECT_LT(ratio, highest);
}

TEST(PressureCoefficients, ShelterNeverRaisesTheWind) {
  for (std::size_t i = 1; i < all_shelters.size(); ++i) {
    const auto more_open = pressure_coefficients(all_shelters[i - 1]);
    const auto more_sheltered = pressure_coefficients(all_shelters[i]);
    EXPECT_LE(more_sheltered.windward, more_open.windward);
    EXPECT_GE(more_sheltered.leeward, more_open.leeward);
    EXPECT_GE(more_sheltered.side, more_open.side);
    EXPECT_LT(more_sheltered.wind_ratio, more_open.wind_ratio);
  }
}

TEST(PressureCoefficients, DefaultIsTheSuburb) {
  const PressureCoefficients defaults;
  const auto suburb = pressure_coefficients(Shelter::suburb);
  EXPECT_EQ(defaults.windward, suburb.windward);
  EXPECT_EQ(defaults.leeward, suburb.leeward);
  EXPECT_EQ(defaults.side, suburb.side);
  EXPECT_EQ(defaults.wind_ratio, suburb.wind_ratio);
}

TEST(PressureCoefficients, RefuseAnUnknownShelter) {
  EXPECT_THROW(pressure_coefficients(static_cast<Shelter>(99)), InvalidInput);
}

TEST(DwellingPressure, StackPerMetre) {
  test::check_reference("stack_pressure/per_metre.csv", [](const test::ReferenceRow& row) {
    return dwelling_pressure({.room_temperature_C = row.number("room_C"),
                              .outdoor_temperature_C = row.number("outdoor_C"),
                              .window_height_m = 3.0 + row.number("height_above_neutral_m"),
                              .neutral_level_m = 3.0,
                              .station_wind_m_s = 0.0})
        .stack_Pa;
  });
}

TEST(DwellingPressure, StackTurnsWithTheSeasonAndTheLevel) {
  const auto stack = [](double outdoor_C, double height_m) {
    return dwelling_pressure({.outdoor_temperature_C = outdoor_C, .window_height_m = height_m}).stack_Pa;
  };
  EXPECT_LT(stack(0.0, 1.0), 0.0);
  EXPECT_GT(stack(0.0, 4.0), 0.0);
  EXPECT_GT(stack(30.0, 1.0), 0.0);
  EXPECT_EQ(stack(0.0, 2.5), 0.0);
  EXPECT_EQ(stack(20.0, 9.0), 0.0);
}

// The header's figure: moisture of the room adds about 3 % at 5 C outdoors (87 % there) and 50 % indoors.
TEST(DwellingPressure, MoistureLeftOutIsWorthAboutThreePerCent) {
  const double dry = humid_air_density_kg_m3(5.0, 0.0) - humid_air_density_kg_m3(20.0, 0.0);
  const double humid = humid_air_density_kg_m3(5.0, vapour_pressure_Pa(5.0, 0.87)) -
                       humid_air_density_kg_m3(20.0, vapour_pressure_Pa(20.0, 0.5));
  EXPECT_NEAR(humid / dry - 1.0, 0.03, 0.005);
}

TEST(DwellingPressure, WindPushesInwardsOnTheWindwardSide) {
  const auto wind = [](double coefficient) {
    return dwelling_pressure({.pressure_coefficient = coefficient, .internal_coefficient = -0.1}).wind_Pa;
  };
  EXPECT_LT(wind(0.5), 0.0);
  EXPECT_GT(wind(-0.5), 0.0);
  EXPECT_EQ(wind(-0.1), 0.0);
}

TEST(DwellingPressure, WindByHand) {
  const auto result = dwelling_pressure({.outdoor_temperature_C = 5.0,
                                         .station_wind_m_s = 6.0,
                                         .wind_ratio = 0.5,
                                         .pressure_coefficient = 0.3,
                                         .internal_coefficient = -0.1,
                                         .gust_intensity = 0.3,
                                         .direction_coefficient_sd = 0.0});
  const double dynamic_Pa = 0.5 * humid_air_density_kg_m3(5.0, 0.0) * 9.0;
  EXPECT_NEAR(result.wind_Pa, -dynamic_Pa * 0.4 * 1.09, 1e-12);
  EXPECT_NEAR(result.within_hour.standard_deviation_Pa,
              dynamic_Pa * 0.4 * std::sqrt(4.0 * 0.09 + 2.0 * 0.0081), 1e-12);
}

TEST(DwellingPressure, PartsAddUp) {
  const auto result =
      dwelling_pressure({.window_height_m = 6.0, .pressure_coefficient = 0.25, .extract_Pa = 2.0});
  EXPECT_EQ(result.extract_Pa, -2.0);
  EXPECT_DOUBLE_EQ(result.within_hour.mean_Pa, result.stack_Pa + result.wind_Pa + result.extract_Pa);
}

TEST(DwellingPressure, CalmHasNoGusts) {
  const auto result = dwelling_pressure({.station_wind_m_s = 0.0});
  EXPECT_EQ(result.wind_Pa, 0.0);
  EXPECT_EQ(result.within_hour.standard_deviation_Pa, 0.0);
}

// Mean and spread against brute force: midpoint sums over both normal distributions.
TEST(DwellingPressure, SpreadWithinTheHourIsThatOfTheDistributions) {
  const DwellingPressureInput input{.room_temperature_C = 0.0,
                                    .outdoor_temperature_C = 0.0,
                                    .station_wind_m_s = 5.0,
                                    .wind_ratio = 0.8,
                                    .pressure_coefficient = -0.4,
                                    .internal_coefficient = -0.1,
                                    .gust_intensity = 0.35,
                                    .direction_coefficient_sd = 0.25};
  const double half_density = 0.5 * humid_air_density_kg_m3(0.0, 0.0);
  double weights = 0.0;
  double sum_Pa = 0.0;
  double squares_Pa2 = 0.0;
  for (double x = -8.0; x <= 8.0; x += 0.05) {
    for (double y = -8.0; y <= 8.0; y += 0.05) {
      const double weight = std::exp(-0.5 * (x * x + y * y));
      const double speed_m_s = 4.0 * (1.0 + 0.35 * x);
      const double pressure_Pa = -half_density * (-0.3 + 0.25 * y) * speed_m_s * speed_m_s;
      weights += weight;
      sum_Pa += weight * pressure_Pa;
      squares_Pa2 += weight * pressure_Pa * pressure_Pa;
    }
  }
  const double mean_Pa = sum_Pa / weights;
  const auto within_hour = dwelling_pressure(input).within_hour;
  EXPECT_NEAR(within_hour.mean_Pa, mean_Pa, 1e-9);
  EXPECT_NEAR(within_hour.standard_deviation_Pa, std::sqrt(squares_Pa2 / weights - mean_Pa * mean_Pa), 1e-9);
}

struct BadPressureInput {
  const char* field;
  DwellingPressureInput input;
};

class BadPressureInputs : public testing::TestWithParam<BadPressureInput> {};

TEST_P(BadPressureInputs, AreRefusedByName) {
  try {
    dwelling_pressure(GetParam().input);
    FAIL() << "accepted";
  } catch (const InvalidInput& error) {
    EXPECT_EQ(error.field(), GetParam().field);
  }
}

INSTANTIATE_TEST_SUITE_P(
    Each, BadPressureInputs,
    testing::Values(BadPressureInput{"room_temperature_C", {.room_temperature_C = test::not_a_number}},
                    BadPressureInput{"outdoor_temperature_C", {.outdoor_temperature_C = -61.0}},
                    BadPressureInput{"window_height_m", {.window_height_m = 301.0}},
                    BadPressureInput{"neutral_level_m", {.neutral_level_m = -21.0}},
                    BadPressureInput{"station_wind_m_s", {.station_wind_m_s = -1.0}},
                    BadPressureInput{"wind_ratio", {.wind_ratio = 1.6}},
                    BadPressureInput{"pressure_coefficient", {.pressure_coefficient = 1.3}},
                    BadPressureInput{"internal_coefficient", {.internal_coefficient = -1.6}},
                    BadPressureInput{"gust_intensity", {.gust_intensity = 1.1}},
                    BadPressureInput{"direction_coefficient_sd",
                                     {.direction_coefficient_sd = test::not_a_number}},
                    BadPressureInput{"extract_Pa", {.extract_Pa = -0.1}}),
    [](const auto& parameter) { return std::string(parameter.param.field); });

}  // namespace
}  // namespace dewgap
