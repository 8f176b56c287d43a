#include "dewgap/numerics/parallel.hpp"

#include <algorithm>
#include <atomic>
#include <exception>
#include <system_error>
#include <thread>
#include <vector>

namespace dewgap::numerics {

void for_each_index(std::size_t count, const std::function<void(std::size_t)>& work) {
  std::vector<std::exception_ptr> thrown(count);
  std::atomic<std::size_t> next{0};
  const auto take_turns = [&] {
    for (std::size_t i = next++; i < count; i = next++) {
      try {
        work(i);
      } catch (...) {
        thrown[i] = std::current_exception();
      }
    }
  };
  std::vector<std::thread> helpers;
  const std::size_t cores = std::max<std::size_t>(1, std::thread::hardware_concurrency());
  try {
    for (std::size_t i = 1; i < std::min(cores, count); ++i) {
      helpers.emplace_back(take_turns);
    }
  } catch (const std::system_error&) {
    // No more threads to be had: those that there are do the work.
  }
  take_turns();
  for (auto& helper : helpers) {
    helper.join();
  }
  for (const auto& exception : thrown) {
    if (exception) {
      std::rethrow_exception(exception);
    }
  }
}

}  // namespace dewgap::numerics
