// What the reader keeps of a file for the record.
#include "tools/job/given_value.hpp"

#include <gtest/gtest.h>

#include <algorithm>

#include "run_cli.hpp"
#include "tools/job/reader.hpp"

namespace dewgap::tools {
namespace {

constexpr const char* place_section = R"([place]
nearest = "london"
)";

/// The one value that is kept of a file with this line in this section; other faults of the file don't
/// matter.
std::vector<GivenValue> kept(const std::string& section, const std::string& line) {
  auto given = read_job(std::string(place_section) + "[" + section + "]\n" + line + "\n").given;
  std::erase_if(given, [](const GivenValue& value) { return value.key == "place.nearest"; });
  return given;
}

GivenScalar one(const GivenValue& given) {
  return std::get<GivenScalar>(given.value);
}

TEST(GivenValue, ANumberIsMeasuredAndStaysAsTyped) {
  const auto whole = kept("window", "screw_depth_mm = 30").at(0);
  EXPECT_EQ(whole.key, "window.screw_depth_mm");
  EXPECT_EQ(one(whole), GivenScalar(std::int64_t{30}));
  EXPECT_EQ(whole.unit, "mm");
  EXPECT_EQ(whole.basis, Basis::measured);
  EXPECT_EQ(one(kept("window", "screw_depth_mm = 30.5").at(0)), GivenScalar(30.5));
  const auto list = kept("window", "opening_widths_mm = [903, 900.5, 901]").at(0);
  EXPECT_EQ(std::get<std::vector<GivenScalar>>(list.value),
            (std::vector<GivenScalar>{std::int64_t{903}, 900.5, std::int64_t{901}}));
}

TEST(GivenValue, WordsAndTicksAreDescribedInTheTablesSpelling) {
  for (const auto* line : {"rattles = \"Yes\"", "rattles = true"}) {
    const auto tick = kept("joints", line).at(0);
    EXPECT_EQ(one(tick), GivenScalar("yes"));
    EXPECT_EQ(tick.basis, Basis::described);
    EXPECT_EQ(tick.unit, "");
  }
  EXPECT_EQ(one(kept("sheet", "material = \"Thin FILM\"").at(0)), GivenScalar("thin film"));
  const auto feelers = kept("joints", "feelers = [\"Coin\", \"paper\"]").at(0);
  EXPECT_EQ(std::get<std::vector<GivenScalar>>(feelers.value), (std::vector<GivenScalar>{"coin", "paper"}));
}

TEST(GivenValue, FacingInDegreesIsMeasuredInAWordDescribed) {
  EXPECT_EQ(kept("window", "facing = 180").at(0).basis, Basis::measured);
  EXPECT_EQ(kept("window", "facing = 180").at(0).unit, "degrees");
  EXPECT_EQ(kept("window", "facing = \"north\"").at(0).basis, Basis::described);
}

TEST(GivenValue, AClearanceIsMeasuredAndItsAbsenceDescribed) {
  EXPECT_EQ(one(kept("window", "blind_mm = 60").at(0)), GivenScalar(std::int64_t{60}));
  EXPECT_EQ(kept("window", "blind_mm = 60").at(0).unit, "mm");
  EXPECT_EQ(one(kept("window", "blind_mm = \"None\"").at(0)), GivenScalar("none"));
  EXPECT_EQ(kept("window", "blind_mm = \"none\"").at(0).basis, Basis::described);
  EXPECT_EQ(kept("window", "blind_mm = \"none\"").at(0).unit, "");
}

TEST(GivenValue, WhatIsNotKnownOrRefusedIsNotKept) {
  EXPECT_TRUE(kept("window", "screw_depth_mm = \"not known\"").empty());
  EXPECT_TRUE(kept("window", "screw_depth_mm = -3").empty());
  EXPECT_TRUE(kept("window", "screw_depth = 3").empty());
}

TEST(GivenValue, ReadingsAreCountedFromOne) {
  const auto given = read_job(test::text_of(test::examples_dir + "/old-sash.toml")).given;
  std::vector<int> readings;
  for (const auto& value : given)
    if (value.key == "room.hygrometer.humidity_pct") readings.push_back(value.reading.value());
  EXPECT_EQ(readings, (std::vector<int>{1, 2}));
  EXPECT_FALSE(given.back().reading.has_value()) << given.back().key;
}

}  // namespace
}  // namespace dewgap::tools
