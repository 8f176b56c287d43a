// Whether a weather file can be that of the place a job names.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "dewgap/assessment/survey.hpp"
#include "tools/weather/weather_figures.hpp"

namespace dewgap::tools {

/// What is to be doubted, a sentence each: more than 250 km between the file's station and the place (and
/// what the job says it is away from it), January's or July's mean more than 8 K from the place's normals at
/// the job's height, mean relative humidity more than 25 % from them. Our convention. Nothing for a place
/// that is not carried.
std::vector<std::string> doubts_at_place(const WeatherFigures& figures, const PlaceSurvey& place);

/// That the station lies on the other side of the equator than the place, far from it; nothing when it does
/// not.
std::optional<std::string> other_hemisphere(const WeatherFigures& figures, const PlaceSurvey& place);

}  // namespace dewgap::tools
