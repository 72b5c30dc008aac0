// A passing file beside a book that nobody is writing any more, as it was found.
#pragma once

#include <cstdint>
#include <string>

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

} // namespace hammerline
