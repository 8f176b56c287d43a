// The window's edge by conduction in the JSON edge.
#include "tools/answer/json_parts_kernel.hpp"
#include "tools/job/units.hpp"

namespace dewgap::tools::json_parts {
namespace {

Json range(const EdgeRange& range) {
  return {{"low", finite(range.low)}, {"middle", finite(range.middle)}, {"high", finite(range.high)}};
}

}  // namespace

Json edge(const EdgeAnswer& edge) {
  Json with_sheet{{"part", edge.room_spot},
                  {"factor", range(edge.room_factor)},
                  {"coldest_month_humidity_pct", spread(edge.face_humidity, per_cent.per_base)},
                  {"mould_from_room_humidity_pct", spread(edge.mould_from_humidity, per_cent.per_base)},
                  {"wet_from_room_humidity_pct", spread(edge.wet_from_humidity, per_cent.per_base)}};
  if (edge.break_factor) with_sheet["factor_at_break"] = finite(*edge.break_factor);
  return {
      {"frame_height_mm", finite(millimetres.from_base(edge.frame_length_m))},
      {"gap_conductance_W_m2K", range(edge.gap_conductance_W_m2K)},
      {"frame_u_W_m2K", range(edge.frame_u_W_m2K)},
      {"psi_now_W_mK", range(edge.psi_W_mK)},
      {"coupling_now_W_mK", range(edge.coupling_before_W_mK)},
      {"coupling_with_sheet_W_mK", range(edge.coupling_after_W_mK)},
      {"cut_factor", range(edge.cut_share)},
      {"coldest_in_gap", {{"part", edge.gap_spot}, {"factor_of_centre", range(edge.gap_edge_factor)}}},
      {"coldest_in_room_now", {{"part", edge.room_spot_before}, {"factor", range(edge.room_factor_before)}}},
      {"coldest_in_room_with_sheet", with_sheet}};
}

}  // namespace dewgap::tools::json_parts
