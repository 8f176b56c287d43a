// What a solved section says: coupling coefficient, heat flows, temperatures inside and along its faces.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace dewgap {

/// x to the right, y upwards.
struct SectionPoint {
  double x_m = 0.0;
  double y_m = 0.0;
};

/// converged: both error bounds hold. The others carry the best answer with its estimate:
/// cell_limit, pass_limit: the grid was not refined further; cavities_unsettled: a cavity's conductivity
/// still changes by more than 1e-4 after 30 rounds; not_balanced: the linear solver left over 1e-9 of the
/// heat unaccounted.
enum class SectionStatus { converged, cell_limit, pass_limit, cavities_unsettled, not_balanced };
std::string_view explain(SectionStatus status);

/// L2D of ISO 10211: heat flow over the difference of the two air temperatures, W/(m K). The value is the
/// mean of the two schemes: their errors have opposite signs and nearly cancel (in 2,000 random sections the
/// mean moved on finer grids by 5 % of its bound in the mean, 61 % at most: tests/benchmarks/bench_section).
/// The error bound is proved, see section.hpp.
struct SectionCoupling {
  double value_W_mK = 0.0;
  double error_bound_W_mK = 0.0;
};

/// Heat through one boundary into the section, the mean of both schemes. Cut-offs have 0.
struct SectionHeat {
  std::string boundary;
  double flow_W_m = 0.0;
  double half_difference_W_m = 0.0;  ///< of the schemes: bounds the error where there is one boundary a side
};

enum class FlowAxis { x, y };

/// What a cavity was taken for.
struct SectionCavity {
  std::string item;
  double conductivity_W_mK = 0.0;
  FlowAxis flow = FlowAxis::x;      ///< the axis along which most heat flows
  double depth_m = 0.0;             ///< of the equivalent rectangle along the flow
  double width_m = 0.0;             ///< across it
  double wall_difference_K = 0.0;   ///< solved, of the mean temperatures of the two walls
  double mean_temperature_C = 0.0;  ///< solved, of the two walls
};

/// Temperatures at the crossings of the grid's lines, bilinear between them: the mean of the two schemes,
/// which was nearer to that of finer grids than either.
struct TemperatureField {
  std::vector<double> x_m;
  std::vector<double> y_m;
  std::vector<double> temperature_C;  ///< row after row; 0 at crossings that no filled cell touches
  /// Of each cell, row after row: the place of its item in Section::items; nothing outside the section and in
  /// an OpenFill.
  std::vector<std::optional<std::uint32_t>> item;

  double at_crossing_C(std::size_t column, std::size_t row) const {
    return temperature_C[row * x_m.size() + column];
  }
  std::optional<std::uint32_t> item_of_cell(std::size_t column, std::size_t row) const {
    return item[row * (x_m.size() - 1) + column];
  }
};

/// A face: a straight piece of a boundary between two lines of the drawing, walked with the section on the
/// left.
struct SectionFace {
  std::size_t boundary = 0;  ///< its place in Section::boundaries
  SectionPoint from;
  SectionPoint to;
  double surface_resistance_m2K_W = 0.0;
};

/// A place and its temperature.
struct FaceTemperature {
  SectionPoint at;
  double temperature_C = 0.0;
};

/// The same, with an estimate of its error, not proved: twice the change since the grid before, or the
/// largest difference of the two schemes at the crossings within two grid lines, whichever is more. In 2,000
/// random sections the lowest temperature of a room's face moved further on finer grids in 9, by up to 1.7
/// times its estimate (tests/benchmarks/bench_section).
struct SettledTemperature {
  SectionPoint at;
  double temperature_C = 0.0;
  double estimated_error_K = 0.0;
};

struct SectionResult {
  SectionStatus status = SectionStatus::pass_limit;
  std::optional<SectionCoupling> coupling;  ///< where exactly two air temperatures drive the heat
  std::vector<SectionHeat> heat;            ///< by boundary; empty when only temperatures were asked for
  double heat_imbalance = 0.0;              ///< heat in less heat out, over the larger
  /// Of all boundaries to a room; nothing where there is none, or only temperatures were asked for.
  std::optional<SettledTemperature> lowest_room_face;
  std::vector<SettledTemperature> watched;  ///< in the order of SectionOptions::watched
  std::vector<SectionCavity> cavities;      ///< in the order of the items
  TemperatureField field;
  std::vector<SectionFace> faces;
  std::vector<std::string> items;               ///< names, in the order of Section::items
  std::vector<std::string> boundaries;          ///< names, in the order of Section::boundaries
  std::optional<double> room_temperature_C;     ///< where all rooms have one
  std::optional<double> outdoor_temperature_C;  ///< where all outdoor boundaries have one
  std::size_t cells = 0;                        ///< of the last grid
  int passes = 0;
};

}  // namespace dewgap
