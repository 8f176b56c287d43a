// Rows of [house] and [[windows]].
#include "tools/job/field_kernel.hpp"

namespace dewgap::tools::rows {
namespace {

using enum Need;
using enum Asked;

std::optional<std::string> no_name(const std::string& name) {
  if (name.find_first_not_of(" \t\r\n") == std::string::npos) return "this names no window";
  return std::nullopt;
}

}  // namespace

std::vector<Field> house_fields() {
  return {
      {"house", "name", optional, on_request, "a name for the house, printed above the answer",
       "\"Starter house, figures invented\"",
       TextRule{200, [](FileAnswers& a, const std::string& v) { a.house.name = v; }, nullptr, {}}},
      {"house", "ventilation_limit_m3_h", optional, on_request,
       "your own limit: draught that the house can do without, all windows together", "\"not known\"",
       NumberRule{
           air_flow, {0, 10000}, [](FileAnswers& a, double v) { a.house.ventilation_limit_m3_h = v; }}},
      {"windows", "name", required, on_request, "each its own; --window NAME picks one",
       "\"Front room (invented)\"",
       TextRule{80, [](FileAnswers& a, const std::string& v) { a.survey.name = v; }, no_name,
                "a name of 1 to 80 bytes that no other window has"}},
  };
}

}  // namespace dewgap::tools::rows
