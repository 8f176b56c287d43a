// Room humidity: class, excess, and the outdoor temperature at which a single pane mists.
#pragma once

namespace dewgap {

/// ISO 13788:2012 Annex A humidity classes; excess of vapour pressure over outdoors at 0 C and below.
enum class HumidityClass { storage = 1, low_occupancy = 2, normal_occupancy = 3, high_occupancy = 4, special = 5 };
/// Upper limit of the class at a monthly mean outdoor temperature: constant to 0 C, linear to 0 at 20 C (class 5 has
/// no upper limit: throws). Pa. From memory.
double class_vapour_excess_Pa(HumidityClass humidity_class, double monthly_outdoor_C);

/// The same shape for any excess at 0 C.
double vapour_excess_Pa(double excess_at_zero_Pa, double monthly_outdoor_C);

/// Face temperature of single glazing: T_room - (T_room - T_out) Rsi / (Rsi + Rse + R_glass).
double single_pane_face_C(double room_C, double outdoor_C, double rsi_m2K_W = 0.13, double rse_m2K_W = 0.04,
                          double glass_m2K_W = 0.004);

/// Relative humidity (0..1) at which the middle of a single pane just mists. The frost point counts below zero.
double misting_humidity(double room_C, double outdoor_C, double rsi_m2K_W = 0.13, double rse_m2K_W = 0.04,
                        double glass_m2K_W = 0.004);

/// Sealing a draughty window raises humidity where moisture is produced at a rate: new excess =
/// old excess x old flow / new flow (steady balance, both flows of the whole space, m3/h).
double excess_after_sealing_Pa(double excess_before_Pa, double flow_before_m3_h, double flow_after_m3_h);

/// Base temperature of heating, C: room - gains / loss coefficient. gains_W >= 0, loss_W_K > 0.
double base_temperature_C(double room_C, double gains_W, double loss_W_K);

}  // namespace dewgap
