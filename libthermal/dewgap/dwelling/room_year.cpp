#include "dewgap/dwelling/room_year.hpp"

#include <algorithm>
#include <cmath>
#include <functional>
#include <numeric>

#include "dewgap/air/constants.hpp"
#include "dewgap/air/saturation_table_kernel.hpp"
#include "dewgap/dwelling/room_humidity.hpp"
#include "dewgap/errors.hpp"

namespace dewgap {
namespace {

constexpr std::size_t hours_a_day = 24;
constexpr PermittedRange room_range_C{-30.0, 50.0};
constexpr PermittedRange outdoor_range_C{-80.0, 60.0};
constexpr PermittedRange outdoor_range_Pa{0.0, 10000.0};
constexpr PermittedRange vapour_range_Pa{0.0, 1e9};
constexpr PermittedRange humidity_range{0.0, 1.0};
constexpr PermittedRange time_constant_range_h{1.0, 87600.0};
constexpr PermittedRange share_range{0.5, 1.0};
constexpr double least_mean_airing_m3_h = 0.01;

void require_all_in_range(std::span<const double> values, PermittedRange range, std::string_view field,
                          std::string_view unit) {
  for (const double value : values) {
    require_in_range(value, range, field, unit);
  }
}

void require_valid(const RoomYearInput& input) {
  const std::size_t hours = input.outdoor_temperature_C.size();
  if (hours == 0 || hours % hours_a_day != 0 || hours > 8784) {
    throw InvalidInput("outdoor_temperature_C", "needs whole days of hours, 24 to 8784");
  }
  if (input.outdoor_vapour_Pa.size() != hours) {
    throw InvalidInput("outdoor_vapour_Pa", "needs as many hours as the outdoor temperature");
  }
  if (input.room_temperature_C.size() != hours && input.room_temperature_C.size() != 1) {
    throw InvalidInput("room_temperature_C", "needs as many hours as the outdoor temperature, or one");
  }
  require_all_in_range(input.outdoor_temperature_C, outdoor_range_C, "outdoor_temperature_C", "C");
  require_all_in_range(input.outdoor_vapour_Pa, outdoor_range_Pa, "outdoor_vapour_Pa", "Pa");
  require_all_in_range(input.room_temperature_C, room_range_C, "room_temperature_C", "C");
  require_in_range(input.running_mean_h, time_constant_range_h, "running_mean_h", "h");
  require_in_range(input.saturation_share, share_range, "saturation_share", "");
}

void require_valid_hour(const ProductionAndAiring& model, std::size_t of_day) {
  require_in_range(model.production_kg_h[of_day], {0.0, 50.0}, "production_kg_h", "kg/h");
  require_in_range(model.airing_m3_h[of_day], {0.0, 1e5}, "airing_m3_h", "m3/h");
  require_in_range(model.room_volume_m3, {1.0, 1e5}, "room_volume_m3", "m3");
  require_in_range(model.buffering_m3, {0.0, 1e6}, "buffering_m3", "m3");
}

void require_valid(const ProductionAndAiring& model) {
  for (std::size_t of_day = 0; of_day < hours_a_day; ++of_day) {
    require_valid_hour(model, of_day);
  }
  const double day_m3 = std::accumulate(model.airing_m3_h.begin(), model.airing_m3_h.end(), 0.0);
  require_in_range(day_m3 / hours_a_day, {least_mean_airing_m3_h, 1e5}, "airing_m3_h, mean of the day",
                   "m3/h");
}

double room_C_at(const RoomYearInput& input, std::size_t hour) {
  return input.room_temperature_C.size() == 1 ? input.room_temperature_C[0] : input.room_temperature_C[hour];
}

/// Saturation over water at the room's temperature.
double room_saturation_Pa(double room_C) {
  require_in_range(room_C, room_range_C, "room_C", "C");
  return air_kernel::water_saturation_at(room_C).pressure_Pa;
}

/// One hour as e = kept e_before + added.
struct HourBalance {
  double kept;
  double added_Pa;
};

HourBalance balance_of(const ProductionAndAiring& model, const RoomHour& at) {
  const std::size_t of_day = at.hour % hours_a_day;
  require_valid_hour(model, of_day);
  require_in_range(at.outdoor_vapour_Pa, outdoor_range_Pa, "outdoor_vapour_Pa", "Pa");
  require_in_range(at.room_C, room_range_C, "room_C", "C");
  const double store_m3 = model.room_volume_m3 + model.buffering_m3;
  const double aired_m3 = model.airing_m3_h[of_day];
  // Ideal gas: G kg of vapour in a cubic metre raise its pressure by G R_v T.
  const double produced_Pa_m3 =
      model.production_kg_h[of_day] * constants::gas_constant_water_J_kgK * constants::kelvin(at.room_C);
  // Backward Euler over one hour: V (e - e_before) = G R_v T - Q (e - e_outdoor).
  const double whole_m3 = store_m3 + aired_m3;
  return {store_m3 / whole_m3, (produced_Pa_m3 + aired_m3 * at.outdoor_vapour_Pa) / whole_m3};
}

RoomHour hour_of(const RoomYearInput& input, std::size_t hour) {
  return {hour, room_C_at(input, hour), input.outdoor_vapour_Pa[hour]};
}

/// The year from each hour's vapour before the cap: next(hour, capped vapour of the hour before).
template <class Next>
RoomYear capped_year(const RoomYearInput& input, double before_Pa, const Next& next) {
  const std::size_t hours = input.outdoor_temperature_C.size();
  RoomYear year;
  year.vapour_Pa.reserve(hours);
  for (std::size_t hour = 0; hour < hours; ++hour) {
    const auto capped = capped_vapour(next(hour, before_Pa), room_C_at(input, hour), input.saturation_share);
    before_Pa = capped.vapour_Pa;
    year.vapour_Pa.push_back(capped.vapour_Pa);
    year.capped_hours += capped.cut_Pa > 0.0 ? 1 : 0;
    year.most_capped_Pa = std::max(year.most_capped_Pa, capped.cut_Pa);
  }
  return year;
}

RoomYear year_of(const ClassExcess& model, const RoomYearInput& input) {
  const auto running_C = running_mean(input.outdoor_temperature_C, input.running_mean_h);
  const auto running_Pa = running_mean(input.outdoor_vapour_Pa, input.running_mean_h);
  return capped_year(input, 0.0, [&](std::size_t hour, double) {
    return room_vapour_Pa(model, running_C[hour], running_Pa[hour]);
  });
}

RoomYear year_of(const ConstantHumidity& model, const RoomYearInput& input) {
  return capped_year(input, 0.0,
                     [&](std::size_t hour, double) { return room_vapour_Pa(model, room_C_at(input, hour)); });
}

RoomYear year_of(const DailySchedule& model, const RoomYearInput& input) {
  return capped_year(input, 0.0, [&](std::size_t hour, double) {
    return room_vapour_Pa(model, hour, room_C_at(input, hour));
  });
}

RoomYear year_of(const ProductionAndAiring& model, const RoomYearInput& input) {
  return capped_year(input, closing_vapour_Pa(model, input), [&](std::size_t hour, double before_Pa) {
    return room_vapour_Pa(model, hour_of(input, hour), before_Pa);
  });
}

}  // namespace

std::vector<double> running_mean(std::span<const double> hourly, double time_constant_h) {
  require_in_range(time_constant_h, time_constant_range_h, "time_constant_h", "h");
  if (hourly.empty()) {
    throw InvalidInput("hourly", "a running mean needs at least one hour");
  }
  require_all_in_range(hourly, {-1e9, 1e9}, "hourly", "");
  const double kept = std::exp(-1.0 / time_constant_h);
  const double taken = -std::expm1(-1.0 / time_constant_h);
  // Once round the year from nothing leaves s; closed, y = s + kept^n y.
  double once_round = 0.0;
  for (const double value : hourly) {
    once_round = kept * once_round + taken * value;
  }
  double mean = once_round / -std::expm1(-static_cast<double>(hourly.size()) / time_constant_h);
  std::vector<double> means;
  means.reserve(hourly.size());
  for (const double value : hourly) {
    mean = kept * mean + taken * value;
    means.push_back(mean);
  }
  return means;
}

RoomYear room_year(const RoomHumidityModel& model, const RoomYearInput& input) {
  require_valid(input);
  return std::visit([&](const auto& one) { return year_of(one, input); }, model);
}

double mean_rise_Pa(const RoomYear& before, const RoomYear& after) {
  if (before.vapour_Pa.empty() || before.vapour_Pa.size() != after.vapour_Pa.size()) {
    throw InvalidInput("after", "a rise needs two years of the same hours");
  }
  const double rise_Pa = std::transform_reduce(after.vapour_Pa.begin(), after.vapour_Pa.end(),
                                               before.vapour_Pa.begin(), 0.0, std::plus<>(), std::minus<>());
  return rise_Pa / static_cast<double>(after.vapour_Pa.size());
}

double room_vapour_Pa(const ClassExcess& model, double running_outdoor_C, double running_outdoor_vapour_Pa) {
  require_in_range(running_outdoor_vapour_Pa, outdoor_range_Pa, "running_outdoor_vapour_Pa", "Pa");
  return running_outdoor_vapour_Pa + vapour_excess_Pa(model.excess_at_zero_Pa, running_outdoor_C);
}

double room_vapour_Pa(const ConstantHumidity& model, double room_C) {
  require_in_range(model.relative_humidity, humidity_range, "relative_humidity", "");
  return model.relative_humidity * room_saturation_Pa(room_C);
}

double room_vapour_Pa(const DailySchedule& model, std::size_t hour, double room_C) {
  return room_vapour_Pa(ConstantHumidity{model.relative_humidity[hour % hours_a_day]}, room_C);
}

double room_vapour_Pa(const ProductionAndAiring& model, const RoomHour& at, double vapour_before_Pa) {
  require_in_range(vapour_before_Pa, vapour_range_Pa, "vapour_before_Pa", "Pa");
  const auto [kept, added_Pa] = balance_of(model, at);
  return kept * vapour_before_Pa + added_Pa;
}

double closing_vapour_Pa(const ProductionAndAiring& model, const RoomYearInput& input) {
  require_valid(input);
  require_valid(model);
  // Hours chained: e_end = min(highest, kept e_start + added), whose form each capped hour keeps.
  const double store_m3 = model.room_volume_m3 + model.buffering_m3;
  double kept_logarithm = 0.0;
  double added_Pa = 0.0;
  double highest_Pa = vapour_range_Pa.max;
  for (std::size_t hour = 0; hour < input.outdoor_temperature_C.size(); ++hour) {
    const auto one = balance_of(model, hour_of(input, hour));
    const double ceiling_Pa = input.saturation_share * room_saturation_Pa(room_C_at(input, hour));
    kept_logarithm -= std::log1p(model.airing_m3_h[hour % hours_a_day] / store_m3);
    added_Pa = one.kept * added_Pa + one.added_Pa;
    highest_Pa = std::min(ceiling_Pa, one.kept * highest_Pa + one.added_Pa);
  }
  // Closed: e_start = e_end. Where the straight part's own end lies above the highest, the highest is it.
  return std::min(highest_Pa, added_Pa / -std::expm1(kept_logarithm));
}

CappedVapour capped_vapour(double vapour_Pa, double room_C, double saturation_share) {
  require_in_range(vapour_Pa, vapour_range_Pa, "vapour_Pa", "Pa");
  require_in_range(saturation_share, share_range, "saturation_share", "");
  const double ceiling_Pa = saturation_share * room_saturation_Pa(room_C);
  return vapour_Pa > ceiling_Pa ? CappedVapour{ceiling_Pa, vapour_Pa - ceiling_Pa}
                                : CappedVapour{vapour_Pa, 0.0};
}

}  // namespace dewgap
