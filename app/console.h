// What a command prints: results to standard output, questions and refusals to standard error, and its exit status.
#pragma once

#include "core/refusal/refusal.h"

#include <QString>

#include <concepts>
#include <string>

namespace hammerline::app {

inline constexpr int kDone = 0;    // done, nothing outside
inline constexpr int kOutside = 1; // done, something is outside, open or questionable
inline constexpr int kRefused = 2; // refused, nothing changed

/// Prints the refusal (as JSON with --json) and gives kRefused.
int refused(const Refusal&, bool json);

/// Into the file as writeDocument, or to standard output where the path is "-".
Outcome<void> writeOut(const std::string& path, std::string_view bytes);
/// "Written: list.pdf", "2 pages: list.pdf"; nothing where the document itself went to standard output.
void sayWritten(const QString& line, const std::string& path, bool json);
/// One line of plain text for people; nothing with --json.
void say(const QString&, bool json);
/// A text of the context "console"; `n`: what its %n counts.
QString inConsole(const char* text);
QString countedInConsole(const char* text, int n);
template <std::integral N>
QString inConsole(const char* text, N n) {
    return countedInConsole(text, static_cast<int>(n));
}
/// Whole sentences in the place of tables from now on (--spoken): for a voice, not for the eye.
void speakSentences();
bool sentencesWanted();
/// Nothing is asked or remarked on standard error from now on (--quiet).
void beQuiet();
/// False, after a sentence on standard error, where standard output could not take all that was printed.
bool outputKept();
/// A question or remark on standard error; nothing with --json (it is in the object).
void ask(const QString&, bool json);
/// The object, with --json only.
void printJson(const std::string& object, bool json);
/// {"done": true, "act": n, ...}
int done(std::int64_t act, bool json, const std::string& moreKeys = {});

} // namespace hammerline::app
