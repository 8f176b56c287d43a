// The plane section: cost against cells, of the linear solve alone and of whole solutions; and its error
// estimates held against finer solutions of random sections.
//
//   bench_section                     tables of cost, up to 1.3 million cells
//   bench_section --random N [SEED]   N random sections, each against a bound five times tighter
//   bench_section --smoke             few and small, no timing
#include <algorithm>
#include <cmath>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <string_view>
#include <vector>

#include "cpu_clock.hpp"
#include "dewgap/window/section.hpp"
#include "dewgap/window/section_grid_kernel.hpp"
#include "window/random_sections.hpp"

namespace {

namespace kernel = dewgap::section_kernel;
using dewgap::bench::cpu_seconds;
using dewgap::numerics::NetworkMethod;

constexpr std::uint64_t usual_seed = 2026;

/// Case 2 of ISO 10211: thin metal round insulation, conductivities over four decades.
dewgap::Section lined_wall() {
  dewgap::Section wall;
  wall.items = {
      {"concrete", dewgap::SolidFill{1.15}, {{0.0, 0.0415}, {0.5, 0.0415}, {0.5, 0.0475}, {0.0, 0.0475}}, {}},
      {"wood", dewgap::SolidFill{0.12}, {{0.0, 0.0365}, {0.015, 0.0365}, {0.015, 0.0415}, {0.0, 0.0415}}, {}},
      {"insulation",
       dewgap::SolidFill{0.029},
       {{0.0015, 0.0015}, {0.5, 0.0015}, {0.5, 0.0415}, {0.015, 0.0415}, {0.015, 0.035}, {0.0015, 0.035}},
       {}},
      {"aluminium",
       dewgap::SolidFill{230.0},
       {{0.0, 0.0},
        {0.5, 0.0},
        {0.5, 0.0015},
        {0.0015, 0.0015},
        {0.0015, 0.035},
        {0.015, 0.035},
        {0.015, 0.0365},
        {0.0, 0.0365}},
       {}}};
  wall.boundaries = {
      {"room", dewgap::AirSide{dewgap::AirRole::room, 20.0, 0.11, {}}, {dewgap::EdgesOnY{0.0}}},
      {"outdoors", dewgap::AirSide{dewgap::AirRole::outdoors, 0.0, 0.06, {}}, {dewgap::EdgesOnY{0.0475}}},
      {"sides", dewgap::CutOff{}, {dewgap::EdgesOnX{0.0}, dewgap::EdgesOnX{0.5}}}};
  return wall;
}

struct Row {
  std::size_t cells;
  double seconds;
  int iterations;
  double coupling_W_mK;
};

/// The vertex scheme on a grid: the linear solve alone.
Row solve_alone(const kernel::Task& task, const kernel::Mesh& mesh, NetworkMethod method) {
  const auto conductivity =
      kernel::conductivities_of(task.section, task.cavities, kernel::first_states(task), task.rule);
  const auto network = kernel::vertex_network(mesh, task.air, task.plan, conductivity);
  const double begin = cpu_seconds();
  const auto solved = kernel::solve_scheme(network, task.section.boundaries.size(), method);
  return {mesh.cells, cpu_seconds() - begin, solved.iterations, solved.flow_W_m.front() / 20.0};
}

void print_row(const char* method, const Row& row, const Row& before) {
  std::printf("%-10s %8zu cells  %9.4f s  %6.2f us a cell  %4d steps  L2D %.6f", method, row.cells,
              row.seconds, 1e6 * row.seconds / static_cast<double>(row.cells), row.iterations,
              row.coupling_W_mK);
  if (before.cells > 0) {
    const double cells = std::log(static_cast<double>(row.cells) / static_cast<double>(before.cells));
    std::printf("  exponent %.2f", std::log(row.seconds / before.seconds) / cells);
  }
  std::printf("\n");
}

/// Halves all intervals from grid to grid, once with factors and once with multigrid.
int cost_of_solving(std::size_t most_cells) {
  constexpr std::size_t most_for_factors = 300'000;
  const dewgap::Section wall = lined_wall();
  const auto task = kernel::task_of(wall, dewgap::CavityRule::standard_difference);
  std::printf("The linear solve alone, vertex scheme, ISO 10211 case 2:\n");
  auto x = kernel::first_lines(task.plan.x_m);
  auto y = kernel::first_lines(task.plan.y_m);
  Row direct{};
  Row multigrid{};
  bool agree = true;
  while (x.intervals() * y.intervals() <= most_cells) {
    const auto mesh = kernel::mesh_of(task.plan, x, y);
    const Row last_multigrid = multigrid;
    multigrid = solve_alone(task, mesh, NetworkMethod::multigrid);
    if (mesh.cells <= most_for_factors) {
      const Row last_direct = direct;
      direct = solve_alone(task, mesh, NetworkMethod::direct);
      print_row("factors", direct, last_direct);
      agree = agree && std::abs(direct.coupling_W_mK / multigrid.coupling_W_mK - 1.0) < 1e-9;
    }
    print_row("multigrid", multigrid, last_multigrid);
    const bool last = 4 * x.intervals() * y.intervals() > most_cells;  // then along x alone
    x = kernel::halved(x, std::vector<bool>(x.intervals(), true));
    y = kernel::halved(y, std::vector<bool>(y.intervals(), !last));
  }
  std::printf(agree ? "both agree to 1e-9\n" : "DIFFER by more than 1e-9\n");
  return agree ? 0 : 1;
}

void cost_of_answers() {
  std::printf("Whole solutions of the same, by error bound:\n");
  for (const double bound : {5e-3, 5e-4, 5e-5, 1e-5}) {
    const double begin = cpu_seconds();
    const auto result = dewgap::solve_section(lined_wall(), {.coupling_error_bound = bound});
    std::printf("bound %.0e: %8zu cells  %2d passes  %8.4f s  L2D %.6f +- %.6f\n", bound, result.cells,
                result.passes, cpu_seconds() - begin, result.coupling->value_W_mK,
                result.coupling->error_bound_W_mK);
  }
}

/// What was seen in random sections so far.
struct Tally {
  int coupling_outside = 0;
  int temperature_outside = 0;
  int not_converged = 0;
  double worst_share = 0.0;
  double sum_of_shares = 0.0;
  double worst_imbalance = 0.0;

  void add(int i, const dewgap::SectionResult& result, const dewgap::SectionResult& finer) {
    if (result.status != dewgap::SectionStatus::converged) {
      ++not_converged;
      const auto why = dewgap::explain(result.status);
      std::printf("section %d, %zu cells: %.*s\n", i, result.cells, static_cast<int>(why.size()), why.data());
    }
    const double share = std::abs(result.coupling->value_W_mK - finer.coupling->value_W_mK) /
                         result.coupling->error_bound_W_mK;
    worst_share = std::max(worst_share, share);
    sum_of_shares += share;
    worst_imbalance = std::max(worst_imbalance, result.heat_imbalance);
    coupling_outside += share <= 1.0 ? 0 : 1;
    const double error_K =
        std::abs(result.lowest_room_face->temperature_C - finer.lowest_room_face->temperature_C);
    if (!(error_K <= result.lowest_room_face->estimated_error_K + 1e-9)) {
      ++temperature_outside;
      std::printf("section %d: lowest temperature off by %.5f K, estimated %.5f K\n", i, error_K,
                  result.lowest_room_face->estimated_error_K);
    }
  }
};

/// Estimates of the default bounds against solutions with bounds five times tighter.
int random_sections(int count, std::uint64_t seed) {
  dewgap::test::RandomSections drawn(seed);
  Tally tally;
  double seconds = 0.0;
  for (int i = 0; i < count; ++i) {
    const dewgap::Section section = drawn.next();
    const double begin = cpu_seconds();
    const auto result = dewgap::solve_section(section);
    seconds += cpu_seconds() - begin;
    tally.add(
        i, result,
        dewgap::solve_section(section, {.coupling_error_bound = 1e-4, .temperature_error_bound_K = 0.004}));
  }
  std::printf(
      "%d random sections of seed %llu, %.3f s each: %d not converged; coupling outside its bound %d, "
      "difference over\n"
      "bound %.3f in the mean, %.3f at most; lowest temperature outside its estimate %d; imbalance at "
      "most %.1e\n",
      count, static_cast<unsigned long long>(seed), seconds / count, tally.not_converged,
      tally.coupling_outside, tally.sum_of_shares / count, tally.worst_share, tally.temperature_outside,
      tally.worst_imbalance);
  const bool holds =
      tally.coupling_outside == 0 && 100 * tally.temperature_outside <= count && tally.worst_imbalance < 1e-9;
  return holds ? 0 : 1;
}

}  // namespace

int main(int count, char** arguments) {
  const std::string_view first = count > 1 ? arguments[1] : "";
  if (first == "--smoke") {
    return cost_of_solving(3'000) + random_sections(5, usual_seed);
  }
  if (first == "--random") {
    return random_sections(count > 2 ? std::max(1, std::atoi(arguments[2])) : 1'000,
                           count > 3 ? std::strtoull(arguments[3], nullptr, 10) : usual_seed);
  }
  const int failed = cost_of_solving(1'400'000);
  cost_of_answers();
  return failed;
}
