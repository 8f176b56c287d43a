// Every file of bad_input/ is refused with exit code 2, nothing on stdout, and the lines of its .expected
// neighbour.
#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <regex>

#include "folder.hpp"
#include "run_cli.hpp"
#include "tools/job/toml_tree.hpp"

namespace dewgap::test {
namespace {

class BadInput : public testing::TestWithParam<std::string> {};

std::vector<std::string> arguments_for(const std::string& path) {
  if (path.ends_with(".money.toml")) return {"assess", examples_dir + "/old-sash.toml", "--money", path};
  return {"assess", path};
}

TEST_P(BadInput, IsRefusedWithTheExpectedLines) {
  const auto& path = GetParam();
  const auto result = run_cli(arguments_for(path));
  EXPECT_EQ(result.exit_code, 2);
  EXPECT_EQ(result.out, "");
  const auto expected = text_of(path.substr(0, path.size() - 5) + ".expected");
  EXPECT_FALSE(expected.empty());
  EXPECT_EQ(replaced(result.err, tools_test_dir + "/bad_input/", ""), expected);
}

TEST_P(BadInput, SaysFileLineAndColumnAndIsSafeToPrint) {
  const auto result = run_cli(arguments_for(GetParam()));
  const auto lines = lines_of(result.err);
  ASSERT_FALSE(lines.empty());
  for (const auto& line : lines) {
    ASSERT_TRUE(line.starts_with(GetParam() + ":")) << line;
    const auto rest = line.substr(GetParam().size());
    EXPECT_TRUE(std::regex_search(rest, std::regex("^:[0-9]+:[0-9]+: .+"))) << line;
    for (const char c : line) EXPECT_GE(static_cast<unsigned char>(c), 0x20) << line;
  }
}

std::string name_of_case(const testing::TestParamInfo<std::string>& info) {
  auto name = std::filesystem::path(info.param).stem().string();
  return replaced(replaced(name, ".", "_"), "-", "_");
}

INSTANTIATE_TEST_SUITE_P(Corpus, BadInput,
                         testing::ValuesIn(files_in(tools_test_dir + "/bad_input", ".toml")), name_of_case);

TEST(Files, AHundredMegabytesAreRefused) {
  const Folder folder;
  const auto path = folder.file("large.toml");
  std::ofstream(path) << "[job]\n";
  std::filesystem::resize_file(path, 100'000'000);
  const auto result = run_cli({"assess", path});
  EXPECT_EQ(result.exit_code, 2);
  EXPECT_EQ(result.err, path + ":1:1: larger than 1000000 bytes, more than a file of this kind can be\n");
}

TEST(Files, AFileOfTheLargestSizeIsRead) {
  const Folder folder;
  const auto path = folder.file("full.toml");
  std::string text;
  while (text.size() < tools::most_input_bytes) text += "# " + std::string(97, 'x') + "\n";
  text.resize(tools::most_input_bytes - 1);
  std::ofstream(path) << text << "\n";
  const auto result = run_cli({"assess", path});
  EXPECT_EQ(result.exit_code, 2);
  EXPECT_NE(result.err.find("place.nearest: missing"), std::string::npos) << result.err.substr(0, 300);
}

TEST(Files, MissingFolderAndUnwritableAreFileTrouble) {
  const Folder folder;
  const auto job = examples_dir + "/hold-way-out.toml";
  EXPECT_EQ(run_cli({"assess", folder.file("none.toml")}).exit_code, 3);
  EXPECT_EQ(run_cli({"assess", folder.file("")}).exit_code, 3);
  EXPECT_EQ(run_cli({"assess", job, "--money", folder.file("none.toml")}).exit_code, 3);
  EXPECT_EQ(run_cli({"assess", job, "--output", folder.file("no/such/folder.txt")}).exit_code, 3);
  const auto result = run_cli({"assess", job, "--output", folder.file("")});
  EXPECT_EQ(result.exit_code, 3);
  EXPECT_EQ(result.out, "");
  EXPECT_NE(result.err, "");
}

TEST(Files, OutputHoldsWhatStdoutWouldAndAnErrorLeavesTheOldFile) {
  const Folder folder;
  const auto job = examples_dir + "/hold-way-out.toml";
  const auto answer = folder.file("answer.txt");
  const auto result = run_cli({"assess", job, "--output", answer});
  EXPECT_EQ(result.exit_code, 0) << result.err;
  EXPECT_EQ(result.out, "");
  EXPECT_EQ(text_of(answer), run_cli({"assess", job}).out);
  EXPECT_FALSE(std::filesystem::exists(answer + ".part"));
  EXPECT_EQ(run_cli({"assess", tools_test_dir + "/bad_input/nan.toml", "--output", answer}).exit_code, 2);
  EXPECT_EQ(text_of(answer), run_cli({"assess", job}).out);
}

TEST(Files, TheJobIsNeverOverwritten) {
  const Folder folder;
  const auto job = folder.file("job.toml");
  std::filesystem::copy_file(examples_dir + "/hold-way-out.toml", job);
  EXPECT_EQ(run_cli({"assess", job, "--output", job}).exit_code, 2);
  EXPECT_EQ(text_of(job), text_of(examples_dir + "/hold-way-out.toml"));
}

TEST(Files, StdoutThatCannotBeWrittenIsFileTrouble) {
  if (!std::filesystem::exists("/dev/full")) GTEST_SKIP() << "no /dev/full here";
  EXPECT_EQ(run_cli({"assess", examples_dir + "/hold-way-out.toml", "--output", "/dev/full"}).exit_code, 3);
}

}  // namespace
}  // namespace dewgap::test
