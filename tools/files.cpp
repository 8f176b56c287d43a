#include "tools/files.hpp"

#include <fmt/format.h>

#include <cerrno>
#include <cstring>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <vector>

#include "tools/answer/plain_text.hpp"
#include "tools/failure.hpp"
#include "tools/job/toml_tree.hpp"

namespace dewgap::tools {
namespace {

namespace fs = std::filesystem;

[[noreturn]] void file_trouble(const std::string& path, std::string_view what) {
  throw Failure(ExitCode::file_trouble, fmt::format("{}: {}\n", harmless(file_title(path)), what));
}

std::string read_stream(std::istream& stream, const std::string& path) {
  std::string text(most_input_bytes + 1, '\0');
  stream.read(text.data(), static_cast<std::streamsize>(text.size()));
  text.resize(static_cast<std::size_t>(stream.gcount()));
  if (stream.bad()) file_trouble(path, "cannot be read to its end");
  if (text.size() > most_input_bytes)
    throw Failure(ExitCode::bad_input,
                  fmt::format("{}:1:1: larger than {} bytes; a file of this kind is a few thousand\n",
                              harmless(file_title(path)), most_input_bytes));
  return text;
}

void write_stream(std::ostream& stream, std::string_view text, const std::string& path) {
  stream.write(text.data(), static_cast<std::streamsize>(text.size()));
  stream.flush();
  if (!stream) file_trouble(path, "cannot be written");
}

/// Pipes and devices cannot be replaced by a neighbour.
bool is_replaceable(const std::string& path) {
  std::error_code ignored;
  const auto status = fs::symlink_status(path, ignored);
  return !fs::exists(status) || fs::is_regular_file(status);
}

void write_through_neighbour(const std::string& path, std::string_view text) {
  const std::string neighbour = path + ".part";
  std::error_code error;
  try {
    std::ofstream stream(neighbour, std::ios::binary | std::ios::trunc);
    if (!stream) file_trouble(path, fmt::format("cannot be written: {}", std::strerror(errno)));
    write_stream(stream, text, path);
  } catch (const Failure&) {
    fs::remove(neighbour, error);
    throw;
  }
  fs::rename(neighbour, path, error);
  if (!error) return;
  const std::string why = error.message();
  fs::remove(neighbour, error);
  file_trouble(path, fmt::format("cannot be written: {}", why));
}

}  // namespace

std::string file_title(const std::string& path) {
  return path == "-" ? "stdin" : path;
}

std::string read_whole(const std::string& path, Streams streams) {
  if (path == "-") return read_stream(streams.in, path);
  std::error_code ignored;
  if (fs::is_directory(path, ignored)) file_trouble(path, "is a folder, not a file");
  errno = 0;
  std::ifstream stream(path, std::ios::binary);
  if (!stream) file_trouble(path, fmt::format("cannot be opened: {}", std::strerror(errno)));
  return read_stream(stream, path);
}

void write_whole(const std::string& path, std::string_view text, Streams streams) {
  if (path == "-") {
    write_stream(streams.out, text, "stdout");
  } else if (is_replaceable(path)) {
    write_through_neighbour(path, text);
  } else {
    std::error_code ignored;
    if (fs::is_directory(path, ignored)) file_trouble(path, "is a folder, not a file");
    std::ofstream stream(path, std::ios::binary | std::ios::trunc);
    if (!stream) file_trouble(path, "cannot be written");
    write_stream(stream, text, path);
  }
}

bool same_file(const std::string& one, const std::string& other) {
  if (one == "-" || other == "-") return false;
  std::error_code ignored;
  return one == other || fs::equivalent(one, other, ignored);
}

}  // namespace dewgap::tools
