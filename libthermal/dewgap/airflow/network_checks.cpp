#include "dewgap/airflow/network_checks_kernel.hpp"
#include "dewgap/errors.hpp"

namespace dewgap::airflow_kernel {
namespace {

void require_valid(const std::vector<PlacedOpening>& openings) {
  for (const auto& opening : openings) {
    require_in_range(opening.resistance.laminar_Pa_s_m3, {0.0, 1e30}, "laminar_Pa_s_m3", "Pa s/m3");
    require_in_range(opening.resistance.quadratic_Pa_s2_m6, {0.0, 1e40}, "quadratic_Pa_s2_m6", "Pa s2/m6");
    require_in_range(opening.height_m, {-1.0, 50.0}, "height_m", "m");
  }
}

}  // namespace

void require_valid(const GapNetwork& network) {
  require_valid(network.to_room);
  require_valid(network.to_outdoors);
  require_in_range(network.reference_height_m, {-1.0, 50.0}, "reference_height_m", "m");
}

void require_valid(const AirDensities& densities) {
  require_in_range(densities.outdoor_kg_m3, {0.5, 2.0}, "outdoor_kg_m3", "kg/m3");
  require_in_range(densities.gap_kg_m3, {0.5, 2.0}, "gap_kg_m3", "kg/m3");
  require_in_range(densities.room_kg_m3, {0.5, 2.0}, "room_kg_m3", "kg/m3");
}

void require_valid(const PressureWithinHour& pressure) {
  require_in_range(pressure.mean_Pa, {-1000.0, 1000.0}, "mean_Pa", "Pa");
  require_in_range(pressure.standard_deviation_Pa, {0.0, 1000.0}, "standard_deviation_Pa", "Pa");
}

}  // namespace dewgap::airflow_kernel
