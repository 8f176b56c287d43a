#include "tools/weather/place_check.hpp"

#include <fmt/format.h>

#include <cmath>

#include "dewgap/air/saturation.hpp"
#include "dewgap/climate/places.hpp"

namespace dewgap::tools {
namespace {

// Our convention.
constexpr double far_km = 250.0;
constexpr double much_warmer_K = 8.0;
constexpr double much_damper = 0.25;
constexpr std::size_t january = 0;
constexpr std::size_t july = 6;

std::optional<Place> place_of(const PlaceSurvey& survey) {
  const auto* place = survey.nearest.empty() ? nullptr : find_place(survey.nearest);
  if (place == nullptr) return std::nullopt;
  return survey.elevation_m ? at_elevation(*place, *survey.elevation_m) : *place;
}

/// Mean relative humidity by the months' means; nothing where a month has no vapour pressure.
std::optional<double> relative_humidity_of(const Place& place) {
  double sum = 0.0;
  for (const auto& month : place.months) {
    if (!month.vapour_pressure_Pa) return std::nullopt;
    sum += *month.vapour_pressure_Pa /
           saturation_pressure_Pa(month.mean_C, SaturationFormula::murphy_koop, Phase::water);
  }
  return sum / static_cast<double>(place.months.size());
}

double between_km(const WeatherFigures& figures, const Place& place) {
  return distance_km(figures.latitude_deg, figures.longitude_deg, place.latitude_deg, place.longitude_deg);
}

}  // namespace

std::vector<std::string> doubts_at_place(const WeatherFigures& figures, const PlaceSurvey& survey) {
  const auto place = place_of(survey);
  if (!place) return {};
  std::vector<std::string> doubts;
  if (const double km = between_km(figures, *place); km > far_km + survey.distance_km.value_or(0.0))
    doubts.push_back(fmt::format("The weather file's station ({}) lies {:.0f} km from the job's place, {}.",
                                 coordinates_text(figures.latitude_deg, figures.longitude_deg), km,
                                 place->name));
  const double winter_C = place->months[january].mean_C;
  const double summer_C = place->months[july].mean_C;
  if (std::abs(figures.month_C[january] - winter_C) > much_warmer_K ||
      std::abs(figures.month_C[july] - summer_C) > much_warmer_K)
    doubts.push_back(
        fmt::format("The weather file has {:.1f} C in January and {:.1f} C in July, {} {:.1f} and {:.1f} C.",
                    figures.month_C[january], figures.month_C[july], place->name, winter_C, summer_C));
  const auto humidity = relative_humidity_of(*place);
  if (humidity && std::abs(figures.relative_humidity - *humidity) > much_damper)
    doubts.push_back(
        fmt::format("The weather file's relative humidity is {:.0f} % on average, {}'s {:.0f} %.",
                    100.0 * figures.relative_humidity, place->name, 100.0 * *humidity));
  return doubts;
}

std::optional<std::string> other_hemisphere(const WeatherFigures& figures, const PlaceSurvey& survey) {
  const auto place = place_of(survey);
  if (!place || figures.latitude_deg * place->latitude_deg >= 0.0 || between_km(figures, *place) <= far_km)
    return std::nullopt;
  return fmt::format(
      "latitude_deg: {} lies on the other side of the equator than the job's place, {} (expected: "
      "about {:.1f}, north positive)",
      figures.latitude_deg, place->name, place->latitude_deg);
}

}  // namespace dewgap::tools
