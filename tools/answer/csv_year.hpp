// A year as a table, by hour or by month. Every column's name has its unit.
#pragma once

#include <string>

#include "tools/answer/examined_year.hpp"

namespace dewgap::tools {

/// Time is when the hour begins, month and day, by the clock of the weather; the first row is the hour in
/// which the sheet goes up. Films, pool, frost and timber are those at the hour's end. Cells of the gap are
/// empty while the sheet is off, timber's where none faces the gap.
std::string hour_header();
/// What the columns and the case are, as comments above the header.
std::string year_comments(const ExaminedYear& year, const GapYearSummary& summary);
std::string hour_line(const GapHourRow& row);

/// A line a month from the one in which the sheet goes up, then one of the year; on HOLD the header alone
/// after the questions.
std::string month_table(const ExaminedYear& year);

/// The questions that hold, as comments.
std::string hold_comments(const Assessment& assessment);

}  // namespace dewgap::tools
