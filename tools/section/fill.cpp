#include <fmt/format.h>

#include <cmath>

#include "tools/answer/plain_text.hpp"
#include "tools/section/fill_kernel.hpp"

namespace dewgap::tools::section_file {
namespace {

constexpr std::string_view open_to = "open to ";

Filled solid_of(TableKeys& keys, Materials& materials) {
  const auto name = keys.text("material");
  if (name.empty()) return {};
  const auto conductivity = materials.conductivity(name);
  if (!conductivity) {
    keys.report(keys.mark_of("material"),
                fmt::format("material: \"{}\" is neither in [materials] nor carried{} (carried: {})",
                            one_line(name, 40), nearest_hint(name, materials.names()),
                            fmt::join(carried_materials(), ", ")));
    return {};
  }
  return {SolidFill{*conductivity}, {name, conductivity, materials.hatch_of(name)}};
}

Filled cavity_of(TableKeys& keys) {
  const auto text = keys.text("cavity");
  CavityFill cavity;
  if (const auto emissivities = keys.numbers("emissivities"); !emissivities.empty()) {
    cavity.emissivity_1 = emissivities[0];
    cavity.emissivity_2 = emissivities[1];
  }
  if (text.starts_with(open_to) && text.size() > open_to.size()) {
    if (keys.has("emissivities"))
      keys.report(keys.mark_of("emissivities"), "emissivities: an open cavity has none");
    return {OpenFill{text.substr(open_to.size())}, {text, std::nullopt, Material::air_space}};
  }
  if (text == "slightly ventilated") cavity.ventilation = CavityVentilation::slightly_ventilated;
  if (!text.empty() && text != "unventilated" && text != "slightly ventilated")
    keys.refuse("cavity", fmt::format("\"{}\" is none of the permitted words", one_line(text, 40)));
  return {cavity, {fmt::format("cavity, {}", text), std::nullopt, Material::air_space}};
}

Filled gap_of(TableKeys& keys) {
  const auto conductance = keys.number("conductance_W_m2K");
  if (!conductance) return {};
  return {GapFill{*conductance},
          {fmt::format("gap, {} W/(m2 K)", *conductance), std::nullopt, Material::air_space}};
}

}  // namespace

std::vector<FileProblem> Materials::read(const TomlNode::Table& own) {
  std::vector<FileProblem> problems;
  for (const auto& entry : own) {
    const auto value = number_in(entry.node);
    if (value && *value >= conductivity_W_mK.min && *value <= conductivity_W_mK.max) {
      own_[entry.key] = *value;
      continue;
    }
    const auto complaint =
        value ? fmt::format("{} is out of range", value_text(entry.node))
              : fmt::format("{} is {}, not a number", value_text(entry.node), kind_text(entry.node));
    problems.push_back({entry.node.mark, fmt::format("materials \"{}\": {} (permitted: {} to {} W/(m K))",
                                                     one_line(entry.key, 40), complaint,
                                                     conductivity_W_mK.min, conductivity_W_mK.max)});
    own_[entry.key] = 1.0;  // so that its items are not refused as well
  }
  return problems;
}

std::optional<double> Materials::conductivity(const std::string& name) const {
  const auto at = own_.find(name);
  return at == own_.end() ? carried_conductivity_W_mK(name) : at->second;
}

std::vector<std::string> Materials::names() const {
  auto names = carried_materials();
  for (const auto& [name, conductivity] : own_) names.push_back(name);
  return names;
}

Filled fill_of(TableKeys& keys, Materials& materials) {
  const int given = static_cast<int>(keys.has("material")) + static_cast<int>(keys.has("cavity")) +
                    static_cast<int>(keys.has("conductance_W_m2K"));
  if (given != 1) {
    keys.report(keys.mark(), fmt::format("{} of material, cavity and conductance_W_m2K; give one of them",
                                         given == 0 ? "none" : "more than one"));
    return {};
  }
  if (keys.has("emissivities") && !keys.has("cavity"))
    keys.report(keys.mark_of("emissivities"), "emissivities: only a cavity has them");
  if (keys.has("material")) return solid_of(keys, materials);
  return keys.has("cavity") ? cavity_of(keys) : gap_of(keys);
}

}  // namespace dewgap::tools::section_file
