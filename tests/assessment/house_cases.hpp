// Invented houses shared by the tests of totals and orders.
#pragma once

#include <gtest/gtest.h>

#include <stdexcept>

#include "dewgap/assessment/house.hpp"
#include "survey_cases.hpp"

namespace dewgap::test {

inline HouseOptions steady_alone() {
  HouseOptions options;
  options.assess = {.samples = 128, .width_checks = false, .most_window_hours = 0};
  return options;
}

inline Survey dry_sash(const std::string& name) {
  auto survey = worn_sash_survey();
  survey.name = name;
  survey.room.centre_mists = CentreMists::never;
  survey.room.use = RoomUse::living;
  return survey;
}

inline double width(const Spread& spread) {
  return spread.p90 - spread.p10;
}

inline HouseAnswer house_of(const std::vector<Survey>& windows, HouseOptions options = steady_alone()) {
  return assess_house(windows, options);
}

inline const HouseWindow& window_of(const HouseAnswer& answer, std::size_t number) {
  for (const auto& window : answer.windows) {
    if (window.number == number) {
      return window;
    }
  }
  throw std::out_of_range("no such window");
}

inline void expect_same(const Spread& a, const Spread& b) {
  EXPECT_DOUBLE_EQ(a.p10, b.p10);
  EXPECT_DOUBLE_EQ(a.p50, b.p50);
  EXPECT_DOUBLE_EQ(a.p90, b.p90);
}

}  // namespace dewgap::test
