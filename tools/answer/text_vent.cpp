#include "tools/answer/text_vent.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "tools/answer/figures_text.hpp"
#include "tools/answer/text_answer.hpp"
#include "tools/answer/text_vent_kernel.hpp"
#include "tools/answer/words.hpp"
#include "tools/answer/year_units.hpp"
#include "tools/job/spelling.hpp"

namespace dewgap::tools {
namespace parts {
namespace {

/// "12 (0-80)": the middle and the 10th and 90th percentile.
std::string narrow_range(const Spread& spread) {
  return fmt::format("{} ({}-{})", figure(spread.p50, 0), figure(spread.p10, 0), figure(spread.p90, 0));
}

std::string signed_figure(double value) {
  const auto text = figure(value, 0);
  return text.starts_with('-') || text == "0" ? text : "+" + text;
}

/// Whole per cent: "100" only where all cases are meant, "<1" short of none.
std::string share_cell(double share) {
  const auto text = share_text(share);
  if (text.starts_with("under")) return "<1";
  if (text.starts_with("over")) return ">99";
  return text.substr(0, text.find(' '));
}

std::string table_row(std::string_view name, std::string_view acceptable, std::string_view best,
                      std::string_view wet, std::string_view heat) {
  return fmt::format("{}{:>5}{:>6}   {}{:>7}", padded(name, 23), acceptable, best, padded(wet, 18), heat);
}

std::string table_row(const OptionAdvice& option) {
  return table_row(short_name(option.option), share_cell(option.acceptable_share),
                   share_cell(option.best_share), narrow_range(option.hours_wet),
                   signed_figure(option.heat_against_sealed_kWh.p50));
}

std::string joined_names(const std::vector<VentOption>& options) {
  std::string names;
  for (const auto option : options)
    names.append(names.empty() ? "" : "; ").append(in_small_letters(std::string(short_name(option))));
  return names;
}

std::string litres(double litres_an_hour) {
  return figure(litres_an_hour, litres_an_hour < 10.0 ? 1 : 0);
}

/// A reason as a sentence.
std::string ended(const std::string& text) {
  return text.empty() || text.ends_with('.') ? text : text + ".";
}

}  // namespace

const OptionAdvice* VentPage::chosen() const {
  return option_of(advice(), advice().choice);
}

void VentPage::heading() {
  if (!job_.job.survey.name.empty()) line(job_.job.survey.name);
  if (job_.frost_check) frost_check();
  paragraph(verdict(), "", "  ");
  const auto& other = advice().tied;
  if (advice().settled && !other.empty())
    paragraph(fmt::format("A tie with: {}. The simplest is taken.", joined_names(other)), "  ", "  ");
  if (advice().realistic_remedy) item(advice().remedies.at(*advice().realistic_remedy));
}

/// Settled or not, and whether enough plausible cases stay acceptable at all.
std::string VentPage::verdict() const {
  const auto words = vent_verdict(advice().choice);
  const auto* option = chosen();
  if (option == nullptr) return fmt::format("NOT SETTLED: {}", ended(advice().not_settled_because));
  // A share of one is told as what it is: all of the cases that were run, never a certainty.
  const auto share = option->acceptable_share >= 1.0 - 1e-9
                         ? fmt::format("dry or harmless mist in each of the {} cases run", advice().samples)
                         : fmt::format("dry or harmless mist in {} of plausible cases",
                                       share_text(option->acceptable_share));
  if (!advice().settled)
    return fmt::format("NOT SETTLED: {} So far {}, {}.", ended(advice().not_settled_because),
                       name_of(advice().choice), share);
  if (option->acceptable_share >= share_of_a_fit) return fmt::format("{}: {}.", words, share);
  if (advice().realistic_remedy)
    return fmt::format("AIR THE ROOM FIRST, then {}: as the room is, {}.", words, share);
  return fmt::format("LEAVE: at best {} only ({}).", share, name_of(advice().choice));
}

/// Which way the air goes in the middle case.
void VentPage::why() {
  if (!job_.middle) return;
  const auto& middle = *job_.middle;
  constexpr double clear_winter = 0.5;
  constexpr double hardly_any_l_h = 1.0;
  const double room_l_h = litres_an_hour.from_base(middle.cold_from_room_m3_s);
  const double outdoors_l_h = litres_an_hour.from_base(middle.cold_from_outdoors_m3_s);
  std::string way = "air goes both ways through the gap";
  if (room_l_h + outdoors_l_h < hardly_any_l_h)
    way = "hardly any air passes through the gap";
  else if (middle.outwards_share > clear_winter)
    way = "room air is drawn out through the gap";
  else if (middle.inwards_share > clear_winter)
    way = "outdoor air comes in through the gap";
  paragraph(
      fmt::format("WHY: {} (cold half year, middle case: {} l/h enter it from the room, {} from outdoors).",
                  way, litres(room_l_h), litres(outdoors_l_h)),
      "", "  ");
}

void VentPage::table() {
  if (advice().options.empty()) return;
  line(table_row("% of plausible cases", "ok", "best", "wet hours a year", "kWh"));
  for (const auto& option : advice().options) line(table_row(option));
  paragraph(
      "ok: dry or harmless mist; best: or level with it. Wet: over 1 g/m2, middle and 10th-90th percentile. "
      "kWh: a year, against tape all round.",
      "  ", "  ");
  const auto* option = chosen();
  paragraph(fmt::format("Misty mornings: {}; without a sheet {}. With 200 mm of tape lifted ok in {}.",
                        mornings(option->misty_mornings), mornings(advice().as_it_is.misty_mornings),
                        share_text(advice().lifted_tape_acceptable_share)),
            "", "  ");
}

/// What the answer hangs on, and the one look that could turn it.
void VentPage::deciding() {
  constexpr std::size_t most_named = 3;
  std::string names;
  for (std::size_t i = 0; i < std::min(most_named, advice().deciders.size()); ++i)
    names.append(i == 0 ? "" : "; ").append(advice().deciders[i].label);
  if (!names.empty()) paragraph(fmt::format("DECIDES: {}.", names), "", "  ");
  if (!advice().flip.empty()) paragraph("FLIPS: " + advice().flip, "", "  ");
  if (!advice().moved_most.empty()) paragraph("SEEN: " + advice().moved_most, "", "  ");
  if (!advice().next_look.empty()) paragraph("LOOK NEXT: " + advice().next_look, "", "  ");
  if (advice().realistic_remedy || advice().remedies.empty()) return;
  item(advice().remedies.back());
}

void VentPage::room_and_drying() {
  constexpr double worth_telling = 0.005;
  const auto* option = chosen();
  if (option == nullptr) return;
  std::string text;
  const auto& dry = advice().dry_room_humidity;
  if (!dry.empty() && dry.front().low <= dry.front().high)
    text += fmt::format("Dry in the coldest month up to {} % in the room (middle case). ",
                        figure(per_cent.from_base(dry.back().high), 0));
  if (advice().room_humidity_rise >= worth_telling)
    text += fmt::format("Sealing raises the room's humidity by {} %. ",
                        figure(per_cent.from_base(advice().room_humidity_rise), 0));
  if (option->drying_days)
    text += fmt::format("Once wet in mid-winter it dries in {} days.", ranged(*option->drying_days, 0));
  if (!text.empty()) paragraph(text, "", "  ");
}

void VentPage::weather() {
  paragraph(weather_sentence(advice().weather_source, advice().modelled, job_.job.weather), "", "  ");
}

void VentPage::record() {
  const auto& a = advice();
  const auto left_out =
      a.samples_left_out == 0 ? std::string() : fmt::format(", {} left out", a.samples_left_out);
  const auto bound = job_.options.samples > 0
                         ? std::string()
                         : fmt::format(" of at most {}", millions(job_.options.most_window_hours));
  paragraph(fmt::format("RUN: {} cases{} of {} drawn ({} effective), {}{} million window-hours, seed {}.",
                        a.samples, left_out, a.prior_samples, figure(a.effective_samples, 0),
                        millions(a.window_hours), bound, a.seed),
            "", "  ");
}

void VentPage::frost_check() {
  const auto& check = *job_.frost_check;
  paragraph(fmt::format("{}. {}", step_words(check.step), step_sentence(check.step, advice().choice)), "",
            "  ");
  const auto share = [&](const VentAdvice& one) {
    const auto* option = option_of(one, check.fitted);
    return option == nullptr ? std::string("not settled")
                             : fmt::format("{} ok", share_text(option->acceptable_share));
  };
  paragraph(fmt::format("As it hangs ({}): {} before these mornings, {} with them.", name_of(check.fitted),
                        share(check.before), share(advice())),
            "", "  ");
  const auto used = advice().readings.size();
  line(fmt::format("Mornings used: {}. The year with them:", used));
}

}  // namespace parts

std::string text_vent(const AdvisedJob& job) {
  if (!job.advice) return text_answer(job.job);
  parts::VentPage page(job);
  page.heading();
  page.why();
  page.table();
  page.deciding();
  page.room_and_drying();
  page.weather();
  page.record();
  return page.text();
}

}  // namespace dewgap::tools
