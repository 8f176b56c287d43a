// How a verb ends when it cannot do its work.
#pragma once

#include <functional>
#include <iosfwd>
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

/// Does the work and returns its exit code. What stopped it goes to `err`; anything but a Failure is 'could
/// not be computed'.
int exit_code_of(const std::function<void()>& work, std::ostream& err);

}  // namespace dewgap::tools
