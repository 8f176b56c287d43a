#include "calibration/questions.hpp"

#include <algorithm>

#include "dewgap/assessment/evidence_kernel.hpp"

namespace dewgap::calibration {
namespace {

constexpr std::size_t marked_points = 8;

/// All ways to find 8 points, whatever their order: 495 of them.
std::vector<std::vector<Feeler>> all_feelers() {
  constexpr std::array kinds{Feeler::nothing, Feeler::paper, Feeler::folded_paper, Feeler::bank_card,
                             Feeler::coin};
  std::vector<std::vector<Feeler>> found{{}};
  for (std::size_t point = 0; point < marked_points; ++point) {
    std::vector<std::vector<Feeler>> longer;
    for (const auto& points : found) {
      for (const auto kind : kinds) {
        if (points.empty() || points.back() <= kind) {
          longer.push_back(points);
          longer.back().push_back(kind);
        }
      }
    }
    found = std::move(longer);
  }
  return found;
}

Question feeler_question() {
  Question question{.name = "feelers at 8 points", .stage = Stage::joints, .kind = Question::Kind::reading};
  for (const auto& points : all_feelers()) {
    question.answers.push_back(
        {"8 points", [points](Notes& notes) { notes.survey.joints.feelers = points; }});
  }
  return question;
}

template <class Put>
Question yes_or_no(std::string name, Stage stage, Put put) {
  return {.name = std::move(name),
          .stage = stage,
          .answers = {{"yes", [put](Notes& notes) { put(notes) = true; }},
                      {"no", [put](Notes& notes) { put(notes) = false; }}}};
}

Question paper_question() {
  Question question{.name = "paper shut in the joint", .stage = Stage::joints};
  for (const auto pull : {PaperPull::pulls_free, PaperPull::drags, PaperPull::tears}) {
    question.answers.push_back({"paper", [pull](Notes& notes) { notes.survey.joints.paper = pull; }});
  }
  return question;
}

std::vector<Question> joint_questions(const Archetype& archetype) {
  if (archetype.joints == Joints::none) {
    return {};
  }
  std::vector<Question> asked{
      feeler_question(),
      yes_or_no(
          "rattles", Stage::joints, [](Notes & n) -> auto& { return n.survey.joints.rattles; }),
      paper_question()};
  if (archetype.survey.window.kind == WindowKind::sliding_sash) {
    asked.push_back(yes_or_no(
        "daylight at the meeting rail", Stage::joints,
        [](Notes & n) -> auto& { return n.survey.joints.daylight_at_meeting_rail; }));
  }
  return asked;
}

/// Days on which the tissue is held.
const std::vector<TissueTest>& tissue_days() {
  static const std::vector<TissueTest> days{{.colder_outside_K = 12.0, .wind = WindToday::calm},
                                            {.colder_outside_K = 12.0, .wind = WindToday::breeze},
                                            {.colder_outside_K = 18.0, .wind = WindToday::calm},
                                            {.colder_outside_K = 18.0, .wind = WindToday::breeze}};
  return days;
}

Question tissue_question(std::string where, std::size_t day, std::optional<TissueWay> TissueTest::*place) {
  Question question{.name = "tissue at the " + std::move(where),
                    .stage = Stage::tissue,
                    .occasion = day,
                    .occasions = tissue_days().size()};
  for (const auto way : {TissueWay::in, TissueWay::out, TissueWay::hangs, TissueWay::both_ways}) {
    question.answers.push_back({"way", [=](Notes& notes) {
                                  auto& tissue = notes.survey.tissue;
                                  tissue.colder_outside_K = tissue_days()[day].colder_outside_K;
                                  tissue.wind = tissue_days()[day].wind;
                                  tissue.*place = way;
                                }});
  }
  return question;
}

Question mist_question() {
  Question question{.name = "centre of the pane mists", .stage = Stage::mist};
  for (const auto mists : {CentreMists::never, CentreMists::hard_frost_only, CentreMists::frosty_mornings,
                           CentreMists::cool_days, CentreMists::mild_nights}) {
    question.answers.push_back({"mists", [mists](Notes& notes) { notes.survey.room.centre_mists = mists; }});
  }
  return question;
}

Question winter_question(std::size_t occasion) {
  using Mist = WinterReading::Mist;
  Question question{.name = "mist behind the sheet",
                    .stage = Stage::winter_mist,
                    .occasion = occasion,
                    .occasions = winter_occasions};
  for (const auto mist : {Mist::none, Mist::edges, Mist::lower_third, Mist::all_over, Mist::runs}) {
    question.answers.push_back({"mist", [=](Notes& notes) {
                                  notes.readings = {night_of(occasion)};
                                  notes.readings.front().mist = mist;
                                }});
  }
  return question;
}

}  // namespace

std::string_view name_of(Stage stage) {
  constexpr std::array<std::string_view, all_stages.size()> names{
      "prior only",      "+ joints", "+ tissue", "+ mist", "+ hygrometer", "+ a winter night's mist",
      "+ mist, humidity"};
  return names.at(static_cast<std::size_t>(stage));
}

WinterReading night_of(std::size_t occasion) {
  return {.date = "a night", .outdoor_C = occasion == 0 ? -4.0 : 0.0};
}

std::vector<Question> questions_for(const Archetype& archetype) {
  auto asked = joint_questions(archetype);
  for (std::size_t day = 0; day < tissue_days().size(); ++day) {
    asked.push_back(tissue_question("bottom", day, &TissueTest::bottom));
    asked.push_back(tissue_question("top", day, &TissueTest::top));
  }
  asked.push_back(mist_question());
  asked.push_back(yes_or_no(
      "washing dried in the room", Stage::mist,
      [](Notes & n) -> auto& { return n.survey.room.washing_dried; }));
  for (std::size_t night = 0; night < winter_occasions; ++night) {
    asked.push_back(winter_question(night));
  }
  return asked;
}

std::vector<double> log_likelihood_of(const Scene& scene, const Notes& notes,
                                      const std::vector<UnknownValues>& samples) {
  Setting setting = scene.setting;
  setting.survey = &notes.survey;
  auto terms = all_evidence(setting, samples);
  auto winter = winter_evidence(setting, samples, notes.readings, VentOption::sealed);
  std::move(winter.begin(), winter.end(), std::back_inserter(terms));
  std::vector<double> sum(samples.size(), 0.0);
  for (const auto& term : terms) {
    if (term.use.used) {
      std::transform(sum.begin(), sum.end(), term.log_likelihood.begin(), sum.begin(), std::plus<>());
    }
  }
  return sum;
}

}  // namespace dewgap::calibration
