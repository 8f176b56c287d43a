#include <algorithm>
#include <optional>

#include "dewgap/assessment/year_run_option_kernel.hpp"
#include "dewgap/errors.hpp"

namespace dewgap {
namespace {

constexpr double dry_timber_kg_kg = 0.18;  // below Wood Handbook's caution by a margin: our convention
constexpr double dry_film_kg_m2 = 1e-3 * wet_from_g_m2;

bool is_all_dry(const OptionHour& at, bool has_timber) {
  const auto& state = at.state;
  const double wettest_kg_kg = std::max(state.timber_kg_kg, state.side_timber_kg_kg);
  const bool timber_dry = !has_timber || wettest_kg_kg <= dry_timber_kg_kg;
  const bool faces_dry = state.pane_film_kg_m2 < dry_film_kg_m2 && state.sheet_film_kg_m2 < dry_film_kg_m2 &&
                         state.pool_kg_m2 < dry_film_kg_m2;
  // Without its sheet there is no gap left to dry.
  return state.status == SolveStatus::converged && timber_dry && (faces_dry || !at.sheet_hangs);
}

}  // namespace

std::optional<double> days_until_dry(const YearSetting& year, const UnknownValues& sample, VentOption option,
                                     double pool_g_m2, double timber_kg_kg, std::size_t start_hour) {
  const std::size_t hours = year.outdoor_C.size();
  require_in_range(pool_g_m2, {0.0, 1e6}, "pool_g_m2", "g/m2");
  require_in_range(timber_kg_kg, {0.0, 2.5}, "timber_kg_kg", "kg/kg");
  require_in_range(static_cast<double>(start_hour), {0.0, static_cast<double>(hours) - 1.0}, "start_hour",
                   "h");
  OptionRun run(year, sample, option, 1.0);
  const double film_kg_m2 = 1e-3 * sample[Unknown::film_retention];
  run.start_wet({.pane = {.water_kg_m2 = film_kg_m2, .sill_kg_m2 = 1e-3 * pool_g_m2},
                 .sheet = {.water_kg_m2 = film_kg_m2},
                 .timber_kg_kg = timber_kg_kg},
                start_hour);
  for (std::size_t step = 0; step < hours; ++step) {
    if (is_all_dry(run.step((start_hour + step) % hours), run.has_timber())) {
      return static_cast<double>(step + 1) / 24.0;
    }
  }
  return std::nullopt;
}

}  // namespace dewgap
