// The vent decision as a table.
#include <fmt/format.h>

#include <array>
#include <cmath>
#include <stdexcept>

#include "tools/answer/csv_year.hpp"
#include "tools/answer/json_vent.hpp"
#include "tools/answer/plain_text.hpp"
#include "tools/answer/text_vent_figures.hpp"
#include "tools/answer/words.hpp"
#include "tools/job/units.hpp"

namespace dewgap::tools {
namespace {

struct SpreadColumn {
  std::string_view name;
  CaseSpread OptionAdvice::*spread;
  double factor = 1.0;
};
constexpr std::array spread_columns{
    SpreadColumn{"hours_wet_h", &OptionAdvice::hours_wet},
    SpreadColumn{"longest_wet_run_h", &OptionAdvice::longest_wet_run_h},
    SpreadColumn{"peak_film_g_m2", &OptionAdvice::peak_film_g_m2},
    SpreadColumn{"drained_g_m2", &OptionAdvice::drained_g_m2},
    SpreadColumn{"peak_pool_g_m2", &OptionAdvice::peak_pool_g_m2},
    SpreadColumn{"frost_h", &OptionAdvice::frost_hours},
    SpreadColumn{"misty_mornings", &OptionAdvice::misty_mornings},
    SpreadColumn{"timber_above_caution_h", &OptionAdvice::timber_hours_above_caution},
    SpreadColumn{"room_face_peak_month_humidity_pct", &OptionAdvice::room_face_peak_month_humidity,
                 per_cent.per_base},
    SpreadColumn{"heat_kWh", &OptionAdvice::heat_kWh},
    SpreadColumn{"heat_against_sealed_kWh", &OptionAdvice::heat_against_sealed_kWh}};

std::string header() {
  std::string line =
      "option,share_acceptable,share_best,share_dry,share_harmless_mist,share_runs,share_damages";
  for (const auto& column : spread_columns)
    line += fmt::format(",{0}_p50,{0}_least,{0}_greatest,{0}_p10,{0}_p90", column.name);
  return line + "\n";
}

void add_number(std::string& line, double value) {
  if (!std::isfinite(value)) throw std::domain_error("a result is not a finite number");
  line += fmt::format(",{:.6g}", value);
}

/// Of few cases there are no percentiles: their cells stay empty.
std::string row(std::string_view name, const OptionAdvice& option, std::size_t cases) {
  std::string line(name);
  for (const double share : {option.acceptable_share, option.best_share}) add_number(line, share);
  for (const double share : option.band_share) add_number(line, share);
  for (const auto& column : spread_columns) {
    const CaseSpread& spread = option.*column.spread;
    for (const double value : {spread.p50, spread.least, spread.greatest})
      add_number(line, column.factor * value);
    if (cases < least_cases_for_percentiles) {
      line += ",,";
      continue;
    }
    for (const double value : {spread.p10, spread.p90}) add_number(line, column.factor * value);
  }
  return line + "\n";
}

/// Why no row follows, or what to do before any of them holds, as comments.
std::string reasons(const AdvisedJob& job) {
  std::string lines = hold_comments(job.job.assessment);
  for (const auto& mend : job.mend_first) lines += fmt::format("# MEND FIRST: {}\n", harmless(mend.say));
  if (job.advice && !job.advice->settled)
    lines += fmt::format("# NOT SETTLED: {}\n", harmless(unsettled_words(*job.advice)));
  return lines;
}

}  // namespace

std::string csv_vent(const AdvisedJob& job) {
  std::string text = reasons(job) + header();
  if (!job.advice || job.advice->options.empty()) return text;
  for (const auto& option : job.advice->options)
    text += row(json_word(option.option), option, job.advice->cases_run);
  return text + row("as_it_is", job.advice->as_it_is, job.advice->cases_run);
}

}  // namespace dewgap::tools
