// The page to fill in by hand.
#include <gtest/gtest.h>

#include <cmath>

#include "run_cli.hpp"
#include "tools/setting_out/survey_card.hpp"

namespace dewgap::test {
namespace {

using namespace dewgap::tools;

TEST(SurveyCard, HasEveryKeyOfTheShortJobInItsOrder) {
  const auto card = survey_card(job_table());
  std::size_t at = 0;
  for (const auto& section : job_table().sections)
    for (const auto& field : job_table().fields) {
      if (field.section != section.name || field.asked != Asked::short_job) continue;
      const auto found = card.find("<code>" + std::string(field.key) + "</code>", at);
      ASSERT_NE(found, std::string::npos) << field.path();
      at = found;
    }
}

TEST(SurveyCard, OffersNotKnownWhereTheFileTakesIt) {
  const auto lines = lines_of(survey_card(job_table()));
  for (const auto& field : job_table().fields) {
    if (field.asked != Asked::short_job || std::holds_alternative<TextRule>(field.rule)) continue;
    if (job_table().find_section(field.section)->begin_repeat) continue;
    const auto key = "<code>" + std::string(field.key) + "</code>";
    for (const auto& line : lines) {
      if (line.find(key) == std::string::npos || line.find("class=\"field\"") == std::string::npos) continue;
      EXPECT_EQ(line.find("</span>?</span>") != std::string::npos, field.need != Need::required)
          << field.path();
    }
  }
}

TEST(SurveyCard, StandsAlone) {
  const auto result = run_cli({"survey-card"});
  EXPECT_EQ(result.exit_code, 0);
  EXPECT_EQ(result.out, survey_card(job_table()));
  EXPECT_EQ(result.out.find("src="), std::string::npos);
  EXPECT_EQ(result.out.find("<script"), std::string::npos);
}

TEST(SurveyCard, NoTextOfItsDrawingsIsClippedOrTooSmall) {
  constexpr double mm_per_pt = 25.4 / 72.0;
  for (const auto& one : card_drawings()) {
    EXPECT_NE(job_table().find_section(one.section), nullptr) << one.section;
    for (const auto& box : one.drawing.text_boxes()) {
      EXPECT_GE(box.x, 0.0) << one.drawing.canvas().id;
      EXPECT_GE(box.y, 0.0) << one.drawing.canvas().id;
      EXPECT_LE(box.x + box.width, one.drawing.canvas().width) << one.drawing.canvas().id;
      EXPECT_LE(box.y + box.height, one.drawing.canvas().height) << one.drawing.canvas().id;
      EXPECT_GE(std::max(box.height, 0.0) / 0.98, card_text_pt * mm_per_pt - 0.01);
    }
  }
}

}  // namespace
}  // namespace dewgap::test
