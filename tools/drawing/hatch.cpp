#include <fmt/format.h>

#include <string_view>

#include "tools/drawing/hatch_kernel.hpp"

namespace dewgap::tools {
namespace {

struct Hatch {
  std::string_view word;  ///< of the id
  double width = 1.0;     ///< of the tile, mm on paper
  double height = 1.0;
  std::string_view marks;  ///< black, on white
};

Hatch hatch_of(Material material) {
  switch (material) {
    case Material::glass:  // pairs of short slanting strokes
      return {"glass", 5, 5, R"(<path d="M0.6 2.2L2.2 0.6M1.4 2.6L2.6 1.4M3.2 4.6L4.6 3.2"/>)"};
    case Material::timber:  // flowing grain
      return {"timber", 8, 4, R"(<path d="M0 1Q2 0.2 4 1T8 1M0 2.3Q2 1.5 4 2.3T8 2.3M0 3.5H8"/>)"};
    case Material::acrylic:  // close even slant
      return {"acrylic", 1.2, 1.2, R"(<path d="M-0.3 0.3L0.3 -0.3M0 1.2L1.2 0M0.9 1.5L1.5 0.9"/>)"};
    case Material::foam_tape:  // bubbles
      return {"foam", 2.4, 2.4,
              R"(<circle cx="0.7" cy="0.7" r="0.42"/><circle cx="1.8" cy="1.8" r="0.3"/>)"
              R"(<circle cx="1.9" cy="0.5" r="0.18"/>)"};
    case Material::masonry:  // bricks
      return {"masonry", 8, 5, R"(<path d="M0 0H8M0 2.5H8M2 0V2.5M6 2.5V5"/>)"};
    case Material::metal:  // crossed slants
      return {"metal", 1.6, 1.6, R"(<path d="M0 1.6L1.6 0M0 0L1.6 1.6"/>)"};
  }
  return {};
}

}  // namespace

std::string_view name_of(Material material) {
  return material == Material::foam_tape ? "foam tape" : hatch_of(material).word;
}

std::string hatch_id(Material material, const std::string& id_start) {
  return fmt::format("{}-{}", id_start, hatch_of(material).word);
}

std::string hatch_pattern(Material material, const std::string& id_start, double unit) {
  const auto hatch = hatch_of(material);
  return fmt::format(
      R"(<pattern id="{}" width="{}" height="{}" patternUnits="userSpaceOnUse"{}>)"
      R"(<rect x="-1" y="-1" width="12" height="12" fill="#fff"/>)"
      R"(<g fill="none" stroke="#000" stroke-width="0.18">{}</g></pattern>)",
      hatch_id(material, id_start), svg_number(hatch.width), svg_number(hatch.height),
      unit == 1.0 ? std::string() : fmt::format(R"x( patternTransform="scale({})")x", svg_number(unit)),
      hatch.marks);
}

}  // namespace dewgap::tools
