// The document as the templates see it.
#pragma once

#include <kainjow/mustache.hpp>
#include <nlohmann/json.hpp>
#include <string>

namespace dewgap::tools {

/// Objects and lists keep their form; each object also has "at", its pointer in the document. Texts are as
/// they are, escaped when they are printed. Numbers cannot be printed at all, only asked for ({{#key}}):
/// what prints them is add_figure_forms. An empty text counts as missing.
kainjow::mustache::data page_data(const nlohmann::ordered_json& value, const std::string& at);

/// {{#f0}}path{{/f0}}: the figure at the path, from the nearest object's "at" on (or from the window's, after
/// '^'; "../x" is beside it, an empty path the object itself), as figure_text has it, in an element that says
/// where it is from. Forms: f0 f1 f2 f3, p0 p1 (with sign), share, range, range1. `document` must outlive the
/// data. A path that leads nowhere throws std::logic_error.
void add_figure_forms(kainjow::mustache::data& root, const nlohmann::ordered_json& document);

}  // namespace dewgap::tools
