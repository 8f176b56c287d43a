#include "dewgap/assessment/window_model_kernel.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "dewgap/window/whole_window.hpp"

namespace dewgap {
namespace {

/// Shares of an opening where nobody has measured the glass: our convention, no source.
struct OpeningShares {
  double glass;
  double fixed_frame;
};

OpeningShares shares_of(const WindowSurvey& window) {
  const bool metal = window.frame == FrameKind::steel || window.frame == FrameKind::aluminium;
  switch (window.kind) {
    case WindowKind::sliding_sash:
      return {.glass = 0.68, .fixed_frame = 0.10};
    case WindowKind::casement:
      return metal ? OpeningShares{.glass = 0.85, .fixed_frame = 0.05}
                   : OpeningShares{.glass = 0.68, .fixed_frame = 0.10};
    case WindowKind::fixed_light:
      return metal ? OpeningShares{.glass = 0.90, .fixed_frame = 0.05}
                   : OpeningShares{.glass = 0.80, .fixed_frame = 0.10};
  }
  return {.glass = 0.70, .fixed_frame = 0.10};
}

template <class Values>
double mean_of(const Values& values) {
  return std::accumulate(values.begin(), values.end(), 0.0) / static_cast<double>(values.size());
}

/// Takes a measured value, or a default that is recorded as guessed.
class Resolver {
 public:
  double take(const std::string& key, const std::optional<double>& measured, double fallback,
              const std::string& unit, const std::string& fallback_source) {
    const double value = measured.value_or(fallback);
    inputs_.push_back({.key = key,
                       .value = value,
                       .unit = unit,
                       .basis = measured ? Basis::measured : Basis::defaulted,
                       .source = measured ? "survey" : fallback_source});
    return value;
  }
  void note(const std::string& key, double value, const std::string& unit, Basis basis,
            const std::string& source) {
    inputs_.push_back({key, value, unit, basis, source});
  }
  std::vector<ResolvedInput> inputs() const { return inputs_; }

 private:
  std::vector<ResolvedInput> inputs_;
};

constexpr const char* practice = "common practice, no source";
constexpr const char* convention = "our convention";

void resolve_areas(const Survey& survey, Resolver& resolve, WindowModel& model) {
  const auto& window = survey.window;
  model.width_m = mean_of(window.opening_widths_m);
  model.height_m = mean_of(window.opening_heights_m);
  resolve.note("opening_width_m", model.width_m, "m", Basis::measured, "survey, mean of three");
  resolve.note("opening_height_m", model.height_m, "m", Basis::measured, "survey, mean of three");
  const auto shares = shares_of(window);
  const double opening_m2 = model.width_m * model.height_m;
  // A pane of the default window: the glass share, split evenly between the panes along the height, or along
  // the width where the sashes stand beside each other.
  const double scale = std::sqrt(shares.glass);
  const double panes = window.pane_count;
  const bool beside = window.moves == SashMoves::sideways;
  const double usual_width_m = scale * model.width_m / (beside ? panes : 1.0);
  const double usual_height_m = scale * model.height_m / (beside ? 1.0 : panes);
  const double glass_width_m =
      resolve.take("glass_width_m", window.glass_width_m, usual_width_m, "m", convention);
  model.glass_height_m =
      resolve.take("glass_height_m", window.glass_height_m, usual_height_m, "m", convention);
  model.areas.glass_m2 = panes * glass_width_m * model.glass_height_m;
  const double bars_and_rims_m2 = std::max(0.0, opening_m2 - model.areas.glass_m2);
  model.areas.frame_m2 = std::min(shares.fixed_frame * opening_m2, bars_and_rims_m2);
  model.areas.sash_m2 = bars_and_rims_m2 - model.areas.frame_m2;
  model.areas.glass_edge_m = panes * 2.0 * (glass_width_m + model.glass_height_m);
  model.putty_length_m = model.areas.glass_edge_m;
}

void resolve_joints(const Survey& survey, WindowModel& model) {
  const auto& window = survey.window;
  const double perimeter_m = 2.0 * (model.width_m + model.height_m);
  const bool slides = window.kind == WindowKind::sliding_sash;
  const bool beside = window.moves == SashMoves::sideways;
  model.meeting_rail_m = slides ? (beside ? model.height_m : model.width_m) : 0.0;
  model.joint_length_m = window.kind == WindowKind::fixed_light ? 0.0 : perimeter_m + model.meeting_rail_m;
  model.joints_in_series = survey.sheet.cover == Cover::frame || survey.sheet.cover == Cover::reveal;
}

void resolve_sheet(const Survey& survey, Resolver& resolve, WindowModel& model) {
  const auto& sheet = survey.sheet;
  model.sheet = sheet_properties(sheet.material);
  model.tape = tape_properties(sheet.tape.value_or(TapeKind::closed_cell_foam));
  model.sheet_thickness_m =
      resolve.take("sheet_thickness_m", sheet.thickness_m, model.sheet.usual_thickness_m, "m", practice);
  model.tape_thickness_m = resolve.take("tape_thickness_m", sheet.tape_thickness_m, 0.006, "m", practice);
  model.tape_width_m = resolve.take("tape_width_m", sheet.tape_width_m, 0.012, "m", practice);
  const auto& depths = survey.window.glass_to_fixing_face_m;
  const std::optional<double> depth = depths.empty() ? std::nullopt : std::optional(mean_of(depths));
  const double to_face_m = resolve.take("glass_to_fixing_face_m", depth, 0.040, "m", convention);
  model.gap_width_m = to_face_m + model.tape_thickness_m;
  resolve.note("gap_width_m", model.gap_width_m, "m", depth ? Basis::measured : Basis::defaulted,
               "glass to fixing face, mean of the sashes, and tape");
  // On the glass the tape runs round each pane; else once round the opening.
  const bool on_glass = sheet.cover == Cover::glass;
  model.areas.sheet_perimeter_m =
      on_glass ? model.areas.glass_edge_m : 2.0 * (model.width_m + model.height_m);
  model.areas.sheet_m2 = on_glass ? model.areas.glass_m2 : model.width_m * model.height_m;
}

void resolve_frame(const Survey& survey, Resolver& resolve, WindowModel& model) {
  const bool metal = survey.window.frame == FrameKind::steel || survey.window.frame == FrameKind::aluminium;
  model.frame_thickness_m = resolve.take("frame_thickness_m", survey.window.frame_thickness_m,
                                         metal ? 0.025 : 0.045, "m", convention);
  model.frame_u_W_m2K = survey.expert.frame_u_value_W_m2K.value_or(
      frame_u_value_W_m2K(survey.window.frame, model.frame_thickness_m));
  resolve.note("frame_u_W_m2K", model.frame_u_W_m2K, "W/(m2 K)",
               survey.expert.frame_u_value_W_m2K ? Basis::measured : Basis::archetype,
               survey.expert.frame_u_value_W_m2K ? "expert" : "ISO 10077-1, from material and thickness");
}

}  // namespace

WindowModel window_model(const Survey& survey) {
  validate(survey);
  return resolved_window(survey);
}

WindowModel resolved_window(const Survey& survey) {
  WindowModel model;
  Resolver resolve;
  resolve_areas(survey, resolve, model);
  resolve_joints(survey, model);
  resolve_sheet(survey, resolve, model);
  resolve_frame(survey, resolve, model);
  model.glass_thickness_m =
      resolve.take("glass_thickness_m", survey.window.glass_thickness_m, 0.003, "m", convention);
  model.inputs = resolve.inputs();
  return model;
}

}  // namespace dewgap
