#include "dewgap/assessment/mend_first.hpp"

#include <algorithm>
#include <iterator>

#include "dewgap/assessment/setting_out_kernel.hpp"
#include "dewgap/assessment/verdict_kernel.hpp"

namespace dewgap {
namespace {

std::vector<Mend> water_and_timber(const TimberSurvey& timber) {
  std::vector<Mend> mends;
  if (timber.lets_rain_in.value_or(false)) {
    mends.push_back({MendKind::water, "Stop the rain that the window lets in."});
  }
  if (timber.bottom_rail == TimberFeel::soft) {
    mends.push_back({MendKind::window, "Repair the soft bottom rail."});
  }
  if (timber.bottom_rail == TimberFeel::wet_now) {
    mends.push_back({MendKind::water, "Let the wet timber dry, and find where the water comes from."});
  } else if (timber.water_pools.value_or(false)) {
    mends.push_back({MendKind::window, "Find where the water on the sill comes from."});
  }
  return mends;
}

}  // namespace

std::vector<Mend> mends_before_fitting(const Survey& survey) {
  auto mends = water_and_timber(survey.timber);
  const double catch_m = survey.window.catch_stands_out_m.value_or(0.0);
  const double tape_m = survey.sheet.tape_thickness_m.value_or(0.006);
  const bool on_frame = survey.sheet.cover == Cover::frame || survey.sheet.cover == Cover::sash;
  if (on_frame && catch_m > tape_m) {
    mends.push_back({MendKind::obstacle, "Move the catch, or pack the sheet out by " +
                                             whole(1000.0 * (catch_m - tape_m)) + " mm: it stands out."});
  }
  for (const auto& sentence : needed_before_setting_out(survey)) {
    mends.push_back({MendKind::setting_out, sentence});
  }
  return mends;
}

std::vector<std::string> mend_first(const Survey& survey) {
  const auto mends = mends_before_fitting(survey);
  std::vector<std::string> sentences;
  std::transform(mends.begin(), mends.end(), std::back_inserter(sentences),
                 [](const Mend& mend) { return mend.say; });
  return sentences;
}

}  // namespace dewgap
