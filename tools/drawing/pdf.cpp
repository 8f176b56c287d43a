#include "tools/drawing/pdf.hpp"

#include <fcntl.h>
#include <fmt/format.h>
#include <spawn.h>
#include <sys/wait.h>
#include <unistd.h>

#include <array>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <optional>
#include <system_error>

#include "tools/answer/plain_text.hpp"
#include "tools/failure.hpp"

extern char** environ;

namespace dewgap::tools {
namespace {

namespace fs = std::filesystem;

struct FoundProgram {
  std::string path;
  const PdfProgram* program = nullptr;
};

std::optional<FoundProgram> found_program(const std::vector<PdfProgram>& programs,
                                          const std::string& search_path) {
  for (const auto& program : programs) {
    std::size_t start = 0;
    while (start < search_path.size()) {
      const auto end = std::min(search_path.find(':', start), search_path.size());
      const auto folder = search_path.substr(start, end - start);
      const auto path = folder + "/" + program.name;
      if (folder.starts_with('/') && ::access(path.c_str(), X_OK) == 0 && fs::is_regular_file(path))
        return FoundProgram{path, &program};
      start = end + 1;
    }
  }
  return std::nullopt;
}

/// A folder of its own for the work, which goes away with it.
class WorkFolder {
 public:
  WorkFolder() {
    std::string form = (fs::temp_directory_path() / "dewgap-pdf-XXXXXX").string();
    if (::mkdtemp(form.data()) == nullptr) throw std::runtime_error("no temporary folder can be made");
    path_ = form;
  }
  ~WorkFolder() {
    std::error_code ignored;
    fs::remove_all(path_, ignored);
  }
  WorkFolder(const WorkFolder&) = delete;
  WorkFolder& operator=(const WorkFolder&) = delete;
  fs::path path() const { return path_; }

 private:
  fs::path path_;
};

/// Runs a program without a shell, its output thrown away; true when it ends well.
bool runs_well(std::vector<std::string> arguments) {
  std::vector<char*> pointers;
  for (auto& argument : arguments) pointers.push_back(argument.data());
  pointers.push_back(nullptr);
  posix_spawn_file_actions_t actions;
  if (posix_spawn_file_actions_init(&actions) != 0) return false;
  posix_spawn_file_actions_addopen(&actions, STDIN_FILENO, "/dev/null", O_RDONLY, 0);
  posix_spawn_file_actions_addopen(&actions, STDOUT_FILENO, "/dev/null", O_WRONLY, 0);
  posix_spawn_file_actions_addopen(&actions, STDERR_FILENO, "/dev/null", O_WRONLY, 0);
  pid_t child = 0;
  const int started = posix_spawn(&child, pointers.front(), &actions, nullptr, pointers.data(), environ);
  posix_spawn_file_actions_destroy(&actions);
  if (started != 0) return false;
  int status = 0;
  return ::waitpid(child, &status, 0) == child && WIFEXITED(status) && WEXITSTATUS(status) == 0;
}

std::vector<std::string> command(const FoundProgram& found, const fs::path& folder) {
  std::vector<std::string> arguments{found.path};
  for (const auto& argument : found.program->arguments) {
    if (argument == "HTML")
      arguments.push_back((folder / "page.html").string());
    else if (argument == "--print-to-pdf=PDF")
      arguments.push_back("--print-to-pdf=" + (folder / "page.pdf").string());
    else if (argument == "--user-data-dir=FOLDER")
      arguments.push_back("--user-data-dir=" + (folder / "profile").string());
    else
      arguments.push_back(argument == "PDF" ? (folder / "page.pdf").string() : argument);
  }
  // As the system's first user the browser refuses to start in its sandbox.
  if (found.program->name == "chromium" && ::geteuid() == 0)
    arguments.insert(arguments.begin() + 1, "--no-sandbox");
  return arguments;
}

std::string names_of(const std::vector<PdfProgram>& programs) {
  std::string names;
  for (const auto& program : programs) names.append(names.empty() ? "" : " or ").append(program.name);
  return names;
}

/// The file's bytes; empty when it cannot be read.
std::string bytes_of(const fs::path& path) {
  std::ifstream file(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(file), {}};
}

}  // namespace

const std::vector<PdfProgram>& browser_programs() {
  static const std::vector<PdfProgram> programs{
      {"chromium",
       {"--headless", "--disable-gpu", "--no-first-run", "--disable-dev-shm-usage",
        "--disable-background-networking", "--disable-sync", "--host-resolver-rules=MAP * ~NOTFOUND",
        "--user-data-dir=FOLDER", "--no-pdf-header-footer", "--print-to-pdf=PDF", "HTML"}}};
  return programs;
}

const std::vector<PdfProgram>& paper_programs() {
  static const std::vector<PdfProgram> programs{{"weasyprint", {"HTML", "PDF"}}, browser_programs().front()};
  return programs;
}

std::string program_search_path() {
  const char* path = std::getenv("PATH");
  return path == nullptr ? std::string() : std::string(path);
}

std::string pdf_of_page(std::string_view verb, std::string_view html, const std::vector<PdfProgram>& programs,
                        const std::string& search_path) {
  const auto found = found_program(programs, search_path);
  if (!found)
    throw Failure(ExitCode::file_trouble,
                  fmt::format("dewgap {}: PDF is made by {}, which is not installed.\n"
                              "Install it, or leave --pdf out and print the HTML from a browser.\n",
                              verb, names_of(programs)));
  const WorkFolder folder;
  {
    std::ofstream page(folder.path() / "page.html", std::ios::binary);
    page << html;
  }
  const bool well = runs_well(command(*found, folder.path()));
  auto made = well ? bytes_of(folder.path() / "page.pdf") : std::string();
  if (made.empty())
    throw Failure(
        ExitCode::file_trouble,
        fmt::format("dewgap {}: {} made no PDF; leave --pdf out and print the HTML from a browser.\n", verb,
                    found->program->name));
  return made;
}

}  // namespace dewgap::tools
