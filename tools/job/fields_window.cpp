// Rows of [window] and [sheet].
#include "tools/job/field_kernel.hpp"

namespace dewgap::tools::rows {
namespace {

using enum Need;
using enum Asked;

std::vector<Field> opening_fields() {
  return {
      {"window", "kind", required, short_job, "how it opens", "\"sliding sash\"",
       one_of<WindowKind>(
           {{"sliding sash", WindowKind::sliding_sash},
            {"casement", WindowKind::casement},
            {"fixed light", WindowKind::fixed_light}},
           [](Survey & s) -> auto& { return s.window.kind; })},
      {"window", "frame", required, short_job, "what the frame is made of", "\"softwood\"",
       one_of<FrameKind>(
           {{"softwood", FrameKind::softwood},
            {"hardwood", FrameKind::hardwood},
            {"PVC-U", FrameKind::pvc_u},
            {"steel", FrameKind::steel},
            {"aluminium", FrameKind::aluminium}},
           [](Survey & s) -> auto& { return s.window.frame; })},
      {"window", "opening_widths_mm", required, short_job, "width of the opening at top, middle, bottom",
       "[903, 900, 901]",
       lengths<3>(
           {100, 4000}, [](Survey & s) -> auto& { return s.window.opening_widths_m; })},
      {"window", "opening_heights_mm", required, short_job, "height of the opening at left, middle, right",
       "[1501, 1500, 1503]",
       lengths<3>(
           {100, 4000}, [](Survey & s) -> auto& { return s.window.opening_heights_m; })},
      {"window", "diagonals_mm", optional, short_job, "both diagonals of the opening", "\"not known\"",
       lengths<2>(
           {140, 5700}, [](Survey & s) -> auto& { return s.window.diagonals_m; })},
  };
}

std::vector<Field> glass_fields() {
  return {
      {"window", "glass_width_mm", optional, short_job, "visible width of one pane", "\"not known\"",
       number(
           millimetres, {20, 4000}, [](Survey & s) -> auto& { return s.window.glass_width_m; })},
      {"window", "glass_height_mm", optional, short_job, "visible height of one pane", "\"not known\"",
       number(
           millimetres, {50, 4000}, [](Survey & s) -> auto& { return s.window.glass_height_m; })},
      {"window", "panes", optional, short_job, "how many such panes", "\"not known\"",
       whole(
           "panes", 1, 200, [](Survey & s) -> auto& { return s.window.pane_count; })},
      {"window", "glass_thickness_mm", optional, short_job, "thickness of the old glass", "\"not known\"",
       number(
           millimetres, {1.5, 25}, [](Survey & s) -> auto& { return s.window.glass_thickness_m; })},
      {"window", "glass_coated", optional, short_job, "does a torch's reflection in it have another colour",
       "\"not known\"", tick([](Survey & s) -> auto& { return s.window.glass_coated; })},
  };
}

std::vector<Field> depth_fields() {
  return {
      {"window", "glass_to_fixing_face_mm", optional, short_job,
       "glass to the face that takes the sheet; two for a sliding sash, one for each sash", "\"not known\"",
       NumbersRule{
           millimetres,
           {0, 240},
           1,
           2,
           [](FileAnswers& a, const std::vector<double>& v) { a.survey.window.glass_to_fixing_face_m = v; }}},
      {"window", "fixing_face_mm", optional, short_job, "width of the member that takes clips or screws",
       "\"not known\"",
       number(
           millimetres, {5, 300}, [](Survey & s) -> auto& { return s.window.fixing_face_m; })},
      {"window", "screw_depth_mm", optional, short_job, "depth of timber that a screw may enter",
       "\"not known\"",
       number(
           millimetres, {0, 200}, [](Survey & s) -> auto& { return s.window.screw_depth_m; })},
      {"window", "frame_thickness_mm", optional, on_request, "frame from room to outdoors", "\"not known\"",
       number(
           millimetres, {5, 200}, [](Survey & s) -> auto& { return s.window.frame_thickness_m; })},
      {"window", "facing", optional, short_job, "which way you look out", "\"not known\"",
       CompassRule{[](FileAnswers& a, double v) { a.survey.window.facing_compass_deg = v; }}},
      {"window", "painted_shut", optional, short_job, "are its joints painted shut", "\"not known\"",
       tick([](Survey & s) -> auto& { return s.window.painted_shut; })},
      {"window", "before_1980", optional, short_job, "is its paint older than 1980", "\"not known\"",
       tick([](Survey & s) -> auto& { return s.window.before_1980; })},
      {"window", "low_or_beside_door", optional, short_job, "low down, beside a door or at stairs",
       "\"not known\"", tick([](Survey & s) -> auto& { return s.window.low_or_beside_door; })},
  };
}

std::vector<Field> part_fields() {
  return {
      {"window", "moves", optional, short_job, "how the sash moves", "\"not known\"",
       one_of<SashMoves>(
           {{"up and down", SashMoves::up_and_down},
            {"sideways", SashMoves::sideways},
            {"inwards", SashMoves::inwards},
            {"outwards", SashMoves::outwards}},
           [](Survey & s) -> auto& { return s.window.moves; })},
      {"window", "catch_stands_out_mm", optional, short_job, "how far a catch stands past the fixing face",
       "\"not known\"",
       number(
           millimetres, {0, 200}, [](Survey & s) -> auto& { return s.window.catch_stands_out_m; })},
      {"window", "handle_stands_out_mm", optional, short_job, "a handle, the same", "\"not known\"",
       number(
           millimetres, {0, 200}, [](Survey & s) -> auto& { return s.window.handle_stands_out_m; })},
      {"window", "stay_stands_out_mm", optional, short_job, "a stay, the same", "\"not known\"",
       number(
           millimetres, {0, 200}, [](Survey & s) -> auto& { return s.window.stay_stands_out_m; })},
      {"window", "between_sashes_mm", optional, short_job, "free depth between sliding sashes",
       "\"not known\"",
       number(
           millimetres, {0, 200}, [](Survey & s) -> auto& { return s.window.between_sashes_m; })},
      {"window", "shutter_mm", optional, short_job, "inside shutter: nearest it comes to the fixing face",
       "\"not known\"",
       clearance_or_none(
           {-200, 2000}, [](Survey & s) -> auto& { return s.window.shutter; })},
      {"window", "blind_mm", optional, short_job, "blind, the same", "\"not known\"",
       clearance_or_none(
           {-200, 2000}, [](Survey & s) -> auto& { return s.window.blind; })},
  };
}

std::vector<Field> material_fields() {
  return {
      {"sheet", "material", required, short_job, "what the sheet is", "\"acrylic\"",
       one_of<SheetKind>(
           {{"acrylic", SheetKind::acrylic},
            {"polycarbonate", SheetKind::polycarbonate},
            {"PETG", SheetKind::petg},
            {"glass", SheetKind::glass},
            {"thin film", SheetKind::pet_film}},
           [](Survey & s) -> auto& { return s.sheet.material; })},
      {"sheet", "grade", optional, on_request, "how an acrylic sheet was made", "\"not known\"",
       one_of<SheetGrade>(
           {{"extruded", SheetGrade::extruded}, {"cast", SheetGrade::cast}},
           [](Survey & s) -> auto& { return s.sheet.grade; })},
      {"sheet", "thickness_mm", optional, short_job, "thickness of the sheet or film", "\"not known\"",
       number(
           millimetres, {0.01, 12}, [](Survey & s) -> auto& { return s.sheet.thickness_m; })},
      {"sheet", "stock_mm", optional, on_request, "largest sheet that the supplier has, both sides",
       "\"not known\"",
       NumbersRule{millimetres,
                   {100, 50000},
                   2,
                   2,
                   [](FileAnswers& a, const std::vector<double>& v) {
                     a.survey.sheet.stock = StockSize{v.at(0), v.at(1)};
                   }}},
      {"sheet", "cover", required, short_job,
       "what it is fixed to and covers: glass only, the moving sash, the fixed frame, or it stands in the "
       "reveal",
       "\"frame\"",
       one_of<Cover>(
           {{"glass", Cover::glass},
            {"sash", Cover::sash},
            {"frame", Cover::frame},
            {"reveal", Cover::reveal}},
           [](Survey & s) -> auto& { return s.sheet.cover; })},
  };
}

std::vector<Field> tape_fields() {
  return {
      {"sheet", "tape", optional, short_job, "tape between sheet and frame", "\"not known\"",
       one_of<TapeKind>(
           {{"closed-cell foam", TapeKind::closed_cell_foam},
            {"open-cell foam", TapeKind::open_cell_foam},
            {"magnetic", TapeKind::magnetic}},
           [](Survey & s) -> auto& { return s.sheet.tape; })},
      {"sheet", "tape_thickness_mm", optional, short_job, "as it will be when pressed", "\"not known\"",
       number(
           millimetres, {0.5, 30}, [](Survey & s) -> auto& { return s.sheet.tape_thickness_m; })},
      {"sheet", "tape_width_mm", optional, short_job, "width of the tape", "\"not known\"",
       number(
           millimetres, {3, 50}, [](Survey & s) -> auto& { return s.sheet.tape_width_m; })},
      {"sheet", "tape_unbroken", optional, short_job, "corners joined, all clips down, no light through",
       "\"not known\"", tick([](Survey & s) -> auto& { return s.sheet.tape_unbroken; })},
      {"sheet", "curtain_gap_mm", optional, on_request,
       "a lined curtain drawn at night, this far from the sheet", "\"not known\"",
       number(
           millimetres, {5, 250}, [](Survey & s) -> auto& { return s.sheet.curtain_gap_m; })},
  };
}

}  // namespace

std::vector<Field> window_fields() {
  auto fields = opening_fields();
  for (auto& field : glass_fields()) fields.push_back(std::move(field));
  for (auto& field : part_fields()) fields.push_back(std::move(field));
  for (auto& field : depth_fields()) fields.push_back(std::move(field));
  return fields;
}

std::vector<Field> sheet_fields() {
  auto fields = material_fields();
  for (auto& field : tape_fields()) fields.push_back(std::move(field));
  return fields;
}

}  // namespace dewgap::tools::rows
