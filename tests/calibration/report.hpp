// The tables that the calibration prints.
#pragma once

#include "calibration/prior_effects.hpp"
#include "calibration/summary.hpp"

namespace dewgap::calibration {

void print_bank(const std::vector<BankPart>& bank);
void print_astray(const BankPart& part, const std::vector<AskedQuestion>& asked);
/// One kind of window alone.
void print_kind(const BankPart& part, const Judged& judged);
void print_reliability(const Judged& judged);
void print_summary(const Judged& judged, Hearing hearing);
/// Windows that are settled at every stage, so that all ranks are of the same ones.
void print_ranks(const Judged& judged);
void print_priors(const std::vector<BankPart>& bank, const std::vector<PriorEffect>& effects);

}  // namespace dewgap::calibration
