#include <algorithm>
#include <optional>
#include <vector>

#include "dewgap/assessment/year_run_option_kernel.hpp"
#include "dewgap/assessment/year_tally_kernel.hpp"
#include "dewgap/errors.hpp"

namespace dewgap {
namespace {

constexpr double most_unsettled_share = 0.001;

/// A sheet hung in one way, on its way through the year.
struct HungSheet {
  VentOption vent;
  double excess_factor;
  gap_kernel::GapHours<2> gap;
  YearTally tally;
};

/// The sealed sheet's year once it is taken off in spring.
struct TakenOff {
  YearTally tally;
  OpenTimber timber;
};

TallyTerms tally_terms(const Setting& setting, const UnknownValues& sample, double start_timber_kg_kg) {
  TallyTerms terms{.edge_factor = sample[Unknown::edge_factor],
                   .draught_needed = sample[Unknown::draught_needed],
                   .heated_share = sample[Unknown::heated_share],
                   .start_timber_kg_kg = start_timber_kg_kg};
  if (const auto& edge = setting.edge) {
    terms.room_factors = TallyTerms::RoomFactors{edge->room_factor_before, edge->room_factor};
  }
  return terms;
}

/// All windows of one sample side by side.
class SampleRun {
 public:
  SampleRun(const YearSetting& year, const UnknownValues& sample, double excess_scale)
      : year_(year),
        sample_(sample),
        weather_(year, sample, excess_scale),
        sealed_(sheet_design(*year.setting, sample, VentOption::sealed, TapeFault::none)),
        start_(fitted_store(weather_, sealed_)),
        old_window_(old_window_hours(*year.setting, sample)),
        old_timber_(sealed_, sample[Unknown::edge_factor], start_.timber_kg_kg),
        old_tally_(tally_terms(*year.setting, sample, start_.timber_kg_kg)) {
    hang_sheets();
  }

  SampleYear run() {
    for (std::size_t hour = 0; hour < year_.outdoor_C.size(); ++hour) {
      step(hour);
    }
    return gathered();
  }

 private:
  void hang_sheets() {
    const auto winter = old_winter(*year_.setting, sample_);
    sheets_.reserve(every_vent_option.size() + 1);
    for (const auto vent : every_vent_option) {
      if (vent != VentOption::off_in_summer && is_offered(vent, *year_.setting->survey)) {
        hang(vent, TapeFault::none, winter);
      }
    }
    hang(VentOption::sealed, TapeFault::lifted_200_mm, winter);  // the last
  }

  void hang(VentOption vent, TapeFault fault, const OldWinter& winter) {
    const auto& setting = *year_.setting;
    sheets_.push_back({.vent = vent,
                       .excess_factor = excess_factor_under(setting, sample_, vent, fault, winter),
                       .gap = sheet_hours(sheet_design(setting, sample_, vent, fault), start_),
                       .tally = YearTally(tally_terms(setting, sample_, start_.timber_kg_kg))});
  }

  void step(std::size_t hour) {
    const auto now = weather_.at(hour);
    const auto old = old_window_.step(now.given);
    const TallyContext beside{
        .now = now, .room_vapour_Pa = now.given.room_vapour_Pa, .through_before_m3_s = old.through_air_m3_s};
    if (old.status == SolveStatus::converged) {
      old_timber_.step(now, old);
    }
    old_tally_.add_old_window(beside, old, old_timber_.moisture_kg_kg());
    if (hour == year_.off_hour) {
      take_off();
    }
    for (auto& sheet : sheets_) {
      auto given = now.given;
      given.room_vapour_Pa = now.room_vapour_Pa(sheet.excess_factor);
      sheet.tally.add_with_sheet({now, given.room_vapour_Pa, old.through_air_m3_s}, sheet.gap.step(given));
    }
    if (taken_off_) {
      if (old.status == SolveStatus::converged) {
        taken_off_->timber.step(now, old);
      }
      taken_off_->tally.add_without_sheet(beside, old, taken_off_->timber.moisture_kg_kg());
    }
  }

  // Until now it was the sealed sheet, the first to be hung.
  void take_off() {
    const auto& sealed = sheets_.front().tally;
    taken_off_.emplace(
        TakenOff{sealed, OpenTimber(sealed_, sample_[Unknown::edge_factor], sealed.timber_kg_kg())});
    taken_off_->tally.wipe();
  }

  SampleYear gathered() {
    const double timber_run_h = old_tally_.longest_timber_run_h();
    SampleYear all;
    all.as_it_is = old_tally_.year(timber_run_h);
    all.lifted = sheets_.back().tally.year(timber_run_h);
    sheets_.pop_back();
    for (const auto& sheet : sheets_) {
      all.options[place_of(sheet.vent)] = sheet.tally.year(timber_run_h);
    }
    const auto& taken_off = taken_off_ ? taken_off_->tally : sheets_.front().tally;
    all.options[place_of(VentOption::off_in_summer)] = taken_off.year(timber_run_h);
    all.status = status_of(all);
    return all;
  }

  SolveStatus status_of(const SampleYear& all) const {
    const double most = most_unsettled_share * static_cast<double>(year_.outdoor_C.size());
    const auto too_many = [most](const OptionYear& year) {
      return static_cast<double>(year.unsettled_hours) > most;
    };
    const bool unsettled = too_many(all.as_it_is) || too_many(all.lifted) ||
                           std::any_of(all.options.begin(), all.options.end(), too_many);
    return unsettled ? SolveStatus::iteration_limit : SolveStatus::converged;
  }

  const YearSetting& year_;
  const UnknownValues& sample_;
  SampleWeather weather_;
  GapDesign sealed_;
  GapStore start_;
  gap_kernel::GapHours<1> old_window_;
  OpenTimber old_timber_;
  YearTally old_tally_;
  std::vector<HungSheet> sheets_;
  std::optional<TakenOff> taken_off_;
};

}  // namespace

bool is_offered(VentOption option, const Survey& survey) {
  switch (option) {
    case VentOption::weep_to_outdoors:
      return survey.settle_first.protection == Protection::unprotected && is_timber(survey.window.frame);
    case VentOption::joints_stripped: {
      const bool in_series = survey.sheet.cover == Cover::frame || survey.sheet.cover == Cover::reveal;
      const bool moves = survey.window.kind != WindowKind::fixed_light && !survey.window.painted_shut;
      return in_series && moves && !survey.joints.weather_stripped.value_or(false);
    }
    case VentOption::sealed:
    case VentOption::breaks_bottom:
    case VentOption::breaks_bottom_longer:
    case VentOption::breaks_bottom_and_top:
    case VentOption::off_in_summer:
      return true;
  }
  return false;
}

std::size_t window_hours_a_sample(const YearSetting& year) {
  const auto stepped =
      std::count_if(every_vent_option.begin(), every_vent_option.end(), [&](VentOption option) {
        return option != VentOption::off_in_summer && is_offered(option, *year.setting->survey);
      });
  return year.outdoor_C.size() * (static_cast<std::size_t>(stepped) + 2);
}

SampleYear run_sample_year(const YearSetting& year, const UnknownValues& sample, double excess_scale) {
  try {
    return SampleRun(year, sample, excess_scale).run();
  } catch (const CalculationFailed&) {
    SampleYear failed;
    failed.status = SolveStatus::singular;  // the winter balance that the room's humidity rests on
    return failed;
  }
}

void run_option_year(
    const YearSetting& year, const UnknownValues& sample, VentOption option, double excess_scale,
    const std::function<void(std::size_t hour, const HourConditions&, const HourState&)>& each) {
  OptionRun run(year, sample, option, excess_scale);
  for (std::size_t hour = 0; hour < year.outdoor_C.size(); ++hour) {
    const auto at = run.step(hour);
    each(hour, at.given, at.state);
  }
}

}  // namespace dewgap
