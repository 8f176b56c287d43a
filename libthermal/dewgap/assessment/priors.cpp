#include "dewgap/assessment/priors.hpp"

#include <algorithm>
#include <cmath>
#include <set>
#include <utility>

#include "dewgap/errors.hpp"
#include "dewgap/numerics/csv_text.hpp"
#include "dewgap/numerics/sampling.hpp"
#include "embedded/room_assessment.hpp"

namespace dewgap {
namespace {

constexpr std::array<std::string_view, unknown_count> keys{"joint_leakage",      "putty_leakage",
                                                           "seal_leakage",       "vapour_excess",
                                                           "room_temperature",   "neutral_level_offset",
                                                           "wind_ratio",         "wind_pressure",
                                                           "gust_intensity",     "extract_depression",
                                                           "background_airflow", "sheet_emissivity",
                                                           "glass_emissivity",   "outdoor_convection",
                                                           "room_film",          "gap_correlation",
                                                           "gap_convection",     "cloud_cover",
                                                           "edge_factor",        "frame_u_factor",
                                                           "base_temperature",   "heated_share",
                                                           "draught_needed",     "sun_used",
                                                           "sun_transmitted",    "tape_vapour_resistance",
                                                           "climate_offset",     "film_retention",
                                                           "run_off_time",       "gusts_per_s",
                                                           "timber_depth",       "timber_coat",
                                                           "soak_time",          "glass_sun_absorbed",
                                                           "sheet_sun_absorbed"};
static_assert(!keys.back().empty(), "every unknown has its key");

Unknown unknown_of(const std::string& key) {
  const auto found = std::find(keys.begin(), keys.end(), key);
  if (found == keys.end()) {
    throw InvalidInput("priors.csv unknown", "'" + key + "' is not an unknown of the model");
  }
  return static_cast<Unknown>(std::distance(keys.begin(), found));
}

PriorShape shape_of(const std::string& name) {
  if (name == "normal") {
    return PriorShape::normal;
  }
  if (name == "lognormal") {
    return PriorShape::lognormal;
  }
  if (name == "uniform") {
    return PriorShape::uniform;
  }
  throw InvalidInput("priors.csv shape", "'" + name + "' is not normal, lognormal or uniform");
}

void require_ordered(const Prior& prior) {
  const std::array<double, 5> ladder{prior.lowest, prior.p10, prior.p50, prior.p90, prior.highest};
  const bool rises = std::adjacent_find(ladder.begin(), ladder.end(), std::greater_equal<>()) == ladder.end();
  if (!rises) {
    throw InvalidInput("priors.csv", "lowest < p10 < p50 < p90 < highest does not hold for " +
                                         std::string(key_of(prior.unknown)) + " " + prior.variant);
  }
  if (prior.shape == PriorShape::lognormal && prior.lowest <= 0.0) {
    throw InvalidInput("priors.csv", "a lognormal prior needs a positive lowest");
  }
}

std::vector<Prior> read_priors() {
  const numerics::CsvTable table(embedded::priors_csv, "priors.csv");
  std::vector<Prior> rows;
  std::set<std::pair<std::string, std::string>> seen;
  for (std::size_t i = 0; i < table.row_count(); ++i) {
    Prior prior{.unknown = unknown_of(table.text(i, "unknown")),
                .variant = table.text(i, "variant"),
                .shape = shape_of(table.text(i, "shape")),
                .p10 = table.number(i, "p10"),
                .p50 = table.number(i, "p50"),
                .p90 = table.number(i, "p90"),
                .lowest = table.number(i, "lowest"),
                .highest = table.number(i, "highest"),
                .unit = table.text(i, "unit"),
                .source = table.text(i, "source"),
                .label = table.text(i, "label"),
                .settle_by = table.text(i, "settle_by")};
    require_ordered(prior);
    if (!seen.emplace(table.text(i, "unknown"), prior.variant).second) {
      throw InvalidInput("priors.csv", "two rows for " + table.text(i, "unknown") + " " + prior.variant);
    }
    rows.push_back(std::move(prior));
  }
  return rows;
}

/// Folds a value back inside its bounds by reflection, so that no sample sits on a bound.
double fold_inside(double value, double lowest, double highest) {
  const double span = highest - lowest;
  const double phase = std::fmod(std::abs(value - lowest), 2.0 * span);
  return lowest + (phase <= span ? phase : 2.0 * span - phase);
}

/// Two half-normal sides that meet at the median: exact at the three stated percentiles.
double two_sided_normal(double z, double p10, double p50, double p90) {
  const double side = z < 0.0 ? p50 - p10 : p90 - p50;
  return p50 + z / numerics::normal_p90 * side;
}

}  // namespace

double Prior::at(double u, double width) const {
  require_in_range(u, {1e-12, 1.0 - 1e-12}, "prior probability", "");
  require_in_range(width, {0.0, 10.0}, "prior width", "");
  const double z = width * numerics::normal_quantile(u);
  switch (shape) {
    case PriorShape::normal:
      return fold_inside(two_sided_normal(z, p10, p50, p90), lowest, highest);
    case PriorShape::lognormal:
      return fold_inside(std::exp(two_sided_normal(z, std::log(p10), std::log(p50), std::log(p90))), lowest,
                         highest);
    case PriorShape::uniform:
      return fold_inside(0.5 * (p10 + p90) + width * (u - 0.5) * (p90 - p10) / 0.8, lowest, highest);
  }
  throw InvalidInput("prior shape", "unknown shape");
}

const std::vector<Prior>& all_priors() {
  static const std::vector<Prior> rows = read_priors();
  return rows;
}

const Prior& prior_of(Unknown unknown, std::string_view variant) {
  const auto& rows = all_priors();
  const auto matches = [&](std::string_view wanted) {
    return std::find_if(rows.begin(), rows.end(),
                        [&](const Prior& row) { return row.unknown == unknown && row.variant == wanted; });
  };
  if (const auto exact = matches(variant); exact != rows.end()) {
    return *exact;
  }
  if (const auto general = matches(""); general != rows.end()) {
    return *general;
  }
  throw InvalidInput("priors.csv", "no row for " + std::string(key_of(unknown)));
}

std::string_view key_of(Unknown unknown) {
  return keys.at(static_cast<std::size_t>(unknown));
}

}  // namespace dewgap
