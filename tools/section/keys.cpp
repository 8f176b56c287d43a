// What may stand in a section file.
#include <fmt/format.h>

#include "tools/section/keys_kernel.hpp"

namespace dewgap::tools::section_file {
namespace {

constexpr auto required = KeyNeed::required;
constexpr auto optional = KeyNeed::optional;
constexpr std::size_t name_bytes = 80;
constexpr std::string_view cavity_words =
    R"("unventilated", "slightly ventilated", or "open to NAME" with the name of a side)";
constexpr PermittedRange resistance_m2K_W{0.0, 100.0};

/// What fills a layer or an item: one of material, cavity and conductance.
std::vector<SectionKey> fill_keys(std::string_view table) {
  return {{table, "material", optional, TextKey{name_bytes}},
          {table, "cavity", optional, TextKey{name_bytes + 8, cavity_words}},
          {table, "conductance_W_m2K", optional, NumberKey{"W/(m2 K)", {0.01, 1000.0}}},
          {table, "emissivities", optional, NumbersKey{2, 2, "-", {0.01, 1.0}}}};
}

std::vector<SectionKey> all_keys() {
  std::vector<SectionKey> keys{
      {"section", "name", required, TextKey{name_bytes}},
      {"section", "note", optional, TextKey{2000}},
      {"section", "cavities", optional, WordKey{{"standard difference", "solved walls"}}},
      {"section", "shown_mm", optional, NumbersKey{4, 4, "mm", place_mm}},
      {"stack", "along", required, WordKey{{"x", "y"}}},
      {"stack", "from_mm", required, NumbersKey{2, 2, "mm", place_mm}},
      {"stack", "across_mm", required, NumberKey{"mm", size_mm}},
      {"layers", "name", required, TextKey{name_bytes}},
      {"layers", "thickness_mm", required, NumberKey{"mm", size_mm}},
      {"items", "name", required, TextKey{name_bytes}},
      {"items", "rectangle_mm", optional, NumbersKey{4, 4, "mm", place_mm}},
      {"items", "polygon_mm", optional, PointsKey{4, 400}},
      {"items", "replaces", optional, TextsKey{100}},
      {"sides", "name", required, TextKey{name_bytes}},
      {"sides", "kind", required, WordKey{{"room", "outdoors", "cut-off"}}},
      {"sides", "temperature_C", optional, NumberKey{"C", {-100.0, 200.0}}},
      {"sides", "resistance_m2K_W", optional, NumberKey{"m2 K/W", resistance_m2K_W}},
      {"sides", "corner_resistance_m2K_W", optional, NumberKey{"m2 K/W", resistance_m2K_W}},
      {"sides", "corner_reach_mm", optional, NumberKey{"mm", {0.01, 1000.0}}},
      {"sides", "on_x_mm", optional, NumbersKey{1, 100, "mm", place_mm}},
      {"sides", "on_y_mm", optional, NumbersKey{1, 100, "mm", place_mm}},
      {"sides", "between_mm", optional, PointsKey{2, 200}},
      {"sides", "along_mm", optional, PointsKey{2, 200}},
      {"frame", "length_mm", required, NumberKey{"mm", {1.0, 10'000.0}}},
      {"frame", "beside", required, TextsKey{20}},
      {"frame", "beside_mm", required, NumberKey{"mm", {1.0, 10'000.0}}},
      {"frame", "frame_u_value_W_m2K", optional, NumberKey{"W/(m2 K)", {0.0, 20.0}}},
      {"points", "name", required, TextKey{name_bytes}},
      {"points", "at_mm", required, NumbersKey{2, 2, "mm", place_mm}}};
  for (const auto* table : {"layers", "items"})
    for (auto& key : fill_keys(table)) keys.push_back(std::move(key));
  return keys;
}

std::string count_text(std::size_t least, std::size_t most) {
  return least == most ? fmt::format("{}", most) : fmt::format("{} to {}", least, most);
}

struct PermittedText {
  std::string operator()(const NumberKey& rule) const {
    return fmt::format("{} to {} {}", rule.permitted.min, rule.permitted.max, rule.unit);
  }
  std::string operator()(const NumbersKey& rule) const {
    return fmt::format("a list of {} numbers, each {} to {}{}", count_text(rule.least, rule.most),
                       rule.permitted.min, rule.permitted.max,
                       rule.unit == "-" ? std::string() : fmt::format(" {}", rule.unit));
  }
  std::string operator()(const PointsKey& rule) const {
    return fmt::format("a list of {} points [x, y], each {} to {} mm", count_text(rule.least, rule.most),
                       place_mm.min, place_mm.max);
  }
  std::string operator()(const TextKey& rule) const {
    return rule.permitted.empty() ? fmt::format("text of 1 to {} bytes", rule.most_bytes)
                                  : std::string(rule.permitted);
  }
  std::string operator()(const TextsKey& rule) const {
    return fmt::format("a list of up to {} names", rule.most);
  }
  std::string operator()(const WordKey& rule) const {
    std::string text;
    for (std::size_t i = 0; i < rule.words.size(); ++i)
      text += fmt::format("{}\"{}\"",
                          i == 0                       ? ""
                          : i + 1 == rule.words.size() ? " or "
                                                       : ", ",
                          rule.words[i]);
    return text;
  }
};

}  // namespace

const std::vector<SectionKey>& section_keys() {
  static const auto keys = all_keys();
  return keys;
}

std::vector<std::string> table_names() {
  return {"section", "materials", "stack", "layers", "items", "sides", "points", "frame"};
}

std::string permitted_text(const KeyRule& rule) {
  return std::visit(PermittedText{}, rule);
}

}  // namespace dewgap::tools::section_file
