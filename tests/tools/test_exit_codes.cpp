// Valid input that cannot be computed ends with exit code 1 and no answer.
#include <gtest/gtest.h>

#include <limits>
#include <sstream>

#include "dewgap/errors.hpp"
#include "run_cli.hpp"
#include "tools/failure.hpp"
#include "tools/verbs/verbs.hpp"

namespace dewgap::test {
namespace {

/// Runs assess on a good job with another computation in the library's place.
CliResult run_with(const tools::Assess& compute, const std::vector<std::string>& job_and_form) {
  std::istringstream in;
  std::ostringstream out;
  std::ostringstream err;
  tools::AssessVerb verb;
  verb.input.paths.job = examples_dir + "/" + job_and_form.front();
  verb.json = job_and_form.back() == "--json";
  verb.compute = compute;
  const int code = tools::exit_code_of([&] { verb.run({in, out, err}); }, err);
  return {code, out.str(), err.str()};
}

TEST(ExitCodes, ACalculationThatFailsIsOne) {
  const auto result = run_with(
      [](const auto&...) -> Assessment { throw CalculationFailed("the gap's balance did not close"); },
      {"thin-film.toml"});
  EXPECT_EQ(result.exit_code, 1);
  EXPECT_EQ(result.out, "");
  EXPECT_EQ(result.err, "dewgap: could not be computed: the gap's balance did not close\n");
}

TEST(ExitCodes, AResultThatIsNotFiniteIsOneInTextAndJson) {
  const tools::Assess not_finite = [](const Survey& survey, AssessOptions options, const auto&...) {
    options.samples = 16;
    options.most_window_hours = 0;
    auto assessment = assess(survey, options);
    assessment.figures->now_and_with.heat_saved_kWh.p50 = std::numeric_limits<double>::quiet_NaN();
    return assessment;
  };
  for (const auto* form : {"", "--json"}) {
    const auto result = run_with(not_finite, {"thin-film.toml", form});
    EXPECT_EQ(result.exit_code, 1);
    EXPECT_EQ(result.out, "");
    EXPECT_NE(result.err.find("could not be computed"), std::string::npos) << result.err;
  }
}

TEST(ExitCodes, InputThatTheLibraryRefusesIsTwo) {
  const auto result =
      run_with([](const auto&...) -> Assessment { throw InvalidInput("window.panes", "too many"); },
               {"thin-film.toml"});
  EXPECT_EQ(result.exit_code, 2);
  EXPECT_EQ(result.out, "");
  EXPECT_NE(result.err.find("thin-film.toml:1:1: "), std::string::npos) << result.err;
}

}  // namespace
}  // namespace dewgap::test
