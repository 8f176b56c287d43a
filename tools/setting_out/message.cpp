#include "tools/setting_out/message.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <vector>

#include "tools/answer/figures_text.hpp"
#include "tools/answer/plain_text.hpp"
#include "tools/answer/utf8.hpp"
#include "tools/answer/words.hpp"
#include "tools/setting_out/job_to_set.hpp"

namespace dewgap::tools {
namespace {

constexpr std::size_t longest_name = 40;
constexpr std::size_t longest_part = 150;

/// One character each of the phones' common alphabet; those of it that count double are turned into '?' too.
std::string plain(std::string_view text) {
  constexpr std::string_view count_double = "^{}\\[~]|`";
  const auto clean = harmless(text);
  std::string ascii;
  std::string_view left = clean;
  while (!left.empty()) {
    const auto step = next_character(left);
    const bool known = step.character < 0x7F && count_double.find(left.front()) == std::string_view::npos;
    if (columns_of_character(step.character) > 0) ascii += known ? left.front() : '?';
    left.remove_prefix(step.bytes);
  }
  return ascii;
}

/// Cut at a blank, three dots in the place of the rest.
std::string shortened(std::string_view text, std::size_t most) {
  auto whole = plain(text);
  if (whole.size() <= most) return whole;
  whole.resize(most - 3);
  const auto blank = whole.find_last_of(' ');
  if (blank != std::string::npos && blank > most / 2) whole.resize(blank);
  return whole + "...";
}

std::string headline(const AnsweredJob& job) {
  const auto& assessment = job.assessment;
  const bool provisional = assessment.figures && assessment.figures->provisional;
  const auto& why = assessment.headline == Headline::fit_after && !assessment.after.empty()
                        ? assessment.after.front()
                        : assessment.because;
  return fmt::format("{}{}: {}", name_of(assessment.headline), provisional ? " (provisional)" : "",
                     shortened(why, longest_part));
}

std::string saving(const AnsweredJob& job) {
  const auto& figures = *job.assessment.figures;
  auto text = fmt::format("Saves {} kWh a year", ranged(figures.now_and_with.heat_saved_kWh, 0));
  if (figures.money)
    text += fmt::format(", {} {}", shortened(job.currency, 12), ranged(figures.money->saved_per_year, 0));
  return text + ".";
}

std::string cut(const AnsweredJob& job) {
  AnsweredHouse house;
  house.windows.push_back(job);
  const auto set = job_to_set(house);
  const auto& plan = set.windows.front().plan;
  const auto& after = job.assessment.after;
  if (!plan) {
    const auto& reason = set.windows.front().reasons.front();
    const bool is_told = !after.empty() && after.front() == reason;
    return "Do not cut yet: " + (is_told ? "that comes first." : reason);
  }
  return fmt::format("Cut{} {} mm {}, {} wide x {} high.",
                     plan->sheet_count == 1 ? std::string() : fmt::format(" {} of", plan->sheet_count),
                     figure(plan->thickness_mm, plan->thickness_mm < 1.0 ? 2 : 0),
                     name_of(job.survey.sheet.material), plan->width_mm, plan->height_mm);
}

bool is_told_with_the_cut(const Assessment& assessment, const std::string& step) {
  const auto& against = assessment.figures->cut.against;
  return !against.empty() && against.front().say == step;
}

/// In the order in which they are read; `rank` 0 stays, the highest goes first.
struct Part {
  std::string text;
  int rank = 0;
};

std::vector<Part> parts_of_hold(const AnsweredJob& job) {
  std::vector<Part> parts;
  int rank = 1;
  for (const auto& gate : job.assessment.open_gates)
    parts.push_back({shortened(gate.question, longest_part), rank++});
  parts.push_back({"Don't cut or drill.", 0});
  return parts;
}

std::vector<Part> parts_of_answer(const AnsweredJob& job) {
  std::vector<Part> parts;
  const auto& assessment = job.assessment;
  if (assessment.headline != Headline::leave) {
    parts.push_back({shortened("Tape " + tape_order(assessment.figures->vent), longest_part), 0});
    parts.push_back({saving(job), 3});
    parts.push_back({shortened(cut(job), longest_part), 0});
  } else {
    for (const auto& step : assessment.after) parts.push_back({shortened(step, longest_part), 4});
  }
  for (std::size_t i = 1; assessment.headline == Headline::fit_after && i < assessment.after.size(); ++i)
    if (!is_told_with_the_cut(assessment, assessment.after[i]))
      parts.push_back({"First: " + shortened(assessment.after[i], longest_part), 2});
  if (!assessment.cautions.empty())
    parts.push_back({"Mind: " + shortened(assessment.cautions.front().brief, 70), 1});
  return parts;
}

std::string text_of(const std::string& start, const std::vector<Part>& parts, std::size_t left_out) {
  auto text = start;
  for (const auto& part : parts) text += part.text + "\n";
  return text + (left_out == 0 ? "Full answer: dewgap assess.\n"
                               : fmt::format("{} more and the full answer: dewgap assess.\n", left_out));
}

}  // namespace

std::string message(const AnsweredJob& job) {
  const bool held = job.assessment.headline == Headline::hold || !job.assessment.figures;
  std::string start;
  if (!job.survey.name.empty()) start = shortened(job.survey.name, longest_name) + "\n";
  start += headline(job) + "\n";
  auto parts = held ? parts_of_hold(job) : parts_of_answer(job);
  const auto all = parts.size();
  auto text = text_of(start, parts, 0);
  while (text.size() > most_message_characters) {
    // The last of the highest rank: of several alike the first ones are the most needed.
    const auto least = std::max_element(parts.begin(), parts.end(), [](const Part& one, const Part& other) {
      return one.rank <= other.rank;
    });
    if (least == parts.end() || least->rank == 0) break;
    parts.erase(least);
    text = text_of(start, parts, all - parts.size());
  }
  return text;
}

}  // namespace dewgap::tools
