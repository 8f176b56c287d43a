#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <set>
#include <utility>

#include "dewgap/assessment/priors.hpp"
#include "dewgap/errors.hpp"
#include "dewgap/materials/materials.hpp"

namespace dewgap::test {
namespace {

TEST(Priors, EveryUnknownHasAGeneralRowWithSourceAndLabel) {
  for (std::size_t i = 0; i < unknown_count; ++i) {
    const auto unknown = static_cast<Unknown>(i);
    SCOPED_TRACE(key_of(unknown));
    const auto& prior = prior_of(unknown);
    EXPECT_EQ(prior.unknown, unknown);
    EXPECT_TRUE(prior.variant.empty());
    EXPECT_FALSE(prior.source.empty());
    EXPECT_FALSE(prior.label.empty());
    EXPECT_FALSE(prior.settle_by.empty());
  }
}

TEST(Priors, StatedPercentilesComeOut) {
  for (const auto& prior : all_priors()) {
    SCOPED_TRACE(std::string(key_of(prior.unknown)) + " " + prior.variant);
    const double scale = 1e-9 * std::max(std::abs(prior.p10), std::abs(prior.p90));
    EXPECT_NEAR(prior.at(0.1), prior.p10, scale);
    EXPECT_NEAR(prior.at(0.9), prior.p90, scale);
    if (prior.shape != PriorShape::uniform) {
      EXPECT_NEAR(prior.at(0.5), prior.p50, scale);
    }
  }
}

TEST(Priors, SamplesStayInsideTheBoundsAtEveryWidth) {
  for (const auto& prior : all_priors()) {
    for (const double width : {0.5, 1.0, 2.0}) {
      for (int i = 1; i < 200; ++i) {
        const double value = prior.at(i / 200.0, width);
        ASSERT_GE(value, prior.lowest) << key_of(prior.unknown);
        ASSERT_LE(value, prior.highest) << key_of(prior.unknown);
      }
    }
  }
}

TEST(Priors, WidthScalesTheSpread) {
  const auto& prior = prior_of(Unknown::room_temperature);
  EXPECT_NEAR(prior.at(0.9, 0.5) - prior.p50, 0.5 * (prior.p90 - prior.p50), 1e-9);
  EXPECT_NEAR(prior.at(0.9, 0.0), prior.p50, 1e-12);
}

TEST(Priors, UnknownVariantFallsBackToTheGeneralRow) {
  EXPECT_EQ(&prior_of(Unknown::joint_leakage, "no such archetype"), &prior_of(Unknown::joint_leakage));
  EXPECT_EQ(prior_of(Unknown::joint_leakage, "sliding_sash").variant, "sliding_sash");
}

TEST(Priors, BadProbabilityThrows) {
  const auto& prior = prior_of(Unknown::room_film);
  EXPECT_THROW(prior.at(0.0), InvalidInput);
  EXPECT_THROW(prior.at(1.0), InvalidInput);
  EXPECT_THROW(prior.at(std::numeric_limits<double>::quiet_NaN()), InvalidInput);
  EXPECT_THROW(prior.at(0.5, -1.0), InvalidInput);
}

TEST(Priors, SheetEmissivityStaysInsideTheMaterialsRange) {
  const std::array<std::pair<SheetKind, std::string_view>, 5> sheets{
      {{SheetKind::acrylic, "acrylic"},
       {SheetKind::polycarbonate, "polycarbonate"},
       {SheetKind::petg, ""},
       {SheetKind::glass, "glass"},
       {SheetKind::pet_film, "film"}}};
  for (const auto& [kind, variant] : sheets) {
    SCOPED_TRACE(name_of(kind));
    const auto range = sheet_properties(kind).emissivity;
    const auto& prior = prior_of(Unknown::sheet_emissivity, variant);
    EXPECT_GE(prior.lowest, range.low - 0.01 - 1e-12);  // PETG's range begins 0.01 lower than the general row
    EXPECT_LE(prior.highest, range.high + 1e-12);
    EXPECT_NEAR(prior.at(0.5), range.best, 0.016);
    // A film passes what it neither absorbs nor reflects.
    EXPECT_LE(prior.highest + sheet_properties(kind).long_wave_transmittance.best, 1.0);
  }
}

TEST(Priors, KeysAreDistinct) {
  std::set<std::string_view> keys;
  for (std::size_t i = 0; i < unknown_count; ++i) {
    keys.insert(key_of(static_cast<Unknown>(i)));
  }
  EXPECT_EQ(keys.size(), unknown_count);
}

}  // namespace
}  // namespace dewgap::test
