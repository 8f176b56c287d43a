// How far long work is, on one line of the terminal that is rewritten in place and cleared at the end.
#pragma once

#include <chrono>
#include <cstddef>
#include <functional>
#include <string>

#include "tools/streams.hpp"

namespace dewgap::tools {

/// Writes to stderr, and only where that is a terminal; blanks and carriage returns only, no colour and no
/// control sequence, so that NO_COLOR has nothing to switch off. At most ten times a second. Cleared by
/// `clear` or when it goes out of scope, before anything else is written.
class ProgressLine {
 public:
  using Clock = std::function<std::chrono::steady_clock::time_point()>;

  /// `unit` is what is counted: "window-hours".
  ProgressLine(Streams streams, std::string unit, Clock now = std::chrono::steady_clock::now);
  ~ProgressLine();
  ProgressLine(const ProgressLine&) = delete;
  ProgressLine& operator=(const ProgressLine&) = delete;

  void show(std::size_t done, std::size_t most);
  void clear();

 private:
  Streams streams_;
  std::string unit_;
  Clock now_;
  std::chrono::steady_clock::time_point next_;
  std::size_t shown_columns_ = 0;
};

}  // namespace dewgap::tools
