// All that a report says, as one JSON document; the page is made from nothing else.
#pragma once

#include <nlohmann/json.hpp>

#include "tools/verbs/assessed_job.hpp"

namespace dewgap::tools {

/// Of one window: "answer" (as `assess --json` has it), "section", "comfort",
/// "rivals", "year", "frame_moisture", "setting_out", "run_record". Of a house: "answer" is the house's, and
/// "windows" has these for each window, but for the run record, which is the house's. On HOLD of a window
/// there is "answer" and the run record alone, and, while only consent is pending, "proposed_holes". Throws
/// as the library does.
nlohmann::ordered_json report_document(const AssessedJob& job);

/// The document as text.
std::string json_report(const AssessedJob& job);

}  // namespace dewgap::tools
