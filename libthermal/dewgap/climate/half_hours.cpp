#include "dewgap/climate/half_hours.hpp"

#include <limits>

#include "dewgap/errors.hpp"

namespace dewgap {
namespace {

constexpr std::size_t most_parts = 3600;

/// How far a part's mean leans to the hour before and the hour after.
struct Lean {
  double before;
  double after;
};

// The course at u hours from the hour's middle leans |u| to that neighbour. Its mean over begin..end is the
// integral of max(0, u), half of max(0, u)^2, over the length.
Lean lean_of_part(double begin_h, double end_h) {
  const auto half_square = [](double u) { return u > 0.0 ? 0.5 * u * u : 0.0; };
  const double length_h = end_h - begin_h;
  return {(half_square(-begin_h) - half_square(-end_h)) / length_h,
          (half_square(end_h) - half_square(begin_h)) / length_h};
}

std::vector<Lean> leans(std::size_t parts) {
  const auto edge_h = [&](std::size_t part) {
    return static_cast<double>(part) / static_cast<double>(parts) - 0.5;
  };
  std::vector<Lean> all;
  all.reserve(parts);
  for (std::size_t part = 0; part < parts; ++part) {
    all.push_back(lean_of_part(edge_h(part), edge_h(part + 1)));
  }
  return all;
}

}  // namespace

std::vector<double> interpolated(std::span<const double> hourly_means, std::size_t parts) {
  require_in_range(static_cast<double>(parts), {1.0, static_cast<double>(most_parts)}, "parts of an hour",
                   "");
  const std::size_t hours = hourly_means.size();
  if (hours == 0) {
    throw InvalidInput("hourly means", "there are none");
  }
  constexpr double largest = std::numeric_limits<double>::max();
  for (const double mean : hourly_means) {
    require_in_range(mean, {-largest, largest}, "hourly mean", "");
  }
  const auto part_leans = leans(parts);
  std::vector<double> course;
  course.reserve(hours * parts);
  for (std::size_t hour = 0; hour < hours; ++hour) {
    const double here = hourly_means[hour];
    const double before = hourly_means[hour == 0 ? hours - 1 : hour - 1];
    const double after = hourly_means[hour + 1 == hours ? 0 : hour + 1];
    for (const auto& lean : part_leans) {
      course.push_back((1.0 - lean.before - lean.after) * here + lean.before * before + lean.after * after);
    }
  }
  return course;
}

}  // namespace dewgap
