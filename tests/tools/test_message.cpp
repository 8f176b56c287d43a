// The answer short enough for a phone.
#include <gtest/gtest.h>

#include <algorithm>

#include "hand_made_answer.hpp"
#include "run_cli.hpp"
#include "tools/setting_out/message.hpp"

namespace dewgap::test {
namespace {

using tools::message;

tools::AnsweredJob measured_answer() {
  auto job = hand_made_answer();
  job.survey.window.opening_widths_m = {0.903, 0.900, 0.901};
  job.survey.window.opening_heights_m = {1.501, 1.500, 1.503};
  return job;
}

bool is_plain(const std::string& text) {
  return std::all_of(text.begin(), text.end(), [](char c) { return c == '\n' || (c >= ' ' && c < 0x7F); });
}

TEST(Message, OfEveryExampleFitsAndSaysWhereTheRestIs) {
  for (const auto& path : example_jobs()) {
    const auto result = run_cli(
        {"message", path, "--window-hours", "0", "--samples", "16", "--money", examples_dir + "/money.toml"});
    ASSERT_EQ(result.exit_code, 0) << result.err;
    EXPECT_LE(result.out.size(), tools::most_message_characters) << result.out;
    EXPECT_TRUE(is_plain(result.out)) << result.out;
    EXPECT_NE(result.out.find("full answer: dewgap assess") != std::string::npos ||
                  result.out.find("Full answer: dewgap assess") != std::string::npos,
              false)
        << result.out;
  }
}

TEST(Message, HoldAndLeaveHaveNothingToCutAndNoSaving) {
  for (const std::string name : {"hold-way-out", "damp-shower-room"}) {
    const auto result =
        run_cli({"message", examples_dir + "/" + name + ".toml", "--window-hours", "0", "--samples", "16"});
    EXPECT_EQ(result.out.find("Cut"), std::string::npos) << result.out;
    EXPECT_EQ(result.out.find("kWh"), std::string::npos) << result.out;
    EXPECT_EQ(result.out.find(" mm "), std::string::npos) << result.out;
  }
}

TEST(Message, StaysShortAndPlainWhateverTheJobSays) {
  auto job = measured_answer();
  job.survey.name = "<b>\xD7\xA9\xD7\x9C\xD7\x95\xD7\x9D {" + std::string(500, 'w');
  job.currency = "\xE2\x82\xAC\xE2\x82\xAC";
  job.assessment.after = std::vector<std::string>(20, std::string(300, 'a'));
  const auto text = message(job);
  EXPECT_LE(text.size(), tools::most_message_characters) << text;
  EXPECT_TRUE(is_plain(text)) << text;
  EXPECT_NE(text.find("more and the full answer"), std::string::npos) << text;
  EXPECT_EQ(text.find('{'), std::string::npos);
}

TEST(Message, TellsHeadlineTapeSavingCutAndOneCaution) {
  auto job = measured_answer();
  job.assessment.figures->plan->refused.clear();
  const auto text = message(job);
  EXPECT_NE(text.find("FIT AFTER (provisional): Stop the rain"), std::string::npos) << text;
  EXPECT_NE(text.find("Tape all round"), std::string::npos) << text;
  EXPECT_NE(text.find("Saves 133 (81 to 202) kWh a year, EUR 15 (9 to 23)."), std::string::npos) << text;
  EXPECT_NE(text.find("Mind: Screws"), std::string::npos) << text;
}

}  // namespace
}  // namespace dewgap::test
