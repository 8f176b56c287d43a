#include "dewgap/assessment/year_design_kernel.hpp"

#include <algorithm>

#include "dewgap/airflow/pumping.hpp"
#include "dewgap/assessment/edge_of_window_kernel.hpp"
#include "dewgap/assessment/window_openings_kernel.hpp"
#include "dewgap/errors.hpp"

namespace dewgap {
namespace {

constexpr double diffusion_mean_C =
    10.0;                               // between room and outdoors through a heating season: our convention
constexpr double weep_hold_m = 0.0005;  // stands below an open weep: our convention
constexpr double most_deflection_m_Pa = 0.001;  // of the sheet's centre, a few mm in a gust: our convention

/// Specific heat, J/(kg K): EN ISO 10456 (glass, acrylic, polycarbonate), handbooks for polyesters; from
/// memory.
double specific_heat_J_kgK(SheetKind kind) {
  switch (kind) {
    case SheetKind::glass:
      return 750.0;
    case SheetKind::acrylic:
      return 1500.0;
    case SheetKind::polycarbonate:
    case SheetKind::petg:
    case SheetKind::pet_film:
      return 1200.0;
  }
  return 1200.0;
}

double glass_heat_capacity_J_m2K(const Setting& setting) {
  return glass_properties().density_kg_m3.best * specific_heat_J_kgK(SheetKind::glass) *
         setting.window.glass_thickness_m;
}

double sheet_heat_capacity_J_m2K(const Setting& setting) {
  const auto& window = setting.window;
  return window.sheet.density_kg_m3.best * specific_heat_J_kgK(setting.survey->sheet.material) *
         window.sheet_thickness_m;
}

/// Floor of the gap over the glass behind the sheet. On the glass each pane has its own; else it is the
/// opening's.
double sill_area_ratio(const Setting& setting) {
  const auto& window = setting.window;
  const bool on_glass = setting.survey->sheet.cover == Cover::glass;
  const double ratio = on_glass ? window.gap_width_m / window.glass_height_m
                                : window.gap_width_m * window.width_m / window.areas.glass_m2;
  return std::min(1.0, ratio);
}

FilmSurface film_surface(const Setting& setting, const UnknownValues& sample, VentOption vent) {
  return {.retention_kg_m2 = 1e-3 * sample[Unknown::film_retention],
          .run_off_time_s = 3600.0 * sample[Unknown::run_off_time],
          .sill_area_ratio = sill_area_ratio(setting),
          .sill_hold_m = weep_hold_m,
          .weep = vent == VentOption::weep_to_outdoors ? SillWeep::open : SillWeep::none};
}

/// Size of one sheet, and how many there are.
struct SheetSize {
  double width_m;
  double height_m;
  double count;
};
SheetSize sheet_size(const Setting& setting) {
  const auto& window = setting.window;
  if (setting.survey->sheet.cover != Cover::glass) {
    return {window.width_m, window.height_m, 1.0};
  }
  const double panes = setting.survey->window.pane_count;
  return {window.areas.glass_m2 / (panes * window.glass_height_m), window.glass_height_m, panes};
}

/// Air that the sheet moves a pascal: a plate's, and of a thin sheet or stretched film, which its own stretch
/// holds back, no more than that of a centre which moves a millimetre a pascal.
double pumped_volume_m3_Pa(const Setting& setting) {
  const auto size = sheet_size(setting);
  const FlexingSheet sheet{.width_m = size.width_m,
                           .height_m = size.height_m,
                           .thickness_m = setting.window.sheet_thickness_m,
                           .youngs_modulus_Pa = setting.window.sheet.young_modulus_Pa.best,
                           .poisson_ratio = setting.window.sheet.poisson_ratio};
  const double held_back = std::min(1.0, most_deflection_m_Pa / plate_deflection_per_pressure_m_Pa(sheet));
  return size.count * held_back * plate_volume_per_pressure_m3_Pa(sheet);
}

/// What old window and window with sheet share.
GapDesign bare_design(const Setting& setting, const UnknownValues& sample, VentOption vent) {
  GapDesign design;
  design.pane_heat_capacity_J_m2K = {glass_heat_capacity_J_m2K(setting), sheet_heat_capacity_J_m2K(setting)};
  design.area_m2 = setting.window.areas.glass_m2;
  design.edge_temperature_factor = sample[Unknown::edge_factor];
  design.film = film_surface(setting, sample, vent);
  return design;
}

}  // namespace

DampLayer facing_timber(const Setting& setting, const UnknownValues& sample) {
  const auto kind = setting.survey->window.frame;
  if (!is_timber(kind)) {
    return {};
  }
  // Dry density from handbooks, resistance between EN ISO 10456's dry and wet figures (from memory).
  const bool soft = kind == FrameKind::softwood;
  return {.area_m2 = setting.window.areas.sheet_perimeter_m * setting.window.gap_width_m,
          .thickness_m = sample[Unknown::timber_depth],
          .dry_density_kg_m3 = soft ? 450.0 : 650.0,
          .vapour_resistance_factor = soft ? 30.0 : 80.0,
          .coat_equivalent_air_m = sample[Unknown::timber_coat]};
}

AbsorbedShares absorbed_sun_shares(const Setting& setting, const UnknownValues& sample) {
  const double usual = glass_properties().solar_absorptance.best;
  const double glass = usual * sample[Unknown::glass_sun_absorbed];
  const double passed = setting.glass_solar_transmittance - (glass - usual);
  const double sheet = setting.window.sheet.solar_absorptance.best * sample[Unknown::sheet_sun_absorbed];
  return {.glass = glass, .sheet = passed * sheet};
}

GapDesign old_window_design(const Setting& setting, const UnknownValues& sample) {
  GapDesign design = bare_design(setting, sample, VentOption::sealed);
  design.panes = PaneCount::old_pane;
  design.stack = single_stack(setting, sample, CurtainState::open);
  if (has_curtain(setting)) {
    design.drawn_stack = single_stack(setting, sample, CurtainState::drawn);
  }
  design.network = old_window_network(setting, covered_openings(setting, sample));
  return design;
}

GapDesign sheet_design(const Setting& setting, const UnknownValues& sample, VentOption vent,
                       TapeFault fault) {
  GapDesign design = bare_design(setting, sample, vent);
  design.panes = PaneCount::with_sheet;
  design.edge_temperature_factor = gap_edge_factor(setting, sample);
  design.stack = double_stack(setting, sample, CurtainState::open);
  if (has_curtain(setting)) {
    design.drawn_stack = double_stack(setting, sample, CurtainState::drawn);
  }
  design.network = network_for(setting, sample, vent, fault);
  design.diffusion_to_room_kg_sPa = diffusion_to_room_kg_sPa(setting, sample, vent, diffusion_mean_C);
  design.timber = facing_timber(setting, sample);
  design.sill_timber_share =
      setting.window.width_m / (2.0 * (setting.window.width_m + setting.window.height_m));
  design.soak_time_s = 3600.0 * sample[Unknown::soak_time];
  design.pumped_volume_m3_Pa = pumped_volume_m3_Pa(setting);
  design.gusts_per_s = sample[Unknown::gusts_per_s];
  return design;
}

double excess_factor_under(const Setting& setting, const UnknownValues& sample, VentOption vent,
                           TapeFault fault, const OldWinter& winter) {
  const auto state = solve_gap(gap_case_for(setting, sample, winter.moment, vent, CurtainState::open, fault));
  if (state.status != SolveStatus::converged) {
    throw CalculationFailed(explain(state.status));
  }
  const double after_m3_h =
      draught_through_gap_m3_h(state) + draught_past_the_sheet_m3_h(setting, sample, winter.moment);
  return sealing_factor(sample, winter.draught_m3_h, after_m3_h);
}

}  // namespace dewgap
