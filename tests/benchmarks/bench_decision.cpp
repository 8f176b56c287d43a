// The vent decision over a year of hours: window-hours a second on one core, and memory a sample.
//
// Memory is measured in a process of its own for each case: peak resident set (getrusage) and what the heap
// holds more after the runs than before (mallinfo2). To keep the time down the many samples of the memory
// cases run a short year.
#include <malloc.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <stdexcept>
#include <string_view>
#include <vector>

#include "assessment/survey_cases.hpp"
#include "cpu_clock.hpp"
#include "dewgap/assessment/vent_cases_kernel.hpp"
#include "dewgap/climate/synthesised_year.hpp"

namespace dewgap::bench {
namespace {

struct DecisionCase {
  std::size_t samples = 16;
  std::size_t hours = 8760;
};

struct DecisionCost {
  double processor_s = 0.0;
  double window_hours = 0.0;
  double unsettled = 0.0;  ///< samples
  double peak_kB = 0.0;
  double kept_B = 0.0;  ///< on the heap, more than before the runs
};

/// The first hours alone, from the autumn on.
void shorten(YearSetting& year, std::size_t hours) {
  for (auto* column :
       {&year.outdoor_C, &year.outdoor_vapour_Pa, &year.running_outdoor_C, &year.running_vapour_Pa,
        &year.sky_depression_K, &year.wind_m_s, &year.wind_angle_deg, &year.sun_W_m2}) {
    column->resize(std::min(hours, column->size()));
  }
  year.hour_of_year.resize(hours);
  year.month.resize(hours);
}

/// As many cases of equal weight, all to be run.
VentCases cases_of(const Survey& survey, std::size_t count) {
  VentCases cases;
  cases.beliefs = beliefs_for(survey);
  cases.samples = draw_samples(cases.beliefs, count, 1, 1.0);
  cases.weights.assign(count, 1.0 / static_cast<double>(count));
  cases.effective = static_cast<double>(count);
  cases.drawn = count;
  return cases;
}

double heap_B() {
  const auto heap = mallinfo2();
  return static_cast<double>(heap.uordblks) + static_cast<double>(heap.hblkhd);
}

DecisionCost run_case(const DecisionCase& given) {
  const auto survey = test::worn_sash_survey();
  const auto setting = setting_for(survey);
  auto year = year_setting(setting, synthesised_year(setting.place).hours);
  shorten(year, given.hours);  // the columns keep their memory: it is the same for all cases
  const auto cases = cases_of(survey, given.samples);
  const Progress silent;
  HourBudget budget(1000000000000, silent);
  run_sample_year(year, cases.samples[0]);  // tables that are made once
  const double before_B = heap_B();
  const double begin_s = cpu_seconds();
  const auto runs = run_cases(year, cases, {.samples = given.samples}, budget);
  DecisionCost cost;
  cost.processor_s = cpu_seconds() - begin_s;
  cost.kept_B = heap_B() - before_B;
  cost.window_hours = static_cast<double>(budget.spent());
  cost.unsettled = static_cast<double>(runs.picks_left_out);
  rusage usage{};
  getrusage(RUSAGE_SELF, &usage);
  cost.peak_kB = static_cast<double>(usage.ru_maxrss);
  return cost;
}

/// In a process of its own, whose peak is its own.
DecisionCost run_apart(const DecisionCase& given) {
  int ends[2];
  if (pipe(ends) != 0) {
    throw std::runtime_error("no pipe");
  }
  const pid_t child = fork();
  if (child == 0) {
    const auto cost = run_case(given);
    const bool written = write(ends[1], &cost, sizeof cost) == static_cast<ssize_t>(sizeof cost);
    _exit(written ? 0 : 1);
  }
  close(ends[1]);
  DecisionCost cost;
  const bool whole = read(ends[0], &cost, sizeof cost) == static_cast<ssize_t>(sizeof cost);
  close(ends[0]);
  int status = 0;
  waitpid(child, &status, 0);
  if (!whole || status != 0) {
    throw std::runtime_error("a case did not come back");
  }
  return cost;
}

void print(const DecisionCase& given, const DecisionCost& cost) {
  std::printf(
      "  %5zu samples of %5zu hours: %.3g window-hours, %.0f thousand a second, %.0f left out, peak %.0f kB, "
      "kept %.0f B\n",
      given.samples, given.hours, cost.window_hours, 1e-3 * cost.window_hours / cost.processor_s,
      cost.unsettled, cost.peak_kB, cost.kept_B);
}

bool memory_is_small(const DecisionCase& few, std::size_t longer_hours) {
  constexpr double permitted_B = 1024.0;
  const DecisionCase many{4 * few.samples, few.hours};
  const DecisionCase longer{few.samples, longer_hours};
  const auto of_few = run_apart(few);
  const auto of_many = run_apart(many);
  const auto of_longer = run_apart(longer);
  print(few, of_few);
  print(many, of_many);
  print(longer, of_longer);
  const double more = static_cast<double>(many.samples - few.samples);
  const double kept_B = (of_many.kept_B - of_few.kept_B) / more;
  const double peak_B = 1024.0 * (of_many.peak_kB - of_few.peak_kB) / more;
  std::printf(
      "  a sample: %.0f B kept of its run, %.0f B of the peak (its drawn unknowns, %zu B, included)\n",
      kept_B, peak_B, sizeof(UnknownValues));
  std::printf("  %zu instead of %zu hours: kept %+.0f B, peak %+.0f kB\n", longer.hours, few.hours,
              of_longer.kept_B - of_few.kept_B, of_longer.peak_kB - of_few.peak_kB);
  const bool peak_is_told = more > 1000.0;  // fewer samples are lost among the pages
  // What threads leave in the heap varies by some hundred bytes; hours would show as thousands.
  const double permitted_difference_B = std::max(1024.0, static_cast<double>(few.samples));
  return kept_B <= permitted_B && (!peak_is_told || peak_B <= permitted_B) &&
         std::abs(of_longer.kept_B - of_few.kept_B) <= permitted_difference_B;
}

int run(bool smoke) {
  std::puts(smoke ? "Short years:" : "Speed:");
  const DecisionCase fast{smoke ? 8u : 16u, smoke ? 48u : 8760u};
  const auto speed = run_apart(fast);
  print(fast, speed);
  std::puts("Memory:");
  bool small = memory_is_small({smoke ? 8u : 2048u, 24}, 48);
  if (!smoke) {
    small = memory_is_small({8, 4380}, 8760) && small;
  }
  std::puts(small ? "at most 1 kB a sample, independent of the hours"
                  : "MORE than 1 kB a sample, or more with the hours");
  return small && speed.window_hours > 0.0 ? 0 : 1;
}

}  // namespace
}  // namespace dewgap::bench

int main(int argc, char** argv) {
  const bool smoke = argc > 1 && std::string_view(argv[1]) == "--smoke";
  return dewgap::bench::run(smoke);
}
