// Parts of the JSON answer.
#pragma once

#include <nlohmann/json.hpp>

#include "tools/answer/answered_job.hpp"

namespace dewgap::tools::json_parts {

using Json = nlohmann::ordered_json;

/// Throws std::domain_error unless the number is finite.
double finite(double value);
Json spread(const Spread& spread, double factor = 1.0);

Json vent(const Assessment::Figures& figures);
Json now_and_with_sheet(const SideBySide& side);
Json money(const AnsweredJob& job);
/// A list of key, value as the file has it, unit and basis.
Json given(const std::vector<GivenValue>& values);
Json cut_and_fix(const SheetPlan& plan);
Json evidence(const Assessment::Figures& figures);
Json inputs(const Assessment::Figures& figures);
Json influences(const Assessment::Figures& figures);
Json width_checks(const Assessment::Figures& figures);
Json flags(ValidityFlags flags);

}  // namespace dewgap::tools::json_parts
