// Whole small files in and out; "-" is stdin or stdout.
#pragma once

#include <string>
#include <string_view>

#include "tools/streams.hpp"

namespace dewgap::tools {

/// Name of a file for people: "stdin" for "-".
std::string file_title(const std::string& path);

/// The whole file, in constant memory: at most most_input_bytes and one more byte are read, and a file with
/// more is a Failure of bad input. A file that is missing, unreadable or a folder is a Failure of file
/// trouble.
std::string read_whole(const std::string& path, Streams streams);

/// All of the text or nothing: it goes to a neighbour file first, which then takes the name. "-" writes to
/// stdout.
void write_whole(const std::string& path, std::string_view text, Streams streams);

/// True when both names mean one existing file.
bool same_file(const std::string& one, const std::string& other);

}  // namespace dewgap::tools
