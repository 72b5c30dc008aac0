// Which kinds of action a row of words is meant for.
#pragma once

#include "core/piano/piano.h"

namespace hammerline::words::kind {

inline bool any(const Piano&) {
    return true;
}
inline bool vertical(const Piano& piano) {
    return piano.vertical();
}
inline bool grand(const Piano& piano) {
    return !piano.vertical();
}

} // namespace hammerline::words::kind
