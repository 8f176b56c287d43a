// The report of the example house stands beside its job, byte for byte as the program gives it.
#include <gtest/gtest.h>

#include "run_cli.hpp"
#include "tools/answer/plain_text.hpp"

namespace dewgap::test {
namespace {

TEST(ExampleReport, IsWhatTheProgramGives) {
  // The same options as in tools/example-report.
  const auto made = run_cli({"report", examples_dir + "/house/quince-row.toml", "--money",
                             examples_dir + "/money.toml", "--samples", "32", "--window-hours", "1500000"});
  ASSERT_EQ(made.exit_code, 0) << made.err;
  const auto kept = text_of(examples_dir + "/house/quince-row.html");
  const auto lines = lines_of(made.out);
  const auto kept_lines = lines_of(kept);
  for (std::size_t i = 0; i < lines.size() && i < kept_lines.size(); ++i)
    ASSERT_EQ(lines[i], kept_lines[i]) << "line " << i + 1 << ": tools/example-report writes the file anew";
  EXPECT_TRUE(made.out == kept) << "one of them is longer, or ends otherwise";
}

TEST(ExampleReport, CanBeComparedLineByLine) {
  const auto lines = lines_of(text_of(examples_dir + "/house/quince-row.html"));
  EXPECT_GT(lines.size(), 2000U);
}

}  // namespace
}  // namespace dewgap::test
