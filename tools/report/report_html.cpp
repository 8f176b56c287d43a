#include "tools/report/report_html.hpp"

#include <algorithm>
#include <stdexcept>
#include <utility>

#include "embedded/dewgap_cli.hpp"
#include "tools/drawing/markup.hpp"
#include "tools/report/page_data.hpp"
#include "tools/report/safe_json.hpp"
#include "tools/report/window_data_kernel.hpp"

namespace dewgap::tools {
namespace {

using kainjow::mustache::data;
using kainjow::mustache::partial;
using Json = nlohmann::ordered_json;

constexpr std::pair<const char*, const std::string_view*> partials[]{
    {"householder", &embedded::report_householder},
    {"held", &embedded::report_held},
    {"house", &embedded::report_house},
    {"appendices", &embedded::report_appendices},
    {"conservation", &embedded::report_conservation},
    {"holes", &embedded::report_holes},
    {"record", &embedded::report_record}};

void add_partials(data& root) {
  for (const auto& [name, text] : partials)
    root.set(name + std::string("_part"), data{partial{[text = *text] { return std::string(text); }}});
}

/// The run record, for the page and for programs.
void add_record(data& root, const Json& document) {
  const auto& run_record = document.at("run_record");
  auto record = page_data(run_record, "/run_record");
  record.set("has_sources", data{!run_record.at("sources").empty()});
  root.set("run_record", record);
  root.set("record_title", document.contains("windows") ? report_view::house_title(document)
                                                        : report_view::short_title(document));
  root.set("run_record_json", json_for_page(run_record));
}

/// Lines stay lines; nothing else of a text can move or turn what stands around it.
std::string escaped_lines(const std::string& text) {
  std::string safe;
  for (std::size_t start = 0; start <= text.size();) {
    const auto end = std::min(text.find('\n', start), text.size());
    safe += (start == 0 ? "" : "\n") + escaped(std::string_view(text).substr(start, end - start));
    start = end + 1;
  }
  return safe;
}

data windows_of(const Json& document) {
  data windows{data::type::list};
  if (!document.contains("windows")) {
    windows << report_view::window_data(document, {"", 1, report_view::PageOf::one_window});
    return windows;
  }
  for (std::size_t i = 0; i < document.at("windows").size(); ++i)
    windows << report_view::window_data(document.at("windows")[i],
                                        {"/windows/" + std::to_string(i), i + 1, report_view::PageOf::house});
  return windows;
}

}  // namespace

std::string report_html(const Json& document) {
  data root{data::type::object};
  add_partials(root);
  add_figure_forms(root, document);
  add_record(root, document);
  root.set("style", std::string(embedded::report_style));
  root.set("window_at", "");
  root.set("windows", windows_of(document));
  root.set("page_title", report_view::page_title(document));
  if (document.contains("windows")) {
    root.set("house", report_view::house_data(document));
    root.set("house_title", report_view::house_title(document));
  }
  kainjow::mustache::mustache page{std::string(embedded::report_page)};
  page.set_custom_escape(escaped_lines);
  auto html = page.render(root);
  if (!page.is_valid()) throw std::logic_error("a template of the report: " + page.error_message());
  return html;
}

}  // namespace dewgap::tools
