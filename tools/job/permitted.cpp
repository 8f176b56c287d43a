// What a field permits, in words.
#include <fmt/format.h>

#include "tools/job/compass.hpp"
#include "tools/job/field.hpp"

namespace dewgap::tools {
namespace {

std::string listed(const std::vector<std::string_view>& words) {
  std::string text;
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (i > 0) text += i + 1 == words.size() ? " or " : ", ";
    text += fmt::format("\"{}\"", words[i]);
  }
  return text;
}

std::string with_unit(std::string text, std::string_view unit) {
  if (!unit.empty()) text += fmt::format(" {}", unit);
  return text;
}

std::string range_text(PermittedRange permitted, std::string_view unit) {
  return with_unit(fmt::format("{} to {}", permitted.min, permitted.max), unit);
}

std::string count_text(std::size_t least, std::size_t most) {
  return least == most ? fmt::format("{}", most) : fmt::format("{} to {}", least, most);
}

struct PermittedText {
  std::string operator()(const NumberRule& rule) const {
    return range_text(rule.permitted, rule.unit.symbol);
  }
  std::string operator()(const NumberOrNoneRule& rule) const {
    return fmt::format("\"{}\"; or {}", none_there, range_text(rule.permitted, rule.unit.symbol));
  }
  std::string operator()(const WholeNumberRule& rule) const {
    return fmt::format("a whole number, {} to {} {}", rule.least, rule.most, rule.counted);
  }
  std::string operator()(const NumbersRule& rule) const {
    return fmt::format("a list of {} numbers, each {}", count_text(rule.least, rule.most),
                       range_text(rule.permitted, rule.unit.symbol));
  }
  std::string operator()(const WordRule& rule) const { return listed(rule.words); }
  std::string operator()(const WordsRule& rule) const {
    return fmt::format("a list of up to {}, each {}", rule.most, listed(rule.words));
  }
  std::string operator()(const TickRule&) const { return R"("yes" or "no")"; }
  std::string operator()(const TextRule& rule) const {
    return rule.permitted.empty() ? fmt::format("text of up to {} bytes", rule.most_bytes)
                                  : std::string(rule.permitted);
  }
  std::string operator()(const CompassRule&) const {
    return fmt::format("{}; or 0 to 360 degrees from north by east", listed(compass_words()));
  }
};

struct UnitText {
  std::string operator()(const NumberRule& rule) const { return std::string(rule.unit.symbol); }
  std::string operator()(const NumberOrNoneRule& rule) const { return std::string(rule.unit.symbol); }
  std::string operator()(const NumbersRule& rule) const { return std::string(rule.unit.symbol); }
  std::string operator()(const WholeNumberRule& rule) const { return std::string(rule.counted); }
  std::string operator()(const CompassRule&) const { return std::string(degrees.symbol); }
  std::string operator()(const WordRule&) const { return {}; }
  std::string operator()(const WordsRule&) const { return {}; }
  std::string operator()(const TickRule&) const { return {}; }
  std::string operator()(const TextRule&) const { return {}; }
};

}  // namespace

std::string permitted_text(const FieldRule& rule) {
  return std::visit(PermittedText{}, rule);
}
std::string unit_text(const FieldRule& rule) {
  return std::visit(UnitText{}, rule);
}

}  // namespace dewgap::tools
