#include "dewgap/dwelling/room_humidity.hpp"

#include <algorithm>

#include "dewgap/air/saturation.hpp"
#include "dewgap/errors.hpp"

namespace dewgap {
namespace {

constexpr PermittedRange room_range_C{-30.0, 50.0};
constexpr PermittedRange outdoor_range_C{-60.0, 50.0};
constexpr PermittedRange excess_range_Pa{0.0, 5000.0};
constexpr PermittedRange flow_range_m3_h{0.01, 1e6};

// Upper limit at 0 C. ISO 13788:2012 Annex A, from memory.
double limit_at_zero_Pa(HumidityClass humidity_class) {
  switch (humidity_class) {
    case HumidityClass::storage:
      return 270.0;
    case HumidityClass::low_occupancy:
      return 540.0;
    case HumidityClass::normal_occupancy:
      return 810.0;
    case HumidityClass::high_occupancy:
      return 1080.0;
    case HumidityClass::special:
      throw InvalidInput("humidity_class", "class 5 has no upper limit");
  }
  throw InvalidInput("humidity_class", "unknown class");
}

}  // namespace

double vapour_excess_Pa(double excess_at_zero_Pa, double monthly_outdoor_C) {
  require_in_range(excess_at_zero_Pa, excess_range_Pa, "excess_at_zero_Pa", "Pa");
  require_in_range(monthly_outdoor_C, outdoor_range_C, "monthly_outdoor_C", "C");
  // ISO 13788:2012 Annex A: whole up to 0 C, none from 20 C up, straight between.
  return excess_at_zero_Pa * (1.0 - std::clamp(monthly_outdoor_C / 20.0, 0.0, 1.0));
}

double class_vapour_excess_Pa(HumidityClass humidity_class, double monthly_outdoor_C) {
  return vapour_excess_Pa(limit_at_zero_Pa(humidity_class), monthly_outdoor_C);
}

double single_pane_face_C(double room_C, double outdoor_C, double rsi_m2K_W, double rse_m2K_W,
                          double glass_m2K_W) {
  require_in_range(room_C, room_range_C, "room_C", "C");
  require_in_range(outdoor_C, outdoor_range_C, "outdoor_C", "C");
  require_in_range(rsi_m2K_W, {0.01, 1.0}, "rsi_m2K_W", "m2 K/W");
  require_in_range(rse_m2K_W, {0.01, 1.0}, "rse_m2K_W", "m2 K/W");
  require_in_range(glass_m2K_W, {0.0, 1.0}, "glass_m2K_W", "m2 K/W");
  return room_C - (room_C - outdoor_C) * rsi_m2K_W / (rsi_m2K_W + rse_m2K_W + glass_m2K_W);
}

double misting_humidity(double room_C, double outdoor_C, double rsi_m2K_W, double rse_m2K_W,
                        double glass_m2K_W) {
  const double face_C = single_pane_face_C(room_C, outdoor_C, rsi_m2K_W, rse_m2K_W, glass_m2K_W);
  // Saturation at the face (over ice below zero) over what a hygrometer in the room calls 100 % (over water).
  return saturation_pressure_Pa(face_C) /
         saturation_pressure_Pa(room_C, SaturationFormula::murphy_koop, Phase::water);
}

double excess_after_sealing_Pa(double excess_before_Pa, double flow_before_m3_h, double flow_after_m3_h) {
  require_in_range(excess_before_Pa, excess_range_Pa, "excess_before_Pa", "Pa");
  require_in_range(flow_before_m3_h, flow_range_m3_h, "flow_before_m3_h", "m3/h");
  require_in_range(flow_after_m3_h, flow_range_m3_h, "flow_after_m3_h", "m3/h");
  return excess_before_Pa * flow_before_m3_h / flow_after_m3_h;
}

double base_temperature_C(double room_C, double gains_W, double loss_W_K) {
  require_in_range(room_C, room_range_C, "room_C", "C");
  require_in_range(gains_W, {0.0, 1e6}, "gains_W", "W");
  require_in_range(loss_W_K, {0.1, 1e6}, "loss_W_K", "W/K");
  return room_C - gains_W / loss_W_K;
}

}  // namespace dewgap
