// [frame] of a section file: Uf and Psi of ISO 10077-2, and what does not fit the drawing.
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "run_cli.hpp"
#include "schema_complaints.hpp"
#include "solved_file.hpp"
#include "support/reference.hpp"
#include "tools/section/frame_figures.hpp"

namespace dewgap::test {
namespace {

using namespace dewgap::tools;
using nlohmann::json;

std::string d4_with(const std::string& line) {
  return text_of(section_example("iso-10077-2-d4")) + line;
}

TEST(SectionFrame, UfOfTheStandardsOwnSection) {
  const auto solved = solved_file(text_of(section_example("iso-10077-2-d4")), {.coupling_error_bound = 5e-5});
  const auto figures = frame_figures(solved);
  ASSERT_TRUE(figures && figures->frame_u_value_W_m2K && !figures->psi_W_mK);
  // Up of 28 mm of 0.035 W/(m K) between 0.13 and 0.04 m2 K/W, by hand.
  EXPECT_NEAR(figures->beside_u_value_W_m2K, 1.0 / 0.97, 1e-12);
  check_reference("iso_10077_2/section_d4.csv", [&](const ReferenceRow& row) {
    return row.text("quantity") == "Uf" ? figures->frame_u_value_W_m2K->value
                                        : solved.result.coupling->value_W_mK;
  });
  EXPECT_NEAR(figures->frame_u_value_W_m2K->value, (solved.result.coupling->value_W_mK - 0.19 / 0.97) / 0.11,
              1e-12);
  EXPECT_NEAR(figures->frame_u_value_W_m2K->error, solved.result.coupling->error_bound_W_mK / 0.11, 1e-15);
}

TEST(SectionFrame, PsiOfThePanelBesideItsOwnFrameIsNone) {
  const auto with_panel = frame_figures(solved_file(d4_with("")));
  const auto uf = with_panel.value().frame_u_value_W_m2K.value();
  const auto figures =
      frame_figures(solved_file(d4_with("frame_u_value_W_m2K = " + std::to_string(uf.value) + "\n")));
  ASSERT_TRUE(figures && figures->psi_W_mK && !figures->frame_u_value_W_m2K);
  EXPECT_NEAR(figures->psi_W_mK->value, 0.0, 0.11 * 5e-7) << "to_string gives six digits";
  // One W/(m2 K) less in the frame is 0.11 W/(m K) more at the edge.
  const auto less = frame_figures(solved_file(d4_with("frame_u_value_W_m2K = 0.3\n")));
  EXPECT_NEAR(less.value().psi_W_mK.value().value, 0.11 * (uf.value - 0.3), 1e-9);
}

TEST(SectionFrame, PanesAndGapsBesideCountInARow) {
  auto job = text_of(section_example("sash-with-sheet"));
  job += "\n[frame]\nlength_mm = 70\nbeside = [\"old glass\", \"gap\", \"sheet\"]\nbeside_mm = 190\n";
  const auto solved = solved_file(job);
  double resistance_m2K_W = 0.13 + 0.04 + 1.0 / 5.9;
  for (const auto* name : {"old glass", "sheet"})
    resistance_m2K_W += 0.004 / look_of(solved, name).conductivity_W_mK.value();
  EXPECT_NEAR(frame_figures(solved).value().beside_u_value_W_m2K, 1.0 / resistance_m2K_W, 1e-12);
}

TEST(SectionFrame, StandsInTextAndJson) {
  const auto path = section_example("iso-10077-2-d4");
  const auto text = run_cli({"section", path});
  EXPECT_TRUE(holds(replaced(text.out, "\n", " "), "Frame (Uf, ISO 10077-2): 1.3")) << text.out << text.err;
  const auto document = json::parse(run_cli({"section", path, "--json"}).out);
  EXPECT_EQ(complaints(document, {"schema", "--section"}), "");
  EXPECT_EQ(document.at("frame").count("linear_transmittance"), 0U);
  EXPECT_NEAR(document.at("frame").at("frame_u_value").at("value_W_m2K").get<double>(), 1.36, 0.05 * 1.36);
  ASSERT_EQ(document.at("lowest_in_gaps").size(), 3U);
  const auto sheet = json::parse(run_cli({"section", section_example("sash-with-sheet"), "--json"}).out);
  const auto& gap = sheet.at("lowest_in_gaps").at(0);
  EXPECT_EQ(gap.at("item"), "gap");
  const double foot_C = sheet.at("points").at(0).at("temperature_C");
  EXPECT_LE(gap.at("temperature_C").get<double>(), foot_C) << "the foot is one of the gap's faces";
}

TEST(SectionFrame, WhatDoesNotFitIsToldAtItsLine) {
  const auto base = text_of(section_example("iso-10077-2-d4"));
  const auto problems_of = [&](const std::string& from, const std::string& to) {
    return problem_lines("d4.toml", read_section(replaced(base, from, to)).problems);
  };
  EXPECT_TRUE(
      holds(problems_of("beside = [\"panel\"]", "beside = [\"pane\"]"), "beside: \"pane\" is no item"));
  EXPECT_TRUE(holds(problems_of("beside = [\"panel\"]", "beside = [\"joint\"]"), "\"joint\" is a cavity"));
  EXPECT_TRUE(holds(problems_of("beside = [\"panel\"]", "beside = []"), "beside: names nothing"));
  EXPECT_TRUE(holds(problems_of("length_mm = 110", "length_mm = 0"), "length_mm: 0 is out of range"));
  EXPECT_TRUE(holds(problems_of("length_mm = 110\n", ""), "length_mm: missing"));
  EXPECT_TRUE(
      holds(problems_of("kind = \"outdoors\"", "kind = \"room\""), "one surface resistance to outdoors"));
}

}  // namespace
}  // namespace dewgap::test
