// What holds the sheet, and how square the opening is.
#include <algorithm>
#include <cmath>
#include <string>

#include "dewgap/fitting/fit_findings_kernel.hpp"
#include "dewgap/fitting/text_kernel.hpp"

namespace dewgap::fitting {
namespace {

constexpr double told_m = 0.003;  // less is within the reading of a tape measure and the trade's care
constexpr double least_bearing_m = 0.010;  // of the sheet on its face
constexpr double short_screw_m = 0.022;

bool on_a_face(SheetSeat seat) {
  return seat == SheetSeat::overlapping || seat == SheetSeat::on_sash;
}

bool screwed(const FitCheckInput& input) {
  return on_a_face(input.seat) && is_timber(input.frame) && input.sheet != SheetKind::pet_film;
}

FitFinding check_face(const FitCheckInput& input) {
  const auto say = [&](FitSeverity severity, const std::string& sentence) {
    return FitFinding{FitKind::fixing_face, severity, sentence, *input.fixing_face_m * 1e3};
  };
  if (!input.fixing_face_m) {
    return {
        FitKind::fixing_face, FitSeverity::look, "Measure the width of the face that the sheet sits on.", {}};
  }
  const std::string face = "Face " + whole_mm_text(*input.fixing_face_m);
  const double screw_m = practice::hole_offset_m + practice::screw_inside_timber_m;
  if (!screwed(input)) {
    return *input.fixing_face_m < least_bearing_m ? say(FitSeverity::mind, face + ": narrow even for tape.")
                                                  : say(FitSeverity::fine, face + ": enough for tape.");
  }
  if (*input.fixing_face_m < screw_m) {
    return say(FitSeverity::blocks, face + ": too narrow for clips and for screws; a batten first.");
  }
  if (*input.fixing_face_m < practice::clip_face_m) {
    return say(FitSeverity::mind, face + ", turn clips need 35 mm: screws instead.");
  }
  return say(FitSeverity::fine, face + ": enough for turn clips.");
}

FitFinding check_timber(const FitCheckInput& input) {
  if (!input.screw_depth_m) {
    return {FitKind::timber_depth,
            FitSeverity::look,
            "Measure how deep the timber is where the screws go; ask about weights, cords and cables.",
            {}};
  }
  const std::string depth = "Timber " + whole_mm_text(*input.screw_depth_m) + " deep";
  const double figure_mm = *input.screw_depth_m * 1e3;
  if (*input.screw_depth_m < practice::shallowest_screw_m) {
    return {FitKind::timber_depth, FitSeverity::blocks, depth + ": under 15 mm holds no screw.", figure_mm};
  }
  if (*input.screw_depth_m < short_screw_m) {
    return {FitKind::timber_depth, FitSeverity::mind, depth + ": short screws, drilled with a depth stop.",
            figure_mm};
  }
  return {FitKind::timber_depth, FitSeverity::fine, depth + ": holds a screw.", figure_mm};
}

/// What a difference from a rectangle does to the sheet: takes its overlap, or its size in a reveal.
FitFinding told(const FitCheckInput& input, FitKind kind, double lost_m, const std::string& what) {
  if (lost_m <= told_m) {
    return {kind, FitSeverity::fine, what + ": as good as true.", lost_m * 1e3};
  }
  if (input.seat == SheetSeat::inside_reveal) {
    return {kind, FitSeverity::mind, what + ": the sheet is cut smaller by it, or to a paper pattern.",
            lost_m * 1e3};
  }
  if (kind != FitKind::out_of_square) {
    return {kind, FitSeverity::fine, what + ": the sheet is cut for the larger end.", lost_m * 1e3};
  }
  const double left_m = input.overlap_m - 0.5 * lost_m;
  if (left_m <= 0.0) {
    return {kind, FitSeverity::blocks, what + ": the overlap does not cover it; cut to a paper pattern.",
            lost_m * 1e3};
  }
  return {kind, left_m < least_bearing_m ? FitSeverity::mind : FitSeverity::fine,
          what + ": the overlap is " + whole_mm_text(left_m) + " at its least.", lost_m * 1e3};
}

FitFinding check_square(const FitCheckInput& input, const OpeningShape& shape) {
  if (!shape.shift_m) {
    return {FitKind::out_of_square, FitSeverity::look, "Measure both diagonals: is the opening square?", {}};
  }
  if (!shape.diagonals_possible) {
    return {FitKind::out_of_square, FitSeverity::look, "Not known until the diagonals are right.", {}};
  }
  return told(input, FitKind::out_of_square, *shape.shift_m,
              "The head stands " + tenth_mm_text(*shape.shift_m) + " over to one side");
}

FitFinding check_taper(const FitCheckInput& input, const OpeningShape& shape) {
  const double across_m = std::abs(shape.wider_at_top_m);
  const double up_m = std::abs(shape.taller_at_left_m);
  const std::string what = across_m >= up_m ? "The opening is " + tenth_mm_text(across_m) + " wider at the " +
                                                  (shape.wider_at_top_m > 0.0 ? "top" : "bottom")
                                            : "The opening is " + tenth_mm_text(up_m) + " taller at the " +
                                                  (shape.taller_at_left_m > 0.0 ? "left" : "right");
  return told(input, FitKind::taper, std::max(across_m, up_m), what);
}

FitFinding check_bow(const FitCheckInput& input, const OpeningShape& shape) {
  const double bow_m = std::max(shape.width_bow_m, shape.height_bow_m);
  return told(input, FitKind::bow, bow_m, "A side bows by " + tenth_mm_text(bow_m) + " in its middle");
}

}  // namespace

std::vector<FitFinding> findings_of_hold(const FitCheckInput& input) {
  std::vector<FitFinding> all;
  if (on_a_face(input.seat)) {
    all.push_back(check_face(input));
  }
  if (screwed(input)) {
    all.push_back(check_timber(input));
  }
  return all;
}

std::vector<FitFinding> findings_of_shape(const FitCheckInput& input) {
  const auto shape = opening_shape(input.opening);
  std::vector<FitFinding> all{check_square(input, shape), check_taper(input, shape), check_bow(input, shape)};
  if (!shape.shift_m) {
    return all;
  }
  all.push_back(
      shape.diagonals_possible
          ? FitFinding{FitKind::diagonals, FitSeverity::fine, "The diagonals agree with the sides.", {}}
          : FitFinding{FitKind::diagonals,
                       FitSeverity::blocks,
                       "No opening with these sides has these diagonals: measure again.",
                       {}});
  return all;
}

}  // namespace dewgap::fitting
