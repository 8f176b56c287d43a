#include "dewgap/assessment/section_profile.hpp"

#include <gtest/gtest.h>

#include <algorithm>

#include "assessment/survey_cases.hpp"
#include "dewgap/air/saturation.hpp"
#include "dewgap/errors.hpp"

namespace dewgap::test {
namespace {

/// Between outdoors and the room, each face warmer than the one outside it.
void expect_rising(const SectionState& state) {
  double last_C = -100.0;
  for (const auto& layer : state.layers) {
    EXPECT_GE(layer.outer_face_C, last_C - 1e-9) << layer.name;
    EXPECT_GE(layer.inner_face_C, layer.outer_face_C - 1e-9) << layer.name;
    EXPECT_GT(layer.thickness_m, 0.0) << layer.name;
    EXPECT_FALSE(layer.material.empty()) << layer.name;
    last_C = layer.inner_face_C;
  }
  EXPECT_LT(last_C, state.room_C);
}

TEST(SectionProfile, LayersStandInOrderAndWarmTowardsTheRoom) {
  const auto profile = section_profile(worn_sash_survey(), VentOption::sealed);
  for (const auto* state :
       {&profile.month_without, &profile.month_with, &profile.frost_without, &profile.frost_with}) {
    expect_rising(*state);
    EXPECT_GT(state->room_C, state->outdoor_C);
    EXPECT_LE(state->room_dew_point_C, state->room_C);
    EXPECT_LE(state->outdoor_dew_point_C, state->outdoor_C + 1e-9);
  }
  ASSERT_EQ(profile.month_without.layers.size(), 1u);
  ASSERT_EQ(profile.month_with.layers.size(), 3u);
  EXPECT_EQ(profile.month_with.layers[1].part, SectionPart::gap);
  EXPECT_DOUBLE_EQ(profile.month_with.layers[1].thickness_m, profile.gap_width_m);
  EXPECT_EQ(profile.month_with.layers[2].material, name_of(SheetKind::acrylic));
  EXPECT_FALSE(profile.month_without.gap_air_C.has_value());
}

TEST(SectionProfile, TheSheetWarmsWhatIsTouchedAndCoolsTheOldGlass) {
  const auto profile = section_profile(worn_sash_survey(), VentOption::sealed);
  EXPECT_GT(profile.frost_with.room_face_C, profile.frost_without.room_face_C + 3.0);
  EXPECT_LT(profile.frost_with.layers[0].inner_face_C, profile.frost_without.layers[0].inner_face_C);
  EXPECT_LT(profile.frost_with.outdoor_C, profile.month_with.outdoor_C);
  EXPECT_GE(profile.month_with.room_dew_point_C, profile.month_without.room_dew_point_C)
      << "sealing keeps moisture in";
}

TEST(SectionProfile, DewPointsDecideTheMist) {
  for (const double humidity : {0.25, 0.45, 0.75}) {
    auto survey = worn_sash_survey();
    survey.expert.room_relative_humidity = humidity;
    const auto profile = section_profile(survey, VentOption::breaks_bottom);
    for (const auto* state : {&profile.month_without, &profile.month_with, &profile.frost_without}) {
      EXPECT_NEAR(state->room_humidity, humidity, 1e-9);
      EXPECT_NEAR(state->margin_K, state->edge_face_C - state->decisive_dew_point_C, 1e-12);
      EXPECT_EQ(state->mist == SectionMist::all_over, state->centre_face_C < state->decisive_dew_point_C);
      EXPECT_EQ(state->mist == SectionMist::none, state->margin_K >= 0.0);
      EXPECT_LE(state->edge_face_C, state->centre_face_C + 1e-9);
    }
    EXPECT_EQ(profile.month_without.room_face_humidity > 1.0,
              profile.month_without.centre_face_C < profile.month_without.room_dew_point_C);
    EXPECT_LE(*profile.month_with.gap_dew_point_C, *profile.month_with.gap_potential_dew_point_C + 1e-9);
  }
}

TEST(SectionProfile, ADampRoomMistsAndADryOneDoesNot) {
  auto survey = worn_sash_survey();
  survey.expert.room_relative_humidity = 0.8;
  EXPECT_EQ(mist_sentence(section_profile(survey, VentOption::sealed).month_without),
            "In the coldest month's means mist covers the old glass.");
  survey.expert.room_relative_humidity = 0.2;
  EXPECT_EQ(mist_sentence(section_profile(survey, VentOption::sealed).month_with),
            "In the coldest month's means the glass in the gap stays clear.");
}

TEST(SectionProfile, ACurtainHangsOnTheFrostNightOnly) {
  auto survey = worn_sash_survey();
  survey.sheet.curtain_gap_m = 0.1;
  const auto profile = section_profile(survey, VentOption::sealed);
  EXPECT_EQ(profile.month_with.layers.size(), 3u);
  ASSERT_EQ(profile.frost_with.layers.size(), 5u);
  EXPECT_EQ(profile.frost_with.layers[3].part, SectionPart::curtain_air);
  EXPECT_EQ(profile.frost_without.layers.back().part, SectionPart::curtain);
  const auto bare = section_profile(worn_sash_survey(), VentOption::sealed);
  EXPECT_LT(profile.frost_without.centre_face_C, bare.frost_without.centre_face_C);
}

TEST(SectionProfile, RefusesWhatCannotBeOffered) {
  auto survey = worn_sash_survey();
  survey.settle_first.protection = Protection::consent_given;
  EXPECT_THROW(section_profile(survey, VentOption::weep_to_outdoors), InvalidInput);
  survey.window.opening_widths_m[0] = -1.0;
  EXPECT_THROW(section_profile(survey, VentOption::sealed), InvalidInput);
}

}  // namespace
}  // namespace dewgap::test
