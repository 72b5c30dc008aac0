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
inline bool overdamper(const Piano& piano) {
    return piano.damping == Damping::overdamper;
}
inline bool dropButton(const Piano& piano) {
    return piano.capstan == Capstan::dropButton;
}

} // namespace hammerline::words::kind
