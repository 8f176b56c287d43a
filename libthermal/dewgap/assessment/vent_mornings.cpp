#include <algorithm>
#include <cctype>
#include <set>

#include "dewgap/assessment/vent_mornings_kernel.hpp"
#include "dewgap/assessment/verdict_kernel.hpp"
#include "dewgap/errors.hpp"

namespace dewgap {
namespace {

/// Small letters, no blanks: "3  December" and "3 december" are one date.
std::string plain(const std::string& date) {
  std::string text;
  for (const char letter : date) {
    const auto byte = static_cast<unsigned char>(letter);
    if (std::isspace(byte) == 0) {
      text.push_back(static_cast<char>(std::tolower(byte)));
    }
  }
  return text;
}

/// What winter_evidence calls the mist of a reading.
bool speaks_of(const EvidenceTerm& term, const WinterReading& reading) {
  return term.use.observation == "mist behind the sheet, " + reading.date;
}

}  // namespace

bool is_large(WinterReading::Mist mist) {
  return mist == WinterReading::Mist::lower_third || mist == WinterReading::Mist::all_over ||
         mist == WinterReading::Mist::runs;
}

void require_one_a_date(const std::vector<WinterReading>& readings) {
  std::set<std::string> dates;
  for (const auto& reading : readings) {
    const auto date = plain(reading.date);
    if (!date.empty() && !dates.insert(date).second) {
      throw InvalidInput("reading.date", "\"" + reading.date + "\" is given twice: one reading a morning");
    }
  }
}

std::vector<Morning> mornings_of(const std::vector<WinterReading>& readings,
                                 const std::vector<EvidenceTerm>& evidence) {
  std::vector<Morning> mornings;
  for (const auto& reading : readings) {
    Morning morning{.reading = reading, .used = false, .why_not = {}, .foretold_share = {}};
    const auto term = std::find_if(evidence.begin(), evidence.end(),
                                   [&](const EvidenceTerm& one) { return speaks_of(one, reading); });
    if (term != evidence.end()) {
      morning.used = term->use.used;
      morning.why_not = term->use.why_not;
      morning.foretold_share = term->use.foretold_share;
    }
    mornings.push_back(std::move(morning));
  }
  return mornings;
}

std::vector<WinterReading> readings_used(const std::vector<Morning>& mornings) {
  std::vector<WinterReading> used;
  for (const auto& morning : mornings) {
    if (morning.used) {
      used.push_back(morning.reading);
    }
  }
  return used;
}

std::optional<double> foretold_share_of(const std::vector<Morning>& mornings) {
  std::optional<double> least;
  for (const auto& morning : mornings) {
    if (morning.used && morning.foretold_share) {
      least = std::min(least.value_or(1.0), *morning.foretold_share);
    }
  }
  return least;
}

std::string against_the_model(const std::optional<double>& foretold_share) {
  if (!foretold_share || *foretold_share >= least_foretold_share) {
    return {};
  }
  return "the mornings go against the model: it gave what was seen a chance of " + percent(*foretold_share);
}

}  // namespace dewgap
