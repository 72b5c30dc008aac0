// What an act of the book was, in a few words: for "Taken back: 8 E1, key dip 9.9".
#pragma once

#include "core/history/record.h"

#include <QString>

namespace hammerline::words {

/// What `with` has and `without` has not (or has otherwise): the readings, ticks and findings of one act. `with` is
/// the piano before an act was taken back, or after it was done again; `kind` is the act's word in the book, used
/// where the two do not differ in what is shown (another piano's act, a setting).
QString actWords(std::string_view kind, const PianoRecord& with, const PianoRecord& without);

} // namespace hammerline::words
