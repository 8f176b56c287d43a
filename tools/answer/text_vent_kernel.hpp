// Parts of the vent decision's page. Each writes its lines onto it.
#pragma once

#include "tools/answer/advised_job.hpp"
#include "tools/answer/sheet_of_lines.hpp"

namespace dewgap::tools::parts {

class VentPage : public SheetOfLines {
 public:
  explicit VentPage(const AdvisedJob& job) : job_(job) {}

  void heading();
  void why();
  void table();
  void deciding();
  void room_and_drying();
  void weather();
  void record();

 private:
  const VentAdvice& advice() const { return *job_.advice; }
  /// Nothing when there are no shares to show.
  const OptionAdvice* chosen() const;
  std::string verdict() const;
  void frost_check();
  void mornings_left_out();

  const AdvisedJob& job_;
};

}  // namespace dewgap::tools::parts
