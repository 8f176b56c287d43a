// Parts of the JSON answer.
#pragma once

#include <nlohmann/json.hpp>

#include "tools/answer/advised_job.hpp"

namespace dewgap::tools::json_parts {

using Json = nlohmann::ordered_json;

/// Throws std::domain_error unless the number is finite.
double finite(double value);
/// A share of 1; a sum of weights may be beyond 0 or 1 by rounding, up to 1e-9, and is then 0 or 1. Throws
/// std::domain_error for anything further out.
double share(double value);
Json spread(const Spread& spread, double factor = 1.0);
/// Of few cases there are no percentiles, but the least and greatest.
Json case_spread(const CaseSpread& spread, std::size_t cases, double factor = 1.0);

Json vent(const Assessment::Figures& figures);
Json now_and_with_sheet(const SideBySide& side);
Json edge(const EdgeAnswer& edge);
Json money(const AnsweredJob& job);
/// A list of key, value as the file has it, unit and basis.
Json given(const std::vector<GivenValue>& values);
Json cut_and_fix(const SheetPlan& plan);
Json sun_on_sheet(const SheetInSun& sun);
/// Why nothing is to be cut yet, a sentence each; empty when it may be.
Json do_not_cut_yet(const CutCheck& cut);
Json evidence(const std::vector<EvidenceUse>& uses);
Json inputs(const Assessment::Figures& figures);
Json influences(const Assessment::Figures& figures);
Json width_checks(const Assessment::Figures& figures);
Json flags(ValidityFlags flags);
/// What stands before any figure: the tool, the job, the questions to settle, the cautions and what the file
/// gives.
Json tool();
Json job(const Survey& survey);
Json gates(const AnsweredJob& job);
Json cautions(const Assessment& assessment);
/// A vent decision over a year of hours.
Json advice(const VentAdvice& advice);
Json weather(const std::string& source, const ModelledColumns& modelled);
Json weather_file(const UsedWeather& used);
Json case_values(const GapYearSummary& summary);
/// The document as text, indented; bytes that are not UTF-8 are replaced.
std::string text_of(const Json& document);

}  // namespace dewgap::tools::json_parts
