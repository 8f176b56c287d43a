// Shorthand for writing the rows of the field table. `Where` is a function from the survey to the member to
// fill.
#pragma once

#include <utility>

#include "tools/job/field.hpp"

namespace dewgap::tools::rows {

template <class Where>
FieldRule number(Unit unit, PermittedRange permitted, Where where) {
  return NumberRule{unit, permitted,
                    [where](FileAnswers& answers, double value) { where(answers.survey) = value; }};
}

/// A shutter or blind: its clearance, or that there is none.
template <class Where>
FieldRule clearance_or_none(PermittedRange permitted, Where where) {
  return NumberOrNoneRule{
      millimetres, permitted, [where](FileAnswers& answers, std::optional<double> value) {
        where(answers.survey) = HungPart{value ? HungPart::There::yes : HungPart::There::no, value};
      }};
}

template <class Where>
FieldRule whole(std::string_view counted, int least, int most, Where where) {
  return WholeNumberRule{counted, least, most,
                         [where](FileAnswers& answers, int value) { where(answers.survey) = value; }};
}

/// Exactly `count` lengths, into a std::array.
template <std::size_t count, class Where>
FieldRule lengths(PermittedRange permitted, Where where) {
  return NumbersRule{millimetres, permitted, count, count,
                     [where](FileAnswers& answers, const std::vector<double>& values) {
                       std::array<double, count> filled{};
                       for (std::size_t i = 0; i < count; ++i) filled[i] = values.at(i);
                       where(answers.survey) = filled;
                     }};
}

template <class Word>
using WordList = std::vector<std::pair<std::string_view, Word>>;

template <class Word>
std::vector<std::string_view> words_of(const WordList<Word>& list) {
  std::vector<std::string_view> words;
  for (const auto& [word, meaning] : list) words.push_back(word);
  return words;
}

template <class Word, class Where>
FieldRule one_of(WordList<Word> list, Where where) {
  auto words = words_of(list);
  return WordRule{std::move(words), [list = std::move(list), where](FileAnswers& answers, std::size_t place) {
                    where(answers.survey) = list.at(place).second;
                  }};
}

template <class Word, class Where>
FieldRule several_of(WordList<Word> list, std::size_t most, Where where) {
  auto words = words_of(list);
  return WordsRule{
      std::move(words), most,
      [list = std::move(list), where](FileAnswers& answers, const std::vector<std::size_t>& places) {
        for (const std::size_t place : places) where(answers.survey).push_back(list.at(place).second);
      }};
}

template <class Where>
FieldRule tick(Where where) {
  return TickRule{[where](FileAnswers& answers, bool value) { where(answers.survey) = value; }};
}

template <class Where>
FieldRule text(std::size_t most_bytes, Where where) {
  return TextRule{most_bytes,
                  [where](FileAnswers& answers, const std::string& value) { where(answers.survey) = value; },
                  nullptr,
                  {}};
}

/// Rows of each part of the job file.
std::vector<Field> place_fields();
std::vector<Field> settle_first_fields();
std::vector<Field> window_fields();
std::vector<Field> sheet_fields();
std::vector<Field> looked_at_fields();
std::vector<Field> room_fields();
std::vector<Field> building_fields();
std::vector<Field> expert_fields();
std::vector<Field> edge_fields();
std::vector<Field> house_fields();

/// The money file.
std::vector<Section> money_sections();
std::vector<Field> money_fields();

}  // namespace dewgap::tools::rows
