// One sequential scale of shades, for pictures of figures.
#pragma once

#include <string>

namespace dewgap::tools {

/// "#rrggbb" of a share of the scale, 0 (nearly white) to 1 (nearly black, blue); outside that it throws
/// std::domain_error. Own scale: evenly spaced in lightness, so that it is monotone in grey and to every kind
/// of colour vision.
std::string shade(double share);

/// "#000000" or "#ffffff": which is read better on that shade.
std::string ink_on_shade(double share);

}  // namespace dewgap::tools
