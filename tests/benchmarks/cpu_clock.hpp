// Seconds of processor time that this thread has had: what other programs take does not count.
#pragma once

#include <ctime>

namespace dewgap::bench {

inline double cpu_seconds() {
  timespec now{};
  clock_gettime(CLOCK_THREAD_CPUTIME_ID, &now);
  return static_cast<double>(now.tv_sec) + 1e-9 * static_cast<double>(now.tv_nsec);
}

}  // namespace dewgap::bench
