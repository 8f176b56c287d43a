// The fitter's setting-out sheet: what is drawn, what is not on HOLD and LEAVE, and text that stays text.
#include <gtest/gtest.h>

#include <cmath>
#include <filesystem>
#include <nlohmann/json.hpp>

#include "folder.hpp"
#include "hand_made_answer.hpp"
#include "run_cli.hpp"
#include "tools/drawing/pdf.hpp"
#include "tools/failure.hpp"
#include "tools/setting_out/csv_cell.hpp"
#include "tools/setting_out/drawings.hpp"
#include "tools/setting_out/setting_out.hpp"

namespace dewgap::test {
namespace {

using namespace dewgap::tools;

const std::string hostile = "=<script>alert(1)</script>\",'&\xD7\xA9\xD7\x9C " + std::string(460, 'n');

struct Size {
  double width_m;
  double height_m;
};

Survey survey_of(Size size, double face_m) {
  Survey survey;
  survey.name = hostile;
  survey.place.nearest = "london";
  survey.window.opening_widths_m = {size.width_m, size.width_m, size.width_m};
  survey.window.opening_heights_m = {size.height_m, size.height_m, size.height_m};
  survey.window.glass_to_fixing_face_m = {0.032};
  survey.window.fixing_face_m = face_m;
  survey.window.screw_depth_m = 0.030;
  survey.window.kind = WindowKind::fixed_light;
  return survey;
}

AnsweredJob job_of(Size size, double face_m, std::vector<BreaksWanted> breaks) {
  auto job = hand_made_answer();
  job.survey = survey_of(size, face_m);
  SheetPlanInput input;
  input.opening = {job.survey.window.opening_widths_m, job.survey.window.opening_heights_m, std::nullopt};
  input.fixing_face_m = face_m;
  input.screw_depth_m = 0.030;
  input.breaks = std::move(breaks);
  input.load = {0.0, 0.0};
  job.assessment.figures->plan = plan_sheet(input);
  job.assessment.figures->plan->refused.clear();
  job.assessment.figures->cut = cut_check(job.survey, job.assessment.figures->plan);
  return job;
}

AnsweredHouse house_of(AnsweredJob job) {
  AnsweredHouse house;
  house.windows.push_back(std::move(job));
  return house;
}

bool overlap(const Box& one, const Box& other) {
  constexpr double touch = 0.05;
  return one.x + touch < other.x + other.width && other.x + touch < one.x + one.width &&
         one.y + touch < other.y + other.height && other.y + touch < one.y + one.height;
}

void expect_text_is_clear(const SvgDrawing& drawing) {
  const auto& boxes = drawing.text_boxes();
  for (std::size_t i = 0; i < boxes.size(); ++i) {
    EXPECT_GE(boxes[i].x, 0.0) << i;
    EXPECT_GE(boxes[i].y, 0.0) << i;
    EXPECT_LE(boxes[i].x + boxes[i].width, drawing.canvas().width) << i;
    EXPECT_LE(boxes[i].y + boxes[i].height, drawing.canvas().height) << i;
    for (std::size_t j = i + 1; j < boxes.size(); ++j)
      EXPECT_FALSE(overlap(boxes[i], boxes[j])) << i << " and " << j;
  }
}

TEST(SettingOut, NoTextIsClippedOrWrittenOverAnother) {
  const std::vector<BreaksWanted> four{{Member::bottom, 2, 0.02}, {Member::top, 2, 0.02}};
  for (const double face_m : {0.045, 0.030})
    for (const auto& breaks : {std::vector<BreaksWanted>{}, four})
      for (const Size size :
           {Size{0.4, 0.5}, Size{0.9, 1.5}, Size{1.8, 1.2}, Size{0.5, 2.0}, Size{1.9, 0.45}}) {
        SCOPED_TRACE(testing::Message() << size.width_m << " x " << size.height_m << " face " << face_m
                                        << " breaks " << breaks.size());
        const auto house = house_of(job_of(size, face_m, breaks));
        const auto job = job_to_set(house);
        ASSERT_EQ(job.windows.at(0).state, WorkState::set_out)
            << (job.windows[0].reasons.empty() ? "" : job.windows[0].reasons[0]);
        expect_text_is_clear(elevation_drawing(job.windows[0], "e"));
        expect_text_is_clear(section_drawing(job.windows[0], "s"));
        expect_text_is_clear(stock_drawing(job.cut_list->groups.at(0), 0, "c"));
      }
}

TEST(SettingOut, EveryMarkIsDrawnAndInTheTable) {
  const auto house = house_of(job_of({0.9, 1.5}, 0.030, {{Member::bottom, 2, 0.02}}));
  const auto job = job_to_set(house);
  const auto& plan = *job.windows.at(0).plan;
  ASSERT_EQ(plan.holes.size(), static_cast<std::size_t>(plan.fixing_count));
  const auto csv = lines_of(csv_setting_out(job));
  EXPECT_EQ(csv.size(), 1 + plan.holes.size() + plan.tape_breaks.size());
  const auto document = nlohmann::json::parse(json_setting_out(job));
  EXPECT_EQ(document.at("windows").at(0).at("marks").size(), plan.holes.size());
  const auto html = html_setting_out(job);
  for (const auto& hole : plan.holes)
    EXPECT_NE(html.find(std::to_string(hole.number) + ": " + std::to_string(hole.along_mm)),
              std::string::npos)
        << hole.number;
  EXPECT_NE(html.find("(tight)"), std::string::npos);
  EXPECT_NE(html.find("TOP"), std::string::npos);
  EXPECT_NE(html.find("1:1"), std::string::npos);
}

TEST(SettingOut, TextOfTheJobStaysText) {
  const auto house = house_of(job_of({0.9, 1.5}, 0.045, {}));
  const auto job = job_to_set(house);
  for (const auto& text : {html_setting_out(job), svg_setting_out(job)}) {
    EXPECT_EQ(text.find("<script"), std::string::npos);
    EXPECT_EQ(replaced(text, "http://www.w3.org/2000/svg", "").find("http:"), std::string::npos);
    EXPECT_EQ(text.find("src="), std::string::npos);
  }
  EXPECT_EQ(html_setting_out(job), html_setting_out(job_to_set(house)));
}

TEST(SettingOut, CellsOfCsvAreNoFormulas) {
  EXPECT_EQ(csv_text("=1+2"), "\"'=1+2\"");
  EXPECT_EQ(csv_text("  @SUM(A1)"), "\"'  @SUM(A1)\"");
  EXPECT_EQ(csv_text("-3"), "\"'-3\"");
  EXPECT_EQ(csv_text("a \"b\", c"), "\"a \"\"b\"\", c\"");
  EXPECT_EQ(csv_text("line\r\nbreak"), "line  break");
  EXPECT_EQ(csv_text("plain"), "plain");
}

/// Nothing to cut, mark or buy in any form.
void expect_no_work(const std::string& job_path, const std::string& word) {
  for (const std::string form : {"", "--svg", "--csv", "--json"}) {
    std::vector<std::string> arguments{"setting-out", job_path, "--window-hours", "0", "--samples", "16"};
    if (!form.empty()) arguments.push_back(form);
    const auto result = run_cli(arguments);
    ASSERT_EQ(result.exit_code, 0) << result.err;
    EXPECT_NE(result.out.find(word), std::string::npos) << form;
    for (const std::string banned : {"cut width", "pilot ", "Pilot", "fixing 1", "cut_list", "Shopping",
                                     "kWh", "width_mm\":", "turn clips"})
      EXPECT_EQ(result.out.find(banned), std::string::npos) << form << " " << banned;
  }
}

TEST(SettingOut, HoldHasItsQuestionsAndNothingToCut) {
  expect_no_work(examples_dir + "/hold-way-out.toml", "Might anyone have to get out");
}

TEST(SettingOut, LeaveSaysWhyAndHasNothingToCut) {
  expect_no_work(examples_dir + "/damp-shower-room.toml", "plausible cases");
}

TEST(SettingOut, ARefusedJobSaysWhyInThePlaceOfTheDrawing) {
  auto answered = job_of({0.9, 1.5}, 0.045, {});
  auto& figures = *answered.assessment.figures;
  figures.plan->refused = {{RefusalKind::timber_too_thin, "The timber is 9 mm deep."}};
  figures.cut = cut_check(answered.survey, figures.plan);
  const auto house = house_of(std::move(answered));
  const auto job = job_to_set(house);
  EXPECT_EQ(job.windows.at(0).state, WorkState::refused);
  EXPECT_FALSE(job.cut_list.has_value());
  const auto html = html_setting_out(job);
  EXPECT_NE(html.find("The timber is 9 mm deep."), std::string::npos);
  EXPECT_EQ(html.find("cut width"), std::string::npos);
  EXPECT_NE(csv_setting_out(job).find("# 1: "), std::string::npos);
}

TEST(SettingOut, ARefusedWindowHasItsOpeningDrawnAndNoSheet) {
  for (const Size size : {Size{0.15, 0.15}, Size{0.9, 1.5}, Size{0.4, 3.9}, Size{3.9, 0.4}}) {
    SCOPED_TRACE(testing::Message() << size.width_m << " x " << size.height_m);
    auto answered = job_of(size, 0.045, {});
    answered.assessment.figures->cut.against = {{MendKind::obstacle, "A handle is in the way."}};
    const auto house = house_of(std::move(answered));
    const auto job = job_to_set(house);
    expect_text_is_clear(refused_opening_drawing(job.windows.at(0), "r"));
    for (const auto& page : {html_setting_out(job), svg_setting_out(job)}) {
      EXPECT_NE(page.find("not to be cut"), std::string::npos);
      EXPECT_NE(page.find("A handle is in the way."), std::string::npos);
      for (const std::string banned : {"cut width", "cut height", "TOP"})
        EXPECT_EQ(page.find(banned), std::string::npos) << banned;
    }
  }
}

TEST(SettingOut, WindowsOfAHouseShareOneCutListWithoutThoseOnHold) {
  AnsweredHouse house;
  house.name = "Two of three";
  house.windows = {job_of({0.9, 1.5}, 0.045, {}), hand_made_answer(), job_of({0.6, 0.8}, 0.045, {})};
  house.windows[1].assessment = {};
  house.windows[1].assessment.open_gates = {{GateKind::burning, false, "Does anything burn here?", "Air."}};
  const auto job = job_to_set(house);
  ASSERT_TRUE(job.cut_list.has_value());
  EXPECT_EQ(job.cut_list->piece_count, 2);
  const auto html = html_setting_out(job);
  EXPECT_NE(html.find("HOLD: not on this list"), std::string::npos);
  EXPECT_NE(html.find("Does anything burn here?"), std::string::npos);
}

TEST(SettingOut, OfAnExampleIsTheSameEveryTime) {
  const std::vector<std::string> arguments{
      "setting-out", examples_dir + "/old-sash.toml", "--window-hours", "0", "--samples", "16"};
  const auto once = run_cli(arguments);
  ASSERT_EQ(once.exit_code, 0) << once.err;
  EXPECT_EQ(once.out, run_cli(arguments).out);
  auto as_csv = arguments;
  as_csv.push_back("--csv");
  EXPECT_EQ(run_cli(as_csv).out, text_of(tools_test_dir + "/setting_out/old-sash.csv"));
}

TEST(SettingOut, BreaksAreWhereTheDecisionPutThem) {
  const auto result = run_cli({"setting-out", examples_dir + "/decisions/breaks-help.toml", "--json"});
  ASSERT_EQ(result.exit_code, 0) << result.err;
  const auto window = nlohmann::json::parse(result.out).at("windows").at(0);
  ASSERT_EQ(window.at("vent_option"), "breaks_bottom");
  const auto& tape = window.at("tape");
  ASSERT_EQ(tape.at("breaks").size(), 2U);
  for (const auto& one : tape.at("breaks")) {
    EXPECT_EQ(one.at("member"), "bottom");
    EXPECT_EQ(one.at("to_mm").get<double>() - one.at("from_mm").get<double>(), 20.0);
    for (const auto& piece : tape.at("pieces")) {
      if (piece.at("member") != "bottom") continue;
      const double from = piece.at("from_mm").get<double>();
      EXPECT_TRUE(from >= one.at("to_mm").get<double>() ||
                  from + piece.at("length_mm").get<double>() <= one.at("from_mm").get<double>());
    }
  }
}

TEST(SettingOut, WithoutAProgramForPdfItSaysWhatToInstall) {
  try {
    pdf_of_page("setting-out", "<p>a</p>", paper_programs(), "/nowhere:relative");
    FAIL();
  } catch (const Failure& failure) {
    EXPECT_EQ(failure.code(), ExitCode::file_trouble);
    EXPECT_NE(std::string(failure.what()).find("weasyprint or chromium"), std::string::npos);
  }
}

TEST(SettingOut, FormsExcludeEachOther) {
  EXPECT_EQ(run_cli({"setting-out", "a.toml", "--svg", "--csv"}).exit_code, 2);
  EXPECT_EQ(run_cli({"setting-out", "a.toml", "--pdf", "-"}).exit_code, 2);
  EXPECT_EQ(run_cli({"setting-out", "a.toml", "--pdf", "a.pdf", "--output", "b"}).exit_code, 2);
}

}  // namespace
}  // namespace dewgap::test
