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

/// Those that drawings of fitting do not need.
Hatch further_hatch_of(Material material) {
  switch (material) {
    case Material::putty:  // dots
      return {"putty", 1.6, 1.6, R"(<circle cx="0.4" cy="0.4" r="0.1"/><circle cx="1.2" cy="1.2" r="0.1"/>)"};
    case Material::plaster:  // fine scattered dots
      return {"plaster", 3, 3,
              R"(<path d="M0.3 0.5h0.1M1.2 1.4h0.1M2.3 0.3h0.1M1.9 2.5h0.1M0.6 2.2h0.1M2.7 1.7h0.1"/>)"};
    case Material::mortar:  // dots and chips of stone
      return {"mortar", 5, 5,
              R"(<path d="M0.6 1.5L1.3 0.6L1.7 1.6ZM3.2 3.9L4.1 3.3L4.3 4.3Z)"
              R"(M3.1 1h0.1M4.3 1.9h0.1M0.8 3.1h0.1M2 4.2h0.1M2.3 2.6h0.1"/>)"};
    case Material::stone:  // rough courses
      return {"stone", 9, 6, R"(<path d="M0 0.3L4 0L9 0.3M0 3.2L5 2.9L9 3.2M2.6 0.1L2.9 3M6.8 3L6.5 6.1"/>)"};
    case Material::insulation:  // waves
      return {"insulation", 3, 4, R"(<path d="M0 0Q1.5 0 1.5 1T3 2M3 2Q1.5 2 1.5 3T0 4"/>)"};
    case Material::rubber:  // close level lines
      return {"rubber", 1, 0.6, R"(<path d="M0 0.3H1"/>)"};
    case Material::plastic:  // slant the other way, every second one broken
      return {"plastic", 2.4, 2.4,
              R"(<path d="M-0.3 2.1L0.3 2.7M0 0L2.4 2.4M2.1 -0.3L2.7 0.3M1.4 0.2L2.2 1M0.2 1.4L1 2.2"/>)"};
    case Material::air_space:  // left white
      return {"air", 4, 4, ""};
    case Material::other_1:  // upright lines
      return {"other-1", 1.5, 1.5, R"(<path d="M0.75 0V1.5"/>)"};
    case Material::other_2:  // wide level lines
      return {"other-2", 2, 2, R"(<path d="M0 1H2"/>)"};
    case Material::other_3:  // small plus signs
      return {"other-3", 2.4, 2.4, R"(<path d="M1.2 0.7V1.7M0.7 1.2H1.7"/>)"};
    case Material::other_4:  // broken slant
      return {"other-4", 2.4, 2.4, R"(<path d="M0.3 0.3L1.3 1.3M1.5 2.1L2.1 1.5"/>)"};
    default:
      return {};
  }
}

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
    default:
      return further_hatch_of(material);
  }
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
