// The drawing of a section: texts stand apart and on the page; isotherms lie where the field has their level.
#include <gtest/gtest.h>

#include <algorithm>

#include "dewgap/window/section_readings.hpp"
#include "run_cli.hpp"
#include "solved_file.hpp"
#include "tools/section/isotherms.hpp"
#include "tools/section/section_drawing.hpp"

namespace dewgap::test {
namespace {

using namespace dewgap::tools;

void expect_texts_apart(const SvgDrawing& drawing) {
  const auto& boxes = drawing.text_boxes();
  ASSERT_GT(boxes.size(), 10U);
  for (std::size_t i = 0; i < boxes.size(); ++i) {
    EXPECT_GE(boxes[i].x, 0.0);
    EXPECT_GE(boxes[i].y, 0.0);
    EXPECT_LE(boxes[i].x + boxes[i].width, drawing.canvas().width);
    EXPECT_LE(boxes[i].y + boxes[i].height, drawing.canvas().height);
    for (std::size_t k = i + 1; k < boxes.size(); ++k) {
      const bool apart =
          boxes[i].x + boxes[i].width <= boxes[k].x || boxes[k].x + boxes[k].width <= boxes[i].x ||
          boxes[i].y + boxes[i].height <= boxes[k].y || boxes[k].y + boxes[k].height <= boxes[i].y;
      EXPECT_TRUE(apart) << "texts " << i << " and " << k << " at " << boxes[i].x << ", " << boxes[i].y;
    }
  }
}

TEST(SectionDrawing, TextsStandApartAndOnThePage) {
  for (const auto& path : files_in(examples_dir + "/section", ".toml")) {
    SCOPED_TRACE(path);
    auto solved = solved_file(text_of(path));
    expect_texts_apart(section_picture(solved, "s"));
    solved.file.shown.reset();  // the whole of it, smaller
    expect_texts_apart(section_picture(solved, "s"));
  }
}

TEST(SectionDrawing, SaysWhatABuilderLooksFor) {
  const auto solved = solved_file(text_of(section_example("sash-with-sheet")));
  const auto drawn = section_picture(solved, "s").svg();
  EXPECT_EQ(drawn, section_picture(solved, "s").svg());
  for (const auto* words : {"<title id=\"s-title\">Section: ", "<desc id=\"s-desc\">Materials by hatch",
                            ">outdoors 0 C<", ">room 20 C<", ">lowest on room side 11.7 C<", ">old glass<",
                            ">acrylic, 0.18 W/(m K)<", ">cut-off: no heat passes<", "Scale 1:1."})
    EXPECT_NE(drawn.find(words), std::string::npos) << words;
}

TEST(SectionDrawing, ThinPartsAreSolidAndAllOfASmallSectionFits) {
  auto solved = solved_file(text_of(section_example("iso-10211-case-2")));
  solved.file.shown.reset();
  const auto drawn = section_picture(solved, "s");
  EXPECT_NE(drawn.svg().find("Scale 1:3."), std::string::npos);
  EXPECT_NE(drawn.svg().find("fill=\"#000\""), std::string::npos);
  EXPECT_LE(drawn.canvas().width, 297.0);
}

/// A field of two by two cells of 1 m with these temperatures at its nine crossings, row after row from
/// below.
TemperatureField nine(std::vector<double> temperature_C) {
  TemperatureField field;
  field.x_m = field.y_m = {0.0, 1.0, 2.0};
  field.temperature_C = std::move(temperature_C);
  field.item.assign(4, 0U);
  return field;
}

TEST(Isotherms, OfASlopeAreStraightAndWhole) {
  const auto lines = isotherm(nine({0, 1, 2, 0, 1, 2, 0, 1, 2}), 1.5);
  ASSERT_EQ(lines.size(), 1U);
  ASSERT_EQ(lines[0].size(), 3U);
  for (const auto& point : lines[0]) EXPECT_DOUBLE_EQ(point.x_m, 1.5);
  EXPECT_EQ(simplified(lines[0], 1e-9).size(), 2U);
  const auto parts = clipped(lines[0], {0.0, 0.5}, {2.0, 1.25});
  ASSERT_EQ(parts.size(), 1U);
  EXPECT_NEAR(std::abs(parts[0].back().y_m - parts[0].front().y_m), 0.75, 1e-12);
  EXPECT_TRUE(clipped(lines[0], {0.0, 0.0}, {1.0, 2.0}).empty());
}

TEST(Isotherms, RoundAPeakAreClosedAndSaddlesArePartedByTheirMiddle) {
  const auto peak = isotherm(nine({0, 0, 0, 0, 4, 0, 0, 0, 0}), 1.0);
  ASSERT_EQ(peak.size(), 1U);
  EXPECT_DOUBLE_EQ(peak[0].front().x_m, peak[0].back().x_m);
  EXPECT_DOUBLE_EQ(peak[0].front().y_m, peak[0].back().y_m);
  TemperatureField saddle;
  saddle.x_m = saddle.y_m = {0.0, 1.0};
  saddle.temperature_C = {3, 0, 0, 3};  // 1.5 in the middle
  saddle.item.assign(1, 0U);
  for (const double level_C : {1.0, 2.0}) {
    const auto lines = isotherm(saddle, level_C);
    ASSERT_EQ(lines.size(), 2U);
    // Below the middle's value the warm corners hang together: each line cuts off a cold one.
    const SectionPoint corner = level_C < 1.5 ? SectionPoint{1.0, 0.0} : SectionPoint{0.0, 0.0};
    const bool found = std::any_of(lines.begin(), lines.end(), [&](const SectionLine& line) {
      return std::all_of(line.begin(), line.end(), [&](SectionPoint point) {
        return std::abs(point.x_m - corner.x_m) + std::abs(point.y_m - corner.y_m) <= 0.5;
      });
    });
    EXPECT_TRUE(found) << level_C;
  }
}

TEST(Isotherms, LieOnTheirLevelAndNoneIsMissed) {
  const auto solved = solved_file(text_of(section_example("sash-bottom-rail")));
  const auto& field = solved.result.field;
  for (const double level_C : {3.0, 5.0, 9.0, 13.0}) {
    std::size_t points = 0;
    for (const auto& line : isotherm(field, level_C))
      for (const auto& point : line) {
        ++points;
        EXPECT_NEAR(temperature_C_at(solved.result, point).value(), level_C, 1e-6);
      }
    EXPECT_GT(points, 3U) << level_C;
  }
  EXPECT_TRUE(isotherm(field, -1.0).empty());
  EXPECT_TRUE(isotherm(field, 21.0).empty());
}

TEST(Isotherms, LevelsAreRoundAndWithin) {
  const auto levels = isotherm_levels(0.3, 19.2);
  EXPECT_DOUBLE_EQ(levels.step_K, 2.0);
  EXPECT_EQ(levels.at_C.size(), 9U);
  EXPECT_DOUBLE_EQ(levels.at_C.front(), 2.0);
  EXPECT_DOUBLE_EQ(levels.at_C.back(), 18.0);
  EXPECT_TRUE(isotherm_levels(5.0, 5.0).at_C.empty());
  for (const double span_K : {0.01, 0.7, 3.0, 41.0, 250.0}) {
    const auto count = isotherm_levels(-0.37 * span_K, 0.63 * span_K).at_C.size();
    EXPECT_GE(count, 6U) << span_K;
    EXPECT_LE(count, 18U) << span_K;
  }
}

}  // namespace
}  // namespace dewgap::test
