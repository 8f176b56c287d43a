#include <cmath>
#include <string>
#include <string_view>

#include "dewgap/airflow/openings.hpp"
#include "dewgap/errors.hpp"
#include "dewgap/numerics/csv_text.hpp"
#include "embedded/room_airflow.hpp"

namespace dewgap {
namespace {

const numerics::CsvTable& leakage_table() {
  static const numerics::CsvTable table(embedded::joint_leakage_csv, "airflow/joint_leakage.csv");
  return table;
}

std::string_view key_of(JointState state) {
  switch (state) {
    case JointState::worn:
      return "worn";
    case JointState::ordinary:
      return "ordinary";
    case JointState::repaired:
      return "repaired";
    case JointState::weather_stripped:
      return "weather_stripped";
    case JointState::painted_shut:
      return "painted_shut";
    case JointState::putty_line:
      return "putty_line";
  }
  throw InvalidInput("joint_state", "no such state");
}

JointLeakage leakage_of_row(const numerics::CsvTable& table, std::size_t row) {
  const double exponent = table.number(row, "exponent");
  // Power law: from the pressure of the published figure to 1 Pa.
  const double to_1_Pa = std::pow(table.number(row, "pressure_Pa"), -exponent);
  return {.name = table.text(row, "name").c_str(),
          .low_m3_h_m = to_1_Pa * table.number(row, "low"),
          .best_m3_h_m = to_1_Pa * table.number(row, "best"),
          .high_m3_h_m = to_1_Pa * table.number(row, "high"),
          .exponent = exponent,
          .source = table.text(row, "source").c_str()};
}

}  // namespace

JointLeakage joint_leakage(JointState state) {
  const auto& table = leakage_table();
  const auto key = key_of(state);
  for (std::size_t row = 0; row < table.row_count(); ++row) {
    if (table.text(row, "state") == key) {
      return leakage_of_row(table, row);
    }
  }
  throw InvalidInput("joint_state", "no row in airflow/joint_leakage.csv");
}

}  // namespace dewgap
