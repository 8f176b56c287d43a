#include "dewgap/assessment/edge_of_window.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "dewgap/air/humid_air.hpp"
#include "dewgap/assessment/edge_of_window_kernel.hpp"
#include "dewgap/assessment/edge_section_kernel.hpp"
#include "dewgap/errors.hpp"
#include "dewgap/moisture/criteria.hpp"
#include "dewgap/numerics/parallel.hpp"
#include "dewgap/numerics/sampling.hpp"
#include "dewgap/window/edge_figures.hpp"

namespace dewgap {
namespace {

// Our convention: what a section drawn simply leaves open of Uf, and what of the prior stays where the sizes
// are not measured.
constexpr double drawn_simply_share = 0.05;
constexpr double unmeasured_share = 0.5;
constexpr double temperature_bound_K = 0.1;

UnknownValues middle_unknowns(const Survey& survey) {
  const auto beliefs = beliefs_for(survey);
  UnknownValues middle;
  for (std::size_t i = 0; i < unknown_count; ++i) {
    middle.value[i] = beliefs[i].fixed.value_or(beliefs[i].prior.p50);
  }
  return middle;
}

/// Heat through the gap over the difference of its faces, coldest month's means.
double gap_conductance_W_m2K(const Setting& setting, const UnknownValues& sample) {
  const Moment month = month_moment(setting, sample, 1.0);
  const auto stack = solve_stack(double_stack(setting, sample, CurtainState::open),
                                 outdoors_at(setting, sample, month), room_at(sample, month));
  if (stack.status != SolveStatus::converged) {
    throw CalculationFailed(explain(stack.status));
  }
  return stack.room_flux_W_m2 / (stack.face_temperature_C[2] - stack.face_temperature_C[1]);
}

EdgeRange gap_conductances(const Setting& setting) {
  const UnknownValues middle = middle_unknowns(*setting.survey);
  const auto& scatter = prior_of(Unknown::gap_convection);
  EdgeRange range;
  range.middle = gap_conductance_W_m2K(setting, middle);
  range.low = range.high = range.middle;
  for (const double correlation : {0.5, 1.5, 2.5}) {
    for (const double factor : {scatter.p10, scatter.p90}) {
      UnknownValues other = middle;
      other[Unknown::gap_correlation] = correlation;
      other[Unknown::gap_convection] = factor;
      const double conductance = gap_conductance_W_m2K(setting, other);
      range.low = std::min(range.low, conductance);
      range.high = std::max(range.high, conductance);
    }
  }
  return range;
}

EdgeFigures settled_figures(const ReadySection& section) {
  auto figures = edge_figures(section, {.temperature_error_bound_K = temperature_bound_K});
  if (figures.status != SectionStatus::converged) {
    throw CalculationFailed("the section of the window's edge: " + std::string(explain(figures.status)));
  }
  return figures;
}

/// Low, middle and high.
using ThreeSections = std::array<ReadySection, 3>;
using ThreeFigures = std::array<EdgeFigures, 3>;

ThreeSections three_sections(const Setting& setting, const EdgeRange& gap) {
  const auto frame_W_mK = frame_properties(setting.survey->window.frame).conductivity_W_mK;
  const auto timber_W_mK = frame_properties(FrameKind::softwood).conductivity_W_mK;
  const auto drawn = [&](double frame, double timber, double conductance) {
    return edge_section(*setting.survey, setting.window, {frame, timber, conductance});
  };
  return {drawn(frame_W_mK.low, timber_W_mK.low, gap.low),
          drawn(frame_W_mK.best, timber_W_mK.best, gap.middle),
          drawn(frame_W_mK.high, timber_W_mK.high, gap.high)};
}

ThreeFigures solved(const ThreeSections& sections) {
  ThreeFigures three;
  numerics::for_each_index(three.size(), [&](std::size_t i) { three[i] = settled_figures(sections[i]); });
  return three;
}

/// The member alone: all that Uf needs, and a fraction of the time.
ReadySection member_alone(ReadySection section) {
  section.reveal.reset();
  section.sheet.reset();
  return section;
}

template <class Figure>
EdgeRange range_of(const ThreeFigures& three, Figure figure) {
  const std::array<double, 3> values{figure(three[0]), figure(three[1]), figure(three[2])};
  const auto [low, high] = std::minmax_element(values.begin(), values.end());
  return {*low, values[1], *high};
}

double frame_u_of(const EdgeFigures& figures) {
  return figures.frame_u_value_W_m2K.value;
}
/// In the reveal the sheet spares the wall too, whose heat is none of the window's: there the share is that
/// of all, so that no more is taken off frame and edge than they lose.
double cut_share_of(const EdgeFigures& figures, Cover cover) {
  const double before_W_mK = figures.without_sheet.coupling_W_mK.value;
  const double all_W_mK = cover == Cover::reveal
                              ? before_W_mK
                              : frame_u_of(figures) * figures.frame_length_m + figures.psi_W_mK.value;
  return (before_W_mK - figures.with_sheet->coupling_W_mK.value) / all_W_mK;
}
double gap_factor_of(const EdgeFigures& figures) {
  return std::min(1.0, figures.with_sheet->gap->any.edge_factor->value);
}
double room_factor_of(const EdgeFigures& figures) {
  return figures.with_sheet->room_side.temperature_factor.value;
}

EdgeAnswer answer_of(const EdgeOfWindow& edge, const ThreeFigures& three, Cover cover) {
  const auto& before = three[1].without_sheet;
  const auto& after = *three[1].with_sheet;
  EdgeAnswer answer;
  answer.frame_length_m = edge.frame_length_m;
  answer.gap_conductance_W_m2K = edge.gap_conductance_W_m2K;
  answer.frame_u_W_m2K = range_of(three, frame_u_of);
  answer.psi_W_mK = range_of(three, [](const auto& f) { return f.psi_W_mK.value; });
  answer.coupling_before_W_mK =
      range_of(three, [](const auto& f) { return f.without_sheet.coupling_W_mK.value; });
  answer.coupling_after_W_mK =
      range_of(three, [](const auto& f) { return f.with_sheet->coupling_W_mK.value; });
  answer.cut_share = range_of(three, [cover](const auto& f) { return cut_share_of(f, cover); });
  answer.gap_spot = after.gap->any.item;
  answer.gap_edge_factor = range_of(three, gap_factor_of);
  answer.room_spot_before = before.room_side.item;
  answer.room_factor_before =
      range_of(three, [](const auto& f) { return f.without_sheet.room_side.temperature_factor.value; });
  answer.room_spot = after.room_side.item;
  answer.room_factor = range_of(three, room_factor_of);
  return answer;
}

bool sizes_are_measured(const EdgeOfWindow& edge, const Survey& survey) {
  const bool has_frame = std::holds_alternative<SashInFrame>(edge.section.member);
  return survey.edge.rail_face_m && survey.window.frame_thickness_m &&
         (!has_frame || survey.edge.frame_face_m);
}

bool has_breaks(VentOption option) {
  return option == VentOption::breaks_bottom || option == VentOption::breaks_bottom_longer ||
         option == VentOption::breaks_bottom_and_top;
}

double break_factor(const EdgeOfWindow& edge) {
  ReadySection cut = edge.section;
  cut.sheet->cut = TapeCut::vent_break;
  return room_factor_of(settled_figures(cut));
}

/// The room's humidity at which that of its air at the coldest place is `criterion`.
double room_humidity_for(double criterion, const Moment& moment, double spot_C) {
  return relative_humidity(moment.room_C, criterion * saturation_pressure_Pa(spot_C));
}

double room_spot_C(const EdgeOfWindow& edge, const Moment& month) {
  return month.outdoor_C + edge.room_factor * (month.room_C - month.outdoor_C);
}

}  // namespace

std::optional<EdgeOfWindow> edge_of_window(const Setting& setting) {
  if (!setting.survey->edge.work_out.value_or(false)) {
    return std::nullopt;
  }
  const EdgeRange gap = gap_conductances(setting);
  const ThreeSections sections = three_sections(setting, gap);
  const ThreeFigures three = solved({member_alone(sections[0]), sections[1], member_alone(sections[2])});
  return EdgeOfWindow{.section = sections[1],
                      .frame_length_m = three[1].frame_length_m,
                      .gap_conductance_W_m2K = gap,
                      .frame_u_W_m2K = range_of(three, frame_u_of),
                      .psi_W_mK = three[1].psi_W_mK.value,
                      .cut_share = cut_share_of(three[1], setting.survey->sheet.cover),
                      .gap_edge_factor = gap_factor_of(three[1]),
                      .room_factor_before = three[1].without_sheet.room_side.temperature_factor.value,
                      .room_factor = room_factor_of(three[1])};
}

void use_edge(const EdgeOfWindow& edge, Setting& setting) {
  constexpr const char* source = "section of frame and edge, by conduction";
  auto& inputs = setting.window.inputs;
  std::erase_if(inputs, [](const ResolvedInput& input) { return input.key == "frame_u_W_m2K"; });
  const auto note = [&](const char* key, double value, const char* unit) {
    inputs.push_back({key, value, unit, Basis::archetype, source});
  };
  note("frame_u_W_m2K", edge.frame_u_W_m2K.middle, "W/(m2 K)");
  note("edge_psi_W_mK", edge.psi_W_mK, "W/(m K)");
  note("edge_cut_share", edge.cut_share, "-");
  note("gap_edge_factor_by_conduction", edge.gap_edge_factor, "-");
  note("coldest_room_spot_factor", edge.room_factor, "-");
  setting.window.frame_u_W_m2K = edge.frame_u_W_m2K.middle;
  setting.edge = edge;
}

Prior narrowed_frame_factor(const EdgeOfWindow& edge, const Survey& survey, const Prior& prior) {
  const double rest = sizes_are_measured(edge, survey) ? 0.0 : unmeasured_share;
  const auto side = [&](double conduction, double believed) {
    return std::sqrt(std::pow(std::log(conduction / edge.frame_u_W_m2K.middle), 2) +
                     std::pow(drawn_simply_share, 2) + std::pow(rest * std::log(believed / prior.p50), 2));
  };
  Prior narrowed = prior;
  narrowed.p10 = prior.p50 * std::exp(-side(edge.frame_u_W_m2K.low, prior.p10));
  narrowed.p90 = prior.p50 * std::exp(side(edge.frame_u_W_m2K.high, prior.p90));
  narrowed.source = "our convention about the section's Uf";
  return narrowed;
}

WindowConductance conductance_with_sheet(const Setting& setting, const WindowTransmittances& u) {
  const auto& areas = setting.window.areas;
  if (!setting.edge) {
    return conductance_after(areas, u, setting.survey->sheet.cover);
  }
  const double kept = 1.0 - setting.edge->cut_share;
  const auto before = conductance_before(areas, u);
  return {.glass_W_K = areas.glass_m2 * u.glass_after_W_m2K,
          .frame_W_K = kept * before.frame_W_K,
          .edge_W_K = kept * before.edge_W_K};
}

double edge_psi_W_mK(const Setting& setting) {
  return setting.edge ? setting.edge->psi_W_mK : 0.0;
}

double gap_edge_factor(const Setting& setting, const UnknownValues& sample) {
  return sample[Unknown::edge_factor] * (setting.edge ? setting.edge->gap_edge_factor : 1.0);
}

std::optional<double> edge_spot_humidity(const Setting& setting, const Moment& month) {
  if (!setting.edge) {
    return std::nullopt;
  }
  return surface_relative_humidity(month.room_vapour_Pa, room_spot_C(*setting.edge, month));
}

std::optional<EdgeAnswer> edge_answer(const Setting& setting, const WeightedRuns& runs, VentOption chosen) {
  if (!setting.edge) {
    return std::nullopt;
  }
  const EdgeOfWindow& edge = *setting.edge;
  std::vector<double> face;
  std::vector<double> mould;
  std::vector<double> wet;
  for (std::size_t i = 0; i < runs.samples.size(); ++i) {
    const double excess_factor = runs.figures[i].options[index_of(chosen)].excess_factor;
    const Moment month = month_moment(setting, runs.samples[i], excess_factor);
    const double spot_C = room_spot_C(edge, month);
    face.push_back(edge_spot_humidity(setting, month).value());
    mould.push_back(room_humidity_for(mould_surface_humidity, month, spot_C));
    wet.push_back(room_humidity_for(1.0, month, spot_C));
  }
  EdgeAnswer answer = answer_of(edge, solved(three_sections(setting, edge.gap_conductance_W_m2K)),
                                setting.survey->sheet.cover);
  answer.break_factor = has_breaks(chosen) ? std::optional(break_factor(edge)) : std::nullopt;
  answer.face_humidity = numerics::weighted_spread(face, runs.weights);
  answer.mould_from_humidity = numerics::weighted_spread(mould, runs.weights);
  answer.wet_from_humidity = numerics::weighted_spread(wet, runs.weights);
  return answer;
}

}  // namespace dewgap
