// The vapour of a gap's air at the end of a step, with three surfaces that may be wet. Private to gap/.
//
// Per m2 of glass:  k e + sum over surfaces of g_i(e) = b,  g_i(e) = max(a_i (e - s_i), -limit_i):
// vapour condenses on or leaves a surface by its transfer coefficient a and saturation pressure s, but no
// more leaves than the surface holds. The left side rises strictly with e and is convex, so that Newton's
// method from above ends exactly after at most as many passes as there are surfaces.
#pragma once

#include <array>
#include <cstddef>

namespace dewgap::gap_kernel {

inline constexpr std::size_t wet_surfaces = 3;
enum Surface : std::size_t { on_pane = 0, on_sheet = 1, on_sill = 2 };
using OnSurfaces = std::array<double, wet_surfaces>;

struct VapourAtEnd {
  double vapour_Pa = 0.0;
  OnSurfaces rate_kg_m2s{};                  ///< to the surface, per m2 of glass
  std::array<bool, wet_surfaces> follows{};  ///< its rate follows vapour pressure: not run dry
  double slope_kg_m2sPa = 0.0;               ///< of the left side
};

struct VapourStep {
  double conductance_kg_m2sPa = 0.0;  ///< k: air's store over the step, air that passes, diffusion, timber
  double offered_kg_m2s = 0.0;        ///< b
  OnSurfaces transfer_kg_m2sPa{};     ///< a
  OnSurfaces limit_kg_m2s{};          ///< held over duration

  VapourAtEnd solve(const OnSurfaces& saturation_Pa) const {
    VapourAtEnd end;
    end.follows = {true, true, true};
    for (std::size_t pass = 0; pass <= wet_surfaces; ++pass) {
      double slope = conductance_kg_m2sPa;
      double right = offered_kg_m2s;
      for (std::size_t i = 0; i < wet_surfaces; ++i) {
        slope += end.follows[i] ? transfer_kg_m2sPa[i] : 0.0;
        right += end.follows[i] ? transfer_kg_m2sPa[i] * saturation_Pa[i] : limit_kg_m2s[i];
      }
      end.slope_kg_m2sPa = slope;
      end.vapour_Pa = right / slope;
      if (!update_following(saturation_Pa, end)) {
        break;
      }
    }
    for (std::size_t i = 0; i < wet_surfaces; ++i) {
      end.rate_kg_m2s[i] =
          end.follows[i] ? transfer_kg_m2sPa[i] * (end.vapour_Pa - saturation_Pa[i]) : -limit_kg_m2s[i];
    }
    return end;
  }

 private:
  // Whether a surface has changed between following and run dry.
  bool update_following(const OnSurfaces& saturation_Pa, VapourAtEnd& end) const {
    bool changed = false;
    for (std::size_t i = 0; i < wet_surfaces; ++i) {
      const bool follows = transfer_kg_m2sPa[i] * (end.vapour_Pa - saturation_Pa[i]) >= -limit_kg_m2s[i];
      changed = changed || follows != end.follows[i];
      end.follows[i] = follows;
    }
    return changed;
  }
};

}  // namespace dewgap::gap_kernel
