// Reads a job or money file by its field table, and says everything that is wrong with it.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "tools/job/field.hpp"
#include "tools/job/given_value.hpp"
#include "tools/job/toml_tree.hpp"

namespace dewgap::tools {

/// One thing wrong with a file. `what` names the key, the value, what is permitted and the unit.
struct FileProblem {
  TextMark mark;
  std::string what;
};

/// `survey` (or `money`) holds an answer only when `problems` is empty. `given` has every value of the file
/// but those "not known", in its order.
struct ReadFile {
  FileAnswers answers;
  std::vector<GivenValue> given;
  std::vector<FileProblem> problems;
};

/// Everything wrong with the file at once, in the order of its lines; a fault of syntax stands alone,
/// with a hint where there is one. The
/// job's survey has passed dewgap::problems() when `problems` is empty.
ReadFile read_job(std::string_view text);
/// `windows`: names of the job's; costs of any other one are refused. Nothing: they are not asked.
ReadFile read_money(std::string_view text,
                    const std::optional<std::vector<std::string>>& windows = std::nullopt);

/// "job.toml:12:9: what", a line each, at most 50 and then how many more.
std::string problem_lines(std::string_view file_name, const std::vector<FileProblem>& problems);

}  // namespace dewgap::tools
