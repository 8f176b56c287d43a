// The wall under the member as drawn: ready_sections_kernel.hpp.
#include <algorithm>

#include "dewgap/window/ready_sections_kernel.hpp"

namespace dewgap::ready_kernel {
namespace {

/// ISO 10211, from memory: cut-off planes at least 1 m, or three times the flanking part's thickness, away.
constexpr double least_height_m = 1.0;
constexpr double thicknesses = 3.0;

}  // namespace

DrawnWall drawn_wall(const MasonryReveal& reveal, const DrawnMember& member) {
  require_zero_or_step(reveal.outer_m, ready_range::outer_reveal_m, "reveal.outer_m");
  require_in_range(reveal.inner_m, ready_range::inner_reveal_m, "reveal.inner_m", "m");
  require_in_range(reveal.plaster_m, ready_range::plaster_m, "reveal.plaster_m", "m");
  const double out_m = member.foot_out_m - reveal.outer_m;
  const double bare_m = member.foot_in_m + reveal.inner_m;  // the masonry's room face
  const double in_m = bare_m + reveal.plaster_m;
  const double low_m = -std::max(least_height_m, thicknesses * (in_m - out_m));
  const double under_m = -reveal.plaster_m;
  const double edge_m = member.foot_in_m;
  return {
      {{std::string(named::masonry),
        SolidFill{reveal.masonry_W_mK},
        {{out_m, low_m}, {bare_m, low_m}, {bare_m, under_m}, {edge_m, under_m}, {edge_m, 0.0}, {out_m, 0.0}},
        {}},
       {std::string(named::plaster),
        SolidFill{reveal.plaster_W_mK},
        {{bare_m, low_m}, {in_m, low_m}, {in_m, 0.0}, {edge_m, 0.0}, {edge_m, under_m}, {bare_m, under_m}},
        {}}},
      out_m,
      in_m,
      low_m};
}

double wall_u_value_W_m2K(const ReadySection& ready) {
  const DrawnMember member = drawn(ready.member, ready.glass);
  const MasonryReveal& reveal = *ready.reveal;
  const double masonry_m = reveal.outer_m + member.foot_in_m - member.foot_out_m + reveal.inner_m;
  return 1.0 / (ready.climate.rsi_m2K_W + reveal.plaster_m / reveal.plaster_W_mK +
                masonry_m / reveal.masonry_W_mK + ready.climate.rse_m2K_W);
}

}  // namespace dewgap::ready_kernel
