// Simulated windows: unknowns drawn from the priors, and what their year was like under every option.
#pragma once

#include <cstdint>
#include <filesystem>
#include <functional>
#include <memory>
#include <optional>
#include <vector>

#include "calibration/archetypes.hpp"

namespace dewgap::calibration {

struct BankPlan {
  std::size_t windows = 1250;  ///< of each archetype
  std::uint64_t seed = 1;
  std::size_t threads = 2;
};

/// The windows of one archetype. Those whose balance did not settle are left out.
struct BankPart {
  std::shared_ptr<const Scene> scene;
  std::vector<UnknownValues> samples;
  std::vector<SampleYear> years;
  std::size_t left_out = 0;
};

/// Calls `work(i)` for all i below `count`, spread over threads; the first exception is thrown on.
void in_parallel(std::size_t count, std::size_t threads, const std::function<void(std::size_t)>& work);

/// Runs all windows of a scene.
BankPart simulated(const std::shared_ptr<const Scene>& scene, const BankPlan& plan, std::uint64_t seed);

/// The windows of a scene from a file that save_part wrote. No value: there is none, it is of another plan,
/// or the library gives other years today (its first window is run again).
std::optional<BankPart> saved_part(const std::filesystem::path& file,
                                   const std::shared_ptr<const Scene>& scene, const BankPlan& plan,
                                   std::uint64_t seed);
void save_part(const std::filesystem::path& file, const BankPart& part, const BankPlan& plan,
               std::uint64_t seed);

}  // namespace dewgap::calibration
