// The fitter's setting-out sheet of a job, in every form in which it is printed.
//
// A window on HOLD has its open questions in the place of everything else; one that is left has the reason;
// one that cannot be done as measured has what stands against it, and its opening drawn without a sheet or a
// mark. None of them is drilled or on a cut list.
#pragma once

#include <string>

#include "tools/setting_out/job_to_set.hpp"

namespace dewgap::tools {

/// One HTML file of A4 pages, black and white.
std::string html_setting_out(const JobToSet& job);

/// The drawings alone, below each other, as one SVG file: sheet, section and cut list, or the reason why
/// there is none.
std::string svg_setting_out(const JobToSet& job);

/// A line for each mark and each break in the tape: window,item,member,along_mm,offset_mm,diameter_mm,
/// slot_mm,pilot_mm,depth_mm,note. Quoted as RFC 4180 has it; text that a spreadsheet would take for a
/// formula starts with an apostrophe. Why a window has no line is a comment above the header. along_mm is
/// from the left end (top, bottom) or the bottom end (left, right), offset_mm from the sheet's edge: outside
/// it for clips, inside it for screws. An empty cell: none, or not measured.
std::string csv_setting_out(const JobToSet& job);

std::string json_setting_out(const JobToSet& job);

}  // namespace dewgap::tools
