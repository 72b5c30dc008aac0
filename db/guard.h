// The one place where exceptions of SQLite become refusals. Nothing thrown in this folder leaves it.
#pragma once

#include "core/refusal/refusal.h"

#include <exception>
#include <string>
#include <utility>

namespace hammerline {

/// Carries a refusal out of a transaction, so that leaving rolls back.
struct Refused {
    Refusal refusal;
};
[[noreturn]] inline void fail(RefusalCode code, std::string offending = {}, std::string detail = {}) {
    throw Refused{Refusal{code, {}, std::move(offending), std::move(detail)}};
}
/// The value of an outcome of core, or its refusal thrown on.
template <class T>
T orFail(Outcome<T> outcome) {
    if (!outcome) throw Refused{outcome.error()};
    return std::move(*outcome);
}

enum class Doing : std::uint8_t { reading, writing };

/// The refusal for the exception in flight: `offending` is the path, `detail` the cause as machine text.
Refusal refusalInFlight(const std::string& path, Doing);

template <class F>
auto guarded(const std::string& path, Doing doing, F&& work) -> Outcome<decltype(work())> {
    try {
        if constexpr (std::is_void_v<decltype(work())>) {
            work();
            return {};
        } else {
            return work();
        }
    } catch (...) {
        return tl::unexpected<Refusal>(refusalInFlight(path, doing));
    }
}

} // namespace hammerline
