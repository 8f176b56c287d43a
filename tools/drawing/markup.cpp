#include "tools/drawing/markup.hpp"

#include "tools/answer/plain_text.hpp"

namespace dewgap::tools {

std::string escaped(std::string_view text) {
  std::string safe;
  for (const char character : harmless(text)) {
    switch (character) {
      case '&':
        safe += "&amp;";
        break;
      case '<':
        safe += "&lt;";
        break;
      case '>':
        safe += "&gt;";
        break;
      case '"':
        safe += "&quot;";
        break;
      case '\'':
        safe += "&#39;";
        break;
      default:
        safe += character;
    }
  }
  return safe;
}

std::string isolated(std::string_view text) {
  return "<bdi>" + escaped(text) + "</bdi>";
}

std::string isolated_start(std::string_view text, std::size_t columns) {
  return isolated(one_line(text, columns));
}

}  // namespace dewgap::tools
