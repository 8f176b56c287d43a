// Room humidity: class, excess, and the outdoor temperature at which a single pane mists.
#pragma once

namespace dewgap {

/// ISO 13788:2012 Annex A humidity classes; excess of vapour pressure over outdoors at 0 C and below.
enum class HumidityClass {
  storage = 1,
  low_occupancy = 2,
  normal_occupancy = 3,
  high_occupancy = 4,
  special = 5
};

/// Upper limit of the class at a monthly mean outdoor temperature (-60 to 50 C): constant to 0 C, linear to 0
/// at 20 C, 0 above. Class 5 has no upper limit: throws. Pa. The temperature is the month's (or a running)
/// mean, never an hour's; the value is a limit, not the middle of the class. From memory.
double class_vapour_excess_Pa(HumidityClass humidity_class, double monthly_outdoor_C);

/// The same shape for any excess at 0 C, 0 to 5000 Pa.
double vapour_excess_Pa(double excess_at_zero_Pa, double monthly_outdoor_C);

/// Face temperature of single glazing, C: T_room - (T_room - T_out) Rsi / (Rsi + Rse + R_glass). Air and
/// radiant temperature the same: a clear sky makes the pane colder. Room -30 to 50 C, outdoors -60 to 50 C;
/// surface resistances 0.01 to 1, glass 0 to 1 m2 K/W.
double single_pane_face_C(double room_C, double outdoor_C, double rsi_m2K_W = 0.13, double rse_m2K_W = 0.04,
                          double glass_m2K_W = 0.004);

/// Relative humidity (over water) at which the middle of a single pane just mists or, below zero, frosts:
/// saturation at the face, over ice below 0 C, over saturation at the room's temperature. Above 1 when it is
/// warmer outdoors: then the room cannot mist the pane. Edges mist sooner.
double misting_humidity(double room_C, double outdoor_C, double rsi_m2K_W = 0.13, double rse_m2K_W = 0.04,
                        double glass_m2K_W = 0.004);

/// Sealing a draughty window raises humidity where moisture is produced at a rate: new excess =
/// old excess x old flow / new flow (steady balance without storage, both flows of the whole space, m3/h,
/// 0.01 to 1e6; excess 0 to 5000 Pa). Leaves out: sorption and condensation in the room, which limit the
/// rise.
double excess_after_sealing_Pa(double excess_before_Pa, double flow_before_m3_h, double flow_after_m3_h);

/// Base temperature of heating, C: room - gains / loss coefficient. gains_W 0 to 1e6, loss_W_K 0.1 to 1e6.
double base_temperature_C(double room_C, double gains_W, double loss_W_K);

}  // namespace dewgap
