// A year of hours from monthly normals alone.
//
// One plausible year among many: its months have the means of the normals, its days and hours spread about
// them as below. It is no record and no forecast. Everything is modelled; nothing but the monthly means is
// information about the place. The same place and seed give the same year.
//
// Days. Each quantity has one series of 365 random numbers of first order autoregression, closed from
// December to January; each month's days take the N mid-quantiles (i - 1/2) / N of the quantity's
// distribution in the order of that series, so that every month has the whole spread. Lag-one correlations
// (our convention; in brackets two typical years, about monthly means): temperature 0.75 (0.77, 0.68),
// relative humidity 0.50 (0.62, 0.46), clearness 0.40 (0.46, 0.33), wind 0.25 (0.21, 0.30). The four series
// are independent of each other. The step over a month's end is on average a tenth larger than other steps
// from day to day.
//
// Temperature. Daily means: a line through the months that has their means, plus a spread of logistic
// distribution whose standard deviation about the monthly mean, seasonal drift included, is that of Erbs,
// Klein and Beckman 1983 as degree_days.hpp has it, to 1 % (or 2/sqrt(3) of the drift's alone where that is
// more). Straight between the middles of the days, so without steps, also from month to month. On it a mean
// day's swing (Erbs, Klein and Beckman's four harmonics, warmest at 15.2 h, coldest at 5.6 h of the clock,
// from memory) and a half-daily wave that bends it, both fitted so that the means of the daily maxima and
// minima of the calendar day return. Monthly means return to 1e-9 K. Where the normals' swing is short, the
// days' own steps take up more than it; the wave is at most 0.12 of the normals' swing and the day's swing at
// least nothing, so that means of maxima and minima may miss: over the carried places and twenty seeds by at
// most 0.1 K where the normals' swing is 8 K or more, 0.5 K from 6 to 8 K, 1.2 K from 4 to 6 K and 1.3 K
// below (on average 0.0002, 0.02, 0.1 and 0.4 K). `largest_max_min_deviation_K` says it of a year.
//
// Vapour. The day's vapour pressure is its relative humidity times saturation over water at its mean
// temperature; relative humidity is spread lognormally with a relative standard deviation of 0.65 (1 - the
// month's), our convention (two typical years: 0.31 to 0.97, on average 0.64). Straight between the middles
// of the days, no daily cycle, scaled to the month's mean by a factor that may step at its ends. Where an
// hour would exceed saturation over water it is held there and the month's other hours take what is missing,
// so that the mean returns to a relative 1e-9; only where the normal exceeds the mean saturation of all the
// month's hours is the month saturated throughout, and `largest_vapour_deviation` says by how much it falls
// short.
//
// Sun. The month's global radiation as monthly_sun has it returns exactly. Daily clearness by the exponential
// distribution of Bendt, Collares-Pereira and Rabl 1981 between 0.05 (or half the month's, if less) and
// 0.6313 + 0.267 K - 11.9 (K - 0.75)^8 with K of the month or 0.3, if more (Duffie and Beckman eq. 2.9.6,
// from memory), its exponent solved for the month's mean; within the day by Collares-Pereira and Rabl's
// hourly shares about solar noon; diffuse by Erbs, Klein and Duffie's daily share (1982, from memory) and Liu
// and Jordan's hourly shares, at most the global; beam so that global = diffuse + beam sin(altitude) with the
// sun of sun_of_hour. The year on vertical planes comes out within 7 % of monthly_sun's. Cloud of a day: 1 -
// (k - 0.25) / 0.5 within 0 and 1, the inverse of Angstrom and Prescott's formula with cloud as what sunshine
// lacks (our convention); months without sun take clearness 0.4.
//
// Wind. Day factors of a Weibull distribution of shape 2 (Rayleigh), the month's mean returned exactly.
// Within the day a parabola whose mean is the day's, from midnight to midnight, where it takes the geometric
// mean of both days, at most twice the calmer one's: so without steps, each hour between 0 and twice its
// day's mean, and the spread of the days is what it would be without. The hours' spread is at most 7 % wider
// than the days', their largest step 0.45 of the year's mean (carried places, ten seeds). It is a course that
// joins days (our convention), not the wind's daily course. No direction.
//
// Two typical years, remade from their monthly means (mean of ten seeds, in brackets measured): spread of
// daily means 4.5 K (2.4) and 4.7 K (4.3), step from day to day 2.6 K (1.1) and 2.7 K (2.4), relative spread
// of the days' sun 0.38 (0.39) and 0.38 (0.32), wind 0.51 (0.40) and 0.51 (0.36), humidity 0.15 (0.15) and
// 0.16 (0.23), diffuse share of the year 0.41 (0.40) and 0.42 (0.44), hours of 98 % humidity or more 1180
// (456) and 1090 (411): its nights are damper than measured ones, whose vapour falls out as dew before the
// air is saturated.
//
// Left out: what links the quantities (clear winter nights are colder, wet days duller and windier), the
// daily course of wind and vapour, hot or cold spells longer than a week or two, warm and cold months, clear
// days' larger swing.
#pragma once

#include <cstdint>

#include "dewgap/climate/hourly_year.hpp"
#include "dewgap/climate/places.hpp"

namespace dewgap {

struct SynthesisedYear {
  /// 8760 hours of local mean time (utc_offset_h is longitude / 15), every column marked as modelled; wind
  /// direction and sky temperature empty.
  HourlyYear hours;
  /// Normals that the place lacks: vapour pressure taken as in DesignCondition, wind as `default_wind_m_s`,
  /// global radiation from sunshine or latitude as monthly_sun does.
  bool vapour_normals_modelled = false;
  bool wind_normals_modelled = false;
  bool sun_normals_modelled = false;
  double largest_max_min_deviation_K = 0.0;  ///< of a month's mean daily maximum or minimum from the normals
  double largest_vapour_deviation = 0.0;     ///< of a month's mean vapour pressure, over the normal
};

/// Throws InvalidInput for an invalid place, a month of clearness above 0.8 (brighter than the correlations
/// know) or with radiation when the sun does not rise, and temperatures or vapour that leave HourlyYear's
/// ranges.
SynthesisedYear synthesised_year(const Place& place, std::uint64_t seed = 1);

}  // namespace dewgap
