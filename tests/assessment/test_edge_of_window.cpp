#include "dewgap/assessment/edge_of_window.hpp"

#include <gtest/gtest.h>

#include <algorithm>

#include "dewgap/assessment/edge_of_window_kernel.hpp"
#include "dewgap/assessment/edge_section_kernel.hpp"
#include "dewgap/assessment/year_design_kernel.hpp"
#include "dewgap/window/edge_figures.hpp"
#include "edge_cases.hpp"

namespace dewgap {
namespace {

using test::drawn_in_reveal;
using test::drawn_sash;
using test::drawn_steel;
using test::middle_of;
using test::quick_options;
using test::worn_sash_survey;

bool has_caution(const Assessment& answer, std::string_view topic) {
  return std::any_of(answer.cautions.begin(), answer.cautions.end(),
                     [&](const Caution& caution) { return caution.topic == topic; });
}

/// Fields of all problems, in one line.
std::string fields_of(const Survey& survey) {
  std::string fields;
  for (const auto& problem : problems(survey)) {
    fields += problem.field + ";";
  }
  return fields;
}

void expect_rising(const EdgeRange& range, const char* name) {
  EXPECT_LE(range.low, range.middle) << name;
  EXPECT_LE(range.middle, range.high) << name;
}

TEST(EdgeOfWindow, IsNotThereUnlessAskedFor) {
  Survey refused = worn_sash_survey();
  refused.edge = {.work_out = false, .rail_face_m = 0.120};
  const auto plain = assess(worn_sash_survey(), quick_options());
  const auto other = assess(refused, quick_options());
  EXPECT_FALSE(plain.figures->edge.has_value());
  EXPECT_FALSE(other.figures->edge.has_value());
  EXPECT_EQ(plain.figures->now_and_with.window_u_after_W_m2K.p50,
            other.figures->now_and_with.window_u_after_W_m2K.p50);
  EXPECT_EQ(plain.figures->inputs.size(), other.figures->inputs.size());
  const Survey survey = worn_sash_survey();
  const Setting setting = setting_for(survey);
  EXPECT_EQ(gap_edge_factor(setting, middle_of(setting)), middle_of(setting)[Unknown::edge_factor]);
}

TEST(EdgeOfWindow, WholeWindowIsTheHandCombination) {
  for (const Survey& survey : {drawn_sash(), drawn_steel()}) {
    const Setting setting = setting_for(survey);
    UnknownValues sample = middle_of(setting);
    sample[Unknown::frame_u_factor] = 1.07;
    const auto figures = run_sample(setting, sample);
    ASSERT_EQ(figures.status, SolveStatus::converged);
    const auto& areas = setting.window.areas;
    const EdgeOfWindow& edge = setting.edge.value();
    // ISO 10077-1 eq. 1 by hand, all frame and all sight lines
    const double frame_W_K = 1.07 * edge.frame_u_W_m2K.middle * (areas.sash_m2 + areas.frame_m2) +
                             edge.psi_W_mK * areas.glass_edge_m;
    const double opening_m2 = setting.window.width_m * setting.window.height_m;
    EXPECT_NEAR(figures.window_u_before * opening_m2, figures.glass_u_before * areas.glass_m2 + frame_W_K,
                1e-9);
    const double member_W_mK = edge.frame_u_W_m2K.middle * edge.frame_length_m + edge.psi_W_mK;
    const auto solved = edge_figures(edge.section, {.temperature_error_bound_K = 0.1});
    const double cut =
        (solved.without_sheet.coupling_W_mK.value - solved.with_sheet->coupling_W_mK.value) / member_W_mK;
    EXPECT_NEAR(figures.window_u_after * opening_m2,
                figures.glass_u_after * areas.glass_m2 + (1.0 - cut) * frame_W_K, 1e-9);
  }
}

TEST(EdgeOfWindow, RangesHoldTheirMiddle) {
  for (const Survey& survey : {drawn_sash(), drawn_steel(), drawn_in_reveal()}) {
    const EdgeAnswer edge = assess(survey, quick_options()).figures->edge.value();
    expect_rising(edge.gap_conductance_W_m2K, "gap");
    expect_rising(edge.frame_u_W_m2K, "Uf");
    expect_rising(edge.psi_W_mK, "Psi");
    expect_rising(edge.coupling_after_W_mK, "K");
    expect_rising(edge.room_factor, "fRsi");
    EXPECT_GT(edge.cut_share.low, 0.0);
    EXPECT_LT(edge.cut_share.high, 1.0);
    EXPECT_LE(edge.gap_edge_factor.high, 1.0);
    EXPECT_LT(edge.gap_conductance_W_m2K.low, edge.gap_conductance_W_m2K.high);
  }
}

TEST(EdgeOfWindow, AHigherRailBringsTheFrameNearerToTheRail) {
  Survey low = drawn_sash();
  low.edge.rail_face_m = 0.050;
  Survey high = drawn_sash();
  high.edge.rail_face_m = 0.150;
  const auto before = setting_for(low).edge.value();
  const auto after = setting_for(high).edge.value();
  // The rail is thinner than the frame below it, so that more of it loses more.
  const double rail_W_m2K = 1.0 / (0.13 + 0.045 / best_W_mK(FrameKind::softwood) + 0.04);
  EXPECT_GT(after.frame_u_W_m2K.middle, before.frame_u_W_m2K.middle);
  EXPECT_LT(after.frame_u_W_m2K.middle, rail_W_m2K);
  EXPECT_NEAR(after.frame_length_m - before.frame_length_m, 0.100, 1e-12);
  const auto member_W_mK = [](const EdgeOfWindow& edge) {
    return edge.frame_u_W_m2K.middle * edge.frame_length_m + edge.psi_W_mK;
  };
  EXPECT_NEAR(member_W_mK(after) - member_W_mK(before), 0.100 * rail_W_m2K, 0.05 * 0.100 * rail_W_m2K);
  const auto u_before = [](const Survey& survey) {
    return assess(survey, quick_options()).figures->now_and_with.window_u_before_W_m2K.p50;
  };
  EXPECT_GT(u_before(high), u_before(low));
}

TEST(EdgeOfWindow, TheYearTakesTheGapsEdgeAndTheRoomsFromConduction) {
  const Survey sash = drawn_sash();
  const Survey bar = drawn_steel();
  const Survey in_reveal = drawn_in_reveal();
  for (const Survey& survey : {sash, bar, in_reveal}) {
    const Setting setting = setting_for(survey);
    const auto sample = middle_of(setting);
    const double prior = sample[Unknown::edge_factor];
    EXPECT_EQ(sheet_design(setting, sample, VentOption::sealed, TapeFault::none).edge_temperature_factor,
              prior * setting.edge->gap_edge_factor);
    EXPECT_EQ(old_window_design(setting, sample).edge_temperature_factor, prior);
  }
  // Behind a sheet in the reveal the bare rail is colder than the middle of the glass; elsewhere nothing is,
  // steel neither: the room's warmth comes to it through its own foot.
  EXPECT_LT(setting_for(in_reveal).edge->gap_edge_factor, 1.0);
  EXPECT_EQ(setting_for(bar).edge->gap_edge_factor, 1.0);
  EXPECT_LT(setting_for(bar).edge->room_factor, setting_for(sash).edge->room_factor - 0.2);
}

TEST(EdgeOfWindow, ABreakIsToldWhereTheVerdictPutsOne) {
  const Survey survey = drawn_sash();
  const Setting setting = setting_for(survey);
  WeightedRuns runs;
  runs.samples = {middle_of(setting)};
  runs.figures = {run_sample(setting, runs.samples.front())};
  runs.weights = {1.0};
  EXPECT_FALSE(edge_answer(setting, runs, VentOption::sealed)->break_factor);
  const auto broken = edge_answer(setting, runs, VentOption::breaks_bottom);
  ASSERT_TRUE(broken->break_factor.has_value());
  EXPECT_GT(*broken->break_factor, 0.0);
  EXPECT_LT(*broken->break_factor, 1.0);
}

TEST(EdgeOfWindow, MeasuredSizesNarrowTheFrame) {
  const auto factor = [](const Survey& survey) {
    return beliefs_for(setting_for(survey))[static_cast<std::size_t>(Unknown::frame_u_factor)].prior;
  };
  Survey measured = drawn_sash();
  measured.edge.rail_face_m = 0.070;
  measured.edge.frame_face_m = 0.055;
  measured.window.frame_thickness_m = 0.045;
  const Prior& prior = prior_of(Unknown::frame_u_factor);
  const Prior usual = factor(drawn_sash());
  const Prior narrow = factor(measured);
  EXPECT_LT(narrow.p90, usual.p90);
  EXPECT_GT(narrow.p10, usual.p10);
  EXPECT_LT(usual.p90, prior.p90);
  EXPECT_GT(usual.p10, prior.p10);
  EXPECT_LT(narrow.p10, narrow.p50);
  EXPECT_TRUE(narrow.is_convention());
}

TEST(EdgeOfWindow, SaysWhichFramesCanBeDrawn) {
  for (const FrameKind frame : {FrameKind::pvc_u, FrameKind::aluminium}) {
    Survey survey = drawn_sash();
    survey.window.frame = frame;
    const auto found = problems(survey);
    ASSERT_EQ(found.size(), 1u);
    EXPECT_EQ(found.front().field, "edge.work_out");
    EXPECT_NE(found.front().message.find("softwood, hardwood and steel"), std::string::npos);
    survey.edge.work_out = false;
    EXPECT_EQ(fields_of(survey), "");
  }
}

TEST(EdgeOfWindow, ContradictionsNameTheirKey) {
  const auto fields = [](Survey survey, auto change) {
    change(survey);
    return fields_of(survey);
  };
  const Survey sash = drawn_sash();
  const Survey steel = drawn_steel();
  EXPECT_EQ(fields(sash, [](Survey&) {}), "");
  EXPECT_EQ(fields(steel, [](Survey&) {}), "");
  EXPECT_EQ(fields(sash, [](Survey& s) { s.edge.glass_to_room_face_m = 0.040; }), "edge.glass_to_room_face;");
  EXPECT_EQ(fields(sash, [](Survey& s) { s.edge.rail_face_m = 0.012; }), "edge.rail_face;");
  EXPECT_EQ(fields(sash, [](Survey& s) { s.edge.rail_face_m = 0.5; }), "edge.rail_face;");
  EXPECT_EQ(fields(sash, [](Survey& s) { s.edge.timber_sub_frame = true; }), "edge.timber_sub_frame;");
  EXPECT_EQ(fields(sash, [](Survey& s) { s.edge.batten_depth_m = 0.020; }), "edge.batten_depth;");
  EXPECT_EQ(fields(sash, [](Survey& s) { s.expert.frame_u_value_W_m2K = 2.0; }), "expert.frame_u_value;");
  EXPECT_EQ(fields(sash, [](Survey& s) { s.window.glass_to_fixing_face_m = {0.120}; }),
            "window.glass_to_fixing_face;");
  EXPECT_EQ(fields(sash, [](Survey& s) { s.edge = {.rail_face_m = 0.070}; }), "edge.work_out;");
  EXPECT_EQ(fields(drawn_in_reveal(), [](Survey& s) { s.edge.inner_reveal_m = 0.010; }),
            "window.glass_to_fixing_face;");
  EXPECT_EQ(fields(steel, [](Survey& s) { s.edge.glass_to_room_face_m = 0.010; }),
            "edge.glass_to_room_face;");
  EXPECT_EQ(fields(steel, [](Survey& s) { s.edge.frame_face_m = 0.050; }), "edge.frame_face;");
  EXPECT_EQ(fields(steel, [](Survey& s) { s.window.glass_to_fixing_face_m = {0.028}; }),
            "window.glass_to_fixing_face;");
}

TEST(EdgeOfWindow, EveryCoverOfEveryFrameIsDrawn) {
  for (const FrameKind frame : {FrameKind::softwood, FrameKind::hardwood, FrameKind::steel}) {
    for (const WindowKind kind : {WindowKind::casement, WindowKind::fixed_light}) {
      for (const Cover cover : {Cover::glass, Cover::sash, Cover::frame, Cover::reveal}) {
        for (const bool sub_frame : {false, true}) {
          Survey survey = drawn_sash();
          survey.window.kind = kind;
          survey.window.frame = frame;
          survey.window.glass_to_fixing_face_m = {};
          survey.sheet.cover = cover;
          survey.edge.timber_sub_frame = sub_frame && frame == FrameKind::steel;
          EXPECT_EQ(fields_of(survey), "") << name_of(frame) << " " << static_cast<int>(kind) << " "
                                           << static_cast<int>(cover) << " " << sub_frame;
        }
      }
    }
  }
}

TEST(EdgeOfWindow, BareSteelIsWarnedOf) {
  const auto quick = [](const Survey& survey) { return assess(survey, quick_options()); };
  const auto warned = quick(drawn_steel());
  EXPECT_TRUE(has_caution(warned, "steel"));
  const EdgeAnswer& edge = *warned.figures->edge;
  EXPECT_LT(edge.room_factor.high, edge.room_factor_before.low);  // what it says
  EXPECT_EQ(edge.room_spot, "steel");
  Survey on_timber = drawn_steel();
  on_timber.sheet.cover = Cover::frame;
  on_timber.edge.timber_sub_frame = true;
  EXPECT_FALSE(has_caution(quick(on_timber), "steel"));
  EXPECT_FALSE(has_caution(quick(drawn_sash()), "steel"));
}

TEST(EdgeOfWindow, AHoldSaysNothingOfIt) {
  Survey survey = drawn_steel();
  survey.settle_first.way_out = WayOut::might_be_needed;
  const auto answer = assess(survey, quick_options());
  EXPECT_EQ(answer.headline, Headline::hold);
  EXPECT_FALSE(answer.figures.has_value());
  EXPECT_FALSE(has_caution(answer, "steel"));
}

}  // namespace
}  // namespace dewgap
