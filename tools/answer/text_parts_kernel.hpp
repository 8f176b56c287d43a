// Parts of the text answer. Each writes its lines onto the page.
#pragma once

#include "tools/answer/answered_job.hpp"
#include "tools/answer/sheet_of_lines.hpp"

namespace dewgap::tools::parts {

/// How much of the lists is shown.
enum class RoomOnPage { ample, scarce };

class AnswerPage : public SheetOfLines {
 public:
  explicit AnswerPage(const AnsweredJob& job, RoomOnPage room = RoomOnPage::ample) : job_(job), room_(room) {}

  void heading();
  void open_questions();
  void tape();
  void why_this_tape();
  void look_first();
  void now_and_with_sheet();
  void cut_and_fix();
  void cautions(std::string Caution::*wording);
  void first_frost();
  void guessed();

 private:
  void verdict();
  const Assessment::Figures& figures() const { return *job_.assessment.figures; }
  bool is_by_the_year() const;
  bool is_same(const WidthCheck& check) const;
  bool same_at_other_widths() const;
  std::string shares() const;
  std::string width_checks() const;
  std::string steady_width_checks() const;
  std::string year_of_hours() const;
  void few_cases();
  void remedy();
  bool mould_is_near() const;
  void damp_at_face();
  void edge();
  void heat_saved();
  void money();
  void weather_and_humidity();

  const AnsweredJob& job_;
  RoomOnPage room_;
};

}  // namespace dewgap::tools::parts
