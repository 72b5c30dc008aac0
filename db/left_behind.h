// Passing files beside a book that nobody is writing any more: the laptop died, or the program was killed.
#pragma once

#include "core/refusal/refusal.h"

#include <cstdint>
#include <string>
#include <vector>

namespace hammerline {

struct LeftBehind {
    enum class Kind : std::uint8_t {
        sound,      // a whole book that could take its place
        broken,     // no whole book
        bookItself, // a second name of the book
        large       // not looked over: that takes seconds
    };
    std::string path;
    Kind kind = Kind::broken;
    std::int64_t newest = 0; // of a sound one: when its newest entry was made, microseconds since 1970 UTC; 0: none
};

/// Of the book and its dated copies, by name. A file that is being written is held (see PassingFile) and not among
/// them. Never throws; a folder that cannot be read has none.
std::vector<LeftBehind> leftBehind(const std::string& book);

/// Gives it a dated name that a person sees, "hall.left-over-20261125-044512.hammerline", and tells that.
Outcome<std::string> keepLeftBehind(const LeftBehind&, const std::string& book);
Outcome<void> deleteLeftBehind(const LeftBehind&);

} // namespace hammerline
