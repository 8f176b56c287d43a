// Pages of the setting-out sheet.
#pragma once

#include <string>

#include "tools/setting_out/job_to_set.hpp"

namespace dewgap::tools::pages {

/// HTML of one window: one or two pages.
std::string of_window(const WindowToSet& window);
/// The questions, the reason or what stands against it; for a window that is not set out.
std::string of_unset_window(const WindowToSet& window);
/// Cut list drawn on stock sheets, shopping list, and what is left out; for a job with something to cut.
std::string of_job(const JobToSet& job);

std::string heading(const WindowToSet& window);
std::string cautions(const WindowToSet& window);
std::string findings(const WindowToSet& window);

}  // namespace dewgap::tools::pages
