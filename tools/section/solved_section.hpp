// A section file with what was solved of it.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "dewgap/window/section_result.hpp"
#include "tools/section/section_file.hpp"

namespace dewgap::tools {

struct SolvedSection {
  SectionFile file;
  SectionOptions options;
  SectionResult result;
};

/// Least temperature factor of the room sides; nothing where rooms or outdoors have no one temperature, or
/// have the same, or no side is a room.
std::optional<double> least_temperature_factor(const SolvedSection& solved);

/// Share of saturation of the room's air at which mist begins on its coldest face; nothing where no face is
/// colder than the room, or outside -40 to 60 C.
std::optional<double> misting_humidity(const SolvedSection& solved);

/// Names of the items at a point: "bottom rail, glass"; of two or more where they meet.
std::string items_at(const SolvedSection& solved, SectionPoint point);

/// Names of the sides to rooms, in the order of the file.
std::vector<std::string> room_sides(const SectionFile& file);

/// What an item is made of, by its name.
const ItemLook& look_of(const SolvedSection& solved, const std::string& item);

/// "x 44, y 12.5 mm", to a tenth.
std::string place_text(SectionPoint point);

}  // namespace dewgap::tools
