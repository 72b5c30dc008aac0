#include "core/stroke/account.h"

#include <algorithm>
#include <cmath>

namespace hammerline {

namespace {

constexpr double kCounts = 0.15;   // mm at the key's front; common practice, no source: what a finger tells apart
constexpr double kAgreement = 0.4; // mm: the least difference of computed and read that is said; same

/// What one mm of the dimension gives at the key's front.
double weightOf(DimensionId id, double ratio) {
    if (id == dimension::keyDip) return 1;
    if (id == dimension::lostMotion) return -1;
    if (id == dimension::letOff) return 1 / ratio;
    return -1 / ratio; // blow
}

std::optional<double> readingOf(const EscapementReading& reading, DimensionId id) {
    if (id == dimension::keyDip) return reading.dip;
    // A hammer that is held off its rail has no way to lose: the blow that was read is short already.
    if (id == dimension::lostMotion && reading.lostMotion) return std::max(*reading.lostMotion, 0.0);
    if (id == dimension::lostMotion) return std::nullopt;
    if (id == dimension::letOff && reading.letOffBound) return std::nullopt;
    if (id == dimension::letOff && reading.aftertouchBound) return std::nullopt;
    if (id == dimension::letOff) return reading.letOff;
    return reading.blow;
}

std::vector<DimensionId> linesOf(const Piano& piano) {
    if (!piano.vertical()) return {dimension::keyDip, dimension::letOff, dimension::blow};
    return {dimension::keyDip, dimension::lostMotion, dimension::letOff, dimension::blow};
}

std::optional<double> aimOf(const Zones& zones, Cell cell) {
    const std::optional<Zone>& zone = zones.at(cell);
    if (!zone) return std::nullopt;
    return toTrade(zone->nominal, Kind::length);
}

std::optional<double> sumOf(const std::vector<DipTerm>& terms, std::optional<double> DipTerm::*share) {
    double sum = 0;
    for (const DipTerm& term : terms) {
        if (!(term.*share)) return std::nullopt;
        sum += *(term.*share);
    }
    return sum;
}

/// Readings are independent of one another and of the ratio. Their part of the sum, mm2 at the key's front; a line that
/// is not read has none:
///     u(A)^2 = sum (weight u)^2 + ((B - O) s/R^2)^2,   s the spread of the ratio between notes.
double squareOfReadings(const Piano& piano, const PassTable& table, const DipAccount& account) {
    double square = 0;
    for (const DipTerm& term : account.terms) {
        if (!term.reading) continue;
        const Cell cell{account.note, term.dimension};
        const double single = toTrade(uncertaintyOf(term.dimension, piano), Kind::length);
        const double u = single / std::sqrt(std::max(1, table.repeats(cell)));
        const double weighed = weightOf(term.dimension, account.ratio.value) * u;
        square += weighed * weighed;
    }
    return square;
}

double squareOfRatio(const Ratio& ratio, double travel) {
    const double byRatio = travel * ratio.spread / (ratio.value * ratio.value);
    return byRatio * byRatio;
}

/// Hammer travel B - O, mm, from the key that is left for it.
double travelFrom(const DipAccount& account) {
    double key = -*account.read;
    for (const DipTerm& term : account.terms) {
        const bool ofTheKey = term.dimension == dimension::keyDip || term.dimension == dimension::lostMotion;
        if (ofTheKey) key += term.share.value_or(0);
    }
    return key * account.ratio.value;
}

std::optional<DipInferred> inferredLine(const Piano& piano, const PassTable& table, const DipAccount& account) {
    if (!account.read || account.ratio.fromDefault()) return std::nullopt;
    const DipTerm* open = nullptr;
    double known = 0;
    for (const DipTerm& term : account.terms) {
        if (!term.reading && open) return std::nullopt;
        if (!term.reading) open = &term;
        known += term.share.value_or(0);
    }
    if (!open) return std::nullopt;
    const double weight = weightOf(open->dimension, account.ratio.value);
    const double value = (*account.read - known) / weight;
    const bool ofTheHammer = open->dimension == dimension::blow || open->dimension == dimension::letOff;
    double travel = ofTheHammer ? travelFrom(account) : 0;
    for (const DipTerm& term : account.terms) {
        if (ofTheHammer) break;
        if (term.dimension == dimension::blow) travel += *term.reading;
        if (term.dimension == dimension::letOff) travel -= *term.reading;
    }
    const double read = toTrade(uncertaintyOf(dimension::aftertouch, piano), Kind::length);
    const double square = squareOfReadings(piano, table, account) + squareOfRatio(account.ratio, travel) + read * read;
    return DipInferred{open->dimension, value, std::sqrt(square) / std::abs(weight)};
}

DipAgreement agreementOf(const DipAccount& account, const Piano& piano) {
    if (!account.read || !account.computed) return DipAgreement::unread;
    if (account.ratio.fromDefault()) return DipAgreement::customary;
    const double read = toTrade(uncertaintyOf(dimension::aftertouch, piano), Kind::length);
    const double both = std::sqrt(*account.uncertainty * *account.uncertainty + read * read);
    const double apart = std::abs(*account.computed - *account.read);
    return apart <= std::max(kAgreement, 2 * both) ? DipAgreement::agrees : DipAgreement::differs;
}

std::vector<DipDifference> againstAims(const std::vector<DipTerm>& terms) {
    std::vector<DipDifference> out;
    for (const DipTerm& term : terms) {
        if (!term.share || !term.aimShare) continue;
        const double apart = *term.share - *term.aimShare;
        if (std::abs(apart) >= kCounts) out.push_back({term.dimension, apart});
    }
    std::ranges::stable_sort(
        out, [](const DipDifference& a, const DipDifference& b) { return std::abs(a.mm) > std::abs(b.mm); });
    return out;
}

} // namespace

DipAccount dipAccount(const Piano& piano, const PassTable& table, const Zones& zones, const Ratio& ratio,
                      NoteNumber note) {
    DipAccount account;
    account.note = note;
    account.ratio = ratio;
    account.zone = zones.at({note, dimension::aftertouch});
    const EscapementReading reading = escapementAt(piano, table, note);
    if (!reading.aftertouchBound) account.read = reading.aftertouch;
    for (const DimensionId id : linesOf(piano)) {
        const double weight = weightOf(id, ratio.value);
        DipTerm term{.dimension = id,
                     .reading = readingOf(reading, id),
                     .share = {},
                     .aim = aimOf(zones, {note, id}),
                     .aimShare = {}};
        if (term.reading) term.share = weight * *term.reading;
        if (term.aim) term.aimShare = weight * *term.aim;
        account.terms.push_back(term);
    }
    account.computed = sumOf(account.terms, &DipTerm::share);
    account.atAims = sumOf(account.terms, &DipTerm::aimShare);
    if (account.computed) {
        const double square = squareOfReadings(piano, table, account);
        account.uncertainty = std::sqrt(square + squareOfRatio(ratio, *reading.blow - *reading.letOff));
    }
    account.inferred = inferredLine(piano, table, account);
    account.agreement = agreementOf(account, piano);
    account.against = againstAims(account.terms);
    return account;
}

} // namespace hammerline
