// Rows of [room], [[room.hygrometer]], [building] and [expert].
#include "tools/job/field_kernel.hpp"

namespace dewgap::tools::rows {
namespace {

using enum Need;
using enum Asked;

std::vector<Field> hygrometer_fields() {
  constexpr auto last = [](Survey & s) -> auto& {
    return s.room.hygrometer.back();
  };
  return {
      {"room.hygrometer", "room_C", required, short_job, "temperature in the room", "18.5",
       number(
           celsius, {0, 40}, [last](Survey & s) -> auto& { return last(s).room_C; })},
      {"room.hygrometer", "humidity_pct", required, short_job, "relative humidity in the room", "58",
       number(
           per_cent, {5, 100}, [last](Survey & s) -> auto& { return last(s).relative_humidity; })},
      {"room.hygrometer", "outdoor_C", required, short_job, "temperature outdoors at the time", "6",
       number(
           celsius, {-40, 40}, [last](Survey & s) -> auto& { return last(s).outdoor_C; })},
  };
}

}  // namespace

std::vector<Field> room_fields() {
  std::vector<Field> fields{
      {"room", "use", optional, short_job, "what the room is used for", "\"not known\"",
       one_of<RoomUse>(
           {{"living room", RoomUse::living},
            {"bedroom", RoomUse::bedroom},
            {"kitchen", RoomUse::kitchen},
            {"bathroom", RoomUse::bathroom},
            {"hall", RoomUse::hall},
            {"other", RoomUse::other}},
           [](Survey & s) -> auto& { return s.room.use; })},
      {"room", "temperature_C", optional, short_job, "usual winter temperature while heated", "\"not known\"",
       number(
           celsius, {10, 30}, [](Survey & s) -> auto& { return s.room.temperature_C; })},
      {"room", "centre_mists", optional, short_job,
       "when the centre of the single pane mists, curtains open: nothing tells more about the room's "
       "humidity",
       "\"not known\"",
       one_of<CentreMists>(
           {{"never", CentreMists::never},
            {"hard frost only", CentreMists::hard_frost_only},
            {"frosty mornings", CentreMists::frosty_mornings},
            {"cool days", CentreMists::cool_days},
            {"mild nights", CentreMists::mild_nights}},
           [](Survey & s) -> auto& { return s.room.centre_mists; })},
      {"room", "washing_dried", optional, short_job, "is washing dried there", "\"not known\"",
       tick([](Survey & s) -> auto& { return s.room.washing_dried; })},
      {"room", "extract_fan", optional, short_job, "is there an extract fan in use", "\"not known\"",
       tick([](Survey & s) -> auto& { return s.room.extract_fan; })},
  };
  for (auto& field : hygrometer_fields()) fields.push_back(std::move(field));
  return fields;
}

std::vector<Field> building_fields() {
  return {
      {"building", "floor", optional, short_job, "floor of the window, 0 is the ground floor",
       "\"not known\"",
       whole(
           "floors", -2, 100, [](Survey & s) -> auto& { return s.building.floor; })},
      {"building", "floors", optional, short_job, "of how many floors", "\"not known\"",
       whole(
           "floors", 1, 100, [](Survey & s) -> auto& { return s.building.floors; })},
      {"building", "open_stairwell", optional, short_job, "do open stairs join the floors", "\"not known\"",
       tick([](Survey & s) -> auto& { return s.building.open_stairwell; })},
      {"building", "working_chimney", optional, short_job, "is there a working chimney", "\"not known\"",
       tick([](Survey & s) -> auto& { return s.building.working_chimney; })},
      {"building", "outlook", optional, short_job, "what you look out on", "\"not known\"",
       one_of<Shelter>(
           {{"sea or open hill", Shelter::open},
            {"fields", Shelter::fields},
            {"suburb", Shelter::suburb},
            {"wall opposite", Shelter::facing_wall}},
           [](Survey & s) -> auto& { return s.building.outlook; })},
      {"building", "hours_heated", optional, short_job, "hours of heating on a winter day", "\"not known\"",
       number(
           hours_a_day, {0, 24}, [](Survey & s) -> auto& { return s.building.hours_heated; })},
      {"building", "bill_kWh", optional, short_job, "heat and fuel on the bill: caps the saving",
       "\"not known\"",
       number(
           kilowatt_hours_a_year, {100, 1e6}, [](Survey & s) -> auto& { return s.building.bill_kWh; })},
  };
}

std::vector<Field> expert_fields() {
  return {
      {"expert", "joint_leakage_m3_h_m", optional, on_request, "old joints", "\"not known\"",
       number(
           leakage_of_joint, {0.0005, 50},
           [](Survey & s) -> auto& { return s.expert.joint_leakage_m3_h_m; })},
      {"expert", "seal_leakage_m3_h_m", optional, on_request, "tape as fitted", "\"not known\"",
       number(
           leakage_of_joint, {0.00001, 50},
           [](Survey & s) -> auto& { return s.expert.seal_leakage_m3_h_m; })},
      {"expert", "vapour_excess_Pa", optional, on_request, "room over outdoors at 0 C outdoors",
       "\"not known\"",
       number(
           pascals, {0, 3000}, [](Survey & s) -> auto& { return s.expert.vapour_excess_Pa; })},
      {"expert", "room_humidity_pct", optional, on_request, "constant through winter", "\"not known\"",
       number(
           per_cent, {5, 95}, [](Survey & s) -> auto& { return s.expert.room_relative_humidity; })},
      {"expert", "sheet_emissivity", optional, on_request, "long-wave, hemispherical", "\"not known\"",
       number(
           plain, {0.02, 0.99}, [](Survey & s) -> auto& { return s.expert.sheet_emissivity; })},
      {"expert", "sheet_conductivity_W_mK", optional, on_request, "of the sheet", "\"not known\"",
       number(
           conductivity, {0.01, 400}, [](Survey & s) -> auto& { return s.expert.sheet_conductivity_W_mK; })},
      {"expert", "base_temperature_C", optional, on_request, "outdoors, at which heating stops",
       "\"not known\"",
       number(
           celsius, {0, 25}, [](Survey & s) -> auto& { return s.expert.base_temperature_C; })},
      {"expert", "mean_pressure_Pa", optional, on_request, "room over outdoors in winter, positive outwards",
       "\"not known\"",
       number(
           pascals, {-20, 20}, [](Survey & s) -> auto& { return s.expert.mean_pressure_Pa; })},
      {"expert", "frame_u_value_W_m2K", optional, on_request, "of the old frame", "\"not known\"",
       number(
           transmittance, {0.3, 10}, [](Survey & s) -> auto& { return s.expert.frame_u_value_W_m2K; })},
  };
}

}  // namespace dewgap::tools::rows
