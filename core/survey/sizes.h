// By what a part is ordered, and how an old one is measured for it (common practice where no source is named).
#pragma once

#include "core/survey/survey.h"

namespace hammerline {

enum class SizeUnit : std::uint8_t { mm, number, word };

/// One figure of an order. `low`, `high`: the customary range, to warn only (0, 0: none is known).
struct SizeField {
    std::string_view key; // diameter
    SizeUnit unit = SizeUnit::mm;
    double low = 0, high = 0;
};

struct SizeRow {
    std::string_view supply;
    std::span<const SizeField> fields;
};

std::span<const SizeRow> sizeRows();
/// Null: ordered by name and number alone.
const SizeRow* sizeRow(std::string_view supply);

/// "centre-pin.diameter" or "damper-felt-clip.width@1-12", with what was measured: millimetres, inches with their sign
/// (kept as mm), a number ("20 1/2"), or a word. Empty takes it back. Refuses unknownPart, usage.
Outcome<PartSize> parseSize(std::string_view name, std::string_view value);
/// As parseSize takes it.
std::string sizeName(const PartSize&);

/// A figure that is outside its customary range: measure again before it is ordered.
bool sizeIsOdd(const PartSize&);

/// Splits lines of pieces by what was measured at their notes, and writes the sizes into all lines.
std::vector<PartsLine> bySize(std::vector<PartsLine>, std::span<const PartSize>, const Piano&);

/// The trade's number of a centre pin: half of what its diameter in thousandths of an inch exceeds ten by, to the next
/// half number; one half is a thousandth of an inch. (A repairer's published table: 18 is 1.17 mm, 20 is 1.27,
/// 20 1/2 is 1.30, 22 is 1.37, 24 is 1.47.)
double pinNumber(double mm);
double pinDiameter(double number); // mm

} // namespace hammerline
