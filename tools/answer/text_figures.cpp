// The tape, and the table of now against with the sheet.
#include <fmt/format.h>

#include <algorithm>

#include "tools/answer/figures_text.hpp"
#include "tools/answer/text_parts_kernel.hpp"
#include "tools/answer/words.hpp"
#include "tools/job/units.hpp"

namespace dewgap::tools::parts {
namespace {

constexpr std::size_t label_columns = 18;
constexpr std::size_t value_columns = 22;
constexpr double mould_humidity = 0.8;

std::string table_row(std::string_view label, const std::string& now, const std::string& with_sheet) {
  return padded(label, label_columns) + padded(now, value_columns) + with_sheet;
}

std::string table_row(std::string_view label, const Spread& now, const Spread& with_sheet, int decimals = 1) {
  return table_row(label, ranged(now, decimals), ranged(with_sheet, decimals));
}

/// "up to 55 (48 to 61) %". Even saturated room air may leave a gap dry: then only the lower end says
/// anything.
std::string humidity_limit(const Spread& limit) {
  constexpr double any = 0.995;
  const auto text = [](double share) { return figure(per_cent.from_base(share), 0); };
  if (limit.p10 >= any) return "whatever the room's";
  if (limit.p50 >= any) return fmt::format("up to {} % or more", text(limit.p10));
  return fmt::format("up to {} ({} to {}) %", text(limit.p50), text(limit.p10),
                     limit.p90 >= any ? std::string("any") : text(limit.p90));
}

/// "99 (94 to wet)": at 100 % and above the face is wet, and no figure above says how wet.
std::string face_humidity(const Spread& humidity) {
  const auto one = [](double share) {
    const auto text = figure(per_cent.from_base(share), 0);
    return share >= 1.0 || text == "100" ? std::string("wet") : text;
  };
  if (one(humidity.p10) == "wet") return "wet";
  return fmt::format("{} ({} to {})", one(humidity.p50), one(humidity.p10), one(humidity.p90));
}

/// "9 (6 to 15) years, never in 2 %"; empty when the money file names no cost.
std::string payback(const MoneySpread& money) {
  constexpr double worth_telling = 0.01;
  constexpr double beyond_telling_years = 100.0;
  std::string text;
  if (money.payback_years)
    text = money.payback_years->p50 > beyond_telling_years
               ? "over 100 years"
               : fmt::format("{} years", ranged(*money.payback_years, 0));
  if (money.never_pays_back_share > worth_telling)
    text += fmt::format("{}never in {}", text.empty() ? "" : ", ", share_text(money.never_pays_back_share));
  return text;
}

std::string times(double width) {
  if (width == 0.5) return "half";
  if (width == 2.0) return "double";
  return fmt::format("{:g} times", width);
}

}  // namespace

void AnswerPage::tape() {
  const bool leave = job_.assessment.headline == Headline::leave;
  paragraph(fmt::format("TAPE{}: {}", leave ? ", if fitted" : "", tape_order(figures().vent)), "", "  ");
}

void AnswerPage::why_this_tape() {
  paragraph(fmt::format("{} {} {}{}{}", figures().vent_reason, shares(), figures().flip,
                        is_by_the_year() ? steady_width_checks() : width_checks(), year_of_hours()),
            "WHY: ", "  ");
  if (job_.assessment.headline == Headline::leave) remedy();
}

/// The strongest that was tried; where it is enough it stands among the steps to take first instead.
void AnswerPage::remedy() {
  const auto& told = job_.assessment.after;
  const auto& remedies = figures().remedies;
  if (!remedies.empty() && std::find(told.begin(), told.end(), remedies.back()) == told.end())
    item("Tried: " + remedies.back());
}

/// The year's verdict is printed, not that of the steady conditions.
bool AnswerPage::is_by_the_year() const {
  return figures().year && !figures().year->options.empty();
}

/// What the year of hours cost; what it says is the verdict. One that never began is told there too.
std::string AnswerPage::year_of_hours() const {
  if (!figures().year || figures().year->cases_run == 0) return {};
  return fmt::format(" {}{}: {} cases, {} million window-hours.",
                     room_ == RoomOnPage::ample ? "Year of hours" : "Year",
                     job_.weather ? ", weather of your file" : "", figures().year->cases_run,
                     millions(figures().year->window_hours));
}

/// The checks are steady: a year may choose an option that they do not compare.
bool AnswerPage::is_same(const WidthCheck& check) const {
  return check.headline == job_.assessment.headline && (is_by_the_year() || check.option == figures().vent);
}

bool AnswerPage::same_at_other_widths() const {
  const auto& checks = figures().width_checks;
  return !checks.empty() &&
         std::all_of(checks.begin(), checks.end(), [&](const WidthCheck& check) { return is_same(check); });
}

/// How many cases agree, and with a length of tape lifted. The year's own share stands in the headline.
std::string AnswerPage::shares() const {
  const auto lifted =
      job_.assessment.headline == Headline::leave
          ? std::string()
          : fmt::format("{} if 200 mm of tape lifts", share_text(figures().lifted_tape_acceptable_share));
  if (is_by_the_year() && !lifted.empty()) return fmt::format("Acceptable in {}.", lifted);
  return fmt::format("{} of plausible cases agree{}{}.", share_text(figures().agree_share),
                     lifted.empty() ? "" : ", ", lifted);
}

/// With a year of hours the checks at another width are still those of the steady conditions; where room is
/// scarce they stand in the JSON alone.
std::string AnswerPage::steady_width_checks() const {
  if (room_ == RoomOnPage::scarce) return {};
  if (same_at_other_widths()) return " At half and double our guesses, steady: the same.";
  // Beside a year that says LEAVE, shares of the steady check would only contradict it.
  if (job_.assessment.headline == Headline::leave) return {};
  std::string all;
  for (const auto& check : figures().width_checks)
    all += fmt::format("{} {} ({} at {})", all.empty() ? " At other widths of our guesses, steady:" : ",",
                       name_of(check.headline), share_text(check.acceptable_share), times(check.width));
  return all.empty() ? all : all + ".";
}

/// What another width of the guesses turns.
std::string AnswerPage::width_checks() const {
  if (same_at_other_widths()) return " At half and double our guesses: the same.";
  std::string all;
  for (const auto& check : figures().width_checks)
    all +=
        fmt::format(" At {} our guesses: {}.", times(check.width),
                    is_same(check) ? "the same"
                                   : fmt::format("{}, {}, {} acceptable", name_of(check.headline),
                                                 name_of(check.option), share_text(check.acceptable_share)));
  return all;
}

void AnswerPage::now_and_with_sheet() {
  const auto& side = figures().now_and_with;
  line(table_row("", "now", "with the sheet"));
  line(table_row("Glass, W/(m2 K)", side.glass_u_before_W_m2K, side.glass_u_after_W_m2K));
  line(table_row("Draught, m3/h", side.draught_before_m3_h, side.draught_after_m3_h,
                 side.draught_before_m3_h.p90 < 1.0 ? 2 : 1));
  line(table_row(fmt::format("Face, night {} C", figure(figures().frost_night_C, 0)), side.room_face_before_C,
                 side.room_face_after_C));
  damp_at_face();
  heat_saved();
  money();
  weather_and_humidity();
  edge();
}

bool AnswerPage::mould_is_near() const {
  const auto& side = figures().now_and_with;
  return side.room_face_humidity_before.p90 >= mould_humidity ||
         side.room_face_humidity_after.p90 >= mould_humidity;
}

/// Humidity of the air at the room's face in the coldest month, where mould is to be feared.
void AnswerPage::damp_at_face() {
  const auto& side = figures().now_and_with;
  if (mould_is_near())
    line(table_row("Damp at face, %", face_humidity(side.room_face_humidity_before),
                   face_humidity(side.room_face_humidity_after)));
}

void AnswerPage::heat_saved() {
  const auto& side = figures().now_and_with;
  auto text = fmt::format("Heat saved: {} kWh a year; glass {}, frame {}, draught {}, less sun {}.",
                          ranged(side.heat_saved_kWh, 0), figure(side.saved_glass_kWh.p50, 0),
                          figure(side.saved_frame_kWh.p50, 0), figure(side.saved_air_kWh.p50, 0),
                          figure(side.sun_lost_kWh.p50, 0));
  if (figures().money && figures().money->carbon_kg_per_year)
    text += fmt::format(" Carbon: {} kg less.", ranged(*figures().money->carbon_kg_per_year, 0));
  paragraph(text, "", "  ");
}

void AnswerPage::money() {
  if (!figures().money) return;
  const auto& money = *figures().money;
  auto text =
      fmt::format("Money: {} {} a year", ranged(money.saved_per_year, 0), one_line(job_.currency, 12));
  if (const auto years = payback(money); !years.empty()) text += "; simple payback " + years;
  if (money.net_present_value)
    text += fmt::format("; worth {} over its life", ranged(*money.net_present_value, 0));
  paragraph(text + ".", "", "  ");
}

void AnswerPage::weather_and_humidity() {
  const auto& side = figures().now_and_with;
  // The limit is that of steady means: beside a year that says LEAVE it would mislead.
  const bool left_by_the_year = is_by_the_year() && job_.assessment.headline == Headline::leave;
  const bool limit_is_told = figures().flip.find('%') != std::string::npos;
  const auto limit = limit_is_told || left_by_the_year
                         ? std::string()
                         : fmt::format(", gap dry {}", humidity_limit(side.dry_up_to_room_humidity));
  const auto mould = mould_is_near() ? fmt::format("; mould from {} % at the face",
                                                   figure(per_cent.from_base(mould_humidity), 0))
                                     : std::string();
  paragraph(
      fmt::format("Coldest month, {} C: room humidity {} %{}{}. {}.", figure(figures().coldest_month_C, 1),
                  ranged(side.room_humidity, 0, per_cent.per_base), limit, mould, figures().place_line),
      "", "  ");
}

}  // namespace dewgap::tools::parts
