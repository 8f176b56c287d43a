// Every example runs, ends as examples.csv says, fits on one screen, and its record repeats it.
#include <gtest/gtest.h>
#include <unistd.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <nlohmann/json.hpp>
#include <regex>
#include <set>

#include "dewgap/numerics/csv_text.hpp"
#include "run_cli.hpp"
#include "tools/answer/plain_text.hpp"
#include "tools/job/field.hpp"

namespace dewgap::test {
namespace {

using nlohmann::json;

const std::string money_file = examples_dir + "/money.toml";

struct Example {
  std::string name;
  std::string headline;
  std::size_t most_lines = 0;

  std::string path() const { return examples_dir + "/" + name + ".toml"; }
};

void PrintTo(const Example& example, std::ostream* out) {
  *out << example.name;
}

std::vector<Example> examples() {
  const numerics::CsvTable table(text_of(tools_test_dir + "/examples.csv"), "examples.csv");
  std::vector<Example> all;
  for (std::size_t row = 0; row < table.row_count(); ++row)
    all.push_back({table.text(row, "example"), table.text(row, "headline"),
                   static_cast<std::size_t>(table.number(row, "most_lines"))});
  return all;
}

/// Every "key = value" of a job file that is not "not known": its path, as often as it stands there.
std::multiset<std::string> keys_set_in(const std::string& toml) {
  const std::regex header(R"(^\[\[?([a-z_.]+)\]\]?)");
  const std::regex key(R"(^([A-Za-z_0-9]+) = (.*)$)");
  std::multiset<std::string> keys;
  std::string section;
  for (const auto& line : lines_of(toml)) {
    std::smatch found;
    if (std::regex_search(line, found, header)) section = found[1];
    if (std::regex_search(line, found, key) && found[2] != "\"not known\"")
      keys.insert(section + "." + found[1].str());
  }
  EXPECT_FALSE(keys.empty());
  return keys;
}

/// A file made from the record alone.
std::string file_from(const json& record) {
  std::string text;
  std::string open;
  for (const auto& given : record) {
    const auto path = given.at("key").get<std::string>();
    const auto dot = path.rfind('.');
    const auto section = path.substr(0, dot);
    const auto place = section + std::to_string(given.value("reading", 0));
    if (place != open) text += given.contains("reading") ? "[[" + section + "]]\n" : "[" + section + "]\n";
    open = place;
    text += path.substr(dot + 1) + " = " + given.at("value").dump() + "\n";
  }
  return text;
}

class EachExample : public testing::TestWithParam<Example> {};

TEST_P(EachExample, SaysThatItIsInvented) {
  EXPECT_TRUE(text_of(GetParam().path()).starts_with("# Invented: "));
}

TEST_P(EachExample, EndsInItsHeadlineOnOneScreen) {
  const auto result = run_cli({"assess", GetParam().path(), "--money", money_file, "--window-hours", "0"});
  ASSERT_EQ(result.exit_code, 0) << result.err;
  EXPECT_TRUE(
      std::regex_search(result.out, std::regex("\n" + GetParam().headline + "( \\(provisional\\))?[:.]")))
      << result.out;
  const auto lines = lines_of(result.out);
  EXPECT_LE(lines.size(), GetParam().most_lines) << result.out;
  for (const auto& line : lines) EXPECT_LE(tools::columns_of(line), most_columns) << line;
}

TEST_P(EachExample, EveryKeySetIsInTheRecordWithUnitAndBasis) {
  const auto result =
      run_cli({"assess", GetParam().path(), "--json", "--samples", "16", "--window-hours", "0"});
  ASSERT_EQ(result.exit_code, 0) << result.err;
  const auto answer = json::parse(result.out);
  std::multiset<std::string> recorded;
  for (const auto& given : answer.at("survey")) {
    const auto path = given.at("key").get<std::string>();
    const auto dot = path.rfind('.');
    const auto* field = tools::job_table().find(path.substr(0, dot), path.substr(dot + 1));
    ASSERT_NE(field, nullptr) << path;
    recorded.insert(path);
    const auto& value = given.at("value").is_array() ? given.at("value").at(0) : given.at("value");
    EXPECT_EQ(given.at("basis"), value.is_number() ? "measured" : "described") << path;
    if (std::holds_alternative<tools::NumberRule>(field->rule) ||
        std::holds_alternative<tools::NumbersRule>(field->rule)) {
      EXPECT_EQ(given.at("unit"), tools::unit_text(field->rule)) << path;
    }
  }
  EXPECT_EQ(recorded, keys_set_in(text_of(GetParam().path())));
}

TEST_P(EachExample, TheRecordAloneGivesTheSameAnswerAgain) {
  const auto once = run_cli({"assess", GetParam().path(), "--json", "--samples", "32", "--seed", "5",
                             "--window-hours", "10000", "--money", money_file});
  ASSERT_EQ(once.exit_code, 0) << once.err;
  const auto answer = json::parse(once.out);
  const auto money = std::filesystem::temp_directory_path() /
                     ("dewgap_record_" + std::to_string(::getpid()) + GetParam().name + ".toml");
  std::vector<std::string> arguments{"assess",
                                     "-",
                                     "--json",
                                     "--samples",
                                     answer.at("run").at("samples").dump(),
                                     "--window-hours",
                                     answer.at("run").at("most_window_hours").dump(),
                                     "--seed",
                                     answer.at("run").at("seed").dump()};
  if (answer.contains("money")) {
    const auto written = file_from(answer.at("money").at("terms"));
    std::ofstream(money) << written;
    arguments.insert(arguments.end(), {"--money", money.string()});
  }
  const auto again = run_cli(arguments, file_from(answer.at("survey")));
  std::filesystem::remove(money);
  EXPECT_EQ(again.exit_code, 0) << again.err;
  EXPECT_EQ(again.out, once.out);
}

INSTANTIATE_TEST_SUITE_P(Table, EachExample, testing::ValuesIn(examples()),
                         [](const testing::TestParamInfo<Example>& tested) {
                           return replaced(tested.param.name, "-", "_");
                         });

TEST(Examples, AreAllListedAndShowEveryHeadline) {
  std::set<std::string> headlines;
  std::vector<std::string> listed;
  for (const auto& example : examples()) {
    headlines.insert(example.headline);
    listed.push_back(example.path());
  }
  std::sort(listed.begin(), listed.end());
  EXPECT_EQ(listed, example_jobs());
  EXPECT_EQ(headlines, (std::set<std::string>{"FIT", "FIT AFTER", "HOLD", "LEAVE"}));
}

}  // namespace
}  // namespace dewgap::test
