#include "dewgap/window/whole_window.hpp"

#include <gtest/gtest.h>

#include "dewgap/errors.hpp"
#include "support/not_a_number.hpp"
#include "support/reference.hpp"

namespace dewgap {
namespace {

FrameKind frame_named(const std::string& name) {
  for (const auto kind :
       {FrameKind::softwood, FrameKind::hardwood, FrameKind::pvc_u, FrameKind::steel, FrameKind::aluminium}) {
    if (name_of(kind) == name) {
      return kind;
    }
  }
  throw std::runtime_error("no such frame: " + name);
}

TEST(WholeWindow, AgreesWithTheTableOfSingleGlazedWindows) {
  test::check_reference("iso_10077_1_window/single_glazed.csv", [](const test::ReferenceRow& row) {
    const double frame_share = row.number("frame_share");
    return window_u_value_W_m2K({{1.0 - frame_share, row.number("glass_U_W_m2K")}},
                                {{frame_share, row.number("frame_U_W_m2K")}}, {});
  });
}

TEST(WholeWindow, StandardWindowByHand) {
  // 1.23 x 1.48 m with members of 0.11 m: glass 1.2726 m2, frame 0.5478 m2 (30 %), edge 4.54 m.
  const double glass_m2 = 1.01 * 1.26;
  const double frame_m2 = 1.23 * 1.48 - glass_m2;
  EXPECT_NEAR(frame_m2 / (1.23 * 1.48), 0.30, 0.005);
  // (1.2726 x 2.8 + 0.5478 x 1.8 + 4.54 x 0.06) / 1.8204 = 4.82172 / 1.8204
  EXPECT_NEAR(window_u_value_W_m2K({{glass_m2, 2.8}}, {{frame_m2, 1.8}}, {{4.54, 0.06}}), 2.64871, 1e-5);
}

TEST(WholeWindow, IsTheMeanOfItsPartsAndDoesNotMindHowTheyAreCut) {
  const double whole = window_u_value_W_m2K({{1.2, 5.0}}, {{0.4, 2.0}}, {{4.0, 0.05}});
  EXPECT_GT(whole, 2.0);
  EXPECT_LT(whole, 5.0);
  EXPECT_NEAR(
      window_u_value_W_m2K({{0.5, 5.0}, {0.7, 5.0}}, {{0.1, 2.0}, {0.3, 2.0}}, {{1.0, 0.05}, {3.0, 0.05}}),
      whole, 1e-12);
  EXPECT_NEAR(window_u_value_W_m2K({{12.0, 5.0}}, {{4.0, 2.0}}, {{40.0, 0.05}}), whole, 1e-12);
}

TEST(WholeWindow, RejectsBadInput) {
  for (const double bad : {-0.1, 1e5, test::not_a_number}) {
    EXPECT_THROW(window_u_value_W_m2K({{bad, 5.0}}, {}, {}), InvalidInput);
    EXPECT_THROW(window_u_value_W_m2K({{1.0, bad}}, {}, {}), InvalidInput);
    EXPECT_THROW(window_u_value_W_m2K({{1.0, 5.0}}, {{bad, 2.0}}, {}), InvalidInput);
    EXPECT_THROW(window_u_value_W_m2K({{1.0, 5.0}}, {{1.0, bad}}, {}), InvalidInput);
    EXPECT_THROW(window_u_value_W_m2K({{1.0, 5.0}}, {}, {{bad, 0.05}}), InvalidInput);
  }
  EXPECT_THROW(window_u_value_W_m2K({{1.0, 5.0}}, {}, {{1.0, 5.1}}), InvalidInput);
  EXPECT_THROW(window_u_value_W_m2K({}, {}, {{4.0, 0.05}}), InvalidInput);
  EXPECT_THROW(window_u_value_W_m2K({{0.0, 5.0}}, {{0.0, 2.0}}, {}), InvalidInput);
}

TEST(DoubleWindow, ByHand) {
  // 1 / (1/4.8 - 0.13 + 0.179 - 0.04 + 1/4.8) = 1 / 0.425667
  EXPECT_NEAR(double_window_u_value_W_m2K(4.8, 4.8, 0.179), 2.34926, 1e-5);
}

TEST(DoubleWindow, TwoPanesMakeADoubleGlazing) {
  // Films, two panes of 4 mm and the air space, counted once each.
  const double pane_m2K_W = 0.004;
  const double single_U = 1.0 / (0.13 + pane_m2K_W + 0.04);
  EXPECT_NEAR(1.0 / double_window_u_value_W_m2K(single_U, single_U, 0.179),
              0.13 + 0.04 + 2.0 * pane_m2K_W + 0.179, 1e-12);
}

TEST(DoubleWindow, DoesNotMindTheOrderAndFallsWithTheAirSpace) {
  EXPECT_NEAR(double_window_u_value_W_m2K(4.8, 2.1, 0.179), double_window_u_value_W_m2K(2.1, 4.8, 0.179),
              1e-12);
  EXPECT_GT(double_window_u_value_W_m2K(4.8, 2.1, 0.127), double_window_u_value_W_m2K(4.8, 2.1, 0.179));
  EXPECT_LT(double_window_u_value_W_m2K(4.8, 2.1, 0.127), 2.1);
}

TEST(DoubleWindow, RejectsBadInput) {
  for (const double bad : {-1.0, 0.0, 21.0, 7.8, test::not_a_number}) {
    EXPECT_THROW(double_window_u_value_W_m2K(bad, 4.8, 0.179), InvalidInput) << bad;
  }
  for (const double bad : {-1.0, 0.0, 26.0, test::not_a_number}) {
    EXPECT_THROW(double_window_u_value_W_m2K(4.8, bad, 0.179), InvalidInput) << bad;
  }
  for (const double bad : {-0.1, 11.0, test::not_a_number}) {
    EXPECT_THROW(double_window_u_value_W_m2K(4.8, 4.8, bad), InvalidInput) << bad;
    EXPECT_THROW(double_window_u_value_W_m2K(4.8, 4.8, 0.179, bad), InvalidInput) << bad;
    EXPECT_THROW(double_window_u_value_W_m2K(4.8, 4.8, 0.179, 0.13, bad), InvalidInput) << bad;
  }
}

TEST(Frame, AgreesWithAnnexDAsClaimed) {
  test::check_reference("iso_10077_1_window/frames.csv", [](const test::ReferenceRow& row) {
    return frame_u_value_W_m2K(frame_named(row.text("frame")), row.number("thickness_mm") * 1e-3);
  });
}

TEST(Frame, TimberReadsBelowAnnexD) {
  // A slab has no rebates: the header's '15 % (hardwood) to 22 % (softwood) below', each to a whole per cent.
  EXPECT_NEAR(1.0 - frame_u_value_W_m2K(FrameKind::softwood, 0.070) / 1.8, 0.22, 0.005);
  EXPECT_NEAR(1.0 - frame_u_value_W_m2K(FrameKind::hardwood, 0.070) / 2.1, 0.15, 0.005);
}

TEST(Frame, FallsWithThicknessAndIsLimitedByItsFilms) {
  double last = frame_u_value_W_m2K(FrameKind::softwood, 0.005);
  for (const double thickness_m : {0.02, 0.05, 0.1, 0.2}) {
    const double next = frame_u_value_W_m2K(FrameKind::softwood, thickness_m);
    EXPECT_LT(next, last);
    EXPECT_LT(next, 1.0 / 0.17);
    last = next;
  }
  EXPECT_NEAR(frame_u_value_W_m2K(FrameKind::aluminium, 0.005), 1.0 / 0.17, 0.002);
  EXPECT_NEAR(frame_u_value_W_m2K(FrameKind::softwood, 0.05), frame_u_value_W_m2K(0.13, 0.05), 1e-12);
}

TEST(Frame, RejectsBadInput) {
  for (const double bad : {-0.1, 0.0, 0.0049, 500.0, test::not_a_number}) {
    EXPECT_THROW(frame_u_value_W_m2K(bad, 0.05), InvalidInput) << bad;
    EXPECT_THROW(frame_u_value_W_m2K(0.13, bad), InvalidInput) << bad;
    EXPECT_THROW(frame_u_value_W_m2K(FrameKind::softwood, bad), InvalidInput) << bad;
  }
}

}  // namespace
}  // namespace dewgap
