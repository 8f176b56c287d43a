#include "tools/report/job_text.hpp"

#include <fmt/format.h>

#include <map>

namespace dewgap::tools {
namespace {

/// A basic string of TOML.
std::string quoted(const std::string& text) {
  std::string out = "\"";
  for (const char c : text) {
    const auto byte = static_cast<unsigned char>(c);
    if (c == '"' || c == '\\')
      out.append({'\\', c});
    else if (byte < 0x20 || byte == 0x7F)
      out += fmt::format("\\u{:04x}", byte);
    else
      out += c;
  }
  return out + "\"";
}

std::string scalar_text(const GivenScalar& value) {
  if (const auto* whole = std::get_if<std::int64_t>(&value)) return std::to_string(*whole);
  if (const auto* text = std::get_if<std::string>(&value)) return quoted(*text);
  const auto number = fmt::format("{}", std::get<double>(value));
  return number.find_first_of(".en") == std::string::npos ? number + ".0" : number;
}

std::string value_text(const GivenValue& given) {
  if (const auto* one = std::get_if<GivenScalar>(&given.value)) return scalar_text(*one);
  std::string list;
  for (const auto& item : std::get<std::vector<GivenScalar>>(given.value))
    list += (list.empty() ? "" : ", ") + scalar_text(item);
  return "[" + list + "]";
}

struct WrittenSection {
  std::string heading;
  std::string lines;
};

}  // namespace

std::string job_text(const std::vector<GivenValue>& given) {
  std::vector<WrittenSection> sections;
  std::map<std::string, std::size_t> places;
  for (const auto& value : given) {
    const auto dot = value.key.rfind('.');
    const auto section = value.key.substr(0, dot);
    const auto reading = value.reading ? std::to_string(*value.reading) : std::string();
    const auto [place, is_new] = places.try_emplace(section + "#" + reading, sections.size());
    if (is_new) sections.push_back({value.reading ? "[[" + section + "]]" : "[" + section + "]", {}});
    sections[place->second].lines += value.key.substr(dot + 1) + " = " + value_text(value) + "\n";
  }
  std::string text;
  for (const auto& section : sections)
    text += (text.empty() ? "" : "\n") + section.heading + "\n" + section.lines;
  return text;
}

}  // namespace dewgap::tools
