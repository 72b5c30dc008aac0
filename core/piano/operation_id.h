// The names of the things a person does and of the ways to get at them: the set-up speaks of them (minutes, turning
// directions), the catalogue of operations (core/operation) says what they do.
#pragma once

#include "core/refusal/refusal.h"

#include <compare>
#include <cstddef>
#include <cstdint>
#include <span>
#include <string_view>

namespace hammerline {

/// Index of a row of the catalogue of operations.
struct OperationId {
    std::uint8_t row{};
    friend constexpr auto operator<=>(OperationId, OperationId) = default;
};

namespace operation {
inline constexpr OperationId balancePunching{0}, frontPunching{1}, capstanTurn{2}, restRailShim{3}, railClothShim{4},
    letOffTurn{5}, dropTurn{6}, checkBend{7}, spoonBend{8}, damperWire{9}, bridleBend{10}, balanceRailShim{11},
    backRailShim{12}, playerScrew{13}, halfBlowRod{14}, pedalRod{15}, leverTiming{16}, inspect{17};
}
/// Rows of every table by operation, by the last id.
inline constexpr std::size_t kOperationCount = operation::inspect.row + 1;

enum class Access : std::uint8_t { keysOff, oneKey, actionIn, actionTilted, actionOut, stackOut, bench, stackIn };
inline constexpr std::size_t kAccesses = 8;

std::string_view key(OperationId);
std::string_view key(Access);
/// Refuses unknownOperation.
Outcome<OperationId> findOperation(std::string_view key);
std::span<const std::string_view> operationKeys();
std::span<const std::string_view> accessKeys();

} // namespace hammerline
