#include "tools/section/materials.hpp"

#include <algorithm>
#include <array>
#include <utility>

#include "dewgap/materials/building_materials.hpp"
#include "dewgap/materials/materials.hpp"
#include "tools/job/spelling.hpp"

namespace dewgap::tools {
namespace {

using Carried = std::vector<std::pair<std::string, double>>;

Carried all_carried() {
  Carried all;
  for (const auto kind :
       {SheetKind::glass, SheetKind::acrylic, SheetKind::polycarbonate, SheetKind::petg, SheetKind::pet_film})
    all.emplace_back(name_of(kind), sheet_properties(kind).conductivity_W_mK.best);
  for (const auto kind : {TapeKind::closed_cell_foam, TapeKind::open_cell_foam, TapeKind::magnetic})
    all.emplace_back(name_of(kind), tape_properties(kind).conductivity_W_mK.best);
  for (const auto kind :
       {FrameKind::softwood, FrameKind::hardwood, FrameKind::pvc_u, FrameKind::steel, FrameKind::aluminium})
    all.emplace_back(name_of(kind), frame_properties(kind).conductivity_W_mK.best);
  for (const auto kind :
       {BuildingKind::putty, BuildingKind::gypsum_plaster, BuildingKind::mortar, BuildingKind::brick,
        BuildingKind::sedimentary_stone, BuildingKind::epdm, BuildingKind::insulating_panel})
    all.emplace_back(name_of(kind), conductivity_W_mK(kind).best);
  return all;
}

const Carried& carried() {
  static const auto all = all_carried();
  return all;
}

/// The first word that a name holds decides: "foam tape" before "foam", "glass wool" before "glass".
constexpr std::array<std::pair<std::string_view, Material>, 45> kinds{{
    {"cavity", Material::air_space},
    {"air", Material::air_space},
    {"wool", Material::insulation},
    {"insulat", Material::insulation},
    {"polystyrene", Material::insulation},
    {"cork", Material::insulation},
    {"tape", Material::foam_tape},
    {"foam", Material::foam_tape},
    {"rubber", Material::rubber},
    {"epdm", Material::rubber},
    {"seal", Material::rubber},
    {"putty", Material::putty},
    {"mastic", Material::putty},
    {"silicone", Material::putty},
    {"acrylic", Material::acrylic},
    {"polycarbonate", Material::acrylic},
    {"petg", Material::acrylic},
    {"film", Material::acrylic},
    {"glass", Material::glass},
    {"wood", Material::timber},
    {"timber", Material::timber},
    {"oak", Material::timber},
    {"pine", Material::timber},
    {"spruce", Material::timber},
    {"larch", Material::timber},
    {"plaster", Material::plaster},
    {"gypsum", Material::plaster},
    {"render", Material::plaster},
    {"mortar", Material::mortar},
    {"concrete", Material::mortar},
    {"screed", Material::mortar},
    {"brick", Material::masonry},
    {"block", Material::masonry},
    {"masonry", Material::masonry},
    {"stone", Material::stone},
    {"granite", Material::stone},
    {"steel", Material::metal},
    {"alumin", Material::metal},
    {"iron", Material::metal},
    {"lead", Material::metal},
    {"brass", Material::metal},
    {"metal", Material::metal},
    {"zinc", Material::metal},
    {"pvc", Material::plastic},
    {"plastic", Material::plastic},
}};

constexpr std::array spare{Material::other_1, Material::other_2, Material::other_3, Material::other_4};

}  // namespace

std::vector<std::string> carried_materials() {
  std::vector<std::string> names;
  for (const auto& [name, conductivity] : carried()) names.push_back(name);
  return names;
}

std::optional<double> carried_conductivity_W_mK(std::string_view name) {
  for (const auto& [one, conductivity] : carried())
    if (one == name) return conductivity;
  return std::nullopt;
}

Material HatchChoice::hatch_of(const std::string& material) {
  if (const auto at = chosen_.find(material); at != chosen_.end()) return at->second;
  const auto letters = in_small_letters(material);
  const auto kind = std::find_if(kinds.begin(), kinds.end(), [&](const auto& one) {
    return letters.find(one.first) != std::string::npos;
  });
  const auto taken = [&](Material hatch) {
    return std::any_of(chosen_.begin(), chosen_.end(), [&](const auto& one) { return one.second == hatch; });
  };
  const bool usual = kind != kinds.end() && (kind->second == Material::air_space || !taken(kind->second));
  const auto hatch = usual ? kind->second : spare[spare_used_++ % spare.size()];
  chosen_[material] = hatch;
  return hatch;
}

}  // namespace dewgap::tools
