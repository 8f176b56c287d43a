// Processes: element_runs.hpp.
#include "element_runs.hpp"

#include <fcntl.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <sstream>
#include <stdexcept>

namespace dewgap::bench {
namespace {

double seconds_of(const timeval& time) {
  return static_cast<double>(time.tv_sec) + 1e-6 * static_cast<double>(time.tv_usec);
}

[[noreturn]] void become(const std::vector<std::string>& words) {
  std::vector<char*> arguments;
  for (const auto& word : words) {
    arguments.push_back(const_cast<char*>(word.c_str()));
  }
  arguments.push_back(nullptr);
  setenv("OMP_NUM_THREADS", "1", 1);
  setenv("OPENBLAS_NUM_THREADS", "1", 1);
  const int nowhere = open("/dev/null", O_RDWR);
  dup2(nowhere, STDIN_FILENO);
  dup2(nowhere, STDOUT_FILENO);
  dup2(nowhere, STDERR_FILENO);
  execv(arguments.front(), arguments.data());
  _exit(127);
}

}  // namespace

ProcessCost run_process(const std::vector<std::string>& words) {
  std::fflush(stdout);
  const pid_t child = fork();
  if (child == 0) {
    become(words);
  }
  int status = 0;
  rusage used{};
  if (child < 0 || wait4(child, &status, 0, &used) != child || !WIFEXITED(status) ||
      WEXITSTATUS(status) != 0) {
    throw std::runtime_error("did not run to its end: " + words.front());
  }
  return {seconds_of(used.ru_utime) + seconds_of(used.ru_stime),
          static_cast<double>(used.ru_maxrss) / 1024.0};
}

ProcessCost run_elements(const std::string& folder, int repeats, int rung) {
  return run_process({DEWGAP_FREEFEM, "-v", "0", "-nw", DEWGAP_ELEMENTS_SCRIPT, folder,
                      std::to_string(repeats), std::to_string(rung)});
}

std::vector<Rung> read_rungs(const std::string& folder, const std::vector<std::string>& given_kinds) {
  std::vector<Rung> rungs;
  std::ifstream in(folder + "/rungs.txt");
  for (std::string line; std::getline(in, line);) {
    std::istringstream words(line);
    Rung rung;
    if (!(words >> rung.number >> rung.kind >> rung.triangles >> rung.unknowns >> rung.coupling_W_mK >>
          rung.solving_s >> rung.adapting_s)) {
      throw std::runtime_error("rungs.txt has the line '" + line + "'");
    }
    if (rung.kind == "given") {
      rung.kind = given_kinds.at(static_cast<std::size_t>(rung.number));
    }
    rungs.push_back(rung);
  }
  if (rungs.empty()) {
    throw std::runtime_error("no rungs in " + folder);
  }
  return rungs;
}

double own_peak_MB() {
  std::ifstream in("/proc/self/status");
  for (std::string line; std::getline(in, line);) {
    if (line.starts_with("VmHWM:")) {
      return std::strtod(line.c_str() + 6, nullptr) / 1024.0;
    }
  }
  throw std::runtime_error("/proc/self/status does not say VmHWM");
}

}  // namespace dewgap::bench
