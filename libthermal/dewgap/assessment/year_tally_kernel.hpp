// What a year of hours adds up to, for one option. Internal to assessment/.
#pragma once

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>

#include "dewgap/assessment/year_run_weather_kernel.hpp"

namespace dewgap {

/// Time above a threshold, in all and on end, of a figure that goes straight between the ends of steps.
class Spell {
 public:
  explicit Spell(double threshold) : threshold_(threshold) {}
  /// The figure goes from one to the other within `hours` and stays there for the rest of the step.
  void step(double before, double after, double hours) {
    const double above_h = hours * share_above(before, after);
    total_h_ += above_h;
    run_h_ += above_h;
    longest_h_ = std::max(longest_h_, run_h_);
    if (after <= threshold_) {
      run_h_ = 0.0;
    }
  }
  double total_h() const { return total_h_; }
  double longest_h() const { return std::min(longest_h_, total_h_); }  // sums may differ by rounding

 private:
  double share_above(double before, double after) const {
    const double high = std::max(before, after) - threshold_;
    const double low = std::min(before, after) - threshold_;
    return high <= 0.0 ? 0.0 : low >= 0.0 ? 1.0 : high / (high - low);
  }

  double threshold_;
  double total_h_ = 0.0;
  double run_h_ = 0.0;
  double longest_h_ = 0.0;
};

/// When the last film of a gap that ends the step dry has gone, part of the step. A part of 1 says that a
/// face was dry before.
double last_drying_part(const HourState& state);

/// Whether an hour that begins so late ends when a pane is looked at in the morning, at 8.
bool ends_in_the_morning(std::size_t hour_of_day);

/// Which way air goes in an hour in which one way has it.
enum class ClearWay { none, outwards, inwards };
ClearWay clear_way(const HourState& state);

/// What of an option lies outside its own state.
struct TallyContext {
  const SampleHour& now;
  double room_vapour_Pa;       ///< under the option
  double through_before_m3_s;  ///< outdoor air that comes through the old window as it is in this hour
};

/// Shares and factors of a sample that a tally needs.
struct TallyTerms {
  double edge_factor = 1.0;
  double draught_needed = 0.0;
  double heated_share = 1.0;
  double start_timber_kg_kg = 0.0;
  /// fRsi of the coldest place towards the room, where the edge's section is solved; none: edge_factor of the
  /// face.
  struct RoomFactors {
    double without_sheet = 0.0;
    double with_sheet = 0.0;
  };
  std::optional<RoomFactors> room_factors = std::nullopt;
};

class YearTally {
 public:
  explicit YearTally(const TallyTerms& terms);

  /// An hour of a window with its sheet.
  void add_with_sheet(const TallyContext& at, const HourState& state);
  /// An hour of the old window. `timber_kg_kg` is that of the wood beside it, at the hour's end.
  void add_old_window(const TallyContext& at, const HourState& state, double timber_kg_kg);
  /// An hour of the old window while the sheet is away: only its timber, room face and heat count.
  void add_without_sheet(const TallyContext& at, const HourState& state, double timber_kg_kg);
  /// Film and pool are wiped off.
  void wipe();

  /// The year, judged beside the longest wet run of the old window's timber, h.
  OptionYear year(double timber_run_as_it_is_h) const;
  double longest_timber_run_h() const { return timber_.longest_h(); }
  double timber_kg_kg() const { return timber_kg_kg_; }

 private:
  struct Film {
    double held_g_m2 = 0.0;
    double water_g_m2 = 0.0;
    double frost_g_m2 = 0.0;
    double falls_in_h = 1.0;  ///< part of the hour in which it reaches its end: less when it dries out
  };
  void add_film(const SampleHour& now, const Film& film);
  void add_pool(const HourState& state);
  void add_timber(double timber_kg_kg);
  double edge_C(const TallyContext& at, double face_C) const;
  double room_spot_C(const TallyContext& at, const HourState& state, std::size_t room_face) const;
  void add_room_face(const TallyContext& at, const HourState& state, std::size_t room_face);
  void add_heat(const TallyContext& at, const HourState& state);
  void add_way(const SampleHour& now, const HourState& state);
  bool settled(const HourState& state);
  DampYear damp_year() const;

  TallyTerms terms_;
  const air_kernel::SaturationTable& saturation_;
  Spell wet_;
  Spell frosted_;
  Spell pool_;
  Spell timber_;
  Film film_;  ///< at the end of the hour before, as the next four
  double pool_g_m2_ = 0.0;
  double timber_kg_kg_ = 0.0;
  double peak_film_g_m2_ = 0.0;
  double peak_pool_g_m2_ = 0.0;
  double peak_timber_kg_kg_ = 0.0;
  double run_off_g_m2_ = 0.0;
  double drained_g_m2_ = 0.0;
  double heat_J_ = 0.0;
  std::array<double, 12> face_humidity_sum_{};
  std::array<int, 12> face_hours_{};
  int misty_mornings_ = 0;
  int edge_mist_hours_ = 0;
  int inwards_hours_ = 0;
  int outwards_hours_ = 0;
  int cold_hours_ = 0;
  double cold_from_room_m3_s_ = 0.0;  ///< sums over those hours, as the next two
  double cold_from_outdoors_m3_s_ = 0.0;
  double cold_to_outdoors_m3_s_ = 0.0;
  int unsettled_hours_ = 0;
};

}  // namespace dewgap
