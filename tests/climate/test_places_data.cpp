// Malformed tables and places that are none.
#include <gtest/gtest.h>

#include <string>

#include "dewgap/climate/places_kernel.hpp"
#include "dewgap/errors.hpp"
#include "support/not_a_number.hpp"

namespace dewgap {
namespace {

using climate::parse_places;

const std::string places_header =
    "key,name,station,latitude_deg,longitude_deg,elevation_m,source,period,status,terms\n";
const std::string normals_header =
    "key,month,mean_C,max_C,min_C,vapour_pressure_Pa,wind_m_s,sunshine_h,global_kWh_m2_day\n";
const std::string one_place = "here,Here,mast,50,10,100,us,one year,made up,free\n";

std::string months(const std::string& key, int count, const std::string& values = "5,8,2,700,4,60,1\n") {
  std::string text;
  for (int month = 1; month <= count; ++month) {
    text += key + "," + std::to_string(month) + "," + values;
  }
  return text;
}

TEST(PlacesData, ReadsAPlaceWithItsMonths) {
  const auto places = parse_places(places_header + one_place, normals_header + months("here", 12));
  ASSERT_EQ(places.size(), 1u);
  EXPECT_EQ(places[0].name, "Here");
  EXPECT_EQ(places[0].station, "mast");
  EXPECT_EQ(places[0].months[11].vapour_pressure_Pa, 700.0);
}

TEST(PlacesData, ABlankIsNotZero) {
  const auto places =
      parse_places(places_header + one_place, normals_header + months("here", 12, "5,8,2,,,,\n"));
  EXPECT_FALSE(places[0].months[0].vapour_pressure_Pa.has_value());
  EXPECT_FALSE(places[0].months[0].global_kWh_m2_day.has_value());
}

TEST(PlacesData, RefusesMalformedTables) {
  const auto good = normals_header + months("here", 12);
  EXPECT_THROW(parse_places(places_header + one_place + one_place, good), InvalidInput);
  EXPECT_THROW(parse_places(places_header + one_place, normals_header + months("here", 11)), InvalidInput);
  EXPECT_THROW(parse_places(places_header + one_place, good + "here,3,5,8,2,700,4,60,1\n"), InvalidInput);
  EXPECT_THROW(parse_places(places_header + one_place, good + "here,13,5,8,2,700,4,60,1\n"), InvalidInput);
  EXPECT_THROW(parse_places(places_header + one_place, good + "here,1.5,5,8,2,700,4,60,1\n"), InvalidInput);
  EXPECT_THROW(parse_places(places_header + one_place, good + months("nowhere", 12)), InvalidInput);
  EXPECT_THROW(parse_places(places_header + one_place, normals_header + months("here", 12, ",8,2,,,,\n")),
               InvalidInput);
}

struct BadMonth {
  const char* name;
  MonthlyNormals month;
};

class BadMonths : public testing::TestWithParam<BadMonth> {};

TEST_P(BadMonths, AreRefused) {
  Place place;
  place.months.fill({.mean_C = 5.0, .max_C = 8.0, .min_C = 2.0});
  EXPECT_NO_THROW(require_valid(place));
  place.months[7] = GetParam().month;
  EXPECT_THROW(require_valid(place), InvalidInput);
}

INSTANTIATE_TEST_SUITE_P(
    Each, BadMonths,
    testing::Values(
        BadMonth{"mean_nan", {.mean_C = test::not_a_number, .max_C = 8.0, .min_C = 2.0}},
        BadMonth{"mean_too_warm", {.mean_C = 46.0, .max_C = 50.0, .min_C = 40.0}},
        BadMonth{"minimum_above_mean", {.mean_C = 5.0, .max_C = 8.0, .min_C = 6.0}},
        BadMonth{"maximum_below_mean", {.mean_C = 5.0, .max_C = 4.0, .min_C = 2.0}},
        BadMonth{"vapour_zero", {.mean_C = 5.0, .max_C = 8.0, .min_C = 2.0, .vapour_pressure_Pa = 0.0}},
        BadMonth{"wind_negative", {.mean_C = 5.0, .max_C = 8.0, .min_C = 2.0, .wind_m_s = -1.0}},
        BadMonth{"sunshine_negative", {.mean_C = 5.0, .max_C = 8.0, .min_C = 2.0, .sunshine_h = -1.0}},
        BadMonth{"global_nan",
                 {.mean_C = 5.0, .max_C = 8.0, .min_C = 2.0, .global_kWh_m2_day = test::not_a_number}}),
    [](const auto& parameter) { return std::string(parameter.param.name); });

TEST(PlacesData, RefusesAPlaceOffTheGlobe) {
  EXPECT_THROW(require_valid(Place{.latitude_deg = -90.5}), InvalidInput);
  EXPECT_THROW(require_valid(Place{.longitude_deg = 180.5}), InvalidInput);
  EXPECT_THROW(require_valid(Place{.elevation_m = 5001.0}), InvalidInput);
}

}  // namespace
}  // namespace dewgap
