// Whether a sheet fits where it is meant to go: what stands out, what has to open, what hangs in front, what
// holds a screw, what is out of square.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "dewgap/fitting/opening_shape.hpp"
#include "dewgap/fitting/practice.hpp"
#include "dewgap/fitting/sheet_seat.hpp"
#include "dewgap/materials/materials.hpp"

namespace dewgap {

enum class FitKind {
  catch_stands_out,
  handle_stands_out,
  stay_stands_out,
  opens,        ///< whether the window still opens with the sheet on
  sashes_pass,  ///< whether sheets on the two sashes of a sliding window pass each other
  two_planes,   ///< upper and lower sash stand in different planes: two gaps
  gap_depth,    ///< room between glass and sheet
  shutter,
  blind,
  fixing_face,
  timber_depth,
  out_of_square,  ///< diagonals
  taper,          ///< top against bottom, left against right
  bow,            ///< middle against ends
  diagonals,      ///< cannot be true
};

/// blocks: not like this; mind: fits, with something to see to; look: not known, go and look; fine.
enum class FitSeverity { blocks, mind, look, fine };

std::string_view name_of(FitKind kind);          ///< "catch", "opening", ... for people
std::string_view name_of(FitSeverity severity);  ///< "blocks", "mind", "look at this", "fine"

struct FitFinding {
  FitKind kind = FitKind::opens;
  FitSeverity severity = FitSeverity::look;
  std::string sentence;             ///< one, plain, at most 110 characters
  std::optional<double> figure_mm;  ///< behind it; none where nothing was measured
};

enum class OpeningWay { does_not_open, slides_up_and_down, slides_sideways, swings_inwards, swings_outwards };

/// A shutter or blind: whether there is one, and its nearest point (in use and on its way) from the fixing
/// face, m, -0.2 to 2.
struct HungPart {
  enum class There { no, yes };
  std::optional<There> there;
  std::optional<double> clearance_m;
};

/// std::nullopt is 'not known': it gives a finding to look at, never silence.
struct FitCheckInput {
  MeasuredOpening opening;
  SheetSeat seat = SheetSeat::overlapping;
  SheetKind sheet = SheetKind::acrylic;
  FrameKind frame = FrameKind::softwood;
  std::optional<OpeningWay> opening_way;
  /// How far each stands past the fixing face, m, 0 to 0.3; 0: there is none, or it does not stand out.
  std::optional<double> catch_stands_out_m;
  std::optional<double> handle_stands_out_m;
  std::optional<double> stay_stands_out_m;
  double sheet_thickness_m = practice::sheet_thickness_m;  ///< 1e-5 to 0.05
  double tape_thickness_m = 0.006;                         ///< as squeezed, 0.0001 to 0.05
  /// Back face of the sheet past the fixing face, -0.3 to 0.3; absent: the tape's thickness. A batten's
  /// depth adds to it; in a reveal it is negative where the sheet stands behind the face.
  std::optional<double> sheet_back_m;
  double sheet_flex_m = 0.0;                   ///< towards the window under a gust, 0 to 0.3
  std::vector<double> glass_to_fixing_face_m;  ///< one a sash, 0 to 0.5: lower (or first) sash first
  std::optional<double> between_sashes_m;      ///< free depth from one sliding sash to the other, 0 to 0.2
  HungPart shutter;
  HungPart blind;
  std::optional<double> fixing_face_m;  ///< 0 to 0.5
  std::optional<double> screw_depth_m;  ///< 0 to 0.3
  double overlap_m = practice::overlap_m;
};

/// Findings by severity, then in the order of FitKind. One for every check that the window's kind calls for;
/// an unknown gives `look`. figure_mm is the clearance left for what stands out or hangs (negative: it
/// fouls), else what was measured. Throws InvalidInput for a number outside its range.
///
/// Clearances asked for, our convention, no source: 3 mm between a sheet (as flexed) and a part that stands
/// out, 5 mm to a shutter or blind, 2 mm between sheets that pass each other, 6 mm of gap. The bow of glass
/// and frame is left out.
std::vector<FitFinding> fit_check(const FitCheckInput& input);

/// The worst of them; `fine` when there are none.
FitSeverity worst_of(const std::vector<FitFinding>& findings);

}  // namespace dewgap
