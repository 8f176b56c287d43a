#include "dewgap/window/cover.hpp"

#include <gtest/gtest.h>

#include <vector>

#include "dewgap/errors.hpp"
#include "dewgap/window/whole_window.hpp"
#include "support/not_a_number.hpp"

namespace dewgap {
namespace {

constexpr Cover all_covers[] = {Cover::glass, Cover::sash, Cover::frame, Cover::reveal};

WindowAreas sash_window() {
  return {.glass_m2 = 1.0,
          .sash_m2 = 0.3,
          .frame_m2 = 0.2,
          .glass_edge_m = 6.0,
          .sheet_perimeter_m = 5.0,
          .sheet_m2 = 1.5};
}

WindowTransmittances timber_with_sheet() {
  return {.glass_before_W_m2K = 5.5,
          .glass_after_W_m2K = 2.7,
          .sash_W_m2K = 2.2,
          .frame_W_m2K = 2.0,
          .added_resistance_m2K_W = 0.2};
}

double saving_W_K(const WindowAreas& areas, const WindowTransmittances& u, Cover cover) {
  return conductance_before(areas, u).total_W_K() - conductance_after(areas, u, cover).total_W_K();
}

TEST(Cover, ByHand) {
  const auto areas = sash_window();
  auto u = timber_with_sheet();
  u.edge_W_mK = 0.01;
  u.tape_rim_W_mK = 0.02;
  const auto before = conductance_before(areas, u);
  EXPECT_NEAR(before.glass_W_K, 5.5, 1e-12);
  EXPECT_NEAR(before.frame_W_K, 0.3 * 2.2 + 0.2 * 2.0, 1e-12);
  EXPECT_NEAR(before.edge_W_K, 0.06, 1e-12);
  EXPECT_NEAR(before.total_W_K(), 5.5 + 1.06 + 0.06, 1e-12);
  const double sash_behind = 0.3 / (1.0 / 2.2 + 0.2);
  const double frame_behind = 0.2 / (1.0 / 2.0 + 0.2);
  const std::vector<double> frame_W_K{1.06, 0.33 + sash_behind / 2.0 + 0.4, sash_behind + 0.4,
                                      sash_behind + frame_behind};
  for (std::size_t i = 0; i < 4; ++i) {
    const auto after = conductance_after(areas, u, all_covers[i]);
    EXPECT_NEAR(after.glass_W_K, 2.7, 1e-12);
    EXPECT_NEAR(after.frame_W_K, frame_W_K[i], 1e-12);
    EXPECT_NEAR(after.edge_W_K, 0.06 + 0.1, 1e-12);
  }
}

TEST(Cover, SavesMoreTheMoreItCovers) {
  for (const double added : {0.01, 0.2, 1.0}) {
    auto u = timber_with_sheet();
    u.added_resistance_m2K_W = added;
    double last = 0.0;
    for (const auto cover : all_covers) {
      const double saving = saving_W_K(sash_window(), u, cover);
      EXPECT_GT(saving, last);
      last = saving;
    }
  }
}

TEST(Cover, SavesTheSameWithoutSashAndFrame) {
  WindowAreas areas{.glass_m2 = 1.0};
  for (const auto cover : all_covers) {
    EXPECT_NEAR(saving_W_K(areas, timber_with_sheet(), cover), 2.8, 1e-12);
  }
}

TEST(Cover, ZeroAddedResistanceChangesNothing) {
  auto u = timber_with_sheet();
  u.glass_after_W_m2K = u.glass_before_W_m2K;
  u.added_resistance_m2K_W = 0.0;
  for (const auto cover : all_covers) {
    EXPECT_EQ(saving_W_K(sash_window(), u, cover), 0.0);
  }
}

TEST(Cover, CountsOneFrameOnce) {
  // However thick the gap, what stays bare loses what it lost before, and no more than the whole frame is
  // ever saved.
  auto u = timber_with_sheet();
  u.added_resistance_m2K_W = 10.0;
  const auto areas = sash_window();
  EXPECT_NEAR(conductance_after(areas, u, Cover::glass).frame_W_K, conductance_before(areas, u).frame_W_K,
              1e-12);
  EXPECT_GE(conductance_after(areas, u, Cover::frame).frame_W_K, areas.frame_m2 * u.frame_W_m2K);
  EXPECT_NEAR(conductance_after(areas, u, Cover::frame).frame_W_K - areas.frame_m2 * u.frame_W_m2K,
              areas.sash_m2 / (1.0 / u.sash_W_m2K + 10.0), 1e-12);
  EXPECT_GT(conductance_after(areas, u, Cover::reveal).frame_W_K, 0.0);
  // Two frames in series would be 1/(2/U + R): the one frame as built loses more.
  u.added_resistance_m2K_W = 0.2;
  const double in_series =
      areas.sash_m2 / (2.0 / u.sash_W_m2K + 0.2) + areas.frame_m2 / (2.0 / u.frame_W_m2K + 0.2);
  EXPECT_GT(conductance_after(areas, u, Cover::reveal).frame_W_K, in_series);
}

/// A reveal sheet without a frame of its own, as eq. 2 sees it: films and the sheet.
double frameless_sheet_U(double sheet_m2K_W) {
  return 1.0 / (window_rsi_m2K_W + sheet_m2K_W + window_rse_m2K_W);
}

TEST(Cover, RevealOverAUniformWindowIsTheDoubleWindow) {
  const double sheet_m2K_W = 0.004 / 0.18;
  for (const double u_value : {2.0, 4.8, 5.7}) {
    for (const double space_m2K_W : {0.127, 0.179}) {
      const double combined =
          double_window_u_value_W_m2K(u_value, frameless_sheet_U(sheet_m2K_W), space_m2K_W);
      WindowTransmittances u{.glass_before_W_m2K = u_value,
                             .sash_W_m2K = u_value,
                             .frame_W_m2K = u_value,
                             .added_resistance_m2K_W = space_m2K_W + sheet_m2K_W};
      u.glass_after_W_m2K = u_value / (1.0 + u_value * u.added_resistance_m2K_W);
      EXPECT_NEAR(conductance_after(sash_window(), u, Cover::reveal).total_W_K() / 1.5, combined, 1e-12);
    }
  }
}

TEST(Cover, PartsSideBySideNeverExceedTheDoubleWindow) {
  const double sheet_m2K_W = 0.004 / 0.18;
  const auto areas = sash_window();
  for (const double frame_U : {1.4, 2.0, 3.5, 5.5}) {
    WindowTransmittances u{.glass_before_W_m2K = 5.5,
                           .sash_W_m2K = frame_U,
                           .frame_W_m2K = frame_U,
                           .added_resistance_m2K_W = 0.179 + sheet_m2K_W};
    u.glass_after_W_m2K = 5.5 / (1.0 + 5.5 * u.added_resistance_m2K_W);
    const double whole_U = conductance_before(areas, u).total_W_K() / 1.5;
    const double combined = double_window_u_value_W_m2K(whole_U, frameless_sheet_U(sheet_m2K_W), 0.179);
    const double parts = conductance_after(areas, u, Cover::reveal).total_W_K() / 1.5;
    EXPECT_LE(parts, combined + 1e-12);
    EXPECT_GT(parts, 0.93 * combined);
  }
}

TEST(Cover, AgreesWithTheWholeWindow) {
  const auto areas = sash_window();
  auto u = timber_with_sheet();
  u.edge_W_mK = 0.02;
  EXPECT_NEAR(conductance_before(areas, u).total_W_K() / 1.5,
              window_u_value_W_m2K({{1.0, 5.5}}, {{0.3, 2.2}, {0.2, 2.0}}, {{6.0, 0.02}}), 1e-12);
}

TEST(Cover, RejectsBadAreas) {
  for (const auto field :
       {&WindowAreas::glass_m2, &WindowAreas::sash_m2, &WindowAreas::frame_m2, &WindowAreas::glass_edge_m,
        &WindowAreas::sheet_perimeter_m, &WindowAreas::sheet_m2}) {
    for (const double bad : {-0.1, 401.0, test::not_a_number}) {
      auto areas = sash_window();
      areas.*field = bad;
      EXPECT_THROW(conductance_before(areas, timber_with_sheet()), InvalidInput) << bad;
      EXPECT_THROW(conductance_after(areas, timber_with_sheet(), Cover::sash), InvalidInput) << bad;
    }
  }
}

TEST(Cover, RejectsBadTransmittances) {
  using U = WindowTransmittances;
  for (const auto field : {&U::glass_before_W_m2K, &U::glass_after_W_m2K, &U::sash_W_m2K, &U::frame_W_m2K,
                           &U::edge_W_mK, &U::added_resistance_m2K_W, &U::tape_rim_W_mK}) {
    for (const double bad : {-1.1, 21.0, test::not_a_number}) {
      auto u = timber_with_sheet();
      u.*field = bad;
      EXPECT_THROW(conductance_before(sash_window(), u), InvalidInput) << bad;
      EXPECT_THROW(conductance_after(sash_window(), u, Cover::sash), InvalidInput) << bad;
    }
  }
}

}  // namespace
}  // namespace dewgap
