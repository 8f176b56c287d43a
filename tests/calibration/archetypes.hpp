// The invented windows whose simulated years make up the bank.
#pragma once

#include <string>
#include <vector>

#include "dewgap/assessment/scenario_kernel.hpp"
#include "dewgap/assessment/year_run_kernel.hpp"

namespace dewgap::calibration {

enum class Joints { can_be_felt, painted_shut, none };

/// What is known of a window before anyone looks closer: nothing that counts as evidence.
struct Archetype {
  std::string name;
  Survey survey;
  Joints joints = Joints::can_be_felt;
};
std::vector<Archetype> archetypes();

/// An archetype with the columns of its year, modelled from its place. They point to each other.
struct Scene {
  explicit Scene(Archetype of);
  Scene(const Scene&) = delete;
  Scene& operator=(const Scene&) = delete;

  Archetype archetype;
  Setting setting;
  YearSetting year;
  std::vector<VentOption> options;  ///< offered, simplest first
};

/// The 30 days from December alone, for tests.
void keep_one_month(YearSetting& year);

}  // namespace dewgap::calibration
