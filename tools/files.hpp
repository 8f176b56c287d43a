// Whole small files in and out; "-" is stdin or stdout.
#pragma once

#include <fstream>
#include <string>
#include <string_view>

#include "tools/job/toml_tree.hpp"
#include "tools/streams.hpp"

namespace dewgap::tools {

/// Name of a file for people: "stdin" for "-".
std::string file_title(const std::string& path);

/// A year of hours with a dozen columns takes one to three.
inline constexpr std::size_t most_weather_bytes = 20'000'000;

/// The whole file, in constant memory: at most `most_bytes` and one more byte are read, and a file with more
/// is a Failure of bad input. A file that is missing, unreadable or a folder is a Failure of file trouble.
std::string read_whole(const std::string& path, Streams streams, std::size_t most_bytes = most_input_bytes);

/// All of the text or nothing: it goes to a neighbour file first, which then takes the name. "-" writes to
/// stdout.
void write_whole(const std::string& path, std::string_view text, Streams streams);

/// True when both names mean one existing file.
bool same_file(const std::string& one, const std::string& other);

/// A text that is written while it is being made, so that it need not be held. A file is put in place by
/// `finish`: without it there is none. What goes to stdout is there at once.
class WrittenText {
 public:
  WrittenText(std::string path, Streams streams);
  ~WrittenText();
  WrittenText(const WrittenText&) = delete;
  WrittenText& operator=(const WrittenText&) = delete;

  /// A Failure of file trouble when it cannot be written.
  void write(std::string_view text);
  void finish();

 private:
  std::ostream& stream();

  std::string path_;
  Streams streams_;
  std::string neighbour_;  ///< empty: written in place
  std::ofstream file_;
};

}  // namespace dewgap::tools
