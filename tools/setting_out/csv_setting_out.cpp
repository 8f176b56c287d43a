#include <fmt/format.h>

#include "tools/answer/plain_text.hpp"
#include "tools/drawing/svg.hpp"
#include "tools/setting_out/csv_cell.hpp"
#include "tools/setting_out/setting_out.hpp"

namespace dewgap::tools {
namespace {

std::string number(double value) {
  return value > 0.0 ? svg_number(value) : std::string();
}

std::string row(const std::vector<std::string>& cells) {
  std::string line;
  for (const auto& cell : cells) line += (line.empty() ? "" : ",") + cell;
  return line + "\r\n";
}

std::string mark_row(const WindowToSet& window, const Hole& hole) {
  const bool clips = window.plan->fixing == FixingKind::turn_clips;
  auto note = std::string(clips ? "clip's screw outside the edge" : "screw inside the edge");
  if (hole.tight) note += "; the one tight screw";
  if (hole.pilot_depth_mm <= 0.0) note += "; depth not measured";
  return row({csv_text(window.title(200)), fmt::format("fixing {}", hole.number),
              std::string(name_of(hole.member)), fmt::format("{}", hole.along_mm), svg_number(hole.offset_mm),
              number(hole.diameter_mm), number(hole.slot_length_mm), number(hole.pilot_diameter_mm),
              number(hole.pilot_depth_mm), csv_text(note)});
}

std::string break_row(const WindowToSet& window, const TapeBreak& one, std::size_t place) {
  return row({csv_text(window.title(200)), fmt::format("tape break {}", place),
              std::string(name_of(one.member)), svg_number(one.from_mm), "", "", "", "", "",
              csv_text(fmt::format("no tape from here to {} mm", svg_number(one.to_mm)))});
}

/// As a comment above the header, a line each.
std::string why_not(const WindowToSet& window) {
  std::string lines;
  for (const auto& reason : window.reasons)
    lines += fmt::format("# {}, {}: {}\r\n", window.title(60), json_word(window.state), harmless(reason));
  return lines;
}

}  // namespace

std::string csv_text(std::string_view text) {
  auto clean = harmless(text);
  constexpr std::string_view formula_starts = "=+-@|%";
  const auto first = clean.find_first_not_of(" ");
  if (first != std::string::npos && formula_starts.find(clean[first]) != std::string_view::npos)
    clean.insert(0, "'");
  if (clean.find_first_of(",\"\r\n#;'") == std::string::npos) return clean;
  std::string quoted = "\"";
  for (const char character : clean) quoted += character == '"' ? "\"\"" : std::string(1, character);
  return quoted + "\"";
}

std::string csv_setting_out(const JobToSet& job) {
  std::string text;
  for (const auto& window : job.windows) text += why_not(window);
  text += "window,item,member,along_mm,offset_mm,diameter_mm,slot_mm,pilot_mm,depth_mm,note\r\n";
  for (const auto& window : job.windows) {
    if (!window.plan) continue;
    for (const auto& hole : window.plan->holes) text += mark_row(window, hole);
    for (std::size_t i = 0; i < window.plan->tape_breaks.size(); ++i)
      text += break_row(window, window.plan->tape_breaks[i], i + 1);
  }
  return text;
}

}  // namespace dewgap::tools
