// What a year of a gap is called: dry, harmless mist, runs or damages.
//
// A limit without a source is our convention. Each is a threshold on one number, so that a worse number never
// gives a better band.
#pragma once

#include <cstdint>
#include <string_view>

#include "dewgap/moisture/criteria.hpp"

namespace dewgap {

/// Whether what winter left in the gap is gone by the end of summer.
enum class AfterSummer { dried, still_wet };

/// Hours are 0 to 8784, and a run on end is never longer than all its hours. Faces are those of the gap.
struct DampYear {
  double hours_wet = 0.0;                   ///< water or frost above wet_from_g_m2 on a face
  double longest_wet_run_h = 0.0;           ///< of those, on end
  double peak_film_g_m2 = 0.0;              ///< water on a face at its most, 0 to 1e6; frost once it melts
  double run_off_kg_m2 = 0.0;               ///< from the face to the sill in the year, 0 to 1e4
  double pool_hours = 0.0;                  ///< water or ice stands on the sill
  double longest_pool_run_h = 0.0;          ///< of those, on end
  double timber_hours_above_caution = 0.0;  ///< above timber_caution_kg_kg (timber.hpp)
  double longest_timber_run_h = 0.0;        ///< of those, on end
  AfterSummer after_summer = AfterSummer::dried;
};

/// Film from which an hour counts as wet, g/m2: a veil that blurs the view (our convention).
inline constexpr double wet_from_g_m2 = 1.0;

// Dry: below each of these.
inline constexpr double dry_hours_below_h = 10.0;   ///< wet, or pool standing: our convention
inline constexpr double dry_peak_below_g_m2 = 5.0;  ///< a sixth of what begins to run: our convention
// Harmless mist: below what begins to run (BS 5250:2002, droplets_from_g_m2), and at most these.
inline constexpr double mist_longest_run_h = 7.0 * 24.0;  ///< dries within days, film or pool: our convention
inline constexpr double mist_run_off_kg_m2 = 0.001;  ///< some twenty drops a m2 in the year: our convention
inline constexpr double mist_timber_excess_h = 7.0 * 24.0;  ///< on end, beyond the old window: our convention
// Damages: more than one of these, or still wet after summer (EN ISO 13788: condensate that does not
// dry out within the year accumulates; from memory).
/// Timber above 20 % on end, beyond what the old window has as it is. Wood Handbook: decay wants wood wet for
/// weeks, and 20 % has a margin below fibre saturation (both from memory); four weeks is our convention.
inline constexpr double damage_timber_excess_h = 28.0 * 24.0;
inline constexpr double damage_pool_run_h = 14.0 * 24.0;  ///< on end: our convention

/// From best to worst.
enum class YearBand : std::uint8_t {
  dry,            ///< next to no film, no pool, timber no worse
  harmless_mist,  ///< mist that dries within days, does not run, and leaves timber alone
  runs,           ///< the rest: it runs, stays for weeks, or wets timber for one to four weeks more
  damages         ///< timber wet for weeks more, water carried over summer, or a pool that stands
};

/// `timber_run_as_it_is_h`: longest run of the same timber above the caution with the old window as it is, 0
/// to 8784; 0 judges the timber by itself. The total of timber's hours does not decide: short spells dry.
/// Contradicting or impossible input throws InvalidInput.
YearBand year_band(const DampYear& year, double timber_run_as_it_is_h = 0.0);

std::string_view name_of(YearBand band);

}  // namespace dewgap
