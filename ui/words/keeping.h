// What is told of books as files: why one cannot be opened or written, what a merge and a rescue came to.
#pragma once

#include "core/history/left_behind.h"
#include "core/history/merging.h"
#include "core/history/record.h"
#include "core/refusal/refusal.h"

#include <QString>

namespace hammerline::words {

/// The detail of a refusal in words, with what to do: "there is no such file; look at its name and folder". Details
/// that are no cause (numbers, ranges) are given back as they are.
QString causeText(RefusalCode, const std::string& detail);

/// Whether restoring a backup or rescuing what can be read is the way on.
bool canBeRescued(const Refusal&);

/// "Merged: 12 readings came in 3 acts. The book as it was before is kept as ...", and how to go back to it: by a
/// command for the book that took them in, or (empty) by the menu of the window.
QString mergeSentence(const Merged&, const std::string& book = {});
QString sentence(const Dispute&);
/// What was left out of a piano because it cannot be true; empty: nothing.
QString leftOutSentence(const PianoRecord&);
/// What verify found, as a phrase: "what was written on 2026-11-25 (entry, act 5) is no longer as it was written".
QString problemText(const std::string& what);
/// "The book is sound." `olderAt`: when what had been written until then got its proof, microseconds since 1970; 0: it
/// always had one.
QString soundSentence(bool sound, std::int64_t olderAt);
/// "Beside the book lies .hall.hammerline.part-1a2b3c4d, left behind by work that was broken off. ...": what it is.
QString leftBehindSentence(const LeftBehind&);
/// What to do with it on the command line.
QString leftBehindAdvice(const LeftBehind&, const std::string& book);
/// An export of a book that is not sound carries no proof.
QString unprovenExportSentence();
QString rescueSentence(const Rescued&, const std::string& path);
/// Where it stands and what was typed.
QString unprovenSentence(const UnprovenReading&);

} // namespace hammerline::words
