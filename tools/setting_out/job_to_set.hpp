// What the fitter is given of each window: the sheet set out, or why not.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "dewgap/fitting/cut_list.hpp"
#include "dewgap/fitting/fit_check.hpp"
#include "dewgap/fitting/order_of_work.hpp"
#include "tools/answer/answered_house.hpp"

namespace dewgap::tools {

enum class WorkState {
  set_out,  ///< there is a sheet to cut
  hold,     ///< a safety question is open
  leave,    ///< not to be fitted
  refused   ///< not as measured: `reasons`
};
std::string_view json_word(WorkState state);

struct WindowToSet {
  std::size_t number = 0;  ///< from 1
  std::string name;        ///< as the job gives it; may be empty
  const AnsweredJob* job = nullptr;
  WorkState state = WorkState::hold;
  std::vector<std::string> reasons;  ///< why there is nothing to cut; empty when set out
  std::vector<FitFinding> findings;  ///< none on HOLD and LEAVE
  std::optional<SheetInSun> sun;     ///< the same
  std::optional<SheetPlan> plan;     ///< with its tape's breaks; when set out alone
  std::vector<WorkStep> steps;       ///< when set out alone

  /// "1: Back bedroom", cut to `columns`.
  std::string title(std::size_t columns) const;
};

struct JobToSet {
  std::string name;
  std::vector<WindowToSet> windows;
  std::optional<CutList> cut_list;  ///< of the windows set out; none when there is none
};

/// The house must outlive what is returned.
JobToSet job_to_set(const AnsweredHouse& house);

/// Tape as drawn and bought, mm: as measured, else common practice.
double tape_thickness_mm(const Survey& survey);
double tape_width_mm(const Survey& survey);

/// "Left", "Top", ... as seen from the room.
std::string_view name_of(Member member);

}  // namespace dewgap::tools
