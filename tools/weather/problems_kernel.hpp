// What is wrong with a weather file, gathered until it is told.
#pragma once

#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "tools/job/reader.hpp"

namespace dewgap::tools::weather {

class Problems {
 public:
  explicit Problems(std::string_view file_name) : file_name_(file_name) {}

  void add(TextMark mark, std::string what);
  /// Of one kind only the first three are told, and how many more there are.
  void add_of_kind(const std::string& kind, TextMark mark, std::string what);
  bool empty() const { return problems_.empty(); }
  std::size_t count() const { return problems_.size(); }
  /// A Failure of bad input when there is any problem.
  void stop_if_any() const;

 private:
  std::string_view file_name_;
  std::vector<FileProblem> problems_;
  struct Kind {
    std::size_t count = 0;
    std::size_t last_told = 0;
  };
  std::map<std::string, Kind> kinds_;
};

}  // namespace dewgap::tools::weather
