// The SVG writer: escaping, text that stays inside, hatches, the scale of shades.
#include <gtest/gtest.h>

#include "tools/drawing/markup.hpp"
#include "tools/drawing/paper.hpp"
#include "tools/drawing/shade.hpp"
#include "tools/drawing/svg.hpp"

namespace dewgap::test {
namespace {

using namespace dewgap::tools;

const std::string hostile_text = "<script>alert('x')</script> \"q\" & \xE2\x80\xAE\x01";

Canvas small(DrawingUnit unit = DrawingUnit::mm) {
  return {
      .width = 60, .height = 40, .unit = unit, .id = "d", .title = hostile_text, .description = hostile_text};
}

TEST(Drawing, NothingOfATextBecomesMarkup) {
  SvgDrawing drawing(small());
  drawing.begin_group(hostile_text);
  drawing.text({5, 5}, hostile_text, {.most_width = 40});
  drawing.end_group();
  const auto svg = drawing.svg();
  EXPECT_EQ(svg.find("<script"), std::string::npos);
  EXPECT_EQ(svg.find('\x01'), std::string::npos);
  EXPECT_EQ(svg.find("\xE2\x80\xAE"), std::string::npos);
  EXPECT_NE(svg.find("&lt;script&gt;"), std::string::npos);
  EXPECT_EQ(escaped("a\"b'c"), "a&quot;b&#39;c");
  EXPECT_EQ(isolated("<b>"), "<bdi>&lt;b&gt;</bdi>");
  const auto page = paper_document(
      {hostile_text, "",
       tick_list({hostile_text}) + paper_table({hostile_text, {hostile_text}, {{hostile_text}}})});
  EXPECT_EQ(page.find("<script"), std::string::npos);
}

TEST(Drawing, HasNameAndDescriptionForThoseWhoDoNotSeeIt) {
  const auto svg = SvgDrawing(small()).svg();
  EXPECT_NE(svg.find("role=\"img\" aria-labelledby=\"d-title d-desc\""), std::string::npos);
  EXPECT_NE(svg.find("<title id=\"d-title\">"), std::string::npos);
  EXPECT_NE(svg.find("<desc id=\"d-desc\">"), std::string::npos);
}

TEST(Drawing, TextIsShrunkThenCut) {
  const std::string words = "a rather long label for this";
  const double em = text_width_em(words);
  const auto as_is = fitted_text(words, em * 3.0 + 0.01, 3.0, 2.4);
  EXPECT_EQ(as_is.text, words);
  EXPECT_EQ(as_is.size, 3.0);
  const auto smaller = fitted_text(words, em * 2.6, 3.0, 2.4);
  EXPECT_EQ(smaller.text, words);
  EXPECT_NEAR(smaller.size, 2.6, 1e-9);
  const auto cut = fitted_text(words, em * 1.2, 3.0, 2.4);
  EXPECT_LT(cut.text.size(), words.size());
  EXPECT_LE(text_width_em(cut.text) * cut.size, em * 1.2);
  for (const auto& line : fitted_lines(words + " " + std::string(200, 'W'), 30.0, 3.0))
    EXPECT_LE(text_width_em(line) * 3.0, 30.0) << line;
}

TEST(Drawing, BoxesOfTurnedTextAreTurned) {
  SvgDrawing drawing(small());
  drawing.text({20, 30}, "height 1543", {.size = 3.0, .anchor = Anchor::middle, .turned_deg = -90.0});
  const auto& box = drawing.text_boxes().at(0);
  EXPECT_GT(box.height, 4.0 * box.width);
  EXPECT_NEAR(box.y + box.height / 2.0, 30.0, 1e-6);
  EXPECT_LT(box.x, 20.0);
}

TEST(Drawing, VerticalMeasuresReadUpwardsBesideTheirLine) {
  SvgDrawing drawing(small());
  drawing.dimension({.from = {20, 35}, .to = {20, 5}, .distance = 6.0, .text = "1543"});
  EXPECT_NE(drawing.svg().find("rotate(-90 "), std::string::npos);
  const auto& box = drawing.text_boxes().at(0);
  EXPECT_LE(box.x + box.width, 14.0);
}

TEST(Drawing, SameCallsGiveSameBytesAndEveryHatchOnce) {
  const auto drawn = [] {
    SvgDrawing drawing(small(DrawingUnit::fluid));
    for (const auto material : {Material::glass, Material::timber, Material::acrylic, Material::foam_tape,
                                Material::masonry, Material::metal, Material::glass})
      drawing.hatched(Box{1, 1, 10, 10}, material);
    drawing.line({0.0, -0.0001}, {1.0 / 3.0, 2.0});
    return drawing.svg();
  };
  const auto svg = drawn();
  EXPECT_EQ(svg, drawn());
  std::size_t patterns = 0;
  for (auto at = svg.find("<pattern"); at != std::string::npos; at = svg.find("<pattern", at + 1)) ++patterns;
  EXPECT_EQ(patterns, 6U);
  EXPECT_NE(svg.find("x1=\"0\" y1=\"0\" x2=\"0.333\""), std::string::npos);
}

TEST(Drawing, RefusesWhatItCannotDraw) {
  EXPECT_THROW(svg_number(std::numeric_limits<double>::quiet_NaN()), std::domain_error);
  EXPECT_THROW(SvgDrawing({.id = "a b"}), std::domain_error);
  SvgDrawing open(small());
  open.begin_group();
  EXPECT_THROW(open.svg(), std::logic_error);
}

double grey(const std::string& colour) {
  const auto part = [&](std::size_t at) { return std::stoi(colour.substr(at, 2), nullptr, 16); };
  return 0.2126 * part(1) + 0.7152 * part(3) + 0.0722 * part(5);
}

TEST(Shade, DarkensAllTheWayInGreyAndItsInkCanBeRead) {
  for (int i = 0; i < 100; ++i) {
    EXPECT_GT(grey(shade(i / 100.0)), grey(shade((i + 1) / 100.0))) << i;
    const double difference = std::abs(grey(shade(i / 100.0)) - grey(ink_on_shade(i / 100.0)));
    EXPECT_GT(difference, 90.0) << i;
  }
  EXPECT_EQ(shade(0.0), "#faf7ed");
  EXPECT_THROW(shade(1.01), std::domain_error);
  EXPECT_THROW(shade(std::numeric_limits<double>::quiet_NaN()), std::domain_error);
}

}  // namespace
}  // namespace dewgap::test
