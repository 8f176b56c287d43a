// Programs run as processes of their own, and what section_elements.edp wrote.
#pragma once

#include <string>
#include <vector>

namespace dewgap::bench {

/// One line of rungs.txt.
struct Rung {
  int number = 0;
  std::string kind;
  int triangles = 0;
  int unknowns = 0;
  double coupling_W_mK = 0.0;
  double solving_s = 0.0;
  double adapting_s = 0.0;
};

struct ProcessCost {
  double processor_s = 0.0;
  double peak_MB = 0.0;
};
/// Runs the elements' script in the folder; rung -1 is the whole ladder.
ProcessCost run_elements(const std::string& folder, int repeats, int rung);

/// Kinds of given meshes are filled in by their numbers.
std::vector<Rung> read_rungs(const std::string& folder, const std::vector<std::string>& given_kinds);

/// Runs a program with no output, throws where it fails. peak_MB counts what this process held when it
/// started the other, where that is more.
ProcessCost run_process(const std::vector<std::string>& words);

/// Largest memory that this process has held since it began.
double own_peak_MB();

}  // namespace dewgap::bench
