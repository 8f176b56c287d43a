#include "gap/hour_cases.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "dewgap/air/humid_air.hpp"
#include "dewgap/numerics/split_mix.hpp"

namespace dewgap::test {
namespace {

/// Uniform in 0..1, one value a draw.
class Draw {
 public:
  explicit Draw(std::uint64_t seed) : state_(seed) {}
  double operator()(double low, double high) {
    state_ = state_ * 6364136223846793005u + 1442695040888963407u;
    return low + (high - low) * static_cast<double>(state_ >> 11) / 9007199254740992.0;
  }

 private:
  std::uint64_t state_;
};

/// A value for each day, straight between the middles of the days.
double through_days(const std::vector<double>& daily, double hour) {
  const double day = std::max(0.0, hour / 24.0 - 0.5);
  const auto before = std::min(static_cast<std::size_t>(day), daily.size() - 1);
  const auto after = std::min(before + 1, daily.size() - 1);
  const double share = day - static_cast<double>(before);
  return (1.0 - share) * daily[before] + share * daily[after];
}

std::vector<double> days_between(int days, double low, double high, Draw& draw) {
  std::vector<double> daily;
  for (int d = 0; d < days; ++d) {
    daily.push_back(draw(low, high));
  }
  return daily;
}

struct Days {
  std::vector<double> temperature_K;
  std::vector<double> humidity;
  std::vector<double> sun_W_m2;
  std::vector<double> wind;
  std::vector<double> pressure_Pa;
};

HourConditions at_hour(const GapCase& c, const Days& days, double hour) {
  HourConditions given = hour_of(c);
  const double angle = 2.0 * std::numbers::pi * hour / 24.0;
  const double outdoor_C = std::clamp(
      c.outdoors.air_temperature_C + through_days(days.temperature_K, hour) - 4.0 * std::cos(angle), -35.0,
      35.0);
  given.outdoors.air_temperature_C = outdoor_C;
  given.outdoors.ground_temperature_C = outdoor_C;
  given.outdoors.sky_temperature_C = outdoor_C - 8.0 - 5.0 * std::cos(angle);
  given.outdoors.convection_W_m2K = 4.0 + 20.0 * through_days(days.wind, hour);
  given.outdoor_vapour_Pa = vapour_pressure_Pa(outdoor_C, through_days(days.humidity, hour));
  const double sun = std::max(0.0, -std::cos(angle)) * through_days(days.sun_W_m2, hour);
  given.absorbed_sun_W_m2 = {0.12 * sun, 0.07 * sun};
  given.pressure = {.mean_Pa = through_days(days.pressure_Pa, hour),
                    .standard_deviation_Pa = 3.0 * through_days(days.wind, hour)};
  given.curtain_drawn = std::fmod(hour, 24.0) < 7.0;
  return given;
}

}  // namespace

GapDesign design_of(const GapCase& c) {
  GapDesign design;
  design.stack = c.stack;
  design.area_m2 = c.gap_area_m2;
  design.network = c.network;
  design.diffusion_to_room_kg_sPa = c.diffusion_to_room_kg_sPa;
  design.diffusion_to_outdoors_kg_sPa = c.diffusion_to_outdoors_kg_sPa;
  design.edge_temperature_factor = c.edge_temperature_factor;
  design.film.sill_area_ratio = 0.0;
  design.room_face_transfer_factor = 0.0;
  return design;
}

HourConditions hour_of(const GapCase& c) {
  return {.outdoors = c.outdoors,
          .room_C = c.room.air_temperature_C,
          .room_film_factor = c.room.film_factor,
          .outdoor_vapour_Pa = c.outdoor_vapour_Pa,
          .room_vapour_Pa = c.room_vapour_Pa,
          .pressure = c.pressure};
}

std::vector<HourConditions> weather_about(const GapCase& c, int days, std::uint64_t seed, int parts) {
  Draw draw(seed);
  const Days course{.temperature_K = days_between(days, -4.0, 4.0, draw),
                    .humidity = days_between(days, 0.6, 1.0, draw),
                    .sun_W_m2 = days_between(days, 0.0, 600.0, draw),
                    .wind = days_between(days, 0.0, 1.0, draw),
                    .pressure_Pa = days_between(days, -2.0, 4.0, draw)};
  std::vector<HourConditions> steps;
  for (int i = 0; i < 24 * days * parts; ++i) {
    auto given = at_hour(c, course, (i + 0.5) / parts);
    given.duration_s = 3600.0 / parts;
    steps.push_back(given);
  }
  return steps;
}

GapDesign furnished(const GapCase& c, std::uint64_t seed) {
  Draw draw(seed);
  auto design = design_of(c);
  design.film = {.retention_kg_m2 = draw(0.03, 0.2),
                 .run_off_time_s = draw(0.0, 1.0) < 0.2 ? 0.0 : draw(60.0, 40000.0),
                 .sill_area_ratio = draw(0.005, 0.1),
                 .sill_hold_m = draw(0.0, 0.002),
                 .weep = draw(0.0, 1.0) < 0.3 ? SillWeep::open : SillWeep::none};
  design.room_face_transfer_factor = draw(0.0, 1.0);
  if (draw(0.0, 1.0) < 0.7) {
    design.timber = {.area_m2 = draw(0.01, 0.3),
                     .thickness_m = draw(0.001, 0.005),
                     .coat_equivalent_air_m = draw(0.0, 1.0)};
    design.soak_time_s = draw(0.0, 1.0) < 0.5 ? 0.0 : draw(3600.0, 1e6);
  }
  design.pumped_volume_m3_Pa = draw(0.0, 1e-4);
  design.sill_timber_share = draw(0.1, 0.4);
  if (draw(0.0, 1.0) < 0.3) {
    Stack& drawn = design.drawn_stack.emplace(c.stack);
    drawn.layers[2] = {
        .thickness_m = 0.002, .conductivity_W_mK = 0.06, .emissivity_outer = 0.85, .emissivity_inner = 0.85};
    drawn.gaps[1] = {.width_m = 0.06, .air_stream = {.heat_capacity_flow_W_m2K = 2.0}};
    drawn.layer_count = 3;
  }
  return design;
}

}  // namespace dewgap::test
