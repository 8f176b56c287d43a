// Rows of [joints], [tissue] and [timber]: what somebody saw.
#include "tools/job/field_kernel.hpp"

namespace dewgap::tools::rows {
namespace {

using enum Need;
using enum Asked;

template <class Where>
FieldRule tissue_way(Where where) {
  return one_of<TissueWay>({{"in", TissueWay::in},
                            {"out", TissueWay::out},
                            {"hangs", TissueWay::hangs},
                            {"both ways", TissueWay::both_ways}},
                           where);
}

std::vector<Field> joint_fields() {
  return {
      {"joints", "feelers", optional, short_job,
       "thickest thing that slides into the joint at each of up to 8 marked points", "\"not known\"",
       several_of<Feeler>(
           {{"nothing", Feeler::nothing},
            {"paper", Feeler::paper},
            {"paper folded twice", Feeler::folded_paper},
            {"bank card", Feeler::bank_card},
            {"coin", Feeler::coin}},
           8, [](Survey & s) -> auto& { return s.joints.feelers; })},
      {"joints", "rattles", optional, short_job, "does it rattle", "\"not known\"",
       tick([](Survey & s) -> auto& { return s.joints.rattles; })},
      {"joints", "daylight_at_meeting_rail", optional, short_job, "is daylight seen at the meeting rail",
       "\"not known\"", tick([](Survey & s) -> auto& { return s.joints.daylight_at_meeting_rail; })},
      {"joints", "curtain_moves", optional, short_job, "does the curtain move in wind", "\"not known\"",
       tick([](Survey & s) -> auto& { return s.joints.curtain_moves; })},
      {"joints", "paper", optional, short_job, "paper shut in the joint, then pulled", "\"not known\"",
       one_of<PaperPull>(
           {{"pulls free", PaperPull::pulls_free}, {"drags", PaperPull::drags}, {"tears", PaperPull::tears}},
           [](Survey & s) -> auto& { return s.joints.paper; })},
      {"joints", "weather_stripped", optional, short_job, "have the old joints been draught-stripped",
       "\"not known\"", tick([](Survey & s) -> auto& { return s.joints.weather_stripped; })},
  };
}

std::vector<Field> tissue_fields() {
  return {
      {"tissue", "bottom", optional, short_job, "which way a strip of tissue blows at the bottom",
       "\"not known\"", tissue_way([](Survey & s) -> auto& { return s.tissue.bottom; })},
      {"tissue", "meeting_rail", optional, short_job, "and at the meeting rail", "\"not known\"",
       tissue_way([](Survey & s) -> auto& { return s.tissue.meeting_rail; })},
      {"tissue", "top", optional, short_job, "and at the top", "\"not known\"",
       tissue_way([](Survey & s) -> auto& { return s.tissue.top; })},
      {"tissue", "colder_outside_K", optional, short_job,
       "how much colder outside; under 10 the test is kept but not used", "\"not known\"",
       number(
           kelvin, {-40, 70}, [](Survey & s) -> auto& { return s.tissue.colder_outside_K; })},
      {"tissue", "wind", optional, short_job, "wind at the time", "\"not known\"",
       one_of<WindToday>(
           {{"calm", WindToday::calm}, {"breeze", WindToday::breeze}, {"windy", WindToday::windy}},
           [](Survey & s) -> auto& { return s.tissue.wind; })},
      {"tissue", "extract_on", optional, short_job, "was an extract fan on", "\"not known\"",
       tick([](Survey & s) -> auto& { return s.tissue.extract_on; })},
  };
}

std::vector<Field> timber_fields() {
  return {
      {"timber", "bottom_rail", optional, short_job, "thumb or awl at the bottom rail", "\"not known\"",
       one_of<TimberFeel>(
           {{"firm", TimberFeel::firm}, {"soft", TimberFeel::soft}, {"wet now", TimberFeel::wet_now}},
           [](Survey & s) -> auto& { return s.timber.bottom_rail; })},
      {"timber", "lets_rain_in", optional, short_job, "does rain come in", "\"not known\"",
       tick([](Survey & s) -> auto& { return s.timber.lets_rain_in; })},
      {"timber", "water_pools", optional, short_job, "does water pool, are corners wet", "\"not known\"",
       tick([](Survey & s) -> auto& { return s.timber.water_pools; })},
  };
}

}  // namespace

std::vector<Field> looked_at_fields() {
  auto fields = joint_fields();
  for (auto& field : tissue_fields()) fields.push_back(std::move(field));
  for (auto& field : timber_fields()) fields.push_back(std::move(field));
  return fields;
}

}  // namespace dewgap::tools::rows
