// Whose piano it is and where it stands: fields that a person fills or leaves empty. Nothing is worked out from them.
#pragma once

#include "core/refusal/refusal.h"

#include <map>
#include <string>

namespace hammerline {

/// By key of a field; a field that is not said is not there. `archived` stands beside them and says "yes".
using Identity = std::map<std::string, std::string>;

/// maker, serial, year, owner, contact, place, room, worker: in the order in which they are asked and shown.
std::span<const std::string_view> identityKeys();
inline constexpr std::string_view kArchived = "archived";

std::string_view identityValue(const Identity&, std::string_view key);
bool isArchived(const Identity&);

/// What is stored of a typed field: trimmed, inner runs of blanks as one; empty takes the field back.
/// Refuses badIdentity: a control character, more than 200 characters, or a year without four digits of 1500 to 2199
/// ("1912", "about 1912" and "1910-1914" are years).
Outcome<std::string> readIdentity(std::string_view key, std::string_view typed);

/// One line of any text a person types: as above without the year.
Outcome<std::string> readLine(std::string_view field, std::string_view typed, std::size_t longest);

} // namespace hammerline
