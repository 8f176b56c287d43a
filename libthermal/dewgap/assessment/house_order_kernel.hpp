// Which window to do first. Internal to assessment/.
#pragma once

#include "dewgap/assessment/house_totals_kernel.hpp"

namespace dewgap {

HouseOrder order_for_money(const std::vector<CountedWindow>& windows);
HouseOrder order_for_damp(const std::vector<CountedWindow>& windows);

/// Adds up the air lost along an order, and finds where it passes the limit.
HouseOrder with_air_lost(HouseOrder order, const std::vector<CountedWindow>& windows, std::uint64_t seed,
                         const std::optional<double>& limit_m3_h);

}  // namespace dewgap
