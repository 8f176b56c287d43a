#include "tools/files.hpp"

#include <fmt/format.h>

#include <cerrno>
#include <cstring>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <utility>

#include "tools/answer/plain_text.hpp"
#include "tools/failure.hpp"

namespace dewgap::tools {
namespace {

namespace fs = std::filesystem;

[[noreturn]] void file_trouble(const std::string& path, std::string_view what) {
  throw Failure(ExitCode::file_trouble, fmt::format("{}: {}\n", harmless(file_title(path)), what));
}

std::string read_stream(std::istream& stream, const std::string& path, std::size_t most_bytes) {
  std::string text(most_bytes + 1, '\0');
  stream.read(text.data(), static_cast<std::streamsize>(text.size()));
  text.resize(static_cast<std::size_t>(stream.gcount()));
  if (stream.bad()) file_trouble(path, "cannot be read to its end");
  if (text.size() > most_bytes)
    throw Failure(ExitCode::bad_input,
                  fmt::format("{}:1:1: larger than {} bytes, more than a file of this kind can be\n",
                              harmless(file_title(path)), most_bytes));
  return text;
}

/// Pipes and devices cannot be replaced by a neighbour.
bool is_replaceable(const std::string& path) {
  std::error_code ignored;
  const auto status = fs::symlink_status(path, ignored);
  return !fs::exists(status) || fs::is_regular_file(status);
}

std::ofstream opened(const std::string& name, const std::string& path) {
  errno = 0;
  std::ofstream stream(name, std::ios::binary | std::ios::trunc);
  if (!stream) file_trouble(path, fmt::format("cannot be written: {}", std::strerror(errno)));
  return stream;
}

void put_in_place(const std::string& neighbour, const std::string& path) {
  std::error_code error;
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

std::string read_whole(const std::string& path, Streams streams, std::size_t most_bytes) {
  if (path == "-") return read_stream(streams.in, path, most_bytes);
  std::error_code ignored;
  if (fs::is_directory(path, ignored)) file_trouble(path, "is a folder, not a file");
  errno = 0;
  std::ifstream stream(path, std::ios::binary);
  if (!stream) file_trouble(path, fmt::format("cannot be opened: {}", std::strerror(errno)));
  return read_stream(stream, path, most_bytes);
}

void write_whole(const std::string& path, std::string_view text, Streams streams) {
  WrittenText written(path, streams);
  written.write(text);
  written.finish();
}

WrittenText::WrittenText(std::string path, Streams streams) : path_(std::move(path)), streams_(streams) {
  if (path_ == "-") return;
  std::error_code ignored;
  if (fs::is_directory(path_, ignored)) file_trouble(path_, "is a folder, not a file");
  if (is_replaceable(path_)) neighbour_ = path_ + ".part";
  file_ = opened(neighbour_.empty() ? path_ : neighbour_, path_);
}

/// What was not finished leaves no file behind.
WrittenText::~WrittenText() {
  if (neighbour_.empty()) return;
  file_.close();
  std::error_code ignored;
  fs::remove(neighbour_, ignored);
}

std::ostream& WrittenText::stream() {
  return path_ == "-" ? streams_.out : file_;
}

void WrittenText::write(std::string_view text) {
  stream().write(text.data(), static_cast<std::streamsize>(text.size()));
  if (!stream()) file_trouble(path_ == "-" ? "stdout" : path_, "cannot be written");
}

void WrittenText::finish() {
  stream().flush();
  if (!stream()) file_trouble(path_ == "-" ? "stdout" : path_, "cannot be written");
  if (neighbour_.empty()) return;
  file_.close();
  put_in_place(std::exchange(neighbour_, {}), path_);
}

bool same_file(const std::string& one, const std::string& other) {
  if (one == "-" || other == "-") return false;
  std::error_code ignored;
  return one == other || fs::equivalent(one, other, ignored);
}

}  // namespace dewgap::tools
