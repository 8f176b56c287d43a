#include "tools/weather/site_facts_kernel.hpp"

#include <fmt/format.h>

#include <array>

#include "dewgap/errors.hpp"
#include "tools/answer/plain_text.hpp"
#include "tools/job/spelling.hpp"

namespace dewgap::tools::weather {
namespace {

constexpr std::size_t most_source_columns = 400;

struct Fact {
  std::string_view key;
  std::optional<double> SiteFacts::*value;
  std::optional<double> WeatherFileOptions::*option;
  PermittedRange permitted;
  std::string_view unit;
};
constexpr std::array facts{
    Fact{"latitude_deg", &SiteFacts::latitude_deg, &WeatherFileOptions::latitude_deg, {-90.0, 90.0}, "deg"},
    Fact{"longitude_deg",
         &SiteFacts::longitude_deg,
         &WeatherFileOptions::longitude_deg,
         {-180.0, 180.0},
         "deg, east positive"},
    Fact{"utc_offset_h", &SiteFacts::utc_offset_h, &WeatherFileOptions::utc_offset_h, {-14.0, 14.0}, "h"},
    Fact{"elevation_m", &SiteFacts::elevation_m, &WeatherFileOptions::elevation_m, {-430.0, 5000.0}, "m"}};

// A fact that was told stays what it was, or 0, so that it is not missing as well.
void read_fact(const Fact& fact, TextMark mark, std::string_view text, SiteFacts& site, Problems& problems) {
  const auto number = number_of(text);
  const bool inside = number && *number >= fact.permitted.min && *number <= fact.permitted.max;
  if (!inside)
    problems.add(mark, fmt::format("{}: \"{}\" is {} (permitted: {} to {} {})", fact.key, one_line(text, 40),
                                   number ? "out of range" : "not a number", fact.permitted.min,
                                   fact.permitted.max, fact.unit));
  else if (site.*fact.value && *(site.*fact.value) != *number)
    problems.add(mark, fmt::format("{}: is given twice, and the two differ", fact.key));
  site.*fact.value = inside ? *number : (site.*fact.value).value_or(0.0);
}

void read_comment(const Row& comment, SiteFacts& site, Problems& problems) {
  const auto text = comment.cells.front().text;
  const auto colon = text.find(':');
  if (colon == std::string_view::npos) return;
  const auto key = in_small_letters(without_blanks(text.substr(0, colon)));
  const auto value = without_blanks(text.substr(colon + 1));
  if (key == "source") site.source = one_line(value, most_source_columns);
  if (key == "latitude_deg") site.latitude_mark = comment.mark_of(0);
  for (const auto& fact : facts)
    if (key == fact.key) read_fact(fact, comment.mark_of(0), value, site, problems);
}

}  // namespace

SiteFacts read_site_facts(const std::vector<Row>& comments, const WeatherFileOptions& options,
                          Problems& problems) {
  SiteFacts site;
  for (const auto& comment : comments) read_comment(comment, site, problems);
  for (const auto& fact : facts) {
    const auto& option = options.*fact.option;
    if (!option) continue;
    require_in_range(*option, fact.permitted, fact.key, fact.unit);
    if (site.*fact.value && *(site.*fact.value) != *option)
      site.notes.push_back(fmt::format("{}: {} was given and goes before the file's {}.", fact.key, *option,
                                       *(site.*fact.value)));
    site.*fact.value = option;
  }
  if (!site.elevation_m) site.notes.push_back("The elevation is not given and is taken as 0 m.");
  return site;
}

void require_site(const SiteFacts& site, Problems& problems) {
  const auto require = [&](const std::optional<double>& value, std::string_view key, std::string_view also) {
    if (!value)
      problems.add(
          {}, fmt::format("{}: missing; write it above the header, such as \"# {}: 10\"{}", key, key, also));
  };
  require(site.latitude_deg, "latitude_deg", "");
  require(site.longitude_deg, "longitude_deg", "");
  require(site.utc_offset_h, "utc_offset_h", ", or with every time (2024-01-31T13:00+01:00)");
}

}  // namespace dewgap::tools::weather
