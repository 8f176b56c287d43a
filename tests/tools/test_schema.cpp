// Real output against the published schema. Alone in its file: the validator is slow to compile.
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#pragma GCC diagnostic push
#pragma GCC diagnostic ignored "-Wall"
#include <valijson/adapters/nlohmann_json_adapter.hpp>
#include <valijson/schema.hpp>
#include <valijson/schema_parser.hpp>
#include <valijson/validation_results.hpp>
#include <valijson/validator.hpp>
#pragma GCC diagnostic pop

#include "hand_made_answer.hpp"
#include "run_cli.hpp"
#include "tools/answer/json_answer.hpp"

namespace dewgap::test {
namespace {

using nlohmann::json;
using Adapter = valijson::adapters::NlohmannJsonAdapter;

/// Complaints of the schema about an answer, a line each; empty when it fits.
std::string complaints(const json& answer) {
  const json document = json::parse(run_cli({"schema"}).out);
  valijson::Schema schema;
  valijson::SchemaParser(valijson::SchemaParser::kDraft7).populateSchema(Adapter(document), schema);
  valijson::Validator validator;
  valijson::ValidationResults results;
  if (validator.validate(schema, Adapter(answer), &results)) return {};
  std::string all;
  valijson::ValidationResults::Error error;
  while (results.popError(error)) {
    for (const auto& step : error.context) all += step;
    all += ": " + error.description + "\n";
  }
  return all.empty() ? "refused without a reason" : all;
}

TEST(Schema, FitsEveryExample) {
  for (const auto& path : example_jobs())
    for (const bool with_money : {false, true}) {
      std::vector<std::string> arguments{"assess", path, "--json", "--samples", "64"};
      if (with_money) arguments.insert(arguments.end(), {"--money", examples_dir + "/money.toml"});
      const auto result = run_cli(arguments);
      ASSERT_EQ(result.exit_code, 0) << path << ": " << result.err;
      EXPECT_EQ(complaints(json::parse(result.out)), "") << path;
    }
}

TEST(Schema, FitsAnAnswerWithEveryPart) {
  EXPECT_EQ(complaints(json::parse(tools::json_answer(hand_made_answer()))), "");
}

TEST(Schema, FitsEveryKindOfFixing) {
  for (const auto kind :
       {FixingKind::turn_clips, FixingKind::screws, FixingKind::tape_only, FixingKind::beads}) {
    auto job = hand_made_answer();
    auto& plan = job.assessment.figures->plan.value();
    plan.fixing = kind;
    EXPECT_EQ(complaints(json::parse(tools::json_answer(job))), "");
    plan.pilot_depth_mm = plan.screw_length_mm = 0.0;
    EXPECT_EQ(complaints(json::parse(tools::json_answer(job))), "") << "depth not measured";
  }
}

TEST(Schema, RefusesAnAnswerThatIsNotOne) {
  const auto whole = json::parse(tools::json_answer(hand_made_answer()));
  auto without = whole;
  without.erase("headline");
  EXPECT_NE(complaints(without), "");
  auto with_a_stranger = whole;
  with_a_stranger["score"] = 7;
  EXPECT_NE(complaints(with_a_stranger), "");
  auto with_text = whole;
  with_text["now_and_with_sheet"]["heat_saved_kWh_per_year"]["p50"] = "much";
  EXPECT_NE(complaints(with_text), "");
  auto held = whole;
  held["headline"] = "hold";
  EXPECT_NE(complaints(held), "") << "a HOLD with savings";
}

}  // namespace
}  // namespace dewgap::test
