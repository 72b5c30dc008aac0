// The first lines of the owner's record: what a player notices, before the trade's own words.
#pragma once

#include "ui/print/document.h"
#include "ui/print/documents.h"

namespace hammerline::print {

/// How the piano was found, what that does to playing, and how it is left; empty where nothing was measured.
std::vector<Paragraph> ownersWords(const Source&);

} // namespace hammerline::print
