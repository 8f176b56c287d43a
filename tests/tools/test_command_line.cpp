// The command lines of command_line.csv.
#include <gtest/gtest.h>

#include <algorithm>

#include "dewgap/numerics/csv_text.hpp"
#include "run_cli.hpp"

namespace dewgap::test {
namespace {

struct CommandLine {
  std::string name;
  std::vector<std::string> arguments;
  std::string stdin_file;
  int exit_code = 0;
  std::string out_holds;
  std::string err_holds;
};

void PrintTo(const CommandLine& line, std::ostream* out) {
  *out << line.name;
}

std::string with_folders(std::string text) {
  for (const auto& [name, folder] :
       {std::pair(std::string("{examples}"), examples_dir),
        std::pair(std::string("{bad}"), tools_test_dir + "/bad_input"),
        std::pair(std::string("{bad_readings}"), tools_test_dir + "/bad_readings"),
        std::pair(std::string("{bad_weather}"), tools_test_dir + "/bad_weather")})
    text = replaced(std::move(text), name, folder);
  return text;
}

std::vector<std::string> words_of(const std::string& text) {
  std::vector<std::string> words;
  for (std::size_t start = 0; start < text.size();) {
    const auto end = std::min(text.find(' ', start), text.size());
    words.push_back(with_folders(text.substr(start, end - start)));
    start = end + 1;
  }
  return words;
}

std::vector<CommandLine> command_lines() {
  const numerics::CsvTable table(text_of(tools_test_dir + "/command_line.csv"), "command_line.csv");
  std::vector<CommandLine> lines;
  for (std::size_t row = 0; row < table.row_count(); ++row)
    lines.push_back({table.text(row, "name"), words_of(table.text(row, "arguments")),
                     with_folders(table.text(row, "stdin")), static_cast<int>(table.number(row, "exit_code")),
                     table.text(row, "out_holds"), table.text(row, "err_holds")});
  return lines;
}

std::string stdin_of(const CommandLine& line) {
  if (line.stdin_file.empty()) return {};
  if (line.stdin_file == "{starter}") return run_cli({"starter"}).out;
  if (line.stdin_file == "{mild_mornings}") return "date,outdoor_C,mist\n3 December,6,all_over\n";
  if (line.stdin_file == "{mornings}") return "date,outdoor_C,mist\n3 December,-4,edges\n";
  return text_of(line.stdin_file);
}

void expect_holds(const std::string& stream, const std::string& part) {
  if (part == "*") return;
  EXPECT_EQ(stream.empty(), part.empty()) << stream;
  EXPECT_NE(stream.find(part), std::string::npos) << stream;
}

class CommandLineCase : public testing::TestWithParam<CommandLine> {};

TEST_P(CommandLineCase, EndsAsTheTableSays) {
  const auto& line = GetParam();
  const auto result = run_cli(line.arguments, stdin_of(line));
  EXPECT_EQ(result.exit_code, line.exit_code);
  expect_holds(result.out, line.out_holds);
  expect_holds(result.err, line.err_holds);
}

INSTANTIATE_TEST_SUITE_P(Table, CommandLineCase, testing::ValuesIn(command_lines()),
                         [](const testing::TestParamInfo<CommandLine>& tested) { return tested.param.name; });

}  // namespace
}  // namespace dewgap::test
