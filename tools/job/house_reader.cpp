#include "tools/job/house_reader.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <tuple>

#include "tools/job/house_overlay_kernel.hpp"

namespace dewgap::tools {
namespace {

/// Problems of all windows, each once.
class Findings {
 public:
  void add(std::size_t number, const Origin& origin, const std::vector<FileProblem>& problems) {
    for (const auto& problem : problems) {
      const auto place = std::tuple(problem.mark.line, problem.mark.column, problem.what);
      const auto [at, is_new] = index_.emplace(place, found_.size());
      if (is_new) found_.push_back({problem, !origin.owns(problem.mark), {}});
      auto& windows = found_[at->second].windows;
      if (windows.empty() || windows.back() != number) windows.push_back(number);
    }
  }

  std::vector<FileProblem> all(std::size_t window_count) const {
    std::vector<FileProblem> problems;
    for (const auto& found : found_) {
      problems.push_back(found.problem);
      if (found.is_shared && found.windows.size() < window_count)
        problems.back().what += "; so it is in " + list_of(found.windows);
    }
    return problems;
  }

 private:
  struct Found {
    FileProblem problem;
    bool is_shared = false;  ///< its key holds for all windows that have not their own
    std::vector<std::size_t> windows;
  };

  static std::string list_of(const std::vector<std::size_t>& windows) {
    constexpr std::size_t most = 5;
    std::string list;
    for (std::size_t i = 0; i < std::min(most, windows.size()); ++i)
      list += fmt::format("{}windows[{}]", i == 0 ? "" : ", ", windows[i]);
    return windows.size() > most ? list + fmt::format(" and {} more", windows.size() - most) : list;
  }

  std::vector<Found> found_;
  std::map<std::tuple<int, int, std::string>, std::size_t> index_;
};

ReadHouse one_window(const TomlNode::Table& root) {
  auto read = read_job_tree(root, {});
  ReadHouse house;
  house.house = read.answers.house;
  house.problems = std::move(read.problems);
  house.windows.push_back({std::move(read.answers), std::move(read.given)});
  return house;
}

ReadHouse several_windows(HouseTrees trees) {
  ReadHouse house;
  house.has_windows = true;
  Findings findings;
  for (const auto& tree : trees.windows) {
    auto read = read_job_tree(tree.root, tree.origin);
    house.house = read.answers.house;
    house.windows.push_back({std::move(read.answers), std::move(read.given)});
    findings.add(house.windows.size(), tree.origin, read.problems);
  }
  if (house.house.name.empty()) house.house.name = trees.job_name;
  house.problems = std::move(trees.problems);
  for (auto& problem : findings.all(house.windows.size())) house.problems.push_back(std::move(problem));
  sort_by_line(house.problems);
  return house;
}

}  // namespace

ReadHouse read_house(std::string_view text) {
  const TomlText toml = read_toml(text);
  if (toml.fault) return {{}, false, {}, told(*toml.fault)};
  const auto* windows = entry_of(toml.root, "windows");
  return windows == nullptr ? one_window(toml.root) : several_windows(overlaid(toml.root, *windows));
}

}  // namespace dewgap::tools
