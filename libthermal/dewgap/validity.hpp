// Flags that a result raises where a correlation leaves the range it was validated for.
#pragma once

#include <cstdint>
#include <string_view>

namespace dewgap {

/// One bit a reason; a result that used no correlation outside its range carries none.
enum class ValidityFlag : std::uint32_t {
  none = 0,
  gap_aspect_ratio = 1u << 0,     ///< H/L below or above the range of the gap correlation
  gap_rayleigh_number = 1u << 1,  ///< Ra above the range of the gap correlation
  gap_jump_blended = 1u << 2,     ///< the state lies in a band where a jump of the correlation was blended
  gap_wide_correlations_differ = 1u << 3,  ///< gap over 50 mm: published correlations disagree
  room_film_rayleigh_number = 1u << 4,     ///< Ra outside the range of the room-side film
  tilt_untested = 1u << 5,                 ///< tilted gap: correlation from memory, checked by limits only
  film_transmits_long_wave = 1u << 6,      ///< a layer passes long-wave radiation: U depends on what it sees
  radiant_asymmetry_range = 1u << 7,       ///< cool-wall asymmetry beyond what ISO 7730's curve was made for
  downdraught_range = 1u << 8,             ///< height or difference outside what the correlation was made for
  downdraught_over_sill = 1u << 9,         ///< the cold face does not reach the floor: an upper bound
  draught_rating_range = 1u << 10,         ///< air, speed or turbulence outside the draught rating's range
  mean_vote_range = 1u << 11,              ///< outside the range of ISO 7730's predicted mean vote
};

struct ValidityFlags {
  std::uint32_t bits = 0;

  constexpr void raise(ValidityFlag flag) { bits |= static_cast<std::uint32_t>(flag); }
  constexpr void raise(ValidityFlags other) { bits |= other.bits; }
  constexpr bool has(ValidityFlag flag) const { return (bits & static_cast<std::uint32_t>(flag)) != 0; }
  constexpr bool empty() const { return bits == 0; }
};

/// One sentence for the flag, for people.
std::string_view explain(ValidityFlag flag);

/// How a calculation ended. A result whose status is not `converged` holds no answer.
enum class SolveStatus { converged, iteration_limit, no_bracket, singular };

std::string_view explain(SolveStatus status);

}  // namespace dewgap
