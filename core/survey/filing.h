// Filing in passes: each is an event of its own (number, day, mm), and their sum counts against the felt that may go.
#pragma once

#include "core/survey/survey.h"

namespace hammerline {

/// Passes that are kept apart; what is filed later adds to the last.
inline constexpr int kFilingPasses = 6;

/// "filed-1" to "filed-6": the fault under which a pass stands beside what was found.
std::string filingFault(int pass);
/// 0: the fault is no filing pass.
int filingPass(std::string_view fault);
/// Hammers were filed here, by so many millimetres: said so, not only planned.
bool isFiled(const Finding&);
/// All passes at the note, mm. 0: none is known.
double filedInAll(std::span<const Finding>, NoteNumber);

} // namespace hammerline
