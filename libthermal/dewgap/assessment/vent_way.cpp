#include <array>

#include "dewgap/assessment/vent_words_kernel.hpp"
#include "dewgap/assessment/verdict_kernel.hpp"

namespace dewgap {
namespace {

constexpr std::array every_way{AirWay::inwards, AirWay::outwards, AirWay::both_ways, AirWay::room_side,
                               AirWay::still};

AirWay way_of_year(const OptionYear& year) {
  return way_of({.from_room_m3_s = static_cast<double>(year.cold_from_room_m3_s),
                 .from_outdoors_m3_s = static_cast<double>(year.cold_from_outdoors_m3_s),
                 .to_outdoors_m3_s = static_cast<double>(year.cold_to_outdoors_m3_s)});
}

}  // namespace

YearsAir years_air(const VentRuns& runs, VentOption choice) {
  YearsAir air;
  for (const auto way : every_way) {
    double count = 0.0;
    for (std::size_t i = 0; i < runs.years.size(); ++i) {
      count += way_of_year(year_of(runs.years[i], choice)) == way ? runs.counts[i] : 0.0;
    }
    const double share = count / static_cast<double>(runs.picks());
    if (share > air.share) {
      air.way = way;
      air.share = share;
    }
  }
  const auto spread = [&](float OptionYear::*flow) {
    std::vector<double> values;
    for (const auto& run : runs.years) {
      values.push_back(static_cast<double>(year_of(run, choice).*flow));
    }
    return case_spread(values, runs.counts);
  };
  air.from_room_m3_s = spread(&OptionYear::cold_from_room_m3_s);
  air.from_outdoors_m3_s = spread(&OptionYear::cold_from_outdoors_m3_s);
  air.reason = vent_reason(choice, air.way);
  return air;
}

}  // namespace dewgap
