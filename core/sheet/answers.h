// Answers to a second opinion: plain text that a page saved or that was typed in a mail, read back as advice.
#pragma once

#include "core/history/record.h"

namespace hammerline {

/// The name by which a page and its answer call what a line is about: "40 hammer worn", "- back-rail-cloth",
/// "pass 2", "piano".
std::string answerCode(const About&);

/// Reads lines of the form "[40 hammer worn] file again": each begins an answer, which goes on to the next one.
/// Lines "piano: UUID", "who: NAME" and "on: YYYY-MM-DD" may stand above; quote marks of mails (">") and all before the
/// first answer are passed over. An empty answer says nothing. `today` where the text names no day.
/// Refuses otherPiano (the text names another one), unknownNote, unknownPart, ... with the line, and emptyFile where
/// nothing was answered.
Outcome<std::vector<Remark>> readAnswers(std::string_view text, const PianoRecord&, const std::string& today,
                                         const std::string& who = {});

/// Those that the record does not hold yet: an answer may come twice.
std::vector<Remark> notYetSaid(std::span<const Remark> answers, const PianoRecord&);

} // namespace hammerline
