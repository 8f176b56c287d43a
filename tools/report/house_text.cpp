#include "tools/report/house_text.hpp"

#include <algorithm>
#include <tuple>

#include "tools/job/field.hpp"
#include "tools/report/job_text.hpp"

namespace dewgap::tools {
namespace {

constexpr std::string_view name_key = "job.name";

const Field* field_of(const GivenValue& value) {
  const std::string_view key(value.key);
  const auto dot = key.rfind('.');
  return job_table().find(key.substr(0, dot), key.substr(dot + 1));
}

bool is_safety_answer(const GivenValue& value) {
  const auto* field = field_of(value);
  return field != nullptr && field->need == Need::settle_first;
}

/// Section, reading and key as the field table has them: a file that was written so is written the same
/// again.
std::vector<GivenValue> in_order(std::vector<GivenValue> given) {
  const auto place = [](const GivenValue& value) {
    const auto& table = job_table();
    const auto* field = field_of(value);
    const auto* section = field == nullptr ? nullptr : table.find_section(field->section);
    return std::tuple(
        section == nullptr ? table.sections.size()
                           : static_cast<std::size_t>(section - table.sections.data()),
        value.reading.value_or(0),
        field == nullptr ? table.fields.size() : static_cast<std::size_t>(field - table.fields.data()));
  };
  std::stable_sort(given.begin(), given.end(),
                   [&](const GivenValue& one, const GivenValue& other) { return place(one) < place(other); });
  return given;
}

bool says(const std::vector<GivenValue>& window, const GivenValue& value) {
  return std::any_of(window.begin(), window.end(), [&](const GivenValue& other) {
    return other.key == value.key && other.reading == value.reading && other.value == value.value;
  });
}

class HouseText {
 public:
  HouseText(const std::vector<std::vector<GivenValue>>& given, std::string_view house_name)
      : house_name_(house_name) {
    for (const auto& window : given) given_.push_back(in_order(window));
  }

  std::string text() const {
    auto text = job_text(shared());
    for (const auto& window : given_) text += window_text(window);
    return text;
  }

 private:
  bool is_shared(const GivenValue& value) const {
    if (value.reading || value.key == name_key || is_safety_answer(value)) return false;
    return std::all_of(given_.begin(), given_.end(), [&](const auto& window) { return says(window, value); });
  }

  /// A house that [house] does not name has its name from [job].
  std::vector<GivenValue> shared() const {
    std::vector<GivenValue> list;
    for (const auto& value : given_.front())
      if (is_shared(value)) list.push_back(value);
    const bool is_named = std::any_of(list.begin(), list.end(),
                                      [](const GivenValue& value) { return value.key == "house.name"; });
    if (!is_named && !house_name_.empty())
      list.insert(list.begin(),
                  {std::string(name_key), {}, GivenScalar(std::string(house_name_)), {}, Basis::described});
    return list;
  }

  std::string window_text(const std::vector<GivenValue>& window) const {
    std::vector<GivenValue> own;
    for (auto value : window) {
      if (is_shared(value)) continue;
      const bool is_name = value.key == name_key;
      value.key = is_name ? "windows.name" : "windows." + value.key;
      if (is_name)
        own.insert(own.begin(), value);
      else
        own.push_back(value);
    }
    const auto text = job_text(own);  // begins with [windows], the name's section
    return "\n[" + text.substr(0, text.find('\n')) + "]" + text.substr(text.find('\n'));
  }

  std::vector<std::vector<GivenValue>> given_;
  std::string_view house_name_;
};

}  // namespace

std::string house_text(const std::vector<std::vector<GivenValue>>& given, std::string_view house_name) {
  return HouseText(given, house_name).text();
}

}  // namespace dewgap::tools
