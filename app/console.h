// What a command prints: results to standard output, questions and refusals to standard error, and its exit status.
#pragma once

#include "core/refusal/refusal.h"

#include <QString>

#include <string>

namespace hammerline::app {

inline constexpr int kDone = 0;    // done, nothing outside
inline constexpr int kOutside = 1; // done, something is outside, open or questionable
inline constexpr int kRefused = 2; // refused, nothing changed

/// Prints the refusal (as JSON with --json) and gives kRefused.
int refused(const Refusal&, bool json);

/// One line of plain text for people; nothing with --json.
void say(const QString&, bool json);
/// A question or remark on standard error; nothing with --json (it is in the object).
void ask(const QString&, bool json);
/// The object, with --json only.
void printJson(const std::string& object, bool json);
/// {"done": true, "act": n, ...}
int done(std::int64_t act, bool json, const std::string& moreKeys = {});

} // namespace hammerline::app
