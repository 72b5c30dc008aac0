#include "core/history/linked.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace hammerline::linked {

using namespace dimension;

namespace {

constexpr std::array kEscapement = {keyDip, lostMotion, blow, letOff};
// Hammer travel from rest to let-off where one of the two is not known, and the least that is believed, mm.
constexpr double kCustomaryRun = 43, kLeastRun = 10;
constexpr double kLeastVariance = 1e-12;

double run(const NoteState& note) {
    const Known &from = note.of(blow), &to = note.of(letOff);
    return from.known && to.known ? std::max(from.value - to.value, kLeastRun) : kCustomaryRun;
}

double inverseRatio(const NoteState& note) {
    return 1 / note.linkage.ratio + note.e;
}

/// D - M - (B - O)(1/R + e), what is not known left out.
double relationOf(const NoteState& note) {
    const auto value = [&](DimensionId id) { return note.of(id).known ? note.of(id).value : 0.0; };
    const double lost = note.linkage.vertical ? value(lostMotion) : 0;
    return value(keyDip) - lost - (value(blow) - value(letOff)) * inverseRatio(note);
}

LinkedRow times(const NoteState& note, const LinkedRow& row) {
    LinkedRow result{};
    for (std::size_t i = 0; i < kLinkedCount; ++i)
        for (std::size_t j = 0; j < kLinkedCount; ++j)
            result[i] += note.together[i][j] * row[j];
    return result;
}

void addTo(NoteState& note, std::size_t place, double by) {
    constexpr std::array ids = {keyHeight, keyDip, lostMotion, blow, letOff};
    if (place == kOwnRatio)
        note.e += by;
    else
        note.of(place == kHeight ? note.linkage.height : ids[place]).value += by;
}

/// The fifth from four: x_m = (A - the rest)/h_m, its row of the covariance that of the others through the relation.
void derive(NoteState& note, DimensionId missing) {
    const Known after = note.of(aftertouch);
    LinkedRow row = aftertouchRow(note);
    const std::size_t m = *placeOf(note, missing);
    const double h = std::exchange(row[m], 0.0);
    const LinkedRow across = times(note, row);
    const double variance = (varianceOf(note, row) + after.variance) / (h * h);
    const double value = (after.value - relationOf(note)) / h;
    alone(note, m, variance);
    for (std::size_t i = 0; i < kLinkedCount; ++i)
        if (i != m) note.together[i][m] = note.together[m][i] = -across[i] / h;
    Known& known = note.of(missing);
    known = {value, variance, true, true};
    known.derived = true;
}

void reckon(NoteState& note) {
    Known& after = note.of(aftertouch);
    if (!after.known) {
        after.known = true;
        after.expected = true;
        after.derived = !note.aftertouchRead;
    }
    after.value = relationOf(note);
    after.variance = std::max(varianceOf(note, aftertouchRow(note)), kLeastVariance);
}

} // namespace

std::optional<std::size_t> placeOf(const NoteState& note, DimensionId id) {
    if (note.linkage.ratio <= 0) return std::nullopt;
    if (id == note.linkage.height) return kHeight;
    for (std::size_t i = 0; i < kEscapement.size(); ++i)
        if (kEscapement[i] == id) return kDip + i;
    return std::nullopt;
}

std::vector<DimensionId> unknown(const NoteState& note) {
    std::vector<DimensionId> missing;
    for (const DimensionId id : kEscapement) {
        const bool none = id == lostMotion && !note.linkage.vertical;
        if (!none && !note.of(id).known) missing.push_back(id);
    }
    return missing;
}

bool reckoned(const NoteState& note) {
    return note.linkage.ratio > 0 && unknown(note).empty();
}

LinkedRow aftertouchRow(const NoteState& note) {
    LinkedRow row{};
    row[kDip] = 1;
    row[kLost] = note.linkage.vertical ? -1 : 0;
    row[kBlow] = -inverseRatio(note);
    row[kLetOff] = inverseRatio(note);
    row[kOwnRatio] = -run(note);
    return row;
}

double varianceOf(const NoteState& note, const LinkedRow& row) {
    const LinkedRow across = times(note, row);
    double variance = 0;
    for (std::size_t i = 0; i < kLinkedCount; ++i)
        variance += row[i] * across[i];
    return variance;
}

void learn(NoteState& note, const LinkedRow& row, double off, double variance) {
    const LinkedRow across = times(note, row);
    double S = variance;
    for (std::size_t i = 0; i < kLinkedCount; ++i)
        S += row[i] * across[i];
    if (S <= 0) return;
    for (std::size_t i = 0; i < kLinkedCount; ++i) {
        addTo(note, i, across[i] / S * off);
        for (std::size_t j = 0; j < kLinkedCount; ++j)
            note.together[i][j] -= across[i] * across[j] / S;
    }
}

void spread(NoteState& note, const LinkedRow& r, double variance) {
    for (std::size_t i = 0; i < kLinkedCount; ++i)
        for (std::size_t j = 0; j < kLinkedCount; ++j)
            note.together[i][j] += r[i] * r[j] * variance;
}

void alone(NoteState& note, std::size_t place, double variance) {
    for (std::size_t i = 0; i < kLinkedCount; ++i)
        note.together[i][place] = note.together[place][i] = 0;
    note.together[place][place] = variance;
}

void settle(NoteState& note) {
    if (note.linkage.ratio <= 0) return;
    const Known& after = note.of(aftertouch);
    if (const auto missing = unknown(note); missing.size() == 1 && after.known) derive(note, missing.front());
    for (const Dimension& dimension : dimensions())
        if (const auto place = placeOf(note, dimension.id); place && note.of(dimension.id).known)
            note.of(dimension.id).variance = std::max(note.together[*place][*place], kLeastVariance);
    if (reckoned(note)) reckon(note);
}

} // namespace hammerline::linked
