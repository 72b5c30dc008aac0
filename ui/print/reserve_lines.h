// What is left and what settles, as paragraphs of the owner's record.
#pragma once

#include "ui/print/document.h"
#include "ui/print/documents.h"

namespace hammerline::print {

/// Of each kind the note with the least; none while nothing of them is known.
std::vector<Paragraph> reserveLines(const Source&);
/// What is new and settles, with what is read then and where the band is from.
std::vector<Paragraph> settlingLines(const PianoRecord&);

} // namespace hammerline::print
