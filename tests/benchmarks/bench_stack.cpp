// The stack solver against SUNDIALS KINSOL on the same equations, start and tolerance, in one run.
#include <algorithm>
#include <chrono>
#include <cmath>
#include <cstdio>
#include <string_view>
#include <vector>

#include "kinsol_plain.hpp"
#include "kinsol_stack.hpp"

namespace {

namespace kernel = dewgap::glazing_kernel;
using dewgap::bench::KinsolPlain;
using dewgap::bench::KinsolStack;
using dewgap::bench::PlainStack;
using kernel::FaceVector;
using kernel::RealEquations;

struct BenchCase {
  const char* name;
  dewgap::Stack stack;
  dewgap::OutdoorClimate outdoors;
  dewgap::RoomClimate room;
};

std::vector<BenchCase> bench_cases() {
  BenchCase two{"2 layers: old pane and 4 mm sheet, 40 mm air", {}, {}, {}};
  two.outdoors.air_temperature_C = 2.0;
  two.outdoors.sky_temperature_C = -8.0;
  two.outdoors.ground_temperature_C = 2.0;
  two.stack.layer_count = 2;
  two.stack.layers[1].conductivity_W_mK = 0.19;
  two.stack.gaps[0].width_m = 0.040;
  auto sunny = two;
  sunny.name = "2 layers in the sun";
  sunny.stack.layers[0].absorbed_sun_W_m2 = 40.0;
  sunny.stack.layers[1].absorbed_sun_W_m2 = 15.0;
  auto three = two;
  three.name = "3 layers: argon double glazing and 4 mm sheet";
  three.stack.layer_count = 3;
  three.stack.layers[1].emissivity_outer = 0.05;
  three.stack.layers[2].conductivity_W_mK = 0.19;
  three.stack.gaps[0].width_m = 0.016;
  three.stack.gaps[0].gas = {0.1, 0.9, 0.0};
  three.stack.gaps[1].width_m = 0.030;
  return {two, sunny, three};
}

template <class Work>
double seconds_each(int repetitions, Work&& work) {
  double best = 1e300;  // the least of five runs: what the machine does undisturbed
  for (int run = 0; run < 5; ++run) {
    const auto begin = std::chrono::steady_clock::now();
    for (int i = 0; i < repetitions; ++i) {
      work(i);
    }
    const std::chrono::duration<double> taken = std::chrono::steady_clock::now() - begin;
    best = std::min(best, taken.count() / repetitions);
  }
  return best;
}

/// Largest difference of a face's temperature between two answers.
template <std::size_t Layers, class Temperatures>
double largest_difference_K(const FaceVector<Layers>& a, const Temperatures& b) {
  double largest = 0.0;
  for (std::size_t f = 0; f < 2 * Layers; ++f) {
    const double difference = std::abs(a[f] - b[f]);
    largest = difference <= largest ? largest : difference;  // a NaN stays
  }
  return largest;
}

PlainStack plain_case(const BenchCase& bench) {
  return {bench.stack, bench.outdoors, bench.room};
}

template <std::size_t Layers>
std::vector<double> start_temperatures_K(const RealEquations<Layers>& equations,
                                         const FaceVector<Layers>& start) {
  const auto temperature_K = equations.parts.face_temperatures_K(start);
  return {temperature_K.begin(), temperature_K.end()};
}

struct Timing {
  double ours_s = 0.0;          // Newton alone, equations prepared
  double kinsol_s = 0.0;        // the same, KINSOL set up once and used again
  double ours_whole_s = 0.0;    // solve_stack: check, prepare, solve, report
  double kinsol_plain_s = 0.0;  // KINSOL set up once, on the equations as the standard writes them
  double kinsol_call_s = 0.0;   // KINSOL called for a stack it has not seen: set up, solve, take down
};

template <std::size_t Layers>
Timing time_case(const BenchCase& bench, int repetitions) {
  const auto equations = kernel::real_equations<Layers>(bench.stack, bench.outdoors, bench.room);
  const auto start = kernel::real_start<Layers>(equations, bench.outdoors, bench.room);
  const auto found = kernel::settle<Layers>(equations, start, {});
  const double tolerance = 1e-9 * found.scale;
  double sink = 0.0;
  Timing timing;
  auto moved = start;  // each solve starts a little elsewhere, so that none can be skipped
  const auto next_start = [&](int i) -> const FaceVector<Layers>& {
    moved[0] = start[0] + 1e-6 * (i % 1000);
    return moved;
  };
  timing.ours_s = seconds_each(
      repetitions, [&](int i) { sink += kernel::settle<Layers>(equations, next_start(i), {}).solution[0]; });
  KinsolStack<Layers> kinsol;
  timing.kinsol_s = seconds_each(
      repetitions, [&](int i) { sink += kinsol.solve(equations, next_start(i), tolerance).solution[0]; });
  auto outdoors = bench.outdoors;
  timing.ours_whole_s = seconds_each(repetitions, [&](int i) {
    outdoors.air_temperature_C = bench.outdoors.air_temperature_C + 1e-6 * (i % 1000);
    sink += solve_stack(bench.stack, outdoors, bench.room).u_value_W_m2K;
  });
  const auto plain = plain_case(bench);
  KinsolPlain plain_kinsol(plain);
  auto plain_start = plain.start(start_temperatures_K(equations, start));
  timing.kinsol_plain_s = seconds_each(repetitions, [&](int i) {
    plain_start[0] += i % 2 == 0 ? 1e-6 : -1e-6;
    sink += plain_kinsol.solve(plain_start, tolerance).face_temperature_K[0];
  });
  timing.kinsol_call_s = seconds_each(repetitions, [&](int i) {
    plain_start[0] += i % 2 == 0 ? 1e-6 : -1e-6;
    sink += KinsolPlain(plain).solve(plain_start, tolerance).face_temperature_K[0];
  });
  if (!std::isfinite(sink)) {
    std::puts("not finite");
  }
  return timing;
}

template <std::size_t Layers>
bool answers_agree(const BenchCase& bench) {
  const auto equations = kernel::real_equations<Layers>(bench.stack, bench.outdoors, bench.room);
  const auto start = kernel::real_start<Layers>(equations, bench.outdoors, bench.room);
  const auto ours = kernel::settle<Layers>(equations, start, {});
  KinsolStack<Layers> kinsol;
  const auto theirs = kinsol.solve(equations, start, 1e-9 * ours.scale);
  const auto plain = plain_case(bench);
  KinsolPlain plain_kinsol(plain);
  const auto written_out =
      plain_kinsol.solve(plain.start(start_temperatures_K(equations, start)), 1e-9 * ours.scale);
  const auto t = equations.parts.face_temperatures_K(ours.solution);
  const double difference =
      largest_difference_K<Layers>(t, equations.parts.face_temperatures_K(theirs.solution));
  const double difference_plain = largest_difference_K<Layers>(t, written_out.face_temperature_K);
  // Gas mixtures: prepared curves against the fits themselves, 2e-5 of the convection.
  const double allowed_plain = bench.stack.gaps[0].gas.air == 1.0 ? 1e-6 : 1e-4;
  const bool agree = ours.status == dewgap::SolveStatus::converged && theirs.flag >= 0 &&
                     written_out.flag >= 0 && difference < 1e-6 && difference_plain < allowed_plain;
  std::printf("%s: faces differ by %.1e K and %.1e K, iterations %d, %ld and %ld: %s\n", bench.name,
              difference, difference_plain, ours.iterations, theirs.iterations, written_out.iterations,
              agree ? "agree" : "DIFFER");
  return agree;
}

template <std::size_t Layers>
bool run_case(const BenchCase& bench, int repetitions) {
  const bool agree = answers_agree<Layers>(bench);
  const auto t = time_case<Layers>(bench, repetitions);
  if (repetitions >= 1000) {
    std::printf("  Newton alone %.0f ns, KINSOL on the same prepared equations %.0f ns: %.1f times\n",
                t.ours_s * 1e9, t.kinsol_s * 1e9, t.kinsol_s / t.ours_s);
    std::printf(
        "  solve_stack %.0f ns, KINSOL set up beforehand, equations written out %.0f ns: %.1f times\n",
        t.ours_whole_s * 1e9, t.kinsol_plain_s * 1e9, t.kinsol_plain_s / t.ours_whole_s);
    std::printf("  solve_stack %.0f ns, KINSOL set up for each stack as solve_stack is %.0f ns: %.1f times\n",
                t.ours_whole_s * 1e9, t.kinsol_call_s * 1e9, t.kinsol_call_s / t.ours_whole_s);
  }
  return agree;
}

}  // namespace

int main(int argc, char** argv) {
  const bool smoke = argc > 1 && std::string_view(argv[1]) == "--smoke";
  const int repetitions = smoke ? 20 : 40000;
  bool all_agree = true;
  for (const auto& bench : bench_cases()) {
    const bool agree =
        bench.stack.layer_count == 2 ? run_case<2>(bench, repetitions) : run_case<3>(bench, repetitions);
    all_agree = agree && all_agree;
  }
  return all_agree ? 0 : 1;
}
