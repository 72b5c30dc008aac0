// Notes in text (situation 68). Key numbers and names: tests/reference/piano_notes_88.csv.
#include "core/piano/piano.h"

#include <catch2/catch.hpp>
#include <rapidcheck.h>

#include <fstream>
#include <set>
#include <sstream>

using namespace hammerline;

namespace {

const Piano kPiano = *makePiano(ActionKind::upright);

int note(std::string_view text, const Piano& piano = kPiano, int middleC = 4) {
    const auto found = parseNote(text, piano, middleC);
    return found ? found->value : 0;
}

std::vector<int> notes(std::string_view text, const Piano& piano = kPiano) {
    INFO(text);
    const auto found = parseNotes(text, piano);
    std::vector<int> numbers;
    if (found)
        for (const auto each : *found)
            numbers.push_back(each.value);
    return numbers;
}

std::vector<int> upTo(int first, int last) {
    std::vector<int> all;
    for (int n = first; n <= last; ++n)
        all.push_back(n);
    return all;
}

} // namespace

TEST_CASE("every key of the reference is found by its number, its names and its letter with number") {
    std::ifstream in(HAMMERLINE_SOURCE_DIR "/tests/reference/piano_notes_88.csv");
    int keys = 0;
    for (std::string line; std::getline(in, line);) {
        if (line[0] < '0' || line[0] > '9') continue;
        std::istringstream fields(line);
        std::string number, midi, name;
        std::getline(fields, number, ',');
        std::getline(fields, midi, ',');
        std::getline(fields, name, ',');
        INFO(line);
        ++keys;
        const int n = std::stoi(number);
        CHECK(note(number) == n);
        CHECK(note(name) == n);
        CHECK(pitchName(std::stoi(midi)) == name);
        CHECK(pitchName(NoteNumber{n}, kPiano) == name);
        CHECK(midiOf(NoteNumber{n}, kPiano) == std::stoi(midi));
        const std::string letter = name.substr(0, name.size() - 1);
        if (n >= 10) CHECK(note(letter + number) == n); // C40
    }
    CHECK(keys == 88);
}

TEST_CASE("middle C in every writing is key 40") {
    for (const auto* text : {"C40", "C4", "c4", "c'", "c′", "c¹", "C₄", "40", " 40 ", "C-4", "B#3", "C4/B#3"})
        CHECK(note(text) == 40);
}

TEST_CASE("the notes of situation 68") {
    CHECK(note("A49") == 49);
    CHECK(note("A4") == 49);
    CHECK(note("a'") == 49);
    CHECK(note("a''") == 61);
    CHECK(note("a″") == 61);
    CHECK(note("A0") == 1);
    CHECK(note("A-0") == 1);
    CHECK(note("A₂") == 1);
    CHECK(note("A,,") == 1);
    CHECK(note("C#4/Db4") == 41);
    CHECK(note("C♯4") == 41);
    CHECK(note("D♭4") == 41);
    CHECK(note("C52") == 52);
    CHECK(note("D52") == 0);
    CHECK(note("F21") == 21);
    CHECK(note("C88") == 88);
    CHECK(note("Cb4") == 39);
    CHECK(note("C") == 16); // great C
    CHECK(note("C,") == 4);
    CHECK(note("c") == 28);
    CHECK(note("H3") == 39);
    CHECK(note("cis'") == 41);
    CHECK(note("es'") == 43);
    CHECK(note("as") == 36);
}

TEST_CASE("middle C is a choice") {
    CHECK(note("C3", kPiano, 3) == 40);
    CHECK(note("C5", kPiano, 5) == 40);
    CHECK(note("C40", kPiano, 3) == 40);
}

TEST_CASE("what is no note of this piano is refused") {
    for (const auto* text : {"", "0", "89", "-1", "C9", "G#0", "C#4/D4", "X4", "4C", "C 4", "1.5", "C4 40", "A49'",
                             "99999999999", "C######4", "c,", "C'", "\xff"}) {
        INFO(text);
        const auto found = parseNote(text, kPiano);
        REQUIRE_FALSE(found.has_value());
        CHECK(found.error().code == RefusalCode::unknownNote);
    }
}

TEST_CASE("the compass moves names and leaves key numbers") {
    const auto from85 = *makePiano(ActionKind::upright, 85);
    CHECK(note("A7", from85) == 85);
    CHECK(note("C8", from85) == 0);
    const auto fromC = *makePiano(ActionKind::upright, 73, 28); // E1
    CHECK(note("E1", fromC) == 1);
    CHECK(note("C4", fromC) == 33);
    CHECK(note("C33", fromC) == 33);
    CHECK(note("C40", fromC) == 0);
}

TEST_CASE("sets of notes") {
    CHECK(notes("1-88") == upTo(1, 88));
    CHECK(notes("all") == upTo(1, 88));
    CHECK(notes("20,23,31-33") == std::vector<int>{20, 23, 31, 32, 33});
    CHECK(notes("33; 31..32") == std::vector<int>{31, 32, 33});
    CHECK(notes("C4-C#4, 40") == std::vector<int>{40, 41});
    CHECK(notes("A-0-B0") == std::vector<int>{1, 2, 3});
    CHECK(notes("all naturals").size() == 52);
    CHECK(notes("all sharps").size() == 36);
    CHECK(notes("naturals 1-8") == std::vector<int>{1, 3, 4, 6, 8});
    CHECK(notes("sharps 1-8") == std::vector<int>{2, 5, 7});
    CHECK(notes("bass") == upTo(1, 26));
    CHECK(notes("High Treble") == upTo(71, 88));
    CHECK(notes("bass sharps, 88").back() == 88);
    for (const auto* text : {"", "1-", "1-89", "88-1", "1,,2", "1,", "tuba", "naturals tuba", "1-2-3"})
        CHECK_FALSE(parseNotes(text, kPiano).has_value());
}

TEST_CASE("sections go by the names that were given to them") {
    Piano piano = kPiano;
    piano.sections = {{{1, 44}, "Bass bridge"}, {{45, 88}, {}}};
    CHECK(notes("bass bridge", piano) == upTo(1, 44));
    CHECK(notes("treble", piano) == upTo(45, 88));
    CHECK(notes("tenor", piano).empty());
}

TEST_CASE("a set is written short and read back") {
    CHECK(writeNotes({}).empty());
    CHECK(writeNotes({{1}, {2}, {3}, {4}, {5}, {9}, {12}, {13}, {14}}) == "1-5, 9, 12-14");
    CHECK(rc::check([] {
        const auto numbers = *rc::gen::nonEmpty(rc::gen::container<std::set<int>>(rc::gen::inRange(1, 89)));
        std::vector<NoteNumber> set;
        for (const int n : numbers)
            set.push_back(NoteNumber{n});
        const auto back = parseNotes(writeNotes(set), kPiano);
        RC_ASSERT(back.has_value());
        RC_ASSERT(*back == set);
    }));
}

TEST_CASE("the lowest note is a name or a MIDI number") {
    CHECK(parseLowest("A0") == 21);
    CHECK(parseLowest("C1") == 24);
    CHECK(parseLowest("A,,") == 21);
    CHECK(parseLowest("21") == 21);
    CHECK(parseLowest("C0") == 12);
    CHECK_FALSE(parseLowest("128").has_value());
    // below C0 no piano begins; "A#-1" was once read as A#1
    for (const char* below : {"11", "0", "A#-1", "C-1", "c-1", "A-0"})
        CHECK_FALSE(parseLowest(below).has_value());
    CHECK_FALSE(parseLowest("lowest").has_value());
    CHECK_FALSE(parseLowest("C40").has_value());
}

TEST_CASE("every note's shown name is read back as that note") {
    for (const int lowest : {12, 21, 28}) {
        const auto piano = *makePiano(ActionKind::grand, 88, lowest);
        for (int n = 1; n <= 88; ++n) {
            INFO(pitchName(NoteNumber{n}, piano));
            CHECK(note(pitchName(NoteNumber{n}, piano), piano) == n);
        }
    }
}
