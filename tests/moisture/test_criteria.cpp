#include "dewgap/moisture/criteria.hpp"

#include <gtest/gtest.h>

#include "dewgap/errors.hpp"
#include "support/not_a_number.hpp"
#include "support/reference.hpp"

namespace dewgap {
namespace {

TEST(Criteria, FilmBandsHaveExactEdges) {
  test::check_reference("surface_criteria/film_bands.csv", [](const test::ReferenceRow& row) {
    return static_cast<double>(film_band(row.number("film_g_m2")));
  });
  EXPECT_EQ(name_of(FilmBand::dry), "dry");
  EXPECT_EQ(name_of(FilmBand::mist), "mist");
  EXPECT_EQ(name_of(FilmBand::droplets), "droplets");
  EXPECT_EQ(name_of(FilmBand::runs), "runs");
}

TEST(Criteria, TemperatureFactorOfAPartOfKnownTransmittance) {
  test::check_reference("surface_criteria/temperature_factor.csv", [](const test::ReferenceRow& row) {
    const double room_C = row.number("room_temperature_C");
    const double outdoor_C = row.number("outdoor_temperature_C");
    const double flux_W_m2 = row.number("transmittance_W_m2K") * (room_C - outdoor_C);
    return temperature_factor(room_C - flux_W_m2 * row.number("surface_resistance_m2K_W"), room_C, outdoor_C);
  });
}

TEST(Criteria, TemperatureFactorIsNoughtOutdoorsAndOneInTheRoom) {
  EXPECT_EQ(temperature_factor(-5.0, 20.0, -5.0), 0.0);
  EXPECT_EQ(temperature_factor(20.0, 20.0, -5.0), 1.0);
  EXPECT_THROW(temperature_factor(10.0, 10.0, 10.05), InvalidInput);
  EXPECT_THROW(temperature_factor(10.0, 10.0, 9.95), InvalidInput);
  EXPECT_NO_THROW(temperature_factor(10.0, 10.0, 9.875));
}

TEST(Criteria, SurfaceHumidity) {
  test::check_reference("surface_criteria/surface_humidity.csv", [](const test::ReferenceRow& row) {
    return surface_relative_humidity(row.number("room_vapour_Pa"), row.number("surface_temperature_C"));
  });
}

TEST(Criteria, RefuseWhatIsOutsideTheirRange) {
  EXPECT_THROW(film_band(-1e-9), InvalidInput);
  EXPECT_THROW(film_band(test::not_a_number), InvalidInput);
  EXPECT_THROW(temperature_factor(test::not_a_number, 20.0, 0.0), InvalidInput);
  EXPECT_THROW(temperature_factor(10.0, 20.0, -70.0), InvalidInput);
  EXPECT_THROW(surface_relative_humidity(-1.0, 10.0), InvalidInput);
  EXPECT_THROW(surface_relative_humidity(1000.0, test::not_a_number), InvalidInput);
}

}  // namespace
}  // namespace dewgap
