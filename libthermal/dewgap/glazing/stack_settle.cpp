// Solving a stack. Newton's method alone does it for closed gaps. The convection of a gap with an air stream
// follows the difference of its faces (the closed-gap correlation), while the heat it moves follows the
// difference from the stream: with a strong stream and wide gaps the balance is then no longer monotone and
// Newton's method may stall. Such a state is found with the convection of those gaps held, which is monotone
// again, and the held value led to the one that the faces call for: by steps towards it in its logarithm,
// shortened whenever the step changes its sign. Newton's method then has the last word, so the answer meets
// the same tolerance.
#include <algorithm>
#include <cmath>

#include "dewgap/glazing/stack_ends_kernel.hpp"

namespace dewgap::glazing_kernel {
namespace {

constexpr int plain_iterations = 15;  // Newton's method stalls or is done by then
constexpr int max_rounds = 1000;

struct HeldGap {
  double wanted_log_step = 0.0;  // ln(called for / held) of the last round
  double share = 1.0;
  double turns = 0.0;  // how often the step has changed its sign
};

template <std::size_t Layers>
bool any_stream(const StackParts<Layers>& parts) {
  return std::any_of(parts.gaps.begin(), parts.gaps.end(),
                     [](const GapModel& gap) { return gap.stream_W_m2K > 0.0; });
}

template <std::size_t Layers>
class HeldSearch {
 public:
  using Result = numerics::NewtonResult<2 * Layers>;

  HeldSearch(const RealEquations<Layers>& equations, const FaceVector<Layers>& start,
             const numerics::NewtonOptions& options)
      : free_(equations), held_(equations), options_(options) {
    const auto temperature_K = free_.parts.face_temperatures_K(start);
    for (std::size_t i = 0; i + 1 < Layers; ++i) {
      if (free_.parts.gaps[i].stream_W_m2K > 0.0) {
        held_.parts.gaps[i].held_W_m2K = called_for(i, temperature_K);
      }
    }
    result_.solution = start;
  }

  Result run() {
    auto polish = options_;
    polish.max_iterations = std::min(options_.max_iterations, plain_iterations);
    for (int round = 1; round <= max_rounds; ++round) {
      if (!take(numerics::solve_newton(held_, result_.solution, options_))) {
        return result_;
      }
      const double farthest = lead_held_values();
      if (round % 5 == 0 && farthest < 0.5) {
        const auto polished = numerics::solve_newton(free_, result_.solution, polish);
        if (polished.status == SolveStatus::converged) {
          take(polished);
          return result_;
        }
        result_.iterations += polished.iterations;
      }
    }
    result_.status = SolveStatus::iteration_limit;
    return result_;
  }

 private:
  double called_for(std::size_t i, const FaceVector<Layers>& temperature_K) const {
    return free_.parts.gaps[i].exchange(temperature_K[2 * i + 1], temperature_K[2 * i + 2]).convection_W_m2K;
  }

  bool take(const Result& next) {
    const int before = result_.iterations;
    result_ = next;
    result_.iterations += before;
    return next.status == SolveStatus::converged;
  }

  // Moves each held value; returns the largest |ln(called for / held)|.
  double lead_held_values() {
    const auto temperature_K = free_.parts.face_temperatures_K(result_.solution);
    double farthest = 0.0;
    for (std::size_t i = 0; i + 1 < Layers; ++i) {
      auto& held = held_.parts.gaps[i].held_W_m2K;
      if (held <= 0.0) {
        continue;
      }
      const double step = std::log(called_for(i, temperature_K) / held);
      auto& state = gaps_[i];
      const bool turned = step * state.wanted_log_step < 0.0;
      state.turns += turned ? 1.0 : 0.0;
      state.share = turned ? 0.5 * state.share : std::min(1.0 / (1.0 + 0.5 * state.turns), 1.2 * state.share);
      state.wanted_log_step = step;
      held *= std::exp(state.share * step);
      farthest = std::max(farthest, std::abs(step));
    }
    return farthest;
  }

  const RealEquations<Layers>& free_;
  RealEquations<Layers> held_;
  numerics::NewtonOptions options_;
  std::array<HeldGap, Layers - 1> gaps_{};
  Result result_;
};

}  // namespace

template <std::size_t Layers>
numerics::NewtonResult<2 * Layers> settle(const RealEquations<Layers>& equations,
                                          const FaceVector<Layers>& start, const StackOptions& options) {
  const numerics::NewtonOptions newton{options.max_iterations, options.flux_tolerance, 1e-9};
  if (!any_stream(equations.parts)) {
    return numerics::solve_newton(equations, start, newton);
  }
  auto plain = newton;
  plain.max_iterations = std::min(newton.max_iterations, plain_iterations);
  const auto found = numerics::solve_newton(equations, start, plain);
  if (found.status == SolveStatus::converged || plain.max_iterations == newton.max_iterations) {
    return found;
  }
  auto searched = HeldSearch<Layers>(equations, start, newton).run();
  searched.iterations += found.iterations;
  return searched;
}

// The parameter is a template argument, which takes no parentheses.
// NOLINTBEGIN(bugprone-macro-parentheses)
#define DEWGAP_INSTANTIATE(n)                                                                     \
  template numerics::NewtonResult<2 * n> settle<n>(const RealEquations<n>&, const FaceVector<n>&, \
                                                   const StackOptions&);
DEWGAP_INSTANTIATE(1)
DEWGAP_INSTANTIATE(2)
DEWGAP_INSTANTIATE(3)
DEWGAP_INSTANTIATE(4)
DEWGAP_INSTANTIATE(5)
DEWGAP_INSTANTIATE(6)
DEWGAP_INSTANTIATE(7)
#undef DEWGAP_INSTANTIATE
// NOLINTEND(bugprone-macro-parentheses)

}  // namespace dewgap::glazing_kernel
