#include <fmt/format.h>

#include <CLI/CLI.hpp>

#include "tools/answer/csv_year.hpp"
#include "tools/answer/json_year.hpp"
#include "tools/answer/text_year.hpp"
#include "tools/files.hpp"
#include "tools/verbs/usage.hpp"
#include "tools/verbs/verbs.hpp"

namespace dewgap::tools {
namespace {

constexpr const char* year_footer =
    R"(One plausible case through a year under one way to make the tape, from the hour in which the sheet
  goes up. As a rule a line an hour, CSV; --monthly a page for people; --monthly --csv a line a month;
  --json the months.
Columns: time (month-dayThour, when the hour begins, by the weather's clock); pane_face: the old glass
  towards the gap; pane_film, sheet_film: water and frost on the gap's two faces, and pool: on the sill,
  g per m2 of glass; timber: moisture of the wood at the sill, % of dry mass; air into the gap, l/h;
  heat_through_window: through glass and gap, all hours, incoming air not charged: not the saving; wind:
  at the station, wind_angle 0 onto the window, 180 from behind; sun on the window's plane. Empty: the
  sheet is off; timber: none faces the gap. Lines with # say which case, room and weather it is.
The middle case has every unknown at its middle. It is no forecast; dewgap vent weighs all cases.
Cases are ordered by the sealed gap's margin over its dew point in the coldest month's means, least first;
  the year's wet hours may order them otherwise. Each differs, and the output says its share of the weight.
Hours are written as they are worked out. Files and exit codes: dewgap vent --help.)";

ExaminedYear read_year(const YearVerb& verb, Streams streams) {
  ExaminedYear year;
  if (!verb.option.empty()) year.option = vent_option("year", "--option", verb.option);
  year.options.seed = whole_number({"year", "--seed", 0, UINT64_MAX}, verb.seed, year.options.seed);
  if (!verb.number.empty())
    year.options.plausible_case = whole_number({"year", "--case", 1, plausible_case_count}, verb.number, 1);
  year.job = read_job_files(verb.paths, streams);
  if (auto hold = held(year.job.survey, verb.paths.job)) year.job.assessment = std::move(*hold);
  return year;
}

/// The hours as a table, written while they are worked out; the first line comes with the first hour, so that
/// what is refused leaves nothing behind.
void write_hours(const ExaminedYear& year, const std::optional<HourlyYear>& weather, const std::string& path,
                 Streams streams) {
  std::optional<WrittenText> text;
  std::string above;
  gap_year(
      year.job.survey, year.option, weather, year.options,
      [&](const GapHourRow& row) {
        if (!text) text.emplace(path, streams).write(above + hour_header());
        text->write(hour_line(row));
      },
      [&](const GapYearSummary& summary) { above = year_comments(year, summary); });
  if (text) text->finish();
}

std::string months(ExaminedYear year, const std::optional<HourlyYear>& weather, const YearVerb& verb) {
  if (year.job.assessment.open_gates.empty())
    year.summary = gap_year(year.job.survey, year.option, weather, year.options,
                            [&](const GapHourRow& row) { year.figures.add(row); });
  if (verb.json) return json_year(year);
  return verb.csv ? month_table(year) : text_year(year);
}

}  // namespace

void YearVerb::set_up(CLI::App& verb) {
  // The job is not marked as required here: a missing one would hide an option that is not known.
  verb.add_option("JOB", paths.job, "job file, or - for stdin; dewgap starter prints one")->type_name("FILE");
  verb.add_option("--window", paths.window, window_help)->type_name("NAME");
  verb.add_option("--weather", paths.weather, weather_help)->type_name("FILE");
  verb.add_option("--longest-repair", longest_repair, repair_help)->type_name("H");
  verb.add_option("--option", option,
                  fmt::format("how the tape is made: {}; as a rule sealed", vent_option_words()))
      ->type_name("OPTION");
  verb.add_option(
          "--case", number,
          fmt::format("a plausible case: 1, with the least margin over the dew point, to at most {}, as "
                      "many as differ; as a rule the middle one",
                      plausible_case_count))
      ->type_name("N");
  verb.add_flag("--monthly", monthly, "a page by month");
  auto* as_csv = verb.add_flag("--csv", csv, "a table, also by month");
  verb.add_flag("--json", json, "the months for programs; their form: dewgap schema --year")
      ->excludes(as_csv);
  verb.add_option("--seed", seed, "of the plausible cases, a whole number; as a rule 1")->type_name("N");
  verb.add_option("--output", paths.output, "file for the table; as a rule - for stdout")->type_name("FILE");
  verb.footer(year_footer);
}

void YearVerb::run(Streams streams) const {
  check_paths("year", paths);
  auto year = read_year(*this, streams);
  std::optional<HourlyYear> weather;
  if (auto file = read_weather_file("year", paths, longest_repair, year.job.survey.place, streams)) {
    year.job.weather = used(*file);
    weather = std::move(file->year);
  }
  const auto write = [&] {
    const bool by_hour = !monthly && !json;
    if (by_hour && !year.job.assessment.open_gates.empty())
      write_whole(paths.output, hold_comments(year.job.assessment) + hour_header(), streams);
    else if (by_hour)
      write_hours(year, weather, paths.output, streams);
    else
      write_whole(paths.output, months(std::move(year), weather, *this), streams);
  };
  with_input_of(paths.job, [&] {
    try {
      write();
    } catch (const InvalidInput& error) {
      if (error.field() != "plausible_case") throw;
      bad_usage("year", fmt::format("--case {}: fewer plausible cases of this job differ ({})", number,
                                    error.what()));
    }
  });
}

}  // namespace dewgap::tools
