// JSON that may stand inside a <script type="application/json"> of a page.
#pragma once

#include <nlohmann/json.hpp>
#include <string>

namespace dewgap::tools {

/// The document with every character written as an escape that could end the element or break a line of
/// script: < > & U+2028 U+2029. It reads back as the same document. Bytes that are not UTF-8 are replaced.
std::string json_for_page(const nlohmann::ordered_json& document);

}  // namespace dewgap::tools
