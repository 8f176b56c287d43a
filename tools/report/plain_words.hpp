// What the householder's pages say in words, chosen by the figures of the document; figures stand beside
// them.
#pragma once

#include <nlohmann/json.hpp>
#include <string>
#include <string_view>

namespace dewgap::tools {

/// A way to make the tape by its word in the document: "Tape all round".
std::string option_name(std::string_view option_word);

/// Sentences and switches for the templates, of one window's part of the document: "verdict", "answer",
/// "tape", ... Nothing of it is a figure.
nlohmann::ordered_json plain_words(const nlohmann::ordered_json& window);

}  // namespace dewgap::tools
