// Black-and-white pages to print: one HTML file that needs nothing else.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace dewgap::tools {

struct PaperDocument {
  std::string title;  ///< any text; escaped here
  std::string style;  ///< rules besides the common ones
  std::string body;   ///< markup
};

/// The whole file. Nothing in it is fetched and no script runs, as its content security policy says too.
/// Pages are <section class="page">; A4, upright.
std::string paper_document(const PaperDocument& document);

/// A list whose items have a box to tick. The items are text, escaped here.
std::string tick_list(const std::vector<std::string>& items);
/// The same without boxes.
std::string plain_list(const std::vector<std::string>& items);

struct PaperTable {
  std::string caption;                         ///< text
  std::vector<std::string> head;               ///< text
  std::vector<std::vector<std::string>> rows;  ///< text
};
std::string paper_table(const PaperTable& table);

/// A bar of 50 mm to hold a rule to: whether a page was printed at its own size.
std::string scale_check();

}  // namespace dewgap::tools
