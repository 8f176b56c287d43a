#include "dewgap/materials/building_materials.hpp"

#include <gtest/gtest.h>

#include <array>
#include <stdexcept>

#include "dewgap/errors.hpp"
#include "support/reference.hpp"

namespace dewgap {
namespace {

constexpr std::array kinds{
    BuildingKind::putty,           BuildingKind::gypsum_plaster,    BuildingKind::mortar,
    BuildingKind::brick,           BuildingKind::sedimentary_stone, BuildingKind::epdm,
    BuildingKind::insulating_panel};

BuildingKind kind_named(const std::string& name) {
  for (const auto kind : kinds) {
    if (name_of(kind) == name) {
      return kind;
    }
  }
  throw std::runtime_error("no such building material: " + name);
}

TEST(BuildingMaterials, PrintedValues) {
  test::check_reference("materials/building.csv", [](const test::ReferenceRow& row) {
    const auto range = conductivity_W_mK(kind_named(row.text("kind")));
    const std::string& bound = row.text("bound");
    return bound == "low" ? range.low : bound == "high" ? range.high : range.best;
  });
}

TEST(BuildingMaterials, EveryOneIsPhysical) {
  for (const auto kind : kinds) {
    const auto range = conductivity_W_mK(kind);
    EXPECT_LE(0.03, range.low) << name_of(kind);
    EXPECT_LE(range.low, range.best) << name_of(kind);
    EXPECT_LE(range.best, range.high) << name_of(kind);
    EXPECT_LE(range.high, 3.0) << name_of(kind);
  }
}

TEST(BuildingMaterials, UnknownKindThrows) {
  EXPECT_THROW(conductivity_W_mK(static_cast<BuildingKind>(99)), InvalidInput);
  EXPECT_THROW(name_of(static_cast<BuildingKind>(99)), InvalidInput);
}

}  // namespace
}  // namespace dewgap
