#include "dewgap/window/section.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "dewgap/errors.hpp"
#include "dewgap/window/section_answer_kernel.hpp"
#include "dewgap/window/section_words_kernel.hpp"

namespace dewgap {
namespace {

using namespace section_kernel;

constexpr double marked_share = 0.75;  // of the schemes' difference, halved at each pass

/// Faces of no resistance and different temperatures that touch: the heat flow between them has no limit.
void check_heat_is_limited(const Section& section, const Task& task) {
  const auto& faces = task.plan.faces;
  const auto given = [&](std::size_t f) { return task.air[f] && task.air[f]->resistance_m2K_W == 0.0; };
  const auto follows = [&](std::size_t a, std::size_t b) {
    return std::abs(faces[a].to.x_m - faces[b].from.x_m) <= same_line_m &&
           std::abs(faces[a].to.y_m - faces[b].from.y_m) <= same_line_m;
  };
  for (std::size_t a = 0; a < faces.size(); ++a) {
    for (std::size_t b = 0; b < faces.size(); ++b) {
      if (given(a) && given(b) && task.air[a]->temperature_C != task.air[b]->temperature_C && follows(a, b)) {
        throw InvalidInput(section.boundaries[faces[a].boundary].name,
                           "touches '" + section.boundaries[faces[b].boundary].name + "' at " +
                               place(faces[a].to) +
                               " without a surface resistance on either, so that the heat flow has no limit; "
                               "give one a resistance, or ask for temperatures only");
      }
    }
  }
}

/// The coupling's error bound over itself; where there is none, half the schemes' difference of the worst
/// boundary's over the largest heat flow.
double relative_heat_error(const Task& task, const SolvedGrid& grid) {
  if (const auto coupling = coupling_of(task, grid)) {
    return coupling->value_W_mK > 0.0 ? coupling->error_bound_W_mK / coupling->value_W_mK : 0.0;
  }
  double worst_W_m = 0.0;
  double largest_W_m = 0.0;
  for (const auto& through : heat_of(task, grid)) {
    worst_W_m = std::max(worst_W_m, through.half_difference_W_m);
    largest_W_m = std::max(largest_W_m, std::abs(through.flow_W_m));
  }
  return largest_W_m > 0.0 ? worst_W_m / largest_W_m : 0.0;
}

/// Temperatures that have to settle, from grid to grid.
struct Settling {
  std::optional<SettledTemperature> coldest;
  std::vector<SectionPoint> coldest_places;
  std::vector<SettledTemperature> watched;

  /// The estimate is at least twice the change since the grid before (our convention).
  void compare(const Settling& before) {
    const auto raise = [](SettledTemperature& now, const SettledTemperature& then) {
      now.estimated_error_K =
          std::max(now.estimated_error_K, 2.0 * std::abs(now.temperature_C - then.temperature_C));
    };
    if (coldest && before.coldest) {
      raise(*coldest, *before.coldest);
    }
    for (std::size_t k = 0; k < watched.size(); ++k) {
      raise(watched[k], before.watched[k]);
    }
  }
  /// Those whose estimate is over the bound.
  std::vector<SectionPoint> unsettled(double bound_K) const {
    std::vector<SectionPoint> points;
    if (coldest && !(coldest->estimated_error_K <= bound_K)) {
      points = coldest_places;
    }
    for (const auto& point : watched) {
      if (!(point.estimated_error_K <= bound_K)) {
        points.push_back(point.at);
      }
    }
    return points;
  }
};

Settling settling_of(const Task& task, const SolvedGrid& grid, const SectionOptions& options) {
  Settling settling{std::nullopt, {}, watched_temperatures(task, grid, options.watched)};
  if (options.aim == SectionAim::heat_flow_and_temperatures) {
    settling.coldest = coldest_room_face(task, grid);
    settling.coldest_places = coldest_room_places(task, grid);
  }
  return settling;
}

/// Marks the intervals next to a place as well.
void mark_about(const GridLines& lines, double at_m, std::vector<bool>& marked) {
  for (std::size_t i = 0; i < lines.intervals(); ++i) {
    if (lines.at_m[i] <= at_m + same_line_m && lines.at_m[i + 1] >= at_m - same_line_m) {
      marked[i] = true;
    }
  }
}

Marked next_marks(const SolvedGrid& grid, const std::vector<SectionPoint>& unsettled, SectionAim aim) {
  if (aim == SectionAim::temperatures_only) {
    return {std::vector<bool>(grid.mesh.columns(), true), std::vector<bool>(grid.mesh.rows(), true)};
  }
  Marked marked = largest_terms(grid.terms, marked_share);
  for (const auto& point : unsettled) {
    mark_about(grid.mesh.x, point.x_m, marked.columns);
    mark_about(grid.mesh.y, point.y_m, marked.rows);
  }
  return marked;
}

SectionStatus status_of(const SolvedGrid& grid, SectionStatus otherwise) {
  if (!grid.balanced) {
    return SectionStatus::not_balanced;
  }
  return grid.cavities_settled ? otherwise : SectionStatus::cavities_unsettled;
}

}  // namespace

SectionResult solve_section(const Section& section, const SectionOptions& options) {
  options.validate();
  const Task task = task_of(section, options.cavities);
  if (options.aim == SectionAim::heat_flow_and_temperatures) {
    check_heat_is_limited(section, task);
  }
  SolvedGrid grid =
      solve_on(task, first_lines(task.plan.x_m), first_lines(task.plan.y_m), first_states(task));
  SectionStatus status = SectionStatus::pass_limit;
  Settling settling = settling_of(task, grid, options);
  int passes = 1;
  for (; passes < options.max_passes; ++passes) {
    const auto unsettled = settling.unsettled(options.temperature_error_bound_K);
    const bool heat_known = options.aim == SectionAim::temperatures_only ||
                            relative_heat_error(task, grid) <= options.coupling_error_bound;
    if (passes > 1 && heat_known && unsettled.empty()) {
      status = SectionStatus::converged;
      break;
    }
    const Marked marked = next_marks(grid, unsettled, options.aim);
    GridLines x = halved(grid.mesh.x, marked.columns);
    GridLines y = halved(grid.mesh.y, marked.rows);
    if (x.intervals() * y.intervals() > options.max_cells) {
      status = SectionStatus::cell_limit;
      break;
    }
    grid = solve_on(task, std::move(x), std::move(y), std::move(grid.states));
    Settling next = settling_of(task, grid, options);
    next.compare(settling);
    settling = std::move(next);
  }
  status = status_of(grid, status);
  SectionResult result = result_of(task, std::move(grid), options.aim);
  result.status = status;
  result.passes = passes;
  result.lowest_room_face = settling.coldest;
  result.watched = settling.watched;
  return result;
}

}  // namespace dewgap
