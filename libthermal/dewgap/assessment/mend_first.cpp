#include "dewgap/assessment/mend_first.hpp"

#include <algorithm>
#include <iterator>

#include "dewgap/assessment/cut_check.hpp"
#include "dewgap/assessment/setting_out_kernel.hpp"

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

std::vector<Mend> mends_before_fitting(const Survey& survey, VentOption vent) {
  auto mends = water_and_timber(survey.timber);
  const auto against = cut_check(survey, plan_for(survey, window_model(survey), vent)).against;
  mends.insert(mends.end(), against.begin(), against.end());
  return mends;
}

std::vector<std::string> mend_first(const Survey& survey, VentOption vent) {
  const auto mends = mends_before_fitting(survey, vent);
  std::vector<std::string> sentences;
  std::transform(mends.begin(), mends.end(), std::back_inserter(sentences),
                 [](const Mend& mend) { return mend.say; });
  return sentences;
}

}  // namespace dewgap
