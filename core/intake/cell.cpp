#include "core/intake/cell.h"

#include "core/intake/dates.h"
#include "core/intake/slips.h"
#include "core/pass/height_datum.h"
#include "core/units/code_points.h"
#include "core/units/exact.h"

#include <algorithm>

namespace hammerline {
namespace {

using namespace dimension;

constexpr std::int64_t kSlipLow = 8 * kNmPerMm;
constexpr std::int64_t kBedLow = 40 * kNmPerMm;
constexpr std::int64_t kBedHigh = 100 * kNmPerMm;

/// A height over the bed, or over the slip where the pass is read so: sharps have one too.
bool isAbsolute(DimensionId id, std::int64_t count, bool heightsFromSlip) {
    return isFromBed(id, count) || (heightsFromSlip && id == keyHeight && datumOf(count) == "slip");
}

Outcome<TypedQuantity> ofTheBlow(TypedQuantity quantity, DimensionId id, std::string_view typed,
                                 const CellContext& context) {
    const auto whole = context.known[blow];
    if (!whole || *whole <= 0) return refuse(RefusalCode::wrongUnit, std::string{typed}, "blow");
    const bool toLength = id == damperStart;
    for (std::int64_t* count : {&quantity.count, &quantity.upper}) {
        const Wide part = toLength ? dividedHalfAway(Wide{*whole} * *count, 100 * kPerPercent)
                                   : dividedHalfAway(Wide{*count} * 100 * kPerPercent, *whole);
        const auto fits = narrowed(part);
        if (!fits) return refuse(RefusalCode::outOfRange, std::string{typed});
        *count = *fits;
    }
    return quantity;
}

/// The unit of the other kind that a dimension may also be typed in.
std::optional<Unit> otherUnit(DimensionId id) {
    if (id == damperStart) return Unit::percent;
    if (id == halfBlow) return Unit::mm;
    return std::nullopt;
}

bool allLetters(std::string_view folded) {
    return std::all_of(folded.begin(), folded.end(), [](char c) {
        return (c >= 'a' && c <= 'z') || c == ' ' || c == '-' || c == '\'' || static_cast<unsigned char>(c) >= 0x80;
    });
}

bool beginsWithLetter(std::string_view folded) {
    return !folded.empty() && folded.front() >= 'a' && folded.front() <= 'z' && !folded.starts_with("gap");
}

Reading readingOf(std::string_view typed, const TypedQuantity& quantity) {
    Reading reading;
    reading.count = quantity.count;
    reading.upper = quantity.upper;
    reading.relation = quantity.relation;
    reading.typed = typed;
    reading.typedUnit = key(quantity.unit);
    return reading;
}

Entry soundEntry(Reading reading, bool fromBed = false) {
    Entry entry;
    entry.sound = std::move(reading);
    entry.fromBed = fromBed;
    return entry;
}

Question question(std::string_view typed, Cell cell, Doubt doubt, std::string_view slip, std::string suggestion = {}) {
    Question asked;
    asked.cell = cell;
    asked.text = typed;
    asked.doubt = doubt;
    asked.slip = slip;
    asked.suggestion = std::move(suggestion);
    return asked;
}

std::string rangeText(const Limits& limits, DimensionId id) {
    const Kind kind = row(id).kind;
    const auto unit = kind == Kind::length ? Unit::mm : kind == Kind::mass ? Unit::gram : Unit::percent;
    return exactText(limits.refuseLow, kind) + ".." + exactText(limits.refuseHigh, kind) + " " + std::string{key(unit)};
}

/// The bounds that a reading states: one, or the two of a pair.
template <class Test>
bool anyBound(const TypedQuantity& quantity, Test test) {
    return test(quantity.count) || (quantity.relation == Relation::between && test(quantity.upper));
}

/// A date that a spreadsheet made of a fraction is never a number (situation 64).
std::optional<Question> askAboutDate(std::string_view typed, std::string_view folded, Cell cell,
                                     const CellContext& context) {
    const DateText date = readDate(folded);
    if (!date.isDate) return std::nullopt;
    Question asked = question(typed, cell, Doubt::date, "date-from-fraction");
    asked.mayTake = false;
    std::vector<std::string> fitting;
    for (const std::string& origin : date.origins) {
        const auto quantity = readQuantityOf(origin, cell.dimension, context);
        if (quantity && isSound(*quantity, cell, context)) fitting.push_back(origin);
    }
    if (fitting.size() == 1) asked.suggestion = fitting.front(); // 2/4 and 4/2 stay with the person
    return asked;
}

/// Other readings of the note that this one contradicts (bench-practice 2.3): let-off, checking and damper start are
/// shorter than the blow, the hammer checks farther away than it lets off, a drop from the string is behind the
/// let-off.
struct Order {
    DimensionId nearer, farther;
    std::string_view slip;
};
constexpr std::array kOrders = {
    Order{letOff, blow, "let-off-against-blow"},
    Order{checking, blow, "checking-against-blow"},
    Order{damperStart, blow, "damper-start-against-blow"},
    Order{letOff, checking, "checking-against-let-off"},
};

std::string_view contradiction(DimensionId id, const TypedQuantity& quantity, const CellContext& context) {
    if (!context.compare || quantity.relation != Relation::equal) return {};
    const auto against = [&](DimensionId nearer, DimensionId farther) {
        const auto low = id == nearer ? std::optional{quantity.count} : context.known[nearer];
        const auto high = id == farther ? std::optional{quantity.count} : context.known[farther];
        return (id == nearer || id == farther) && low && high && *low >= *high;
    };
    for (const Order& order : kOrders)
        if (against(order.nearer, order.farther)) return order.slip;
    if (context.dropFromString && against(letOff, dimension::drop)) return "drop-against-let-off";
    return {};
}

/// The up weight is below the down weight, always: friction cannot be negative (computation 12).
bool upAboveDown(DimensionId id, const TypedQuantity& quantity, const CellContext& context) {
    const auto down = id == downWeight ? std::optional{quantity.count} : context.known[downWeight];
    const auto up = id == upWeight ? std::optional{quantity.count} : context.known[upWeight];
    return (id == downWeight || id == upWeight) && quantity.relation == Relation::equal && down && up && *up >= *down;
}

Outcome<Entry> judged(std::string_view typed, std::string_view folded, Cell cell, const TypedQuantity& quantity,
                      const CellContext& context) {
    const Limits limits = limitsOf(cell, quantity.count, *context.piano, context.heightsFromSlip);
    const bool refused = anyBound(quantity, [&](auto count) { return limits.refuses(count); });
    const bool fromBed = isFromBed(cell.dimension, quantity.count);
    const bool absolute = isAbsolute(cell.dimension, quantity.count, context.heightsFromSlip);
    if (!absolute && !fitted(cell.dimension, cell.note, *context.piano))
        return refuse(RefusalCode::notFitted, std::string{typed});
    if (!refused && upAboveDown(cell.dimension, quantity, context))
        return refuse(RefusalCode::upNotBelowDown, std::string{typed});
    const bool sound =
        isSound(quantity, cell, context) && !groupingOpen(folded, quantity, context) && !offTheRuler(folded, quantity);
    const auto against = contradiction(cell.dimension, quantity, context);
    if (sound && against.empty()) return soundEntry(readingOf(typed, quantity), fromBed);

    const auto slip = sound ? std::nullopt : likelySlip(folded, quantity, cell, context);
    if (refused && !slip && cell.dimension == keyHeight && datumOf(quantity.count) == "slip")
        return refuse(RefusalCode::otherDatum, std::string{typed}, "line");
    if (refused && !slip) return refuse(RefusalCode::outOfRange, std::string{typed}, rangeText(limits, cell.dimension));
    Question asked = slip ? question(typed, cell, Doubt::likelySlip, slip->id, slip->suggestion)
                          : question(typed, cell, Doubt::outOfRange, against);
    asked.mayTake = !refused;
    if (asked.mayTake) {
        asked.asTyped = readingOf(typed, quantity);
        asked.asTyped->taken = true;
    }
    Entry entry;
    entry.question = std::move(asked);
    entry.fromBed = fromBed;
    return entry;
}

} // namespace

bool isFromBed(DimensionId id, std::int64_t count) {
    return id == keyHeight && datumOf(count) == "bed";
}

Limits limitsOf(Cell cell, std::int64_t count, const Piano& piano, bool heightsFromSlip) {
    const bool sharp = colourOf(cell.note, piano) == KeyColour::sharp;
    if (isFromBed(cell.dimension, count)) // naturals 55 to 75; sharps stand 10 to 14 above them
        return {kBedLow, kBedHigh, (sharp ? 65 : 55) * kNmPerMm, (sharp ? 89 : 75) * kNmPerMm};
    if (isAbsolute(cell.dimension, count, heightsFromSlip)) // naturals about 20 to 22 over the slip
        return {kSlipLow, kBedLow, (sharp ? 24 : 14) * kNmPerMm, (sharp ? 40 : 28) * kNmPerMm};
    const Dimension& d = row(cell.dimension);
    return {d.refuseLow, d.refuseHigh, d.askLow, d.askHigh};
}

Outcome<TypedQuantity> readQuantityOf(std::string_view typed, DimensionId id, const CellContext& context) {
    const Kind kind = row(id).kind;
    const auto other = otherUnit(id);
    auto quantity = parseQuantity(typed, context.bare);
    if (!quantity && quantity.error().code == RefusalCode::wrongUnit && other) {
        const Unit second = kindOf(context.bare) == kind ? *other : row(id).entryUnit;
        quantity = parseQuantity(typed, second);
    }
    if (!quantity || kindOf(quantity->unit) == kind) return quantity;
    if (!other) return refuse(RefusalCode::wrongUnit, std::string{typed});
    return ofTheBlow(*quantity, id, typed, context);
}

bool isDoubtful(const TypedQuantity& quantity, Cell cell, const CellContext& context) {
    const Limits limits = limitsOf(cell, quantity.count, *context.piano, context.heightsFromSlip);
    return anyBound(quantity, [&](auto count) { return limits.refuses(count) || limits.asks(count); });
}

bool isSound(const TypedQuantity& quantity, Cell cell, const CellContext& context) {
    const bool fits = isAbsolute(cell.dimension, quantity.count, context.heightsFromSlip) ||
                      fitted(cell.dimension, cell.note, *context.piano);
    return fits && !isDoubtful(quantity, cell, context) && !quantity.askUnit && !(quantity.gap && quantity.count > 0);
}

Outcome<Entry> readCell(std::string_view typed, Cell cell, const CellContext& context) {
    const std::string_view text = trimmedAscii(typed);
    const std::string plain = folded(text);
    if (plain.empty()) return refuse(RefusalCode::unreadable, std::string{cutUtf8(typed, 200)});
    if (!context.piano->contains(cell.note)) return refuse(RefusalCode::unknownNote, std::to_string(cell.note.value));
    // a sharp has no height against the naturals' line, but one from the bed: its number decides
    const bool fits = fitted(cell.dimension, cell.note, *context.piano);
    if (!fits && cell.dimension != keyHeight) return refuse(RefusalCode::notFitted, std::string{text});
    if (beginsWithLetter(plain)) {
        if (const auto word = findWord(plain, cell.dimension)) {
            if (!fits) return refuse(RefusalCode::notFitted, std::string{text});
            Reading reading;
            reading.word = *word;
            reading.typed = text;
            return soundEntry(std::move(reading));
        }
    }
    if (row(cell.dimension).wordsOnly)
        return refuse(RefusalCode::unknownWord, std::string{cutUtf8(text, 200)}, wordsAllowed(cell.dimension));
    const auto quantity = readQuantityOf(text, cell.dimension, context);
    const bool mayBeDate = !quantity || plain.size() == 5; // serial days have five digits
    if (auto date = mayBeDate ? askAboutDate(text, plain, cell, context) : std::nullopt) {
        Entry entry;
        entry.question = std::move(*date);
        return entry;
    }
    if (quantity) return judged(text, plain, cell, *quantity, context);
    Refusal refusal = quantity.error();
    if (refusal.code == RefusalCode::unreadable && allLetters(plain)) {
        refusal.code = RefusalCode::unknownWord;
        refusal.detail = wordsAllowed(cell.dimension);
        refusal.detail += refusal.detail.empty() ? "number" : "|number";
    }
    refusal.offending = cutUtf8(text, 200);
    return tl::unexpected{std::move(refusal)};
}

} // namespace hammerline
