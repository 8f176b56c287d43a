// The words that print and JSON use for the answer's kinds.
#pragma once

#include <array>
#include <string>
#include <string_view>
#include <vector>

#include "dewgap/assessment/assess.hpp"
#include "dewgap/assessment/vent_advice.hpp"
#include "tools/answer/answered_job.hpp"

namespace dewgap::tools {

/// For JSON: "fit_after".
std::string_view json_word(Headline headline);
std::string_view json_word(VentOption option);
std::string_view json_word(GateKind gate);
std::string_view json_word(Basis basis);
std::string_view json_word(FixingKind fixing);
std::string_view json_word(YearBand band);

/// What a model supplied of the weather, by name: {"wind", "sky temperature"}.
std::vector<std::string_view> modelled_words(const ModelledColumns& modelled);
/// For people: which weather, what of it was modelled and what repaired.
std::string weather_sentence(const std::string& source, const ModelledColumns& modelled,
                             const std::optional<UsedWeather>& file);
/// What a weather file is like in a few figures, and which columns of it are not used.
std::string weather_file_sentence(const UsedWeather& file);
/// "WARNING: ..." for each thing in a weather file that is to be doubted; none without a file.
std::vector<std::string> weather_warnings(const std::optional<UsedWeather>& file);

/// What the year says of an option; nothing when it was not run.
const OptionAdvice* option_of(const VentAdvice& advice, VentOption option);

/// How the tape runs, as an order to the fitter.
std::string tape_order(VentOption option);

/// The same in a few words, for the first line of an answer: "BREAKS: two 20 mm at the bottom".
std::string_view vent_verdict(VentOption option);

/// At most 22 characters, for a table: "2 breaks 20 mm, bottom".
std::string_view short_name(VentOption option);

}  // namespace dewgap::tools
