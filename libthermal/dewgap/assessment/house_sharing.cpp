#include <algorithm>
#include <array>

#include "dewgap/assessment/house.hpp"

namespace dewgap {
namespace {

struct Shared {
  Unknown unknown{};
  Sharing sharing = Sharing::house;
};

// Whose each unknown is, and why. In doubt it is shared, since that gives the wider total.
constexpr std::array<Shared, unknown_count> sharing_table{{
    // Workmanship and wear of one window.
    {Unknown::joint_leakage, Sharing::window},
    {Unknown::putty_leakage, Sharing::window},
    {Unknown::seal_leakage, Sharing::window},
    {Unknown::timber_depth, Sharing::window},
    {Unknown::timber_coat, Sharing::window},
    {Unknown::soak_time, Sharing::window},
    // How warm one room is kept.
    {Unknown::room_temperature, Sharing::room},
    // The wind pushes all windows of one side alike.
    {Unknown::wind_pressure, Sharing::facade},
    // The people, their ventilation and heating, and how the building stands and draws air.
    {Unknown::vapour_excess, Sharing::house},
    {Unknown::neutral_level_offset, Sharing::house},
    {Unknown::wind_ratio, Sharing::house},
    {Unknown::extract_depression, Sharing::house},
    {Unknown::background_airflow, Sharing::house},
    {Unknown::base_temperature, Sharing::house},
    {Unknown::heated_share, Sharing::house},
    {Unknown::draught_needed, Sharing::house},
    {Unknown::sun_used, Sharing::house},
    // Weather.
    {Unknown::gust_intensity, Sharing::house},
    {Unknown::gusts_per_s, Sharing::house},
    {Unknown::cloud_cover, Sharing::house},
    {Unknown::climate_offset, Sharing::house},
    // A formula or a published coefficient is off by the same for all windows.
    {Unknown::outdoor_convection, Sharing::house},
    {Unknown::room_film, Sharing::house},
    {Unknown::gap_correlation, Sharing::house},
    {Unknown::gap_convection, Sharing::house},
    {Unknown::edge_factor, Sharing::house},
    {Unknown::frame_u_factor, Sharing::house},
    {Unknown::film_retention, Sharing::house},
    {Unknown::run_off_time, Sharing::house},
    // Glass of one age; sheet and tape of one purchase.
    {Unknown::glass_emissivity, Sharing::house},
    {Unknown::glass_sun_absorbed, Sharing::house},
    {Unknown::sheet_emissivity, Sharing::house},
    {Unknown::sheet_sun_absorbed, Sharing::house},
    {Unknown::sun_transmitted, Sharing::house},
    {Unknown::tape_vapour_resistance, Sharing::house},
}};

constexpr bool names_each_once() {
  for (std::size_t i = 0; i < unknown_count; ++i) {
    const auto named = [i](const Shared& row) { return row.unknown == static_cast<Unknown>(i); };
    if (std::count_if(sharing_table.begin(), sharing_table.end(), named) != 1) {
      return false;
    }
  }
  return true;
}
static_assert(names_each_once(), "an unknown without a row, or with two");

}  // namespace

Sharing sharing_of(Unknown unknown) {
  return std::find_if(sharing_table.begin(), sharing_table.end(),
                      [unknown](const Shared& row) { return row.unknown == unknown; })
      ->sharing;
}

}  // namespace dewgap
