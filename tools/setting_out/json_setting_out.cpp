#include "tools/answer/json_parts_kernel.hpp"
#include "tools/answer/words.hpp"
#include "tools/setting_out/setting_out.hpp"

namespace dewgap::tools {
namespace {

using json_parts::finite;
using json_parts::Json;

Json findings(const WindowToSet& window) {
  Json list = Json::array();
  for (const auto& finding : window.findings) {
    Json one{{"check", name_of(finding.kind)},
             {"severity", name_of(finding.severity)},
             {"sentence", finding.sentence}};
    if (finding.figure_mm) one["figure_mm"] = finite(*finding.figure_mm);
    list.push_back(std::move(one));
  }
  return list;
}

Json marks(const SheetPlan& plan) {
  Json list = Json::array();
  for (const auto& hole : plan.holes) {
    Json one{{"number", hole.number},
             {"member", name_of(hole.member)},
             {"along_mm", hole.along_mm},
             {"offset_mm", finite(hole.offset_mm)},
             {"pilot_diameter_mm", finite(hole.pilot_diameter_mm)},
             {"tight", hole.tight}};
    if (hole.diameter_mm > 0.0) one["hole_diameter_mm"] = finite(hole.diameter_mm);
    if (hole.slot_length_mm > 0.0) {
      one["slot_length_mm"] = finite(hole.slot_length_mm);
      one["slot_angle_deg"] = finite(hole.slot_angle_deg);
    }
    if (hole.pilot_depth_mm > 0.0) one["pilot_depth_mm"] = finite(hole.pilot_depth_mm);
    list.push_back(std::move(one));
  }
  return list;
}

Json tape(const SheetPlan& plan) {
  Json breaks = Json::array();
  for (const auto& one : plan.tape_breaks)
    breaks.push_back(
        {{"member", name_of(one.member)}, {"from_mm", finite(one.from_mm)}, {"to_mm", finite(one.to_mm)}});
  Json pieces = Json::array();
  for (const auto& one : plan.tape_pieces)
    pieces.push_back({{"member", name_of(one.member)},
                      {"from_mm", finite(one.from_mm)},
                      {"length_mm", finite(one.length_mm)}});
  return {{"breaks", breaks}, {"pieces", pieces}};
}

Json window_part(const WindowToSet& window) {
  Json part{{"number", window.number},
            {"name", window.name},
            {"state", json_word(window.state)},
            {"headline", json_word(window.job->assessment.headline)},
            {"cautions", json_parts::cautions(window.job->assessment)}};
  if (!window.reasons.empty()) part["reasons"] = window.reasons;
  if (!window.findings.empty()) part["fit_check"] = findings(window);
  if (window.sun) part["sun_on_sheet"] = json_parts::sun_on_sheet(*window.sun);
  if (!window.plan) return part;
  part["vent_option"] = json_word(window.job->assessment.figures->vent);
  part["cut_and_fix"] = json_parts::cut_and_fix(*window.plan);
  part["marks"] = marks(*window.plan);
  part["tape"] = tape(*window.plan);
  part["order_of_work"] = Json::array();
  for (const auto& step : window.steps) part["order_of_work"].push_back(step.sentence);
  return part;
}

Json layouts(const CutGroup& group) {
  Json list = Json::array();
  for (const auto& layout : group.layouts) {
    Json pieces = Json::array();
    for (const auto& placed : layout.pieces)
      pieces.push_back({{"label", placed.piece.label},
                        {"width_mm", placed.piece.width_mm},
                        {"height_mm", placed.piece.height_mm},
                        {"x_mm", finite(placed.x_mm)},
                        {"y_mm", finite(placed.y_mm)},
                        {"turned", placed.turned}});
    list.push_back({{"used_share", json_parts::share(layout.used_share)}, {"pieces", pieces}});
  }
  return list;
}

Json cut_list_part(const CutList& list) {
  Json groups = Json::array();
  for (const auto& group : list.groups)
    groups.push_back({{"material", name_of(group.sheet)},
                      {"thickness_mm", finite(group.thickness_mm)},
                      {"stock_width_mm", finite(1000.0 * group.stock.width_m)},
                      {"stock_height_mm", finite(1000.0 * group.stock.height_m)},
                      {"area_m2", finite(group.area_m2)},
                      {"weight_kg", finite(group.weight_kg)},
                      {"sheets", layouts(group)}});
  Json shopping = Json::array();
  for (const auto& item : list.shopping) shopping.push_back({{"count", item.count}, {"what", item.what}});
  return {{"groups", groups}, {"shopping", shopping}};
}

}  // namespace

std::string json_setting_out(const JobToSet& job) {
  Json document{{"schema_version", 1}, {"tool", json_parts::tool()}, {"job", job.name}};
  document["windows"] = Json::array();
  for (const auto& window : job.windows) document["windows"].push_back(window_part(window));
  if (job.cut_list) document["cut_list"] = cut_list_part(*job.cut_list);
  return json_parts::text_of(document);
}

}  // namespace dewgap::tools
