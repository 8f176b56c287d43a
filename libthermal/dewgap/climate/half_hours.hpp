// Hourly means as a course without steps, for steps shorter than an hour.
#pragma once

#include <cstddef>
#include <span>
#include <vector>

namespace dewgap {

/// Means over `parts` equal parts of each hour, in order, of the course that runs straight from the middle of
/// one hour to the middle of the next, with the hourly mean as its height there; the last hour is joined to
/// the first. So `parts` values an hour, 1 to 3600; the hourly means are finite and at least one.
///
/// With parts = 1 the value of an hour is the mean of that same course over it, (1/8, 6/8, 1/8) of the hour
/// and its neighbours: what a step of one hour takes to see the same weather as a step of half an hour does.
/// The parts of an hour have that mean, whatever their number. The mean of the whole is that of the hourly
/// means; the single hour's is not: where the course bends it is off by an eighth of the second difference.
/// Nothing leaves the range of the values given. Values between two given ones of an angle (a wind's
/// direction) are not what is meant by this.
std::vector<double> interpolated(std::span<const double> hourly_means, std::size_t parts);

}  // namespace dewgap
