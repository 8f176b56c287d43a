// One row of the field table: all that is known of one key of a file, in one place.
//
// The reader, the error messages, the starter file and the list of fields are all made from these rows.
#pragma once

#include <functional>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "dewgap/assessment/rivals.hpp"
#include "dewgap/assessment/survey.hpp"
#include "dewgap/errors.hpp"
#include "tools/job/units.hpp"

namespace dewgap::tools {

/// What a job file says of the house as a whole.
struct HouseFacts {
  std::string name;
  std::optional<double> ventilation_limit_m3_h;  ///< the user's own limit for air lost
};

/// Costs of one window by its name, from the money file; each goes before that of [money].
struct WindowCosts {
  std::string name;
  std::optional<double> sheet;
  RivalCosts rivals;
};

/// What the fields fill in: the survey, and from the money file its terms, the costs of what else could be
/// done and the currency's name for print.
struct FileAnswers {
  Survey survey;
  HouseFacts house;
  MoneyTerms money;
  RivalCosts rival_costs;
  std::vector<WindowCosts> window_costs;
  std::string currency;
};

/// A number in `unit`; `set` gets it in the library's unit. `permitted` is in `unit`.
struct NumberRule {
  Unit unit;
  PermittedRange permitted;
  std::function<void(FileAnswers&, double)> set;
};

struct WholeNumberRule {
  std::string_view counted;  ///< what it counts
  int least = 0;
  int most = 0;
  std::function<void(FileAnswers&, int)> set;
};

/// A number as in NumberRule, or "none": `set` then gets nothing.
struct NumberOrNoneRule {
  Unit unit;
  PermittedRange permitted;
  std::function<void(FileAnswers&, std::optional<double>)> set;
};

/// A list of numbers, `least` to `most` of them.
struct NumbersRule {
  Unit unit;
  PermittedRange permitted;
  std::size_t least = 1;
  std::size_t most = 1;
  std::function<void(FileAnswers&, const std::vector<double>&)> set;
};

/// One of a few words; `set` gets its place among them.
struct WordRule {
  std::vector<std::string_view> words;
  std::function<void(FileAnswers&, std::size_t)> set;
};

/// A list of words, at most `most` of them.
struct WordsRule {
  std::vector<std::string_view> words;
  std::size_t most = 1;
  std::function<void(FileAnswers&, const std::vector<std::size_t>&)> set;
};

/// "yes" or "no"; TOML's true and false are taken too.
struct TickRule {
  std::function<void(FileAnswers&, bool)> set;
};

struct TextRule {
  std::size_t most_bytes = 2000;
  std::function<void(FileAnswers&, const std::string&)> set;
  /// What is wrong with the text, in words; nothing when it is right. May be empty.
  std::function<std::optional<std::string>(const std::string&)> complaint;
  std::string_view permitted;  ///< in words; empty: any text
};

/// A compass word, "north-east", or degrees from north by east.
struct CompassRule {
  std::function<void(FileAnswers&, double)> set;
};

using FieldRule = std::variant<NumberRule, NumberOrNoneRule, WholeNumberRule, NumbersRule, WordRule,
                               WordsRule, TickRule, TextRule, CompassRule>;

enum class Need {
  required,      ///< must be there with a value
  optional,      ///< may be missing or "not known"
  settle_first,  ///< may be missing or "not known": then nobody has answered and the answer is HOLD
};

enum class Asked { short_job, on_request };

struct Field {
  std::string_view section;
  std::string_view key;
  Need need = Need::optional;
  Asked asked = Asked::short_job;
  std::string_view help;     ///< one line
  std::string_view example;  ///< a value as TOML text; figures in it are invented
  FieldRule rule;

  std::string path() const { return std::string(section) + "." + std::string(key); }
};

struct Section {
  std::string_view name;
  std::string_view help;
  std::function<void(FileAnswers&)>
      begin_repeat;  ///< set where [[name]] may occur several times: starts one more
};

/// The sections and fields of one kind of file, in the order in which a starter file shows them.
struct FieldTable {
  std::string_view file_kind;
  std::vector<Section> sections;
  std::vector<Field> fields;

  const Section* find_section(std::string_view name) const;
  const Field* find(std::string_view section, std::string_view key) const;
};

const FieldTable& job_table();
const FieldTable& money_table();

/// The unit as it stands in front of people: "mm", "per cent"; empty for words.
std::string unit_text(const FieldRule& rule);
/// The permitted range or words: `100 to 4000 mm`, `"yes" or "no"`.
std::string permitted_text(const FieldRule& rule);

/// The word that stands for 'nobody has looked'.
inline constexpr std::string_view not_known = "not known";
/// The word that stands for 'somebody has looked, and there is none'.
inline constexpr std::string_view none_there = "none";

}  // namespace dewgap::tools
