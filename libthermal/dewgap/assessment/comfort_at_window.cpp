#include "dewgap/assessment/comfort_at_window.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

#include "dewgap/air/constants.hpp"
#include "dewgap/assessment/edge_of_window_kernel.hpp"
#include "dewgap/assessment/vent_cases_kernel.hpp"
#include "dewgap/energy/comfort.hpp"
#include "dewgap/errors.hpp"
#include "dewgap/numerics/resampling.hpp"
#include "dewgap/numerics/sampling.hpp"
#include "dewgap/window/whole_window.hpp"

namespace dewgap {
namespace {

constexpr double abdomen_height_m = 0.6;  // seated, ISO 7726, from memory
constexpr double sill_height_m = 0.8;     // our convention, as where the window stands in the building
constexpr double still_air_m_s = 0.1;     // of the room about the person: our convention
constexpr Person sitter{.metabolic_met = 1.2, .clothing_clo = 1.0};
constexpr double most_left_out_share = 0.05;  // our convention

/// One way of the window in one case.
struct SideFigures {
  double operative_C = 0.0;
  double mean_radiant_C = 0.0;
  double asymmetry_K = 0.0;
  double cool_wall_per_cent = 0.0;
  double window_radiant_C = 0.0;
  double downdraught_m_s = 0.0;
  double downdraught_C = 0.0;
  double draught_rating_per_cent = 0.0;
  double vote = 0.0;
  double vote_per_cent = 0.0;
};

struct CaseFigures {
  SideFigures before;
  SideFigures after;
  double room_C = 0.0;
  double outdoor_C = 0.0;
  ValidityFlags flags;
};

RectangleSeen opening_seen(const WindowModel& window, double distance_m) {
  const double low_m = sill_height_m - abdomen_height_m;
  return {.left_m = -0.5 * window.width_m,
          .right_m = 0.5 * window.width_m,
          .low_m = low_m,
          .high_m = low_m + window.height_m,
          .distance_m = distance_m};
}

double black_W_m2(double temperature_C) {
  const double kelvin = constants::kelvin(temperature_C);
  return constants::stefan_boltzmann_W_m2K4 * kelvin * kelvin * kelvin * kelvin;
}

/// Even black temperature of an opening whose glass sends what the stack has it send, and whose frame is as
/// warm as its U leaves it.
double opening_radiant_C(const WindowModel& window, const StackSolution& heat, double room_C,
                         double frame_face_C) {
  const auto& areas = window.areas;
  const double glass_share = areas.glass_m2 / (areas.glass_m2 + areas.sash_m2 + areas.frame_m2);
  const double glass_W_m2 = black_W_m2(room_C) - heat.room_radiation_flux_W_m2;
  const double mean_W_m2 = glass_share * glass_W_m2 + (1.0 - glass_share) * black_W_m2(frame_face_C);
  return std::sqrt(std::sqrt(mean_W_m2 / constants::stefan_boltzmann_W_m2K4)) - constants::celsius_zero_K;
}

/// Room face of sash and frame, C: their mean U with the film of ISO 10077-1.
double frame_face_C(const WindowAreas& areas, double frame_W_K, const Moment& moment) {
  const double area_m2 = areas.sash_m2 + areas.frame_m2;
  const double u_W_m2K = area_m2 > 0.0 ? frame_W_K / area_m2 : 0.0;
  return moment.room_C - u_W_m2K * window_rsi_m2K_W * (moment.room_C - moment.outdoor_C);
}

/// What a person feels of a window with this glass face and radiation.
SideFigures felt(const WindowModel& window, const Moment& moment, double glass_face_C, double radiant_C,
                 double distance_m, ValidityFlags& flags) {
  SideFigures side;
  const auto view = radiant_view(opening_seen(window, distance_m), radiant_C, moment.room_C);
  side.window_radiant_C = radiant_C;
  side.mean_radiant_C = view.mean_radiant_C;
  side.asymmetry_K = view.asymmetry_K;
  side.operative_C = operative_temperature_C(moment.room_C, view.mean_radiant_C, still_air_m_s);
  const auto cool_wall = dissatisfied_by_cool_wall(view.asymmetry_K);
  side.cool_wall_per_cent = cool_wall.per_cent;
  const auto air = downdraught(window.height_m, moment.room_C - glass_face_C, distance_m, sill_height_m);
  side.downdraught_m_s = air.speed_m_s;
  side.downdraught_C = moment.room_C - air.cooler_K;
  const auto rating = draught_rating(side.downdraught_C, air.speed_m_s);
  side.draught_rating_per_cent = rating.per_cent;
  const auto sensation = thermal_sensation(sitter, {.air_C = moment.room_C,
                                                    .mean_radiant_C = view.mean_radiant_C,
                                                    .air_speed_m_s = still_air_m_s,
                                                    .vapour_Pa = moment.room_vapour_Pa});
  side.vote = sensation.mean_vote;
  side.vote_per_cent = sensation.dissatisfied_per_cent;
  for (const auto& raised : {cool_wall.flags, air.flags, rating.flags, sensation.flags}) {
    flags.raise(raised);
  }
  return side;
}

/// Both ways of the window in one case; none when a balance does not settle.
std::optional<CaseFigures> figures_of(const Setting& setting, const UnknownValues& sample,
                                      const ComfortOptions& options) {
  const auto& window = setting.window;
  const Moment before = frost_moment(setting, sample, 1.0);
  const Moment after = frost_moment(setting, sample, excess_factor_of(setting, sample, options.option));
  const auto bare = solve_stack(single_stack(setting, sample, CurtainState::open),
                                outdoors_at(setting, sample, before), room_at(sample, before));
  const auto gap =
      solve_gap(gap_case_for(setting, sample, after, options.option, CurtainState::open, TapeFault::none));
  if (bare.status != SolveStatus::converged || gap.status != SolveStatus::converged) {
    return std::nullopt;
  }
  const double frame_u = window.frame_u_W_m2K * sample[Unknown::frame_u_factor];
  const WindowTransmittances u{
      .glass_before_W_m2K = bare.u_value_W_m2K,
      .glass_after_W_m2K = gap.heat.u_value_W_m2K,
      .sash_W_m2K = frame_u,
      .frame_W_m2K = frame_u,
      .edge_W_mK = edge_psi_W_mK(setting),
      .added_resistance_m2K_W = std::max(0.0, 1.0 / gap.heat.u_value_W_m2K - 1.0 / bare.u_value_W_m2K)};
  const double frame_before_C =
      frame_face_C(window.areas, conductance_before(window.areas, u).frame_W_K, before);
  const double frame_after_C =
      frame_face_C(window.areas, conductance_with_sheet(setting, u).frame_W_K, after);
  CaseFigures figures;
  figures.room_C = before.room_C;
  figures.outdoor_C = before.outdoor_C;
  figures.flags.raise(bare.flags);
  figures.flags.raise(gap.heat.flags);
  figures.before =
      felt(window, before, bare.face_temperature_C[1],
           opening_radiant_C(window, bare, before.room_C, frame_before_C), options.distance_m, figures.flags);
  figures.after = felt(window, after, gap.heat.face_temperature_C[3],
                       opening_radiant_C(window, gap.heat, after.room_C, frame_after_C), options.distance_m,
                       figures.flags);
  return figures;
}

template <class Figure>
Spread spread_of(const std::vector<CaseFigures>& cases, Figure figure) {
  std::vector<double> values;
  std::transform(cases.begin(), cases.end(), std::back_inserter(values), figure);
  return numerics::weighted_spread(values, std::vector<double>(values.size(), 1.0));
}

ComfortSide side_of(const std::vector<CaseFigures>& cases, SideFigures CaseFigures::*side) {
  const auto spread = [&](double SideFigures::*figure) {
    return spread_of(cases, [&](const CaseFigures& c) { return c.*side.*figure; });
  };
  return {.operative_C = spread(&SideFigures::operative_C),
          .mean_radiant_C = spread(&SideFigures::mean_radiant_C),
          .radiant_asymmetry_K = spread(&SideFigures::asymmetry_K),
          .cool_wall_dissatisfied_per_cent = spread(&SideFigures::cool_wall_per_cent),
          .window_radiant_C = spread(&SideFigures::window_radiant_C),
          .downdraught_m_s = spread(&SideFigures::downdraught_m_s),
          .downdraught_C = spread(&SideFigures::downdraught_C),
          .draught_rating_per_cent = spread(&SideFigures::draught_rating_per_cent),
          .mean_vote = spread(&SideFigures::vote),
          .mean_vote_dissatisfied_per_cent = spread(&SideFigures::vote_per_cent)};
}

std::vector<std::string> conditions() {
  return {
      "A person sits on the middle line of the window, its curtain drawn back, quiet work (1.2 met), indoor "
      "winter clothing (1.0 clo), air otherwise still (0.1 m/s).",
      "A frost night: the coldest month's mean minimum, calm and clear. All other surfaces of the room are "
      "as "
      "warm as its air.",
      "Radiation by view factor to the whole opening at 0.6 m over the floor (ISO 7726, from memory), its "
      "sill taken 0.8 m high; share of people disturbed by a cool wall and by draught after ISO 7730 (from "
      "memory), made for people who are else neither warm nor cold, and a draught at the neck.",
      "Cold air near the floor after Heiselberg (Building and Environment 29, 1994, from memory) for a face "
      "that reaches the floor: an upper bound over a sill, sofa or radiator. A radiator that is on below the "
      "window turns it back."};
}

void add_cases(const std::vector<CaseFigures>& cases, ComfortAtWindow& comfort) {
  comfort.before = side_of(cases, &CaseFigures::before);
  comfort.after = side_of(cases, &CaseFigures::after);
  comfort.operative_gain_K =
      spread_of(cases, [](const CaseFigures& c) { return c.after.operative_C - c.before.operative_C; });
  comfort.asymmetry_cut_K =
      spread_of(cases, [](const CaseFigures& c) { return c.before.asymmetry_K - c.after.asymmetry_K; });
  comfort.downdraught_cut_m_s = spread_of(
      cases, [](const CaseFigures& c) { return c.before.downdraught_m_s - c.after.downdraught_m_s; });
  comfort.room_C = spread_of(cases, [](const CaseFigures& c) { return c.room_C; });
  comfort.outdoor_C = spread_of(cases, [](const CaseFigures& c) { return c.outdoor_C; });
  for (const auto& one : cases) {
    comfort.flags.raise(one.flags);
  }
}

}  // namespace

void ComfortOptions::validate() const {
  require_in_range(static_cast<double>(samples), {16.0, 4096.0}, "samples", "");
  require_in_range(distance_m, {0.3, 5.0}, "distance_m", "m");
}

ComfortAtWindow comfort_at_window(const Survey& survey, const ComfortOptions& options) {
  validate(survey);
  options.validate();
  if (!is_offered(options.option, survey)) {
    throw InvalidInput("option",
                       std::string(name_of(options.option)) + ": cannot be offered for this window");
  }
  const Setting setting = setting_for(survey);
  const auto drawn = draw_cases(setting, {}, {.seed = options.seed});
  std::vector<CaseFigures> cases;
  for (const std::size_t pick : numerics::resampled(drawn.weights, options.samples, options.seed)) {
    if (const auto figures = figures_of(setting, drawn.samples[pick], options)) {
      cases.push_back(*figures);
    }
  }
  ComfortAtWindow comfort;
  comfort.samples = cases.size();
  comfort.samples_left_out = options.samples - cases.size();
  if (static_cast<double>(comfort.samples_left_out) >
      most_left_out_share * static_cast<double>(options.samples)) {
    throw CalculationFailed(explain(SolveStatus::iteration_limit));
  }
  add_cases(cases, comfort);
  comfort.view_factor =
      view_factor(opening_seen(setting.window, options.distance_m), ElementFaces::rectangle);
  comfort.distance_m = options.distance_m;
  comfort.abdomen_height_m = abdomen_height_m;
  comfort.sill_height_m = sill_height_m;
  comfort.clothing_clo = sitter.clothing_clo;
  comfort.metabolic_met = sitter.metabolic_met;
  comfort.conditions = conditions();
  comfort.seed = options.seed;
  return comfort;
}

}  // namespace dewgap
