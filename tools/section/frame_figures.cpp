#include "tools/section/frame_figures.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <set>

#include "dewgap/window/section_readings.hpp"

namespace dewgap::tools {
namespace {

/// Along x and along y, m.
struct Extent {
  double x_m = 0.0;
  double y_m = 0.0;
};

Extent extent_of(const SectionItem& item) {
  const auto [left, right] = std::minmax_element(item.polygon.begin(), item.polygon.end(),
                                                 [](const auto& a, const auto& b) { return a.x_m < b.x_m; });
  const auto [low, high] = std::minmax_element(item.polygon.begin(), item.polygon.end(),
                                               [](const auto& a, const auto& b) { return a.y_m < b.y_m; });
  return {right->x_m - left->x_m, high->y_m - low->y_m};
}

/// A pane is thin: heat goes through its shorter side.
double thickness_m(const SectionItem& item) {
  const Extent extent = extent_of(item);
  return std::min(extent.x_m, extent.y_m);
}

const SectionItem* item_named(const SectionFile& file, const std::string& name) {
  const auto& items = file.section.items;
  const auto at = std::find_if(items.begin(), items.end(), [&](const auto& one) { return one.name == name; });
  return at == items.end() ? nullptr : &*at;
}

/// Resistance of a pane or a gap; nothing for a cavity, whose conductivity depends on its temperatures.
std::optional<double> resistance_m2K_W(const SectionItem& item) {
  if (const auto* solid = std::get_if<SolidFill>(&item.fill))
    return thickness_m(item) / solid->conductivity_W_mK;
  if (const auto* gap = std::get_if<GapFill>(&item.fill)) return 1.0 / gap->conductance_W_m2K;
  return std::nullopt;
}

std::set<double> surface_resistances(const SectionFile& file, AirRole role) {
  std::set<double> found;
  for (const auto& boundary : file.section.boundaries)
    if (const auto* air = std::get_if<AirSide>(&boundary.condition); air && air->role == role)
      found.insert(air->surface_resistance_m2K_W);
  return found;
}

double u_value_beside_W_m2K(const SectionFile& file) {
  double sum_m2K_W = 0.0;
  for (const auto& name : file.frame->beside) sum_m2K_W += *resistance_m2K_W(*item_named(file, name));
  for (const auto role : {AirRole::room, AirRole::outdoors})
    sum_m2K_W += *surface_resistances(file, role).begin();
  return 1.0 / sum_m2K_W;
}

}  // namespace

std::vector<FileProblem> frame_problems(const SectionFile& file) {
  std::vector<FileProblem> problems;
  if (!file.frame) return problems;
  const auto report = [&](const std::string& what) {
    problems.push_back({file.frame->mark, "frame: " + what});
  };
  for (const auto& name : file.frame->beside) {
    const auto* item = item_named(file, name);
    if (item == nullptr)
      report(fmt::format("beside: \"{}\" is no item or layer", name));
    else if (!resistance_m2K_W(*item))
      report(fmt::format("beside: \"{}\" is a cavity; give its conductance_W_m2K instead", name));
  }
  for (const auto role : {AirRole::room, AirRole::outdoors})
    if (surface_resistances(file, role).size() != 1)
      report(fmt::format("needs one surface resistance {} (permitted: one for all sides of that kind)",
                         role == AirRole::room ? "to the room" : "to outdoors"));
  return problems;
}

std::optional<FrameFigures> frame_figures(const SolvedSection& solved) {
  const auto& frame = solved.file.frame;
  const auto& coupling = solved.result.coupling;
  if (!frame || !coupling) return std::nullopt;
  FrameFigures figures;
  figures.beside_u_value_W_m2K = u_value_beside_W_m2K(solved.file);
  const PanelBeside beside{figures.beside_u_value_W_m2K, frame->beside_m};
  if (frame->u_value_W_m2K) {
    figures.psi_W_mK = {
        linear_transmittance_W_mK(coupling->value_W_mK, {*frame->u_value_W_m2K, frame->length_m}, beside),
        coupling->error_bound_W_mK};
  } else {
    figures.frame_u_value_W_m2K = {frame_transmittance_W_m2K(coupling->value_W_mK, frame->length_m, beside),
                                   coupling->error_bound_W_mK / frame->length_m};
  }
  return figures;
}

std::vector<AirFace> lowest_in_air(const SolvedSection& solved) {
  std::vector<AirFace> found;
  for (const auto& item : solved.file.section.items)
    if (std::holds_alternative<GapFill>(item.fill) || std::holds_alternative<CavityFill>(item.fill))
      found.push_back({item.name, lowest_on_item(solved.result, item.name)});
  return found;
}

}  // namespace dewgap::tools
