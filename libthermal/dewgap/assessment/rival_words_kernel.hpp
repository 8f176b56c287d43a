// What is said of a rival. Internal to assessment/.
#pragma once

#include "dewgap/assessment/rivals.hpp"

namespace dewgap {

struct RivalWords {
  std::string sentence;
  std::string condition;
  std::string damp;
};
/// `pane_colder_K`: how much colder it leaves the old glass on a frost night than doing nothing, median of
/// the paired differences.
RivalWords words_for(double pane_colder_K, const Rival& rival);

}  // namespace dewgap
