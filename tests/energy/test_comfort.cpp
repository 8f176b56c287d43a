#include "dewgap/energy/comfort.hpp"

#include <gtest/gtest.h>

#include <array>
#include <boost/math/quadrature/gauss.hpp>
#include <cmath>
#include <numbers>

#include "dewgap/errors.hpp"
#include "dewgap/numerics/split_mix.hpp"
#include "support/not_a_number.hpp"
#include "support/reference.hpp"

namespace dewgap {
namespace {

constexpr std::array<ElementFaces, 6> every_way{ElementFaces::rectangle, ElementFaces::away,
                                                ElementFaces::right,     ElementFaces::left,
                                                ElementFaces::up,        ElementFaces::down};

double by_gauss(const std::function<double(double)>& f, double low, double high) {
  return boost::math::quadrature::gauss<double, 30>::integrate(f, low, high);
}

/// From the whole of a face to another of a box: the mean of the element's factor over it.
double between_faces(const test::ReferenceRow& row) {
  const double a = row.number("a_m");
  const double b = row.number("b_m");
  const double c = row.number("c_m");
  const bool opposite = row.text("pair") == "opposite";
  const double sum = by_gauss(
      [&](double x) {
        return by_gauss(
            [&](double y) {
              // Opposite: the face a x b stands c away. Adjoining: the element lies y from the common edge a.
              return opposite ? view_factor({-x, a - x, -y, b - y, c}, ElementFaces::rectangle)
                              : view_factor({-x, a - x, 0.0, c, y}, ElementFaces::up);
            },
            0.0, b);
      },
      0.0, a);
  return sum / (a * b);
}

TEST(ViewFactor, HandbookFacesOfACube) {
  test::check_reference("view_factors/unit_cube.csv", between_faces);
}

TEST(ViewFactor, ClosedFormOfACorner) {
  const double corner = std::atan(1.0 / std::numbers::sqrt2) / std::numbers::sqrt2 / std::numbers::pi;
  EXPECT_NEAR(view_factor({0.0, 1.0, 0.0, 1.0, 1.0}, ElementFaces::rectangle), corner, 1e-15);
  EXPECT_NEAR(view_factor({0.0, 1.0, 0.0, 1.0, 1.0}, ElementFaces::right), 0.125 - 0.5 * corner, 1e-15);
  EXPECT_NEAR(view_factor({-100.0, 100.0, -100.0, 100.0, 0.001}, ElementFaces::rectangle), 1.0, 1e-9);
}

/// What an element sees of a box about it, wall by wall: each wall as a rectangle, and which way the element
/// looks as seen from there.
TEST(ViewFactor, ClosedRoomsAddUpToOne) {
  numerics::SplitMix64 random(7);
  for (int room = 0; room < 200; ++room) {
    std::array<double, 6> to{};  // distances to +x, -x, +y, -y, +z, -z
    for (double& distance : to) {
      distance = 0.05 + 6.0 * random.inside_unit_interval();
    }
    // The element looks to +z. The wall there, the four beside it; the one behind it is not seen.
    double sum = view_factor({-to[1], to[0], -to[3], to[2], to[4]}, ElementFaces::rectangle) +
                 view_factor({-to[1], to[0], -to[3], to[2], to[5]}, ElementFaces::away);
    for (const std::size_t wall : {0u, 1u}) {
      sum += view_factor({-to[3], to[2], -to[5], to[4], to[wall]}, ElementFaces::up);
    }
    for (const std::size_t wall : {2u, 3u}) {
      sum += view_factor({-to[1], to[0], -to[5], to[4], to[wall]}, ElementFaces::up);
    }
    EXPECT_NEAR(sum, 1.0, 1e-12);
  }
}

TEST(ViewFactor, IsTheIntegralOfItsDefinition) {
  const RectangleSeen r{-0.3, 0.9, -0.2, 1.1, 0.8};
  const auto integral = [&](auto cosine_at_element) {
    return by_gauss(
               [&](double y) {
                 const auto along = [&](double x) {
                   const double square = x * x + y * y + r.distance_m * r.distance_m;
                   return std::max(0.0, cosine_at_element(x, y)) * r.distance_m /
                          (std::numbers::pi * square * square);
                 };
                 return by_gauss(along, r.left_m, 0.0) + by_gauss(along, 0.0, r.right_m);
               },
               r.low_m, 0.0) +
           by_gauss(
               [&](double y) {
                 const auto along = [&](double x) {
                   const double square = x * x + y * y + r.distance_m * r.distance_m;
                   return std::max(0.0, cosine_at_element(x, y)) * r.distance_m /
                          (std::numbers::pi * square * square);
                 };
                 return by_gauss(along, r.left_m, 0.0) + by_gauss(along, 0.0, r.right_m);
               },
               0.0, r.high_m);
  };
  EXPECT_NEAR(view_factor(r, ElementFaces::rectangle), integral([&](double, double) { return r.distance_m; }),
              1e-9);
  EXPECT_NEAR(view_factor(r, ElementFaces::right), integral([](double x, double) { return x; }), 1e-9);
  EXPECT_NEAR(view_factor(r, ElementFaces::left), integral([](double x, double) { return -x; }), 1e-9);
  EXPECT_NEAR(view_factor(r, ElementFaces::up), integral([](double, double y) { return y; }), 1e-9);
  EXPECT_NEAR(view_factor(r, ElementFaces::down), integral([](double, double y) { return -y; }), 1e-9);
}

TEST(ViewFactor, HalvesAddAndMirrorsAgree) {
  const RectangleSeen whole{-0.4, 0.7, 0.2, 1.6, 1.0};
  auto below = whole;
  auto above = whole;
  below.high_m = above.low_m = 0.9;
  for (const auto faces : every_way) {
    EXPECT_NEAR(view_factor(whole, faces), view_factor(below, faces) + view_factor(above, faces), 1e-15);
  }
  EXPECT_NEAR(view_factor(whole, ElementFaces::right),
              view_factor({-0.7, 0.4, 0.2, 1.6, 1.0}, ElementFaces::left), 1e-15);
  EXPECT_EQ(view_factor(whole, ElementFaces::down), 0.0) << "it stands above the element";
}

TEST(RadiantView, EvenRoomsHaveOneTemperatureAndColdWindowsPull) {
  const RectangleSeen window{-0.45, 0.45, 0.2, 1.6, 1.0};
  const auto even = radiant_view(window, 20.0, 20.0);
  EXPECT_NEAR(even.mean_radiant_C, 20.0, 1e-9);
  EXPECT_NEAR(even.asymmetry_K, 0.0, 1e-9);
  double last_C = 20.0;
  for (const double cold_C : {15.0, 5.0, -5.0}) {
    const auto view = radiant_view(window, cold_C, 20.0);
    EXPECT_LT(view.mean_radiant_C, last_C);
    EXPECT_GT(view.mean_radiant_C, cold_C);
    EXPECT_GT(view.asymmetry_K, 0.0);
    EXPECT_NEAR(view.asymmetry_K, view.view_factor * (20.0 - cold_C),
                0.15 * view.view_factor * (20.0 - cold_C))
        << "linear in the view factor but for the fourth power";
    last_C = view.mean_radiant_C;
  }
}

TEST(OperativeTemperature, ByHand) {
  EXPECT_DOUBLE_EQ(operative_temperature_C(20.0, 16.0, 0.1), 18.0);
  EXPECT_DOUBLE_EQ(operative_temperature_C(20.0, 16.0, 0.4), 18.4);
  EXPECT_DOUBLE_EQ(operative_temperature_C(20.0, 16.0, 0.8), 18.8);
}

TEST(CoolWall, FollowsItsCurveAndFlagsItsEnd) {
  EXPECT_EQ(dissatisfied_by_cool_wall(0.0).per_cent, 0.0);
  EXPECT_EQ(dissatisfied_by_cool_wall(-5.0).per_cent, 0.0);
  EXPECT_NEAR(dissatisfied_by_cool_wall(10.0).per_cent, 100.0 / (1.0 + std::exp(3.16)), 1e-12);
  EXPECT_TRUE(dissatisfied_by_cool_wall(14.9).flags.empty());
  EXPECT_TRUE(dissatisfied_by_cool_wall(15.0).flags.has(ValidityFlag::radiant_asymmetry_range));
}

TEST(Downdraught, IsHeiselbergsAndNearlyContinuous) {
  const double root = std::sqrt(2.0 * 8.0);
  EXPECT_NEAR(downdraught(2.0, 8.0, 0.2).speed_m_s, 0.055 * root, 1e-15);
  EXPECT_NEAR(downdraught(2.0, 8.0, 1.0).speed_m_s, 0.095 * root / 2.32, 1e-15);
  EXPECT_NEAR(downdraught(2.0, 8.0, 3.0).speed_m_s, 0.028 * root, 1e-15);
  EXPECT_NEAR(downdraught(2.0, 8.0, 1.0).cooler_K, 8.0 * 0.266, 1e-12);
  for (const double seam_m : {0.4, 2.0}) {
    const auto before = downdraught(2.0, 8.0, seam_m - 1e-9);
    const auto after = downdraught(2.0, 8.0, seam_m + 1e-9);
    EXPECT_NEAR(before.speed_m_s, after.speed_m_s, 0.025 * before.speed_m_s) << "as published";
    EXPECT_NEAR(before.cooler_K, after.cooler_K, 0.01 * before.cooler_K) << "as published";
  }
}

TEST(Downdraught, FlagsWhatItWasNotMadeFor) {
  EXPECT_TRUE(downdraught(2.0, 8.0, 1.0).flags.empty());
  EXPECT_TRUE(downdraught(0.9, 8.0, 1.0).flags.has(ValidityFlag::downdraught_range));
  EXPECT_TRUE(downdraught(2.0, 1.0, 1.0).flags.has(ValidityFlag::downdraught_range));
  EXPECT_TRUE(downdraught(2.0, 8.0, 1.0, 0.8).flags.has(ValidityFlag::downdraught_over_sill));
  const auto none = downdraught(2.0, -3.0, 1.0);
  EXPECT_EQ(none.speed_m_s, 0.0);
  EXPECT_EQ(none.cooler_K, 0.0);
}

TEST(DraughtRating, ByHandWithItsConditions) {
  EXPECT_NEAR(draught_rating(22.0, 0.15, 40.0).per_cent,
              12.0 * std::pow(0.10, 0.62) * (0.37 * 0.15 * 40.0 + 3.14), 1e-12);
  EXPECT_TRUE(draught_rating(22.0, 0.15).flags.empty());
  EXPECT_EQ(draught_rating(22.0, 0.02).per_cent, 0.0) << "still air draws nobody's notice";
  EXPECT_EQ(draught_rating(5.0, 2.0).per_cent, 100.0);
  for (const auto& out : {draught_rating(18.0, 0.15), draught_rating(22.0, 0.6),
                          draught_rating(22.0, 0.15, 70.0), draught_rating(26.5, 0.1)}) {
    EXPECT_TRUE(out.flags.has(ValidityFlag::draught_rating_range));
  }
}

TEST(Comfort, RejectsBadInput) {
  for (const double bad : {test::not_a_number, 1e6}) {
    EXPECT_THROW(view_factor({-0.5, bad, 0.0, 1.0, 1.0}, ElementFaces::up), InvalidInput);
    EXPECT_THROW(view_factor({-0.5, 0.5, 0.0, 1.0, bad}, ElementFaces::up), InvalidInput);
    EXPECT_THROW(plane_radiant_temperature_C(bad, 0.0, 20.0), InvalidInput);
    EXPECT_THROW(operative_temperature_C(20.0, bad, 0.1), InvalidInput);
    EXPECT_THROW(dissatisfied_by_cool_wall(bad), InvalidInput);
    EXPECT_THROW(downdraught(bad, 8.0, 1.0), InvalidInput);
    EXPECT_THROW(downdraught(2.0, bad, 1.0), InvalidInput);
    EXPECT_THROW(draught_rating(bad, 0.1), InvalidInput);
    EXPECT_THROW(thermal_sensation({.metabolic_met = bad}, {}), InvalidInput);
    EXPECT_THROW(thermal_sensation({}, {.vapour_Pa = bad}), InvalidInput);
  }
  EXPECT_THROW(view_factor({0.5, 0.5, 0.0, 1.0, 1.0}, ElementFaces::up), InvalidInput);
}

}  // namespace
}  // namespace dewgap
