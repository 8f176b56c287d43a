#include "tools/answer/text_vent.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "tools/answer/figures_text.hpp"
#include "tools/answer/text_answer.hpp"
#include "tools/answer/text_vent_figures.hpp"
#include "tools/answer/text_vent_kernel.hpp"
#include "tools/answer/words.hpp"
#include "tools/answer/year_units.hpp"
#include "tools/job/spelling.hpp"

namespace dewgap::tools {
namespace parts {
namespace {

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

std::string table_row(const OptionAdvice& option, std::size_t cases) {
  return table_row(short_name(option.option), share_cell(option.acceptable_share),
                   share_cell(option.best_share), narrow_range(option.hours_wet, cases),
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

/// "83 % of plausible cases (40 cases run)"; a share of one is told as what it is: all of the cases that were
/// run, never a certainty.
std::string share_of_runs(double share, std::size_t cases) {
  return share >= 1.0 - 1e-9 ? fmt::format("dry or harmless mist in each of the {} cases run", cases)
                             : fmt::format("dry or harmless mist in {} of plausible cases ({} cases run)",
                                           share_text(share), cases);
}

}  // namespace

const OptionAdvice* VentPage::chosen() const {
  return option_of(advice(), advice().choice);
}

void VentPage::heading() {
  if (!job_.job.survey.name.empty()) line(job_.job.survey.name);
  std::vector<std::string> mends;
  for (const auto& mend : job_.mend_first) mends.push_back(mend.say);
  list("MEND FIRST", mends);
  if (job_.frost_check) frost_check();
  paragraph(verdict(), "", "  ");
  for (const auto& warning : weather_warnings(job_.job.weather)) paragraph(warning, "", "  ");
  const auto& other = advice().tied;
  if (advice().settled && !other.empty() && chosen()->acceptable_share >= share_of_a_fit)
    paragraph(fmt::format("A tie with: {}. The simplest is taken.", joined_names(other)), "  ", "  ");
  if (advice().realistic_remedy) item(advice().remedies.at(*advice().realistic_remedy));
}

/// Settled or not, and whether enough plausible cases stay acceptable at all.
std::string VentPage::verdict() const {
  const std::string words =
      fmt::format("{}{}", job_.mend_first.empty() ? "" : "MEND FIRST, then ", vent_verdict(advice().choice));
  const auto* option = chosen();
  const auto unsettled = fmt::format("NOT SETTLED: {}.", unsettled_words(advice()));
  if (option == nullptr) return unsettled;
  const auto share = share_of_runs(option->acceptable_share, advice().cases_run);
  if (!advice().settled) return fmt::format("{} So far {}, {}.", unsettled, name_of(advice().choice), share);
  if (option->acceptable_share >= share_of_a_fit) return fmt::format("{}: {}.", words, share);
  if (advice().realistic_remedy)
    return fmt::format("AIR THE ROOM{} FIRST, then {}: as the room is, {}.",
                       job_.mend_first.empty() ? "" : " AND MEND", vent_verdict(advice().choice), share);
  return fmt::format("LEAVE: at best {}, with {}.", share, name_of(advice().choice));
}

/// Which way the air goes in most cases, and why that decides the tape.
void VentPage::why() {
  if (advice().options.empty()) return;
  const auto& air = advice().air;
  paragraph(fmt::format("WHY: {} Air: {} in {} of cases; medians of the cold half year: {} l/h in from the "
                        "room, {} from outdoors.",
                        air.reason, dewgap::name_of(air.way), share_text(air.share),
                        litres(litres_an_hour.from_base(air.from_room_m3_s.p50)),
                        litres(litres_an_hour.from_base(air.from_outdoors_m3_s.p50))),
            "", "  ");
}

void VentPage::table() {
  if (advice().options.empty()) return;
  line(table_row("% of plausible cases", "ok", "best", "wet hours a year", "kWh"));
  for (const auto& option : advice().options) line(table_row(option, advice().cases_run));
  paragraph(
      fmt::format(
          "ok: dry or harmless mist; best: or level with it. Wet: over 1 g/m2, middle and {}. kWh: heat "
          "lost in a year through glass and by air, against tape all round; not the saving.",
          range_words(advice().cases_run)),
      "  ", "  ");
  const auto* option = chosen();
  paragraph(fmt::format("Misty mornings a year: {}; without a sheet {}. With 200 mm of tape lifted ok in {}.",
                        wide_range(option->misty_mornings, advice().cases_run),
                        narrow_range(advice().as_it_is.misty_mornings, advice().cases_run),
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
  // Once the sheet hangs the mornings speak; where it is left alone a limit of means would contradict that.
  const bool is_asked = !job_.frost_check && option->acceptable_share >= share_of_a_fit;
  if (is_asked && !dry.empty() && dry.front().low <= dry.front().high)
    text += fmt::format("In the coldest month's means dry up to {} % in the room (middle case). ",
                        figure(per_cent.from_base(dry.back().high), 0));
  if (!job_.frost_check && advice().room_humidity_rise >= worth_telling)
    text += fmt::format("Sealing raises the room's humidity by {} %. ",
                        figure(per_cent.from_base(advice().room_humidity_rise), 0));
  if (option->drying_days)
    text += fmt::format("Once wet in mid-winter it dries in {} days.",
                        wide_range(*option->drying_days, option->cases_dried));
  if (!text.empty()) paragraph(text, "", "  ");
}

void VentPage::weather() {
  paragraph(weather_sentence(advice().weather_source, advice().modelled, job_.job.weather), "", "  ");
  if (job_.job.weather) paragraph(weather_file_sentence(*job_.job.weather), "", "  ");
}

void VentPage::record() {
  const auto& a = advice();
  const auto picks = a.samples == a.cases_run ? std::string() : fmt::format(" ({} picks)", a.samples);
  const auto left_out =
      a.samples_left_out == 0 ? std::string() : fmt::format(", {} left out", a.samples_left_out);
  const auto bound = job_.options.samples > 0
                         ? std::string()
                         : fmt::format(" of at most {}", millions(job_.options.most_window_hours));
  paragraph(fmt::format("RUN: {} cases{}{} of {} drawn ({} effective), {}{} million window-hours, seed {}.",
                        a.cases_run, picks, left_out, a.prior_samples, figure(a.effective_samples, 0),
                        millions(a.window_hours), bound, a.seed),
            "", "  ");
  if (static_cast<double>(a.samples) > a.effective_samples)
    line(fmt::format("{} runs of {} effective cases: repeats add nothing.", a.samples,
                     figure(a.effective_samples, 0)));
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
