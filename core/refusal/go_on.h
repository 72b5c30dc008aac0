// Work that may take a while asks now and then whether it is to go on.
#pragma once

#include <functional>

namespace hammerline {

/// Hears how far long work has come, from 0 to 1, and says whether it is to go on. False: all stays as it was, and the
/// refusal is `cancelled`. It is asked from within the work and must not touch what is worked on. Empty: nobody waits.
using GoOn = std::function<bool(double)>;

} // namespace hammerline
