// Numbers in the sentences that the fitting room writes. Private to the room.
#pragma once

#include <string>

namespace dewgap::fitting {

/// A number with fixed digits after the point, whatever the locale.
std::string fixed_text(double value, int digits);
/// A length in millimetres with its unit: whole ("1003 mm") or with one digit ("2.7 mm").
std::string whole_mm_text(double length_m);
std::string tenth_mm_text(double length_m);

/// "4 mm bends 24 mm in a gust of 50 Pa, 22 mm allowed: ". Far beyond the limit thin-plate theory gives no
/// deflection worth a figure.
std::string bends_text(double thickness_m, double deflection_m, double limit_m, double gust_Pa);

/// Nearest whole millimetre, and the whole millimetres that fit (a millionth of one is rounding, not a
/// shortage).
int nearest_mm(double length_m);
int fitting_mm(double length_m);

}  // namespace dewgap::fitting
