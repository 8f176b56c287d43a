#include <iostream>

#include "tools/cli.hpp"

int main(int count, char** words) {
  const std::vector<std::string> arguments(words + (count > 0 ? 1 : 0), words + count);
  return dewgap::tools::run(arguments, {std::cin, std::cout, std::cerr});
}
