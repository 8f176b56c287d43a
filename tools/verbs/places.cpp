#include "dewgap/climate/places.hpp"

#include <fmt/format.h>

#include <CLI/CLI.hpp>

#include "tools/answer/plain_text.hpp"
#include "tools/files.hpp"
#include "tools/verbs/verbs.hpp"

namespace dewgap::tools {

void PlacesVerb::set_up(CLI::App&) {}

void PlacesVerb::run(Streams streams) const {
  std::string text;
  const auto position = [](double angle_deg, char above, char below) {
    return fmt::format("{:.2f} {}", angle_deg < 0.0 ? -angle_deg : angle_deg,
                       angle_deg < 0.0 ? below : above);
  };
  for (const auto& place : places()) {
    const auto coldest = static_cast<std::size_t>(coldest_month(place));
    text += fmt::format("{}: {}, {:.0f} m, {} {}; coldest month {:.1f} C\n", place.key, place.name,
                        place.elevation_m, position(place.latitude_deg, 'N', 'S'),
                        position(place.longitude_deg, 'E', 'W'), place.months.at(coldest).mean_C);
    const auto source = fmt::format("{}; {} ({})", place.source, place.period, place.status);
    for (const auto& line : wrapped(source, 100, "  ", "  ")) text.append(line).append("\n");
  }
  write_whole("-", text, streams);
}

}  // namespace dewgap::tools
