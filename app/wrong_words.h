// What is wrong with the words after a command, before the library reads them: one sentence that names the option, what
// it takes and what was typed. The library's own messages are raw.
#pragma once

#include "app/option_table.h"

namespace hammerline::app {

/// Empty where nothing is wrong. `words`: the command first.
std::string wrongWords(const std::vector<std::string>& words, const CommandRow&);

/// "21,5" of an option that takes a number with decimals becomes "21.5", as readings are taken.
void acceptDecimalComma(std::vector<std::string>& words, const CommandRow&);

/// "-0.3", "-,3": a value, no option.
bool isNegativeNumber(const std::string& word);

} // namespace hammerline::app
