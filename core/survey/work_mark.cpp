#include "core/survey/work_mark.h"

namespace hammerline {

std::string_view key(MarkState state) {
    return state == MarkState::done ? "done" : "not-here";
}

Outcome<MarkState> parseMarkState(std::string_view text) {
    for (const MarkState each : {MarkState::done, MarkState::notHere})
        if (key(each) == text) return each;
    return refuse(RefusalCode::usage, std::string(text), "done or not-here");
}

} // namespace hammerline
