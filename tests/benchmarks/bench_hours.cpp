// A year of hours of one window: the library's step against SUNDIALS KINSOL on the same equations, lagged
// quantities and closure, hour by hour, in one run. See kinsol_hours.hpp for what KINSOL is given and spared.
#include <algorithm>
#include <cmath>
#include <cstdio>
#include <limits>
#include <memory>
#include <span>
#include <string_view>
#include <tuple>
#include <vector>

#include "cpu_clock.hpp"
#include "hour_parts.hpp"
#include "kinsol_hours.hpp"

namespace dewgap::bench {
namespace {

using gap_kernel::GapHours;

/// What the last step's flow network and timber were worked out with. Without GapHours::guess() there is
/// nothing to hand to KINSOL, and the answers differ.
template <class Hours>
HourGuess guess_of(const Hours& hours) {
  if constexpr (requires { hours.guess().gap_C; }) {
    const auto& guess = hours.guess();
    return {.gap_C = guess.gap_C, .pane_C = guess.pane_C, .vapour_Pa = guess.vapour_Pa};
  } else {
    return {};
  }
}

/// The library's step, each hour from the hours before.
struct OursWarm {
  static constexpr const char* name = "ours, warm";
  GapHours<2> hours;
  OursWarm(const GapDesign& design, double closure_W_m2)
      : hours(design, {}, {.closure_W_m2 = closure_W_m2}) {}
  HourState step(const BenchHour& hour) { return hours.step(hour.given); }
};

/// The library's step, each hour from real_start. The flow network still starts from its hour before.
struct OursCold : OursWarm {
  static constexpr const char* name = "ours, cold";
  using OursWarm::OursWarm;
  HourState step(const BenchHour& hour) {
    hours.forget();
    return hours.step(hour.given);
  }
};

template <Flows flows, Start start, class Correlations = PreparedCorrelations>
struct Kinsol {
  KinsolHours<flows, Correlations> hours;
  Kinsol(const GapDesign& design, double closure_W_m2) : hours(design, closure_W_m2, start) {}
  HourState step(const BenchHour& hour) { return hours.step(hour.given, hour.guess); }
};

struct Together : Kinsol<Flows::unknown, Start::hour_before> {
  static constexpr const char* name = "KINSOL, one system, our kernels, warm";
  using Kinsol::Kinsol;
};
struct TogetherOnLine : Kinsol<Flows::unknown, Start::line_through_two> {
  static constexpr const char* name = "KINSOL, one system, our kernels, warm from a line";
  using Kinsol::Kinsol;
};
struct TogetherCold : Kinsol<Flows::unknown, Start::one_guess> {
  static constexpr const char* name = "KINSOL, one system, our kernels, cold";
  using Kinsol::Kinsol;
};
struct Written : Kinsol<Flows::unknown, Start::hour_before, CalledCorrelations> {
  static constexpr const char* name = "KINSOL, one system, public functions, warm";
  using Kinsol::Kinsol;
};
struct WrittenCold : Kinsol<Flows::unknown, Start::one_guess, CalledCorrelations> {
  static constexpr const char* name = "KINSOL, one system, public functions, cold";
  using Kinsol::Kinsol;
};
struct Apart : Kinsol<Flows::given, Start::hour_before> {
  static constexpr const char* name = "KINSOL, heat and vapour, our kernels and flows, warm";
  using Kinsol::Kinsol;
};
struct ApartCold : Kinsol<Flows::given, Start::one_guess> {
  static constexpr const char* name = "KINSOL, heat and vapour, our kernels and flows, cold";
  using Kinsol::Kinsol;
};

struct Outcome {
  const char* name = "";
  std::vector<double> best_block_s;  ///< the least of all repetitions: what the machine does undisturbed
  long newton_steps = 0;
  long unsettled = 0;
  double sink = 0.0;
  double seconds() const {
    double sum = 0.0;
    for (const double s : best_block_s) {
      sum += s;
    }
    return sum;
  }
};

template <class Contestant>
void run_block(Contestant& contestant, std::span<const BenchHour> hours, std::size_t block,
               Outcome& outcome) {
  const double begin_s = cpu_seconds();
  for (const auto& hour : hours) {
    const auto state = contestant.step(hour);
    outcome.newton_steps += state.newton_steps;
    outcome.unsettled += state.status == SolveStatus::converged ? 0 : 1;
    outcome.sink += state.vapour_Pa;
  }
  outcome.best_block_s[block] = std::min(outcome.best_block_s[block], cpu_seconds() - begin_s);
}

/// All contestants through the year, block by block in turn, `repetitions` times.
template <class... Contestants>
std::vector<Outcome> race(const GapDesign& design, std::span<const BenchHour> year, double closure_W_m2,
                          int repetitions) {
  const std::size_t blocks = (year.size() + block_hours - 1) / block_hours;
  std::vector<Outcome> outcomes{Outcome{.name = Contestants::name}...};
  for (auto& outcome : outcomes) {
    outcome.best_block_s.assign(blocks, std::numeric_limits<double>::infinity());
  }
  for (int repetition = 0; repetition < repetitions; ++repetition) {
    const std::tuple contestants{std::make_unique<Contestants>(design, closure_W_m2)...};
    for (std::size_t b = 0; b < blocks; ++b) {
      const auto hours = year.subspan(b * block_hours, std::min(block_hours, year.size() - b * block_hours));
      std::apply(
          [&](const auto&... contestant) {
            std::size_t i = 0;
            (run_block(*contestant, hours, b, outcomes[i++]), ...);
          },
          contestants);
    }
  }
  return outcomes;
}

struct Agreement {
  double face_K = 0.0;
  double vapour = 0.0;      ///< relative
  double film_kg_m2 = 0.0;  ///< largest of any hour
  double film_at_end_kg_m2 = 0.0;
  double worst_jacobian = 0.0;
  long unsettled = 0;
  long searched_again = 0;
  bool holds() const {
    return face_K < 1e-6 && vapour < 1e-6 && film_at_end_kg_m2 < 1e-6 && worst_jacobian < 1e-4 &&
           unsettled == 0;
  }
};

double larger(double so_far, double one) {
  return one <= so_far ? so_far : one;  // a NaN stays
}

double films_kg_m2(const HourState& state) {
  return state.pane_film_kg_m2 + state.sheet_film_kg_m2 + state.pool_kg_m2;
}

template <Flows flows, class Correlations>
Agreement compare(const GapDesign& design, std::span<const BenchHour> year) {
  constexpr double closure_W_m2 = 1e-9;
  GapHours<2> ours(design, {}, {.closure_W_m2 = closure_W_m2});
  KinsolHours<flows, Correlations> theirs(design, closure_W_m2, Start::hour_before);
  Agreement agreement;
  for (std::size_t i = 0; i < year.size(); ++i) {
    const auto a = ours.step(year[i].given);
    const auto b = theirs.step(year[i].given, year[i].guess);
    if (a.status != SolveStatus::converged || b.status != SolveStatus::converged) {
      ++agreement.unsettled;
      continue;
    }
    for (std::size_t f = 0; f < 4; ++f) {
      agreement.face_K = larger(agreement.face_K, std::abs(a.face_C[f] - b.face_C[f]));
    }
    agreement.vapour = larger(agreement.vapour, std::abs(a.vapour_Pa / b.vapour_Pa - 1.0));
    agreement.film_at_end_kg_m2 = std::abs(films_kg_m2(a) - films_kg_m2(b));
    agreement.film_kg_m2 = larger(agreement.film_kg_m2, agreement.film_at_end_kg_m2);
    if (i % 97 == 0) {
      agreement.worst_jacobian = larger(agreement.worst_jacobian, theirs.jacobian_error());
    }
  }
  agreement.searched_again = theirs.searches_again();
  return agreement;
}

template <Flows flows, class Correlations>
bool agrees(const GapDesign& design, std::span<const BenchHour> year, const char* name) {
  const auto a = compare<flows, Correlations>(design, year);
  std::printf(
      "%s: faces within %.1e K, vapour within %.1e of itself, films and pool within %.1e kg/m2, at the end "
      "%.1e,\n"
      "  Jacobian within %.1e of central differences, %ld hours unsettled, %ld searched again: %s\n",
      name, a.face_K, a.vapour, a.film_kg_m2, a.film_at_end_kg_m2, a.worst_jacobian, a.unsettled,
      a.searched_again, a.holds() ? "agree" : "DIFFER");
  return a.holds();
}

void print_year(const GapDesign& design, std::span<const BenchHour> year) {
  GapHours<2> ours(design, {}, {});
  double wet = 0.0;
  double frost = 0.0;
  double pool = 0.0;
  double peak_g_m2 = 0.0;
  for (const auto& hour : year) {
    const auto state = ours.step(hour.given);
    wet += state.pane_film_kg_m2 + state.sheet_film_kg_m2 > 1e-3 ? 1.0 : 0.0;
    frost += state.frost_kg_m2 > 1e-3 ? 1.0 : 0.0;
    pool += state.pool_kg_m2 > 1e-3 ? 1.0 : 0.0;
    peak_g_m2 = std::max(peak_g_m2, 1e3 * state.pane_film_kg_m2);
  }
  std::printf("%zu hours: wet in %.0f, frost in %.0f, a pool in %.0f, film of the pane at most %.0f g/m2\n",
              year.size(), wet, frost, pool, peak_g_m2);
}

void print_race(const GapDesign& design, std::span<const BenchHour> year, double closure_W_m2,
                int repetitions) {
  const auto outcomes = race<OursWarm, OursCold, Together, TogetherCold, Written, WrittenCold, Apart,
                             ApartCold, TogetherOnLine>(design, year, closure_W_m2, repetitions);
  const double hours = static_cast<double>(year.size());
  std::printf("\nClosure %.0e W/m2, best of %d runs a block of %zu hours:\n", closure_W_m2, repetitions,
              block_hours);
  for (const auto& outcome : outcomes) {
    std::printf("  %-53s %7.2f us a step, %5.2f Newton steps an hour, %ld unsettled\n", outcome.name,
                1e6 * outcome.seconds() / hours,
                static_cast<double>(outcome.newton_steps) / hours / repetitions,
                outcome.unsettled / repetitions);
    if (!std::isfinite(outcome.sink)) {
      std::puts("not finite");
    }
  }
  std::puts("  KINSOL over ours:                          warm/warm  cold/cold  cold/our warm");
  const auto print_ratios = [&](const char* name, std::size_t warm) {
    const auto ratio = [&](std::size_t theirs, std::size_t ours) {
      return outcomes[theirs].seconds() / outcomes[ours].seconds();
    };
    std::printf("    %-41s %7.1f    %7.1f    %7.1f\n", name, ratio(warm, 0), ratio(warm + 1, 1),
                ratio(warm + 1, 0));
  };
  print_ratios("one system of 12, our kernels", 2);
  print_ratios("one system of 12, public functions", 4);
  print_ratios("heat and vapour alone, our kernels, flows", 6);
}

std::vector<BenchHour> hours_of(const GapDesign& design, std::span<const HourConditions> year) {
  GapHours<2> ours(design, {}, {.closure_W_m2 = 1e-9});
  std::vector<BenchHour> hours;
  hours.reserve(year.size());
  for (const auto& given : year) {
    ours.step(given);
    hours.push_back({given, guess_of(ours)});
  }
  return hours;
}

int run(bool smoke) {
  const auto design = bench_design();
  const auto whole = bench_year();
  const auto year = hours_of(design, std::span(whole).first(smoke ? 500 : whole.size()));
  print_year(design, year);
  bool agree = agrees<Flows::unknown, PreparedCorrelations>(design, year, "KINSOL, one system, our kernels");
  agree = agrees<Flows::unknown, CalledCorrelations>(design, year, "KINSOL, one system, public functions") &&
          agree;
  agree = agrees<Flows::given, PreparedCorrelations>(design, year, "KINSOL, heat and vapour") && agree;
  if (!smoke) {
    for (const double closure_W_m2 : {1e-9, 1e-4}) {
      print_race(design, year, closure_W_m2, 10);
      print_parts(design, year, closure_W_m2, 10);
    }
  }
  return agree ? 0 : 1;
}

}  // namespace
}  // namespace dewgap::bench

int main(int argc, char** argv) {
  const bool smoke = argc > 1 && std::string_view(argv[1]) == "--smoke";
  return dewgap::bench::run(smoke);
}
