// What stands in every document before any figure.
#include "dewgap/version.hpp"
#include "tools/answer/json_parts_kernel.hpp"
#include "tools/answer/words.hpp"

namespace dewgap::tools::json_parts {

Json tool() {
  return {{"name", "dewgap"}, {"version", version}};
}

Json job(const Survey& survey) {
  return {{"name", survey.name}, {"note", survey.note}};
}

Json gates(const AnsweredJob& job) {
  Json open = Json::array();
  for (const auto& gate : job.assessment.open_gates)
    open.push_back({{"gate", json_word(gate.kind)},
                    {"answered", gate.answered},
                    {"question", gate.question},
                    {"why", gate.why}});
  return {{"answered_by", job.survey.settle_first.answered_by}, {"open", open}};
}

Json cautions(const Assessment& assessment) {
  Json list = Json::array();
  for (const auto& caution : assessment.cautions)
    list.push_back({{"topic", caution.topic},
                    {"brief", caution.brief},
                    {"say", caution.say},
                    {"source", caution.source}});
  return list;
}

std::string text_of(const Json& document) {
  return document.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace dewgap::tools::json_parts
