// What stands on no list of an action's parts, and what was done where this program advises nothing: kept as it was
// told.
#pragma once

#include "core/refusal/refusal.h"

#include <map>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace hammerline {

/// there: seen, in its place. off: taken off, not decided. returns: off, and it has to go back. stays-off: it will not.
/// back: it was put back.
enum class OddPartState : std::uint8_t { there, off, returns, staysOff, back };
std::string_view key(OddPartState);

/// A part in the user's own words: a key lock rail, a practice felt rail, a heater bar.
struct OddPart {
    std::string name;
    OddPartState state = OddPartState::there;
    std::string told; // where it sits, what it touches and does, which bag
};

/// Work on soundboard, bridges, strings, plate, pin block or case, by whomever: recorded, never advised.
struct WorkBeside {
    std::string_view place; // soundboard
    std::string what, told; // "crack filled"; where, by whom, when, with what, the result
    /// Whether the strings may stand at another height since: what is read from them is to be read again.
    bool movesStrings() const { return place != "case"; }
};

std::span<const std::string_view> placesBeside();

/// "odd-part.NAME=STATE; what it is", "work-done.PLACE.WHAT=where, who, when, result": what is kept with the piano, by
/// name; nothing after the sign takes it back. Refuses usage.
Outcome<std::pair<std::string, std::string>> parseBeside(std::string_view name, std::string_view value);

std::vector<OddPart> oddParts(const std::map<std::string, std::string>& preferences);
std::vector<WorkBeside> workBeside(const std::map<std::string, std::string>& preferences);
/// Whether one of them has to go back before the piano is handed over.
bool oddPartIsMissing(const std::map<std::string, std::string>& preferences);

} // namespace hammerline
