// What a person who guards the building asks: holes and frame moisture, as JSON.
#include <array>

#include "tools/answer/words.hpp"
#include "tools/job/units.hpp"
#include "tools/report/document_parts_kernel.hpp"

namespace dewgap::tools::report_parts {
namespace {

using json_parts::finite;

constexpr std::array<std::pair<Member, std::string_view>, 4> members{
    std::pair{Member::left, "left"}, std::pair{Member::top, "top"}, std::pair{Member::right, "right"},
    std::pair{Member::bottom, "bottom"}};

std::string_view word_of(Member member) {
  for (const auto& [one, word] : members)
    if (one == member) return word;
  return "left";
}

Json hole_of(const Hole& hole) {
  Json json{{"number", hole.number},
            {"member", word_of(hole.member)},
            {"along_mm", hole.along_mm},
            {"pilot_diameter_mm", finite(hole.pilot_diameter_mm)}};
  if (hole.pilot_depth_mm > 0.0) json["pilot_depth_mm"] = finite(hole.pilot_depth_mm);
  if (hole.tight) json["tight"] = true;
  return json;
}

/// As many holes as each member takes.
Json by_member(const SheetPlan& plan) {
  Json list = Json::array();
  for (const auto& [member, word] : members) {
    int count = 0;
    for (const auto& hole : plan.holes) count += hole.member == member ? 1 : 0;
    if (count > 0) list.push_back({{"member", word}, {"count", count}});
  }
  return list;
}

Json months(const FrameMoisture& moisture) {
  Json list = Json::array();
  for (std::size_t i = 0; i < moisture.month_difference_kg_kg.size(); ++i)
    list.push_back({{"month", i + 1},
                    {"now_pct", finite(per_cent.from_base(moisture.without.month_mean_kg_kg[i]))},
                    {"with_sheet_pct", finite(per_cent.from_base(moisture.with.month_mean_kg_kg[i]))},
                    {"difference_pct", finite(per_cent.from_base(moisture.month_difference_kg_kg[i]))}});
  return list;
}

Json range_of(const FrameMoisture::Range& range, std::size_t cases) {
  const auto spread = [cases](const CaseSpread& figure, double factor = 1.0) {
    return json_parts::case_spread(figure, cases, factor);
  };
  return {{"peak_now_pct", spread(range.peak_without_kg_kg, per_cent.per_base)},
          {"peak_with_sheet_pct", spread(range.peak_with_kg_kg, per_cent.per_base)},
          {"peak_difference_pct", spread(range.peak_difference_kg_kg, per_cent.per_base)},
          {"wettest_month_difference_pct", spread(range.wettest_month_difference_kg_kg, per_cent.per_base)},
          {"hours_above_now_h", spread(range.hours_above_without)},
          {"hours_above_with_sheet_h", spread(range.hours_above_with)},
          {"hours_above_difference_h", spread(range.hours_above_difference)},
          {"share_wetter_with_sheet", json_parts::share(range.wetter_share)}};
}

}  // namespace

Json frame_moisture(const FrameMoisture& moisture) {
  Json json{{"option", json_word(moisture.option)},
            {"sentence", moisture.sentence},
            {"threshold_pct", finite(per_cent.from_base(moisture.threshold_kg_kg))},
            {"peak_now_pct", finite(per_cent.from_base(moisture.without.peak_kg_kg))},
            {"peak_with_sheet_pct", finite(per_cent.from_base(moisture.with.peak_kg_kg))},
            {"peak_difference_pct", finite(per_cent.from_base(moisture.peak_difference_kg_kg))},
            {"hours_above_now_h", finite(moisture.without.hours_above_caution)},
            {"hours_above_with_sheet_h", finite(moisture.with.hours_above_caution)},
            {"hours_above_difference_h", finite(moisture.hours_above_difference)},
            {"months", months(moisture)}};
  if (moisture.range) json["plausible_cases"] = range_of(*moisture.range, moisture.cases_run);
  json["samples"] = moisture.samples;
  json["cases_run"] = moisture.cases_run;
  json["samples_left_out"] = moisture.samples_left_out;
  json["seed"] = moisture.seed;
  json["weather"] = moisture.weather_source;
  return json;
}

Json holes(const SheetPlan& plan) {
  Json list = Json::array();
  for (const auto& hole : plan.holes) list.push_back(hole_of(hole));
  return {{"fixing", json_word(plan.fixing)},
          {"sheet_count", plan.sheet_count},
          {"hole_count", plan.holes.size()},
          {"members", by_member(plan)},
          {"holes", list}};
}

}  // namespace dewgap::tools::report_parts
