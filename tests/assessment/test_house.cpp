// What a house is told of its windows together.
#include "dewgap/assessment/house.hpp"

#include <gtest/gtest.h>

#include <type_traits>

#include "dewgap/errors.hpp"
#include "house_cases.hpp"

namespace dewgap {
namespace {

using test::dry_sash;
using test::expect_same;
using test::house_of;
using test::steady_alone;
using test::width;
using test::window_of;

TEST(House, OneWindowsTotalIsItsOwn) {
  const auto answer = house_of({dry_sash("alone")});
  ASSERT_TRUE(answer.totals) << answer.windows[0].assessment.because;
  const auto& own = answer.windows[0].assessment.figures->now_and_with;
  expect_same(answer.totals->heat_saved_kWh.likely, own.heat_saved_kWh);
  expect_same(answer.totals->heat_saved_kWh.all_together, own.heat_saved_kWh);
  expect_same(answer.totals->heat_saved_kWh.none_shared, own.heat_saved_kWh);
  const auto& steps = answer.for_money.steps;
  ASSERT_EQ(steps.size(), 1u);
  expect_same(steps[0].air_lost_so_far_m3_h, answer.totals->draught_cut_m3_h.likely);
  EXPECT_TRUE(answer.warnings.empty());
}

TEST(House, TheTotalOfLikeWindowsLiesBetweenItsTwoEnds) {
  const auto answer = house_of({dry_sash("left"), dry_sash("middle"), dry_sash("right")});
  ASSERT_TRUE(answer.totals);
  for (const auto* total : {&answer.totals->heat_saved_kWh, &answer.totals->draught_cut_m3_h,
                            &answer.totals->ventilation_needed_m3_h}) {
    EXPECT_GT(width(total->likely), 1.02 * width(total->none_shared));
    EXPECT_LE(width(total->likely), width(total->all_together));
  }
  const auto& one = window_of(answer, 1).assessment.figures->now_and_with.heat_saved_kWh;
  EXPECT_NEAR(answer.totals->heat_saved_kWh.all_together.p50, 3.0 * one.p50, 1e-9 * one.p50);
}

TEST(House, RoomsKeptApartShareLess) {
  auto other_room = dry_sash("right");
  other_room.room.use = RoomUse::hall;
  const auto alike = house_of({dry_sash("left"), dry_sash("right")});
  const auto apart = house_of({dry_sash("left"), other_room});
  ASSERT_TRUE(alike.totals && apart.totals);
  const auto excess = [](const HouseTotal& total) {
    return (width(total.likely) - width(total.none_shared)) /
           (width(total.all_together) - width(total.none_shared));
  };
  EXPECT_GT(excess(alike.totals->heat_saved_kWh), excess(apart.totals->heat_saved_kWh));
}

TEST(House, TheBillCapsTheHouseAndNotEachWindow) {
  std::vector<Survey> windows{dry_sash("left"), dry_sash("right")};
  const auto free = house_of(windows);
  const double bill_kWh = 1.1 * window_of(free, 1).assessment.figures->now_and_with.heat_saved_kWh.p50;
  for (auto& window : windows) {
    window.building.bill_kWh = bill_kWh;
  }
  const auto capped = house_of(windows);
  ASSERT_TRUE(capped.totals);
  EXPECT_LE(capped.totals->heat_saved_kWh.likely.p90, bill_kWh);
  EXPECT_DOUBLE_EQ(capped.totals->heat_saved_kWh.all_together.p90, bill_kWh);
  EXPECT_GT(capped.totals->capped_share, 0.5);
  expect_same(window_of(capped, 1).assessment.figures->now_and_with.heat_saved_kWh,
              window_of(free, 1).assessment.figures->now_and_with.heat_saved_kWh);
  EXPECT_NE(capped.warnings.back().find("caps the saving of the whole house"), std::string::npos);
  EXPECT_EQ(free.totals->capped_share, 0.0);
}

TEST(House, AHoldIsListedFirstAndLeftOutOfEverythingElse) {
  auto held = dry_sash("held");
  held.settle_first.way_out.reset();
  const auto with = house_of({dry_sash("left"), held, dry_sash("right")});
  const auto without = house_of({dry_sash("left"), dry_sash("right")});
  EXPECT_EQ(with.windows.front().number, 2u);
  EXPECT_EQ(with.windows.front().assessment.headline, Headline::hold);
  EXPECT_FALSE(with.windows.front().assessment.figures);
  EXPECT_FALSE(with.windows.front().counted);
  ASSERT_TRUE(with.totals && without.totals);
  expect_same(with.totals->heat_saved_kWh.likely, without.totals->heat_saved_kWh.likely);
  for (const auto& step : with.for_money.steps) {
    EXPECT_NE(step.number, 2u);
  }
  EXPECT_NE(with.warnings.front().find("held"), std::string::npos);
  const auto none = house_of({held});
  EXPECT_FALSE(none.totals);
  EXPECT_TRUE(none.for_money.steps.empty());
}

TEST(House, ALeaveIsListedLastAndLeftOut) {
  auto left = dry_sash("no saving");
  left.expert.room_relative_humidity = 0.9;
  const auto answer = house_of({left, dry_sash("right")});
  ASSERT_EQ(answer.windows.back().assessment.headline, Headline::leave)
      << answer.windows.back().assessment.because;
  EXPECT_EQ(answer.windows.back().number, 1u);
  EXPECT_FALSE(answer.windows.back().counted);
  ASSERT_EQ(answer.for_money.steps.size(), 1u);
  EXPECT_EQ(answer.for_money.steps[0].number, 2u);
}

TEST(House, TheSameHouseGivesTheSameFigures) {
  const std::vector<Survey> windows{dry_sash("left"), dry_sash("right")};
  const auto once = house_of(windows);
  const auto again = house_of(windows);
  expect_same(once.totals->heat_saved_kWh.likely, again.totals->heat_saved_kWh.likely);
  expect_same(once.for_money.steps[1].air_lost_so_far_m3_h, again.for_money.steps[1].air_lost_so_far_m3_h);
}

TEST(House, LikeWindowsTieAndASmallOneIsLast) {
  auto costly = dry_sash("costly");
  auto cheap = dry_sash("cheap");
  costly.money = MoneyTerms{.price_per_kWh = 0.1, .cost = 900.0};
  cheap.money = MoneyTerms{.price_per_kWh = 0.1, .cost = 90.0};
  const auto answer = house_of({costly, cheap, cheap});
  EXPECT_EQ(answer.for_money.basis, OrderBasis::money_saved_per_cost);
  const auto& steps = answer.for_money.steps;
  ASSERT_EQ(steps.size(), 3u);
  EXPECT_EQ(steps[0].place, 1u);
  EXPECT_EQ(steps[1].place, 1u);
  EXPECT_EQ(steps[2].number, 1u);
  EXPECT_EQ(steps[2].place, 3u);
  ASSERT_TRUE(answer.totals->money_saved_per_year);
  EXPECT_NEAR(answer.totals->money_saved_per_year->likely.p50, 0.1 * answer.totals->heat_saved_kWh.likely.p50,
              1e-9);
  EXPECT_EQ(answer.for_money.basis_because, "");
  cheap.money->cost.reset();
  const auto without = house_of({costly, cheap}).for_money;
  EXPECT_EQ(without.basis, OrderBasis::heat_saved_per_sheet_area);
  EXPECT_EQ(without.basis_because, "No cost above 0 was given for: cheap.");
}

TEST(House, AirLostAddsUpToTheTotalAndPassesTheLimitOnTheWay) {
  const std::vector<Survey> windows{dry_sash("a"), dry_sash("b"), dry_sash("c")};
  const auto free = house_of(windows);
  const auto& steps = free.for_money.steps;
  ASSERT_EQ(steps.size(), 3u);
  EXPECT_FALSE(free.for_money.passes_limit_at);
  for (std::size_t i = 1; i < 3; ++i) {
    EXPECT_GT(steps[i].air_lost_so_far_m3_h.p50, steps[i - 1].air_lost_so_far_m3_h.p50);
  }
  EXPECT_NEAR(steps[2].air_lost_so_far_m3_h.p50, free.totals->draught_cut_m3_h.likely.p50, 1e-9);
  auto options = steady_alone();
  options.ventilation_limit_m3_h =
      0.5 * (steps[0].air_lost_so_far_m3_h.p50 + steps[1].air_lost_so_far_m3_h.p50);
  const auto limited = house_of(windows, options);
  EXPECT_EQ(limited.for_money.passes_limit_at, steps[1].number);
  ASSERT_TRUE(limited.for_money.may_pass_limit_at);
  EXPECT_LE(*limited.for_money.may_pass_limit_at, steps[1].number);
}

TEST(House, TheLimitIsToldToATenth) {
  const auto told = [](double limit_m3_h) {
    auto options = steady_alone();
    options.ventilation_limit_m3_h = limit_m3_h;
    std::string all;
    for (const auto& warning : house_of({dry_sash("a"), dry_sash("b")}, options).warnings) all += warning;
    return all;
  };
  EXPECT_NE(told(0.13).find("your limit of 0.1 m3/h with"), std::string::npos);
  EXPECT_NE(told(0.0).find("your limit of 0 m3/h with"), std::string::npos);
}

TEST(House, WithoutAYearNothingOrdersTheDamp) {
  const auto answer = house_of({dry_sash("left"), dry_sash("right")});
  EXPECT_TRUE(answer.for_damp.steps.empty());
  EXPECT_NE(answer.for_damp.left_out_because.find("left, right"), std::string::npos);
}

// Least and greatest go with a figure of few cases wherever it goes.
static_assert(!std::is_convertible_v<CaseSpread, Spread>);

TEST(House, PeoplesRoomsComeFirstForTheDamp) {
  auto hall = dry_sash("hall");
  hall.room.use = RoomUse::hall;
  auto options = steady_alone();
  options.assess.most_window_hours = 800'000;
  const auto answer = house_of({hall, dry_sash("front room")}, options);
  ASSERT_EQ(answer.for_damp.steps.size(), 2u) << answer.for_damp.left_out_because;
  EXPECT_EQ(answer.for_damp.steps[0].number, 2u);
  EXPECT_TRUE(answer.for_damp.steps[0].peoples_room);
  EXPECT_FALSE(answer.for_damp.steps[1].peoples_room);
  const auto& mornings = answer.for_damp.steps[0].misty_mornings.value();
  EXPECT_LE(mornings.spared.least, mornings.spared.p10);
  EXPECT_LE(mornings.spared.p10, mornings.spared.p50);
  EXPECT_GE(mornings.spared.greatest, mornings.spared.p90);
  const auto& front_room = answer.windows.at(0).number == 2 ? answer.windows.at(0) : answer.windows.at(1);
  EXPECT_EQ(mornings.cases, front_room.assessment.figures->year->cases_run);
}

TEST(House, RefusesWindowsOfTwoHouses) {
  auto elsewhere = dry_sash("elsewhere");
  elsewhere.place.distance_km = 99.0;
  EXPECT_THROW(house_of({dry_sash("here"), elsewhere}), InvalidInput);
  auto other_bill = dry_sash("other");
  other_bill.building.bill_kWh = 5000.0;
  EXPECT_THROW(house_of({dry_sash("here"), other_bill}), InvalidInput);
  EXPECT_THROW(house_of({}), InvalidInput);
  EXPECT_THROW(house_of(std::vector<Survey>(61, dry_sash("many"))), InvalidInput);
  auto upstairs = dry_sash("upstairs");
  upstairs.building.floor = 0;
  upstairs.building.outlook = Shelter::fields;
  EXPECT_NO_THROW(house_of({dry_sash("here"), upstairs}));
}

}  // namespace
}  // namespace dewgap
