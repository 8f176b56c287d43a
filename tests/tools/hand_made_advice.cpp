#include "hand_made_advice.hpp"

#include "hand_made_answer.hpp"
#include "tools/answer/words.hpp"

namespace dewgap::test {
namespace {

OptionAdvice hand_made_option(VentOption option, double acceptable) {
  OptionAdvice advice;
  advice.option = option;
  advice.acceptable_share = acceptable;
  advice.best_share = 0.5;
  advice.band_share = {0.4, acceptable - 0.4, 0.9 - acceptable, 0.1};
  advice.hours_wet = {0.0, 12.4, 80.2, 0.0, 680.0};
  advice.longest_wet_run_h = {0.0, 9.0, 40.0, 0.0, 120.0};
  advice.peak_film_g_m2 = {0.1, 4.0, 31.0, 0.0, 60.0};
  advice.misty_mornings = {0.0, 4.0, 20.0, 0.0, 41.0};
  advice.room_face_peak_month_humidity = {0.60, 0.66, 0.74, 0.55, 0.80};
  advice.heat_kWh = {180.0, 240.0, 310.0, 150.0, 350.0};
  advice.heat_against_sealed_kWh = {0.0, option == VentOption::sealed ? 0.0 : 11.6, 20.0, 0.0, 25.0};
  return advice;
}

GapYearSummary hand_made_middle() {
  GapYearSummary middle;
  middle.values = {{Unknown::joint_leakage, "draughts through the old joints", 0.5, "m3/(h m) at 1 Pa"}};
  middle.hours = 8760;
  middle.outwards_share = 0.62;
  middle.inwards_share = 0.38;
  middle.weather_source = "modelled from monthly normals: a table";
  return middle;
}

}  // namespace

VentAdvice hand_made_advice() {
  VentAdvice advice;
  advice.settled = true;
  advice.choice = VentOption::sealed;
  advice.tied = {VentOption::breaks_bottom};
  advice.as_it_is = hand_made_option(VentOption::sealed, 0.45);
  advice.as_it_is.misty_mornings = {40.0, 90.0, 150.0, 10.0, 190.0};
  for (const auto option : every_vent_option)
    advice.options.push_back(hand_made_option(option, option == VentOption::sealed ? 0.87 : 0.84));
  advice.options.front().drying_days = CaseSpread{6.0, 14.0, 40.0, 4.0, 61.0};
  advice.options.front().cases_dried = 16;
  advice.air = {.way = AirWay::outwards,
                .share = 0.62,
                .reason = "Room air is drawn out through the gap.",
                .from_room_m3_s = {.p50 = 20.0 / 3.6e6},
                .from_outdoors_m3_s = {.p50 = 5.4 / 3.6e6}};
  advice.lifted_tape_acceptable_share = 0.64;
  advice.deciders = {
      {Unknown::vapour_excess, "how damp the room is", "A hygrometer for a few days", 0.41, true},
      {Unknown::seal_leakage, "how well the tape seals", "-", 0.22, true}};
  advice.evidence = {{"tissue.top", "out", false, "less than 10 K colder outside", 1.0}};
  advice.moved_most = "The pane that mists on frosty mornings moved it most.";
  advice.flip = "A room above 62 % in the coldest month would turn it.";
  advice.next_look = "A hygrometer morning and evening for a few days";
  advice.dry_room_humidity = {{0.0, 0.62}};
  advice.dry_seal_leakage = {{0.0005, 0.02}, {0.3, 1.0}};
  advice.dry_outdoor_leakage = {{0.1, 2.0}};
  advice.room_humidity_rise = 0.02;
  advice.samples = 40;
  advice.cases_run = 40;
  advice.samples_left_out = 1;
  advice.effective_samples = 310.2;
  advice.window_hours = 2'800'000;
  advice.prior_samples = 4096;
  advice.seed = 1;
  advice.weather_source = "modelled from monthly normals: a table";
  advice.modelled.wind = true;
  advice.readings = {{"3 December", -4.0, 17.5, 0.62, WinterReading::Mist::edges}};
  Morning frosty;
  frosty.reading = advice.readings.front();
  frosty.used = true;
  frosty.foretold_share = 0.4;
  Morning mild;
  mild.reading.date = "9 December";
  mild.reading.outdoor_C = 6.0;
  mild.why_not = "not a frosty night";
  advice.mornings = {frosty, mild};
  advice.mornings_foretold_share = 0.4;
  return advice;
}

tools::AdvisedJob hand_made_advised_job() {
  tools::AdvisedJob job;
  job.job = hand_made_answer();
  job.job.assessment = {};
  job.job.weather = tools::UsedWeather{5, 3, {"Five hours were filled in."}};
  job.advice = hand_made_advice();
  job.middle = hand_made_middle();
  const auto found = tools::frost_findings(*job.advice, VentOption::sealed, {});
  job.frost_check =
      tools::FrostCheck{hand_made_advice(), VentOption::sealed, found, tools::frost_step(found)};
  return job;
}

}  // namespace dewgap::test
