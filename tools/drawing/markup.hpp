// Text of a job put into HTML and SVG: nothing in it can become markup or turn the direction of writing.
#pragma once

#include <string>
#include <string_view>

namespace dewgap::tools {

/// Harmless text (plain_text.hpp) with & < > " ' written as entities, for text and quoted attributes alike.
std::string escaped(std::string_view text);

/// The same in a <bdi> of HTML, so that letters written from the right leave their neighbours in place.
std::string isolated(std::string_view text);

/// The start of a text, cut with an ellipsis to `columns`, escaped and isolated.
std::string isolated_start(std::string_view text, std::size_t columns);

}  // namespace dewgap::tools
