#include <fmt/format.h>

#include "tools/answer/plain_text.hpp"
#include "tools/drawing/paper.hpp"
#include "tools/setting_out/page_parts.hpp"
#include "tools/setting_out/setting_out.hpp"

namespace dewgap::tools {
namespace {

constexpr std::string_view own_style = R"(
.answer { border-bottom: 0.25mm solid #000; padding-bottom: 4mm; }
.beside { display: flex; flex-wrap: wrap; gap: 0 6mm; }
.beside figure { flex: none; max-width: 100%; }
.beside figcaption { max-width: 110mm; }
.beside div { flex: 1 1 42mm; }
.beside li { font-size: 8.5pt; }
.pair { display: flex; flex-wrap: wrap; gap: 0 8mm; }
.stock { display: flex; flex-wrap: wrap; gap: 4mm; }
.stock figure { margin: 0; }
)";

std::string title_of(const JobToSet& job) {
  if (!job.name.empty()) return "Setting out: " + one_line(job.name, 80);
  return job.windows.size() == 1 ? "Setting out " + job.windows.front().title(80)
                                 : fmt::format("Setting out {} windows", job.windows.size());
}

}  // namespace

std::string html_setting_out(const JobToSet& job) {
  std::string body;
  for (const auto& window : job.windows)
    body += window.state == WorkState::set_out ? pages::of_window(window) : pages::of_unset_window(window);
  if (job.cut_list) body += pages::of_job(job);
  return paper_document({title_of(job), std::string(own_style), body});
}

}  // namespace dewgap::tools
