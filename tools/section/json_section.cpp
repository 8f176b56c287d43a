#include <fmt/format.h>

#include "dewgap/window/section_readings.hpp"
#include "tools/answer/json_parts_kernel.hpp"
#include "tools/answer/json_schema.hpp"
#include "tools/section/frame_figures.hpp"
#include "tools/section/section_answer.hpp"
#include "tools/setting_out/csv_cell.hpp"

namespace dewgap::tools {
namespace {

using json_parts::finite;
using json_parts::Json;

Json place(SectionPoint at) {
  return {{"x_mm", finite(1e3 * at.x_m)}, {"y_mm", finite(1e3 * at.y_m)}};
}

Json settled(const SettledTemperature& temperature) {
  Json all = place(temperature.at);
  all["temperature_C"] = finite(temperature.temperature_C);
  all["estimated_error_K"] = finite(temperature.estimated_error_K);
  return all;
}

std::string_view kind_of(const SectionBoundary& boundary) {
  const auto* air = std::get_if<AirSide>(&boundary.condition);
  if (air == nullptr) return "cut-off";
  return air->role == AirRole::room ? "room" : "outdoors";
}

Json sides(const SolvedSection& solved) {
  Json list = Json::array();
  for (std::size_t i = 0; i < solved.file.section.boundaries.size(); ++i) {
    const auto& boundary = solved.file.section.boundaries[i];
    Json side{{"name", boundary.name}, {"kind", kind_of(boundary)}};
    if (const auto* air = std::get_if<AirSide>(&boundary.condition)) {
      side["temperature_C"] = finite(air->temperature_C);
      side["resistance_m2K_W"] = finite(air->surface_resistance_m2K_W);
      if (!solved.result.heat.empty()) {
        side["heat_into_section_W_m"] = finite(solved.result.heat[i].flow_W_m);
        side["half_difference_W_m"] = finite(solved.result.heat[i].half_difference_W_m);
      }
    }
    list.push_back(std::move(side));
  }
  return list;
}

Json items(const SolvedSection& solved) {
  Json list = Json::array();
  for (std::size_t i = 0; i < solved.file.looks.size(); ++i) {
    const auto& look = solved.file.looks[i];
    Json item{{"name", solved.file.section.items[i].name}, {"material", look.material}};
    if (look.conductivity_W_mK) item["conductivity_W_mK"] = finite(*look.conductivity_W_mK);
    list.push_back(std::move(item));
  }
  return list;
}

Json cavities(const SolvedSection& solved) {
  Json list = Json::array();
  for (const auto& cavity : solved.result.cavities)
    list.push_back({{"item", cavity.item},
                    {"conductivity_W_mK", finite(cavity.conductivity_W_mK)},
                    {"flow_along", cavity.flow == FlowAxis::x ? "x" : "y"},
                    {"depth_mm", finite(1e3 * cavity.depth_m)},
                    {"width_mm", finite(1e3 * cavity.width_m)},
                    {"wall_difference_K", finite(cavity.wall_difference_K)},
                    {"mean_temperature_C", finite(cavity.mean_temperature_C)}});
  return list;
}

Json points(const SolvedSection& solved) {
  Json list = Json::array();
  for (std::size_t i = 0; i < solved.file.points.size(); ++i) {
    Json point{{"name", solved.file.points[i].name}};
    point.update(settled(solved.result.watched.at(i)));
    list.push_back(std::move(point));
  }
  return list;
}

Json with_error(const FigureWithError& figure, const char* value, const char* error) {
  return {{value, finite(figure.value)}, {error, finite(figure.error)}};
}

Json frame(const FrameFigures& figures) {
  Json all{{"beside_u_value_W_m2K", finite(figures.beside_u_value_W_m2K)}};
  if (const auto& uf = figures.frame_u_value_W_m2K)
    all["frame_u_value"] = with_error(*uf, "value_W_m2K", "error_bound_W_m2K");
  if (const auto& psi = figures.psi_W_mK)
    all["linear_transmittance"] = with_error(*psi, "value_W_mK", "error_bound_W_mK");
  return all;
}

Json lowest_in_gaps(const SolvedSection& solved) {
  Json list = Json::array();
  for (const auto& air : lowest_in_air(solved)) {
    Json one = place(air.lowest.at);
    one["item"] = air.item;
    one["temperature_C"] = finite(air.lowest.temperature_C);
    list.push_back(std::move(one));
  }
  return list;
}

}  // namespace

std::string json_section(const SolvedSection& solved) {
  const auto& result = solved.result;
  Json document{{"schema_version", json_schema_version},
                {"tool", json_parts::tool()},
                {"section", {{"name", solved.file.name}, {"note", solved.file.note}}}};
  if (result.lowest_room_face) {
    document["lowest_on_room_side"] = settled(*result.lowest_room_face);
    document["lowest_on_room_side"]["on"] = items_at(solved, result.lowest_room_face->at);
  }
  if (const auto factor = least_temperature_factor(solved)) document["temperature_factor"] = finite(*factor);
  if (const auto humidity = misting_humidity(solved)) document["misting_humidity"] = finite(*humidity);
  if (result.coupling)
    document["coupling"] = {{"value_W_mK", finite(result.coupling->value_W_mK)},
                            {"error_bound_W_mK", finite(result.coupling->error_bound_W_mK)}};
  if (const auto figures = frame_figures(solved)) document["frame"] = frame(*figures);
  document["sides"] = sides(solved);
  document["items"] = items(solved);
  document["cavities"] = cavities(solved);
  document["lowest_in_gaps"] = lowest_in_gaps(solved);
  document["points"] = points(solved);
  document["run"] = {{"relative_bound", solved.options.coupling_error_bound},
                     {"most_cells", solved.options.max_cells},
                     {"cells", result.cells},
                     {"grids", result.passes},
                     {"heat_imbalance", finite(result.heat_imbalance)}};
  return json_parts::text_of(document);
}

std::string csv_section(const SolvedSection& solved) {
  std::string text = "side,along_mm,x_mm,y_mm,temperature_C\n";
  for (const auto& side : room_sides(solved.file))
    for (const auto& point : profile_along(solved.result, side))
      text += fmt::format("{},{:.4f},{:.4f},{:.4f},{:.4f}\n", csv_text(side), 1e3 * point.along_m,
                          1e3 * point.at.x_m, 1e3 * point.at.y_m, point.temperature_C);
  return text;
}

}  // namespace dewgap::tools
