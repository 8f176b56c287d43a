// The report as one page of HTML that needs nothing else.
#pragma once

#include <nlohmann/json.hpp>
#include <string>

namespace dewgap::tools {

/// Made from the document (report_document.hpp) alone. Every figure stands in an element whose data-figure
/// points to it in the document, and data-form says how it was written (figure_text.hpp). No script, nothing
/// fetched.
std::string report_html(const nlohmann::ordered_json& document);

}  // namespace dewgap::tools
