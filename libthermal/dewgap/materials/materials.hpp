// Properties of glass, sheets, films, tapes and frames. The numbers live in materials.csv, each with source
// and status. A row that is missing, lacks a number or has low, best and high out of order throws
// InvalidInput; so does a kind that is not in its enumeration. The high ends of transmittance and absorptance
// (solar), and of transmittance and emissivity (long-wave), add up to less than 1.
#pragma once

#include <string_view>

#include "dewgap/quantity.hpp"

namespace dewgap {

/// A property with the range that its sources span: best is the default, low and high bound the prior.
struct PropertyRange {
  double low = 0.0;
  double best = 0.0;
  double high = 0.0;
};

enum class GlassKind { soda_lime };
enum class SheetKind { acrylic, polycarbonate, petg, glass, pet_film };
enum class TapeKind { closed_cell_foam, open_cell_foam, magnetic };
enum class FrameKind { softwood, hardwood, pvc_u, steel, aluminium };
constexpr bool is_timber(FrameKind frame) {
  return frame == FrameKind::softwood || frame == FrameKind::hardwood;
}

/// A pane or sheet material.
struct SheetProperties {
  PropertyRange conductivity_W_mK;
  PropertyRange density_kg_m3;
  PropertyRange emissivity;                ///< hemispherical, long-wave
  PropertyRange long_wave_transmittance;   ///< at the usual thickness of the kind
  PropertyRange solar_transmittance;       ///< at the usual thickness, normal incidence
  PropertyRange solar_absorptance;         ///< same
  PropertyRange vapour_resistance_factor;  ///< mu
  PropertyRange expansion_per_K;
  PropertyRange young_modulus_Pa;
  double poisson_ratio = 0.0;          ///< best value
  double usual_thickness_m = 0.0;      ///< best value
  double lasting_temperature_C = 0.0;  ///< lowest limit that its sources state
};

struct TapeProperties {
  PropertyRange conductivity_W_mK;
  PropertyRange vapour_resistance_factor;
};

struct FrameProperties {
  PropertyRange conductivity_W_mK;
};

SheetProperties sheet_properties(SheetKind kind);
SheetProperties glass_properties(GlassKind kind = GlassKind::soda_lime);
TapeProperties tape_properties(TapeKind kind);
FrameProperties frame_properties(FrameKind kind);

/// Swelling of a sheet from dry to saturated, a strain; taken as linear in relative humidity between them.
PropertyRange moisture_swelling(SheetKind kind);
/// Stress that a sheet is designed for under gusts, Pa: below crazing for plastics, low for annealed glass.
PropertyRange design_stress_Pa(SheetKind kind);
/// Temperature that a sheet bears for good, C: the whole range behind lasting_temperature_C.
PropertyRange lasting_temperature_range_C(SheetKind kind);

/// The material's name for people; also its key in materials.csv.
std::string_view name_of(SheetKind kind);
std::string_view name_of(TapeKind kind);
std::string_view name_of(FrameKind kind);

}  // namespace dewgap
