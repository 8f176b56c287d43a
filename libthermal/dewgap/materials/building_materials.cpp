#include "dewgap/materials/building_materials.hpp"

#include "dewgap/errors.hpp"
#include "dewgap/materials/materials_kernel.hpp"
#include "embedded/room_materials.hpp"

namespace dewgap {

PropertyRange conductivity_W_mK(BuildingKind kind) {
  static const materials_kernel::PropertyTable table(embedded::materials_csv);
  return table.range(name_of(kind), "conductivity", "W/(m K)");
}

std::string_view name_of(BuildingKind kind) {
  switch (kind) {
    case BuildingKind::putty:
      return "putty";
    case BuildingKind::gypsum_plaster:
      return "gypsum plaster";
    case BuildingKind::mortar:
      return "mortar";
    case BuildingKind::brick:
      return "brick";
    case BuildingKind::sedimentary_stone:
      return "sedimentary stone";
    case BuildingKind::epdm:
      return "EPDM";
    case BuildingKind::insulating_panel:
      return "insulating panel";
  }
  throw InvalidInput("kind of building material", "is not a known one");
}

}  // namespace dewgap
