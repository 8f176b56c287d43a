#include "dewgap/fitting/sheet_plan.hpp"

#include <gtest/gtest.h>

#include "dewgap/errors.hpp"
#include "sheet_plan_cases.hpp"
#include "support/not_a_number.hpp"

namespace dewgap {
namespace {

using test::gives_reason;
using test::opening_of;

TEST(SheetPlan, ThicknessGrowsWithASideOverTwoMetres) {
  EXPECT_NEAR(plan_sheet(opening_of(0.8, 1.960)).thickness_mm, 4.0, 1e-12);  // a sheet of just 2 m
  const auto plan = plan_sheet(opening_of(0.8, 1.961));
  EXPECT_NEAR(plan.thickness_mm, 5.0, 1e-12);
  EXPECT_TRUE(gives_reason(plan, "5 mm sheet"));
  auto input = opening_of(0.8, 2.5);
  input.sheet_thickness_m = 0.006;
  EXPECT_NEAR(plan_sheet(input).thickness_mm, 6.0, 1e-12);
  EXPECT_FALSE(gives_reason(plan_sheet(input), "5 mm sheet"));
}

TEST(SheetPlan, WeighsByHand) {
  // 1.0 x 1.0 m cut, 4 mm, 1180 kg/m3
  EXPECT_NEAR(plan_sheet(opening_of(0.96, 0.96)).weight_kg, 4.72, 1e-9);
  auto input = opening_of(0.96, 0.96);
  input.sheet = SheetKind::glass;
  EXPECT_NEAR(plan_sheet(input).weight_kg, 10.0, 1e-9);
}

TEST(SheetPlan, TapeRunsOnceRoundOnItsMiddleLine) {
  auto input = opening_of(0.96, 1.36);  // cut 1.00 x 1.40
  input.tape_width_m = 0.010;
  EXPECT_NEAR(plan_sheet(input).tape_length_m, 4.76, 1e-9);
}

TEST(SheetPlan, TurningTheOpeningTurnsThePlan) {
  const auto upright = plan_sheet(opening_of(0.7, 1.3));
  const auto lying = plan_sheet(opening_of(1.3, 0.7));
  EXPECT_EQ(upright.width_mm, lying.height_mm);
  EXPECT_EQ(upright.height_marks_mm, lying.width_marks_mm);
  EXPECT_EQ(upright.fixing_count, lying.fixing_count);
  EXPECT_NEAR(upright.weight_kg, lying.weight_kg, 1e-12);
  EXPECT_NEAR(upright.movement_mm, lying.movement_mm, 1e-12);
}

TEST(SheetPlan, GrowsWithTheOpening) {
  SheetPlan last = plan_sheet(opening_of(0.2, 0.2));
  for (double side_m = 0.25; side_m < 3.9; side_m += 0.05) {
    const auto plan = plan_sheet(opening_of(side_m, side_m));
    EXPECT_GT(plan.width_mm, last.width_mm);
    EXPECT_GT(plan.weight_kg, last.weight_kg);
    EXPECT_GT(plan.movement_mm, last.movement_mm);
    EXPECT_GT(plan.tape_length_m, last.tape_length_m);
    EXPECT_GE(plan.fixing_count, last.fixing_count);
    last = plan;
  }
}

TEST(SheetPlan, ReasonsAreShortSentences) {
  for (const auto seat :
       {SheetSeat::overlapping, SheetSeat::inside_reveal, SheetSeat::on_sash, SheetSeat::on_panes}) {
    for (const auto sheet : {SheetKind::acrylic, SheetKind::polycarbonate, SheetKind::petg, SheetKind::glass,
                             SheetKind::pet_film}) {
      for (const double face_m : {0.008, 0.030, 0.060}) {
        for (const double side_m : {0.3, 1.3, 3.8}) {
          auto input = opening_of(side_m, side_m);
          input.seat = seat;
          input.sheet = sheet;
          input.fixing_face_m = face_m;
          input.screw_depth_m = side_m > 1.0 ? 0.022 : 0.012;
          input.largest_width_m = side_m + 0.030;
          input.opening.diagonals_m = {side_m * 1.4242, side_m * 1.4042};
          const auto plan = plan_sheet(input);
          auto sentences = plan.reasons;
          sentences.insert(sentences.end(), plan.notes.begin(), plan.notes.end());
          EXPECT_GE(sentences.size(), 3u);
          for (const auto& reason : sentences) {
            EXPECT_LE(reason.size(), 100u) << reason;
            EXPECT_EQ(reason.back(), '.') << reason;
          }
        }
      }
    }
  }
}

TEST(SheetPlan, RejectsRigidSheetsThatBendAndFilmsThatDoNot) {
  for (const auto sheet : {SheetKind::acrylic, SheetKind::polycarbonate, SheetKind::petg, SheetKind::glass}) {
    auto input = opening_of(0.8, 1.2);
    input.sheet = sheet;
    input.sheet_thickness_m = 0.0019;
    EXPECT_THROW(plan_sheet(input), InvalidInput);
    input.sheet_thickness_m = 0.002;
    EXPECT_NEAR(plan_sheet(input).thickness_mm, 2.0, 1e-12);
  }
  auto input = opening_of(0.8, 1.2);
  input.sheet = SheetKind::pet_film;
  for (const double bad_m : {0.000009, 0.0006}) {
    input.sheet_thickness_m = bad_m;
    EXPECT_THROW(plan_sheet(input), InvalidInput);
  }
  input.sheet_thickness_m = 0.0005;
  EXPECT_NEAR(plan_sheet(input).thickness_mm, 0.5, 1e-12);
}

TEST(SheetPlan, RejectsBadInput) {
  const auto rejects = [](double SheetPlanInput::*field, double bad) {
    auto input = opening_of(0.8, 1.2);
    input.*field = bad;
    EXPECT_THROW(plan_sheet(input), InvalidInput) << bad;
  };
  for (const double bad : {-0.001, 200.0, test::not_a_number}) {
    rejects(&SheetPlanInput::overlap_m, bad);
    rejects(&SheetPlanInput::temperature_range_K, bad);
    rejects(&SheetPlanInput::tape_thickness_m, bad);
    rejects(&SheetPlanInput::tape_width_m, bad);
    auto input = opening_of(0.8, 1.2);
    input.sheet_thickness_m = bad;
    EXPECT_THROW(plan_sheet(input), InvalidInput) << bad;
    input = opening_of(0.8, 1.2);
    input.screw_depth_m = bad;
    EXPECT_THROW(plan_sheet(input), InvalidInput) << bad;
    input = opening_of(0.8, 1.2);
    input.fixing_face_m = bad;
    EXPECT_THROW(plan_sheet(input), InvalidInput) << bad;
  }
}

}  // namespace
}  // namespace dewgap
