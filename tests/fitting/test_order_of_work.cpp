#include "dewgap/fitting/order_of_work.hpp"

#include <gtest/gtest.h>

#include <algorithm>

#include "sheet_plan_cases.hpp"

namespace dewgap {
namespace {

using test::narrow_faced_opening_of;
using test::opening_of;

std::ptrdiff_t place_of(const std::vector<WorkStep>& steps, WorkStepKind kind) {
  const auto found =
      std::find_if(steps.begin(), steps.end(), [kind](const WorkStep& step) { return step.kind == kind; });
  return found == steps.end() ? -1 : found - steps.begin();
}

TEST(OrderOfWork, OfAScrewedSheetWithBreaks) {
  auto input = narrow_faced_opening_of(0.9, 1.2);
  input.breaks = {{Member::bottom, 2, 0.020}};
  const auto steps = order_of_work(plan_sheet(input), input.sheet);
  std::vector<WorkStepKind> kinds;
  for (const auto& step : steps) kinds.push_back(step.kind);
  using enum WorkStepKind;
  EXPECT_EQ(kinds, (std::vector{clean_and_dry, cut, dry_fit, mark, drill_sheet, drill_pilot, tape, breaks,
                                fit, check, label, wipe}));
  EXPECT_NE(steps[7].sentence.find("2 breaks"), std::string::npos);
}

TEST(OrderOfWork, DrillsNothingWhereNothingIsDrilled) {
  for (const auto sheet : {SheetKind::acrylic, SheetKind::pet_film}) {
    auto input = opening_of(0.9, 1.2);
    input.frame = FrameKind::steel;
    input.sheet = sheet;
    const auto steps = order_of_work(plan_sheet(input), sheet);
    for (const auto kind : {WorkStepKind::mark, WorkStepKind::drill_sheet, WorkStepKind::drill_pilot,
                            WorkStepKind::breaks, WorkStepKind::settle}) {
      EXPECT_EQ(place_of(steps, kind), -1);
    }
    for (const auto& step : steps) EXPECT_EQ(step.sentence.find("rill"), std::string::npos) << step.sentence;
  }
}

TEST(OrderOfWork, SettlesWhatIsRefusedFirst) {
  auto input = opening_of(0.9, 1.2);
  input.fixing_face_m = 0.010;
  const auto plan = plan_sheet(input);
  const auto steps = order_of_work(plan, input.sheet);
  EXPECT_EQ(steps.front().sentence, plan.refused.front().sentence);
  EXPECT_EQ(place_of(steps, WorkStepKind::batten), 1);
}

TEST(OrderOfWork, IsShortSentences) {
  for (const auto seat :
       {SheetSeat::overlapping, SheetSeat::inside_reveal, SheetSeat::on_sash, SheetSeat::on_panes}) {
    for (const auto sheet : {SheetKind::acrylic, SheetKind::glass, SheetKind::pet_film}) {
      auto input = opening_of(3.3, 2.3);
      input.seat = seat;
      input.sheet = sheet;
      for (const auto& step : order_of_work(plan_sheet(input), sheet)) {
        EXPECT_LE(step.sentence.size(), 110u) << step.sentence;
        EXPECT_EQ(step.sentence.back(), '.') << step.sentence;
      }
    }
  }
}

}  // namespace
}  // namespace dewgap
