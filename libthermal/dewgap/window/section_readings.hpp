// Reading a solved section: temperatures at points and along faces, temperature factor, Uf and Psi.
#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "dewgap/window/section_result.hpp"

namespace dewgap {

/// Bilinear in the cell that holds the point; nothing outside the section.
std::optional<double> temperature_C_at(const SectionResult& result, SectionPoint point);

/// Temperatures along the faces of a boundary, at every crossing of the grid, in the order of its faces;
/// `along_m` is the length of faces walked so far, with the section on the left. A corner where a face ends
/// and the next begins is given once for each. Throws InvalidInput for an unknown name.
struct ProfilePoint {
  double along_m = 0.0;
  SectionPoint at;
  double temperature_C = 0.0;
};
std::vector<ProfilePoint> profile_along(const SectionResult& result, std::string_view boundary);

/// Coldest point along a boundary's faces.
FaceTemperature lowest_along_boundary(const SectionResult& result, std::string_view boundary);

/// Coldest point along the faces of an item: where it meets others, air or a cut-off. Throws InvalidInput for
/// an unknown name and for an item of which nothing was solved (OpenFill).
FaceTemperature lowest_on_item(const SectionResult& result, std::string_view item);

/// fRsi = (lowest - outdoors) / (room - outdoors), ISO 10211 (from memory). Throws InvalidInput unless all
/// rooms have one temperature and all outdoor boundaries another.
double temperature_factor(const SectionResult& result, std::string_view boundary);

/// ISO 10077-2 eq. C.1 (2003, from memory): Uf = (L2D - Up bp) / bf. L2D 0 to 1e3 W/(m K), Up 0 to 20
/// W/(m2 K), lengths bp 0 to 10 m, bf 1e-3 to 10 m.
struct PanelBeside {
  double u_value_W_m2K = 0.0;
  double length_m = 0.0;  ///< visible
};
double frame_transmittance_W_m2K(double coupling_W_mK, double frame_length_m, const PanelBeside& panel);

/// ISO 10077-2 eq. C.2 (2003, from memory): Psi = L2D - Uf bf - Ug bg, the same ranges.
double linear_transmittance_W_mK(double coupling_W_mK, const PanelBeside& frame, const PanelBeside& glass);

}  // namespace dewgap
