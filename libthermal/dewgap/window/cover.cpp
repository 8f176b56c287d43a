#include "dewgap/window/cover.hpp"

#include "dewgap/errors.hpp"

namespace dewgap {
namespace {

constexpr double sash_share_inside_tape = 0.5;  // our convention: the tape stands in the middle of the member

/// Share of the sash and of the frame that lies behind the sheet.
struct CoveredShare {
  double sash = 0.0;
  double frame = 0.0;
};

CoveredShare covered_share(Cover cover) {
  switch (cover) {
    case Cover::glass:
      return {0.0, 0.0};
    case Cover::sash:
      return {sash_share_inside_tape, 0.0};
    case Cover::frame:
      return {1.0, 0.0};
    case Cover::reveal:
      return {1.0, 1.0};
  }
  throw InvalidInput("cover", "is not a part of the window");
}

void validate(const WindowAreas& areas, const WindowTransmittances& u) {
  constexpr PermittedRange area_m2{0.0, 100.0};
  constexpr PermittedRange length_m{0.0, 400.0};
  constexpr PermittedRange u_W_m2K{0.0, 20.0};
  require_in_range(areas.glass_m2, area_m2, "glass_m2", "m2");
  require_in_range(areas.sash_m2, area_m2, "sash_m2", "m2");
  require_in_range(areas.frame_m2, area_m2, "frame_m2", "m2");
  require_in_range(areas.sheet_m2, area_m2, "sheet_m2", "m2");
  require_in_range(areas.glass_edge_m, length_m, "glass_edge_m", "m");
  require_in_range(areas.sheet_perimeter_m, length_m, "sheet_perimeter_m", "m");
  require_in_range(u.glass_before_W_m2K, u_W_m2K, "glass_before_W_m2K", "W/(m2 K)");
  require_in_range(u.glass_after_W_m2K, u_W_m2K, "glass_after_W_m2K", "W/(m2 K)");
  require_in_range(u.sash_W_m2K, u_W_m2K, "sash_W_m2K", "W/(m2 K)");
  require_in_range(u.frame_W_m2K, u_W_m2K, "frame_W_m2K", "W/(m2 K)");
  require_in_range(u.edge_W_mK, {-1.0, 5.0}, "edge_W_mK", "W/(m K)");
  require_in_range(u.added_resistance_m2K_W, {0.0, 10.0}, "added_resistance_m2K_W", "m2 K/W");
  require_in_range(u.tape_rim_W_mK, {0.0, 5.0}, "tape_rim_W_mK", "W/(m K)");
}

/// Conductance of a part of which a share lies behind the sheet: U / (1 + U R) there, U elsewhere, side by
/// side.
double part_W_K(double area_m2, double u_W_m2K, double share, double added_m2K_W) {
  const double behind_W_m2K = u_W_m2K / (1.0 + u_W_m2K * added_m2K_W);
  return area_m2 * ((1.0 - share) * u_W_m2K + share * behind_W_m2K);
}

}  // namespace

WindowConductance conductance_before(const WindowAreas& areas, const WindowTransmittances& u) {
  validate(areas, u);
  // ISO 10077-1 eq. 1 by part, from memory; the frame enters once, as built
  return {.glass_W_K = areas.glass_m2 * u.glass_before_W_m2K,
          .frame_W_K = areas.sash_m2 * u.sash_W_m2K + areas.frame_m2 * u.frame_W_m2K,
          .edge_W_K = areas.glass_edge_m * u.edge_W_mK};
}

WindowConductance conductance_after(const WindowAreas& areas, const WindowTransmittances& u, Cover cover) {
  validate(areas, u);
  const CoveredShare share = covered_share(cover);
  const double added_m2K_W = u.added_resistance_m2K_W;
  // the same parts side by side; behind the sheet the gap and the sheet are in series with them
  return {.glass_W_K = areas.glass_m2 * u.glass_after_W_m2K,
          .frame_W_K = part_W_K(areas.sash_m2, u.sash_W_m2K, share.sash, added_m2K_W) +
                       part_W_K(areas.frame_m2, u.frame_W_m2K, share.frame, added_m2K_W),
          .edge_W_K = areas.glass_edge_m * u.edge_W_mK + areas.sheet_perimeter_m * u.tape_rim_W_mK};
}

}  // namespace dewgap
