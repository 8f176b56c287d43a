#include "dewgap/assessment/rival_words_kernel.hpp"
#include "dewgap/assessment/verdict_kernel.hpp"
#include "dewgap/errors.hpp"

namespace dewgap {
namespace {

bool has_sheet(RivalKind kind) {
  return kind == RivalKind::sheet || kind == RivalKind::sheet_off_in_summer ||
         kind == RivalKind::sheet_and_strip;
}

std::string range(const Spread& spread, const std::string& unit) {
  return whole(spread.p50) + " " + unit + " (" + whole(spread.p10) + " to " + whole(spread.p90) + ")";
}

std::string saves(const Rival& rival) {
  return rival.heat_saved_kWh.p50 >= 0.0 ? "saves about " + range(rival.heat_saved_kWh, "kWh a year")
                                         : "costs heat: " + range(rival.heat_saved_kWh, "kWh a year");
}

std::string colder_clause(double pane_colder_K) {
  return pane_colder_K >= 0.5 ? "; the glass behind is " + whole(pane_colder_K) + " K colder on a frost night"
                              : "";
}

std::string sentence_of(double pane_colder_K, const Rival& rival) {
  switch (rival.kind) {
    case RivalKind::do_nothing:
      return "Nothing is spent and nothing saved: on a frost night the glass is at about " +
             whole(rival.frost_room_face_C.p50) + " C.";
    case RivalKind::repair_and_strip:
      return "Repairing and draught-stripping the old window " + saves(rival) + "; the glass stays as cold.";
    case RivalKind::lined_curtains:
      return "Drawing lined curtains every night " + saves(rival) + colder_clause(pane_colder_K) + ".";
    case RivalKind::shutters:
      return "Closing shutters every night " + saves(rival) + colder_clause(pane_colder_K) + ".";
    case RivalKind::sheet:
      return "The sheet " + saves(rival) + "; its face towards the room is at about " +
             whole(rival.frost_room_face_C.p50) + " C on a frost night.";
    case RivalKind::sheet_off_in_summer:
      return "The sheet, taken off from spring to autumn so that the window can dry and be opened, " +
             saves(rival) + ".";
    case RivalKind::sheet_and_strip:
      return "The sheet with the old window repaired and draught-stripped " + saves(rival) + ".";
  }
  throw InvalidInput("rival", "is not one");
}

std::string condition_of(RivalKind kind) {
  switch (kind) {
    case RivalKind::do_nothing:
      return "";
    case RivalKind::repair_and_strip:
    case RivalKind::sheet_and_strip:
      return "The joints come to what weather-stripped old windows leak; less air then also carries less "
             "moisture out of the room.";
    case RivalKind::lined_curtains:
    case RivalKind::shutters:
      return "Shut for half of the day's heating, every day of winter, down to the sill; draught passes as "
             "before. Damp is that of the hours while shut.";
    case RivalKind::sheet:
      return "As fitted here, all year.";
    case RivalKind::sheet_off_in_summer:
      return "Sealed all round while it hangs. Winter is as with the sheet; summer saves no heat.";
  }
  throw InvalidInput("rival", "is not one");
}

std::string damp_of(const Rival& rival) {
  const std::string pane = has_sheet(rival.kind) ? "The gap's coldest face" : "The old glass";
  return pane + " stays dry in the coldest month's means in " + share_of_cases(rival.dry_month_share) +
         ", on a frost night in " + percent(rival.dry_frost_share) + ".";
}

}  // namespace

std::string_view name_of(RivalKind kind) {
  switch (kind) {
    case RivalKind::do_nothing:
      return "do nothing";
    case RivalKind::repair_and_strip:
      return "repair and draught-strip";
    case RivalKind::lined_curtains:
      return "lined curtains at night";
    case RivalKind::shutters:
      return "shutters at night";
    case RivalKind::sheet:
      return "the sheet";
    case RivalKind::sheet_off_in_summer:
      return "the sheet, off in summer";
    case RivalKind::sheet_and_strip:
      return "the sheet and draught-strip";
  }
  throw InvalidInput("rival", "is not one");
}

RivalWords words_for(double pane_colder_K, const Rival& rival) {
  return {.sentence = sentence_of(pane_colder_K, rival),
          .condition = condition_of(rival.kind),
          .damp = damp_of(rival)};
}

}  // namespace dewgap
