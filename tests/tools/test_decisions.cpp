// The worked decisions of examples/decisions: what was expected before any run, and what comes out.
#include <gtest/gtest.h>

#include <algorithm>
#include <fstream>
#include <nlohmann/json.hpp>
#include <sstream>

#include "dewgap/numerics/csv_text.hpp"
#include "tools/run_cli.hpp"

namespace dewgap::test {
namespace {

const std::string decisions_dir = std::string(DEWGAP_EXAMPLES_DIR) + "/decisions/";

numerics::CsvTable table_of(const std::string& name) {
  std::ifstream file(decisions_dir + name);
  std::stringstream text;
  text << file.rdbuf();
  return numerics::CsvTable(text.str(), name);
}

struct Decision {
  std::string job;
  std::string expected_headline;
  std::string expected_vent;
  std::string headline;
  std::string vent;
  std::string miss;
};

std::vector<Decision> decisions() {
  const auto expected = table_of("expected.csv");
  const auto outcomes = table_of("outcomes.csv");
  std::vector<Decision> all;
  for (std::size_t i = 0; i < expected.row_count(); ++i) {
    for (std::size_t j = 0; j < outcomes.row_count(); ++j) {
      if (outcomes.text(j, "job") == expected.text(i, "job")) {
        all.push_back({expected.text(i, "job"), expected.text(i, "expected_headline"),
                       expected.text(i, "expected_vent"), outcomes.text(j, "headline"),
                       outcomes.text(j, "vent"), outcomes.text(j, "miss")});
      }
    }
  }
  return all;
}

class EachDecision : public testing::TestWithParam<Decision> {};

TEST_P(EachDecision, ComesOutAsRecordedAndMissesAreTold) {
  const auto& decision = GetParam();
  const auto run =
      run_cli({"assess", decisions_dir + decision.job, "--window-hours", "2000000", "--json"}, std::string());
  ASSERT_EQ(run.exit_code, 0) << run.err;
  const auto answer = nlohmann::json::parse(run.out);
  EXPECT_EQ(answer.at("headline").get<std::string>(), decision.headline);
  EXPECT_EQ(answer.at("year").at("choice").get<std::string>(), decision.vent);
  const bool as_expected = decision.headline == decision.expected_headline &&
                           (decision.expected_vent == "any" || decision.vent == decision.expected_vent);
  EXPECT_TRUE(as_expected || !decision.miss.empty()) << "a miss that is not told";
}

INSTANTIATE_TEST_SUITE_P(Table, EachDecision, testing::ValuesIn(decisions()), [](const auto& given) {
  std::string name = given.param.job.substr(0, given.param.job.find('.'));
  std::replace(name.begin(), name.end(), '-', '_');
  return name;
});

TEST(Decisions, EveryExpectationHasItsOutcome) {
  EXPECT_EQ(decisions().size(), table_of("expected.csv").row_count());
  EXPECT_GE(decisions().size(), 5u);
}

}  // namespace
}  // namespace dewgap::test
