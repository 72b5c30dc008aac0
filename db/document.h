// Files that a person asked for: exports and sheets.
#pragma once

#include "core/refusal/refusal.h"

#include <string>
#include <string_view>

namespace hammerline {

/// Written whole or not at all, over an older file of that name, but never over a bench book. Refuses cannotWrite,
/// diskFull, fileExists.
Outcome<void> writeDocument(const std::string& path, std::string_view bytes);

/// Whether a bench book lies there, sound or damaged, of this version or another: nothing but a book may take its
/// place.
bool isBook(const std::string& path);

} // namespace hammerline
