// Chooses the cautions that go with a survey. Internal to assessment/.
#pragma once

#include <vector>

#include "dewgap/assessment/assess.hpp"

namespace dewgap {

std::vector<Caution> cautions_for(const Survey& survey);

}  // namespace dewgap
