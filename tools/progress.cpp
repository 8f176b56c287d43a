#include "tools/progress.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <ostream>

namespace dewgap::tools {
namespace {

constexpr std::chrono::milliseconds between_lines{100};
constexpr std::size_t bar_columns = 20;

/// "[#####               ] 1.3 of at most 5.0 million window-hours"
std::string line_of(std::size_t done, std::size_t most, const std::string& unit) {
  constexpr double million = 1e6;
  const double part = most == 0 ? 0.0 : static_cast<double>(done) / static_cast<double>(most);
  const auto full = static_cast<std::size_t>(std::clamp(part, 0.0, 1.0) * static_cast<double>(bar_columns));
  return fmt::format("[{}{}] {:.1f} of at most {:.1f} million {}", std::string(full, '#'),
                     std::string(bar_columns - full, ' '), static_cast<double>(done) / million,
                     static_cast<double>(most) / million, unit);
}

}  // namespace

ProgressLine::ProgressLine(Streams streams, std::string unit, Clock now)
    : streams_(streams), unit_(std::move(unit)), now_(std::move(now)), next_(now_()) {}

ProgressLine::~ProgressLine() {
  clear();
}

void ProgressLine::show(std::size_t done, std::size_t most) {
  if (!streams_.err_is_terminal || now_() < next_) return;
  next_ = now_() + between_lines;
  const auto line = line_of(done, most, unit_);
  const std::size_t left_over = shown_columns_ > line.size() ? shown_columns_ - line.size() : 0;
  streams_.err << '\r' << line << std::string(left_over, ' ') << std::flush;
  shown_columns_ = line.size();
}

void ProgressLine::clear() {
  if (shown_columns_ == 0) return;
  streams_.err << '\r' << std::string(shown_columns_, ' ') << '\r' << std::flush;
  shown_columns_ = 0;
}

}  // namespace dewgap::tools
