#include "dewgap/air/humid_air.hpp"
#include "dewgap/gap/steady.hpp"
#include "dewgap/numerics/root_finding.hpp"

namespace dewgap {
namespace {

constexpr double scan_low = 0.05;
constexpr double scan_high = 0.95;
constexpr int scan_steps = 36;
constexpr double edge_tolerance = 1e-3;

/// Coldest face less potential dew point at room humidities (positive is dry), remembering a case that did
/// not settle.
class Margin {
 public:
  Margin(const GapCase& gap_case, GapOptions options) : case_(gap_case), options_(options) {}

  double operator()(double room_humidity) {
    case_.room_vapour_Pa = vapour_pressure_Pa(case_.room.air_temperature_C, room_humidity);
    const auto state = solve_gap(case_, options_);
    if (state.status != SolveStatus::converged) {
      status_ = state.status;
    }
    return state.margin_K;
  }
  SolveStatus status() const { return status_; }

 private:
  GapCase case_;
  GapOptions options_;
  SolveStatus status_ = SolveStatus::converged;
};

}  // namespace

DryRoomHumidities dry_room_humidities(const GapCase& gap_case, GapOptions options) {
  Margin margin(gap_case, options);
  DryRoomHumidities dry;
  double before = scan_low;
  double low = scan_low;
  bool inside = margin(before) >= 0.0;
  for (int i = 1; i <= scan_steps && dry.count < dry.intervals.size(); ++i) {
    const double now = scan_low + (scan_high - scan_low) * i / scan_steps;
    if ((margin(now) >= 0.0) != inside) {
      const auto evaluate = [&](double humidity) { return margin(humidity); };
      const auto edge = numerics::find_root(evaluate, before, now, {.absolute_tolerance = edge_tolerance});
      if (inside) {
        dry.intervals[dry.count++] = {low, edge.root};
      }
      low = edge.root;
      inside = !inside;
    }
    before = now;
  }
  if (inside && dry.count < dry.intervals.size()) {
    dry.intervals[dry.count++] = {low, scan_high};
  }
  if (margin.status() != SolveStatus::converged) {
    return {.status = margin.status(), .count = 0};  // a scan with a hole in it is no answer
  }
  return dry;
}

}  // namespace dewgap
