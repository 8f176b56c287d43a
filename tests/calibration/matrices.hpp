// Every answer to every question against every window of a part of the bank.
#pragma once

#include <vector>

#include "calibration/bank.hpp"
#include "calibration/questions.hpp"

namespace dewgap::calibration {

/// By answer, then by window.
using Matrix = std::vector<std::vector<double>>;

/// `stated`: log-likelihoods as the library states them. `chance`: the logarithm of the chance that the
/// answer is given at the window, which is what answers are drawn with:
///  - of a choice, the stated likelihood over the sum of those of all possible answers;
///  - of a reading, that the true number times its error (normal on the logarithm, as stated) comes nearest
///    to this answer's.
/// Where the sum of the stated likelihoods is the same at every window, the two weigh alike: so for a choice,
/// as long as the library states probabilities. For a reading they differ by what the answers' grid does.
struct AskedQuestion {
  Question question;
  Matrix stated;
  Matrix chance;
};
std::vector<AskedQuestion> asked_questions(const BankPart& part, std::size_t threads);

/// How far the stated likelihoods of a question lead astray: standard deviation, over the windows that an
/// answer makes plausible, of the stated log-likelihood less the chance's; mean over the answers as often as
/// they come. 0: both weigh alike. 1: an ordinary plausible window counts 2.7 times too much or too little.
double astray(const AskedQuestion& asked);

/// Middle and standard deviation of the normal distribution whose logarithm is a parabola through three
/// equally spaced points.
struct Peak {
  double middle = 0.0;
  double sd = 0.0;
};
Peak peak_of(double first, double step, const std::array<double, 3>& log_likelihood);

}  // namespace dewgap::calibration
