#include "calibration/bank.hpp"

#include <algorithm>
#include <atomic>
#include <exception>
#include <mutex>
#include <thread>

namespace dewgap::calibration {

void in_parallel(std::size_t count, std::size_t threads, const std::function<void(std::size_t)>& work) {
  std::atomic<std::size_t> next{0};
  std::exception_ptr failure;
  std::mutex guard;
  const auto worker = [&]() {
    try {
      for (std::size_t i = next++; i < count; i = next++) {
        work(i);
      }
    } catch (...) {
      const std::lock_guard lock(guard);
      failure = failure ? failure : std::current_exception();
      next = count;
    }
  };
  {
    std::vector<std::jthread> crew;
    for (std::size_t k = 1; k < threads; ++k) {
      crew.emplace_back(worker);
    }
    worker();
  }
  if (failure) {
    std::rethrow_exception(failure);
  }
}

BankPart simulated(const std::shared_ptr<const Scene>& scene, const BankPlan& plan, std::uint64_t seed) {
  const auto samples = draw_samples(beliefs_for(scene->archetype.survey), plan.windows, seed, 1.0);
  std::vector<SampleYear> years(samples.size());
  in_parallel(samples.size(), plan.threads,
              [&](std::size_t i) { years[i] = run_sample_year(scene->year, samples[i]); });
  BankPart part{.scene = scene};
  for (std::size_t i = 0; i < samples.size(); ++i) {
    if (years[i].status == SolveStatus::converged) {
      part.samples.push_back(samples[i]);
      part.years.push_back(years[i]);
    } else {
      ++part.left_out;
    }
  }
  return part;
}

}  // namespace dewgap::calibration
