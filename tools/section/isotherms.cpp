#include "tools/section/isotherms.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>
#include <limits>
#include <optional>
#include <unordered_map>

namespace dewgap::tools {
namespace {

/// A side of a cell, the same for both cells beside it.
using SideId = std::uint64_t;

struct Piece {
  SideId from;
  SideId to;
};

class Marching {
 public:
  Marching(const TemperatureField& field, double level_C) : field_(field), level_C_(level_C) {}

  std::vector<SectionLine> lines() {
    for (std::size_t row = 0; row + 1 < field_.y_m.size(); ++row)
      for (std::size_t column = 0; column + 1 < field_.x_m.size(); ++column)
        if (field_.item_of_cell(column, row)) add_cell(column, row);
    for (std::size_t i = 0; i < pieces_.size(); ++i) {
      pieces_at_[pieces_[i].from].push_back(i);
      pieces_at_[pieces_[i].to].push_back(i);
    }
    used_.assign(pieces_.size(), false);
    std::vector<SectionLine> lines;
    // Open lines from an end first; what is then left is closed.
    for (const bool closed : {false, true})
      for (std::size_t i = 0; i < pieces_.size(); ++i)
        for (const SideId start : {pieces_[i].from, pieces_[i].to})
          if (!used_[i] && (closed || pieces_at_[start].size() == 1)) lines.push_back(walk(i, start));
    return lines;
  }

 private:
  SideId along_x(std::size_t column, std::size_t row) const { return 2 * (row * field_.x_m.size() + column); }
  SideId along_y(std::size_t column, std::size_t row) const { return along_x(column, row) + 1; }
  bool above(double temperature_C) const { return temperature_C >= level_C_; }

  void add_cell(std::size_t column, std::size_t row) {
    const std::array corner{field_.at_crossing_C(column, row), field_.at_crossing_C(column + 1, row),
                            field_.at_crossing_C(column + 1, row + 1), field_.at_crossing_C(column, row + 1)};
    const std::array side{along_x(column, row), along_y(column + 1, row), along_x(column, row + 1),
                          along_y(column, row)};  // south, east, north, west
    std::vector<SideId> crossed;
    for (std::size_t i = 0; i < 4; ++i)
      if (above(corner[i]) != above(corner[(i + 1) % 4])) crossed.push_back(side[i]);
    if (crossed.size() == 2) pieces_.push_back({crossed[0], crossed[1]});
    if (crossed.size() == 4) add_saddle(corner, side);
  }

  /// All four sides are crossed. Where the value at the saddle lies on the side of the south-west corner, the
  /// other two corners are cut off.
  void add_saddle(const std::array<double, 4>& corner, const std::array<SideId, 4>& side) {
    const double twist = corner[0] + corner[2] - corner[1] - corner[3];
    const double middle = (corner[0] * corner[2] - corner[1] * corner[3]) / twist;
    if (above(middle) == above(corner[0])) {
      pieces_.push_back({side[0], side[1]});
      pieces_.push_back({side[2], side[3]});
    } else {
      pieces_.push_back({side[3], side[0]});
      pieces_.push_back({side[1], side[2]});
    }
  }

  SectionPoint point_on(SideId side) const {
    const std::size_t crossing = side / 2;
    const std::size_t column = crossing % field_.x_m.size();
    const std::size_t row = crossing / field_.x_m.size();
    const bool upright = side % 2 == 1;
    const double one = field_.at_crossing_C(column, row);
    const double other =
        upright ? field_.at_crossing_C(column, row + 1) : field_.at_crossing_C(column + 1, row);
    const double share = (level_C_ - one) / (other - one);
    if (upright) return {field_.x_m[column], std::lerp(field_.y_m[row], field_.y_m[row + 1], share)};
    return {std::lerp(field_.x_m[column], field_.x_m[column + 1], share), field_.y_m[row]};
  }

  SectionLine walk(std::size_t piece, SideId start) {
    SectionLine line{point_on(start)};
    SideId at = start;
    std::optional<std::size_t> next = piece;
    while (next) {
      used_[*next] = true;
      at = pieces_[*next].from == at ? pieces_[*next].to : pieces_[*next].from;
      line.push_back(point_on(at));
      const auto& here = pieces_at_[at];
      const auto free = std::find_if(here.begin(), here.end(), [&](std::size_t i) { return !used_[i]; });
      next = free == here.end() ? std::nullopt : std::optional(*free);
    }
    return line;
  }

  const TemperatureField& field_;
  double level_C_;
  std::vector<Piece> pieces_;
  std::unordered_map<SideId, std::vector<std::size_t>> pieces_at_;
  std::vector<bool> used_;
};

/// Shares of the way from one point to the other at which it enters and leaves the rectangle.
std::optional<std::pair<double, double>> within(SectionPoint from, SectionPoint to, SectionPoint low,
                                                SectionPoint high) {
  double enter = 0.0, leave = 1.0;
  const auto cut = [&](double start, double step, double least, double most) {
    if (step == 0.0) {
      if (start < least || start > most) leave = -1.0;
      return;
    }
    const double one = (least - start) / step, other = (most - start) / step;
    enter = std::max(enter, std::min(one, other));
    leave = std::min(leave, std::max(one, other));
  };
  cut(from.x_m, to.x_m - from.x_m, low.x_m, high.x_m);
  cut(from.y_m, to.y_m - from.y_m, low.y_m, high.y_m);
  if (leave <= enter) return std::nullopt;
  return std::pair(enter, leave);
}

double distance_m(SectionPoint point, SectionPoint from, SectionPoint to) {
  const double along_x = to.x_m - from.x_m, along_y = to.y_m - from.y_m;
  const double square = along_x * along_x + along_y * along_y;
  double share = 0.0;
  if (square > 0.0)
    share =
        std::clamp(((point.x_m - from.x_m) * along_x + (point.y_m - from.y_m) * along_y) / square, 0.0, 1.0);
  return std::hypot(point.x_m - from.x_m - share * along_x, point.y_m - from.y_m - share * along_y);
}

}  // namespace

std::vector<SectionLine> isotherm(const TemperatureField& field, double level_C) {
  return Marching(field, level_C).lines();
}

std::vector<SectionLine> clipped(const SectionLine& line, SectionPoint low, SectionPoint high) {
  std::vector<SectionLine> parts;
  bool open = false;
  for (std::size_t i = 0; i + 1 < line.size(); ++i) {
    const auto shares = within(line[i], line[i + 1], low, high);
    if (!shares) {
      open = false;
      continue;
    }
    const auto at = [&](double share) {
      return SectionPoint{std::lerp(line[i].x_m, line[i + 1].x_m, share),
                          std::lerp(line[i].y_m, line[i + 1].y_m, share)};
    };
    if (!open || shares->first > 0.0) parts.push_back({at(shares->first)});
    parts.back().push_back(at(shares->second));
    open = shares->second >= 1.0;
  }
  return parts;
}

SectionLine simplified(const SectionLine& line, double tolerance_m) {
  if (line.size() < 3) return line;
  std::vector<bool> kept(line.size(), false);
  kept.front() = kept.back() = true;
  std::vector<std::pair<std::size_t, std::size_t>> spans{{0, line.size() - 1}};
  while (!spans.empty()) {
    const auto [first, last] = spans.back();
    spans.pop_back();
    std::size_t farthest = first;
    double most_m = tolerance_m;
    for (std::size_t i = first + 1; i < last; ++i)
      if (const double away_m = distance_m(line[i], line[first], line[last]); away_m > most_m) {
        most_m = away_m;
        farthest = i;
      }
    if (farthest == first) continue;
    kept[farthest] = true;
    spans.emplace_back(first, farthest);
    spans.emplace_back(farthest, last);
  }
  SectionLine simple;
  for (std::size_t i = 0; i < line.size(); ++i)
    if (kept[i]) simple.push_back(line[i]);
  return simple;
}

IsothermLevels isotherm_levels(double low_C, double high_C, int fewest) {
  IsothermLevels levels;
  if (!(high_C - low_C > 1e-3)) return levels;
  double step_K = std::pow(10.0, std::floor(std::log10(high_C - low_C)) + 1.0);
  for (std::size_t i = 0; (high_C - low_C) / step_K < fewest; ++i)
    step_K *= std::array{0.5, 0.4, 0.5}[i % 3];  // 10, 5, 2, 1
  levels.step_K = step_K;
  const double first = std::floor(low_C / step_K) + 1.0;
  for (double count = first; count * step_K < high_C - 1e-9; ++count) levels.at_C.push_back(count * step_K);
  return levels;
}

}  // namespace dewgap::tools
