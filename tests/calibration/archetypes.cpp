#include "calibration/archetypes.hpp"

#include <utility>

#include "assessment/survey_cases.hpp"
#include "dewgap/assessment/vent_cases_kernel.hpp"
#include "dewgap/climate/synthesised_year.hpp"

namespace dewgap::calibration {
namespace {

Survey sash_upstairs() {
  auto survey = test::worn_sash_survey();
  survey.room.temperature_C = std::nullopt;
  return survey;
}

Survey casement_downstairs() {
  Survey survey;
  survey.name = "Front room (invented)";
  survey.place = {.nearest = "edinburgh", .distance_km = 5.0};
  survey.settle_first = test::all_settled();
  survey.window.kind = WindowKind::casement;
  survey.window.opening_widths_m = {1.100, 1.100, 1.100};
  survey.window.opening_heights_m = {1.200, 1.200, 1.200};
  survey.window.glass_to_fixing_face_m = {0.040};
  survey.room.use = RoomUse::living;
  survey.building = {.floor = 0, .floors = 2, .open_stairwell = true};
  return survey;
}

Survey painted_shut_casement() {
  auto survey = casement_downstairs();
  survey.name = "Small bedroom (invented)";
  survey.place = {.nearest = "berlin", .distance_km = 10.0};
  survey.window.painted_shut = true;
  survey.room.use = RoomUse::bedroom;
  survey.building = {.floor = 2, .floors = 4};
  return survey;
}

Survey fixed_light_in_kitchen() {
  auto survey = casement_downstairs();
  survey.name = "Kitchen (invented)";
  survey.place = {.nearest = "london", .distance_km = 12.0};
  survey.window.kind = WindowKind::fixed_light;
  survey.window.opening_widths_m = {0.800, 0.800, 0.800};
  survey.window.opening_heights_m = {0.900, 0.900, 0.900};
  survey.window.glass_to_fixing_face_m = {0.030};
  survey.room.use = RoomUse::kitchen;
  survey.room.extract_fan = true;
  survey.building = {.floor = 0, .floors = 3};
  return survey;
}

}  // namespace

std::vector<Archetype> archetypes() {
  return {{"sash upstairs", sash_upstairs(), Joints::can_be_felt},
          {"casement downstairs", casement_downstairs(), Joints::can_be_felt},
          {"painted-shut casement", painted_shut_casement(), Joints::painted_shut},
          {"fixed light in a kitchen", fixed_light_in_kitchen(), Joints::none}};
}

Scene::Scene(Archetype of)
    : archetype(std::move(of)),
      setting(setting_for(archetype.survey)),
      year(year_setting(setting, synthesised_year(setting.place).hours)),
      options(offered_options(archetype.survey)) {}

void keep_one_month(YearSetting& year) {
  constexpr std::ptrdiff_t first = 91 * 24;  // the columns begin in September
  constexpr std::ptrdiff_t hours = 30 * 24;
  const auto keep = [](auto& column) {
    if (!column.empty()) {
      column = {column.begin() + first, column.begin() + first + hours};
    }
  };
  for (auto* column :
       {&year.outdoor_C, &year.outdoor_vapour_Pa, &year.running_outdoor_C, &year.running_vapour_Pa,
        &year.sky_depression_K, &year.wind_m_s, &year.wind_angle_deg, &year.sun_W_m2}) {
    keep(*column);
  }
  keep(year.hour_of_year);
  keep(year.month);
  year.off_hour = hours;
}

}  // namespace dewgap::calibration
