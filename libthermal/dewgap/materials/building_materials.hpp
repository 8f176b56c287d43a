// Conductivity of what a window is bedded in and built into. The numbers live in materials.csv, each with
// source and status; errors in it as in materials.hpp.
#pragma once

#include <string_view>

#include "dewgap/materials/materials.hpp"

namespace dewgap {

/// insulating_panel: that of ISO 10077-2 Annex C, which stands in the glass's place where Uf is worked out.
enum class BuildingKind { putty, gypsum_plaster, mortar, brick, sedimentary_stone, epdm, insulating_panel };

PropertyRange conductivity_W_mK(BuildingKind kind);

/// The material's name for people; also its key in materials.csv.
std::string_view name_of(BuildingKind kind);

}  // namespace dewgap
