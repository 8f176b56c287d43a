// Comfort at 1 m before the window on a frost night, without and with the sheet, over plausible cases.
//
// A person sits on the middle line of the window, 1 m from the glass. Radiation is taken at 0.6 m over the
// floor (abdomen of a seated person, ISO 7726, from memory) by view factor to the whole opening, whose sill
// stands 0.8 m high (our convention); glass and frame are spread evenly over it, the rest of the room is as
// warm as its air. The curtain is drawn back: one sits at the window. Downdraught is Heiselberg's for the
// height of the opening, as cold as the glass or sheet, unbroken to the floor: an upper bound over a sill.
// Clothing 1.0 clo, quiet seated work 1.2 met.
#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <vector>

#include "dewgap/assessment/survey.hpp"
#include "dewgap/assessment/vent_option.hpp"
#include "dewgap/quantity.hpp"
#include "dewgap/validity.hpp"

namespace dewgap {

struct ComfortOptions {
  VentOption option = VentOption::sealed;
  std::size_t samples = 64;  ///< picked by weight, 16 to 4096
  std::uint64_t seed = 1;
  double distance_m = 1.0;  ///< 0.3 to 5
  void validate() const;
};

/// At the point, one way of the window.
struct ComfortSide {
  Spread operative_C;
  Spread mean_radiant_C;
  Spread radiant_asymmetry_K;  ///< room side less window side
  Spread cool_wall_dissatisfied_per_cent;
  Spread window_radiant_C;  ///< even temperature of an opening that radiates as this one does
  Spread downdraught_m_s;   ///< highest speed near the floor
  Spread downdraught_C;     ///< lowest air temperature there
  Spread draught_rating_per_cent;
  Spread mean_vote;  ///< PMV
  Spread mean_vote_dissatisfied_per_cent;
};

struct ComfortAtWindow {
  ComfortSide before;
  ComfortSide after;
  // Paired, case by case.
  Spread operative_gain_K;
  Spread asymmetry_cut_K;
  Spread downdraught_cut_m_s;
  Spread room_C;             ///< air of the room in the cases
  Spread outdoor_C;          ///< on the frost night
  double view_factor = 0.0;  ///< of a small element that faces the window, to the opening
  double distance_m = 1.0;
  double abdomen_height_m = 0.6;
  double sill_height_m = 0.8;
  double clothing_clo = 1.0;
  double metabolic_met = 1.2;
  std::vector<std::string> conditions;  ///< sentences for people, with sources
  ValidityFlags flags;
  std::size_t samples = 0;  ///< picks that settled
  std::size_t samples_left_out = 0;
  std::uint64_t seed = 0;
};

/// Throws InvalidInput for an invalid survey or option; CalculationFailed when over a twentieth of the cases
/// do not settle. Safety gates are not asked: assess does.
ComfortAtWindow comfort_at_window(const Survey& survey, const ComfortOptions& options = {});

}  // namespace dewgap
