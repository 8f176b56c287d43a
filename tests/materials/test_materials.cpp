#include "dewgap/materials/materials.hpp"

#include <gtest/gtest.h>

#include <array>
#include <stdexcept>
#include <string>
#include <vector>

#include "dewgap/errors.hpp"
#include "support/reference.hpp"

namespace dewgap {
namespace {

constexpr std::array sheets{SheetKind::acrylic, SheetKind::polycarbonate, SheetKind::petg, SheetKind::glass,
                            SheetKind::pet_film};
constexpr std::array tapes{TapeKind::closed_cell_foam, TapeKind::open_cell_foam, TapeKind::magnetic};
constexpr std::array frames{FrameKind::softwood, FrameKind::hardwood, FrameKind::pvc_u, FrameKind::steel,
                            FrameKind::aluminium};

PropertyRange sheet_range(const SheetProperties& sheet, const std::string& property) {
  const std::vector<std::pair<std::string, PropertyRange>> ranges{
      {"conductivity_W_mK", sheet.conductivity_W_mK},
      {"density_kg_m3", sheet.density_kg_m3},
      {"emissivity", sheet.emissivity},
      {"long_wave_transmittance", sheet.long_wave_transmittance},
      {"solar_transmittance", sheet.solar_transmittance},
      {"solar_absorptance", sheet.solar_absorptance},
      {"vapour_resistance_factor", sheet.vapour_resistance_factor},
      {"expansion_per_K", sheet.expansion_per_K},
      {"young_modulus_Pa", sheet.young_modulus_Pa},
      {"poisson_ratio", {sheet.poisson_ratio, sheet.poisson_ratio, sheet.poisson_ratio}},
      {"lasting_temperature_C",
       {sheet.lasting_temperature_C, sheet.lasting_temperature_C, sheet.lasting_temperature_C}}};
  for (const auto& [name, range] : ranges) {
    if (name == property) {
      return range;
    }
  }
  throw std::runtime_error("no such property: " + property);
}

PropertyRange range_of(const std::string& kind, const std::string& property) {
  for (const auto sheet : sheets) {
    if (name_of(sheet) == kind) {
      return sheet_range(sheet_properties(sheet), property);
    }
  }
  for (const auto tape : tapes) {
    if (name_of(tape) == kind) {
      const auto properties = tape_properties(tape);
      return property == "conductivity_W_mK" ? properties.conductivity_W_mK
                                             : properties.vapour_resistance_factor;
    }
  }
  for (const auto frame : frames) {
    if (name_of(frame) == kind) {
      return frame_properties(frame).conductivity_W_mK;
    }
  }
  throw std::runtime_error("no such kind: " + kind);
}

TEST(Materials, PrintedValues) {
  test::check_reference("materials/values.csv", [](const test::ReferenceRow& row) {
    const auto range = range_of(row.text("kind"), row.text("property"));
    const std::string& bound = row.text("bound");
    return bound == "low" ? range.low : bound == "high" ? range.high : range.best;
  });
}

void expect_ordered_within(const PropertyRange& range, double min, double max) {
  EXPECT_LE(min, range.low);
  EXPECT_LE(range.low, range.best);
  EXPECT_LE(range.best, range.high);
  EXPECT_LE(range.high, max);
}

TEST(Materials, EverySheetIsPhysical) {
  for (const auto kind : sheets) {
    SCOPED_TRACE(std::string(name_of(kind)));
    const auto sheet = sheet_properties(kind);
    expect_ordered_within(sheet.conductivity_W_mK, 0.1, 1.2);
    expect_ordered_within(sheet.density_kg_m3, 1000.0, 2600.0);
    expect_ordered_within(sheet.emissivity, 0.5, 0.99);
    expect_ordered_within(sheet.long_wave_transmittance, 0.0, 0.3);
    expect_ordered_within(sheet.solar_transmittance, 0.5, 0.95);
    expect_ordered_within(sheet.solar_absorptance, 0.005, 0.3);
    expect_ordered_within(sheet.vapour_resistance_factor, 1e3, 1e10);
    expect_ordered_within(sheet.expansion_per_K, 5e-6, 1e-4);
    expect_ordered_within(sheet.young_modulus_Pa, 1e9, 8e10);
    EXPECT_GT(sheet.poisson_ratio, 0.1);
    EXPECT_LT(sheet.poisson_ratio, 0.5);
    EXPECT_GE(sheet.usual_thickness_m, 5e-5);
    EXPECT_LE(sheet.usual_thickness_m, 6e-3);
    EXPECT_GE(sheet.lasting_temperature_C, 50.0);
  }
}

TEST(Materials, EveryDrawLeavesAReflectance) {
  for (const auto kind : sheets) {
    const auto sheet = sheet_properties(kind);
    EXPECT_LT(sheet.emissivity.high + sheet.long_wave_transmittance.high, 1.0) << name_of(kind);
    EXPECT_LT(sheet.solar_transmittance.high + sheet.solar_absorptance.high, 1.0) << name_of(kind);
  }
}

TEST(Materials, SheetsOfFourMillimetresAreOpaqueToLongWave) {
  for (const auto kind : {SheetKind::acrylic, SheetKind::polycarbonate, SheetKind::petg, SheetKind::glass}) {
    EXPECT_EQ(sheet_properties(kind).long_wave_transmittance.best, 0.0);
    EXPECT_EQ(sheet_properties(kind).usual_thickness_m, 0.004);
  }
  EXPECT_GT(sheet_properties(SheetKind::pet_film).long_wave_transmittance.low, 0.0);
}

TEST(Materials, GlassIsTheSameAsAPaneAndAsASheet) {
  EXPECT_EQ(glass_properties().density_kg_m3.best, sheet_properties(SheetKind::glass).density_kg_m3.best);
  EXPECT_EQ(glass_properties().emissivity.high, sheet_properties(SheetKind::glass).emissivity.high);
}

TEST(Materials, EveryTapeAndFrameIsPhysical) {
  for (const auto kind : tapes) {
    SCOPED_TRACE(std::string(name_of(kind)));
    expect_ordered_within(tape_properties(kind).conductivity_W_mK, 0.02, 5.0);
    expect_ordered_within(tape_properties(kind).vapour_resistance_factor, 1.0, 1e6);
  }
  for (const auto kind : frames) {
    SCOPED_TRACE(std::string(name_of(kind)));
    expect_ordered_within(frame_properties(kind).conductivity_W_mK, 0.1, 250.0);
  }
}

TEST(Materials, UnknownKindThrows) {
  EXPECT_THROW(sheet_properties(static_cast<SheetKind>(99)), InvalidInput);
  EXPECT_THROW(glass_properties(static_cast<GlassKind>(99)), InvalidInput);
  EXPECT_THROW(tape_properties(static_cast<TapeKind>(99)), InvalidInput);
  EXPECT_THROW(frame_properties(static_cast<FrameKind>(99)), InvalidInput);
  EXPECT_THROW(name_of(static_cast<SheetKind>(99)), InvalidInput);
  EXPECT_THROW(name_of(static_cast<TapeKind>(99)), InvalidInput);
  EXPECT_THROW(name_of(static_cast<FrameKind>(99)), InvalidInput);
}

}  // namespace
}  // namespace dewgap
