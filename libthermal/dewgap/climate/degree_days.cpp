#include "dewgap/climate/degree_days.hpp"

#include <cmath>
#include <numeric>

#include "dewgap/climate/places_kernel.hpp"
#include "dewgap/climate/spread_of_days_kernel.hpp"
#include "dewgap/errors.hpp"
#include "dewgap/numerics/root_finding.hpp"

namespace dewgap {
namespace {

constexpr double hitchin_k_per_K = 0.71;  // Hitchin 1983, from memory

struct Month {
  double days;
  double mean_C;
  double base_C;
  double below_base_K() const { return base_C - mean_C; }
};

double erbs_scale_K(const Month& month, double yearly_sd_K) {
  return climate::erbs_scale_K(month.mean_C, month.days, yearly_sd_K);
}

double spread_of_days_K(const Month& month, double yearly_sd_K) {
  return climate::spread_of_days_K(month.mean_C, month.days, yearly_sd_K);
}

double normal_density(double z) {
  return std::exp(-0.5 * z * z) / std::sqrt(2.0 * climate::pi);
}
double normal_below(double z) {
  return 0.5 * std::erfc(-z / std::sqrt(2.0));
}

// x / (1 - exp(-k x)), continued through x = 0 by its limit 1/k. Hitchin 1983, from memory.
double hitchin_daily_K(double below_base_K) {
  const double kx = hitchin_k_per_K * below_base_K;
  if (std::abs(kx) < 1e-8) {
    return (1.0 + 0.5 * kx) / hitchin_k_per_K;
  }
  return below_base_K / -std::expm1(-kx);
}

// D = sm N^1.5 (h/2 + ln(exp(-a h) + exp(a h)) / (2 a)), h = (tb - tm) / (sm sqrt N). Erbs et al. 1983, from
// memory.
double erbs_Kd(const Month& month, double yearly_sd_K) {
  const double scale_K = erbs_scale_K(month, yearly_sd_K);
  const double h = month.below_base_K() / scale_K;
  const double log_sum =
      climate::erbs_a * std::abs(h) + std::log1p(std::exp(-2.0 * climate::erbs_a * std::abs(h)));
  return month.days * scale_K * (0.5 * h + log_sum / (2.0 * climate::erbs_a));
}

// D = N s (z Phi(z) + phi(z)), z = (tb - tm) / s. Schoenau and Kehrig 1990, from memory.
double schoenau_kehrig_Kd(const Month& month, double yearly_sd_K) {
  const double spread_K = spread_of_days_K(month, yearly_sd_K);
  const double z = month.below_base_K() / spread_K;
  return month.days * spread_K * (z * normal_below(z) + normal_density(z));
}

// Four cases of a day's maximum and minimum, UK practice, from memory.
double max_min_daily_K(double max_C, double min_C, double base_C) {
  const double middle_C = 0.5 * (max_C + min_C);
  if (max_C <= base_C) {
    return base_C - middle_C;
  }
  if (min_C >= base_C) {
    return 0.0;
  }
  if (middle_C < base_C) {
    return 0.5 * (base_C - min_C) - 0.25 * (max_C - base_C);
  }
  return 0.25 * (base_C - min_C);
}

void require_days_and_base(int days, double base_C) {
  require_in_range(days, {28.0, 31.0}, "days", "");
  require_in_range(base_C, {-20.0, 40.0}, "base_C", "C");
}

}  // namespace

double monthly_degree_days_Kd(const MonthlyNormals& normals, int days, double base_C, double yearly_sd_K,
                              DegreeDayMethod method) {
  climate::require_valid_temperatures(normals);
  require_days_and_base(days, base_C);
  require_in_range(yearly_sd_K, {0.0, 30.0}, "yearly_sd_K", "K");
  const Month month{static_cast<double>(days), normals.mean_C, base_C};
  switch (method) {
    case DegreeDayMethod::hitchin:
      return month.days * hitchin_daily_K(month.below_base_K());
    case DegreeDayMethod::erbs:
      return erbs_Kd(month, yearly_sd_K);
    case DegreeDayMethod::schoenau_kehrig:
      return schoenau_kehrig_Kd(month, yearly_sd_K);
    case DegreeDayMethod::max_min:
      return month.days * max_min_daily_K(normals.max_C, normals.min_C, base_C);
  }
  throw InvalidInput("method", "unknown degree-day method");
}

double yearly_sd_K(const Place& place) {
  require_valid(place);
  double sum_C = 0.0;
  for (const auto& month : place.months) {
    sum_C += month.mean_C;
  }
  const double mean_C = sum_C / months_per_year;
  double squares_K2 = 0.0;
  for (const auto& month : place.months) {
    squares_K2 += (month.mean_C - mean_C) * (month.mean_C - mean_C);
  }
  return std::sqrt(squares_K2 / months_per_year);
}

std::array<double, 12> degree_days_Kd(const Place& place, double base_C, DegreeDayMethod method) {
  const double yearly_K = yearly_sd_K(place);
  std::array<double, 12> result{};
  for (std::size_t i = 0; i < result.size(); ++i) {
    result[i] = monthly_degree_days_Kd(place.months[i], days_of_month[i], base_C, yearly_K, method);
  }
  return result;
}

double annual_degree_days_Kd(const Place& place, double base_C, DegreeDayMethod method) {
  const auto monthly = degree_days_Kd(place, base_C, method);
  return std::accumulate(monthly.begin(), monthly.end(), 0.0);
}

std::array<double, 12> heating_days(const Place& place, double base_C) {
  const double yearly_K = yearly_sd_K(place);
  std::array<double, 12> result{};
  for (std::size_t i = 0; i < result.size(); ++i) {
    require_days_and_base(days_of_month[i], base_C);
    const Month month{static_cast<double>(days_of_month[i]), place.months[i].mean_C, base_C};
    // Share of days whose mean lies below the base: Phi((tb - tm) / s).
    result[i] = month.days * normal_below(month.below_base_K() / spread_of_days_K(month, yearly_K));
  }
  return result;
}

double hitchin_mean_temperature_C(double degree_days_Kd, int days, double base_C) {
  require_days_and_base(days, base_C);
  const double daily_K = degree_days_Kd / static_cast<double>(days);
  require_in_range(daily_K, {1e-6, 100.0}, "degree_days_Kd / days", "K");
  // hitchin_daily_K(x) rises with x, exceeds x, and is below 1e-12 at x = -50.
  const auto excess = [&](double below_base_K) { return hitchin_daily_K(below_base_K) - daily_K; };
  const auto found = numerics::find_root(excess, -50.0, daily_K);
  if (found.status != SolveStatus::converged) {
    throw InvalidInput("degree_days_Kd", "no monthly mean gives these degree-days");
  }
  return base_C - found.root;
}

}  // namespace dewgap
