#include <algorithm>
#include <cmath>

#include "dewgap/energy/comfort.hpp"
#include "dewgap/errors.hpp"
#include "dewgap/numerics/root_finding.hpp"

// ISO 7730:2005 clause 4, equations (1) to (5) and Annex D, from memory.

namespace dewgap {
namespace {

constexpr double met_W_m2 = 58.15;
constexpr double clo_m2K_W = 0.155;

void validate(const Person& person, const RoomAt& room) {
  require_in_range(person.metabolic_met, {0.5, 8.0}, "metabolic_met", "met");
  require_in_range(person.clothing_clo, {0.0, 4.0}, "clothing_clo", "clo");
  require_in_range(person.work_met, {0.0, person.metabolic_met}, "work_met", "met");
  require_in_range(room.air_C, {0.0, 45.0}, "air_C", "C");
  require_in_range(room.mean_radiant_C, {0.0, 60.0}, "mean_radiant_C", "C");
  require_in_range(room.air_speed_m_s, {0.0, 2.0}, "air_speed_m_s", "m/s");
  require_in_range(room.vapour_Pa, {0.0, 6000.0}, "vapour_Pa", "Pa");
}

/// The clothed body, W/m2 of skin.
struct Body {
  double made_W_m2;     ///< M
  double to_lose_W_m2;  ///< M - W
  double clothing_m2K_W;
  double clothed_area_ratio;
};

Body body_of(const Person& person) {
  const double clothing_m2K_W = clo_m2K_W * person.clothing_clo;
  // eq. 4
  const double ratio =
      clothing_m2K_W <= 0.078 ? 1.00 + 1.290 * clothing_m2K_W : 1.05 + 0.645 * clothing_m2K_W;
  return {.made_W_m2 = met_W_m2 * person.metabolic_met,
          .to_lose_W_m2 = met_W_m2 * (person.metabolic_met - person.work_met),
          .clothing_m2K_W = clothing_m2K_W,
          .clothed_area_ratio = ratio};
}

double fourth_power_K4(double temperature_C) {
  const double kelvin = temperature_C + 273.0;  // as eqs 1 and 2 have it
  return kelvin * kelvin * kelvin * kelvin;
}

/// Heat that the clothing's surface gives to the room by radiation and convection, W/m2 of skin.
double given_to_room_W_m2(const Body& body, const RoomAt& room, double clothing_C) {
  // eq. 3
  const double convection_W_m2K = std::max(2.38 * std::pow(std::abs(clothing_C - room.air_C), 0.25),
                                           12.1 * std::sqrt(room.air_speed_m_s));
  return body.clothed_area_ratio *
         (3.96e-8 * (fourth_power_K4(clothing_C) - fourth_power_K4(room.mean_radiant_C)) +
          convection_W_m2K * (clothing_C - room.air_C));
}

/// Clothing is as warm as lets it give on what it gets from the skin, eq. 2: the sum rises with its
/// temperature, so there is one.
numerics::RootResult clothing_temperature(const Body& body, const RoomAt& room) {
  constexpr double lowest_C = -100.0;
  constexpr double highest_C = 150.0;
  const double skin_C = 35.7 - 0.028 * body.to_lose_W_m2;
  const auto surplus_K = [&](double clothing_C) {
    return clothing_C - skin_C + body.clothing_m2K_W * given_to_room_W_m2(body, room, clothing_C);
  };
  return numerics::find_root(surplus_K, lowest_C, highest_C);
}

double mean_vote(const Body& body, const RoomAt& room, double clothing_C) {
  // eq. 1: what diffuses through the skin, sweat, breath (latent, sensible), radiation and convection
  const double diffusion = 3.05e-3 * (5733.0 - 6.99 * body.to_lose_W_m2 - room.vapour_Pa);
  const double sweat = std::max(0.0, 0.42 * (body.to_lose_W_m2 - met_W_m2));
  const double latent_breath = 1.7e-5 * body.made_W_m2 * (5867.0 - room.vapour_Pa);
  const double dry_breath = 0.0014 * body.made_W_m2 * (34.0 - room.air_C);
  const double load_W_m2 = body.to_lose_W_m2 - diffusion - sweat - latent_breath - dry_breath -
                           given_to_room_W_m2(body, room, clothing_C);
  return (0.303 * std::exp(-0.036 * body.made_W_m2) + 0.028) * load_W_m2;
}

bool is_validated(const Person& person, const RoomAt& room, double vote) {
  return std::abs(vote) <= 2.0 && person.metabolic_met >= 0.8 && person.metabolic_met <= 4.0 &&
         person.clothing_clo <= 2.0 && room.air_C >= 10.0 && room.air_C <= 30.0 &&
         room.mean_radiant_C >= 10.0 && room.mean_radiant_C <= 40.0 && room.air_speed_m_s <= 1.0 &&
         room.vapour_Pa <= 2700.0;
}

}  // namespace

ThermalSensation thermal_sensation(const Person& person, const RoomAt& room) {
  validate(person, room);
  const auto body = body_of(person);
  const auto clothing = clothing_temperature(body, room);
  ThermalSensation sensation{.status = clothing.status};
  if (clothing.status != SolveStatus::converged) {
    return sensation;
  }
  sensation.clothing_C = clothing.root;
  const double vote = mean_vote(body, room, clothing.root);
  sensation.mean_vote = vote;
  // eq. 5
  const double square = vote * vote;
  sensation.dissatisfied_per_cent = 100.0 - 95.0 * std::exp(-0.03353 * square * square - 0.2179 * square);
  if (!is_validated(person, room, vote)) {
    sensation.flags.raise(ValidityFlag::mean_vote_range);
  }
  return sensation;
}

}  // namespace dewgap
