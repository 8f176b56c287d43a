// The whole answer for one window.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "dewgap/assessment/cut_check.hpp"
#include "dewgap/assessment/edge_of_window.hpp"
#include "dewgap/assessment/gates.hpp"
#include "dewgap/assessment/priors.hpp"
#include "dewgap/assessment/saving_samples.hpp"
#include "dewgap/assessment/survey.hpp"
#include "dewgap/assessment/vent_advice.hpp"
#include "dewgap/assessment/vent_option.hpp"
#include "dewgap/fitting/sheet_plan.hpp"
#include "dewgap/gap/steady.hpp"
#include "dewgap/quantity.hpp"
#include "dewgap/validity.hpp"

namespace dewgap {

enum class Headline { fit, fit_after, hold, leave };
std::string_view name_of(Headline headline);

/// One option over the weighted samples, under the two steady design conditions.
struct VentOutcome {
  VentOption option = VentOption::sealed;
  double dry_share = 0.0;  ///< plausible cases that stay dry in the coldest month's means
  double acceptable_share =
      0.0;                ///< month's means clear at the centre (edges may mist), frost night at most mist
  Spread month_margin_K;  ///< coldest face less potential dew point
  Spread frost_night_margin_K;
  Spread month_condensation_g_m2h;
  Spread frost_night_condensation_g_m2h;
  Spread frost_night_film_g_m2;  ///< after the night's hours, from a dry start
  Spread air_through_gap_m3_h;
  Spread heat_penalty_kWh;     ///< against sealed
  double share_inwards = 0.0;  ///< plausible cases whose net flow is inwards
  double share_outwards = 0.0;
  double share_both_ways = 0.0;
  double share_room_side = 0.0;
  double share_still = 0.0;
};

/// One unknown, and how much of the answer hangs on it.
struct Influence {
  Unknown unknown{};
  std::string label;
  std::string settle_by;
  bool guessed = true;      ///< nothing but the prior speaks
  double on_saving = 0.0;   ///< squared rank correlation with the saving, 0..1
  double on_dryness = 0.0;  ///< the same with the month's margin
};

/// A value of the survey or a resolved default, with its basis, for the record.
struct ResolvedInput {
  std::string key;
  double value = 0.0;
  std::string unit;
  Basis basis = Basis::defaulted;
  std::string source;
};

/// One window side, single glazing now against the sheet, real conditions unless named declared.
struct SideBySide {
  double declared_glass_before_W_m2K = 0.0;  ///< EN 673, not an official rating
  double declared_glass_after_W_m2K = 0.0;
  Spread glass_u_before_W_m2K;
  Spread glass_u_after_W_m2K;
  Spread window_u_before_W_m2K;
  Spread window_u_after_W_m2K;
  Spread room_face_before_C;  ///< frost night
  Spread room_face_after_C;
  Spread room_face_factor_before;  ///< temperature factor fRsi of the room face, coldest month's means
  Spread room_face_factor_after;
  Spread room_face_humidity_before;  ///< 0..1 and above, at that face: 0.8 mould, 1 condensation
  Spread room_face_humidity_after;
  Spread draught_before_m3_h;  ///< through the window, winter mean, counted once
  Spread draught_after_m3_h;
  Spread heat_saved_kWh;
  Spread saved_glass_kWh;
  Spread saved_frame_kWh;
  Spread saved_air_kWh;
  Spread sun_lost_kWh;
  Spread room_humidity;                         ///< 0..1, coldest month
  Spread dry_up_to_room_humidity;               ///< 0..1, coldest month, chosen option
  double verdict_turns_at_room_humidity = 0.0;  ///< 0..1: above it too few plausible cases stay dry for a FIT
};

struct MoneySpread {
  Spread saved_per_year;
  std::optional<Spread> carbon_kg_per_year;
  std::optional<Spread> payback_years;  ///< absent when over a tenth of the cases never pay back
  double never_pays_back_share = 0.0;
  std::optional<Spread> net_present_value;
};

struct Caution {
  std::string topic;
  std::string brief;  ///< at most 60 characters
  std::string say;
  std::string source;
};

/// The verdict at another width of the priors that are our convention, by the steady conditions (a year of
/// hours at three widths would cost three times as much).
struct WidthCheck {
  double width = 1.0;
  Headline headline = Headline::hold;
  VentOption option = VentOption::sealed;
  double acceptable_share = 0.0;
};

struct AssessOptions {
  std::size_t samples = 256;  ///< 16 to 1e6
  std::uint64_t seed = 1;
  double frost_night_hours = 12.0;  ///< 1 to 24
  bool width_checks = true;
  /// The year of hours takes at most about so many (see VentAdviceOptions), 1e4 to 1e12. 0: no year is run,
  /// the answer is that of the two steady conditions alone, and provisional.
  std::size_t most_window_hours = 5'000'000;
  void validate() const;
};

/// When `headline` is hold, everything below `cautions` is empty: no saving, no cut, no drilling exists to
/// print.
struct Assessment {
  Headline headline = Headline::hold;
  std::string because;             ///< one plain sentence
  std::vector<std::string> after;  ///< FIT AFTER: what to do first; LEAVE: what would change it
  std::vector<OpenGate> open_gates;
  std::vector<Caution> cautions;

  struct Figures {
    /// No year of hours was run, or it is not settled, or nobody looked at the bottom rail or for rain, or
    /// guesses decide: the steady verdict flips at half or double width of the conventions (not asked without
    /// width_checks).
    bool provisional = true;
    std::string vent_reason;  ///< which way the air goes and why
    std::string flip;         ///< what would change the verdict
    VentOption vent = VentOption::sealed;
    std::vector<VentOutcome> vents;  ///< the three that the steady conditions compare
    std::optional<VentAdvice> year;  ///< the year of hours, when one was run
    double agree_share = 0.0;        ///< plausible cases that agree with the headline's vent option
    double lifted_tape_acceptable_share = 0.0;  ///< what-if: one 200 mm length of tape lifted
    SideBySide now_and_with;
    std::optional<EdgeAnswer> edge;  ///< where the survey asks for the section
    std::optional<MoneySpread> money;
    std::vector<Influence> influences;      ///< largest first
    std::vector<std::string> settle_first;  ///< at most three one-minute looks
    std::vector<std::string> guessed;       ///< unknowns nobody looked at, for people
    std::vector<EvidenceUse> evidence;
    std::vector<ResolvedInput> inputs;
    std::vector<WidthCheck> width_checks;
    std::optional<SheetPlan> plan;      ///< absent on LEAVE; to be cut only when nothing in `cut` is against
    CutCheck cut;                       ///< on LEAVE the sun alone
    std::vector<std::string> remedies;  ///< doable ones, with figures
    ValidityFlags flags;
    std::size_t samples = 0;
    std::size_t samples_left_out = 0;  ///< did not converge; at most 2 % of the weight, else the answer fails
    double effective_samples = 0.0;
    std::uint64_t seed = 0;
    double coldest_month_C = 0.0;
    double frost_night_C = 0.0;
    std::string place_line;        ///< station, distance, height difference
    SavingSamples saving_samples;  ///< for totals over windows: house.hpp
  };
  std::optional<Figures> figures;  ///< absent on HOLD
};

/// Whether there is a size to cut: a plan, and nothing against it.
bool may_be_cut(const Assessment& assessment);

/// Throws InvalidInput for an invalid survey, CalculationFailed when a sample does not converge. O(samples x
/// options + most_window_hours); memory O(samples x unknowns).
///
/// When a year of hours was run and has shares to show (Figures::year, its options not empty), the vent
/// option, the share of plausible cases and FIT, FIT AFTER or LEAVE are the year's. U, savings and money stay
/// those of the steady conditions; where the year's option is not one that they compare, they are those of
/// the nearest one (breaks of another length: breaks at the bottom; else: sealed), with the year's difference
/// in heat between the two (of the medians against sealed) put to the glass in every sample.
Assessment assess(const Survey& survey, AssessOptions options = {});

/// The same with weather of one's own for the year (nullopt: synthesised from the place's normals), and
/// called as the year's work goes on.
Assessment assess_in_weather(const Survey& survey, const AssessOptions& options,
                             const std::optional<HourlyYear>& weather, const Progress& progress = {});

}  // namespace dewgap
