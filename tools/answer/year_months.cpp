#include "tools/answer/year_months.hpp"

#include <algorithm>

#include "dewgap/air/humid_air.hpp"
#include "dewgap/air/saturation.hpp"
#include "dewgap/moisture/year_bands.hpp"

namespace dewgap::tools {
namespace {

constexpr double wet_from_kg_m2 = wet_from_g_m2 / 1000.0;

}  // namespace

std::optional<double> RunningMean::value() const {
  if (count_ == 0) return std::nullopt;
  return sum_ / static_cast<double>(count_);
}

double room_relative_humidity(const GapHourRow& row) {
  return relative_humidity(row.conditions.room_C, row.conditions.room_vapour_Pa);
}

double gap_dew_point_C(const GapHourRow& row) {
  return dew_point_C(row.state.vapour_Pa, SaturationFormula::murphy_koop, Phase::water);
}

void PeriodFigures::add(const GapHourRow& row) {
  const auto& state = row.state;
  ++hours;
  outdoor_C.add(row.conditions.outdoors.air_temperature_C);
  room_relative_humidity.add(tools::room_relative_humidity(row));
  heat_J += state.heat_W * row.conditions.duration_s;
  if (!row.sheet_hangs) return;
  ++sheet_hours;
  gap_C.add(state.gap_C);
  pane_face_C.add(state.face_C[1]);
  gap_dew_point_C.add(tools::gap_dew_point_C(row));
  from_room_m3_s.add(state.from_room_m3_s);
  from_outdoors_m3_s.add(state.from_outdoors_m3_s);
  hours_wet += row.wet_share;
  misty_mornings += row.misty_at_8 ? 1 : 0;
  frost_hours += state.frost_kg_m2 > wet_from_kg_m2 ? 1 : 0;
  peak_film_kg_m2 = std::max({peak_film_kg_m2, state.pane_film_kg_m2, state.sheet_film_kg_m2});
  peak_pool_kg_m2 = std::max(peak_pool_kg_m2, state.pool_kg_m2);
  run_off_kg_m2 += state.run_off_kg_m2;
  drained_kg_m2 += state.drained_kg_m2;
  if (row.timber_kg_kg) peak_timber_kg_kg = std::max(peak_timber_kg_kg.value_or(0.0), *row.timber_kg_kg);
  timber_was_full = timber_was_full || row.timber_is_full;
}

void YearFigures::add(const GapHourRow& row) {
  if (!first_month) first_month = row.month;
  year.add(row);
  by_month.at(row.month).add(row);
}

std::array<MonthFigures, 12> YearFigures::months_in_turn() const {
  std::array<MonthFigures, 12> months;
  for (std::size_t i = 0; i < months.size(); ++i) {
    const std::size_t month = (first_month.value_or(0) + i) % months.size();
    months[i] = {month, by_month[month]};
  }
  return months;
}

}  // namespace dewgap::tools
