// The answer short enough for a phone.
#pragma once

#include <string>

#include "tools/answer/answered_job.hpp"

namespace dewgap::tools {

/// Three short messages sent as one have room for so many characters of the phones' common alphabet.
inline constexpr std::size_t most_message_characters = 459;

/// One window's answer in plain ASCII lines, at most most_message_characters with the last line's end: the
/// headline and what it hangs on, the tape, the saving's range, the size to cut, one caution, and that there
/// is more. Nothing to cut and no saving on HOLD and LEAVE. What does not fit is left out from the least
/// needed, and how many parts are is told. A letter that is not ASCII is written as '?', since it would halve
/// the room.
std::string message(const AnsweredJob& job);

}  // namespace dewgap::tools
