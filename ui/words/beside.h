// What is said of parts that no list knows and of work that this program gives no advice on.
#pragma once

#include "core/survey/odd_parts.h"

#include <QString>

namespace hammerline::words {

/// "Key lock rail: off, has to go back. Under the keys, bag 4."
QString oddPartSentence(const OddPart&);
/// "Soundboard, crack filled: ribs 3 to 4, the owner, buzz gone. ..." with what may have moved by it.
QString workBesideSentence(const WorkBeside&);
QString placeBesideName(std::string_view place);

} // namespace hammerline::words
