#include "core/piano/operation_id.h"

#include <algorithm>
#include <array>
#include <string>

namespace hammerline {
namespace {

constexpr std::array<std::string_view, kOperationCount> kOperationKeys = {
    "balance-punching", "front-punching", "capstan-turn",  "rest-rail-shim", "rail-cloth-shim", "let-off-turn",
    "drop-turn",        "check-bend",     "spoon-bend",    "damper-wire",    "bridle-bend",     "balance-rail-shim",
    "back-rail-shim",   "player-screw",   "half-blow-rod", "pedal-rod",      "lever-timing",    "inspect"};

constexpr std::array<std::string_view, kAccesses> kAccessKeys = {
    "keys-off", "one-key", "action-in", "action-tilted", "action-out", "stack-out", "bench", "stack-in"};

} // namespace

std::string_view key(OperationId id) {
    return kOperationKeys.at(id.row);
}

std::string_view key(Access access) {
    return kAccessKeys.at(static_cast<std::size_t>(access));
}

Outcome<OperationId> findOperation(std::string_view wanted) {
    const auto found = std::find(kOperationKeys.begin(), kOperationKeys.end(), wanted);
    if (found == kOperationKeys.end()) return refuse(RefusalCode::unknownOperation, std::string{wanted});
    return OperationId{static_cast<std::uint8_t>(found - kOperationKeys.begin())};
}

std::span<const std::string_view> operationKeys() {
    return kOperationKeys;
}

std::span<const std::string_view> accessKeys() {
    return kAccessKeys;
}

} // namespace hammerline
