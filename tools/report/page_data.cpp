#include "tools/report/page_data.hpp"

#include <array>
#include <stdexcept>
#include <utility>

#include "tools/report/charts.hpp"
#include "tools/report/figure_text.hpp"
#include "tools/report/plain_words.hpp"

namespace dewgap::tools {
namespace {

using Json = nlohmann::ordered_json;
using kainjow::mustache::data;

/// Words beside some keys, so that a list can name its items.
void add_words(data& object, const std::string& key, const Json& value) {
  if ((key == "option" || key == "choice") && value.is_string())
    object.set(key + "_name", option_name(value.get<std::string>()));
  if (key == "month" && value.is_number_integer())
    object.set("month_name", std::string(month_name(value.get<int>())));
}

data object_data(const Json& value, const std::string& at) {
  data object{data::type::object};
  for (const auto& [key, item] : value.items()) {
    if (key == "day_hours") continue;  // drawn, not written
    object.set(key, page_data(item, at + "/" + key));
    add_words(object, key, item);
  }
  object.set("at", at);
  return object;
}

/// "" is the object itself, "../x" beside it.
std::string pointer_of(std::string base, std::string_view path) {
  if (path.empty()) return base;
  if (path.starts_with("../")) return base.substr(0, base.rfind('/')) + "/" + std::string(path.substr(3));
  return base + "/" + std::string(path);
}

std::string figure_element(const Json& document, const std::string& pointer, std::string_view form) {
  const Json::json_pointer place(pointer);
  if (!document.contains(place)) throw std::logic_error("the report has no figure at " + pointer);
  return "<span class=\"figure\" data-figure=\"" + pointer + "\" data-form=\"" + std::string(form) + "\">" +
         figure_text(document.at(place), form) + "</span>";
}

constexpr std::array<std::pair<const char*, const char*>, 9> forms{
    std::pair{"f0", "0"},        std::pair{"f1", "1"},        std::pair{"f2", "2"},
    std::pair{"f3", "3"},        std::pair{"p0", "+0"},       std::pair{"p1", "+1"},
    std::pair{"share", "share"}, std::pair{"range", "range"}, std::pair{"range1", "range1"}};

}  // namespace

data page_data(const Json& value, const std::string& at) {
  if (value.is_object()) return object_data(value, at);
  if (value.is_array()) {
    data list{data::type::list};
    for (std::size_t i = 0; i < value.size(); ++i) list << page_data(value[i], at + "/" + std::to_string(i));
    return list;
  }
  if (value.is_string() && !value.get_ref<const std::string&>().empty())
    return data{value.get<std::string>()};
  const bool is_there = value.is_number() || (value.is_boolean() && value.get<bool>());
  return data{is_there};
}

void add_figure_forms(data& root, const Json& document) {
  for (const auto& [name, form] : forms) {
    const std::string form_text = form;
    root.set(
        name,
        data{kainjow::mustache::lambda2{[&document, form_text](const std::string& path, const auto& render) {
          const bool from_window = path.starts_with('^');
          const auto base = render(from_window ? "{{window_at}}" : "{{at}}");
          return figure_element(document, pointer_of(base, render(path.substr(from_window ? 1 : 0))),
                                form_text);
        }}});
  }
}

}  // namespace dewgap::tools
