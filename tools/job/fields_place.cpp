// Rows of [job], [place] and [settle_first].
#include "dewgap/climate/places.hpp"
#include "tools/job/field_kernel.hpp"
#include "tools/job/spelling.hpp"

namespace dewgap::tools::rows {
namespace {

std::optional<std::string> unknown_place(const std::string& name) {
  if (name.empty()) return "this names no place";
  if (find_place(name) != nullptr) return std::nullopt;
  const auto nearest = nearest_place_name(name);
  const bool alike = !nearest_word(in_small_letters(name),
                                   {in_small_letters(nearest), std::string(find_place(nearest)->key)})
                          .empty();
  return "no such place is carried" + (alike ? "; nearest spelling \"" + nearest + "\"" : std::string()) +
         "; see: dewgap places";
}

FieldRule place_rule() {
  return TextRule{
      200, [](FileAnswers& answers, const std::string& value) { answers.survey.place.nearest = value; },
      unknown_place, "the name of a place that `dewgap places` lists"};
}

}  // namespace

std::vector<Field> place_fields() {
  using enum Need;
  using enum Asked;
  return {
      {"job", "name", optional, short_job, "a name for it, printed above the answer",
       "\"Starter window, figures invented\"",
       text(
           2000, [](Survey & s) -> auto& { return s.name; })},
      {"job", "note", optional, short_job, "anything worth keeping; not used", "\"\"",
       text(
           20000, [](Survey & s) -> auto& { return s.note; })},
      {"job", "tried_first", optional, on_request,
       "what was tried before a second pane, and what it did; printed for whoever guards the building",
       "\"\"", TextRule{400, [](FileAnswers&, const std::string&) {}, nullptr, {}}},  // kept as given
      {"place", "nearest", required, short_job, "the nearest place whose climate is carried", "\"london\"",
       place_rule()},
      {"place", "distance_km", optional, short_job, "how far that is; widens the climate's range",
       "\"not known\"",
       number(
           kilometres, {0, 1000}, [](Survey & s) -> auto& { return s.place.distance_km; })},
      {"place", "elevation_m", optional, short_job, "height of the house above the sea", "\"not known\"",
       number(
           metres, {-400, 5000}, [](Survey & s) -> auto& { return s.place.elevation_m; })},
  };
}

std::vector<Field> settle_first_fields() {
  using enum Asked;
  constexpr Need settle = Need::settle_first;
  return {
      {"settle_first", "answered_by", Need::optional, short_job, "who answered these", "\"\"",
       text(
           400, [](Survey & s) -> auto& { return s.settle_first.answered_by; })},
      {"settle_first", "way_out", settle, short_job, "might anyone have to get out here in a fire", "",
       one_of<WayOut>(
           {{"not a way out", WayOut::not_a_way_out}, {"might be needed", WayOut::might_be_needed}},
           [](Survey & s) -> auto& { return s.settle_first.way_out; })},
      {"settle_first", "burning", settle, short_job, "what burns in this room or draws its air from it", "",
       one_of<Burning>(
           {{"nothing", Burning::nothing},
            {"balanced flue", Burning::balanced_flue},
            {"open fire", Burning::open_fire},
            {"flued gas fire", Burning::flued_gas_fire},
            {"stove", Burning::stove},
            {"boiler in the room", Burning::boiler_in_room},
            {"flueless heater", Burning::flueless_heater}},
           [](Survey & s) -> auto& { return s.settle_first.burning; })},
      {"settle_first", "fresh_air", settle, short_job, "does the room have fresh air from elsewhere", "",
       one_of<FreshAir>(
           {{"another way", FreshAir::other_way_to_breathe},
            {"only this window", FreshAir::only_this_window}},
           [](Survey & s) -> auto& { return s.settle_first.fresh_air; })},
      {"settle_first", "protection", settle, short_job, "is the building listed or otherwise protected", "",
       one_of<Protection>(
           {{"not protected", Protection::unprotected},
            {"consent given", Protection::consent_given},
            {"consent pending", Protection::consent_pending},
            {"consent not sought", Protection::consent_not_sought}},
           [](Survey & s) -> auto& { return s.settle_first.protection; })},
      {"settle_first", "old_glass", settle, short_job,
       "leaded, painted or historic glass gets colder behind a sheet", "",
       one_of<OldGlassKind>(
           {{"plain", OldGlassKind::plain},
            {"leaded, painted or historic", OldGlassKind::leaded_painted_or_historic}},
           [](Survey & s) -> auto& { return s.settle_first.old_glass; })},
  };
}

}  // namespace dewgap::tools::rows
