#include <gtest/gtest.h>

#include "tools/answer/figures_text.hpp"
#include "tools/answer/plain_text.hpp"

#include <limits>
#include <stdexcept>

namespace dewgap::tools {
namespace {

TEST(PlainText, FindsTheByteThatIsNotUtf8) {
  EXPECT_FALSE(first_invalid_utf8("plain, \xC3\xA9, \xE2\x82\xAC, \xF0\x9F\x98\x80"));
  EXPECT_EQ(first_invalid_utf8("ab\xFF"), 2u);
  EXPECT_EQ(first_invalid_utf8("\xC0\xAF"), 0u) << "overlong";
  EXPECT_EQ(first_invalid_utf8("x\xED\xA0\x80"), 1u) << "surrogate";
  EXPECT_EQ(first_invalid_utf8("\xF4\x90\x80\x80"), 0u) << "beyond U+10FFFF";
  EXPECT_EQ(first_invalid_utf8("abc\xE2\x82"), 3u) << "cut short";
}

TEST(PlainText, CountsColumnsAsATerminalDoes) {
  EXPECT_EQ(columns_of("abc"), 3u);
  EXPECT_EQ(columns_of("\xC3\xA9"), 1u);
  EXPECT_EQ(columns_of("e\xCC\x81"), 1u) << "combining accent";
  EXPECT_EQ(columns_of("\xE7\xAA\x93"), 2u) << "wide script";
  EXPECT_EQ(columns_of("\xD7\x97\xD7\x9C\xD7\x95\xD7\x9F"), 4u) << "right-to-left script";
}

TEST(PlainText, ReplacesWhatMovesTheCursorOrTurnsTheLine) {
  EXPECT_EQ(harmless("a\x1B[31mb\nc\td\x7F"), "a [31mb c d ");
  EXPECT_EQ(harmless("a\xC2\x85z"), "a z") << "C1 control";
  EXPECT_EQ(harmless("a\xE2\x80\xAEz"), "a\xEF\xBF\xBDz") << "right-to-left override";
  EXPECT_EQ(harmless("a\xFFz"), "a\xEF\xBF\xBDz");
}

TEST(PlainText, CutsWithAnEllipsisBetweenCharacters) {
  EXPECT_EQ(one_line("abcdef", 6), "abcdef");
  EXPECT_EQ(one_line("abcdefg", 6), "abcde\xE2\x80\xA6");
  EXPECT_EQ(one_line("abcd efgh", 6), "abcd\xE2\x80\xA6") << "no blank before the ellipsis";
  EXPECT_EQ(one_line("\xE7\xAA\x93\xE7\xAA\x93\xE7\xAA\x93", 5), "\xE7\xAA\x93\xE7\xAA\x93\xE2\x80\xA6");
}

TEST(PlainText, WrapsAtBlanksAndKeepsEveryWord) {
  const auto lines = wrapped("one two  three four", 9, "- ", "  ");
  ASSERT_EQ(lines.size(), 3u);
  EXPECT_EQ(lines[0], "- one two");
  EXPECT_EQ(lines[1], "  three");
  EXPECT_EQ(lines[2], "  four");
}

TEST(PlainText, BreaksAWordThatIsLongerThanTheLine) {
  const auto lines = wrapped("a " + std::string(25, 'x') + " b", 10, "", " ");
  for (const auto& line : lines) EXPECT_LE(columns_of(line), 10u) << line;
  std::size_t letters = 0;
  for (const auto& line : lines)
    for (const char c : line) letters += c == 'x' ? 1 : 0;
  EXPECT_EQ(letters, 25u);
}

TEST(FiguresText, PrintsMiddleAndRange) {
  EXPECT_EQ(ranged({4.62, 4.94, 5.24}, 1), "4.9 (4.6 to 5.2)");
  EXPECT_EQ(ranged({0.482, 0.55, 0.613}, 0, 100.0), "55 (48 to 61)");
  EXPECT_EQ(figure(-0.04, 1), "0.0") << "no negative nothing";
  EXPECT_EQ(figure(-0.06, 1), "-0.1");
}

TEST(FiguresText, NeverPrintsANumberThatIsNotFinite) {
  EXPECT_THROW(figure(std::numeric_limits<double>::quiet_NaN(), 1), std::domain_error);
  EXPECT_THROW(ranged({0.0, std::numeric_limits<double>::infinity(), 0.0}, 1), std::domain_error);
}

TEST(FiguresText, AShareShortOfAllIsNotAll) {
  EXPECT_EQ(share_text(1.0), "100 %");
  EXPECT_EQ(share_text(0.9999), "over 99 %");
  EXPECT_EQ(share_text(0.001), "under 1 %");
  EXPECT_EQ(share_text(0.0), "0 %");
  EXPECT_EQ(share_text(0.823), "82 %");
}

}  // namespace
}  // namespace dewgap::tools
