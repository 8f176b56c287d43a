// Air spaces of coupled windows, Table C.1 of ISO 10077-1.
#include <gtest/gtest.h>

#include "dewgap/errors.hpp"
#include "dewgap/window/whole_window.hpp"
#include "support/not_a_number.hpp"
#include "support/reference.hpp"

namespace dewgap {
namespace {

TEST(CoupledAirSpace, AgreesWithTableC1) {
  const auto compute = [](const test::ReferenceRow& row) {
    return coupled_window_air_space_m2K_W(row.number("width_mm") * 1e-3, row.number("emissivity_outer"),
                                          row.number("emissivity_inner"));
  };
  test::check_reference("iso_10077_1_window/coupled_air_spaces.csv", compute, 0.0007);
}

TEST(CoupledAirSpace, DoesNotMindWhichFaceIsCoated) {
  for (const double width_m : {0.006, 0.012, 0.05, 0.2}) {
    EXPECT_NEAR(coupled_window_air_space_m2K_W(width_m, 0.114, 0.837),
                coupled_window_air_space_m2K_W(width_m, 0.837, 0.114), 1e-12);
  }
}

TEST(CoupledAirSpace, LowerEmissivityInsulatesMore) {
  double last = coupled_window_air_space_m2K_W(0.02, 0.9, 0.837);
  for (const double emissivity : {0.8, 0.6, 0.4, 0.2, 0.1, 0.05}) {
    const double next = coupled_window_air_space_m2K_W(0.02, emissivity, 0.837);
    EXPECT_GT(next, last);
    last = next;
  }
}

TEST(CoupledAirSpace, RejectsBadInput) {
  for (const double bad_m : {0.0019, 0.251, -1.0, test::not_a_number}) {
    EXPECT_THROW(coupled_window_air_space_m2K_W(bad_m, 0.837, 0.837), InvalidInput);
  }
  for (const double bad : {-0.1, 1.1, test::not_a_number}) {
    EXPECT_THROW(coupled_window_air_space_m2K_W(0.02, bad, 0.837), InvalidInput);
    EXPECT_THROW(coupled_window_air_space_m2K_W(0.02, 0.837, bad), InvalidInput);
  }
}

}  // namespace
}  // namespace dewgap
