// One window stepped through its hours. Private to the library: input is checked by run_gap_hours or by who
// makes the designs.
#pragma once

#include <optional>

#include "dewgap/air/humid_air.hpp"
#include "dewgap/airflow/hourly_flows_kernel.hpp"
#include "dewgap/gap/hour_heat_solver_kernel.hpp"
#include "dewgap/gap/hours.hpp"
#include "dewgap/moisture/timber_kernel.hpp"

namespace dewgap::gap_kernel {

inline constexpr double fullest_timber_kg_kg = 1.2;  // softwood full of water takes no more (from memory)

inline double film_kg_m2(const FilmState& film) {
  return film.water_kg_m2 + film.frost_kg_m2;
}

/// Air that passes the gap in a step, breathing and pumping included.
struct PassingAir {
  airflow_kernel::MeanFlows network;
  double from_room_m3_s = 0.0;
  double from_outdoors_m3_s = 0.0;
  double total_m3_s() const { return from_room_m3_s + from_outdoors_m3_s; }
  /// Temperature of what enters; only when something does.
  double inlet_C(const HourConditions& given) const {
    return (from_room_m3_s * given.room_C + from_outdoors_m3_s * given.outdoors.air_temperature_C) /
           total_m3_s();
  }
};

/// A layer of timber and its step on a straight line about a guessed vapour pressure.
struct TimberNode {
  moisture_kernel::PreparedLayer layer;
  double moisture_kg_kg = 0.15;
  DampLayerStep step{.relative_humidity = 0.5};
  double from_vapour_Pa = 0.0;

  double held_kg() const { return layer.dry_mass_kg * moisture_kg_kg; }
  /// What it gives in the step when the air ends at this vapour pressure.
  double given_kg(double vapour_Pa, double duration_s) const {
    return step.given_kg - duration_s * step.response_kg_sPa * (vapour_Pa - from_vapour_Pa);
  }
};

template <std::size_t Panes>
class GapHours {
 public:
  GapHours(const GapDesign& design, const GapStore& start, const HourOptions& options);

  HourState step(const HourConditions& conditions);
  GapStore store() const;
  void set_store(const GapStore& store);
  /// The next step's search starts afresh.
  void forget();
  /// What flows and timber of the last step were worked out with.
  const auto& guess() const { return guess_; }

 private:
  using Terms = StepTerms<Panes>;

  /// What flows and timber are worked out with before the step's end is known.
  struct Guess {
    double gap_C = 0.0;
    double pane_C = 0.0;
    double vapour_Pa = 0.0;
  };
  struct Pass {
    Guess guess;
    PassingAir air;
    Terms terms;
    StepHeat<Panes> heat;
    VapourAtEnd vapour;  ///< only with a gap, of a settled pass
    Guess found;
    bool settled() const { return heat.status == SolveStatus::converged; }
    double miss_K() const { return found.gap_C - guess.gap_C; }
  };
  Guess predict(const HourConditions& given, Terms& terms);
  VapourAtEnd vapour_at(const Terms& terms, const std::array<double, 2 * Panes>& face_K) const;
  Guess guess_of(const std::array<double, 2 * Panes>& face_K, double gap_air_K,
                 const VapourAtEnd& vapour) const;
  Pass solve_pass(const HourConditions& given, const Terms& terms, const Guess& guess);
  bool is_as_guessed(const Pass& pass) const;
  Pass solve_passes(const HourConditions& given);
  void take_weather(const HourConditions& given);
  PassingAir passing_air(const HourConditions& given, double flow_gap_C);
  Terms terms_for(const HourConditions& given);
  void add_surfaces(const HourConditions& given, Terms& terms) const;
  void linearise_timber(const HourConditions& given, const Terms& terms, const Guess& guess);
  void set_air(const HourConditions& given, const PassingAir& air, Terms& terms);
  void set_stream(const HourConditions& given, const PassingAir& air);
  void settle_vapour(const HourConditions& given, const Pass& pass, HourState& state);
  void account(const HourConditions& given, const PassingAir& air, double vapour_Pa, HourState& state) const;
  void step_films(const HourConditions& given, const VapourAtEnd& vapour, const StepHeat<Panes>& heat,
                  double sill_C, HourState& state);
  void step_timber(const HourConditions& given, double vapour_Pa, double sill_C);
  void step_room_face(const HourConditions& given, const Terms& terms, const StepHeat<Panes>& heat,
                      HourState& state);
  void read_heat(const HourConditions& given, const PassingAir& air, const StepHeat<Panes>& heat,
                 HourState& state) const;
  double held_kg() const;

  GapDesign design_;
  HourOptions options_;
  numerics::NewtonOptions newton_;
  const air_kernel::SaturationTable* saturation_;
  GapStore store_;
  airflow_kernel::HourlyFlows flows_;
  StepHeatSolver<Panes, Panes> day_;
  std::optional<StepHeatSolver<Panes + 1, Panes>> night_;
  bool drawn_ = false;
  std::optional<std::array<TimberNode, 2>> timber_;  ///< bottom rail, and the rest
  double air_store_kg_Pa_ = 0.0;                     ///< vapour that the gap's air holds per Pa
  bool breathes_ = false;                            ///< through any opening
  double room_share_ = 0.0;                          ///< of breathed and pumped air that comes from the room
  double pumped_volume_m3_Pa_ = 0.0;
  PassingAir air_before_;
  Guess guess_;
  GapPast past_;
  bool past_known_ = false;
};

/// Throws InvalidInput for a field outside its range.
void require_valid(const GapDesign& design);
void require_valid(const GapStore& store);
void require_valid(const HourConditions& conditions);

}  // namespace dewgap::gap_kernel
