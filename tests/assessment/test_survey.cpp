#include <gtest/gtest.h>

#include <algorithm>
#include <functional>
#include <limits>

#include "assessment/survey_cases.hpp"
#include "dewgap/errors.hpp"

namespace dewgap::test {
namespace {

struct Spoiled {
  std::string field;
  std::function<void(Survey&)> spoil;
};

const double nan_value = std::numeric_limits<double>::quiet_NaN();

std::vector<Spoiled> spoiled_surveys() {
  return {
      {"place.nearest", [](Survey& s) { s.place.nearest = "lodnon"; }},
      {"place.nearest", [](Survey& s) { s.place.nearest.clear(); }},
      {"place.nearest", [](Survey& s) { s.place.nearest.assign(500, 'a'); }},
      {"place.distance", [](Survey& s) { s.place.distance_km = -1.0; }},
      {"place.elevation", [](Survey& s) { s.place.elevation_m = 9000.0; }},
      {"window.opening_widths", [](Survey& s) { s.window.opening_widths_m[1] = nan_value; }},
      {"window.opening_widths",
       [](Survey& s) {
         s.window.opening_widths_m = {0.7, 0.9, 0.9};
       }},
      {"window.opening_heights", [](Survey& s) { s.window.opening_heights_m[0] = 0.0; }},
      {"window.diagonals",
       [](Survey& s) {
         s.window.diagonals_m = {1.2, 1.66};
       }},
      {"window.glass_width", [](Survey& s) { s.window.glass_width_m = 1.0; }},
      {"window.glass_width",
       [](Survey& s) {
         s.window.glass_width_m = 0.8;
         s.window.glass_height_m = 1.0;
         s.window.pane_count = 3;
       }},
      {"window.panes", [](Survey& s) { s.window.pane_count = 0; }},
      {"window.glass_thickness", [](Survey& s) { s.window.glass_thickness_m = 0.4; }},
      {"window.moves", [](Survey& s) { s.window.moves = SashMoves::inwards; }},
      {"window.moves",
       [](Survey& s) {
         s.window.kind = WindowKind::casement;
         s.window.moves = SashMoves::sideways;
       }},
      {"window.moves",
       [](Survey& s) {
         s.window.kind = WindowKind::fixed_light;
         s.window.moves = SashMoves::outwards;
       }},
      {"window.between_sashes",
       [](Survey& s) {
         s.window.kind = WindowKind::casement;
         s.window.between_sashes_m = 0.02;
       }},
      {"window.between_sashes", [](Survey& s) { s.window.between_sashes_m = nan_value; }},
      {"window.handle_stands_out", [](Survey& s) { s.window.handle_stands_out_m = 0.3; }},
      {"window.stay_stands_out", [](Survey& s) { s.window.stay_stands_out_m = -0.001; }},
      {"window.shutter", [](Survey& s) { s.window.shutter.clearance_m = 2.1; }},
      {"window.blind", [](Survey& s) { s.window.blind.clearance_m = nan_value; }},
      {"sheet.grade",
       [](Survey& s) {
         s.sheet.material = SheetKind::petg;
         s.sheet.grade = SheetGrade::cast;
       }},
      {"sheet.stock",
       [](Survey& s) {
         s.sheet.stock = StockSize{0.0, 2.0};
       }},
      {"window.glass_to_fixing_face", [](Survey& s) { s.window.glass_to_fixing_face_m = {0.3}; }},
      {"window.glass_to_fixing_face",
       [](Survey& s) {
         s.window.glass_to_fixing_face_m = {0.03, 0.04, 0.05};
       }},
      {"window.facing", [](Survey& s) { s.window.facing_compass_deg = 400.0; }},
      {"sheet.thickness", [](Survey& s) { s.sheet.thickness_m = 4.0; }},
      {"sheet.tape_thickness", [](Survey& s) { s.sheet.tape_thickness_m = 0.0; }},
      {"room.temperature", [](Survey& s) { s.room.temperature_C = 40.0; }},
      {"room.hygrometer humidity",
       [](Survey& s) {
         s.room.hygrometer = {{19.0, 55.0, 5.0}};
       }},
      {"building.floor", [](Survey& s) { s.building.floor = 2; }},
      {"building.hours_heated", [](Survey& s) { s.building.hours_heated = 30.0; }},
      {"expert.joint_leakage", [](Survey& s) { s.expert.joint_leakage_m3_h_m = -0.1; }},
      {"expert.sheet_emissivity",
       [](Survey& s) {
         s.sheet.material = SheetKind::pet_film;
         s.expert.sheet_emissivity = 0.9;
       }},
      {"expert.room_humidity", [](Survey& s) { s.expert.room_relative_humidity = 55.0; }},
      {"money.efficiency",
       [](Survey& s) { s.money = MoneyTerms{.price_per_kWh = 0.1, .system_efficiency = 85.0}; }},
      {"money.life", [](Survey& s) { s.money = MoneyTerms{.price_per_kWh = 0.1, .life_years = 0.0}; }},
  };
}

TEST(Survey, AValidOneHasNoProblems) {
  EXPECT_TRUE(problems(worn_sash_survey()).empty());
}

TEST(Survey, EachSpoiledFieldIsNamed) {
  for (const auto& spoiled : spoiled_surveys()) {
    SCOPED_TRACE(spoiled.field);
    auto survey = worn_sash_survey();
    spoiled.spoil(survey);
    const auto found = problems(survey);
    EXPECT_TRUE(std::any_of(found.begin(), found.end(),
                            [&](const SurveyProblem& problem) { return problem.field == spoiled.field; }));
    EXPECT_THROW(assess(survey, quick_options()), InvalidInput);
  }
}

TEST(Survey, AllProblemsAtOnce) {
  auto survey = worn_sash_survey();
  survey.place.nearest = "lodnon";
  survey.window.glass_thickness_m = -1.0;
  survey.room.temperature_C = nan_value;
  const auto found = problems(survey);
  ASSERT_EQ(found.size(), 3u);
  EXPECT_NE(found[0].message.find("London"), std::string::npos) << found[0].message;
}

}  // namespace
}  // namespace dewgap::test
