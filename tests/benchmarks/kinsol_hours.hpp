// The gap hour by hour with SUNDIALS KINSOL in the place of the library's solvers: the same equations, lagged
// quantities and stores as gap/hours.hpp has them.
//
// Left out, in KINSOL's favour: the ledger, fluxes and flags of HourState, the curtain, the search for
// another start when a step stalls, and the search for what flow network and timber are worked out with
// before the hour's end is known (HourGuess): KINSOL is handed what the library found.
#pragma once

#include <optional>

#include "bench_year.hpp"
#include "dewgap/gap/hour_kernel.hpp"
#include "hour_equations.hpp"
#include "kinsol_system.hpp"

namespace dewgap::bench {

/// Gap's temperature that the flow network's density has, and pane and vapour about which the timber is
/// linear.
struct HourGuess {
  double gap_C = 0.0;
  double pane_C = 0.0;
  double vapour_Pa = 0.0;
};

/// Where each hour's search begins.
enum class Start {
  hour_before,       ///< the solution of the hour before
  line_through_two,  ///< on a straight line through the two hours before, as the library does it
  one_guess          ///< the same fixed guess for all hours
};

template <Flows flows, class Correlations>
class KinsolHours {
 public:
  KinsolHours(const GapDesign& design, double closure_W_m2, Start start);

  HourState step(const HourConditions& given, const HourGuess& guess);

  using Equations = HourEquations<flows, Correlations>;
  using Unknowns = typename KinsolSystem<Equations>::Unknowns;
  /// Largest difference between the Jacobian at the last hour's solution and central differences, over the
  /// largest entry of its row.
  double jacobian_error();
  const GapStore& store() const { return store_; }
  const HourData& hour() const { return equations_.hour; }
  const AirDensities& densities() const { return densities_; }
  long searches_again() const { return searches_again_; }  ///< hours that KIN_NONE did not settle

 private:
  void set_air(const HourConditions& given);
  void set_heat(const HourConditions& given);
  void set_surfaces(const HourConditions& given);
  void set_vapour(const HourConditions& given);
  Unknowns start_of_hour() const;
  bool solve(HourState& state);
  void settle(const HourConditions& given, HourState& state);
  void settle_films(const HourConditions& given, HourState& state);
  void settle_timber(const HourConditions& given, double sill_C);
  double sill_C(const HourConditions& given, double pane_C) const;

  GapDesign design_;
  Start start_;
  AirDensities densities_;
  Equations equations_;
  KinsolSystem<Equations> kinsol_;
  std::optional<airflow_kernel::HourlyFlows> network_;
  std::array<gap_kernel::TimberNode, 2> timber_;  ///< bottom rail, and the rest
  double room_share_ = 0.0;                       ///< of breathed and pumped air that comes from the room
  double pumped_volume_m3_Pa_ = 0.0;
  GustLane deviate_{};
  GapStore store_;
  double air_store_kg_Pa_ = 0.0;
  HourGuess guess_;
  Unknowns now_{};
  Unknowns before_{};
  int known_ = 0;
  long searches_again_ = 0;
  // From the hour before.
  bool faces_known_ = false;
  double gap_C_ = 10.0;
  double gap_C_before_ = 10.0;
  double gap_convection_W_m2K_ = 2.0;
  double room_convection_W_m2K_ = 3.0;
};

extern template class KinsolHours<Flows::unknown, PreparedCorrelations>;
extern template class KinsolHours<Flows::given, PreparedCorrelations>;
extern template class KinsolHours<Flows::unknown, CalledCorrelations>;

}  // namespace dewgap::bench
