// The two field tables, put together from their rows.
#include <algorithm>

#include "tools/job/field_kernel.hpp"

namespace dewgap::tools {
namespace {

std::vector<Section> job_sections() {
  return {
      {"job", "which window this is", nullptr},
      {"place", "its climate", nullptr},
      {"settle_first", "five questions that come before any answer; each unsafe or unanswered one is a HOLD",
       nullptr},
      {"window", "the old window, measured in whole millimetres", nullptr},
      {"sheet", "what is to be added", nullptr},
      {"joints", "the old window's joints, looked at and felt", nullptr},
      {"tissue", "a strip of tissue held to the old window, fires out, on a day at least 10 K colder outside",
       nullptr},
      {"timber", "the state of the old frame", nullptr},
      {"room", "the room behind the window", nullptr},
      {"room.hygrometer", "a reading each, morning and evening, several days",
       [](FileAnswers& answers) { answers.survey.room.hygrometer.emplace_back(); }},
      {"building", "the house around it", nullptr},
      {"expert", "coefficients for those who have measured them; each wins over what was looked at", nullptr},
      {"edge",
       "the bottom of the window drawn in section: frame, edge and coldest spots by conduction, not a "
       "default; timber and steel; a size that is not known is a usual one",
       nullptr},
      {"house", "in a file of several windows: the house as a whole", nullptr},
      {"windows",
       "a window each, 1 to 60, in a file of several; the sections above then hold for all of them, and a "
       "window may have its own, [windows.sheet] or [[windows.room.hygrometer]], which overrides them key by "
       "key; the answers in [settle_first] are given for each window, [place] is the same for all, and "
       "[building] but for floor and outlook",
       [](FileAnswers&) {}},
  };
}

FieldTable make_job_table() {
  FieldTable table{"job", job_sections(), {}};
  for (auto rows :
       {rows::place_fields(), rows::settle_first_fields(), rows::window_fields(), rows::sheet_fields(),
        rows::looked_at_fields(), rows::room_fields(), rows::building_fields(), rows::expert_fields(),
        rows::edge_fields(), rows::house_fields()})
    for (auto& row : rows) table.fields.push_back(std::move(row));
  return table;
}

}  // namespace

const FieldTable& job_table() {
  static const FieldTable table = make_job_table();
  return table;
}

const FieldTable& money_table() {
  static const FieldTable table{"money", rows::money_sections(), rows::money_fields()};
  return table;
}

const Section* FieldTable::find_section(std::string_view name) const {
  const auto at =
      std::find_if(sections.begin(), sections.end(), [&](const Section& s) { return s.name == name; });
  return at == sections.end() ? nullptr : &*at;
}

const Field* FieldTable::find(std::string_view section, std::string_view key) const {
  const auto at = std::find_if(fields.begin(), fields.end(),
                               [&](const Field& f) { return f.section == section && f.key == key; });
  return at == fields.end() ? nullptr : &*at;
}

}  // namespace dewgap::tools
