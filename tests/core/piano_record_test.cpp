// Whose piano it is, and what a person wrote of it: what is taken, what is refused, and that an export carries it.
#include "core/history/record.h"
#include "core/sheet/export_reading.h"
#include "core/sheet/sheet.h"

#include <catch2/catch.hpp>

using namespace hammerline;

namespace {

std::string codeOf(const Outcome<std::string>& outcome) {
    return outcome ? "taken: " + *outcome : std::string(key(outcome.error().code)) + " " + outcome.error().detail;
}

PianoRecord parlour() {
    PianoRecord record;
    record.piano = *makePiano(ActionKind::upright);
    record.piano.name = "Parlour upright";
    record.specName = "upright";
    record.identity = {{"maker", "Invented & Sons"}, {"year", "about 1912"}, {"owner", "Zoë \"Z\" B."}};
    Pass pass;
    pass.number = 1;
    pass.label = "as found";
    record.passes.push_back(pass);
    Remark glued;
    glued.about = {1, NoteNumber{40}, "bridle-strap", "rotted"};
    glued.text = "glued before\nwith hot glue";
    glued.who = "A. B.";
    glued.on = "2026-11-29";
    glued.order = glued.at = 1'795'593'600'000'000;
    Remark advice;
    advice.kind = RemarkKind::advice;
    advice.text = "file again";
    advice.on = "2026-12-01";
    advice.accepted = "no";
    advice.order = advice.at = glued.at + 1'000'000;
    record.remarks = {glued, advice};
    return record;
}

} // namespace

TEST_CASE("a field of the record is one line, trimmed; a year is told as people tell it") {
    CHECK(codeOf(readIdentity("owner", "  Anna \t B. \n")) == "taken: Anna B.");
    CHECK(codeOf(readIdentity("serial", "No. 12 345")) == "taken: No. 12 345");
    CHECK(codeOf(readIdentity("place", "")) == "taken: ");
    for (const char* year : {"1912", "about 1912", "1910-1914", "ca. 1880"})
        CHECK(codeOf(readIdentity("year", year)) == std::string("taken: ") + year);
    for (const char* year : {"12", "19123", "long ago", "1499", "2200"})
        CHECK(codeOf(readIdentity("year", year)) == "bad-identity year");
    CHECK(codeOf(readIdentity("owner", "a\x01z")) == "bad-identity control-character");
    CHECK(codeOf(readIdentity("colour", "brown")) == "bad-identity unknown");
    CHECK(codeOf(readIdentity("archived", "yes")) == "bad-identity unknown"); // by its own command only
    std::string longest; // two bytes a letter: letters are counted, not bytes
    for (int i = 0; i < 200; ++i)
        longest += "ö";
    CHECK(codeOf(readIdentity("owner", longest)) == "taken: " + longest);
    CHECK(codeOf(readIdentity("owner", longest + "o")) == "bad-identity longest:200");
}

// Days by the Gregorian rule: 2024 and 2000 have 29 February, 2026 and 1900 not (ISO 8601-1:2019, 4.2.1).
TEST_CASE("a day is one of the calendar") {
    for (const char* day : {"2026-11-29", "2024-02-29", "2000-02-29"})
        CHECK(codeOf(readDay(day)) == std::string("taken: ") + day);
    for (const char* day :
         {"2026-02-29", "1900-02-29", "2026-13-01", "2026-1-1", "29.11.2026", "2026-11-31", "", "20x6-11-29"})
        CHECK(codeOf(readDay(day)) == "bad-date ");
}

TEST_CASE("a remark keeps its lines and is about something that is there") {
    CHECK(codeOf(readRemarkText("one \r\n\n two\n\n")) == "taken: one\n\ntwo");
    CHECK(codeOf(readRemarkText(" \n ")) == "bad-identity empty");
    const PianoRecord record = parlour();
    const auto codeFor = [&](const About& about) {
        const auto there = checkAbout(about, record);
        return there ? std::string("there") : std::string(key(there.error().code));
    };
    CHECK(codeFor({}) == "there");
    CHECK(codeFor({1, NoteNumber{88}, "hammer-head", {}}) == "there");
    CHECK(codeFor({2, {}, {}, {}}) == "no-such-pass");
    CHECK(codeFor({{}, NoteNumber{89}, {}, {}}) == "unknown-note");
    CHECK(codeFor({{}, {}, "knuckle", {}}) == "unknown-part"); // an upright has none
    CHECK(codeFor({{}, {}, "bridle-strap", "melted"}) == "unknown-fault");
}

TEST_CASE("an export carries the record and the remarks, and reads back the same") {
    const PianoRecord before = parlour();
    const auto read = readExport(exportJson({before}));
    REQUIRE(read);
    REQUIRE(read->pianos.size() == 1);
    const PianoRecord& after = read->pianos.front();
    CHECK(after.identity == before.identity);
    REQUIRE(after.remarks.size() == 2);
    for (std::size_t i = 0; i < 2; ++i) {
        CHECK(sayTheSame(after.remarks[i], before.remarks[i]));
        CHECK(after.remarks[i].accepted == before.remarks[i].accepted);
        CHECK(after.remarks[i].at == before.remarks[i].at);
    }
    CHECK(exportJson({after}) == exportJson({before}));
}

TEST_CASE("a remark of an export that cannot be is refused where it stands") {
    const std::string good = exportJson({parlour()});
    const auto refusedAt = [&](const std::string& from, const std::string& to) {
        std::string text = good;
        const auto at = text.find(from);
        REQUIRE(at != std::string::npos);
        text.replace(at, from.size(), to);
        const auto read = readExport(text);
        return read ? std::string("taken") : read.error().place.field;
    };
    CHECK(refusedAt("\"2026-11-29\"", "\"2026-02-29\"") == "/pianos/0/remarks/0/on");
    CHECK(refusedAt("\"about 1912\"", "\"twelve\"") == "/pianos/0/identity/year");
    CHECK(refusedAt("\"bridle-strap\"", "\"knuckle\"") == "/pianos/0/remarks/0/part");
    CHECK(refusedAt("\"kind\": \"advice\"", "\"kind\": \"gossip\"") == "/pianos/0/remarks/1/kind");
}
