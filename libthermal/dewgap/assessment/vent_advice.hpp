// The vent decision over a year of hours: seal it or leave breaks, how sure, and what would change it.
//
// Plausible cases are drawn from the priors and weighted by all that was observed. Sorted by how wet the
// sealed gap is in the coldest month's means, they are picked by a shifted van der Corput sequence in the
// cumulative weight: each pick counts the same, and any first few stand for all. Each picked case runs
// through the year under every option that can be offered. Batches (16, then 8 at a time) are added until the
// choice is settled:
//   - the chosen option's acceptable share is clear of the 70 % that make a FIT: its 90 % interval after
//     Jeffreys leaves the line out;
//   - of the cases in which just one is acceptable, the choice or the simplest option that is not tied with
//     it, the share that speaks for the choice is clear of a half, by the same interval.
// Since the picks are spread evenly, these intervals are on the wide side: at 16 picks the acceptable share
// of one window (a damp sash in London, twelve seeds, against 320 picks) had an error of 0.064 where chance
// alone would have given 0.101. Chosen is the option with the most acceptable cases; options within 5 % of
// plausible cases tie, and the simplest wins. Within one case options rank by band, then heat; in one band
// and within 3 kWh or 2 % of the season's heat (the larger) of the best they share the win. All of these
// limits are our convention.
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "dewgap/assessment/priors.hpp"
#include "dewgap/assessment/survey.hpp"
#include "dewgap/assessment/vent_option.hpp"
#include "dewgap/climate/hourly_year.hpp"
#include "dewgap/gap/steady.hpp"
#include "dewgap/moisture/year_bands.hpp"
#include "dewgap/quantity.hpp"

namespace dewgap {

struct VentAdviceOptions {
  std::size_t prior_samples =
      4096;  ///< drawn and weighted by the evidence, 64 to 1e6; grown 16 times at most
  std::size_t most_window_hours = 5000000;  ///< 1e4 to 1e12
  /// 0: as many as settle the choice within four fifths of the bound (the rest is for remedies and drying);
  /// else so many, 8 to 1e6, whatever the bound.
  std::size_t samples = 0;
  std::uint64_t seed = 1;
  VentOption fitted = VentOption::sealed;  ///< what hangs there when winter readings are given
  bool inverse_answers = true;  ///< the intervals below; they cost steady solutions, not window-hours
  void validate() const;
};

/// A figure over the cases that were run: percentiles, and the least and greatest of them. It is no Spread,
/// and does not become one: whoever shows it asks how many cases it rests on.
struct CaseSpread {
  double p10 = 0.0;
  double p50 = 0.0;
  double p90 = 0.0;
  double least = 0.0;
  double greatest = 0.0;
};
/// Of fewer cases the 10th and 90th percentile rest on a handful: tell the least and greatest instead. Our
/// convention.
inline constexpr std::size_t least_cases_for_percentiles = 40;

/// One option over the plausible cases.
struct OptionAdvice {
  VentOption option = VentOption::sealed;
  double acceptable_share = 0.0;  ///< dry or harmless mist
  double best_share = 0.0;        ///< cases in which it is best or ties with the best; ties count for all
  std::array<double, 4> band_share{};  ///< dry, harmless mist, runs, damages
  CaseSpread hours_wet;
  CaseSpread longest_wet_run_h;
  CaseSpread peak_film_g_m2;
  CaseSpread drained_g_m2;
  CaseSpread peak_pool_g_m2;
  CaseSpread frost_hours;
  CaseSpread misty_mornings;
  CaseSpread timber_hours_above_caution;
  CaseSpread room_face_peak_month_humidity;
  CaseSpread heat_kWh;
  CaseSpread heat_against_sealed_kWh;
  /// Days to dry from a wet gap in January (July south): film at its retention, a pool of 100 g/m2, timber
  /// at 24 %. Over up to 16 cases, those that are dry within a year; no value when over a tenth are not, or
  /// when the bound left no hours.
  std::optional<CaseSpread> drying_days;
  std::size_t cases_dried = 0;                    ///< that those days are of
  std::optional<double> not_dry_in_a_year_share;  ///< of those cases; no value when none was run
};

/// What decides between dry and wet for the chosen option: unknowns whose rank correlation is beyond what
/// chance gives one in a hundred times.
struct Decider {
  Unknown unknown{};
  std::string label;
  std::string settle_by;
  double rank_measure = 0.0;  ///< squared rank correlation with the chosen option's band and hours wet, 0..1
  bool guessed = true;
};

struct HumidityBand {
  double low = 0.0;  ///< room relative humidity, 0..1
  double high = 0.0;
};

/// A night whose minimum is above that, C, is not taken for a frosty one: mild nights are mostly cloudy or
/// windy, and the pane is then far warmer than under a clear sky. Our convention.
inline constexpr double frosty_below_C = 3.0;

/// Fed back after the first frosty weeks. Of the night before: the gap's steady state at that temperature,
/// calm and clear as a frost night, is held against the mist that was seen. A reading of a night that was not
/// frosty is recorded in the evidence, not used.
struct WinterReading {
  std::string date;                              ///< as the person wrote it
  double outdoor_C = 0.0;                        ///< night's minimum, -40 to 30
  std::optional<double> room_C;                  ///< 0 to 40
  std::optional<double> room_relative_humidity;  ///< 0.05 to 1
  enum class Mist { none, edges, lower_third, all_over, runs } mist = Mist::none;  ///< on the gap's faces
};
/// The word for it, as observations.csv and files of readings have it: "lower_third".
std::string_view key_of(WinterReading::Mist mist);

/// A morning that was read, and what became of it.
struct Morning {
  WinterReading reading;
  bool used = false;                     ///< its mist speaks of the gap
  std::string why_not;                   ///< when not
  std::optional<double> foretold_share;  ///< chance that the cases gave what was seen, before it was seen
};
/// Mist over a third of the pane or more, or water that ran.
bool is_large(WinterReading::Mist mist);
/// What was seen, given less of a chance than this, goes against the model: nothing is settled then. Our
/// convention.
inline constexpr double least_foretold_share = 0.10;

/// Which way the air goes through the gap with the choice, over the cold half year.
struct YearsAir {
  AirWay way = AirWay::still;  ///< of most cases, each by its mean flows (way_of)
  double share = 0.0;          ///< cases that have it
  std::string reason;          ///< which way, and why that decides the tape: a sentence
  CaseSpread from_room_m3_s;   ///< mean air into the gap
  CaseSpread from_outdoors_m3_s;
};

struct VentAdvice {
  bool settled = false;  ///< effective samples at least 50, and the choice would survive another batch
  std::string not_settled_because;
  VentOption choice = VentOption::sealed;
  std::vector<VentOption> tied;  ///< options that share the win with it, by acceptable share
  OptionAdvice as_it_is;         ///< its `option` means nothing
  /// Offered ones, simplest first. Empty, as is all below but evidence and counts, when there are no shares
  /// to show: effective samples below 50, too few window-hours for eight cases, or cases that did not settle.
  std::vector<OptionAdvice> options;
  YearsAir air;
  double lifted_tape_acceptable_share = 0.0;
  std::vector<Decider> deciders;  ///< largest first
  std::vector<EvidenceUse> evidence;
  /// The observation that moved the answer most, a sentence; or that none moved it by more than chance, two
  /// sampling errors of the share. Empty without evidence.
  std::string moved_most;
  std::string flip;       ///< what would flip it
  std::string next_look;  ///< the cheapest look that could
  // Steady, of the chosen option in the coldest month's means, nothing at the coldest face with its edge, of
  // the middle case (each unknown at its weighted median). Unions of intervals, since dryness is not
  // monotone; empty when dry nowhere in the scan or when a balance did not settle.
  std::vector<HumidityBand> dry_room_humidity;
  std::vector<HumidityBand> dry_seal_leakage;  ///< inner seal, m3/(h m) at 1 Pa, over three decades
  std::vector<HumidityBand>
      dry_outdoor_leakage;  ///< joints in series with the gap, else putty lines; the same
  double room_humidity_rise =
      0.0;  ///< of relative humidity by sealing in the coldest month, share of 1, median
  std::vector<std::string> remedies;  ///< doable ones, with figures; empty when enough cases are acceptable
  std::optional<std::size_t>
      realistic_remedy;              ///< the one of them that makes enough cases acceptable and is realistic
  std::size_t samples = 0;           ///< that count: picks, those of one case each counted
  std::size_t cases_run = 0;         ///< different ones among them
  std::size_t samples_left_out = 0;  ///< of the picks: did not settle
  double effective_samples = 0.0;    ///< Kish's, of the weighted draw
  std::size_t window_hours = 0;
  /// The smallest bound that pays for eight cases of this window; set when the one given did not.
  std::optional<std::size_t> least_window_hours;
  std::size_t prior_samples = 0;
  std::uint64_t seed = 0;
  std::string weather_source;
  ModelledColumns modelled;
  std::vector<WinterReading> readings;            ///< that were used
  std::vector<Morning> mornings;                  ///< all that were given
  std::optional<double> mornings_foretold_share;  ///< the least of those used
};

/// Called after every case: window-hours done and the most there may be.
using Progress = std::function<void(std::size_t done, std::size_t most)>;

/// Throws InvalidInput for an invalid survey, year or reading, and for two readings of one date. Safety gates
/// are not asked: assess does. Weather: an hourly year, or (default) one synthesised from the place's
/// normals. The same arguments give the same answer. O(samples x options x hours); memory independent of
/// hours but for the weather itself, under 1 kB a sample run.
VentAdvice vent_advice(const Survey& survey, const std::optional<HourlyYear>& weather = std::nullopt,
                       const std::vector<WinterReading>& readings = {}, VentAdviceOptions options = {},
                       const Progress& progress = {});

}  // namespace dewgap
