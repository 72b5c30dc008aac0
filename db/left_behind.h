// Passing files beside a book that nobody is writing any more: the laptop died, or the program was killed.
#pragma once

#include "core/history/left_behind.h"
#include "core/refusal/refusal.h"

#include <string>
#include <vector>

namespace hammerline {

/// Of the book and its dated copies, by name. A file that is being written is held (see PassingFile) and not among
/// them. Never throws; a folder that cannot be read has none.
std::vector<LeftBehind> leftBehind(const std::string& book);

/// Gives it a dated name that a person sees, "hall.left-over-20261125-044512.hammerline", and tells that.
Outcome<std::string> keepLeftBehind(const LeftBehind&, const std::string& book);
Outcome<void> deleteLeftBehind(const LeftBehind&);

} // namespace hammerline
