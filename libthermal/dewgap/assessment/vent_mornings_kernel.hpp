// What became of the mornings that were read in the first winter. Internal to assessment/.
#pragma once

#include <optional>
#include <vector>

#include "dewgap/assessment/vent_cases_kernel.hpp"

namespace dewgap {

/// Throws InvalidInput for two readings of one date, however its letters and blanks are written. An empty
/// date is none.
void require_one_a_date(const std::vector<WinterReading>& readings);

/// Each reading with what its mist did as evidence.
std::vector<Morning> mornings_of(const std::vector<WinterReading>& readings,
                                 const std::vector<EvidenceTerm>& evidence);
std::vector<WinterReading> readings_used(const std::vector<Morning>& mornings);

/// The least chance that was given to what was seen on a morning; later mornings are foretold by cases that
/// know the earlier ones, so that a mean would hide the first surprise. None where none is told.
std::optional<double> foretold_share_of(const std::vector<Morning>& mornings);

/// Why mornings unsettle the answer, a clause; empty when they don't.
std::string against_the_model(const std::optional<double>& foretold_share);

}  // namespace dewgap
