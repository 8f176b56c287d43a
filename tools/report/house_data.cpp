#include <string_view>

#include "tools/answer/plain_text.hpp"
#include "tools/report/page_data.hpp"
#include "tools/report/window_data_kernel.hpp"

namespace dewgap::tools::report_view {
namespace {

using kainjow::mustache::data;

std::string headline_words(std::string_view word) {
  if (word == "fit") return "fit";
  if (word == "fit_after") return "fit, but something first";
  if (word == "leave") return "leave it";
  return "not yet: a safety question is open";
}

}  // namespace

data house_data(const Json& document) {
  const auto& answer = document.at("answer");
  auto view = page_data(answer, "/answer");
  data windows{data::type::list};
  for (std::size_t i = 0; i < answer.at("windows").size(); ++i) {
    const auto& window = answer.at("windows")[i];
    auto row = page_data(window, "/answer/windows/" + std::to_string(i));
    row.set("headline_words", headline_words(window.at("headline").get<std::string>()));
    windows << row;
  }
  view.set("windows", windows);
  const Json::json_pointer currency("/totals/currency");
  if (answer.contains(currency)) view.set("currency", answer.at(currency).get<std::string>());
  const Json::json_pointer capped("/totals/capped_by_bill/share_of_cases_capped");
  view.set("bill_caps", data{answer.contains(capped) && answer.at(capped).get<double>() > 0.0});
  return view;
}

std::string house_title(const Json& document) {
  const auto name = document.at("answer").at("house").get<std::string>();
  return name.empty() ? "The house" : one_line(name, 60);
}

std::string page_title(const Json& document) {
  return "A second pane inside: " +
         (document.contains("windows") ? house_title(document) : short_title(document));
}

}  // namespace dewgap::tools::report_view
