// Rows of [edge].
#include "dewgap/assessment/edge_of_window.hpp"
#include "tools/job/field_kernel.hpp"

namespace dewgap::tools::rows {
namespace {

using enum Need;
using enum Asked;

/// A size of the section, in the drawing's own range.
template <class Where>
FieldRule size(PermittedRange permitted_m, Where where) {
  return number(millimetres, {millimetres.from_base(permitted_m.min), millimetres.from_base(permitted_m.max)},
                where);
}

}  // namespace

std::vector<Field> edge_fields() {
  return {
      {"edge", "work_out", optional, on_request, "is it to be worked out", "\"no\"",
       tick([](Survey & s) -> auto& { return s.edge.work_out; })},
      {"edge", "rail_face_mm", optional, on_request,
       "height of the bottom rail seen from the room, foot to sight line; of steel the bar alone",
       "\"not known\"",
       size(
           edge_range::rail_face_m, [](Survey & s) -> auto& { return s.edge.rail_face_m; })},
      {"edge", "glass_to_room_face_mm", optional, on_request,
       "glass to the bottom rail's room face; timber alone", "\"not known\"",
       size(
           ready_range::glass_to_room_face_m,
           [](Survey & s) -> auto& { return s.edge.glass_to_room_face_m; })},
      {"edge", "timber_sub_frame", optional, on_request, "steel: is it screwed to timber", "\"not known\"",
       tick([](Survey & s) -> auto& { return s.edge.timber_sub_frame; })},
      {"edge", "frame_face_mm", optional, on_request,
       "height of the fixed frame below the bottom rail; under steel that of the timber", "\"not known\"",
       size(
           ready_range::timber_face_m, [](Survey & s) -> auto& { return s.edge.frame_face_m; })},
      {"edge", "outer_reveal_mm", optional, on_request, "the wall's outdoor face to the frame's",
       "\"not known\"",
       size(
           ready_range::outer_reveal_m, [](Survey & s) -> auto& { return s.edge.outer_reveal_m; })},
      {"edge", "inner_reveal_mm", optional, on_request, "the frame's room face to the wall's",
       "\"not known\"",
       size(
           ready_range::inner_reveal_m, [](Survey & s) -> auto& { return s.edge.inner_reveal_m; })},
      {"edge", "batten_depth_mm", optional, on_request, "of a sheet in the reveal: how deep its batten is",
       "\"not known\"",
       size(
           ready_range::batten_m, [](Survey & s) -> auto& { return s.edge.batten_depth_m; })},
  };
}

}  // namespace dewgap::tools::rows
