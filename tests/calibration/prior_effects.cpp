#include "calibration/prior_effects.hpp"

#include <algorithm>
#include <set>

#include "assessment/survey_cases.hpp"
#include "dewgap/assessment/vent_choice_kernel.hpp"
#include "dewgap/numerics/sampling.hpp"

namespace dewgap::calibration {
namespace {

std::vector<double> values_of(const BankPart& part, Unknown unknown) {
  std::vector<double> values;
  for (const auto& sample : part.samples) {
    values.push_back(sample[unknown]);
  }
  return values;
}

std::vector<double> figures_of(const BankPart& part, VentOption option, float OptionYear::*figure) {
  std::vector<double> values;
  for (const auto& year : part.years) {
    values.push_back(static_cast<double>(year_of(year, option).*figure));
  }
  return values;
}

double squared_correlation(const std::vector<double>& x, const std::vector<double>& y) {
  const double r = numerics::weighted_rank_correlation(x, y, std::vector<double>(x.size(), 1.0));
  return r * r;
}

bool is_constant(const std::vector<double>& values) {
  const auto [least, most] = std::minmax_element(values.begin(), values.end());
  return *least == *most;
}

PriorEffect effect_of(const std::vector<BankPart>& bank, Unknown unknown) {
  PriorEffect effect{.unknown = unknown};
  const auto parts = static_cast<double>(bank.size());
  for (std::size_t k = 0; k < bank.size(); ++k) {
    const auto values = values_of(bank[k], unknown);
    effect.varies = effect.varies && !is_constant(values);
    const auto on = [&](VentOption option, float OptionYear::*figure) {
      const double squared = squared_correlation(values, figures_of(bank[k], option, figure));
      if (squared > effect.largest) {
        effect.largest = squared;
        effect.part_of_largest = k;
      }
      return squared / parts;
    };
    effect.on_hours_wet += on(VentOption::sealed, &OptionYear::hours_wet);
    effect.on_hours_wet_with_breaks += on(VentOption::breaks_bottom, &OptionYear::hours_wet);
    effect.on_heat += on(VentOption::sealed, &OptionYear::heat_kWh);
  }
  return effect;
}

/// Surveys that between them call for every row: one thing changed at a time.
std::vector<Survey> surveys_of_all_kinds() {
  std::vector<Survey> all{test::worn_sash_survey()};
  const auto with = [&all](auto change) {
    all.push_back(test::worn_sash_survey());
    change(all.back());
  };
  for (const auto kind : {WindowKind::casement, WindowKind::fixed_light}) {
    with([kind](Survey& s) { s.window.kind = kind; });
  }
  with([](Survey& s) { s.joints.weather_stripped = true; });
  for (const auto use : {RoomUse::living, RoomUse::bedroom, RoomUse::kitchen, RoomUse::bathroom,
                         RoomUse::hall, RoomUse::other}) {
    with([use](Survey& s) { s.room.use = use; });
  }
  with([](Survey& s) { s.room.extract_fan = true; });
  with([](Survey& s) { s.room.temperature_C = std::nullopt; });
  with([](Survey& s) { s.place.distance_km = std::nullopt; });
  with([](Survey& s) { s.building.floor = std::nullopt; });
  with([](Survey& s) { s.sheet.tape_unbroken = true; });
  for (const bool coated : {true, false}) {
    with([coated](Survey& s) { s.window.glass_coated = coated; });
  }
  for (const auto kind : {SheetKind::acrylic, SheetKind::polycarbonate, SheetKind::petg, SheetKind::glass,
                          SheetKind::pet_film}) {
    with([kind](Survey& s) { s.sheet.material = kind; });
  }
  for (const auto kind : {TapeKind::closed_cell_foam, TapeKind::open_cell_foam, TapeKind::magnetic}) {
    with([kind](Survey& s) { s.sheet.tape = kind; });
  }
  return all;
}

}  // namespace

std::vector<PriorEffect> prior_effects(const std::vector<BankPart>& bank) {
  std::vector<PriorEffect> effects;
  for (std::size_t i = 0; i < unknown_count; ++i) {
    effects.push_back(effect_of(bank, static_cast<Unknown>(i)));
  }
  return effects;
}

double squared_correlation_by_chance(std::size_t count) {
  const double z = numerics::normal_quantile(0.995);
  return z * z / (static_cast<double>(count) - 1.0);
}

std::vector<std::string> rows_never_sampled() {
  std::set<std::pair<Unknown, std::string>> called;
  for (const auto& survey : surveys_of_all_kinds()) {
    for (const auto& belief : beliefs_for(survey)) {
      if (belief.prior.source != "survey") {
        called.emplace(belief.prior.unknown, belief.prior.variant);
      }
    }
  }
  std::vector<std::string> never;
  for (const auto& row : all_priors()) {
    if (!called.contains({row.unknown, row.variant})) {
      never.push_back(std::string(key_of(row.unknown)) + " " + row.variant);
    }
  }
  return never;
}

}  // namespace dewgap::calibration
