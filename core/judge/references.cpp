// A pass in the references that zones speak in (computation 2, 3, 9.1, 15).
#include "core/judge/judge.h"
#include "core/judge/key_line.h"
#include "core/pass/height_datum.h"
#include "core/pass/line_sag.h"

#include <algorithm>
#include <cmath>
#include <functional>

namespace hammerline {
namespace {

using Convert = std::function<std::int64_t(std::int64_t)>;

Measured converted(const Measured& measured, const Convert& convert) {
    Measured out = measured;
    for (Reading& r : out.trials) {
        if (r.word) continue;
        r.count = convert(r.count);
        if (r.relation == Relation::between) r.upper = convert(r.upper);
    }
    return out;
}

double placeAlong(NoteNumber note, const Piano& piano) {
    return piano.notes > 1 ? static_cast<double>(note.value - 1) / (piano.notes - 1) : 0.0;
}

KeyLine lineOf(const Piano& piano, const Pass& pass) {
    std::vector<NaturalHeight> naturals;
    for (int n = 1; n <= piano.notes; ++n) {
        const NoteNumber note{n};
        if (colourOf(note, piano) == KeyColour::sharp) continue;
        if (const auto h = pass.value({note, dimension::keyHeight}))
            naturals.push_back({placeAlong(note, piano), toTrade(*h, Kind::length)});
    }
    const std::optional<double> crown = piano.crown ? std::optional(piano.crown->mm()) : std::nullopt;
    return fitKeyLine(naturals, crown);
}

/// Mean absolute height of the naturals beside a sharp; of the one that was read; else the line's.
std::int64_t besideSharp(NoteNumber sharp, const Piano& piano, const Pass& pass, const KeyLine& line) {
    double sum = 0;
    int n = 0;
    for (const NoteNumber natural : neighbouringNaturals(sharp, piano))
        if (const auto h = pass.value({natural, dimension::keyHeight})) {
            sum += static_cast<double>(*h);
            ++n;
        }
    return n > 0 ? std::llround(sum / n) : fromMm(line.at(placeAlong(sharp, piano))).nm;
}

void makeHeightsRelative(const Piano& piano, const Pass& from, Pass& out) {
    const KeyLine line = lineOf(piano, from);
    for (const auto& [cell, measured] : from.cells) {
        if (cell.dimension != dimension::keyHeight) continue;
        const NoteNumber note = cell.note;
        const bool sharp = colourOf(note, piano) == KeyColour::sharp;
        if (sharp && line.trusted == 0) continue; // no natural read: nothing to count from
        const std::int64_t datum =
            sharp ? besideSharp(note, piano, from, line) : fromMm(line.at(placeAlong(note, piano))).nm;
        Measured relative = converted(measured, [&](std::int64_t h) { return h - datum; });
        if (!sharp) {
            out.cells.insert_or_assign(cell, std::move(relative));
            continue;
        }
        out.cells.erase(cell);
        out.cells.try_emplace({note, dimension::sharpHeight}, std::move(relative)); // one read as such goes first
    }
    out.references[dimension::keyHeight] = "line";
    out.lineSag.clear();
}

/// The gap under a line that hangs is short by the sag there: the key stands that much lower than it reads.
void takeSagOff(const Piano& piano, Pass& out) {
    const double sag = readLineSag(out.lineSag, piano).value_or(0);
    for (auto& [cell, measured] : out.cells)
        if (cell.dimension == dimension::keyHeight) {
            const std::int64_t hangs = fromMm(sagAt(sag, placeAmongNaturals(cell.note, piano))).nm;
            measured = converted(measured, [&](std::int64_t h) { return h - hangs; });
        }
    out.lineSag.clear();
}

/// What was read over another datum than the pass says stands for nothing (after a merge of two books that differed).
bool hasForeignHeights(const Pass& pass, std::string_view datum) {
    return std::any_of(pass.cells.begin(), pass.cells.end(), [&](const auto& each) {
        const Reading* last = each.second.latest();
        return last && isOverAnotherDatum(each.first, *last, datum);
    });
}

Pass withoutForeignHeights(Pass pass, std::string_view datum) {
    std::erase_if(pass.cells, [&](const auto& each) {
        const Reading* last = each.second.latest();
        return last && isOverAnotherDatum(each.first, *last, datum);
    });
    return pass;
}

/// From the string: the let-off lies in it.
void makeDropsBelowLetOff(const Pass& from, Pass& out) {
    for (const auto& [cell, measured] : from.cells) {
        if (cell.dimension != dimension::drop) continue;
        const auto letOff = from.value({cell.note, dimension::letOff});
        if (!letOff)
            out.cells.erase(cell);
        else
            out.cells.insert_or_assign(cell, converted(measured, [&](std::int64_t p) { return p - *letOff; }));
    }
    out.references[dimension::drop] = "below-let-off";
}

/// What stands out of the key, less than the screw is long: the rest is in the wood. How long it is only one taken out
/// tells; before that nothing is known of the thread.
void makeThreadsOfScrews(const Piano& piano, const Pass& from, Pass& out) {
    for (const auto& [cell, measured] : from.cells) {
        if (cell.dimension != dimension::capstanReserve) continue;
        if (!piano.capstanLength)
            out.cells.erase(cell);
        else
            out.cells.insert_or_assign(
                cell, converted(measured, [&](std::int64_t standing) { return piano.capstanLength->nm - standing; }));
    }
    out.references[dimension::capstanReserve] = "in-the-wood";
}

} // namespace

bool needsConversion(const Pass& pass) {
    return pass.referenceOf(dimension::keyHeight) != "line" || pass.referenceOf(dimension::drop) == "string" ||
           pass.referenceOf(dimension::capstanReserve) == "standing-out" || !pass.lineSag.empty() ||
           hasForeignHeights(pass, "line");
}

Pass withRelativeHeights(const Piano& piano, const Pass& pass) {
    const std::string_view datum = pass.referenceOf(dimension::keyHeight);
    if (hasForeignHeights(pass, datum)) return withRelativeHeights(piano, withoutForeignHeights(pass, datum));
    Pass out = pass;
    if (datum != "line")
        makeHeightsRelative(piano, pass, out);
    else if (!pass.lineSag.empty())
        takeSagOff(piano, out);
    if (pass.referenceOf(dimension::drop) == "string") makeDropsBelowLetOff(pass, out);
    if (pass.referenceOf(dimension::capstanReserve) == "standing-out") makeThreadsOfScrews(piano, pass, out);
    return out;
}

} // namespace hammerline
