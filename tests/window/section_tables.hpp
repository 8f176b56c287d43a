// Sections drawn from tables under reference/, and short ways to draw small ones.
#pragma once

#include <charconv>
#include <string>
#include <string_view>
#include <vector>

#include "dewgap/window/section.hpp"
#include "support/reference.hpp"

namespace dewgap::test {

/// "x y x y ..." in mm as a polygon.
inline std::vector<SectionPoint> polygon_of(std::string_view text_mm) {
  std::vector<double> numbers_mm;
  for (const char* at = text_mm.data(); at < text_mm.data() + text_mm.size();) {
    double value = 0.0;
    const auto read = std::from_chars(at, text_mm.data() + text_mm.size(), value);
    if (read.ec != std::errc{}) {
      throw std::invalid_argument("no polygon: " + std::string(text_mm));
    }
    numbers_mm.push_back(value);
    at = read.ptr + 1;  // past the blank
  }
  std::vector<SectionPoint> polygon;
  for (std::size_t i = 0; i + 1 < numbers_mm.size(); i += 2) {
    polygon.push_back({1e-3 * numbers_mm[i], 1e-3 * numbers_mm[i + 1]});
  }
  return polygon;
}

inline SectionFill fill_of(const std::string& kind, std::optional<double> conductivity_W_mK) {
  if (kind == "unventilated") {
    return CavityFill{};
  }
  if (kind == "slightly_ventilated") {
    return CavityFill{.ventilation = CavityVentilation::slightly_ventilated};
  }
  if (kind != "solid") {
    throw std::invalid_argument("no such fill: " + kind);
  }
  return SolidFill{conductivity_W_mK.value()};
}

inline std::vector<SectionItem> items_of(std::string_view table_path) {
  const auto table = read_reference(table_path);
  std::vector<SectionItem> items;
  for (std::size_t row = 0; row < table.row_count(); ++row) {
    SectionItem item{table.text(row, "item"),
                     fill_of(table.text(row, "fill"), table.optional_number(row, "conductivity_W_mK")),
                     polygon_of(table.text(row, "polygon_mm")),
                     {}};
    if (!table.text(row, "replaces").empty()) {
      item.replaces.push_back(table.text(row, "replaces"));
    }
    items.push_back(item);
  }
  return items;
}

inline std::vector<SectionPoint> rectangle_mm(double left, double right, double low, double high) {
  return {{1e-3 * left, 1e-3 * low},
          {1e-3 * right, 1e-3 * low},
          {1e-3 * right, 1e-3 * high},
          {1e-3 * left, 1e-3 * high}};
}

/// Room above at 20 C, outdoors below at 0 C, cut-offs at the sides of a rectangle.
inline std::vector<SectionBoundary> room_above(double width_mm, double height_mm, double rsi_m2K_W = 0.13,
                                               double rse_m2K_W = 0.04) {
  return {{"room", AirSide{AirRole::room, 20.0, rsi_m2K_W, {}}, {EdgesOnY{1e-3 * height_mm}}},
          {"outdoors", AirSide{AirRole::outdoors, 0.0, rse_m2K_W, {}}, {EdgesOnY{0.0}}},
          {"sides", CutOff{}, {EdgesOnX{0.0}, EdgesOnX{1e-3 * width_mm}}}};
}

/// ISO 10211 case 2.
inline Section iso_10211_case_2() {
  return {items_of("iso_10211/case_2_items.csv"),
          {{"room", AirSide{AirRole::room, 20.0, 0.11, {}}, {EdgesOnY{0.0}}},
           {"outdoors", AirSide{AirRole::outdoors, 0.0, 0.06, {}}, {EdgesOnY{0.0475}}},
           {"sides", CutOff{}, {EdgesOnX{0.0}, EdgesOnX{0.5}}}}};
}

/// ISO 10077-2 section D.4.
inline Section iso_10077_2_section_d4() {
  return {
      items_of("iso_10077_2/section_d4_items.csv"),
      {{"room",
        AirSide{AirRole::room, 20.0, 0.13, CornerFilm{0.20, 0.030}},
        {EdgesAlong{{0.300, 0.051}, {0.0, 0.071}}}},
       {"outdoors", AirSide{AirRole::outdoors, 0.0, 0.04, {}}, {EdgesAlong{{0.0, 0.005}, {0.300, 0.023}}}},
       {"cut-offs", CutOff{}, {EdgesOnX{0.0}, EdgesOnX{0.300}}}}};
}

}  // namespace dewgap::test
