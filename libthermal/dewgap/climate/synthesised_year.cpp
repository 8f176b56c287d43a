#include "dewgap/climate/synthesised_year.hpp"

#include "dewgap/air/saturation.hpp"
#include "dewgap/climate/sun.hpp"
#include "dewgap/climate/synthesised_year_kernel.hpp"

namespace dewgap {
namespace {

climate::MonthlyValues vapour_normals_Pa(const Place& place) {
  climate::MonthlyValues normals_Pa{};
  for (std::size_t month = 0; month < normals_Pa.size(); ++month) {
    const auto& normals = place.months[month];
    // Lacking vapour pressure: saturation at the mean minimum (FAO Paper 56 eq. 48, from memory).
    normals_Pa[month] =
        normals.vapour_pressure_Pa
            ? *normals.vapour_pressure_Pa
            : saturation_pressure_Pa(normals.min_C, SaturationFormula::murphy_koop, Phase::water);
  }
  return normals_Pa;
}

climate::MonthlyValues wind_normals_m_s(const Place& place) {
  climate::MonthlyValues normals_m_s{};
  for (std::size_t month = 0; month < normals_m_s.size(); ++month) {
    normals_m_s[month] = place.months[month].wind_m_s.value_or(default_wind_m_s);
  }
  return normals_m_s;
}

constexpr ModelledColumns everything{.air_temperature = true,
                                     .vapour_pressure = true,
                                     .wind = true,
                                     .wind_direction = false,  // absent
                                     .sun = true,
                                     .sun_split = true,
                                     .cloud_cover = true,
                                     .sky_temperature = false};  // absent

}  // namespace

SynthesisedYear synthesised_year(const Place& place, std::uint64_t seed) {
  require_valid(place);
  const SunSite site{place.latitude_deg, place.longitude_deg, place.longitude_deg / 15.0};
  const auto normals = monthly_sun(place, {.tilt_deg = 0.0});
  auto temperature = climate::temperature_course(place, seed);
  auto vapour = climate::vapour_course(vapour_normals_Pa(place), temperature.hourly_C, seed);
  auto sun = climate::sun_course(site, normals.horizontal_kWh_m2_day, seed);
  SynthesisedYear year;
  year.hours = {.site = site,
                .elevation_m = place.elevation_m,
                .air_temperature_C = std::move(temperature.hourly_C),
                .vapour_pressure_Pa = std::move(vapour.hourly_Pa),
                .wind_m_s = climate::wind_course(wind_normals_m_s(place), seed),
                .wind_direction_deg = {},
                .global_W_m2 = std::move(sun.global_W_m2),
                .beam_normal_W_m2 = std::move(sun.beam_normal_W_m2),
                .diffuse_W_m2 = std::move(sun.diffuse_W_m2),
                .cloud_cover = std::move(sun.cloud_cover),
                .sky_temperature_C = {},
                .modelled = everything,
                .source = place.source};
  year.sun_normals_modelled = normals.modelled;
  for (const auto& month : place.months) {
    year.vapour_normals_modelled = year.vapour_normals_modelled || !month.vapour_pressure_Pa;
    year.wind_normals_modelled = year.wind_normals_modelled || !month.wind_m_s;
  }
  year.largest_max_min_deviation_K = temperature.largest_max_min_deviation_K;
  year.largest_vapour_deviation = vapour.largest_deviation;
  require_valid(year.hours);
  return year;
}

}  // namespace dewgap
