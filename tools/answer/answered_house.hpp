// The answer for a house with what its printers need from the job.
#pragma once

#include "dewgap/assessment/house.hpp"
#include "tools/answer/answered_job.hpp"

namespace dewgap::tools {

struct AnsweredHouse {
  std::string name;
  HouseOptions options;
  /// One for each window of the file, in its order; their assessments are those of `answer`.
  std::vector<AnsweredJob> windows;
  HouseAnswer answer;

  /// The window's, by its number from 1.
  const AnsweredJob& window(std::size_t number) const { return windows.at(number - 1); }
};

}  // namespace dewgap::tools
