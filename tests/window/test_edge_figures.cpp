#include "dewgap/window/edge_figures.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "dewgap/window/section_readings.hpp"
#include "ready_samples.hpp"
#include "support/reference.hpp"

namespace dewgap {
namespace {

void expect_near(const FigureWithError& one, const FigureWithError& other, double beyond,
                 const std::string& name) {
  EXPECT_NEAR(one.value, other.value, one.error + other.error + beyond) << name;
}

double timber_W_mK(const std::string& name) {
  return best_W_mK(name == "hardwood" ? FrameKind::hardwood : FrameKind::softwood);
}

/// Sash and frame as thick as each other, one flush with the other.
ReadySection flush_window(double thickness_m, double conductivity_W_mK) {
  return {.member = SashInFrame{.sash = {.depth_m = thickness_m, .timber_W_mK = conductivity_W_mK},
                                .frame_depth_m = thickness_m,
                                .set_back_m = 0.0,
                                .frame_W_mK = conductivity_W_mK}};
}

TEST(EdgeFigures, TimberFramesAgainstAnnexD) {
  test::check_reference(
      "iso_10077_1_window/frames_drawn.csv",
      [](const test::ReferenceRow& row) {
        const auto figures =
            edge_figures(flush_window(1e-3 * row.number("thickness_mm"), timber_W_mK(row.text("frame"))));
        EXPECT_EQ(figures.status, SectionStatus::converged);
        EXPECT_LT(figures.frame_u_value_W_m2K.error, 0.005);
        return figures.frame_u_value_W_m2K.value;
      },
      0.1);
}

TEST(EdgeFigures, PsiOfSingleGlassInSoftwoodIsNone) {
  // ISO 10077-1 Annex E gives 0.00 W/(m K) for single glazing, from memory; half its last digit.
  for (const ReadyMember& member : {ReadyMember(TimberSash{}), ReadyMember(SashInFrame{})}) {
    EXPECT_NEAR(edge_figures({.member = member}).psi_W_mK.value, 0.0, 0.005);
  }
}

TEST(EdgeFigures, UfFallsWithDepthAndRisesWithConductivity) {
  double last_W_m2K = 5.9;  // its films alone
  for (const double depth_m : {0.035, 0.050, 0.070, 0.100}) {
    const double next_W_m2K =
        edge_figures({.member = TimberSash{.depth_m = depth_m}}).frame_u_value_W_m2K.value;
    EXPECT_LT(next_W_m2K, last_W_m2K);
    last_W_m2K = next_W_m2K;
  }
  const auto soft = edge_figures({.member = TimberSash{}});
  const auto hard = edge_figures({.member = TimberSash{.timber_W_mK = timber_W_mK("hardwood")}});
  const auto steel = edge_figures({.member = SteelCasement{}});
  EXPECT_LT(soft.frame_u_value_W_m2K.value, hard.frame_u_value_W_m2K.value);
  EXPECT_LT(hard.frame_u_value_W_m2K.value, steel.frame_u_value_W_m2K.value);
}

TEST(EdgeFigures, AHigherRailAddsItsOwnSlab) {
  // Far from the glass the rail is a plain slab: exp(-pi 0.13 / 0.044) is 1e-4 of the edge's own.
  const double slab_W_m2K = 1.0 / (0.13 + 0.044 / 0.13 + 0.04);
  const auto low = edge_figures({.member = TimberSash{.face_m = 0.150}, .sheet = test::usual_sheet()});
  const auto high = edge_figures({.member = TimberSash{.face_m = 0.200}, .sheet = test::usual_sheet()});
  const FigureWithError added{0.050 * slab_W_m2K, 1e-5};
  for (const auto& [below, above] : {std::pair(low.without_sheet, high.without_sheet),
                                     std::pair(low.with_sheet.value(), high.with_sheet.value())}) {
    expect_near({above.coupling_W_mK.value - below.coupling_W_mK.value,
                 above.coupling_W_mK.error + below.coupling_W_mK.error},
                added, 0.0, "slab");
  }
}

TEST(EdgeFigures, CentreOfTheGlassIsThatOfTheLayers) {
  const ReadySection ready{.member = TimberSash{}, .sheet = test::usual_sheet()};
  const auto figures = edge_figures(ready);
  const double outer_m2K_W = 0.04 + 0.004 / 1.0;
  const double whole_m2K_W = outer_m2K_W + 0.179 + 0.004 / ready.sheet->sheet_W_mK + 0.13;
  EXPECT_NEAR(figures.with_sheet->glass_u_value_W_m2K, 1.0 / whole_m2K_W, 1e-12);
  const auto& centre_C = figures.with_sheet->gap->glass_centre_C;
  EXPECT_NEAR(centre_C.value, 20.0 * outer_m2K_W / whole_m2K_W, centre_C.error + 1e-4);
}

bool on_bare_steel(const std::string& name) {
  return name.find("on steel") != std::string::npos;
}

TEST(EdgeFigures, WhatASheetDoesToAnEdge) {
  for (const auto& [name, ready] : test::usual_sections()) {
    const auto figures = edge_figures(ready);
    ASSERT_EQ(figures.status, SectionStatus::converged) << name;
    const EdgeState& before = figures.without_sheet;
    const EdgeState& after = figures.with_sheet.value();
    const GapSpots& gap = after.gap.value();
    EXPECT_LT(after.coupling_W_mK.value, before.coupling_W_mK.value) << name;
    // The old glass gets colder by most of what it was warmed by the room.
    EXPECT_LT(gap.glass_edge.temperature_C.value, before.room_side.temperature_C.value) << name;
    EXPECT_LT(gap.glass_centre_C.value, before.room_side.temperature_C.value) << name;
    EXPECT_LE(gap.any.temperature_C.value, gap.old_glass.temperature_C.value) << name;
    EXPECT_LE(gap.old_glass.temperature_C.value, gap.glass_edge.temperature_C.value) << name;
    EXPECT_EQ(gap.old_glass.item, "old glass") << name;
    EXPECT_LE(gap.any.edge_factor->value, 1.0) << name;
    if (on_bare_steel(name)) {  // what is covered of the steel takes no more heat from the room
      EXPECT_LT(after.room_side.temperature_factor.value, before.room_side.temperature_factor.value) << name;
      EXPECT_EQ(after.room_side.item, "steel") << name;
    } else {
      EXPECT_GT(after.room_side.temperature_factor.value, before.room_side.temperature_factor.value + 0.2)
          << name;
    }
  }
}

TEST(EdgeFigures, SaysWhereTheColdestSpotsAre) {
  const ReadySection ready{.member = TimberSash{}, .sheet = test::usual_sheet()};
  const auto figures = edge_figures(ready);
  EXPECT_EQ(figures.without_sheet.room_side.item, "old glass");
  // On the rail's face, in the corner under the sheet's foot or not far below it.
  const ColdSpot& room_side = figures.with_sheet->room_side;
  EXPECT_EQ(room_side.item, "bottom rail");
  EXPECT_NEAR(room_side.at.x_m, 0.044, 1e-9);
  EXPECT_NEAR(room_side.at.y_m, 0.070 - 0.020, 0.002);
  EXPECT_EQ(figures.with_sheet->gap->frame->item, "bottom rail");
  EXPECT_FALSE(room_side.edge_factor.has_value());
}

TEST(EdgeFigures, CoveringMoreLeavesLess) {
  const auto on_sash = edge_figures({.member = SashInFrame{}, .sheet = test::usual_sheet(OnSash{})});
  const auto on_frame = edge_figures({.member = SashInFrame{}, .sheet = test::usual_sheet(OnFrame{})});
  EXPECT_LT(on_frame.with_sheet->coupling_W_mK.value, on_sash.with_sheet->coupling_W_mK.value);
  EXPECT_GT(on_frame.with_sheet->room_side.temperature_C.value,
            on_sash.with_sheet->room_side.temperature_C.value);
}

/// Warmer at a break than at the tape, less the errors of both; of the coldest that the room's air reaches.
double warmer_at_break_K(ReadySection ready, double tape_thickness_m) {
  ready.sheet->tape_thickness_m = tape_thickness_m;
  const SectionOptions quick{.temperature_error_bound_K = 0.1};
  const auto taped = edge_figures(ready, quick).with_sheet->room_side.temperature_C;
  ready.sheet->cut = TapeCut::vent_break;
  const auto open = edge_figures(ready, quick).with_sheet->room_side.temperature_C;
  const double warmer_K = open.value - taped.value;
  return std::copysign(std::max(0.0, std::abs(warmer_K) - open.error - taped.error), warmer_K);
}

TEST(EdgeFigures, AVentBreakIsColderThanTheTape) {
  for (const auto& [name, ready] : test::usual_sections()) {
    for (const double thickness_m : {0.002, 0.006, 0.015}) {
      if (!on_bare_steel(name)) {
        EXPECT_LE(warmer_at_break_K(ready, thickness_m), 0.0) << name << ", " << thickness_m;
      }
    }
  }
  EXPECT_LT(warmer_at_break_K({.member = TimberSash{}, .sheet = test::usual_sheet()}, 0.006), -0.5);
}

TEST(EdgeFigures, AWideBreakLetsTheRoomWarmBareSteel) {
  for (const auto& [name, ready] : test::usual_sections()) {
    if (on_bare_steel(name)) {
      EXPECT_GT(warmer_at_break_K(ready, 0.015), 0.0) << name;
    }
  }
}

TEST(EdgeFigures, FactorsAndCouplingsDoNotHangOnTheTemperatures) {
  ReadySection ready{.member = SashInFrame{}, .sheet = test::usual_sheet(OnFrame{})};
  const auto usual = edge_figures(ready);
  ready.climate.room_C = 17.0;
  ready.climate.outdoors_C = -9.0;
  const auto cold = edge_figures(ready);
  expect_near(usual.psi_W_mK, cold.psi_W_mK, 0.0, "Psi");
  expect_near(usual.with_sheet->coupling_W_mK, cold.with_sheet->coupling_W_mK, 0.0, "coupling");
  expect_near(usual.with_sheet->room_side.temperature_factor, cold.with_sheet->room_side.temperature_factor,
              0.0, "room side");
  expect_near(*usual.with_sheet->gap->frame->edge_factor, *cold.with_sheet->gap->frame->edge_factor, 0.0,
              "frame");
}

/// The same drawing seen from the other end.
Section mirrored(Section section) {
  for (auto& item : section.items) {
    for (auto& point : item.polygon) {
      point.x_m = -point.x_m;
    }
  }
  for (auto& boundary : section.boundaries) {
    for (auto& edges : boundary.edges) {
      if (auto* walk = std::get_if<EdgesAlong>(&edges)) {
        std::swap(walk->from, walk->to);
        walk->from.x_m = -walk->from.x_m;
        walk->to.x_m = -walk->to.x_m;
      }
    }
  }
  return section;
}

TEST(EdgeFigures, AMirroredDrawingSaysTheSame) {
  const ReadySection ready{
      .member = SashInFrame{}, .reveal = MasonryReveal{}, .sheet = test::usual_sheet(OnBatten{})};
  const Section section = section_of(ready, ReadyFilling::glass_and_sheet);
  const auto one = solve_section(section);
  const auto other = solve_section(mirrored(section));
  EXPECT_NEAR(one.coupling->value_W_mK, other.coupling->value_W_mK, 1e-9);
  EXPECT_NEAR(one.lowest_room_face->temperature_C, other.lowest_room_face->temperature_C, 1e-6);
}

TEST(EdgeFigures, AWallThatConductsNothingLeavesTheMemberAlone) {
  ReadySection ready{.member = TimberSash{}, .sheet = test::usual_sheet()};
  ready.climate.corners.surface_resistance_m2K_W = 0.13;  // or the reveal's corner would count
  const auto bare = edge_figures(ready);
  ready.reveal = MasonryReveal{.masonry_W_mK = 1e-3, .plaster_W_mK = 1e-3};
  const auto walled = edge_figures(ready);
  // Along the 0.1 m of wall under outer and inner reveal pass some hundredths of 1e-3 W/(m K) times a shape
  // factor of order one.
  expect_near(bare.without_sheet.coupling_W_mK, walled.without_sheet.coupling_W_mK, 2e-3, "before");
  expect_near(bare.with_sheet->coupling_W_mK, walled.with_sheet->coupling_W_mK, 2e-3, "after");
  expect_near(bare.psi_W_mK, walled.psi_W_mK, 0.0, "Psi is the member's own");
}

TEST(EdgeFigures, StatedErrorsHoldAgainstFinerGrids) {
  for (const auto& [name, ready] : test::usual_sections()) {
    const auto usual = edge_figures(ready);
    const auto fine = edge_figures(ready, {.coupling_error_bound = 1e-4, .temperature_error_bound_K = 0.015});
    expect_near(usual.frame_u_value_W_m2K, fine.frame_u_value_W_m2K, 0.0, name);
    expect_near(usual.psi_W_mK, fine.psi_W_mK, 0.0, name);
    expect_near(usual.with_sheet->coupling_W_mK, fine.with_sheet->coupling_W_mK, 0.0, name);
    expect_near(usual.with_sheet->room_side.temperature_C, fine.with_sheet->room_side.temperature_C, 0.0,
                name);
    expect_near(usual.with_sheet->gap->frame->temperature_C, fine.with_sheet->gap->frame->temperature_C, 0.0,
                name);
  }
}

TEST(EdgeFigures, SaysWhenItDidNotConverge) {
  const auto figures = edge_figures({.member = TimberSash{}}, {.max_cells = 100});
  EXPECT_EQ(figures.status, SectionStatus::cell_limit);
  EXPECT_GT(figures.frame_u_value_W_m2K.error, 0.0);
}

TEST(EdgeFigures, RefusesAirsThatHardlyDiffer) {
  ReadySection ready{.member = TimberSash{}};
  ready.climate.outdoors_C = 20.0;
  EXPECT_THROW(edge_figures(ready), InvalidInput);
}

}  // namespace
}  // namespace dewgap
