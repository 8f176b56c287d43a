// Temperature of the synthesised year: days about the months, hours about the days.
#include <algorithm>
#include <cmath>

#include "dewgap/climate/degree_days.hpp"
#include "dewgap/climate/places_kernel.hpp"
#include "dewgap/climate/spread_of_days_kernel.hpp"
#include "dewgap/climate/synthesised_year_kernel.hpp"

namespace dewgap::climate {
namespace {

constexpr double temperature_lag_one = 0.75;  // our convention
constexpr double bend_peak_h = 16.4;          // half way between the warmest hour and the coldest, 12 h on
constexpr double bend_at_extremes = 0.81;     // of the half-daily wave at the warmest and the coldest hour
constexpr double most_bend = 0.12;            // of the swing
constexpr int spread_rounds = 12;
constexpr int swing_rounds = 25;
constexpr double swing_tolerance_K = 1e-3;

MonthlyValues normals_of(const Place& place, double MonthlyNormals::*field) {
  MonthlyValues values{};
  std::transform(place.months.begin(), place.months.end(), values.begin(),
                 [&](const MonthlyNormals& month) { return month.*field; });
  return values;
}

// Daily means of what is straight between the middles of the days: 1/8, 6/8, 1/8.
std::vector<double> daily_means_through(const std::vector<double>& nodes) {
  const std::size_t days = nodes.size();
  std::vector<double> means(days);
  for (std::size_t day = 0; day < days; ++day) {
    means[day] = 0.75 * nodes[day] + 0.125 * (nodes[(day + days - 1) % days] + nodes[(day + 1) % days]);
  }
  return means;
}

struct Moments {
  double variance_of_season = 0.0;
  double variance_of_days = 0.0;
  double covariance = 0.0;
};

Moments moments_of_month(const std::vector<double>& season, const std::vector<double>& days,
                         std::size_t first, std::size_t end) {
  const auto count = static_cast<double>(end - first);
  double season_mean = 0.0;
  double days_mean = 0.0;
  for (std::size_t i = first; i < end; ++i) {
    season_mean += season[i] / count;
    days_mean += days[i] / count;
  }
  Moments moments;
  for (std::size_t i = first; i < end; ++i) {
    const double s = season[i] - season_mean;
    const double d = days[i] - days_mean;
    moments.variance_of_season += s * s / count;
    moments.variance_of_days += d * d / count;
    moments.covariance += s * d / count;
  }
  return moments;
}

// Factor f of the days so that season + f days has the variance wanted: a quadratic whose one positive root
// it is, since the season alone has less.
double factor_for_variance(const Moments& m, double wanted_K2) {
  const double target_K2 = std::max(wanted_K2, m.variance_of_season * 4.0 / 3.0);
  const double root =
      std::sqrt(m.covariance * m.covariance + m.variance_of_days * (target_K2 - m.variance_of_season));
  return (root - m.covariance) / m.variance_of_days;
}

// Departures of the days from the season, at their middles.
std::vector<double> departures_of_days_K(const Place& place, const std::vector<double>& season_C,
                                         std::uint64_t seed) {
  const auto calendar = calendar_of(hours_of_common_year);
  auto nodes_K = day_quantiles(seed, DaySeries::temperature, temperature_lag_one);
  // Logistic quantile; its scale comes with the factors below.
  std::transform(nodes_K.begin(), nodes_K.end(), nodes_K.begin(),
                 [](double u) { return std::log(u / (1.0 - u)); });
  const auto season_of_days_C = daily_means_of(season_C);
  const double yearly_K = yearly_sd_K(place);
  for (int round = 0; round < spread_rounds; ++round) {
    const auto days_K = daily_means_through(nodes_K);
    for (std::size_t month = 0; month < 12; ++month) {
      const auto first = calendar.first_day[month];
      const auto end = calendar.first_day[month + 1];
      const double spread_K =
          spread_of_days_K(place.months[month].mean_C, static_cast<double>(end - first), yearly_K);
      const double factor =
          factor_for_variance(moments_of_month(season_of_days_C, days_K, first, end), spread_K * spread_K);
      for (std::size_t day = first; day < end; ++day) {
        nodes_K[day] *= factor;
      }
    }
  }
  return nodes_K;
}

// Swing and bend of the mean day at the middles of the months.
struct Swing {
  MonthlyValues swing_K{};
  MonthlyValues bend_K{};
};

class TemperatureFit {
 public:
  TemperatureFit(const Place& place, std::uint64_t seed)
      : calendar_(calendar_of(hours_of_common_year)),
        mean_C_(normals_of(place, &MonthlyNormals::mean_C)),
        max_C_(normals_of(place, &MonthlyNormals::max_C)),
        min_C_(normals_of(place, &MonthlyNormals::min_C)),
        base_C_(line_.hourly(line_.nodes_with_means(mean_C_))) {
    const auto departures_K = through_days(departures_of_days_K(place, base_C_, seed));
    std::transform(base_C_.begin(), base_C_.end(), departures_K.begin(), base_C_.begin(), std::plus<>());
    for (std::size_t hour = 0; hour < hours_per_day; ++hour) {
      const double clock_h = static_cast<double>(hour) + 0.5;
      shape_[hour] = mean_day_shape(clock_h);
      bend_[hour] = std::cos(radians(30.0 * (clock_h - bend_peak_h)));
    }
  }

  Swing first_guess() const {
    Swing swing;
    for (std::size_t month = 0; month < 12; ++month) {
      swing.swing_K[month] = max_C_[month] - min_C_[month];
    }
    return swing;
  }

  // Base, swing and bend, then the line through the months that restores their means.
  std::vector<double> hourly_C(const Swing& swing) const {
    auto hourly = base_C_;
    for (std::size_t hour = 0; hour < hourly.size(); ++hour) {
      hourly[hour] += line_.at_hour(swing.swing_K, hour) * shape_[hour % hours_per_day] +
                      line_.at_hour(swing.bend_K, hour) * bend_[hour % hours_per_day];
    }
    auto missing_K = monthly_means_of(hourly, calendar_);
    for (std::size_t month = 0; month < 12; ++month) {
      missing_K[month] = mean_C_[month] - missing_K[month];
    }
    const auto nodes_K = line_.nodes_with_means(missing_K);
    for (std::size_t hour = 0; hour < hourly.size(); ++hour) {
      hourly[hour] += line_.at_hour(nodes_K, hour);
    }
    return hourly;
  }

  struct Misses {
    MonthlyValues max_K{};
    MonthlyValues min_K{};
    double largest_K = 0.0;
  };
  Misses misses(const std::vector<double>& hourly) const {
    Misses misses;
    misses.max_K = monthly_means_of_days(daily_maxima_of(hourly), calendar_);
    misses.min_K = monthly_means_of_days(daily_minima_of(hourly), calendar_);
    for (std::size_t month = 0; month < 12; ++month) {
      misses.max_K[month] = max_C_[month] - misses.max_K[month];
      misses.min_K[month] = min_C_[month] - misses.min_K[month];
      misses.largest_K =
          std::max({misses.largest_K, std::abs(misses.max_K[month]), std::abs(misses.min_K[month])});
    }
    return misses;
  }

  Swing improved(const Swing& swing, const Misses& misses) const {
    Swing better = swing;
    for (std::size_t month = 0; month < 12; ++month) {
      better.swing_K[month] = std::max(0.0, swing.swing_K[month] + misses.max_K[month] - misses.min_K[month]);
      const double limit_K = most_bend * (max_C_[month] - min_C_[month]);
      const double bend_K =
          swing.bend_K[month] + 0.5 * (misses.max_K[month] + misses.min_K[month]) / bend_at_extremes;
      better.bend_K[month] = std::clamp(bend_K, -limit_K, limit_K);
    }
    return better;
  }

 private:
  MonthLine line_;
  YearCalendar calendar_;
  MonthlyValues mean_C_;
  MonthlyValues max_C_;
  MonthlyValues min_C_;
  std::vector<double> base_C_;
  std::array<double, hours_per_day> shape_{};
  std::array<double, hours_per_day> bend_{};
};

}  // namespace

double mean_day_shape(double clock_h) {
  const double t = 2.0 * pi * (clock_h - 1.0) / 24.0;
  // Erbs, Klein and Beckman 1983, from memory.
  return 0.4632 * std::cos(t - 3.805) + 0.0984 * std::cos(2.0 * t - 0.360) +
         0.0168 * std::cos(3.0 * t - 0.822) + 0.0138 * std::cos(4.0 * t - 3.513);
}

TemperatureCourse temperature_course(const Place& place, std::uint64_t seed) {
  const TemperatureFit fit(place, seed);
  auto swing = fit.first_guess();
  auto hourly_C = fit.hourly_C(swing);
  auto misses = fit.misses(hourly_C);
  for (int round = 0; round < swing_rounds && misses.largest_K > swing_tolerance_K; ++round) {
    swing = fit.improved(swing, misses);
    hourly_C = fit.hourly_C(swing);
    misses = fit.misses(hourly_C);
  }
  return {std::move(hourly_C), misses.largest_K};
}

}  // namespace dewgap::climate
