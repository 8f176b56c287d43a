#include "random_networks.hpp"

#include <gtest/gtest.h>

#include <cmath>

namespace dewgap::test {
namespace {

// An opening that passes `conductance` at 1 Pa; kind decides how its resistance is split.
FlowResistance random_resistance(Draw& draw, const numerics::CsvTable& table, std::size_t row) {
  const double at_1_Pa =
      draw.log_between(table.number(row, "conductance_min_m3_h"), table.number(row, "conductance_max_m3_h")) /
      3600.0;
  const double kind = draw.unit();
  const double laminar_only = table.number(row, "laminar_share");
  const double quadratic_only = table.number(row, "quadratic_share");
  double share = draw.unit();
  if (kind < laminar_only) {
    share = 1.0;
  } else if (kind < laminar_only + quadratic_only) {
    share = 0.0;
  }
  return {share / at_1_Pa, (1.0 - share) / (at_1_Pa * at_1_Pa)};
}

std::vector<PlacedOpening> random_openings(Draw& draw, const numerics::CsvTable& table, std::size_t row) {
  const int count = draw.integer(static_cast<int>(table.number(row, "openings_min")),
                                 static_cast<int>(table.number(row, "openings_max")));
  std::vector<PlacedOpening> openings;
  for (int i = 0; i < count; ++i) {
    openings.push_back(
        {random_resistance(draw, table, row), draw.between(0.0, table.number(row, "height_max_m"))});
  }
  return openings;
}

RandomState random_state(Draw& draw, const numerics::CsvTable& table, std::size_t row) {
  const double low = table.number(row, "density_min_kg_m3");
  const double high = table.number(row, "density_max_kg_m3");
  RandomState state;
  state.network.to_room = random_openings(draw, table, row);
  state.network.to_outdoors = random_openings(draw, table, row);
  state.network.reference_height_m = 0.5 * table.number(row, "height_max_m");
  state.densities = {draw.between(low, high), draw.between(low, high), draw.between(low, high)};
  state.pressure_Pa =
      draw.between(table.number(row, "pressure_min_Pa"), table.number(row, "pressure_max_Pa"));
  return state;
}

}  // namespace

double Draw::log_between(double low, double high) {
  return low * std::pow(high / low, unit());
}

void for_each_random_state(const std::function<void(const RandomState&)>& check) {
  const auto table = read_test_table("airflow/states.csv");
  for (std::size_t row = 0; row < table.row_count(); ++row) {
    Draw draw(static_cast<std::uint64_t>(table.number(row, "seed")));
    const int networks = static_cast<int>(table.number(row, "networks"));
    ASSERT_GT(networks, 0);
    for (int i = 0; i < networks; ++i) {
      SCOPED_TRACE(table.text(row, "name") + ", network " + std::to_string(i));
      check(random_state(draw, table, row));
      if (::testing::Test::HasFatalFailure()) {
        return;
      }
    }
  }
}

double sum_in(const GapFlows& flows) {
  return flows.from_room_m3_s + flows.from_outdoors_m3_s;
}
double sum_out(const GapFlows& flows) {
  return flows.to_room_m3_s + flows.to_outdoors_m3_s;
}

}  // namespace dewgap::test
