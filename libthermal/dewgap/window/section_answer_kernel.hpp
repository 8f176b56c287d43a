// What one solved grid says: coupling, heat, temperatures with their estimates, and the result for the
// caller.
#pragma once

#include <optional>
#include <vector>

#include "dewgap/window/section_grid_kernel.hpp"

namespace dewgap::section_kernel {

/// The mean of the schemes and its bound; nothing unless two air temperatures drive the heat.
std::optional<SectionCoupling> coupling_of(const Task& task, const SolvedGrid& grid);
std::vector<SectionHeat> heat_of(const Task& task, const SolvedGrid& grid);

/// Bilinear in the cell about the point; nothing when no solved cell is there.
std::optional<double> bilinear_at(const std::vector<double>& x_m, const std::vector<double>& y_m,
                                  const std::vector<ItemPlace>& item, const std::vector<double>& crossing_C,
                                  SectionPoint point);

/// Where faces to rooms are coldest: two places in a symmetric section.
std::vector<SectionPoint> coldest_room_places(const Task& task, const SolvedGrid& grid);

/// The temperature there and at the watched points, with the schemes' difference about them as the first
/// estimate of the error.
std::optional<SettledTemperature> coldest_room_face(const Task& task, const SolvedGrid& grid);
std::vector<SettledTemperature> watched_temperatures(const Task& task, const SolvedGrid& grid,
                                                     const std::vector<SectionPoint>& watched);

/// Field, faces, cavities, names and air temperatures. Status, passes and settled temperatures are the
/// caller's.
SectionResult result_of(const Task& task, SolvedGrid grid, SectionAim aim);

}  // namespace dewgap::section_kernel
