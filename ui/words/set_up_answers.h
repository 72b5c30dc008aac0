// What a field of the set-up says about itself: what it decides, what holds where it is left empty, how an answer is
// written for people, and what an answer that cannot be would have to be.
#pragma once

#include "core/piano/piano.h"

#include <QString>

namespace hammerline::words {

/// One sentence below the field: "Notes above it have none and are never asked."
QString whatItDecides(std::string_view attribute);
/// What is in force where nothing was said of this piano: "1–26, 27–52, 53–70, 71–88".
QString customaryAnswer(std::string_view attribute, const Piano&);
/// A value as it is stored, written as people write it: commas with blanks, dashes between notes.
QString answerText(std::string_view value);
/// Why a value of an attribute was refused, with what it takes. `allowed` as core gives it.
QString refusedAnswer(std::string_view attribute, std::string_view value, std::string_view allowed);

} // namespace hammerline::words
