// Gauss-Hermite points and weights for the mean over a standard normal deviate. Not installed.
#pragma once

#include <array>
#include <span>

#include "dewgap/errors.hpp"

namespace dewgap::airflow_kernel {

struct NormalPoint {
  double deviate = 0.0;  ///< in standard deviations from the mean
  double weight = 0.0;   ///< the weights of one rule add up to 1
};

// Roots x of the probabilists' Hermite polynomial He_n and weights n! / (n He_{n-1}(x))^2, computed to 50
// digits (Abramowitz and Stegun 25.4.46 after a change of variable). A rule of n points is exact up to degree
// 2 n - 1.
inline constexpr std::array<NormalPoint, 1> normal_points_1{{{0.0, 1.0}}};
inline constexpr std::array<NormalPoint, 3> normal_points_3{{{-1.73205080756887729, 0.166666666666666667},
                                                             {0.0, 0.666666666666666667},
                                                             {1.73205080756887729, 0.166666666666666667}}};
inline constexpr std::array<NormalPoint, 5> normal_points_5{{{-2.85697001387280565, 0.0112574113277206893},
                                                             {-1.35562617997426587, 0.222075922005612658},
                                                             {0.0, 0.533333333333333333},
                                                             {1.35562617997426587, 0.222075922005612658},
                                                             {2.85697001387280565, 0.0112574113277206893}}};
inline constexpr std::array<NormalPoint, 7> normal_points_7{{{-3.75043971772574226, 5.48268855972217778e-4},
                                                             {-2.36675941073454129, 0.0307571239675864978},
                                                             {-1.15440539473996813, 0.240123178605012713},
                                                             {0.0, 0.457142857142857143},
                                                             {1.15440539473996813, 0.240123178605012713},
                                                             {2.36675941073454129, 0.0307571239675864978},
                                                             {3.75043971772574226, 5.48268855972217778e-4}}};
inline constexpr std::array<NormalPoint, 9> normal_points_9{{{-4.51274586339978267, 2.23458440077465830e-5},
                                                             {-3.20542900285646994, 2.78914132123176881e-3},
                                                             {-2.07684797867783011, 0.0499164067652178772},
                                                             {-1.02325566378913252, 0.244097502894939450},
                                                             {0.0, 0.406349206349206349},
                                                             {1.02325566378913252, 0.244097502894939450},
                                                             {2.07684797867783011, 0.0499164067652178772},
                                                             {3.20542900285646994, 2.78914132123176881e-3},
                                                             {4.51274586339978267, 2.23458440077465830e-5}}};

/// The rule with 1, 3, 5, 7 or 9 points; other counts throw InvalidInput. The middle point is the mean.
inline std::span<const NormalPoint> normal_points(int count) {
  switch (count) {
    case 1:
      return normal_points_1;
    case 3:
      return normal_points_3;
    case 5:
      return normal_points_5;
    case 7:
      return normal_points_7;
    case 9:
      return normal_points_9;
    default:
      throw InvalidInput("points", "permitted are 1, 3, 5, 7 or 9");
  }
}

}  // namespace dewgap::airflow_kernel
