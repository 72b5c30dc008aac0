// What was typed after "hammerline", before the library of the command line reads it: help and version are answered, a
// bare file opens the window, a mistyped word gets a sentence that names the nearest one.
#pragma once

#include "app/option_table.h"

#include <optional>

namespace hammerline::app {

struct TypedWords {
    std::vector<std::string> words;    // to be read on
    std::optional<std::string> answer; // to be printed; nothing else is done
    std::string refusal;               // the sentence, where it cannot be read
};

TypedWords readTypedWords(const std::vector<std::string>& typed, const OptionTable&);

/// A negative number is no option: it goes through the library behind a guard that unguarded() takes off.
std::string unguarded(const std::string&);

/// " See: hammerline help check", for the end of a refusal.
std::string seeHelp(const std::vector<std::string>& words);

} // namespace hammerline::app
