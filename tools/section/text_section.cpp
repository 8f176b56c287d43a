#include <fmt/format.h>

#include <cmath>

#include "tools/answer/figures_text.hpp"
#include "tools/answer/sheet_of_lines.hpp"
#include "tools/section/frame_figures.hpp"
#include "tools/section/section_answer.hpp"

namespace dewgap::tools {
namespace {

/// One significant digit, never less than the value.
std::string bound_text(double bound) {
  if (!(bound > 0.0)) return "0";
  const double digit = std::pow(10.0, std::floor(std::log10(bound)));
  return fmt::format("{:.1g}", std::ceil(bound / digit - 1e-9) * digit);
}

/// Four significant digits are more than a drawing's materials are known to.
std::string coupling_text(double value) {
  return fmt::format("{:.4g}", value);
}

void add_verdict(SheetOfLines& page, const SolvedSection& solved) {
  const auto& result = solved.result;
  if (const auto& lowest = result.lowest_room_face) {
    page.paragraph(fmt::format("Lowest on the room side: {} C at {}.", figure(lowest->temperature_C, 2),
                               place_text(lowest->at)));
    page.paragraph(fmt::format("On: {}. Error about {} K (an estimate).", items_at(solved, lowest->at),
                               bound_text(lowest->estimated_error_K)));
  }
  if (const auto factor = least_temperature_factor(solved))
    page.paragraph(fmt::format("Temperature factor fRsi {}.", figure(*factor, 3)));
  if (const auto humidity = misting_humidity(solved))
    page.paragraph(fmt::format("{} there from {} % humidity of the room's air.",
                               solved.result.lowest_room_face->temperature_C < 0.0 ? "Frost" : "Mist",
                               figure(100.0 * *humidity, 0)));
  if (result.coupling)
    page.paragraph(fmt::format("Heat a metre and kelvin (L2D): {} W/(m K), wrong by {} at most.",
                               coupling_text(result.coupling->value_W_mK),
                               bound_text(result.coupling->error_bound_W_mK)));
}

void add_frame(SheetOfLines& page, const SolvedSection& solved) {
  const auto figures = frame_figures(solved);
  if (!figures) return;
  if (const auto& uf = figures->frame_u_value_W_m2K)
    page.paragraph(fmt::format(
        "Frame (Uf, ISO 10077-2): {} W/(m2 K), wrong by {} at most; beside it {} W/(m2 K).",
        coupling_text(uf->value), bound_text(uf->error), coupling_text(figures->beside_u_value_W_m2K)));
  if (const auto& psi = figures->psi_W_mK)
    page.paragraph(fmt::format(
        "Edge (Psi, ISO 10077-2): {} W/(m K), wrong by {} at most; beside it {} W/(m2 K).",
        coupling_text(psi->value), bound_text(psi->error), coupling_text(figures->beside_u_value_W_m2K)));
}

void add_gaps(SheetOfLines& page, const SolvedSection& solved) {
  const auto lowest = lowest_in_air(solved);
  if (lowest.empty()) return;
  page.blank();
  page.line("Lowest along the faces of gaps and cavities, C");
  for (const auto& air : lowest) {
    page.line(
        fmt::format("  {} {:>9}", padded(one_line(air.item, 40), 40), figure(air.lowest.temperature_C, 2)));
    page.paragraph(fmt::format("at {}", place_text(air.lowest.at)), "    ", "    ");
  }
}

void add_heat(SheetOfLines& page, const SolvedSection& solved) {
  if (solved.result.heat.empty()) return;
  page.blank();
  page.line("Heat into the section, W a metre of length");
  for (std::size_t i = 0; i < solved.result.heat.size(); ++i)
    if (std::holds_alternative<AirSide>(solved.file.section.boundaries[i].condition))
      page.line(fmt::format("  {} {:>9}", padded(one_line(solved.result.heat[i].boundary, 40), 40),
                            figure(solved.result.heat[i].flow_W_m, 3)));
}

void add_cavities(SheetOfLines& page, const SolvedSection& solved) {
  if (solved.result.cavities.empty()) return;
  page.blank();
  page.line("Cavities, by ISO 10077-2: taken for a solid of W/(m K)");
  for (const auto& cavity : solved.result.cavities) {
    page.line(fmt::format("  {} {:>9.4f}", padded(one_line(cavity.item, 40), 40), cavity.conductivity_W_mK));
    page.paragraph(fmt::format("{}; {} mm along the flow, {} across, walls {} K apart",
                               look_of(solved, cavity.item).material, figure(1e3 * cavity.depth_m, 1),
                               figure(1e3 * cavity.width_m, 1), figure(cavity.wall_difference_K, 1)),
                   "    ", "    ");
  }
}

void add_points(SheetOfLines& page, const SolvedSection& solved) {
  if (solved.file.points.empty()) return;
  page.blank();
  page.line("Points asked for, C");
  for (std::size_t i = 0; i < solved.file.points.size(); ++i)
    page.line(fmt::format("  {} {:>9}", padded(one_line(solved.file.points[i].name, 40), 40),
                          figure(solved.result.watched.at(i).temperature_C, 2)));
}

void add_section(SheetOfLines& page, const SolvedSection& solved) {
  page.blank();
  page.paragraph(fmt::format("Section: {}", solved.file.name), {}, "  ");
  if (!solved.file.note.empty()) page.paragraph(solved.file.note, "  ", "  ");
  for (const auto& boundary : solved.file.section.boundaries)
    if (const auto* air = std::get_if<AirSide>(&boundary.condition))
      page.paragraph(fmt::format("{}: {} C, surface resistance {} m2 K/W", boundary.name,
                                 figure(air->temperature_C, 1), air->surface_resistance_m2K_W),
                     "  ", "    ");
  page.paragraph(
      fmt::format("Steady heat conduction in the plane; no moisture, no air that flows. {} cells, {} "
                  "grids.",
                  solved.result.cells, solved.result.passes),
      "  ", "  ");
}

}  // namespace

std::string text_section(const SolvedSection& solved) {
  SheetOfLines page;
  add_verdict(page, solved);
  add_frame(page, solved);
  add_gaps(page, solved);
  add_heat(page, solved);
  add_points(page, solved);
  add_cavities(page, solved);
  add_section(page, solved);
  return page.text();
}

std::string reached_text(const SolvedSection& solved) {
  const auto& result = solved.result;
  std::string text = fmt::format("{}; reached with {} cells on {} grids: ", explain(result.status),
                                 result.cells, result.passes);
  if (result.coupling)
    text += fmt::format("L2D {} W/(m K), wrong by {} at most; ", coupling_text(result.coupling->value_W_mK),
                        bound_text(result.coupling->error_bound_W_mK));
  if (result.lowest_room_face)
    text += fmt::format("lowest on the room side {} C, error about {} K; ",
                        figure(result.lowest_room_face->temperature_C, 2),
                        bound_text(result.lowest_room_face->estimated_error_K));
  return text + "a larger --bound or more --most-cells may do";
}

}  // namespace dewgap::tools
