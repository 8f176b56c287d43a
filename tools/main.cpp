#include <unistd.h>

#include <cstdlib>
#include <iostream>
#include <string_view>

#include "tools/cli.hpp"

namespace {

/// A terminal called "dumb" cannot go back to the start of its line.
bool stderr_is_terminal() {
  const char* kind = std::getenv("TERM");
  return isatty(STDERR_FILENO) == 1 && kind != nullptr && std::string_view(kind) != "dumb";
}

}  // namespace

int main(int count, char** words) {
  const std::vector<std::string> arguments(words + (count > 0 ? 1 : 0), words + count);
  return dewgap::tools::run(arguments, {std::cin, std::cout, std::cerr, stderr_is_terminal()});
}
