// What the room's year refuses.
#include <gtest/gtest.h>

#include <functional>

#include "dewgap/dwelling/room_year.hpp"
#include "dewgap/errors.hpp"
#include "support/not_a_number.hpp"

namespace dewgap {
namespace {

struct Hours {
  std::vector<double> outdoor_C = std::vector<double>(48, 5.0);
  std::vector<double> outdoor_Pa = std::vector<double>(48, 700.0);
  std::vector<double> room_C{20.0};
  RoomYearInput input() const {
    return {
        .outdoor_temperature_C = outdoor_C, .outdoor_vapour_Pa = outdoor_Pa, .room_temperature_C = room_C};
  }
};

void expect_refused(const std::function<void(Hours&)>& spoil) {
  Hours hours;
  ASSERT_NO_THROW(room_year(ConstantHumidity{0.5}, hours.input()));
  spoil(hours);
  EXPECT_THROW(room_year(ConstantHumidity{0.5}, hours.input()), InvalidInput);
}

TEST(RoomYearInput, WholeDaysAndAsManyHours) {
  expect_refused([](Hours& h) { h.outdoor_C.clear(); });
  expect_refused([](Hours& h) { h.outdoor_C.resize(47); });
  expect_refused([](Hours& h) { h.outdoor_Pa.resize(24); });
  expect_refused([](Hours& h) { h.room_C.clear(); });
  expect_refused([](Hours& h) { h.room_C.resize(24, 20.0); });
  expect_refused([](Hours& h) {
    h.outdoor_C.resize(8808, 5.0);
    h.outdoor_Pa.resize(8808, 700.0);
  });
}

TEST(RoomYearInput, EachHourInRange) {
  expect_refused([](Hours& h) { h.outdoor_C[3] = test::not_a_number; });
  expect_refused([](Hours& h) { h.outdoor_C[3] = 61.0; });
  expect_refused([](Hours& h) { h.outdoor_Pa[47] = -1.0; });
  expect_refused([](Hours& h) { h.outdoor_Pa[47] = test::not_a_number; });
  expect_refused([](Hours& h) { h.room_C[0] = 51.0; });
}

TEST(RoomYearInput, Settings) {
  const Hours hours;
  for (const double bad : {0.0, 1.01, test::not_a_number}) {
    auto input = hours.input();
    input.saturation_share = bad;
    EXPECT_THROW(room_year(ConstantHumidity{0.5}, input), InvalidInput) << bad;
    EXPECT_THROW(closing_vapour_Pa({}, input), InvalidInput) << bad;
    EXPECT_THROW(capped_vapour(500.0, 20.0, bad), InvalidInput) << bad;
  }
  auto input = hours.input();
  input.running_mean_h = 0.0;
  EXPECT_THROW(room_year(ClassExcess{}, input), InvalidInput);
}

TEST(RoomYearInput, Models) {
  const Hours hours;
  EXPECT_THROW(room_year(ClassExcess{-1.0}, hours.input()), InvalidInput);
  EXPECT_THROW(room_year(ConstantHumidity{1.1}, hours.input()), InvalidInput);
  DailySchedule schedule;
  schedule.relative_humidity[23] = test::not_a_number;
  EXPECT_THROW(room_year(schedule, hours.input()), InvalidInput);

  ProductionAndAiring aired;
  EXPECT_THROW(room_year(aired, hours.input()), InvalidInput);  // no air at all
  aired.airing_m3_h[12] = 30.0;                                 // once a day is enough
  EXPECT_NO_THROW(room_year(aired, hours.input()));
  auto bad = aired;
  bad.production_kg_h[0] = -0.1;
  EXPECT_THROW(room_year(bad, hours.input()), InvalidInput);
  bad = aired;
  bad.airing_m3_h[3] = test::not_a_number;
  EXPECT_THROW(room_year(bad, hours.input()), InvalidInput);
  bad = aired;
  bad.room_volume_m3 = 0.0;
  EXPECT_THROW(room_year(bad, hours.input()), InvalidInput);
  bad = aired;
  bad.buffering_m3 = -1.0;
  EXPECT_THROW(room_year(bad, hours.input()), InvalidInput);
}

TEST(RoomYearInput, SingleHours) {
  EXPECT_THROW(room_vapour_Pa(ClassExcess{}, 51.0, 700.0), InvalidInput);
  EXPECT_THROW(room_vapour_Pa(ClassExcess{}, 5.0, test::not_a_number), InvalidInput);
  EXPECT_THROW(room_vapour_Pa(ConstantHumidity{}, test::not_a_number), InvalidInput);
  EXPECT_THROW(room_vapour_Pa(DailySchedule{}, 5, 51.0), InvalidInput);
  EXPECT_THROW(room_vapour_Pa(ProductionAndAiring{}, {.room_C = test::not_a_number}, 500.0), InvalidInput);
  EXPECT_THROW(room_vapour_Pa(ProductionAndAiring{}, {.outdoor_vapour_Pa = -1.0}, 500.0), InvalidInput);
  EXPECT_THROW(room_vapour_Pa(ProductionAndAiring{}, {}, -1.0), InvalidInput);
  EXPECT_THROW(capped_vapour(-1.0, 20.0), InvalidInput);
  EXPECT_THROW(capped_vapour(test::not_a_number, 20.0), InvalidInput);
  EXPECT_THROW(capped_vapour(500.0, 60.0), InvalidInput);
}

TEST(RoomYearInput, ARiseNeedsTwoYearsAlike) {
  const RoomYear two{.vapour_Pa = {1.0, 2.0}};
  const RoomYear three{.vapour_Pa = {1.0, 2.0, 3.0}};
  EXPECT_THROW(mean_rise_Pa(two, three), InvalidInput);
  EXPECT_THROW(mean_rise_Pa({}, {}), InvalidInput);
}

}  // namespace
}  // namespace dewgap
