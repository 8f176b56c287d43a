// The report: its document, its page, and that the page says what the document says.
#include <gtest/gtest.h>

#include <algorithm>
#include <nlohmann/json.hpp>
#include <regex>

#include "run_cli.hpp"
#include "tools/report/figure_text.hpp"
#include "tools/report/job_text.hpp"
#include "tools/report/report_html.hpp"
#include "tools/report/safe_json.hpp"

namespace dewgap::test {
namespace {

using Json = nlohmann::ordered_json;

/// Few cases and hours: what is compared is text, not physics.
const std::vector<std::string> short_year{"--samples", "32", "--window-hours", "1500000"};

std::vector<std::string> report_arguments(const std::string& verb, const std::string& job,
                                          std::vector<std::string> more = {}) {
  std::vector<std::string> all{verb, job};
  const bool has_hours = std::find(more.begin(), more.end(), "--window-hours") != more.end();
  all.insert(all.end(), short_year.begin(), has_hours ? short_year.begin() + 2 : short_year.end());
  all.insert(all.end(), more.begin(), more.end());
  return all;
}

std::string out_of(const std::string& verb, const std::string& job, std::vector<std::string> more = {},
                   const std::string& stdin_text = {}) {
  const auto result = run_cli(report_arguments(verb, job, std::move(more)), stdin_text);
  EXPECT_EQ(result.exit_code, 0) << result.err;
  return result.out;
}

const std::string old_sash_job = examples_dir + "/old-sash.toml";
const std::vector<std::string> with_money{"--money", examples_dir + "/money.toml"};

std::vector<std::string> and_json(std::vector<std::string> options) {
  options.emplace_back("--json");
  return options;
}

struct ShownFigure {
  std::string pointer;
  std::string form;
  std::string text;
};

std::vector<ShownFigure> figures_of(const std::string& html) {
  static const std::regex element("data-figure=\"([^\"]*)\" data-form=\"([^\"]*)\">([^<]*)</span>");
  std::vector<ShownFigure> figures;
  for (std::sregex_iterator at(html.begin(), html.end(), element), end; at != end; ++at)
    figures.push_back({(*at)[1], (*at)[2], (*at)[3]});
  return figures;
}

Json document_of(const std::string& job, const std::vector<std::string>& options = {}) {
  return Json::parse(out_of("report", job, and_json(options)));
}

void expect_figures_of(const Json& document, const std::string& html, std::size_t least) {
  const auto figures = figures_of(html);
  EXPECT_GE(figures.size(), least);
  for (const auto& shown : figures) {
    const Json::json_pointer place(shown.pointer);
    ASSERT_TRUE(document.contains(place)) << shown.pointer;
    EXPECT_EQ(shown.text, tools::figure_text(document.at(place), shown.form)) << shown.pointer;
  }
}

void expect_days_and_months(const Json& year) {
  const auto& days = year.at("day_hours");
  ASSERT_EQ(days.size(), 365u);
  for (const auto& day : days) EXPECT_EQ(day.get<std::string>().find_first_not_of("dwf-"), std::string::npos);
  EXPECT_EQ(days.front().get<std::string>().size(), 24u);
  EXPECT_EQ(year.at("months").size(), 12u);
}

TEST(Report, EveryFigureOfThePageIsTheDocuments) {
  const auto document = document_of(old_sash_job, with_money);
  const auto html = out_of("report", old_sash_job, with_money);
  EXPECT_EQ(html, tools::report_html(document)) << "the page is made from the document alone";
  expect_figures_of(document, html, 150);
  EXPECT_EQ(html.find(" width=\"0\""), std::string::npos) << "no part of a drawing is lost";
  for (const auto* one : {"middle", "wetter"}) expect_days_and_months(document.at("year").at(one));
  for (const auto* word : {" src=", "url(http", "@import", "<link", "<iframe", "javascript:"})
    EXPECT_EQ(html.find(word), std::string::npos) << word;
  EXPECT_NE(html.find("<html lang=\"en\">"), std::string::npos);
  EXPECT_NE(html.find("default-src 'none'"), std::string::npos);
}

TEST(Report, AnswerIsThatOfAssess) {
  const auto document = document_of(old_sash_job, with_money);
  EXPECT_EQ(document.at("answer"), Json::parse(out_of("assess", old_sash_job, and_json(with_money))));
}

TEST(Report, IsMadeAgainFromItsOwnRecord) {
  const auto text = out_of("report", old_sash_job, {"--json"});
  const auto job = Json::parse(text).at("run_record").at("job_file").get<std::string>();
  EXPECT_EQ(out_of("report", "-", {"--json"}, job), text);
}

TEST(Report, AHoldHasNoSavingNoCutAndNoHole) {
  const auto job = examples_dir + "/hold-way-out.toml";
  const auto document = Json::parse(out_of("report", job, {"--json"}));
  for (const auto* key :
       {"section", "comfort", "rivals", "year", "frame_moisture", "setting_out", "proposed_holes"})
    EXPECT_FALSE(document.contains(key)) << key;
  const auto html = out_of("report", job);
  for (const auto* word : {"kWh", "Each hole", "Living with it", "<svg"})
    EXPECT_EQ(html.find(word), std::string::npos) << word;
  EXPECT_NE(html.find("Not yet: a safety question is open."), std::string::npos);
  EXPECT_EQ(figures_of(html).size(), 4u) << "form, samples, seed and hours of the record alone";
}

TEST(Report, OnlyPendingConsentShowsHolesAndNotForWork) {
  const auto pending =
      replaced(text_of(old_sash_job), "protection = \"not protected\"", "protection = \"consent pending\"");
  const auto document = Json::parse(out_of("report", "-", {"--json"}, pending));
  EXPECT_EQ(document.at("answer").at("headline"), "hold");
  EXPECT_TRUE(document.at("proposed_holes").at("not_for_work").get<bool>());
  EXPECT_GT(document.at("proposed_holes").at("holes").size(), 4u);
  EXPECT_FALSE(document.contains("setting_out"));
  const auto html = out_of("report", "-", {}, pending);
  EXPECT_NE(html.find("Not for work."), std::string::npos);
  EXPECT_EQ(html.find("kWh"), std::string::npos);
}

TEST(Report, ASecondOpenQuestionHidesTheHolesToo) {
  auto pending =
      replaced(text_of(old_sash_job), "protection = \"not protected\"", "protection = \"consent pending\"");
  pending = replaced(pending, "burning = \"nothing\"", "burning = \"stove\"");
  EXPECT_FALSE(Json::parse(out_of("report", "-", {"--json"}, pending)).contains("proposed_holes"));
  EXPECT_EQ(out_of("report", "-", {}, pending).find("Not for work."), std::string::npos);
}

TEST(Report, ALeaveHasNoCut) {
  const auto document = document_of(examples_dir + "/damp-shower-room.toml");
  EXPECT_EQ(document.at("answer").at("headline"), "leave");
  EXPECT_FALSE(document.contains("setting_out"));
  const auto html = tools::report_html(document);
  expect_figures_of(document, html, 100);
  EXPECT_EQ(html.find("Each hole"), std::string::npos);
}

TEST(Report, AHouseHasAPageOfItsOwnAndAPartForEachWindow) {
  const auto document = document_of(examples_dir + "/house/quince-row.toml", {"--window-hours", "400000"});
  EXPECT_EQ(document.at("windows").size(), document.at("answer").at("windows").size());
  const auto html = tools::report_html(document);
  expect_figures_of(document, html, 300);
  EXPECT_NE(html.find("id=\"house\""), std::string::npos);
  EXPECT_NE(html.find("id=\"window-5\""), std::string::npos);
}

std::string tried_first_part(const std::string& line) {
  const auto job = replaced(text_of(old_sash_job), "[job]\n", "[job]\n" + line);
  const auto html = out_of("report", "-", {"--window-hours", "0"}, job);
  const auto begin = html.find("What was tried first");
  return html.substr(begin, html.find("</ul>", begin) - begin);
}

TEST(Report, SaysWhatWasTriedFirstInTheJobsWords) {
  const auto told = tried_first_part("tried_first = \"Putty & <b>wedges</b>, two winters\"\n");
  EXPECT_NE(told.find("In the words of the job: <bdi>Putty &amp; &lt;b&gt;wedges"), std::string::npos)
      << told;
  EXPECT_EQ(told.find("nobody has said"), std::string::npos);
  for (const auto* line : {"", "tried_first = \"not known\"\n", "tried_first = \" \"\n"}) {
    const auto untold = tried_first_part(line);
    EXPECT_NE(untold.find("nobody has said"), std::string::npos) << untold;
    EXPECT_EQ(untold.find("In the words"), std::string::npos);
  }
  const auto too_long = "[job]\ntried_first = \"" + std::string(401, 'x') + "\"\n";
  const auto refused = run_cli({"report", "-"}, replaced(text_of(old_sash_job), "[job]\n", too_long));
  EXPECT_EQ(refused.exit_code, 2);
  EXPECT_NE(refused.err.find("job.tried_first"), std::string::npos) << refused.err;
}

TEST(FigureText, HasOneFormForEachKind) {
  const Json spread{{"p10", 4.56}, {"p50", 4.94}, {"p90", 5.21}};
  EXPECT_EQ(tools::figure_text(spread, "1"), "4.9 (4.6 to 5.2)");
  EXPECT_EQ(tools::figure_text(spread, "range"), "5 to 5");
  EXPECT_EQ(tools::figure_text(spread, "range1"), "4.6 to 5.2");
  EXPECT_EQ(tools::figure_text(Json{{"p50", 3.0}, {"least", 0.0}, {"greatest", 9.0}}, "0"),
            "3 (all cases: 0 to 9)");
  EXPECT_EQ(tools::figure_text(-0.04, "1"), "0.0");
  EXPECT_EQ(tools::figure_text(0.26, "+1"), "+0.3");
  EXPECT_EQ(tools::figure_text(-0.26, "+1"), "-0.3");
  EXPECT_EQ(tools::figure_text(0.01, "+1"), "0.0");
  EXPECT_EQ(tools::figure_text(0.994, "share"), "over 99 %");
  EXPECT_EQ(tools::figure_text(0.82, "share"), "82 %");
  EXPECT_THROW(tools::figure_text("words", "1"), std::invalid_argument);
  EXPECT_THROW(tools::figure_text(1.0, "9"), std::invalid_argument);
}

TEST(SafeJson, CannotEndItsElementAndReadsBackTheSame) {
  const Json document{{"name", "</script><!-- & \xE2\x80\xA8 \xE2\x80\xA9 \"quoted\""}};
  const auto text = tools::json_for_page(document);
  EXPECT_EQ(text.find_first_of("<>&"), std::string::npos);
  EXPECT_EQ(text.find("\xE2\x80\xA8"), std::string::npos);
  EXPECT_EQ(Json::parse(text), document);
}

TEST(JobText, ReadsBackAsItWas) {
  const std::vector<tools::GivenValue> given{
      {"job.name", {}, tools::GivenScalar{std::string("a \"b\"\\ \n\x01")}, {}, Basis::described},
      {"window.opening_widths_mm",
       {},
       std::vector<tools::GivenScalar>{std::int64_t{903}, 900.5},
       "mm",
       Basis::measured},
      {"room.hygrometer.room_C", 1, tools::GivenScalar{18.0}, "C", Basis::measured},
      {"room.hygrometer.room_C", 2, tools::GivenScalar{1e-7}, "C", Basis::measured}};
  EXPECT_EQ(
      tools::job_text(given),
      "[job]\nname = \"a \\\"b\\\"\\\\ \\u000a\\u0001\"\n\n[window]\nopening_widths_mm = [903, 900.5]\n\n"
      "[[room.hygrometer]]\nroom_C = 18.0\n\n[[room.hygrometer]]\nroom_C = 1e-07\n");
}

}  // namespace
}  // namespace dewgap::test
