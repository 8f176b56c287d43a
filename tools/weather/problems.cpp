#include <fmt/format.h>

#include <algorithm>
#include <tuple>

#include "tools/answer/plain_text.hpp"
#include "tools/failure.hpp"
#include "tools/weather/problems_kernel.hpp"

namespace dewgap::tools::weather {
namespace {

constexpr std::size_t most_of_a_kind = 3;
constexpr std::size_t most_told = 20;

}  // namespace

void Problems::add(TextMark mark, std::string what) {
  problems_.push_back({mark, std::move(what)});
}

void Problems::add_of_kind(const std::string& kind, TextMark mark, std::string what) {
  auto& of_kind = kinds_[kind];
  ++of_kind.count;
  if (of_kind.count > most_of_a_kind) return;
  of_kind.last_told = problems_.size();
  add(mark, std::move(what));
}

void Problems::stop_if_any() const {
  if (problems_.empty()) return;
  auto told = problems_;
  for (const auto& [name, kind] : kinds_)
    if (kind.count > most_of_a_kind)
      told[kind.last_told].what += fmt::format(" (and {} more like it)", kind.count - most_of_a_kind);
  std::stable_sort(told.begin(), told.end(), [](const FileProblem& a, const FileProblem& b) {
    return std::tie(a.mark.line, a.mark.column) < std::tie(b.mark.line, b.mark.column);
  });
  const std::size_t untold = told.size() - std::min(told.size(), most_told);
  told.resize(told.size() - untold);
  auto lines = problem_lines(file_name_, told);
  if (untold > 0) lines += fmt::format("{}: and {} more\n", harmless(file_name_), untold);
  throw Failure(ExitCode::bad_input, lines);
}

}  // namespace dewgap::tools::weather
