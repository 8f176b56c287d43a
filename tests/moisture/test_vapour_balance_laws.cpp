// Laws of the vapour balance over thousands of random cases (tests/moisture/states.csv).
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <functional>
#include <random>

#include "dewgap/moisture/vapour_balance.hpp"
#include "support/reference.hpp"

namespace dewgap {
namespace {

class Draw {
 public:
  explicit Draw(std::uint64_t seed) : engine_(seed) {}
  double between(double low, double high) { return low + (high - low) * unit(); }
  double log_between(double low, double high) { return low * std::pow(high / low, unit()); }
  // Nothing in one case of four.
  double log_between_or_none(double low, double high) { return unit() < 0.25 ? 0.0 : log_between(low, high); }

 private:
  double unit() { return static_cast<double>(engine_() >> 11) * 0x1p-53; }
  std::mt19937_64 engine_;
};

VapourBalanceInput random_case(Draw& draw, const numerics::CsvTable& table, std::size_t row) {
  const auto number = [&](const char* column) { return table.number(row, column); };
  const double flow_low = number("flow_min_m3_h") / 3600.0;
  const double flow_high = number("flow_max_m3_h") / 3600.0;
  const double diffusion_low = number("diffusion_min_kg_sPa");
  const double diffusion_high = number("diffusion_max_kg_sPa");
  const double face_C = draw.between(number("face_min_C"), number("face_max_C"));
  return {.from_room_m3_s = draw.log_between_or_none(flow_low, flow_high),
          .from_outdoors_m3_s = draw.log_between_or_none(flow_low, flow_high),
          .room_vapour_Pa = draw.between(400.0, 2000.0),
          .outdoor_vapour_Pa = draw.between(50.0, 1200.0),
          .gap_temperature_C = face_C + draw.between(0.0, 8.0),
          .diffusion_to_room_kg_sPa = draw.log_between(diffusion_low, diffusion_high),
          .diffusion_to_outdoors_kg_sPa = draw.log_between(diffusion_low, diffusion_high),
          .source_kg_s = 0.0,
          .face_area_m2 = draw.between(0.1, 2.0),
          .face_temperature_C = face_C,
          .face_mass_transfer_m_s = draw.between(0.0, number("convection_max_W_m2K")) / 1100.0};
}

void for_each_random_case(const std::function<void(const VapourBalanceInput&)>& check) {
  const auto table = test::read_test_table("moisture/states.csv");
  for (std::size_t row = 0; row < table.row_count(); ++row) {
    Draw draw(static_cast<std::uint64_t>(table.number(row, "seed")));
    const int cases = static_cast<int>(table.number(row, "cases"));
    ASSERT_GT(cases, 0);
    for (int i = 0; i < cases; ++i) {
      SCOPED_TRACE(table.text(row, "name") + ", case " + std::to_string(i));
      auto input = random_case(draw, table, row);
      // A source that the exchange can carry off: at most 2000 Pa above the sides.
      const double exchange = input.diffusion_to_room_kg_sPa + input.diffusion_to_outdoors_kg_sPa +
                              (input.from_room_m3_s + input.from_outdoors_m3_s) / (462.0 * 300.0);
      input.source_kg_s =
          std::min(draw.between(0.0, table.number(row, "source_max_kg_s")), 2000.0 * exchange);
      check(input);
      if (::testing::Test::HasFatalFailure()) {
        return;
      }
    }
  }
}

TEST(VapourBalanceLaws, WhatEntersLeavesOrCondenses) {
  int wet = 0;
  int dry = 0;
  for_each_random_case([&](const VapourBalanceInput& input) {
    const auto balance = solve_vapour_balance(input);
    ASSERT_FALSE(balance.undetermined);
    ASSERT_GT(balance.vapour_in_kg_s, 0.0);
    ASSERT_GE(balance.vapour_out_kg_s, 0.0);
    ASSERT_GE(balance.condensation_kg_s, 0.0);
    ASSERT_NEAR((balance.vapour_out_kg_s + balance.condensation_kg_s) / balance.vapour_in_kg_s, 1.0, 1e-9);
    ++(balance.condensation_kg_s > 0.0 ? wet : dry);
  });
  EXPECT_GT(wet, 1000);  // both branches are really visited
  EXPECT_GT(dry, 1000);
}

TEST(VapourBalanceLaws, PotentialLiesBetweenTheSidesAndTheActualBetweenItAndTheFace) {
  for_each_random_case([](const VapourBalanceInput& input) {
    const auto balance = solve_vapour_balance(input);
    const double low = std::min(input.room_vapour_Pa, input.outdoor_vapour_Pa);
    const double high = std::max(input.room_vapour_Pa, input.outdoor_vapour_Pa);
    ASSERT_GE(balance.potential_vapour_Pa, low * (1.0 - 1e-14));
    if (input.source_kg_s <= 0.0) {
      ASSERT_LE(balance.potential_vapour_Pa, high * (1.0 + 1e-14));
    }
    ASSERT_LE(balance.vapour_Pa, balance.potential_vapour_Pa);
    ASSERT_GE(balance.vapour_Pa,
              std::min(balance.potential_vapour_Pa, balance.face_saturation_Pa) * (1.0 - 1e-14));
    ASSERT_EQ(balance.condensation_kg_s > 0.0,
              balance.potential_vapour_Pa > balance.face_saturation_Pa && input.face_mass_transfer_m_s > 0.0);
  });
}

TEST(VapourBalanceLaws, DamperRoomsAndColderFacesNeverCondenseLess) {
  for_each_random_case([](const VapourBalanceInput& input) {
    const double before = solve_vapour_balance(input).condensation_kg_s;
    auto damper = input;
    damper.room_vapour_Pa *= 1.05;
    ASSERT_GE(solve_vapour_balance(damper).condensation_kg_s, before * (1.0 - 1e-9));
    auto weaker_face = input;
    weaker_face.face_mass_transfer_m_s *= 0.8;
    ASSERT_LE(solve_vapour_balance(weaker_face).condensation_kg_s, before * (1.0 + 1e-9));
    auto colder = input;
    colder.face_temperature_C -= 1.0;
    ASSERT_GE(solve_vapour_balance(colder).condensation_kg_s, before * (1.0 - 1e-9));
  });
}

TEST(VapourBalanceLaws, DryOutdoorAirNeverWetsMore) {
  for_each_random_case([](const VapourBalanceInput& input) {
    auto dry_outdoors = input;
    dry_outdoors.outdoor_vapour_Pa = 60.0;  // below saturation at every face here
    const double before = solve_vapour_balance(dry_outdoors).condensation_kg_s;
    dry_outdoors.from_outdoors_m3_s += 1e-6;
    ASSERT_LE(solve_vapour_balance(dry_outdoors).condensation_kg_s, before * (1.0 + 1e-9));
  });
}

TEST(VapourBalanceLaws, TemperaturesOfTheSidesDoNotEnter) {
  for_each_random_case([](const VapourBalanceInput& input) {
    auto other = input;
    other.room_temperature_C = 25.0;
    other.outdoor_temperature_C = -15.0;
    ASSERT_EQ(solve_vapour_balance(other).vapour_Pa, solve_vapour_balance(input).vapour_Pa);
  });
}

}  // namespace
}  // namespace dewgap
