// A window's part of the document made ready for the templates: words, pictures, switches.
#pragma once

#include <kainjow/mustache.hpp>
#include <nlohmann/json.hpp>
#include <string>

namespace dewgap::tools::report_view {

using Json = nlohmann::ordered_json;

enum class PageOf { one_window, house };

struct PlaceInReport {
  std::string at;          ///< pointer of the window's part
  std::size_t number = 1;  ///< from 1
  PageOf page_of = PageOf::one_window;
};

kainjow::mustache::data window_data(const Json& window, const PlaceInReport& place);
kainjow::mustache::data house_data(const Json& document);

/// The window's name, cut to what a heading has room for.
std::string short_title(const Json& window);
std::string house_title(const Json& document);
std::string page_title(const Json& document);

}  // namespace dewgap::tools::report_view
