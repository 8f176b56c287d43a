// Reads a job file of one or several windows.
//
// The sections of a file hold for all of its windows. Each [[windows]] has a name and may have any section as
// a sub-table, which overrides it key by key. The answers to the safety questions are given for each window;
// place and building hold for all, but for the floor and the outlook.
#pragma once

#include "tools/job/reader.hpp"

namespace dewgap::tools {

inline constexpr std::size_t most_windows = 60;

struct ReadWindow {
  FileAnswers answers;  ///< survey.name is the window's name
  std::vector<GivenValue> given;
};

/// `windows` hold an answer only when `problems` is empty. A file without [[windows]] is one window, as
/// read_job reads it.
struct ReadHouse {
  HouseFacts house;
  bool has_windows = false;  ///< the file has [[windows]]
  std::vector<ReadWindow> windows;
  std::vector<FileProblem> problems;
};

/// Everything wrong with the file at once, in the order of its lines. What is wrong with a key that holds for
/// all windows is told once; where it is wrong for some of them alone, these are named.
ReadHouse read_house(std::string_view text);

}  // namespace dewgap::tools
