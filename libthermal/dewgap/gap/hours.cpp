#include "dewgap/gap/hours.hpp"

#include "dewgap/errors.hpp"
#include "dewgap/gap/hour_kernel.hpp"

namespace dewgap {
namespace gap_kernel {

void require_valid(const GapDesign& design) {
  const auto panes = static_cast<std::size_t>(design.panes);
  if (panes != design.stack.layer_count || panes < 1 || panes > 2) {
    throw InvalidInput("stack", "has another number of layers than the window has panes (1 or 2)");
  }
  glazing_kernel::require_valid(design.stack, {}, {});
  if (design.drawn_stack) {
    if (design.drawn_stack->layer_count != panes + 1) {
      throw InvalidInput("drawn_stack", "has not one layer more than the window has panes");
    }
    glazing_kernel::require_valid(*design.drawn_stack, {}, {});
  }
  for (const double capacity : design.pane_heat_capacity_J_m2K) {
    require_in_range(capacity, {0.0, 1e6}, "pane_heat_capacity_J_m2K", "J/(m2 K)");
  }
  require_in_range(design.area_m2, {0.01, 50.0}, "area_m2", "m2");
  require_in_range(design.diffusion_to_room_kg_sPa, {0.0, 1e-6}, "diffusion_to_room_kg_sPa", "kg/(s Pa)");
  require_in_range(design.diffusion_to_outdoors_kg_sPa, {0.0, 1e-6}, "diffusion_to_outdoors_kg_sPa",
                   "kg/(s Pa)");
  require_in_range(design.edge_temperature_factor, {0.3, 1.2}, "edge_temperature_factor", "");
  require_in_range(design.timber_transfer_kg_m2sPa, {0.0, 2e-5}, "timber_transfer_kg_m2sPa", "kg/(m2 s Pa)");
  require_in_range(design.soak_time_s, {0.0, 1e8}, "soak_time_s", "s");
  require_in_range(design.pumped_volume_m3_Pa, {0.0, 0.1}, "pumped_volume_m3_Pa", "m3/Pa");
  require_in_range(design.gusts_per_s, {0.0, 10.0}, "gusts_per_s", "1/s");
  require_in_range(design.sill_timber_share, {0.01, 0.99}, "sill_timber_share", "");
  require_in_range(design.room_face_transfer_factor, {0.0, 3.0}, "room_face_transfer_factor", "");
  if (design.timber.area_m2 > 0.0) {
    dry_mass_kg(design.timber);  // checks the layer
  }
  // The film's own checks, with a step that does nothing.
  step_film({}, design.film, {.air_vapour_Pa = 0.0});
}

void require_valid(const GapStore& store) {
  held_kg_m2(store.pane);
  held_kg_m2(store.sheet);
  held_kg_m2(store.room_face);
  require_in_range(store.vapour_Pa, {0.0, 20000.0}, "vapour_Pa", "Pa");
  require_in_range(store.timber_kg_kg, {0.0, 2.5}, "timber_kg_kg", "kg/kg");
  require_in_range(store.side_timber_kg_kg.value_or(0.0), {0.0, 2.5}, "side_timber_kg_kg", "kg/kg");
  if (store.past) {
    for (const double face_C : store.past->face_C) {
      require_in_range(face_C, {-70.0, 90.0}, "past.face_C", "C");
    }
    require_in_range(store.past->gap_C, {-70.0, 90.0}, "past.gap_C", "C");
    require_in_range(store.past->gap_before_C, {-70.0, 90.0}, "past.gap_before_C", "C");
    require_in_range(store.past->gap_convection_W_m2K, {0.0, 1000.0}, "past.gap_convection_W_m2K",
                     "W/(m2 K)");
    require_in_range(store.past->room_convection_W_m2K, {0.0, 1000.0}, "past.room_convection_W_m2K",
                     "W/(m2 K)");
  }
}

void require_valid(const HourConditions& given) {
  require_in_range(given.duration_s, {60.0, 3600.0}, "duration_s", "s");
  require_in_range(given.outdoors.air_temperature_C, {-60.0, 60.0}, "air_temperature_C", "C");
  require_in_range(given.outdoors.sky_temperature_C, {-100.0, 60.0}, "sky_temperature_C", "C");
  require_in_range(given.outdoors.ground_temperature_C, {-60.0, 80.0}, "ground_temperature_C", "C");
  require_in_range(given.outdoors.sky_view_factor, {0.0, 1.0}, "sky_view_factor", "");
  require_in_range(given.outdoors.convection_W_m2K, {0.1, 200.0}, "convection_W_m2K", "W/(m2 K)");
  require_in_range(given.room_C, {-30.0, 50.0}, "room_C", "C");
  require_in_range(given.room_film_factor, {0.3, 3.0}, "room_film_factor", "");
  require_in_range(given.outdoor_vapour_Pa, {0.0, 20000.0}, "outdoor_vapour_Pa", "Pa");
  require_in_range(given.room_vapour_Pa, {0.0, 20000.0}, "room_vapour_Pa", "Pa");
  for (const double sun : given.absorbed_sun_W_m2) {
    require_in_range(sun, {0.0, 1500.0}, "absorbed_sun_W_m2", "W/m2");
  }
}

namespace {

template <std::size_t Panes>
GapStore run(const GapDesign& design, const GapStore& start, std::span<const HourConditions> steps,
             const std::function<void(std::size_t, const HourState&)>& each_step,
             const HourOptions& options) {
  GapHours<Panes> hours(design, start, options);
  for (std::size_t i = 0; i < steps.size(); ++i) {
    require_valid(steps[i]);
    each_step(i, hours.step(steps[i]));
  }
  return hours.store();
}

}  // namespace
}  // namespace gap_kernel

GapStore run_gap_hours(const GapDesign& design, const GapStore& start, std::span<const HourConditions> steps,
                       const std::function<void(std::size_t, const HourState&)>& each_step,
                       const HourOptions& options) {
  gap_kernel::require_valid(design);
  gap_kernel::require_valid(start);
  require_in_range(options.closure_W_m2, {1e-10, 1e-2}, "closure_W_m2", "W/m2");
  require_in_range(options.max_iterations, {1.0, 1000.0}, "max_iterations", "");
  return design.panes == PaneCount::with_sheet ? gap_kernel::run<2>(design, start, steps, each_step, options)
                                               : gap_kernel::run<1>(design, start, steps, each_step, options);
}

}  // namespace dewgap
