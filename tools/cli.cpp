#include "tools/cli.hpp"

#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <algorithm>
#include <iostream>

#include "dewgap/version.hpp"
#include "tools/answer/plain_text.hpp"
#include "tools/failure.hpp"
#include "tools/job/spelling.hpp"
#include "tools/verbs/message.hpp"
#include "tools/verbs/report.hpp"
#include "tools/verbs/section.hpp"
#include "tools/verbs/setting_out.hpp"
#include "tools/verbs/survey_card.hpp"
#include "tools/verbs/verbs.hpp"

namespace dewgap::tools {
namespace {

constexpr const char* about = R"(Next, for one window:
  dewgap starter > window.toml    a job file: put in what you measured and saw
  dewgap assess window.toml       the answer: fit or not, tape, saving, what to cut
In money too:
  dewgap starter --money > money.toml
  dewgap assess window.toml --money money.toml

The tape alone, over a year of hours, and what the first frosty mornings say of it:
  dewgap vent window.toml
  dewgap starter --readings > mornings.csv
  dewgap frost-check window.toml --readings mornings.csv

To leave with the householder, and to cut and drill from:
  dewgap report window.toml --output report.html
  dewgap setting-out window.toml --output sheet.html

Should a second pane be fitted inside this single-glazed window, how, and will the gap stay dry?)";

int code(ExitCode exit_code) {
  return static_cast<int>(exit_code);
}

struct Verbs {
  AssessVerb assess;
  VentVerb vent;
  FrostCheckVerb frost_check;
  YearVerb year;
  ReportVerb report;
  StarterVerb starter;
  PlacesVerb places;
  SchemaVerb schema;
  SettingOutVerb setting_out;
  SurveyCardVerb survey_card;
  MessageVerb message;
  SectionVerb section;

  void set_up(CLI::App& app) {
    assess.set_up(*app.add_subcommand("assess", "answer for one window"));
    vent.set_up(*app.add_subcommand("vent", "tape all round or breaks, over a year of hours"));
    frost_check.set_up(*app.add_subcommand("frost-check", "what to do after the first frosty mornings"));
    year.set_up(*app.add_subcommand("year", "one plausible case, hour by hour or by month"));
    report.set_up(*app.add_subcommand("report", "what to leave with the householder: HTML, PDF"));
    starter.set_up(*app.add_subcommand("starter", "print a job file to fill in"));
    places.set_up(*app.add_subcommand("places", "list the climates that are carried, with source"));
    schema.set_up(*app.add_subcommand("schema", "print the schema of the JSON answers"));
    setting_out.set_up(*app.add_subcommand("setting-out", "the fitter's sheet: cut, mark, drill, fix"));
    survey_card.set_up(*app.add_subcommand("survey-card", "a page to print and fill in at the window"));
    message.set_up(*app.add_subcommand("message", "the answer short enough for a phone"));
    section.set_up(*app.add_subcommand("section", "a drawn section: its coldest face, heat, isotherms"));
    app.require_subcommand(1);
  }

  void run(const CLI::App& app, Streams streams) const {
    if (app.got_subcommand("assess")) assess.run(streams);
    if (app.got_subcommand("vent")) vent.run(streams);
    if (app.got_subcommand("frost-check")) frost_check.run(streams);
    if (app.got_subcommand("year")) year.run(streams);
    if (app.got_subcommand("report")) report.run(streams);
    if (app.got_subcommand("starter")) starter.run(streams);
    if (app.got_subcommand("places")) places.run(streams);
    if (app.got_subcommand("schema")) schema.run(streams);
    if (app.got_subcommand("setting-out")) setting_out.run(streams);
    if (app.got_subcommand("survey-card")) survey_card.run(streams);
    if (app.got_subcommand("message")) message.run(streams);
    if (app.got_subcommand("section")) section.run(streams);
  }
};

/// The parser would say no more than that a verb is missing.
std::string verb_complaint(const std::vector<std::string>& arguments) {
  const std::vector<std::string> verbs{"assess",  "vent",        "frost-check", "year",
                                       "report",  "setting-out", "message",     "survey-card",
                                       "section", "starter",     "places",      "schema"};
  if (arguments.empty() || arguments.front().starts_with('-'))
    return fmt::format("which verb? {} or {}", fmt::join(verbs.begin(), verbs.end() - 1, ", "), verbs.back());
  const auto nearest = nearest_word(arguments.front(), verbs);
  return one_line(arguments.front(), 40) + " is no verb" +
         (nearest.empty() ? "" : "; nearest known: " + nearest);
}

/// Help and version are results; everything else that stops the parsing is bad usage.
int end_of_parsing(const CLI::App& app, const CLI::ParseError& error,
                   const std::vector<std::string>& arguments, Streams streams) {
  if (error.get_exit_code() == 0) {
    app.exit(error, streams.out, streams.err);
    streams.out.flush();
    return code(streams.out ? ExitCode::computed : ExitCode::file_trouble);
  }
  const auto verbs = app.get_subcommands();
  const auto verb = verbs.empty() ? std::string() : " " + verbs.front()->get_name();
  streams.err << "dewgap" << verb << ": "
              << (verbs.empty() ? verb_complaint(arguments) : harmless(error.what())) << "\nTry dewgap"
              << verb << " --help.\n";
  return code(ExitCode::bad_input);
}

}  // namespace

int run(const std::vector<std::string>& arguments, Streams streams) {
  CLI::App app(about, "dewgap");
  app.footer("Units, kinds of file and exit codes: dewgap assess --help.");
  app.set_version_flag("--version", std::string("dewgap ") + version);
  Verbs verbs;
  verbs.set_up(app);
  try {
    app.parse(std::vector<std::string>(arguments.rbegin(), arguments.rend()));
  } catch (const CLI::ParseError& error) {
    return end_of_parsing(app, error, arguments, streams);
  }
  return exit_code_of([&] { verbs.run(app, streams); }, streams.err);
}

}  // namespace dewgap::tools
