// By what a part is ordered, in words: fields, how an old one is measured, what was measured, what is odd about it.
#pragma once

#include "core/survey/sizes.h"

#include <QString>

namespace hammerline::words {

/// "diameter", "threads per inch".
QString sizeFieldName(std::string_view field);
/// How an old one is measured: "Push the pin out; micrometer in the middle."
QString sizeHow(std::string_view supply);
/// "diameter 1.27 mm, length 12 mm"; empty: nothing was measured.
QString measuredText(const PartsLine&);
/// What an order line says of its size: what was measured, that nothing was yet and how it is, or nothing where it is
/// ordered by name and number alone. With the next numbers of a centre pin.
QString orderedBy(const PartsLine&);
/// "Centre pins, diameter 3: customary is 1.15 to 1.5 mm. Measure again before it is ordered."
QString oddSizeSentence(const PartSize&);
/// What `size.SUPPLY.FIELD` may be of a supply, after one that was none.
QString sizeUsage(std::string_view supply);
/// Why a supply cannot be marked as ordered.
QString notOrderedSentence(std::string_view supply, std::string_view why);

} // namespace hammerline::words
