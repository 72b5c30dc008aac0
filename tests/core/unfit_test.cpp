// Rows that cannot be true on this piano are left out of its record and named, each kind of row; what is true stays.
#include "core/history/unfit.h"

#include <catch2/catch.hpp>

#include <limits>

using namespace hammerline;

namespace {

constexpr std::int64_t kLeast = std::numeric_limits<std::int64_t>::min();
constexpr std::int64_t kMost = std::numeric_limits<std::int64_t>::max();

PianoRecord twentyNotes() {
    PianoRecord record;
    record.piano = *makePiano(ActionKind::upright, 20, 60);
    record.passes.emplace_back();
    return record;
}

Measured read(std::int64_t count, Relation relation = Relation::equal, std::int64_t upper = 0) {
    Measured measured;
    Reading reading;
    reading.count = count;
    reading.upper = upper;
    reading.relation = relation;
    measured.trials.push_back(reading);
    return measured;
}

std::vector<std::string> leftOut(PianoRecord& record) {
    leaveOutUnfit(record);
    return record.leftOut;
}

} // namespace

TEST_CASE("what fits stays") {
    PianoRecord record = twentyNotes();
    record.passes[0].cells[{NoteNumber{1}, dimension::letOff}] = read(3'000'000);
    record.passes[0].cells[{NoteNumber{20}, dimension::letOff}] = read(1, Relation::between, 2);
    record.symptoms = {{"double-strike", {1, 20}, 1}, {"double-strike", {5, 5}, 2}};
    record.overrides = {{{NoteNumber{20}, dimension::letOff}, {1, 2, 3}, "why", {}},
                        {{NoteNumber{1}, dimension::letOff}, {{}, 2, {}}, "why", {}}};
    record.findings.resize(1); // of the whole piano
    record.done.resize(1);
    record.done[0].notes = {NoteNumber{1}, NoteNumber{20}};
    record.done[0].amounts = {{20, -0.5}};
    const PianoRecord before = record;
    CHECK(leftOut(record).empty());
    CHECK(record.passes[0].cells == before.passes[0].cells);
    CHECK(record.symptoms == before.symptoms);
    CHECK(record.overrides == before.overrides);
    CHECK(record.findings == before.findings);
    CHECK(record.done == before.done);
}

TEST_CASE("a range from a note to one before it, or beyond the piano, is left out") {
    for (const NoteRange notes : {NoteRange{5, 4}, {0, 4}, {1, 21}, {1, 2'147'483'647}, {-3, 5}, {21, 22}}) {
        PianoRecord record = twentyNotes();
        record.symptoms = {{"double-strike", notes, 1}, {"double-strike", {1, 2}, 2}};
        CHECK(leftOut(record) == std::vector<std::string>{"symptom:" + std::to_string(notes.first) + '-' +
                                                          std::to_string(notes.last) + ":double-strike"});
        REQUIRE(record.symptoms.size() == 1);
        CHECK(record.symptoms[0].notes == NoteRange{1, 2});
    }
}

TEST_CASE("readings at notes that the piano has not, or of sizes that no action has, are left out") {
    PianoRecord record = twentyNotes();
    auto& cells = record.passes[0].cells;
    cells[{NoteNumber{0}, dimension::letOff}] = read(1);
    cells[{NoteNumber{21}, dimension::letOff}] = read(1);
    cells[{NoteNumber{2}, dimension::letOff}] = read(kLeast);
    cells[{NoteNumber{3}, dimension::letOff}] = read(kMost);
    cells[{NoteNumber{4}, dimension::letOff}] = read(2, Relation::between, 1);
    cells[{NoteNumber{5}, dimension::letOff}] = read(1);
    CHECK(leftOut(record).size() == 5);
    REQUIRE(cells.size() == 1);
    CHECK(cells.begin()->first.note.value == 5);
}

TEST_CASE("zones out of order, amounts and times without bounds are left out, each kind of row") {
    PianoRecord record = twentyNotes();
    const Cell cell{NoteNumber{1}, dimension::letOff};
    record.overrides = {
        {cell, {3, 2, 4}, "why", {}}, {cell, {1, 2, 1}, "why", {}}, {cell, {{}, kLeast, {}}, "why", {}}};
    record.findings.resize(2);
    record.findings[0].note = NoteNumber{21};
    record.findings[1].amount = 1e300;
    record.done.resize(3);
    record.done[0].notes = {NoteNumber{21}};
    record.done[1].amounts = {{1, std::numeric_limits<double>::infinity()}};
    record.done[2].order = -1;
    record.remarks.resize(1);
    record.remarks[0].about.note = NoteNumber{200};
    record.photos.resize(1);
    record.photos[0].at = kMost;
    record.marks.resize(1);
    record.marks[0].seconds = kMost;
    record.passes[0].startedAt = kLeast;
    CHECK(leftOut(record).size() == 12);
    CHECK(record.overrides.empty());
    CHECK(record.findings.empty());
    CHECK(record.done.empty());
    CHECK(record.remarks.empty());
    CHECK(record.photos.empty());
    CHECK(record.marks.empty());
    CHECK(record.passes[0].startedAt == 0);
}
