#include "dewgap/fitting/tape_plan.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "dewgap/errors.hpp"
#include "dewgap/fitting/practice.hpp"
#include "dewgap/fitting/text_kernel.hpp"

namespace dewgap {
namespace {

constexpr double from_fixing_mm = 15.0;  // our convention
constexpr double from_corner_mm = 10.0;  // beyond the joint of the tapes

/// A stretch of the edge that is free for breaks.
struct Stretch {
  double from_mm;
  double to_mm;
};

void validate(const TapePlanInput& input) {
  require_in_range(static_cast<double>(input.width_mm), {20.0, 10000.0}, "width_mm", "mm");
  require_in_range(static_cast<double>(input.height_mm), {20.0, 10000.0}, "height_mm", "mm");
  const double widest_mm = 0.5 * std::min(input.width_mm, input.height_mm);
  require_in_range(input.tape_width_mm, {0.0, widest_mm}, "tape_width_mm", "mm");
  for (const int mark_mm : input.width_marks_mm) {
    require_in_range(static_cast<double>(mark_mm), {0.0, static_cast<double>(input.width_mm)},
                     "width_marks_mm", "mm");
  }
  for (const auto& wanted : input.breaks) {
    require_in_range(static_cast<double>(wanted.count), {1.0, 20.0}, "breaks.count", "");
    require_in_range(wanted.length_m, {0.002, 1.0}, "breaks.length_m", "m");
    if (wanted.member != Member::bottom && wanted.member != Member::top) {
      throw InvalidInput("breaks.member", "is neither the bottom nor the top edge");
    }
  }
}

/// Between the fixings; without two of them, the whole edge from one corner distance to the other.
std::vector<Stretch> free_stretches(const TapePlanInput& input) {
  const double corner_mm = input.tape_width_mm + from_corner_mm;
  const double end_mm = input.width_mm - corner_mm;
  const auto& marks_mm = input.width_marks_mm;
  if (marks_mm.empty()) {
    const double away_mm = std::max(corner_mm, practice::corner_distance_m * 1e3);
    return {{away_mm, input.width_mm - away_mm}};
  }
  std::vector<Stretch> stretches;
  if (marks_mm.size() == 1) {
    stretches = {{corner_mm, marks_mm.front() - from_fixing_mm}, {marks_mm.front() + from_fixing_mm, end_mm}};
  }
  for (std::size_t i = 1; i < marks_mm.size(); ++i) {
    stretches.push_back({std::max(marks_mm[i - 1] + from_fixing_mm, corner_mm),
                         std::min(marks_mm[i] - from_fixing_mm, end_mm)});
  }
  return stretches;
}

/// Whether a break at a place lies in one free stretch, clear of the breaks placed before it.
bool is_free(const std::vector<Stretch>& stretches, const std::vector<Stretch>& taken, double from_mm,
             double length_mm) {
  constexpr double rounding_mm = 1e-9;
  const double to_mm = from_mm + length_mm;
  const bool inside = std::any_of(stretches.begin(), stretches.end(), [&](const Stretch& stretch) {
    return from_mm >= stretch.from_mm - rounding_mm && to_mm <= stretch.to_mm + rounding_mm;
  });
  return inside && std::none_of(taken.begin(), taken.end(), [&](const Stretch& other) {
           return from_mm < other.to_mm + from_corner_mm && to_mm > other.from_mm - from_corner_mm;
         });
}

/// Where a break could begin, in 5 mm steps from either end of each stretch, nearest to where it is wished
/// first.
std::vector<double> candidates_mm(const std::vector<Stretch>& stretches, double wished_mm, double length_mm) {
  constexpr double step_mm = 5.0;
  std::vector<double> all;
  for (const auto& stretch : stretches) {
    const double room_mm = stretch.to_mm - stretch.from_mm - length_mm;
    for (double shift_mm = 0.0; shift_mm <= room_mm; shift_mm += step_mm) {
      all.push_back(stretch.from_mm + shift_mm);
      all.push_back(stretch.to_mm - length_mm - shift_mm);
    }
  }
  std::stable_sort(all.begin(), all.end(), [wished_mm](double a, double b) {
    return std::abs(a - wished_mm) < std::abs(b - wished_mm);
  });
  return all;
}

/// Begin of the i-th of several breaks, wished for: left end, right end, then spread between.
double wished_mm(int i, int count, int width_mm, double length_mm) {
  const double last_mm = width_mm - length_mm;
  if (i < 2) {
    return i == 0 ? 0.0 : last_mm;
  }
  return last_mm * (i - 1) / (count - 1);
}

std::string no_place(const BreaksWanted& wanted) {
  return "No room for " + std::to_string(wanted.count) + " breaks of " +
         fitting::whole_mm_text(wanted.length_m) + " between the fixings along the " +
         (wanted.member == Member::bottom ? "bottom" : "top") + ": fewer or shorter ones.";
}

/// The breaks of one edge; none when they do not all find a place.
std::vector<Stretch> placed_breaks(const std::vector<Stretch>& stretches, const BreaksWanted& wanted,
                                   const std::vector<Stretch>& before, int width_mm) {
  std::vector<Stretch> taken = before;
  const double length_mm = wanted.length_m * 1e3;
  for (int i = 0; i < wanted.count; ++i) {
    const auto places = candidates_mm(stretches, wished_mm(i, wanted.count, width_mm, length_mm), length_mm);
    const auto place = std::find_if(places.begin(), places.end(), [&](double from_mm) {
      return is_free(stretches, taken, from_mm, length_mm);
    });
    if (place == places.end()) {
      return {};
    }
    taken.push_back({*place, *place + length_mm});
  }
  return {taken.begin() + static_cast<std::ptrdiff_t>(before.size()), taken.end()};
}

std::vector<Stretch> breaks_along(const TapePlan& plan, Member member) {
  std::vector<Stretch> taken;
  for (const auto& one : plan.breaks) {
    if (one.member == member) {
      taken.push_back({one.from_mm, one.to_mm});
    }
  }
  std::sort(taken.begin(), taken.end(),
            [](const Stretch& a, const Stretch& b) { return a.from_mm < b.from_mm; });
  return taken;
}

TapePlan with_pieces(TapePlan plan, Member member, double from_mm, double to_mm) {
  const auto add = [&plan, member](double start_mm, double end_mm) {
    plan.pieces.push_back({member, start_mm, end_mm - start_mm});
    plan.length_m += (end_mm - start_mm) * 1e-3;
  };
  double start_mm = from_mm;
  for (const auto& gap : breaks_along(plan, member)) {
    add(start_mm, gap.from_mm);
    start_mm = gap.to_mm;
  }
  add(start_mm, to_mm);
  return plan;
}

}  // namespace

TapePlan plan_tape(const TapePlanInput& input) {
  validate(input);
  const auto stretches = free_stretches(input);
  TapePlan plan;
  for (const auto& wanted : input.breaks) {
    const auto placed = placed_breaks(stretches, wanted, breaks_along(plan, wanted.member), input.width_mm);
    if (placed.empty()) {
      plan.refused.push_back(no_place(wanted));
    }
    for (const auto& one : placed) {
      plan.breaks.push_back({wanted.member, one.from_mm, one.to_mm});
    }
  }
  // top and bottom run through, the sides stand between them
  const double side_to_mm = input.height_mm - input.tape_width_mm;
  plan = with_pieces(std::move(plan), Member::left, input.tape_width_mm, side_to_mm);
  plan = with_pieces(std::move(plan), Member::top, 0.0, input.width_mm);
  plan = with_pieces(std::move(plan), Member::right, input.tape_width_mm, side_to_mm);
  return with_pieces(std::move(plan), Member::bottom, 0.0, input.width_mm);
}

}  // namespace dewgap
