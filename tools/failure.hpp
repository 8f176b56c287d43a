// How a verb ends when it cannot do its work.
#pragma once

#include <stdexcept>
#include <string>

namespace dewgap::tools {

enum class ExitCode { computed = 0, not_computed = 1, bad_input = 2, file_trouble = 3 };

/// Ends the verb: the message goes to stderr as it is, the code to the shell.
class Failure : public std::runtime_error {
 public:
  Failure(ExitCode code, const std::string& message) : std::runtime_error(message), code_(code) {}
  ExitCode code() const noexcept { return code_; }

 private:
  ExitCode code_;
};

}  // namespace dewgap::tools
