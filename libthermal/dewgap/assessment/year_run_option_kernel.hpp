// One option stepped through a sample's hours. Internal to assessment/.
#pragma once

#include <optional>

#include "dewgap/assessment/year_run_weather_kernel.hpp"
#include "dewgap/gap/hour_kernel.hpp"

namespace dewgap {

/// The wood beside the old window: it faces the room's air, as cold as the pane's edge. Water that runs down
/// the pane does not soak into it here (people wipe it), which judges the options the more strictly.
class OpenTimber {
 public:
  OpenTimber(const GapDesign& sheet, double edge_factor, double start_kg_kg);
  /// Moisture at the hour's end, kg/kg; 0 without timber.
  double step(const SampleHour& now, const HourState& old_window);
  void set(double moisture_kg_kg) { moisture_kg_kg_ = moisture_kg_kg; }
  double moisture_kg_kg() const { return moisture_kg_kg_; }

 private:
  std::optional<moisture_kernel::PreparedLayer> layer_;
  double transfer_kg_m2sPa_;
  double edge_factor_;
  double moisture_kg_kg_;
  double humidity_ = 0.5;
};

struct OptionHour {
  HourConditions given;
  HourState state;
  bool sheet_hangs = true;
};

/// For one option by itself: run_option_year and drying runs.
class OptionRun {
 public:
  OptionRun(const YearSetting& year, const UnknownValues& sample, VentOption option, double excess_scale);
  /// Puts water and moisture in the gap; its air takes the room's vapour at the hour.
  void start_wet(GapStore store, std::size_t hour);
  OptionHour step(std::size_t hour);
  bool has_timber() const { return has_timber_; }

 private:
  bool hangs_at(std::size_t hour) const;
  void take_off();
  void put_back(double room_vapour_Pa);

  const YearSetting& year_;
  VentOption option_;
  SampleWeather weather_;
  double excess_factor_;
  bool has_timber_;
  bool hangs_ = true;
  gap_kernel::GapHours<2> gap_;
  gap_kernel::GapHours<1> old_window_;
  OpenTimber timber_;
};

/// The gap as fitted: dry, its air the room's, its timber as it was.
GapStore fitted_store(SampleWeather& weather, const GapDesign& design);
/// Checked designs.
gap_kernel::GapHours<2> sheet_hours(const GapDesign& design, const GapStore& start);
gap_kernel::GapHours<1> old_window_hours(const Setting& setting, const UnknownValues& sample);

}  // namespace dewgap
