#include "dewgap/fitting/sheet_size_kernel.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <string_view>

#include "dewgap/errors.hpp"
#include "dewgap/fitting/movement.hpp"
#include "dewgap/fitting/text_kernel.hpp"

namespace dewgap::fitting {
namespace {

constexpr PermittedRange opening_range_m{0.1, 4.0};
constexpr PermittedRange glass_range_m{0.02, 4.0};
constexpr PermittedRange diagonal_range_m{0.1, 6.0};
constexpr double diagonal_tolerance = 0.05;
constexpr int least_cut_mm = 50;
constexpr double least_skew_told_m = 1e-3;  // less is within the reading of a tape measure

/// One direction of the opening.
struct Side {
  std::string_view label;  // "Width"
  std::string_view field;  // of the three measurements
  std::string_view recess_field;
  const std::array<double, 3>& measured_m;
  std::optional<double> recess_m;
  double skew_m;  // lost to an opening out of square
};

struct SideCut {
  int cut_mm = 0;
  double overlap_m = 0.0;
  std::string reason;
};

double mean_of(const std::array<double, 3>& values) {
  return std::accumulate(values.begin(), values.end(), 0.0) / 3.0;
}

/// Sideways shift of the head over the sill, m. Diagonals that are far from those of the mean sides were
/// misread and throw; what is only just impossible is told by the shape.
double shift_from_diagonals_m(const MeasuredOpening& opening) {
  if (!opening.diagonals_m) {
    return 0.0;
  }
  const auto [first_m, second_m] = *opening.diagonals_m;
  require_in_range(first_m, diagonal_range_m, "diagonals_m", "m");
  require_in_range(second_m, diagonal_range_m, "diagonals_m", "m");
  const double width_m = mean_of(opening.widths_m);
  const double height_m = mean_of(opening.heights_m);
  // parallelogram law: d1^2 + d2^2 = 2 (w^2 + h^2)
  const double ratio = std::hypot(first_m, second_m) / (std::sqrt(2.0) * std::hypot(width_m, height_m));
  // triangle inequality for each diagonal with two sides
  const double longest_m = (width_m + height_m) * (1.0 + diagonal_tolerance);
  const double shortest_m = std::abs(width_m - height_m) * (1.0 - diagonal_tolerance);
  const auto [shorter_m, longer_m] = std::minmax(first_m, second_m);
  if (std::abs(ratio - 1.0) > diagonal_tolerance || longer_m > longest_m || shorter_m < shortest_m) {
    throw InvalidInput("diagonals_m",
                       "no opening of these widths and heights has these diagonals; measure again");
  }
  return opening_shape(opening).shift_m.value_or(0.0);
}

/// Width that a rectangle loses in a trapezium whose head stands to one side: the shift, less what the wider
/// end gives back.
double width_lost_m(const MeasuredOpening& opening, double shift_m) {
  return std::max(0.0, shift_m - 0.5 * std::abs(opening.widths_m[0] - opening.widths_m[2]));
}

bool sized_from_glass(const SheetPlanInput& input) {
  return input.seat == SheetSeat::on_sash || input.seat == SheetSeat::on_panes;
}

SideCut overlapping_cut(const Side& side, const SheetPlanInput& input) {
  const double opening_m = *std::max_element(side.measured_m.begin(), side.measured_m.end());
  const double overlap_m = permitted_overlap_m(input);
  const double wanted_m = opening_m + 2.0 * overlap_m;
  const std::string label(side.label);
  const std::string measured = sized_from_glass(input) ? ": visible glass " : ": largest of three, ";
  SideCut free{
      nearest_mm(wanted_m), overlap_m,
      label + measured + whole_mm_text(opening_m) + ", plus " + whole_mm_text(overlap_m) + " a side."};
  if (!side.recess_m) {
    return free;
  }
  require_in_range(*side.recess_m, {opening_m, 5.0}, side.recess_field, "m");
  // a sheet tight in the recess would bow: leave what it grows by
  const double movement_m = reveal_clearance_m(input.sheet, wanted_m, conditions_of(input));
  const int limit_mm = fitting_mm(*side.recess_m - movement_m);
  if (free.cut_mm <= limit_mm) {
    return free;
  }
  const double left_m = (limit_mm * 1e-3 - opening_m) / 2.0;
  if (left_m <= 0.0) {
    throw InvalidInput(side.recess_field, "leaves no overlap once the sheet has room to move");
  }
  return {limit_mm, left_m,
          label + ": recess " + whole_mm_text(*side.recess_m) + " less " + tenth_mm_text(movement_m) +
              " to move; overlap " + tenth_mm_text(left_m) + " a side."};
}

SideCut inside_cut(const Side& side, const SheetPlanInput& input) {
  const double opening_m = *std::min_element(side.measured_m.begin(), side.measured_m.end());
  const double movement_m = reveal_clearance_m(input.sheet, opening_m, conditions_of(input));
  const int cut_mm = fitting_mm(opening_m - movement_m - side.skew_m);
  if (cut_mm < least_cut_mm) {
    throw InvalidInput(side.field, "leaves no sheet once movement and the skew are taken off");
  }
  const std::string skew = side.skew_m > 0.0 ? ", " + tenth_mm_text(side.skew_m) + " out of square" : "";
  return {cut_mm, 0.0,
          std::string(side.label) + ": smallest of three, " + whole_mm_text(opening_m) + ", less " +
              tenth_mm_text(movement_m) + " to move" + skew + "."};
}

std::vector<std::string> overlap_notes(const SheetPlanInput& input, const CutSize& size) {
  std::vector<std::string> notes;
  const double overlap_m = permitted_overlap_m(input);
  if (input.fixing_face_m && overlap_m == *input.fixing_face_m && overlap_m < input.overlap_m) {
    notes.push_back("Overlap cut to " + whole_mm_text(overlap_m) + ": the face is no wider.");
  } else if (input.seat == SheetSeat::on_panes && overlap_m < input.overlap_m) {
    notes.push_back("Two sheets share a glazing bar: " + whole_mm_text(overlap_m) +
                    " overlap suits bars from 18 mm, our convention.");
  }
  if (size.out_of_square_m > least_skew_told_m) {
    notes.push_back("Opening is " + tenth_mm_text(size.out_of_square_m) + " out of square: overlap " +
                    tenth_mm_text(std::max(0.0, size.corner_overlap_m)) + " at two corners.");
  }
  if (size.corner_overlap_m < input.tape_width_m) {
    notes.push_back("Tape is " + whole_mm_text(input.tape_width_m) +
                    " wide, more than the overlap: use narrower tape.");
  }
  return notes;
}

}  // namespace

MovementConditions conditions_of(const SheetPlanInput& input) {
  return {input.temperature_range_K, input.relative_humidity_range};
}

double permitted_overlap_m(const SheetPlanInput& input) {
  const double wanted_m = input.seat == SheetSeat::on_panes
                              ? std::min(input.overlap_m, practice::bar_overlap_m)
                              : input.overlap_m;
  return std::min(wanted_m, input.fixing_face_m.value_or(wanted_m));
}

CutSize cut_size(const SheetPlanInput& input) {
  const auto& opening = input.opening;
  const auto range_m = sized_from_glass(input) ? glass_range_m : opening_range_m;
  for (std::size_t i = 0; i < 3; ++i) {
    require_in_range(opening.widths_m[i], range_m, "widths_m", "m");
    require_in_range(opening.heights_m[i], range_m, "heights_m", "m");
  }
  const double skew_m = shift_from_diagonals_m(opening);
  const Side width{"Width",
                   "widths_m",
                   "largest_width_m",
                   opening.widths_m,
                   input.largest_width_m,
                   width_lost_m(opening, skew_m)};
  const Side height{"Height", "heights_m", "largest_height_m", opening.heights_m, input.largest_height_m,
                    0.0};
  const bool overlapping = input.seat != SheetSeat::inside_reveal;
  const SideCut across = overlapping ? overlapping_cut(width, input) : inside_cut(width, input);
  const SideCut up = overlapping ? overlapping_cut(height, input) : inside_cut(height, input);
  CutSize size{.width_mm = across.cut_mm,
               .height_mm = up.cut_mm,
               .least_overlap_m = std::min(across.overlap_m, up.overlap_m),
               .out_of_square_m = skew_m,
               .notes = {across.reason, up.reason}};
  if (overlapping) {
    size.corner_overlap_m = size.least_overlap_m - (skew_m > least_skew_told_m ? skew_m / 2.0 : 0.0);
    for (auto& note : overlap_notes(input, size)) {
      size.notes.push_back(std::move(note));
    }
  }
  return size;
}

}  // namespace dewgap::fitting
