#include "dewgap/climate/half_hours.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>

#include "dewgap/errors.hpp"

namespace dewgap {
namespace {

double mean_of(std::span<const double> values) {
  return std::accumulate(values.begin(), values.end(), 0.0) / static_cast<double>(values.size());
}

std::vector<double> uneven_hours() {
  std::vector<double> hours(8760);
  for (std::size_t i = 0; i < hours.size(); ++i) {
    hours[i] = 10.0 + 5.0 * std::sin(0.26 * static_cast<double>(i)) + static_cast<double>(i * i % 17);
  }
  return hours;
}

// The course at a moment, h from the year's start, as the header words it.
double course_at(const std::vector<double>& hours, double moment_h) {
  const double from_middle = moment_h - 0.5;
  const double whole = std::floor(from_middle);
  const auto count = static_cast<std::ptrdiff_t>(hours.size());
  const auto at = [&](std::ptrdiff_t i) { return hours[static_cast<std::size_t>((i + count) % count)]; };
  const auto before = static_cast<std::ptrdiff_t>(whole);
  return at(before) + (from_middle - whole) * (at(before + 1) - at(before));
}

TEST(HalfHours, AreTheMeansOfTheStraightCourse) {
  const auto hours = uneven_hours();
  for (const std::size_t parts : {1u, 2u, 3u, 4u, 7u, 60u}) {
    const auto course = interpolated(hours, parts);
    ASSERT_EQ(course.size(), hours.size() * parts);
    for (const std::size_t hour : {0u, 1u, 4000u, 8759u}) {
      for (std::size_t part = 0; part < parts; ++part) {
        // The course has a corner at most in the middle of a part: the trapezoids of each half are exact.
        const double length_h = 1.0 / static_cast<double>(parts);
        const double begin_h = static_cast<double>(hour) + length_h * static_cast<double>(part);
        const double middle = course_at(hours, begin_h + 0.5 * length_h);
        const double mean =
            0.25 * (course_at(hours, begin_h) + course_at(hours, begin_h + length_h)) + 0.5 * middle;
        EXPECT_NEAR(course[hour * parts + part], mean, 1e-10) << hour << " " << part << "/" << parts;
      }
    }
  }
}

TEST(HalfHours, TheWholeHourIsTheMeanOfItsParts) {
  const auto hours = uneven_hours();
  const auto whole = interpolated(hours, 1);
  EXPECT_NEAR(whole[100], 0.125 * hours[99] + 0.75 * hours[100] + 0.125 * hours[101], 1e-12);
  for (const std::size_t parts : {2u, 5u, 12u}) {
    const auto course = interpolated(hours, parts);
    for (std::size_t hour = 0; hour < hours.size(); ++hour) {
      ASSERT_NEAR(mean_of(std::span(course).subspan(hour * parts, parts)), whole[hour], 1e-11) << hour;
    }
  }
}

TEST(HalfHours, TheMeanOfTheYearIsKept) {
  const auto hours = uneven_hours();
  for (const std::size_t parts : {1u, 2u, 6u}) {
    EXPECT_NEAR(mean_of(interpolated(hours, parts)), mean_of(hours), 1e-10);
  }
}

TEST(HalfHours, StayWithinTheHours) {
  const auto hours = uneven_hours();
  const auto [least, most] = std::minmax_element(hours.begin(), hours.end());
  for (const double value : interpolated(hours, 2)) {
    EXPECT_GE(value, *least - 1e-12);
    EXPECT_LE(value, *most + 1e-12);
  }
}

TEST(HalfHours, OfOneOrTwoHours) {
  EXPECT_EQ(interpolated(std::vector<double>{4.0}, 2), (std::vector<double>{4.0, 4.0}));
  EXPECT_EQ(interpolated(std::vector<double>{0.0, 8.0}, 2), (std::vector<double>{2.0, 2.0, 6.0, 6.0}));
}

TEST(HalfHours, RefuseWhatIsNone) {
  EXPECT_THROW(interpolated({}, 2), InvalidInput);
  EXPECT_THROW(interpolated(std::vector<double>{1.0}, 0), InvalidInput);
  EXPECT_THROW(interpolated(std::vector<double>{1.0}, 3601), InvalidInput);
  EXPECT_THROW(interpolated(std::vector<double>{1.0, std::nan("")}, 2), InvalidInput);
  EXPECT_THROW(interpolated(std::vector<double>{std::numeric_limits<double>::infinity()}, 2), InvalidInput);
}

}  // namespace
}  // namespace dewgap
