// How hot a sheet gets in full sun behind the old window.
#pragma once

#include <optional>

#include "dewgap/fitting/sun_heat.hpp"
#include "dewgap/materials/materials.hpp"

namespace dewgap {

enum class SunBlind {
  none,
  room_side,  ///< a dark blind drawn close to the sheet
  in_gap,     ///< a dark blind left between window and sheet
};

/// A still summer's day. Our convention, no source, but where a line says otherwise: each can be changed.
struct SunOnSheetInput {
  SheetKind sheet = SheetKind::acrylic;
  SheetGrade grade = SheetGrade::not_known;
  std::optional<double> sheet_thickness_m;  ///< 1e-5 to 0.05; absent: the kind's usual
  double glass_thickness_m = 0.004;         ///< 0.0015 to 0.025
  double gap_m = 0.030;                     ///< 0.002 to 0.25
  double height_m = 1.2;                    ///< 0.1 to 5
  double irradiance_W_m2 = 900.0;           ///< on the window's plane, 0 to 1200; 800 to 1000 in full sun
  double outdoor_C = 30.0;                  ///< -30 to 50
  double room_C = 28.0;                     ///< 0 to 50
  double outdoor_convection_W_m2K = 8.0;    ///< a light air outdoors; 1 to 50
  double blind_absorptance = 0.9;           ///< dark; 0 to 1
  double blind_to_sheet_m = 0.030;          ///< 0.003 to 0.25
  SunBlind blind = SunBlind::none;
};

struct SunOnSheet {
  double sheet_C = 0.0;  ///< hotter face of the sheet
  double room_face_C = 0.0;
  double absorbed_W_m2 = 0.0;  ///< by the sheet itself
  double blind_C = 0.0;        ///< hotter face of the blind; 0 without one
  SunFinding finding;
};

/// Steady temperatures of glass, sheet and blind by solve_stack, with the sun that each absorbs. Sun: glass
/// and sheet pass and keep their material's best shares, the sheet's scaled to its thickness (Bouguer's law);
/// of what reaches a blind, blind_absorptance stays in it; what it throws back is taken as lost (at 0.9 under
/// 2 K). Both gaps are closed, the sky is as warm as the air and the frame's heat is left out: on the warm
/// side. Throws InvalidInput outside the ranges, CalculationFailed when the balance does not settle.
SunOnSheet sun_on_sheet(const SunOnSheetInput& input);

/// The three blinds in turn, the hottest first: the case to warn of.
SunOnSheet hottest_sun_on_sheet(SunOnSheetInput input);

}  // namespace dewgap
