// A folder of its own for a test's files, which goes away with the test.
#pragma once

#include <unistd.h>

#include <filesystem>
#include <fstream>
#include <string>

namespace dewgap::test {

class Folder {
 public:
  Folder()
      : path_(std::filesystem::temp_directory_path() / ("dewgap_tools_test_" + std::to_string(::getpid()))) {
    std::filesystem::create_directories(path_);
  }
  ~Folder() { std::filesystem::remove_all(path_); }
  Folder(const Folder&) = delete;
  Folder& operator=(const Folder&) = delete;

  std::string file(const std::string& name) const { return (path_ / name).string(); }
  /// Puts a file there and returns its path.
  std::string with(const std::string& name, const std::string& text) const {
    std::ofstream(file(name), std::ios::binary) << text;
    return file(name);
  }

 private:
  std::filesystem::path path_;
};

}  // namespace dewgap::test
