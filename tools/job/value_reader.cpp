#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "tools/job/compass.hpp"
#include "tools/job/spelling.hpp"
#include "tools/job/syntax_hint.hpp"
#include "tools/job/value_reader_kernel.hpp"

namespace dewgap::tools {
namespace {

std::optional<double> number_in(const TomlNode& node) {
  if (const auto* whole = std::get_if<std::int64_t>(&node.value)) return static_cast<double>(*whole);
  if (const auto* number = std::get_if<double>(&node.value)) return *number;
  return std::nullopt;
}

/// A likely slip: metres where the key is in millimetres, a share of one where it is in per cent.
std::string slip(double value, PermittedRange permitted, Unit unit) {
  const double scaled = value * unit.per_base;
  if (unit.per_base == plain.per_base || scaled < permitted.min || scaled > permitted.max) return {};
  return fmt::format(" (this key is in {}: is {:.6g} meant?)", unit.symbol, scaled);
}

/// What is wrong with a number against its range; nothing when it fits.
Complaint number_complaint(const TomlNode& node, PermittedRange permitted, Unit unit) {
  const auto value = number_in(node);
  if (!value) return fmt::format("{} is {}, not a number", value_text(node), kind_text(node));
  if (!std::isfinite(*value)) return fmt::format("{} is not a finite number", value_text(node));
  if (*value < permitted.min || *value > permitted.max)
    return fmt::format("{} is out of range{}", value_text(node), slip(*value, permitted, unit));
  return std::nullopt;
}

bool same_word(std::string_view one, std::string_view other) {
  return in_small_letters(one) == in_small_letters(other);
}

/// That a word is not among those permitted, and which it may have been meant to be.
std::string wrong_word(const TomlNode& node, const std::vector<std::string_view>& words) {
  const auto* text = std::get_if<std::string>(&node.value);
  const auto nearest = text == nullptr ? std::string() : nearest_permitted(*text, words);
  return fmt::format("{} is none of the permitted words{}", value_text(node),
                     nearest.empty() ? nearest : fmt::format("; is \"{}\" meant?", nearest));
}

/// Place of the node's word among the words, capital or small.
std::optional<std::size_t> place_of(const TomlNode& node, const std::vector<std::string_view>& words) {
  const auto* text = std::get_if<std::string>(&node.value);
  if (text == nullptr) return std::nullopt;
  const auto at =
      std::find_if(words.begin(), words.end(), [&](std::string_view word) { return same_word(word, *text); });
  return at == words.end() ? std::nullopt : std::optional<std::size_t>(at - words.begin());
}

class Taking {
 public:
  Taking(const TomlNode& node, FileAnswers& answers) : node_(node), answers_(answers) {}

  Complaint operator()(const NumberRule& rule) const {
    if (auto complaint = number_complaint(node_, rule.permitted, rule.unit)) return complaint;
    rule.set(answers_, rule.unit.to_base(*number_in(node_)));
    return std::nullopt;
  }

  Complaint operator()(const NumberOrNoneRule& rule) const {
    if (std::holds_alternative<std::string>(node_.value)) {
      if (!place_of(node_, {none_there})) return wrong_word(node_, {none_there});
      rule.set(answers_, std::nullopt);
      return std::nullopt;
    }
    if (auto complaint = number_complaint(node_, rule.permitted, rule.unit)) return complaint;
    rule.set(answers_, rule.unit.to_base(*number_in(node_)));
    return std::nullopt;
  }

  Complaint operator()(const WholeNumberRule& rule) const {
    const auto* value = std::get_if<std::int64_t>(&node_.value);
    if (value == nullptr)
      return fmt::format("{} is {}, not a whole number", value_text(node_), kind_text(node_));
    if (*value < rule.least || *value > rule.most)
      return fmt::format("{} is out of range", value_text(node_));
    rule.set(answers_, static_cast<int>(*value));
    return std::nullopt;
  }

  Complaint operator()(const NumbersRule& rule) const {
    const auto* list = std::get_if<TomlNode::List>(&node_.value);
    if (list == nullptr) return fmt::format("{} is {}, not a list", value_text(node_), kind_text(node_));
    if (list->size() < rule.least || list->size() > rule.most)
      return fmt::format("{} has {} values", value_text(node_), list->size());
    std::vector<double> values;
    for (const auto& node : *list) {
      if (auto complaint = number_complaint(node, rule.permitted, rule.unit)) return complaint;
      values.push_back(rule.unit.to_base(*number_in(node)));
    }
    rule.set(answers_, values);
    return std::nullopt;
  }

  Complaint operator()(const WordRule& rule) const {
    const auto place = place_of(node_, rule.words);
    if (!place) return wrong_word(node_, rule.words);
    rule.set(answers_, *place);
    return std::nullopt;
  }

  Complaint operator()(const WordsRule& rule) const {
    const auto* list = std::get_if<TomlNode::List>(&node_.value);
    if (list == nullptr) return fmt::format("{} is {}, not a list", value_text(node_), kind_text(node_));
    if (list->empty() || list->size() > rule.most)
      return fmt::format("{} has {} values", value_text(node_), list->size());
    std::vector<std::size_t> places;
    for (const auto& node : *list) {
      const auto place = place_of(node, rule.words);
      if (!place) return wrong_word(node, rule.words);
      places.push_back(*place);
    }
    rule.set(answers_, places);
    return std::nullopt;
  }

  Complaint operator()(const TickRule& rule) const {
    const auto place = place_of(node_, {"no", "yes"});
    const auto* value = std::get_if<bool>(&node_.value);
    if (!place && value == nullptr) return fmt::format("{} is neither yes nor no", value_text(node_));
    rule.set(answers_, place ? *place == 1 : *value);
    return std::nullopt;
  }

  Complaint operator()(const TextRule& rule) const {
    const auto* text = std::get_if<std::string>(&node_.value);
    if (text == nullptr) return fmt::format("{} is {}, not text", value_text(node_), kind_text(node_));
    if (text->size() > rule.most_bytes)
      return fmt::format("{} has {} bytes", value_text(node_), text->size());
    if (rule.complaint)
      if (auto complaint = rule.complaint(*text)) return fmt::format("{}: {}", value_text(node_), *complaint);
    rule.set(answers_, *text);
    return std::nullopt;
  }

  Complaint operator()(const CompassRule& rule) const {
    if (const auto* text = std::get_if<std::string>(&node_.value)) {
      const auto bearing = compass_bearing_deg(in_small_letters(*text));
      if (!bearing) return wrong_word(node_, compass_words());
      rule.set(answers_, *bearing);
      return std::nullopt;
    }
    if (auto complaint = number_complaint(node_, {0.0, 360.0}, degrees)) return complaint;
    rule.set(answers_, *number_in(node_));
    return std::nullopt;
  }

 private:
  const TomlNode& node_;
  FileAnswers& answers_;
};

/// The word as the field table spells it.
std::string spelled(const TomlNode& node, const std::vector<std::string_view>& words) {
  return std::string(words.at(place_of(node, words).value()));
}

GivenScalar number_as_typed(const TomlNode& node) {
  if (const auto* whole = std::get_if<std::int64_t>(&node.value)) return *whole;
  return number_in(node).value();
}

template <class One>
std::vector<GivenScalar> each_of(const TomlNode& node, One one) {
  std::vector<GivenScalar> all;
  for (const auto& inner : std::get<TomlNode::List>(node.value)) all.push_back(one(inner));
  return all;
}

/// Value, unit and basis by the kind of field, for a node that Taking has accepted.
class AsGiven {
 public:
  explicit AsGiven(const TomlNode& node) : node_(node) {}

  GivenValue operator()(const NumberRule& rule) const { return measured(number_as_typed(node_), rule.unit); }
  GivenValue operator()(const NumberOrNoneRule& rule) const {
    if (std::holds_alternative<std::string>(node_.value)) return described(std::string(none_there));
    return measured(number_as_typed(node_), rule.unit);
  }
  GivenValue operator()(const WholeNumberRule&) const { return measured(number_as_typed(node_), plain); }
  GivenValue operator()(const NumbersRule& rule) const {
    GivenValue given = measured({}, rule.unit);
    given.value = each_of(node_, number_as_typed);
    return given;
  }
  GivenValue operator()(const WordRule& rule) const { return described(spelled(node_, rule.words)); }
  GivenValue operator()(const WordsRule& rule) const {
    GivenValue given;
    given.value =
        each_of(node_, [&](const TomlNode& word) { return GivenScalar(spelled(word, rule.words)); });
    return given;
  }
  GivenValue operator()(const TickRule&) const {
    const auto* value = std::get_if<bool>(&node_.value);
    if (value != nullptr) return described(*value ? "yes" : "no");
    return described(spelled(node_, {"no", "yes"}));
  }
  GivenValue operator()(const TextRule&) const { return described(std::get<std::string>(node_.value)); }
  GivenValue operator()(const CompassRule&) const {
    const auto* word = std::get_if<std::string>(&node_.value);
    return word != nullptr ? described(in_small_letters(*word)) : measured(number_as_typed(node_), degrees);
  }

 private:
  static GivenValue measured(GivenScalar value, Unit unit) {
    return {{}, {}, std::move(value), unit.symbol, Basis::measured};
  }
  static GivenValue described(std::string words) {
    return {{}, {}, GivenScalar(std::move(words)), {}, Basis::described};
  }

  const TomlNode& node_;
};

/// Other ways to say "not known"; a free text may say what it likes.
bool is_another_not_known(const Field& field, const TomlNode& node) {
  const auto* text = std::get_if<std::string>(&node.value);
  const auto* rule = std::get_if<TextRule>(&field.rule);
  const bool free_text = rule != nullptr && !rule->complaint;
  return text != nullptr && !free_text && means_not_known(*text);
}

}  // namespace

bool is_not_known(const TomlNode& node) {
  const auto* text = std::get_if<std::string>(&node.value);
  return text != nullptr && same_word(*text, not_known);
}

GivenValue given_value(const Field& field, const TomlNode& node) {
  GivenValue given = std::visit(AsGiven(node), field.rule);
  given.key = field.path();
  return given;
}

Complaint take_value(const Field& field, const TomlNode& node, FileAnswers& answers) {
  if (is_not_known(node)) {
    if (field.need == Need::required)
      return "\"not known\" is no answer here: nothing can be worked out without it";
    return std::nullopt;
  }
  if (is_another_not_known(field, node))
    return field.need == Need::required
               ? value_text(node) + " is no answer here: nothing can be worked out without it"
               : value_text(node) + ": write \"not known\"";
  return std::visit(Taking(node, answers), field.rule);
}

}  // namespace dewgap::tools
