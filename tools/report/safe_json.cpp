#include "tools/report/safe_json.hpp"

#include <array>
#include <string_view>
#include <utility>

namespace dewgap::tools {

std::string json_for_page(const nlohmann::ordered_json& document) {
  // These characters stand in strings alone, where an escape means the same.
  constexpr std::array<std::pair<std::string_view, std::string_view>, 5> escapes{
      std::pair{"<", "\\u003c"}, std::pair{">", "\\u003e"}, std::pair{"&", "\\u0026"},
      std::pair{"\xE2\x80\xA8", "\\u2028"}, std::pair{"\xE2\x80\xA9", "\\u2029"}};
  auto text = document.dump(1, ' ', false, nlohmann::ordered_json::error_handler_t::replace);
  for (const auto& [plain, escape] : escapes)
    for (auto at = text.find(plain); at != std::string::npos; at = text.find(plain, at + escape.size()))
      text.replace(at, plain.size(), escape);
  return text;
}

}  // namespace dewgap::tools
