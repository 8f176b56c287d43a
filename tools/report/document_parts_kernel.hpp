// Parts of the report's document.
#pragma once

#include <optional>

#include "dewgap/assessment/comfort_at_window.hpp"
#include "dewgap/assessment/frame_moisture.hpp"
#include "dewgap/assessment/gap_year.hpp"
#include "dewgap/assessment/rivals.hpp"
#include "dewgap/assessment/section_profile.hpp"
#include "tools/answer/answered_house.hpp"
#include "tools/answer/json_parts_kernel.hpp"

namespace dewgap::tools::report_parts {

using Json = nlohmann::ordered_json;

Json section(const SectionProfile& profile);
Json comfort(const ComfortAtWindow& comfort);
/// `year_cases`: different ones that the answer's year of hours ran; 0 without one.
Json rivals(const std::vector<Rival>& rivals, std::size_t year_cases);
Json frame_moisture(const FrameMoisture& moisture);

/// Two plausible cases by month and by hour: the middle one, and one that about a tenth are wetter than.
Json year(const AnsweredJob& job, const std::optional<HourlyYear>& weather);

/// Numbered holes of a plan, by member; the sheet's size stays out.
Json holes(const SheetPlan& plan);

/// What makes the same figures again: versions, methods, options, seed and the files' own text.
Json run_record(const AnsweredJob& job);
Json house_run_record(const AnsweredHouse& house);

}  // namespace dewgap::tools::report_parts
