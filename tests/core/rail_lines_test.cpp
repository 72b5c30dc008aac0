// The lines over a piece of the rest rail, against the plain count of every one of them.
#include "core/plan/rail_lines.h"

#include <catch2/catch.hpp>
#include <rapidcheck.h>

#include <algorithm>
#include <cmath>

using namespace hammerline;

TEST_CASE("no line through two interval ends brings more hammers inside than the one that is chosen") {
    CHECK(rc::check([] {
        const int length = *rc::gen::inRange(4, 30);
        // tenths and hundredths: ends that meet are common, as they are at the bench
        const double grid = *rc::gen::element(0.1, 0.01);
        std::vector<BlowNote> notes;
        for (int n = 0; n <= length; ++n) {
            if (*rc::gen::inRange(0, 5) == 0) continue; // no reading
            const double value = *rc::gen::inRange(-30, 31) * grid + 46, half = *rc::gen::inRange(0, 8) * grid;
            notes.push_back({double(n), value, 46 - half, 46 + half, 46});
        }
        const int chosen = insideBy(notes, mostInside(notes, length));
        int most = insideBy(notes, {});
        for (const BlowNote& note : notes)
            for (const double end : {note.low, note.nominal, note.high})
                most = std::max(most, insideBy(notes, {end - note.value, 0}));
        for (const BlowNote& one : notes)
            for (const BlowNote& other : notes)
                if (one.note <= length / 3.0 && other.note >= length * 2 / 3.0)
                    for (const double from : {one.low, one.high})
                        for (const double to : {other.low, other.high}) {
                            const double change = from - one.value;
                            const double slope = (to - other.value - change) / (other.note - one.note);
                            most = std::max(most, insideBy(notes, {change - slope * one.note, slope}));
                        }
        RC_ASSERT(chosen == most);
    }));
}

TEST_CASE("a rail that sits low at its treble end is found by its line") {
    std::vector<BlowNote> notes;
    for (int n = 0; n < 30; ++n)
        notes.push_back({double(n), 46 + 0.05 * n, 45.8, 46.2, 46});
    const RailLine line = mostInside(notes, 29);
    CHECK(insideBy(notes, line) == 30);
    CHECK(insideBy(notes, {}) == 5); // up to 46.2
    CHECK(std::abs(line.slope + 0.05) < 0.4 / 29);
}
