#include "tools/report/plain_words.hpp"

#include <array>
#include <optional>

#include "tools/answer/words.hpp"

namespace dewgap::tools {
namespace {

using Json = nlohmann::ordered_json;

double middle(const Json& spread) {
  return spread.at("p50").get<double>();
}

std::optional<VentOption> option_of_word(std::string_view word) {
  for (const auto option : every_vent_option)
    if (json_word(option) == word) return option;
  return std::nullopt;
}

bool is_headline(const Json& answer, std::string_view word) {
  return answer.at("headline") == word;
}

std::string verdict(const Json& answer) {
  if (is_headline(answer, "fit")) return "Yes: fit the sheet.";
  if (is_headline(answer, "fit_after")) return "Yes, but something comes first.";
  if (is_headline(answer, "leave")) return "No: leave the window without a sheet.";
  return "Not yet: a safety question is open.";
}

/// "Find where the water comes from." within a sentence.
std::string continued(std::string sentence) {
  if (!sentence.empty() && sentence.back() == '.') sentence.pop_back();
  if (sentence.size() > 1 && sentence[0] >= 'A' && sentence[0] <= 'Z' && sentence[1] >= 'a')
    sentence[0] = static_cast<char>(sentence[0] - 'A' + 'a');
  return sentence;
}

std::string tape(const Json& answer) {
  const auto option = option_of_word(answer.at("vent").at("choice").get<std::string>());
  return option ? "Tape " + tape_order(*option) : std::string();
}

std::string answer_sentence(const Json& answer) {
  if (is_headline(answer, "fit")) return "Fit the sheet. " + tape(answer);
  if (is_headline(answer, "leave")) return "A sheet is not advised here.";
  const auto& after = answer.at("after");
  if (after.size() != 1) return "Fit the sheet, but first:";
  return "Fit the sheet, but first " + continued(after.front().get<std::string>()) + ".";
}

double high(const Json& spread) {
  return spread.at(spread.contains("p90") ? "p90" : "greatest").get<double>();
}

std::string mist_words(const Json& mornings_now, const Json& mornings_with) {
  constexpr double few = 5.0;
  constexpr double many = 20.0;
  const double now = middle(mornings_now), with = middle(mornings_with);
  if (with <= few && now > 2.0 * few)
    return high(mornings_with) > many
               ? "Mist on winter mornings should go, but in some cases much of it stays."
               : "Mist on winter mornings should all but go.";
  if (with <= few) return "Few misty mornings, now or with the sheet.";
  if (with < 0.67 * now) return "Fewer misty mornings than now, but not none.";
  if (with <= 1.2 * now) return "About as many misty mornings as now.";
  return "More misty mornings than now, in the space behind the sheet.";
}

std::string warm_words(double gain_K) {
  if (gain_K >= 3.0) return "What you feel beside the window gets clearly warmer.";
  if (gain_K >= 1.0) return "The surface towards you gets somewhat warmer.";
  if (gain_K > -1.0) return "The surface towards you stays about as cold.";
  return "The surface towards you gets colder.";
}

std::string draught_words(double now, double with) {
  constexpr double hardly_any_m3_h = 1.0;
  if (now < hardly_any_m3_h) return "Hardly any draught comes through it as it is.";
  if (with < 0.2 * now) return "The draught through it nearly stops: keep another way to air the room.";
  if (with < 0.8 * now) return "Less draught comes through it.";
  return "The draught stays about as it is.";
}

std::string heat_words(double saved_kWh) {
  if (saved_kWh <= 0.0) return "No heat is saved.";
  if (saved_kWh < 20.0) return "Little heat is saved.";
  return "Less heat goes out through the window.";
}

std::optional<double> term(const Json& money, std::string_view key) {
  for (const auto& one : money.at("terms"))
    if (one.at("key") == key && one.at("value").is_number()) return one.at("value").get<double>();
  return std::nullopt;
}

std::string payback_words(const Json& money) {
  const double never = money.at("share_that_never_pays_back").get<double>();
  if (middle(money.at("saved_currency_per_year")) <= 0.0)
    return "It costs money every year instead of saving any: it never pays for itself.";
  if (never > 0.5) return "As a rule it never pays for itself.";
  const auto life = term(money, "money.life_years");
  if (money.contains("payback_years") && life && middle(money.at("payback_years")) > *life)
    return "It does not pay for itself within its life: what it saves is less than what it costs.";
  if (money.contains("net_present_value_currency") && middle(money.at("net_present_value_currency")) < 0.0)
    return "Over its life, with interest counted, it loses money.";
  if (never > 0.1) return "It may pay for itself, but often it never does.";
  return "It pays for itself within its life in the middle case.";
}

std::string season_words(const Json& answer) {
  if (answer.at("vent").at("choice") == "off_in_summer")
    return "Take it off in spring, let the window dry, and put it back in autumn: the answer counts on it.";
  return "It may hang all year. If you take it off in spring, the window can be opened and washed and the "
         "wood "
         "dries; put it back in autumn.";
}

void add_year_words(Json& words, const Json& answer) {
  const auto& year = answer.at("year");
  if (!year.contains("options")) return;
  for (std::size_t i = 0; i < year.at("options").size(); ++i) {
    const auto& option = year.at("options")[i];
    if (option.at("option") != answer.at("vent").at("choice")) continue;
    words["chosen_place"] = i;
    words["has_few_cases"] = !option.at("misty_mornings").contains("p10");
    words["mist"] = mist_words(year.at("as_it_is").at("misty_mornings"), option.at("misty_mornings"));
  }
}

/// What this window alone says of draught: the winter mean.
void add_comparison(Json& words, const Json& side) {
  words["warm"] = warm_words(middle(side.at("frost_night_room_face_with_sheet_C")) -
                             middle(side.at("frost_night_room_face_now_C")));
  words["draught"] =
      draught_words(middle(side.at("draught_now_m3_h")), middle(side.at("draught_with_sheet_m3_h")));
  words["heat"] = heat_words(middle(side.at("heat_saved_kWh_per_year")));
}

void add_figures(Json& words, const Json& answer) {
  const bool is_leave = is_headline(answer, "leave");
  words["is_leave"] = is_leave;
  words["is_fit"] = !is_leave;
  words["answer"] = answer_sentence(answer);
  words["tape"] = tape(answer);
  words["season"] = season_words(answer);
  words["has_more_first"] = answer.at("after").size() > 1;
  words["is_not_to_cut"] = answer.contains("do_not_cut_yet");
  words["is_sun_to_mind"] = answer.at("sun_on_sheet").at("severity") != "fine";
  words["is_provisional"] = answer.at("vent").at("provisional").get<bool>();
  add_comparison(words, answer.at("now_and_with_sheet"));
  if (answer.contains("year")) add_year_words(words, answer);
  if (!answer.contains("money")) return;
  words["payback"] = payback_words(answer.at("money"));
  words["may_never_pay"] = answer.at("money").at("share_that_never_pays_back").get<double>() > 0.0;
}

}  // namespace

std::string option_name(std::string_view option_word) {
  const auto option = option_of_word(option_word);
  if (!option) return std::string(option_word);
  switch (*option) {
    case VentOption::sealed:
      return "Tape all round";
    case VentOption::breaks_bottom:
      return "Two 20 mm breaks, bottom";
    case VentOption::breaks_bottom_longer:
      return "Two 100 mm breaks, bottom";
    case VentOption::breaks_bottom_and_top:
      return "Breaks at bottom and top";
    case VentOption::weep_to_outdoors:
      return "Weep holes to outdoors";
    case VentOption::joints_stripped:
      return "Old joints draught-stripped";
    case VentOption::off_in_summer:
      return "Off in spring, back in autumn";
  }
  return std::string(option_word);
}

Json plain_words(const Json& window) {
  const auto& answer = window.at("answer");
  const auto& job = answer.at("job");
  const auto name = job.contains("name") ? job.at("name").get<std::string>() : std::string();
  Json words{{"title", name.empty() ? "The window" : name},
             {"verdict", verdict(answer)},
             {"is_held", is_headline(answer, "hold")}};
  words["answer"] = "Nothing is advised before the safety questions below are settled.";
  if (answer.contains("now_and_with_sheet")) add_figures(words, answer);
  return words;
}

}  // namespace dewgap::tools
