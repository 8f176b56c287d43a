#include "dewgap/climate/degree_days.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <cstdio>
#include <numeric>

#include "dewgap/errors.hpp"
#include "support/not_a_number.hpp"
#include "support/reference.hpp"

namespace dewgap {
namespace {

constexpr std::array all_methods{DegreeDayMethod::hitchin, DegreeDayMethod::erbs,
                                 DegreeDayMethod::schoenau_kehrig, DegreeDayMethod::max_min};

DegreeDayMethod method_of(const std::string& name) {
  if (name == "hitchin") {
    return DegreeDayMethod::hitchin;
  }
  if (name == "erbs") {
    return DegreeDayMethod::erbs;
  }
  if (name == "schoenau_kehrig") {
    return DegreeDayMethod::schoenau_kehrig;
  }
  if (name == "max_min") {
    return DegreeDayMethod::max_min;
  }
  throw std::runtime_error("no such method: " + name);
}

MonthlyNormals month_at(double mean_C) {
  return {.mean_C = mean_C, .max_C = mean_C + 4.0, .min_C = mean_C - 4.0};
}

double of_month(double mean_C, double base_C, DegreeDayMethod method) {
  return monthly_degree_days_Kd(month_at(mean_C), 30, base_C, 6.0, method);
}

// A place whose months stand in a reference table.
Place place_from(std::string_view path, std::string_view site = {}) {
  const auto table = test::read_reference(path);
  Place place;
  for (std::size_t row = 0; row < table.row_count(); ++row) {
    if (!site.empty() && table.text(row, "site") != site) {
      continue;
    }
    auto& month = place.months[static_cast<std::size_t>(table.number(row, "month")) - 1];
    month.max_C = table.number(row, "max_C");
    month.min_C = table.number(row, "min_C");
    month.mean_C = table.number(row, table.has_column("mean_C") ? "mean_C" : "expected");
  }
  return place;
}

// Printed degree-days of the standard year at one base.
std::array<double, 12> standard_year(double base_C) {
  const auto table = test::read_reference("uk_standard_year/monthly_degree_days.csv");
  std::array<double, 12> months{};
  for (std::size_t row = 0; row < table.row_count(); ++row) {
    if (table.number(row, "base_C") == base_C) {
      months[static_cast<std::size_t>(table.number(row, "month")) - 1] = table.number(row, "degree_days_Kd");
    }
  }
  return months;
}

// Each month inverted at one base and predicted at another.
std::array<double, 12> crossed(double from_base_C, double to_base_C) {
  const auto printed = standard_year(from_base_C);
  std::array<double, 12> months{};
  for (std::size_t i = 0; i < months.size(); ++i) {
    const double mean_C = hitchin_mean_temperature_C(printed[i], days_of_month[i], from_base_C);
    months[i] =
        monthly_degree_days_Kd(month_at(mean_C), days_of_month[i], to_base_C, 0.0, DegreeDayMethod::hitchin);
  }
  return months;
}

void report(const std::string& place, const test::ReferenceRow& row, double year_Kd) {
  std::printf("%s, base %.1f C, %s: %.1f K day a year, %+.1f %%\n", place.c_str(), row.number("base_C"),
              row.text("method").c_str(), year_Kd, 100.0 * (year_Kd / row.number("expected") - 1.0));
}

TEST(DegreeDays, HitchinsInverseComesBackToTheMonthsOfTheStandardYear) {
  for (const double base_C : {18.5, 15.5, 10.0}) {
    const auto printed = standard_year(base_C);
    const auto back = crossed(base_C, base_C);
    for (std::size_t i = 0; i < printed.size(); ++i) {
      EXPECT_NEAR(back[i], printed[i], 1e-6) << base_C << " C, month " << i + 1;
    }
  }
}

TEST(DegreeDays, StandardYearCrossesFromOneBaseToAnother) {
  test::check_reference("uk_standard_year/crossing.csv", [](const test::ReferenceRow& row) {
    const double from_C = row.number("from_base_C");
    const double to_C = row.number("to_base_C");
    const auto predicted = crossed(from_C, to_C);
    const auto printed = standard_year(to_C);
    const double year = std::accumulate(predicted.begin(), predicted.end(), 0.0);
    std::printf("standard year, %.1f to %.1f C: %+.2f %%; months, K day:", from_C, to_C,
                100.0 * (year / row.number("expected") - 1.0));
    for (std::size_t i = 0; i < predicted.size(); ++i) {
      std::printf(" %+.1f", predicted[i] - printed[i]);
    }
    std::printf("\n");
    return year;
  });
}

TEST(DegreeDays, TorontoYearByEachMethod) {
  test::check_reference("toronto_normals/annual_degree_days.csv", [](const test::ReferenceRow& row) {
    const double year =
        annual_degree_days_Kd(*find_place("toronto"), row.number("base_C"), method_of(row.text("method")));
    report("Toronto", row, year);
    return year;
  });
}

TEST(DegreeDays, TorontoMonthsBesideThePublishedOnes) {
  const auto& toronto = *find_place("toronto");
  std::printf("base_C month published hitchin erbs schoenau_kehrig max_min (K day)\n");
  test::check_reference(
      "toronto_normals/monthly_degree_days.csv",
      [&](const test::ReferenceRow& row) {
        const double base_C = row.number("base_C");
        const auto month = static_cast<std::size_t>(row.number("month")) - 1;
        std::printf("%4.1f %2zu %7.1f", base_C, month + 1, row.number("expected"));
        for (const auto method : all_methods) {
          std::printf(" %7.1f", degree_days_Kd(toronto, base_C, method)[month]);
        }
        std::printf("\n");
        return degree_days_Kd(toronto, base_C, DegreeDayMethod::schoenau_kehrig)[month];
      },
      25.0);
}

TEST(DegreeDays, DublinYearAgainstDailySumsOfTheSameKind) {
  const auto dublin = place_from("dublin_daily/normals.csv");
  test::check_reference("dublin_daily/annual_degree_days.csv", [&](const test::ReferenceRow& row) {
    const double year = annual_degree_days_Kd(dublin, row.number("base_C"), method_of(row.text("method")));
    report("Dublin", row, year);
    return year;
  });
}

TEST(DegreeDays, TypicalYearsAgainstTheirDailySums) {
  test::check_reference(
      "hourly_years/annual_degree_days.csv",
      [](const test::ReferenceRow& row) {
        const auto place = place_from("hourly_years/monthly.csv", row.text("site"));
        const double year = annual_degree_days_Kd(place, row.number("base_C"), method_of(row.text("method")));
        report(row.text("site"), row, year);
        return year;
      },
      100.0);
}

TEST(DegreeDays, NeverBelowTheMonthWithoutSpread) {
  for (const auto method : all_methods) {
    for (double mean_C = -20.0; mean_C <= 30.0; mean_C += 0.5) {
      EXPECT_GE(of_month(mean_C, 15.5, method), 30.0 * std::max(0.0, 15.5 - mean_C) - 1e-9) << mean_C;
    }
  }
}

TEST(DegreeDays, ColdMonthsReduceToBaseMinusMean) {
  for (const auto method : all_methods) {
    EXPECT_NEAR(of_month(-20.0, 15.5, method), 30.0 * 35.5, 0.02);
    EXPECT_NEAR(of_month(40.0, 15.5, method), 0.0, 0.02);
  }
}

TEST(DegreeDays, RiseWithTheBaseAndFallWithTheMean) {
  for (const auto method : all_methods) {
    for (double mean_C = -10.0; mean_C < 25.0; mean_C += 0.25) {
      EXPECT_GE(of_month(mean_C, 15.5, method), of_month(mean_C + 0.25, 15.5, method));
      EXPECT_LE(of_month(mean_C, 15.5, method), of_month(mean_C, 15.75, method));
    }
  }
}

TEST(DegreeDays, HitchinPassesThroughItsLimit) {
  EXPECT_NEAR(of_month(15.5, 15.5, DegreeDayMethod::hitchin), 30.0 / 0.71, 1e-9);
  EXPECT_NEAR(of_month(15.5 - 1e-7, 15.5, DegreeDayMethod::hitchin), 30.0 / 0.71, 1e-5);
  EXPECT_NEAR(of_month(15.5 + 1e-9, 15.5, DegreeDayMethod::hitchin), 30.0 / 0.71, 1e-6);
}

TEST(DegreeDays, MaxMinFourCases) {
  const auto daily = [](double max_C, double min_C) {
    const MonthlyNormals month{.mean_C = 0.5 * (max_C + min_C), .max_C = max_C, .min_C = min_C};
    return monthly_degree_days_Kd(month, 30, 15.5, 0.0, DegreeDayMethod::max_min) / 30.0;
  };
  EXPECT_NEAR(daily(10.0, 4.0), 8.5, 1e-12);
  EXPECT_NEAR(daily(25.0, 16.0), 0.0, 1e-12);
  EXPECT_NEAR(daily(17.5, 9.5), 3.0 - 0.5, 1e-12);
  EXPECT_NEAR(daily(21.5, 11.5), 1.0, 1e-12);
  // Continuous where the cases meet.
  EXPECT_NEAR(daily(15.5, 5.5), daily(15.5 + 1e-9, 5.5), 1e-8);
  EXPECT_NEAR(daily(20.5 - 1e-9, 10.5), daily(20.5 + 1e-9, 10.5), 1e-8);
  EXPECT_NEAR(daily(25.5, 15.5 - 1e-9), 0.0, 1e-8);
}

TEST(DegreeDays, HeatingDaysAreTheSlopeOfNormalDegreeDays) {
  const auto& dublin = *find_place("dublin");
  const auto days = heating_days(dublin, 15.5);
  const auto above = degree_days_Kd(dublin, 15.5 + 1e-4, DegreeDayMethod::schoenau_kehrig);
  const auto below = degree_days_Kd(dublin, 15.5 - 1e-4, DegreeDayMethod::schoenau_kehrig);
  for (std::size_t i = 0; i < days.size(); ++i) {
    EXPECT_NEAR(days[i], (above[i] - below[i]) / 2e-4, 1e-5);
    EXPECT_LE(days[i], days_of_month[i]);
    EXPECT_GT(days[i], 0.0);
  }
  EXPECT_GT(days[0], 30.0);
  EXPECT_LT(days[6], 20.0);
}

TEST(DegreeDays, YearlySpread) {
  Place place;
  for (std::size_t i = 0; i < 12; ++i) {
    const double mean_C = i % 2 == 0 ? 4.0 : 10.0;
    place.months[i] = month_at(mean_C);
  }
  EXPECT_DOUBLE_EQ(yearly_sd_K(place), 3.0);
}

TEST(DegreeDays, SouthernPlacesHeatInJuly) {
  const auto months = degree_days_Kd(*find_place("wellington"), 15.5, DegreeDayMethod::erbs);
  EXPECT_GT(months[6], months[0]);
}

TEST(DegreeDays, HitchinInverseFindsTheMean) {
  for (double mean_C = -15.0; mean_C <= 30.0; mean_C += 1.5) {
    const double printed = of_month(mean_C, 15.5, DegreeDayMethod::hitchin);
    EXPECT_NEAR(hitchin_mean_temperature_C(printed, 30, 15.5), mean_C, 1e-8);
  }
}

TEST(DegreeDays, RefusesBadInput) {
  const auto hitchin = DegreeDayMethod::hitchin;
  const auto month = month_at(5.0);
  EXPECT_THROW(monthly_degree_days_Kd(month, 27, 15.5, 6.0, hitchin), InvalidInput);
  EXPECT_THROW(monthly_degree_days_Kd(month, 32, 15.5, 6.0, hitchin), InvalidInput);
  EXPECT_THROW(monthly_degree_days_Kd(month, 30, 41.0, 6.0, hitchin), InvalidInput);
  EXPECT_THROW(monthly_degree_days_Kd(month, 30, test::not_a_number, 6.0, hitchin), InvalidInput);
  EXPECT_THROW(monthly_degree_days_Kd(month, 30, 15.5, -0.1, hitchin), InvalidInput);
  EXPECT_THROW(monthly_degree_days_Kd(month_at(test::not_a_number), 30, 15.5, 6.0, hitchin), InvalidInput);
  EXPECT_THROW(monthly_degree_days_Kd({.mean_C = 5.0, .max_C = 4.0, .min_C = 3.0}, 30, 15.5, 6.0, hitchin),
               InvalidInput);
  EXPECT_THROW(hitchin_mean_temperature_C(0.0, 30, 15.5), InvalidInput);
  EXPECT_THROW(hitchin_mean_temperature_C(-1.0, 30, 15.5), InvalidInput);
  EXPECT_THROW(hitchin_mean_temperature_C(4000.0, 30, 15.5), InvalidInput);
  EXPECT_THROW(hitchin_mean_temperature_C(test::not_a_number, 30, 15.5), InvalidInput);
  EXPECT_THROW(hitchin_mean_temperature_C(100.0, 0, 15.5), InvalidInput);
}

TEST(DegreeDays, RefusesAPlaceThatIsNone) {
  const Place nowhere{.latitude_deg = 100.0};
  EXPECT_THROW(yearly_sd_K(nowhere), InvalidInput);
  EXPECT_THROW(degree_days_Kd(nowhere, 15.5, DegreeDayMethod::erbs), InvalidInput);
  EXPECT_THROW(annual_degree_days_Kd(nowhere, 15.5, DegreeDayMethod::erbs), InvalidInput);
  EXPECT_THROW(heating_days(nowhere, 15.5), InvalidInput);
  EXPECT_THROW(heating_days(*find_place("dublin"), test::not_a_number), InvalidInput);
  EXPECT_THROW(degree_days_Kd(*find_place("dublin"), 50.0, DegreeDayMethod::erbs), InvalidInput);
}

}  // namespace
}  // namespace dewgap
