// The section solver held against a general finite-element program (FreeFem++, quadratic triangles) on the
// same sections at the same error: answers, time and memory, of the solution alone and of the whole process.
//
//   bench_elements           answers, time and memory
//   bench_elements --smoke   few and small meshes, answers compared, no timing
//
// Galerkin's L2D is too high on any mesh (Dirichlet's principle, section.hpp), so that none may lie below the
// library's lower bound. Its error is taken against the extrapolation of the three finest graded meshes.
#include <stdlib.h>

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <optional>
#include <stdexcept>
#include <string_view>

#include "cpu_clock.hpp"
#include "element_runs.hpp"
#include "element_section.hpp"

namespace {

using namespace dewgap;
using namespace dewgap::bench;

constexpr double usual_bound = 5e-4;
constexpr double fine_bound = 1e-5;

struct Scope {
  MeshCounts counts;
  int adaptations;
  int repeats;
};

/// A folder of its own that goes when it does.
class Folder {
 public:
  Folder() {
    std::string pattern = (std::filesystem::temp_directory_path() / "bench_elements_XXXXXX").string();
    if (mkdtemp(pattern.data()) == nullptr) {
      throw std::runtime_error("no folder for the elements' files");
    }
    path_ = pattern;
  }
  ~Folder() {
    std::error_code ignored;
    std::filesystem::remove_all(path_, ignored);
  }
  Folder(const Folder&) = delete;
  Folder& operator=(const Folder&) = delete;
  const std::string& path() const { return path_; }

 private:
  std::string path_;
};

SectionResult solve_for_heat(const Section& section, double bound) {
  return solve_section(section, {.coupling_error_bound = bound, .temperature_error_bound_K = 10.0});
}

double seconds_for_heat(const Section& section, double bound, int repeats) {
  double quickest_s = 1e30;
  for (int i = 0; i < repeats; ++i) {
    const double begin = cpu_seconds();
    solve_for_heat(section, bound);
    quickest_s = std::min(quickest_s, cpu_seconds() - begin);
  }
  return quickest_s;
}

/// Limit of three meshes of which each halves the one before (Aitken), and how far it lies from the last.
struct Limit {
  double value_W_mK;
  double estimate_W_mK;
};
Limit limit_of(const std::vector<Rung>& rungs) {
  std::vector<double> graded;
  for (const auto& rung : rungs) {
    if (rung.kind == "graded") {
      graded.push_back(rung.coupling_W_mK);
    }
  }
  const std::size_t last = graded.size() - 1;
  const double before = graded[last - 2] - graded[last - 1];
  const double change = graded[last - 1] - graded[last];
  const double beyond = change * change / (before - change);
  return {graded[last] - beyond, std::abs(beyond)};
}

double error_of(const Rung& rung, const Limit& limit) {
  return rung.coupling_W_mK / limit.value_W_mK - 1.0;
}

bool agrees(const SectionCoupling& ours, const std::vector<Rung>& rungs, const Limit& limit) {
  const double apart = std::abs(ours.value_W_mK - limit.value_W_mK);
  const auto lowest = std::min_element(rungs.begin(), rungs.end(), [](const Rung& a, const Rung& b) {
    return a.coupling_W_mK < b.coupling_W_mK;
  });
  const bool within = apart <= ours.error_bound_W_mK + limit.estimate_W_mK;
  const bool above = lowest->coupling_W_mK >= ours.value_W_mK - ours.error_bound_W_mK;
  std::printf("  L2D: library %.6f +- %.6f, elements %.6f +- %.6f (extrapolated), lowest mesh %.6f: %s\n",
              ours.value_W_mK, ours.error_bound_W_mK, limit.value_W_mK, limit.estimate_W_mK,
              lowest->coupling_W_mK, within && above ? "agree" : "DIFFER");
  return within && above;
}

void print_rungs(const std::vector<Rung>& rungs, const Limit& limit) {
  for (const auto& rung : rungs) {
    std::printf("    %-8s %6d triangles %7d unknowns  L2D %.6f  error %8.1e  %8.2f ms", rung.kind.c_str(),
                rung.triangles, rung.unknowns, rung.coupling_W_mK, error_of(rung, limit),
                1e3 * rung.solving_s);
    if (rung.adapting_s > 0.0) {
      std::printf("  after %.2f s of adapting", rung.adapting_s);
    }
    std::printf("\n");
  }
}

ProcessCost quickest_process(const std::vector<ProcessCost>& runs) {
  return *std::min_element(runs.begin(), runs.end(), [](const ProcessCost& a, const ProcessCost& b) {
    return a.processor_s < b.processor_s;
  });
}

/// What the library's side took.
struct OurCost {
  double solving_s;
  ProcessCost process;
};

/// The quickest of all meshes whose error is no more.
const Rung* quickest_rung(const std::vector<Rung>& rungs, const Limit& limit, double error) {
  const Rung* best = nullptr;
  for (const auto& rung : rungs) {
    if (error_of(rung, limit) <= error && (best == nullptr || rung.solving_s < best->solving_s)) {
      best = &rung;
    }
  }
  return best;
}

/// From the first mesh to the first adapted one whose error is no more: all adaptations and solutions.
/// Nothing where none is.
std::optional<double> adapting_and_solving_s(const std::vector<Rung>& rungs, const Limit& limit,
                                             double error) {
  double solving_s = rungs.front().solving_s;
  for (const auto& rung : rungs) {
    if (rung.kind == "adapted") {
      solving_s += rung.solving_s;
      if (error_of(rung, limit) <= error) {
        return rung.adapting_s + solving_s;
      }
    }
  }
  return std::nullopt;
}

void compare_processes(const OurCost& ours, int rung, const std::string& folder) {
  std::vector<ProcessCost> runs;
  for (int i = 0; i < 5; ++i) {
    runs.push_back(run_elements(folder, 1, rung));
  }
  const ProcessCost process = quickest_process(runs);
  std::printf(
      "    process: library %.0f ms and %.0f MB, elements on the ready mesh %.0f ms and %.0f MB: %.1f ",
      1e3 * ours.process.processor_s, ours.process.peak_MB, 1e3 * process.processor_s, process.peak_MB,
      process.processor_s / ours.process.processor_s);
  std::printf("and %.1f times\n", process.peak_MB / ours.process.peak_MB);
}

void compare_cost(const char* which, double error, const OurCost& ours, const std::vector<Rung>& rungs,
                  const Limit& limit, const std::string& folder) {
  const Rung* best = quickest_rung(rungs, limit, error);
  if (best == nullptr) {
    std::printf("  at %s, %.1e: no mesh of the elements reached it\n", which, error);
    return;
  }
  std::printf("  at %s, %.1e: elements %s, %d triangles, error %.1e\n", which, error, best->kind.c_str(),
              best->triangles, error_of(*best, limit));
  std::printf(
      "    solution: library with its refinement %.2f ms, elements on the ready mesh %.2f ms: %.1f times\n",
      1e3 * ours.solving_s, 1e3 * best->solving_s, best->solving_s / ours.solving_s);
  if (const auto chain_s = adapting_and_solving_s(rungs, limit, error)) {
    std::printf("    refinement on both sides: elements %.1f ms: %.1f times\n", 1e3 * *chain_s,
                *chain_s / ours.solving_s);
  } else {
    std::printf("    refinement on both sides: no adapted mesh of the elements reached it\n");
  }
  compare_processes(ours, best->number, folder);
}

/// This program again, to solve one section and no more.
ProcessCost our_process(std::size_t number, const std::string& folder) {
  const std::string self = std::filesystem::read_symlink("/proc/self/exe").string();
  const std::string peak_file = folder + "/peak.txt";
  std::vector<ProcessCost> runs;
  for (int i = 0; i < 5; ++i) {
    runs.push_back(run_process({self, "--alone", std::to_string(number), peak_file}));
    std::FILE* file = std::fopen(peak_file.c_str(), "r");
    if (file == nullptr || std::fscanf(file, "%lf", &runs.back().peak_MB) != 1) {
      throw std::runtime_error("no peak of the process alone");
    }
    std::fclose(file);
  }
  return quickest_process(runs);
}

/// Solves with its cavities, as a user would.
int alone(std::size_t number, const char* peak_file) {
  const auto result = solve_for_heat(element_cases().at(number).section, usual_bound);
  std::FILE* file = std::fopen(peak_file, "w");
  if (file == nullptr || result.status != SectionStatus::converged) {
    return 1;
  }
  std::fprintf(file, "%.3f\n", own_peak_MB());
  return std::fclose(file);
}

void compare_costs(const SectionCoupling& coupling, const OurCost& ours, const std::vector<Rung>& rungs,
                   const std::string& folder) {
  const Limit limit = limit_of(rungs);
  print_rungs(rungs, limit);
  const double error_W_mK = std::max(std::abs(coupling.value_W_mK - limit.value_W_mK), limit.estimate_W_mK);
  compare_cost("the library's proved bound", coupling.error_bound_W_mK / limit.value_W_mK, ours, rungs, limit,
               folder);
  compare_cost("the library's error", error_W_mK / limit.value_W_mK, ours, rungs, limit, folder);
}

bool compare(const ElementCase& one, std::size_t number, const Scope& scope) {
  const Folder folder;
  const Section section = with_fixed_cavities(one.section);
  const auto meshes = given_meshes(section, usual_bound, scope.counts);
  write_elements(section, meshes, scope.adaptations, folder.path());
  run_elements(folder.path(), scope.repeats, -1);
  std::vector<std::string> kinds;
  for (const auto& given : meshes) {
    kinds.push_back(given.kind);
  }
  const auto rungs = read_rungs(folder.path(), kinds);
  const auto result = solve_for_heat(section, usual_bound);
  std::printf("%s, library %zu cells:\n", one.name.c_str(), result.cells);
  bool agree = agrees(*result.coupling, rungs, limit_of(rungs));
  if (scope.repeats > 1) {
    agree = agrees(*solve_for_heat(section, fine_bound).coupling, rungs, limit_of(rungs)) && agree;
    const OurCost ours{seconds_for_heat(section, usual_bound, scope.repeats),
                       our_process(number, folder.path())};
    compare_costs(*result.coupling, ours, rungs, folder.path());
  }
  return agree;
}

}  // namespace

int main(int count, char** arguments) {
  const std::string_view first = count > 1 ? arguments[1] : "";
  if (first == "--alone" && count > 3) {
    return alone(std::strtoul(arguments[2], nullptr, 10), arguments[3]);
  }
  const Scope scope = first == "--smoke" ? Scope{{2, 4}, 1, 1} : Scope{{4, 6}, 11, 20};
  std::setvbuf(stdout, nullptr, _IOLBF, BUFSIZ);
  bool all_agree = true;
  std::size_t number = 0;
  for (const auto& one : element_cases()) {
    all_agree = compare(one, number++, scope) && all_agree;
  }
  return all_agree ? 0 : 1;
}
