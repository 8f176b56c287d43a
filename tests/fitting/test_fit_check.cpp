#include "dewgap/fitting/fit_check.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "dewgap/errors.hpp"

namespace dewgap {
namespace {

/// Everything measured and nothing in the way.
FitCheckInput easy() {
  FitCheckInput input;
  input.opening = visible_glass(0.9, 1.2);
  input.opening.diagonals_m = {1.5, 1.5};
  input.opening_way = OpeningWay::does_not_open;
  input.catch_stands_out_m = 0.0;
  input.handle_stands_out_m = 0.0;
  input.stay_stands_out_m = 0.0;
  input.glass_to_fixing_face_m = {0.030};
  input.shutter.there = HungPart::There::no;
  input.blind.there = HungPart::There::no;
  input.fixing_face_m = 0.045;
  input.screw_depth_m = 0.060;
  return input;
}

FitFinding finding_of(const FitCheckInput& input, FitKind kind) {
  const auto all = fit_check(input);
  const auto found =
      std::find_if(all.begin(), all.end(), [kind](const FitFinding& one) { return one.kind == kind; });
  EXPECT_NE(found, all.end()) << name_of(kind);
  return found == all.end() ? FitFinding{} : *found;
}

TEST(FitCheck, FindsNothingWhereAllIsMeasuredAndClear) {
  EXPECT_EQ(worst_of(fit_check(easy())), FitSeverity::fine);
}

TEST(FitCheck, LooksAtEverythingThatIsNotKnown) {
  FitCheckInput input;
  input.opening = visible_glass(0.9, 1.2);
  const auto all = fit_check(input);
  for (const auto kind : {FitKind::catch_stands_out, FitKind::handle_stands_out, FitKind::stay_stands_out,
                          FitKind::opens, FitKind::gap_depth, FitKind::shutter, FitKind::blind,
                          FitKind::fixing_face, FitKind::timber_depth, FitKind::out_of_square}) {
    EXPECT_EQ(finding_of(input, kind).severity, FitSeverity::look) << name_of(kind);
    EXPECT_FALSE(finding_of(input, kind).figure_mm) << name_of(kind);
  }
  EXPECT_EQ(worst_of(all), FitSeverity::look);
}

TEST(FitCheck, HoldsACatchAgainstTheSheetsBack) {
  auto input = easy();
  const auto at = [&](double out_m) {
    input.catch_stands_out_m = out_m;
    return finding_of(input, FitKind::catch_stands_out);
  };
  EXPECT_EQ(at(0.002).severity, FitSeverity::fine);
  EXPECT_EQ(at(0.004).severity, FitSeverity::mind);
  EXPECT_EQ(at(0.012).severity, FitSeverity::blocks);
  EXPECT_NEAR(at(0.012).figure_mm.value(), -6.0, 1e-9);
  EXPECT_NE(at(0.012).sentence.find("forward 9 mm"), std::string::npos) << at(0.012).sentence;
  input.sheet_back_m = 0.020;  // on a batten
  EXPECT_EQ(at(0.012).severity, FitSeverity::fine);
  input.sheet_flex_m = 0.006;
  EXPECT_EQ(at(0.012).severity, FitSeverity::mind);
  input.seat = SheetSeat::on_panes;
  EXPECT_EQ(at(0.012).severity, FitSeverity::fine);
}

TEST(FitCheck, TellsWhetherTheWindowStillOpens) {
  auto input = easy();
  for (const auto way : {OpeningWay::slides_up_and_down, OpeningWay::slides_sideways,
                         OpeningWay::swings_inwards, OpeningWay::swings_outwards}) {
    input.opening_way = way;
    input.seat = SheetSeat::overlapping;
    EXPECT_EQ(finding_of(input, FitKind::opens).severity, FitSeverity::mind);
    input.seat = SheetSeat::on_sash;
    EXPECT_EQ(finding_of(input, FitKind::opens).severity, FitSeverity::fine);
  }
}

TEST(FitCheck, TwoPlanesOfASlidingSash) {
  auto input = easy();
  input.opening_way = OpeningWay::slides_up_and_down;
  EXPECT_EQ(finding_of(input, FitKind::two_planes).severity, FitSeverity::look);
  input.glass_to_fixing_face_m = {0.020, 0.065};
  const auto step = finding_of(input, FitKind::two_planes);
  EXPECT_EQ(step.severity, FitSeverity::mind);
  EXPECT_NEAR(step.figure_mm.value(), 45.0, 1e-9);
  EXPECT_NE(step.sentence.find("Gaps of 26 mm and 71 mm"), std::string::npos) << step.sentence;
  input.seat = SheetSeat::on_sash;
  EXPECT_EQ(finding_of(input, FitKind::sashes_pass).severity, FitSeverity::look);
  input.between_sashes_m = 0.011;
  EXPECT_EQ(finding_of(input, FitKind::sashes_pass).severity, FitSeverity::blocks);
  input.between_sashes_m = 0.012;
  EXPECT_EQ(finding_of(input, FitKind::sashes_pass).severity, FitSeverity::fine);
}

TEST(FitCheck, ShutterBlindAndGap) {
  auto input = easy();
  input.shutter.there = HungPart::There::yes;
  EXPECT_EQ(finding_of(input, FitKind::shutter).severity, FitSeverity::look);
  const auto at = [&](double clearance_m) {
    input.shutter.clearance_m = clearance_m;
    return finding_of(input, FitKind::shutter).severity;
  };
  EXPECT_EQ(at(0.009), FitSeverity::blocks);
  EXPECT_EQ(at(0.012), FitSeverity::mind);
  EXPECT_EQ(at(0.016), FitSeverity::fine);
  input.glass_to_fixing_face_m = {0.010};
  input.sheet_flex_m = 0.012;
  EXPECT_EQ(finding_of(input, FitKind::gap_depth).severity, FitSeverity::mind);
}

TEST(FitCheck, FaceAndTimber) {
  auto input = easy();
  for (const auto& [face_m, severity] :
       {std::pair{0.019, FitSeverity::blocks}, {0.030, FitSeverity::mind}, {0.035, FitSeverity::fine}}) {
    input.fixing_face_m = face_m;
    EXPECT_EQ(finding_of(input, FitKind::fixing_face).severity, severity);
  }
  for (const auto& [depth_m, severity] :
       {std::pair{0.014, FitSeverity::blocks}, {0.018, FitSeverity::mind}, {0.030, FitSeverity::fine}}) {
    input.screw_depth_m = depth_m;
    EXPECT_EQ(finding_of(input, FitKind::timber_depth).severity, severity);
  }
  input.frame = FrameKind::steel;
  const auto all = fit_check(input);
  EXPECT_TRUE(std::none_of(all.begin(), all.end(),
                           [](const FitFinding& one) { return one.kind == FitKind::timber_depth; }));
}

TEST(FitCheck, SquareTaperBowAndImpossibleDiagonals) {
  auto input = easy();
  input.opening.diagonals_m = {1.515, 1.485};  // the head 25 mm over
  EXPECT_EQ(finding_of(input, FitKind::out_of_square).severity, FitSeverity::mind);
  EXPECT_NEAR(finding_of(input, FitKind::out_of_square).figure_mm.value(), 25.0, 1e-6);
  input.overlap_m = 0.010;
  EXPECT_EQ(finding_of(input, FitKind::out_of_square).severity, FitSeverity::blocks);
  input = easy();
  input.opening.diagonals_m = {1.56, 1.50};
  EXPECT_EQ(finding_of(input, FitKind::diagonals).severity, FitSeverity::blocks);
  input = easy();
  input.seat = SheetSeat::inside_reveal;
  input.opening.widths_m = {0.890, 0.905, 0.900};
  EXPECT_EQ(finding_of(input, FitKind::taper).severity, FitSeverity::mind);
  EXPECT_NEAR(finding_of(input, FitKind::taper).figure_mm.value(), 10.0, 1e-9);
  EXPECT_EQ(finding_of(input, FitKind::bow).severity, FitSeverity::mind);
}

TEST(FitCheck, SentencesAreShortAndTheWorstComeFirst) {
  for (const auto seat : {SheetSeat::overlapping, SheetSeat::inside_reveal, SheetSeat::on_sash}) {
    for (const double out_m : {0.0, 0.004, 0.123}) {
      auto input = easy();
      input.seat = seat;
      input.opening_way = OpeningWay::slides_up_and_down;
      input.catch_stands_out_m = input.handle_stands_out_m = input.stay_stands_out_m = out_m;
      input.shutter = {HungPart::There::yes, out_m};
      input.blind = {HungPart::There::yes, std::nullopt};
      input.between_sashes_m = out_m;
      input.opening.widths_m = {0.9, 0.91, 0.93};
      const auto all = fit_check(input);
      EXPECT_TRUE(std::is_sorted(all.begin(), all.end(), [](const FitFinding& a, const FitFinding& b) {
        return a.severity < b.severity;
      }));
      for (const auto& one : all) {
        EXPECT_LE(one.sentence.size(), 110u) << one.sentence;
        EXPECT_EQ(one.sentence.back(), one.sentence.ends_with("?") ? '?' : '.') << one.sentence;
      }
    }
  }
}

TEST(FitCheck, RejectsBadInput) {
  for (const double bad : {-0.5, std::nan(""), 3.0}) {
    auto input = easy();
    input.catch_stands_out_m = bad;
    EXPECT_THROW(fit_check(input), InvalidInput);
    input = easy();
    input.glass_to_fixing_face_m = {bad};
    EXPECT_THROW(fit_check(input), InvalidInput);
    input = easy();
    input.blind.clearance_m = bad;
    EXPECT_THROW(fit_check(input), InvalidInput);
  }
}

}  // namespace
}  // namespace dewgap
