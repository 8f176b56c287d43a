// What is asked at a simulated window, in the order in which it is put into the survey.
#pragma once

#include <array>
#include <functional>
#include <string>
#include <string_view>
#include <vector>

#include "calibration/archetypes.hpp"

namespace dewgap::calibration {

/// What is known after each round. The last two are alternatives: both follow the hygrometer.
enum class Stage : std::size_t {
  prior,
  joints,
  tissue,
  mist,
  hygrometer,
  winter_mist,          ///< a frosty night's mist behind the sheet
  winter_with_humidity  ///< the same night, and the room's temperature and humidity read
};
inline constexpr std::array<Stage, 7> all_stages{Stage::prior,
                                                 Stage::joints,
                                                 Stage::tissue,
                                                 Stage::mist,
                                                 Stage::hygrometer,
                                                 Stage::winter_mist,
                                                 Stage::winter_with_humidity};
std::string_view name_of(Stage stage);

/// A survey and what was read in the first winter.
struct Notes {
  Survey survey;
  std::vector<WinterReading> readings;
};

struct Response {
  std::string label;
  std::function<void(Notes&)> put;
};

/// A question with a few possible answers. Some are asked on one of several occasions (a breezy day, a night
/// at -4 C); each window has one occasion a stage.
struct Question {
  std::string name;
  Stage stage = Stage::joints;
  std::size_t occasion = 0;
  std::size_t occasions = 1;
  /// Of the feelers: the answers are readings of one number, in the order of that number.
  enum class Kind { choice, reading } kind = Kind::choice;
  std::vector<Response> answers;
};
/// All that may be asked at an archetype, on every occasion. The hygrometer is not among them: its answers
/// are numbers.
std::vector<Question> questions_for(const Archetype& archetype);

/// The night of a winter reading.
WinterReading night_of(std::size_t occasion);
inline constexpr std::size_t winter_occasions = 2;

/// Sum of the log-likelihoods of all evidence in the notes that may be used.
std::vector<double> log_likelihood_of(const Scene& scene, const Notes& notes,
                                      const std::vector<UnknownValues>& samples);

}  // namespace dewgap::calibration
