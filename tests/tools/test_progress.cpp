// The progress line: on a terminal only, not too often, and gone at the end.
#include "tools/progress.hpp"

#include <gtest/gtest.h>

#include <sstream>

#include "hand_made_advice.hpp"
#include "run_cli.hpp"
#include "tools/verbs/verbs.hpp"

namespace dewgap::test {
namespace {

using std::chrono::milliseconds;
using std::chrono::steady_clock;

/// What a terminal shows after these bytes: carriage returns go back, letters write over.
std::string shown(const std::string& bytes) {
  std::string line;
  std::size_t at = 0;
  for (const char c : bytes) {
    if (c == '\r') {
      at = 0;
      continue;
    }
    line.resize(std::max(line.size(), at + 1), ' ');
    line[at++] = c;
  }
  return line.substr(0, line.find_last_not_of(' ') + 1);
}

class Progress : public testing::Test {
 protected:
  tools::Streams streams(bool terminal) { return {in_, out_, err_, terminal}; }
  tools::ProgressLine::Clock clock() {
    return [this] { return now_; };
  }

  std::istringstream in_;
  std::ostringstream out_;
  std::ostringstream err_;
  steady_clock::time_point now_{};
};

TEST_F(Progress, ShowsHowFarItIsAndIsClearedAtTheEnd) {
  {
    tools::ProgressLine line(streams(true), "window-hours", clock());
    line.show(1'300'000, 5'000'000);
    EXPECT_EQ(shown(err_.str()), "[#####               ] 1.3 of at most 5.0 million window-hours");
    now_ += milliseconds(100);
    line.show(5'000'000, 5'000'000);
    EXPECT_EQ(shown(err_.str()), "[####################] 5.0 of at most 5.0 million window-hours");
  }
  EXPECT_EQ(shown(err_.str()), "");
  EXPECT_TRUE(err_.str().ends_with('\r')) << "what comes next starts at the line's beginning";
  EXPECT_EQ(err_.str().find('\n'), std::string::npos);
  EXPECT_EQ(err_.str().find('\x1B'), std::string::npos) << "no colour, no control sequence";
  EXPECT_EQ(out_.str(), "");
}

TEST_F(Progress, IsNotWrittenWhereThereIsNoTerminal) {
  tools::ProgressLine line(streams(false), "window-hours", clock());
  now_ += milliseconds(1000);
  line.show(1, 2);
  line.clear();
  EXPECT_EQ(err_.str(), "");
}

TEST_F(Progress, IsRewrittenTenTimesASecondAtMost) {
  tools::ProgressLine line(streams(true), "window-hours", clock());
  for (std::size_t i = 0; i < 1000; ++i) {  // one second
    line.show(i, 1000);
    now_ += milliseconds(1);
  }
  const auto bytes = err_.str();
  EXPECT_EQ(std::count(bytes.begin(), bytes.end(), '['), 10);
}

TEST_F(Progress, MoreThanTheBoundIsAFullBar) {
  tools::ProgressLine line(streams(true), "window-hours", clock());
  line.show(7'000'000, 5'000'000);
  EXPECT_EQ(shown(err_.str()), "[####################] 7.0 of at most 5.0 million window-hours");
}

TEST_F(Progress, OfAVerbLeavesTheAnswerAloneOnStdout) {
  for (const bool terminal : {false, true}) {
    tools::VentVerb verb;
    verb.input.paths.job = examples_dir + "/old-sash.toml";
    verb.csv = true;
    verb.compute = [](const auto&, const auto&, const auto&, const auto&, const dewgap::Progress& progress) {
      progress(1'000'000, 5'000'000);
      auto advice = hand_made_advice();
      advice.options.clear();
      return advice;
    };
    verb.run(streams(terminal));
    EXPECT_EQ(err_.str().empty(), !terminal);
    EXPECT_EQ(shown(err_.str()), "");
  }
  EXPECT_EQ(out_.str().find("million"), std::string::npos);
}

}  // namespace
}  // namespace dewgap::test
