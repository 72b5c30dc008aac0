// Text of a person, a file or a path as it may stand on a terminal or in a sentence.
#pragma once

#include <QString>

namespace hammerline::words {

/// Control characters (Unicode general category Cc, but for line ends and tabs) and those that turn the direction of
/// writing round (Unicode Annex 9: LRM, RLM, ALM, embeddings, overrides, isolates) made visible, as \x1b or \u202e: a
/// terminal obeys them.
QString plainly(const QString& text);

/// The beginning and the end of what is longer than `most` characters, with … between.
QString shortened(const QString& text, int most);

} // namespace hammerline::words
