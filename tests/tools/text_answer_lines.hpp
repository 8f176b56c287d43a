// What tests of text answers ask of a page.
#pragma once

#include <gtest/gtest.h>

#include <string>

#include "run_cli.hpp"
#include "tools/answer/plain_text.hpp"

namespace dewgap::test {

inline void expect_narrow(const std::string& text) {
  for (const auto& line : lines_of(text)) {
    EXPECT_LE(tools::columns_of(line), most_columns) << line;
    EXPECT_EQ(line, tools::harmless(line)) << line;
    EXPECT_FALSE(line.ends_with(' ')) << '"' << line << '"';
  }
}

/// The text as if its lines had never been broken, but for table columns.
inline std::string unwrapped(const std::string& text) {
  return replaced(replaced(text, "\n  ", " "), "\n", " ");
}

/// Whether the text has this, wherever its lines break.
inline bool reads(const std::string& text, const std::string& part) {
  return unwrapped(text).find(part) != std::string::npos;
}

}  // namespace dewgap::test
