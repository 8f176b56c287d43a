#include "dewgap/materials/materials.hpp"

#include "dewgap/errors.hpp"
#include "dewgap/materials/materials_kernel.hpp"
#include "embedded/room_materials.hpp"

namespace dewgap {
namespace {

using materials_kernel::PropertyTable;

const PropertyTable& property_table() {
  static const PropertyTable table(embedded::materials_csv);
  return table;
}

SheetProperties sheet_of(std::string_view kind) {
  const PropertyTable& table = property_table();
  return {.conductivity_W_mK = table.range(kind, "conductivity", "W/(m K)"),
          .density_kg_m3 = table.range(kind, "density", "kg/m3"),
          .emissivity = table.range(kind, "emissivity", "-"),
          .long_wave_transmittance = table.range(kind, "long-wave transmittance", "-"),
          .solar_transmittance = table.range(kind, "solar transmittance", "-"),
          .solar_absorptance = table.range(kind, "solar absorptance", "-"),
          .vapour_resistance_factor = table.range(kind, "vapour resistance factor", "-"),
          .expansion_per_K = table.range(kind, "expansion", "1/K"),
          .young_modulus_Pa = table.range(kind, "Young modulus", "Pa"),
          .poisson_ratio = table.range(kind, "Poisson ratio", "-").best,
          .usual_thickness_m = table.range(kind, "usual thickness", "m").best,
          // The lowest limit that the sources state.
          .lasting_temperature_C = table.range(kind, "lasting temperature", "C").low};
}

}  // namespace

SheetProperties sheet_properties(SheetKind kind) {
  return sheet_of(name_of(kind));
}

SheetProperties glass_properties(GlassKind kind) {
  switch (kind) {
    case GlassKind::soda_lime:
      return sheet_of(name_of(SheetKind::glass));
  }
  throw InvalidInput("kind of glass", "is not a known one");
}

TapeProperties tape_properties(TapeKind kind) {
  const PropertyTable& table = property_table();
  return {.conductivity_W_mK = table.range(name_of(kind), "conductivity", "W/(m K)"),
          .vapour_resistance_factor = table.range(name_of(kind), "vapour resistance factor", "-")};
}

FrameProperties frame_properties(FrameKind kind) {
  return {.conductivity_W_mK = property_table().range(name_of(kind), "conductivity", "W/(m K)")};
}

PropertyRange moisture_swelling(SheetKind kind) {
  return property_table().range(name_of(kind), "moisture swelling", "-");
}

PropertyRange design_stress_Pa(SheetKind kind) {
  return property_table().range(name_of(kind), "design stress", "Pa");
}

PropertyRange lasting_temperature_range_C(SheetKind kind) {
  return property_table().range(name_of(kind), "lasting temperature", "C");
}

std::string_view name_of(SheetKind kind) {
  switch (kind) {
    case SheetKind::acrylic:
      return "acrylic";
    case SheetKind::polycarbonate:
      return "polycarbonate";
    case SheetKind::petg:
      return "PETG";
    case SheetKind::glass:
      return "glass";
    case SheetKind::pet_film:
      return "PET film";
  }
  throw InvalidInput("kind of sheet", "is not a known one");
}

std::string_view name_of(TapeKind kind) {
  switch (kind) {
    case TapeKind::closed_cell_foam:
      return "closed-cell foam";
    case TapeKind::open_cell_foam:
      return "open-cell foam";
    case TapeKind::magnetic:
      return "magnetic strip";
  }
  throw InvalidInput("kind of tape", "is not a known one");
}

std::string_view name_of(FrameKind kind) {
  switch (kind) {
    case FrameKind::softwood:
      return "softwood";
    case FrameKind::hardwood:
      return "hardwood";
    case FrameKind::pvc_u:
      return "PVC-U";
    case FrameKind::steel:
      return "steel";
    case FrameKind::aluminium:
      return "aluminium";
  }
  throw InvalidInput("kind of frame", "is not a known one");
}

}  // namespace dewgap
