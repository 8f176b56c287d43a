// A year of hours gathered by month.
#pragma once

#include <array>
#include <optional>

#include "dewgap/assessment/gap_year.hpp"

namespace dewgap::tools {

/// A mean in the making.
class RunningMean {
 public:
  void add(double value) {
    sum_ += value;
    ++count_;
  }
  /// Nothing where nothing was added.
  std::optional<double> value() const;

 private:
  double sum_ = 0.0;
  std::size_t count_ = 0;
};

/// Of a month or of the year. What is of the gap counts the hours in which the sheet hangs.
struct PeriodFigures {
  std::size_t hours = 0;
  std::size_t sheet_hours = 0;
  RunningMean outdoor_C;
  RunningMean room_relative_humidity;  ///< 0..1
  RunningMean gap_C;
  RunningMean pane_face_C;      ///< of the old pane, towards the gap
  RunningMean gap_dew_point_C;  ///< over water
  RunningMean from_room_m3_s;
  RunningMean from_outdoors_m3_s;
  double hours_wet = 0.0;
  std::size_t misty_mornings = 0;
  std::size_t frost_hours = 0;  ///< over 1 g/m2 at the hour's end
  double peak_film_kg_m2 = 0.0;
  double peak_pool_kg_m2 = 0.0;
  double run_off_kg_m2 = 0.0;
  double drained_kg_m2 = 0.0;
  std::optional<double> peak_timber_kg_kg;  ///< nothing where no timber faces the gap
  bool timber_was_full = false;             ///< at the model's cap in some hour
  double heat_J =
      0.0;  ///< through glass and gap of the window, all hours, incoming air not charged: no saving

  void add(const GapHourRow& row);
};

struct MonthFigures {
  std::size_t month = 0;  ///< 0 to 11
  PeriodFigures figures;
};

struct YearFigures {
  PeriodFigures year;
  std::array<PeriodFigures, 12> by_month;
  std::optional<std::size_t> first_month;  ///< in which the sheet goes up

  void add(const GapHourRow& row);
  /// From the month in which the sheet goes up.
  std::array<MonthFigures, 12> months_in_turn() const;
};

/// Relative humidity of the room, 0..1, and the dew point of the gap's air over water, C, of an hour.
double room_relative_humidity(const GapHourRow& row);
double gap_dew_point_C(const GapHourRow& row);

}  // namespace dewgap::tools
