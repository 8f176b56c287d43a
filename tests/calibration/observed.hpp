// What is observed at one simulated window, drawn with error from its true values.
#pragma once

#include <cstdint>
#include <map>
#include <random>

#include "calibration/matrices.hpp"

namespace dewgap::calibration {

/// The same numbers on every machine.
class Dice {
 public:
  explicit Dice(std::uint64_t seed) : engine_(seed) {}
  double uniform();  ///< inside (0, 1)
  double normal();   ///< standard
  std::size_t below(std::size_t count);

 private:
  std::mt19937_64 engine_;
};

/// By window of the bank: what one stage's observations say.
struct StageEvidence {
  std::vector<double> stated;  ///< log-likelihood as the library has it
  std::vector<double> chance;  ///< logarithm of the chance of what was observed
};

struct Observed {
  Notes notes;  ///< all answers, for the record; the winter's reading with humidity
  std::map<Stage, StageEvidence> evidence;
};

/// Observations of window `truth`, stage by stage. The hygrometer: three readings with one instrument's error
/// and each day's own, of the size that the library states; the winter's reading is by the same instrument.
Observed observed_at(const BankPart& part, const std::vector<AskedQuestion>& asked, std::size_t truth,
                     std::uint64_t seed);

}  // namespace dewgap::calibration
