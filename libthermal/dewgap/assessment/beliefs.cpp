#include "dewgap/assessment/beliefs_kernel.hpp"

#include <algorithm>

#include "dewgap/numerics/sampling.hpp"

namespace dewgap {
namespace {

// Half-width of the place against its station, 10th to 90th percentile: our convention.
constexpr double at_station_K = 0.6;
constexpr double per_km_K = 0.003;

std::string_view joint_variant(const Survey& survey) {
  if (survey.window.painted_shut || survey.window.kind == WindowKind::fixed_light) {
    return "painted_shut";
  }
  if (survey.joints.weather_stripped.value_or(false)) {
    return "weather_stripped";
  }
  return survey.window.kind == WindowKind::sliding_sash ? "sliding_sash" : "";
}

std::string_view room_variant(const std::optional<RoomUse>& use) {
  switch (use.value_or(RoomUse::other)) {
    case RoomUse::living:
      return "living";
    case RoomUse::bedroom:
      return "bedroom";
    case RoomUse::kitchen:
      return "kitchen";
    case RoomUse::bathroom:
      return "bathroom";
    case RoomUse::hall:
      return "hall";
    case RoomUse::other:
      return "";
  }
  return "";
}

std::string_view glass_variant(const std::optional<bool>& coated) {
  if (!coated) {
    return "unknown";
  }
  return *coated ? "coated" : "";
}

std::string_view sheet_variant(SheetKind kind) {
  switch (kind) {
    case SheetKind::acrylic:
      return "acrylic";
    case SheetKind::polycarbonate:
      return "polycarbonate";
    case SheetKind::petg:
      return "";
    case SheetKind::glass:
      return "glass";
    case SheetKind::pet_film:
      return "film";
  }
  return "";
}

std::string_view tape_variant(const std::optional<TapeKind>& tape) {
  if (!tape) {
    return "";
  }
  switch (*tape) {
    case TapeKind::closed_cell_foam:
      return "closed_cell";
    case TapeKind::open_cell_foam:
      return "open_cell";
    case TapeKind::magnetic:
      return "magnetic";
  }
  return "";
}

std::string_view variant_of(Unknown unknown, const Survey& survey) {
  switch (unknown) {
    case Unknown::joint_leakage:
      return joint_variant(survey);
    case Unknown::seal_leakage:
      return survey.sheet.tape_unbroken.value_or(false) ? "checked" : "";
    case Unknown::vapour_excess:
      return room_variant(survey.room.use);
    case Unknown::neutral_level_offset:
      return survey.building.floor ? "" : "unknown_floor";
    case Unknown::extract_depression:
      return survey.room.extract_fan.value_or(false) ? "fan" : "";
    case Unknown::sheet_emissivity:
      return sheet_variant(survey.sheet.material);
    case Unknown::glass_emissivity:
      return glass_variant(survey.window.glass_coated);
    case Unknown::tape_vapour_resistance:
      return tape_variant(survey.sheet.tape);
    default:
      return "";
  }
}

std::optional<double> expert_value(Unknown unknown, const Survey& survey) {
  switch (unknown) {
    case Unknown::joint_leakage:
      return survey.expert.joint_leakage_m3_h_m;
    case Unknown::seal_leakage:
      return survey.expert.seal_leakage_m3_h_m;
    case Unknown::vapour_excess:
      return survey.expert.vapour_excess_Pa;
    case Unknown::sheet_emissivity:
      return survey.expert.sheet_emissivity;
    case Unknown::base_temperature:
      return survey.expert.base_temperature_C;
    default:
      return std::nullopt;
  }
}

/// A measured middle with its reading error replaces the prior's percentiles.
void narrow(Belief& belief, double middle, double half_width) {
  auto& prior = belief.prior;
  prior.shape = PriorShape::normal;
  prior.p50 = middle;
  prior.p10 = middle - half_width;
  prior.p90 = middle + half_width;
  prior.source = "survey";
  belief.basis = Basis::measured;
}

/// Readings and ticks that speak of one unknown directly.
void use_direct_readings(const Survey& survey, Beliefs& beliefs) {
  const auto at = [&](Unknown unknown) -> Belief& { return beliefs[static_cast<std::size_t>(unknown)]; };
  if (survey.room.temperature_C) {
    narrow(at(Unknown::room_temperature), *survey.room.temperature_C, 0.7);
  }
  if (survey.place.distance_km) {
    auto& offset = at(Unknown::climate_offset);
    narrow(offset, 0.0, at_station_K + per_km_K * *survey.place.distance_km);
    offset.prior.source = "our convention, by distance";
    offset.basis = Basis::described;
  }
  if (survey.building.hours_heated) {
    // The room stays warm for a while after the heating goes off: our convention, none without hours, 0.95
    // all day.
    const double off = 1.0 - *survey.building.hours_heated / 24.0;
    const double share = 0.95 * (1.0 - off * off);
    narrow(at(Unknown::heated_share), share, 0.06 * share + 0.001);
    at(Unknown::heated_share).basis = Basis::described;
  }
}

}  // namespace

Beliefs beliefs_for(const Survey& survey) {
  Beliefs beliefs;
  for (std::size_t i = 0; i < unknown_count; ++i) {
    const auto unknown = static_cast<Unknown>(i);
    const auto variant = variant_of(unknown, survey);
    auto& belief = beliefs[i];
    belief.prior = prior_of(unknown, variant);
    belief.basis = variant.empty() ? Basis::defaulted : Basis::archetype;
  }
  use_direct_readings(survey, beliefs);
  for (std::size_t i = 0; i < unknown_count; ++i) {
    beliefs[i].fixed = expert_value(static_cast<Unknown>(i), survey);
    beliefs[i].basis = beliefs[i].fixed ? Basis::measured : beliefs[i].basis;
  }
  return beliefs;
}

std::vector<UnknownValues> draw_samples(const Beliefs& beliefs, std::size_t count, std::uint64_t seed,
                                        double convention_width) {
  const auto points = numerics::unit_cube_samples(count, unknown_count, seed);
  std::vector<UnknownValues> samples(count);
  for (std::size_t i = 0; i < count; ++i) {
    for (std::size_t j = 0; j < unknown_count; ++j) {
      const auto& belief = beliefs[j];
      const double width = belief.prior.is_convention() ? convention_width : 1.0;
      samples[i].value[j] =
          belief.fixed ? *belief.fixed : belief.prior.at(points[i * unknown_count + j], width);
    }
  }
  return samples;
}

}  // namespace dewgap
