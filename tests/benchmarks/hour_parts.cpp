#include "hour_parts.hpp"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <limits>
#include <memory>
#include <numeric>
#include <vector>

#include "cpu_clock.hpp"

namespace dewgap::bench {
namespace {

using Terms = gap_kernel::StepTerms<2>;

/// What one hour hands to the network and to the heat balance.
struct Handed {
  AirDensities densities;
  Terms terms;
  GapAirStream stream;
};

Terms terms_of(const HourData& hour, const HourConditions& given) {
  Terms terms;
  terms.saturation = &air_kernel::saturation_table();
  terms.duration_s = given.duration_s;
  terms.outdoor_C = given.outdoors.air_temperature_C;
  terms.sill_factor = hour.sill_factor;
  terms.capacity_W_m2K = hour.capacity_W_m2K;
  terms.temperature_before_K = hour.before_K;
  for (std::size_t f = 1; f < 4; ++f) {
    terms.films[f] = {.held_kg_m2 = hour.film_kg_m2s[f] * given.duration_s,
                      .latent_before = {.value_J_kg = hour.latent_before_J_kg[f], .slope_J_kgK = 0.0}};
  }
  const double with_air = hour.vapour_with_air_kg_m5Pa;
  terms.vapour = {
      .conductance_kg_m2sPa =
          hour.conductance_kg_m2sPa + with_air * (hour.from_room_m3_s + hour.from_outdoors_m3_s),
      .offered_kg_m2s = hour.offered_kg_m2s + with_air * (hour.from_room_m3_s * hour.room_vapour_Pa +
                                                          hour.from_outdoors_m3_s * hour.outdoor_vapour_Pa),
      .transfer_kg_m2sPa = hour.transfer_kg_m2sPa,
      .limit_kg_m2s = hour.limit_kg_m2s};
  terms.room = {.transfer_kg_m2sPa = hour.room_transfer_kg_m2sPa,
                .room_vapour_Pa = hour.room_vapour_Pa,
                .limit_kg_m2s = hour.room_limit_kg_m2s};
  return terms;
}

std::vector<Handed> record(const GapDesign& design, std::span<const BenchHour> year) {
  KinsolHours<Flows::given, PreparedCorrelations> hours(design, 1e-9, Start::hour_before);
  std::vector<Handed> handed(year.size());
  for (std::size_t i = 0; i < year.size(); ++i) {
    const auto& given = year[i].given;
    hours.step(given, year[i].guess);
    const auto& hour = hours.hour();
    const double air_m3_s = hour.from_room_m3_s + hour.from_outdoors_m3_s;
    handed[i] = {
        .densities = hours.densities(),
        .terms = terms_of(hour, given),
        .stream = {.heat_capacity_flow_W_m2K = hour.heat_with_air_J_m5K * air_m3_s,
                   .inlet_temperature_C = (hour.from_room_m3_s * given.room_C +
                                           hour.from_outdoors_m3_s * given.outdoors.air_temperature_C) /
                                          air_m3_s}};
  }
  return handed;
}

/// Work is told a block of hours and begins anew with the first. The least time of each block counts.
template <class Begin>
double best_us_a_step(std::size_t steps, int repetitions, Begin&& begin) {
  std::vector<double> best_s((steps + block_hours - 1) / block_hours,
                             std::numeric_limits<double>::infinity());
  for (int i = 0; i < repetitions; ++i) {
    auto step = begin();
    for (std::size_t b = 0; b < best_s.size(); ++b) {
      const double begin_s = cpu_seconds();
      for (std::size_t hour = b * block_hours; hour < std::min(steps, (b + 1) * block_hours); ++hour) {
        step(hour);
      }
      best_s[b] = std::min(best_s[b], cpu_seconds() - begin_s);
    }
  }
  return 1e6 * std::accumulate(best_s.begin(), best_s.end(), 0.0) / static_cast<double>(steps);
}

}  // namespace

void print_parts(const GapDesign& design, std::span<const BenchHour> year, double closure_W_m2,
                 int repetitions) {
  const auto handed = record(design, year);
  double sink = 0.0;
  const double whole = best_us_a_step(year.size(), repetitions, [&] {
    auto hours = std::make_shared<gap_kernel::GapHours<2>>(design, GapStore{}, HourOptions{closure_W_m2});
    return [&, hours](std::size_t i) { sink += hours->step(year[i].given).vapour_Pa; };
  });
  const double network = best_us_a_step(year.size(), repetitions, [&] {
    auto flows = std::make_shared<airflow_kernel::HourlyFlows>(design.network, static_cast<int>(gust_points));
    return [&, flows](std::size_t i) {
      sink += flows->at(handed[i].densities, year[i].given.pressure).from_room_m3_s;
    };
  });
  const numerics::NewtonOptions newton{
      .max_iterations = 40, .relative_tolerance = 0.0, .absolute_tolerance = closure_W_m2};
  const double heat = best_us_a_step(year.size(), repetitions, [&] {
    auto solver = std::make_shared<gap_kernel::StepHeatSolver<2, 2>>(design.stack);
    return [&, solver](std::size_t i) {
      const auto& given = year[i].given;
      solver->set_weather(given.outdoors, {.air_temperature_C = given.room_C,
                                           .radiant_temperature_C = given.room_C,
                                           .film_factor = given.room_film_factor});
      solver->set_sun(given.absorbed_sun_W_m2);
      solver->set_stream(handed[i].stream);
      sink += solver->predict(handed[i].terms).gap_air_K;
      sink += solver->solve(handed[i].terms, newton).gap_air_K;
      solver->accept();
    };
  });
  const double rest = whole - network - heat;
  std::printf(
      "  ours %.2f us a step: flow network once %.2f (%.0f %%), heat once %.2f (%.0f %%), rest and repeated "
      "passes %.2f (%.0f %%)%s\n",
      whole, network, 100.0 * network / whole, heat, 100.0 * heat / whole, rest, 100.0 * rest / whole,
      std::isfinite(sink) ? "" : " not finite");
}

}  // namespace dewgap::bench
