#include "dewgap/numerics/root_finding.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace dewgap::numerics {
namespace {

TEST(FindRoot, FindsKnownRoots) {
  const auto two = find_root([](double x) { return x * x - 2.0; }, 0.0, 2.0);
  EXPECT_EQ(two.status, SolveStatus::converged);
  EXPECT_NEAR(two.root, std::numbers::sqrt2, 1e-12);
  const auto cosine = find_root([](double x) { return std::cos(x) - x; }, 0.0, 1.0);
  EXPECT_NEAR(cosine.root, 0.7390851332151607, 1e-12);
}

TEST(FindRoot, RootAtAnEnd) {
  const auto f = [](double x) { return x - 1.0; };
  EXPECT_EQ(find_root(f, 1.0, 2.0).root, 1.0);
  EXPECT_EQ(find_root(f, 0.0, 1.0).root, 1.0);
  EXPECT_EQ(find_root(f, 0.0, 1.0).status, SolveStatus::converged);
}

TEST(FindRoot, NoSignChangeIsAStatus) {
  EXPECT_EQ(find_root([](double x) { return x * x + 1.0; }, -1.0, 1.0).status, SolveStatus::no_bracket);
  EXPECT_EQ(find_root([](double x) { return std::sqrt(x); }, -2.0, 1.0).status,
            SolveStatus::no_bracket);  // NaN
}

TEST(FindRoot, TooFewIterationsIsAStatus) {
  const auto steep = [](double x) { return std::atan(1e9 * (x - 0.123456)); };
  EXPECT_EQ(find_root(steep, -1e6, 1e6, {1e-14, 3}).status, SolveStatus::iteration_limit);
  EXPECT_EQ(find_root(steep, -1e6, 1e6).status, SolveStatus::converged);
}

}  // namespace
}  // namespace dewgap::numerics
