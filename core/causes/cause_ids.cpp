#include "core/causes/cause_ids.h"

namespace hammerline {

std::span<const std::string_view> causeKeys() {
    return kCauseKeys;
}

} // namespace hammerline
