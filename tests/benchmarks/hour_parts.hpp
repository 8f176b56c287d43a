// Where the library's step spends its time: its flow network and its heat balance run alone on what a year
// gave them.
#pragma once

#include <span>

#include "kinsol_hours.hpp"

namespace dewgap::bench {

inline constexpr std::size_t block_hours = 365;  ///< hours that are timed together

/// An hour as it is handed to the contestants.
struct BenchHour {
  HourConditions given;
  HourGuess guess;
};

/// Prints microseconds and shares of a step: network, heat, and the rest (vapour, films, timber, accounts).
void print_parts(const GapDesign& design, std::span<const BenchHour> year, double closure_W_m2,
                 int repetitions);

}  // namespace dewgap::bench
