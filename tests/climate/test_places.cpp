#include "dewgap/climate/places.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <set>

#include "dewgap/air/humid_air.hpp"
#include "dewgap/climate/places_kernel.hpp"
#include "dewgap/errors.hpp"
#include "support/not_a_number.hpp"
#include "support/reference.hpp"

namespace dewgap {
namespace {

const Place& carried(std::string_view key) {
  const auto* place = find_place(key);
  if (place == nullptr) {
    throw std::runtime_error("no such place: " + std::string(key));
  }
  return *place;
}

double over_water_Pa(double temperature_C) {
  return saturation_pressure_Pa(temperature_C, SaturationFormula::murphy_koop, Phase::water);
}

TEST(Places, CarriesEachWithSourcePeriodStatusAndTerms) {
  ASSERT_EQ(places().size(), 21u);
  std::set<std::string> spellings;
  for (const auto& place : places()) {
    SCOPED_TRACE(place.key);
    EXPECT_NO_THROW(require_valid(place));
    EXPECT_FALSE(place.source.empty());
    EXPECT_FALSE(place.period.empty());
    EXPECT_FALSE(place.status.empty());
    EXPECT_FALSE(place.terms.empty());
    EXPECT_FALSE(place.station.empty());
    EXPECT_EQ(place.key.find_first_of(" ABCDEFGHIJKLMNOPQRSTUVWXYZ"), std::string::npos);
    EXPECT_TRUE(spellings.insert(place.key).second);
    EXPECT_EQ(find_place(place.key), &place);
    EXPECT_EQ(find_place(place.name), &place);
  }
}

// Half a last digit each of maximum, minimum and mean, as printed; the other means were halved to 0.01 K or
// better.
double roundings_K(std::string_view key) {
  if (key == "toronto") {
    return 0.1001;
  }
  return key == "new_york" ? 0.1 / 1.8 + 0.0101 : 0.0101;
}

TEST(Places, MeanLiesMidwayBetweenMaximumAndMinimum) {
  for (const auto& place : places()) {
    for (const auto& month : place.months) {
      EXPECT_NEAR(month.mean_C, 0.5 * (month.max_C + month.min_C), roundings_K(place.key)) << place.key;
    }
  }
}

TEST(Places, VapourPressureNeverExceedsSaturationAtTheMean) {
  for (const auto& place : places()) {
    for (const auto& month : place.months) {
      EXPECT_LT(month.vapour_pressure_Pa.value_or(0.0), over_water_Pa(month.mean_C)) << place.key;
    }
  }
}

TEST(Places, RecalledCoordinatesSaySo) {
  for (const auto key : {"edinburgh", "new_york", "toronto", "christchurch"}) {
    EXPECT_NE(carried(key).status.find("recalled"), std::string::npos) << key;
  }
  EXPECT_EQ(carried("london_heathrow").status.find("recalled"), std::string::npos);
}

TEST(Places, BlanksStayBlank) {
  for (const auto& month : carried("new_york").months) {
    EXPECT_FALSE(month.vapour_pressure_Pa.has_value());
    EXPECT_FALSE(month.wind_m_s.has_value());
    EXPECT_TRUE(month.sunshine_h.has_value());
  }
  for (const auto& month : carried("london").months) {
    EXPECT_TRUE(month.vapour_pressure_Pa.has_value());
    EXPECT_FALSE(month.sunshine_h.has_value());
    EXPECT_FALSE(month.global_kWh_m2_day.has_value());
  }
}

TEST(Places, PublishedHumidityFollowsFromTheCarriedVapourPressure) {
  test::check_reference("wmo_normals/humidity.csv", [](const test::ReferenceRow& row) {
    const auto& month = carried(row.text("key")).months[static_cast<std::size_t>(row.number("month")) - 1];
    // The formula by which the vapour pressure was computed: WMO-No. 8, over water, from memory.
    const double saturation_Pa = 611.2 * std::exp(17.62 * month.mean_C / (243.12 + month.mean_C));
    EXPECT_NEAR(relative_humidity(month.mean_C, month.vapour_pressure_Pa.value()), row.number("expected"),
                row.number("tolerance") + 0.005 * row.number("expected"));
    return month.vapour_pressure_Pa.value() / saturation_Pa;
  });
}

TEST(Places, DublinAgreesWithItsDailyRecords) {
  test::check_reference(
      "dublin_daily/normals.csv",
      [](const test::ReferenceRow& row) {
        const auto& month = carried("dublin").months[static_cast<std::size_t>(row.number("month")) - 1];
        EXPECT_EQ(month.wind_m_s, row.optional_number("wind_m_s"));
        EXPECT_EQ(month.sunshine_h, row.optional_number("sunshine_h"));
        EXPECT_EQ(month.global_kWh_m2_day, row.optional_number("global_kWh_m2_day"));
        return month.mean_C;
      },
      0.22);
}

TEST(Places, FindIgnoresCaseAndSeparators) {
  EXPECT_EQ(find_place("LONDON"), &carried("london"));
  EXPECT_EQ(find_place("New York"), &carried("new_york"));
  EXPECT_EQ(find_place("london-heathrow"), &carried("london_heathrow"));
  EXPECT_EQ(find_place("atlantis"), nullptr);
  EXPECT_EQ(find_place(""), nullptr);
}

TEST(Places, SuggestsTheNearestSpelling) {
  EXPECT_EQ(nearest_place_name("Lodnon"), "London");
  EXPECT_EQ(nearest_place_name("dubln"), "Dublin");
  EXPECT_EQ(nearest_place_name("edinborough"), "Edinburgh");
  EXPECT_EQ(nearest_place_name("Zuerich"), "Zurich");
  EXPECT_THROW(nearest_place_name(""), InvalidInput);
  EXPECT_THROW(nearest_place_name(std::string(201, 'x')), InvalidInput);
}

TEST(Places, EditDistance) {
  EXPECT_EQ(climate::edit_distance("kitten", "sitting"), 3u);
  EXPECT_EQ(climate::edit_distance("", "abc"), 3u);
  EXPECT_EQ(climate::edit_distance("abc", ""), 3u);
  EXPECT_EQ(climate::edit_distance("same", "same"), 0u);
}

TEST(Places, AtElevationShiftsTemperatureAndKeepsVapour) {
  const auto& place = carried("munich");
  const auto moved = at_elevation(place, place.elevation_m + 100.0);
  for (std::size_t i = 0; i < 12; ++i) {
    EXPECT_NEAR(moved.months[i].mean_C, place.months[i].mean_C - 0.65, 1e-12);
    EXPECT_NEAR(moved.months[i].min_C, place.months[i].min_C - 0.65, 1e-12);
    EXPECT_NEAR(moved.months[i].max_C, place.months[i].max_C - 0.65, 1e-12);
    EXPECT_EQ(moved.months[i].vapour_pressure_Pa, place.months[i].vapour_pressure_Pa);
  }
  EXPECT_DOUBLE_EQ(moved.elevation_m, place.elevation_m + 100.0);
  EXPECT_NE(moved.status.find("6.5 K/km"), std::string::npos);
  EXPECT_EQ(moved.status.find("limited"), std::string::npos);
}

TEST(Places, AtElevationLimitsVapourToSaturationAndSaysSo) {
  const auto moved = at_elevation(carried("dublin"), 1500.0);
  EXPECT_NEAR(moved.months[0].vapour_pressure_Pa.value(), over_water_Pa(moved.months[0].mean_C), 1e-9);
  EXPECT_NE(moved.status.find("12 months limited to saturation"), std::string::npos) << moved.status;
}

TEST(Places, AtElevationRefusesNonsense) {
  EXPECT_THROW(at_elevation(carried("dublin"), 6000.0), InvalidInput);
  EXPECT_THROW(at_elevation(carried("dublin"), test::not_a_number), InvalidInput);
  EXPECT_THROW(at_elevation(Place{.latitude_deg = 91.0}, 0.0), InvalidInput);
}

TEST(Places, ColdestMonthFollowsTheHemisphere) {
  EXPECT_EQ(coldest_month(carried("london")), 0);
  EXPECT_EQ(coldest_month(carried("helsinki")), 1);
  EXPECT_EQ(coldest_month(carried("wellington")), 6);
  EXPECT_EQ(coldest_month(carried("edinburgh")), 11);
  EXPECT_THROW(coldest_month(Place{.elevation_m = test::not_a_number}), InvalidInput);
}

TEST(Places, GreatCircleDistance) {
  test::check_reference("great_circle/distance.csv", [](const test::ReferenceRow& row) {
    const double there = distance_km(row.number("latitude_1_deg"), row.number("longitude_1_deg"),
                                     row.number("latitude_2_deg"), row.number("longitude_2_deg"));
    const double back = distance_km(row.number("latitude_2_deg"), row.number("longitude_2_deg"),
                                    row.number("latitude_1_deg"), row.number("longitude_1_deg"));
    EXPECT_NEAR(there, back, 1e-9);
    return there;
  });
  EXPECT_THROW(distance_km(91.0, 0.0, 0.0, 0.0), InvalidInput);
  EXPECT_THROW(distance_km(0.0, 181.0, 0.0, 0.0), InvalidInput);
  EXPECT_THROW(distance_km(0.0, 0.0, test::not_a_number, 0.0), InvalidInput);
  EXPECT_THROW(distance_km(0.0, 0.0, 0.0, -181.0), InvalidInput);
}

}  // namespace
}  // namespace dewgap
