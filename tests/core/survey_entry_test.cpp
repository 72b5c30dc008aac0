#include "core/causes/symptom_rows.h"
#include "core/survey/numbering.h"
#include "tests/core/survey_bench.h"

using namespace hammerline;
using namespace hammerline::survey_bench;

namespace {
RefusalCode refused(std::string_view typed, const Piano& piano) {
    const auto found = parseFindings(typed, piano);
    INFO(typed);
    REQUIRE_FALSE(found);
    return found.error().code;
}
} // namespace

TEST_CASE("a line of notes, part, fault and remedy becomes a finding a note") {
    const Piano piano = pianoOf(ActionKind::upright);
    const auto found = parseFindings("20,23,31-40 bridle-strap rotted replace-set", piano);
    REQUIRE(found);
    REQUIRE(found->size() == 12);
    CHECK(found->front().note == NoteNumber{20});
    CHECK(found->back().note == NoteNumber{40});
    CHECK(found->front().fault == "rotted");
    CHECK(found->front().remedy == "replace-set");
    CHECK(found->front().state == FindingState::toDo);
    CHECK(parseFindings("all naturals front-felt moth", piano)->size() == 52);
    CHECK(parseFindings("bass jack slow", piano)->size() == 26);
    CHECK(parseFindings("  20, 23   butt-spring  loop broken new cord ", piano)->size() == 2);
}

TEST_CASE("a part of several words may be typed with blanks, the longest name that fits") {
    const auto partOf = [&](const std::string& typed) {
        const auto read = parseFindings(typed, pianoOf(ActionKind::upright));
        REQUIRE(read);
        return read->front().part;
    };
    CHECK(partOf("30 let-off button hard") == "let-off-button");
    CHECK(partOf("30 damper lever spring broken") == "damper-lever-spring"); // not the lever
    CHECK(partOf("30 damper lever loose") == "damper-lever");
}

TEST_CASE("a part of the whole piano named with all its notes is one finding") {
    const Piano piano = pianoOf(ActionKind::upright);
    const auto whole = parseFindingStates("1-88 action-bolts sound", piano);
    REQUIRE(whole);
    REQUIRE(whole->size() == 1);
    CHECK_FALSE(whole->front().note);
    CHECK(stateAt("action-bolts", NoteNumber{44}, *whole) == FindingState::sound);
    // Where on the frame it sank matters.
    CHECK(parseFindings("33-45 key-frame sunk", piano)->size() == 13);
}

TEST_CASE("an unknown part, fault, remedy, note or state is refused by its own name") {
    const Piano piano = pianoOf(ActionKind::upright);
    CHECK(refused("20 bridle-strop rotted", piano) == RefusalCode::unknownPart);
    CHECK(parseFindings("20 bridle-strop rotted", piano).error().offending == "bridle-strop");
    CHECK(refused("20 bridle-strap melted", piano) == RefusalCode::unknownFault);
    CHECK(refused("20 bridle-strap", piano) == RefusalCode::unknownFault);
    CHECK(refused("20 bridle-strap rotted pray", piano) == RefusalCode::unknownRemedy);
    CHECK(refused("91 bridle-strap rotted", piano) == RefusalCode::unknownNote);
    CHECK(refused("bridle-strap rotted", piano) == RefusalCode::unknownNote);
    CHECK(refused("", piano) == RefusalCode::unknownPart);
    CHECK(refused("20 drop-screw worn", piano) == RefusalCode::notFitted);
    CHECK(parseFindingStates("20 jack splendid", piano).error().code == RefusalCode::unknownState);
    CHECK(parseSymptom("1-44 humming", piano).error().code == RefusalCode::unknownSymptom);
}

TEST_CASE("numbered notes without the part are refused, notes by word mean those that have it") {
    const Piano piano = playerUpright();
    const auto refusal = parseFindings("60-70 damper-lever loose", piano);
    REQUIRE_FALSE(refusal);
    CHECK(refusal.error().code == RefusalCode::notFitted);
    CHECK(refusal.error().offending == "67-70");
    CHECK(parseFindings("all damper-lever loose", piano)->size() == 66);
    // Scenario S6: a cord loop is not there on a brass flange rail; the spring is.
    CHECK(refused("12 butt-spring loop-broken", piano) == RefusalCode::notFitted);
    CHECK(parseFindings("12 butt-spring spring-tired", piano));
}

TEST_CASE("filed hammers are an event with its millimetres") {
    const Piano piano = pianoOf(ActionKind::upright);
    const auto filed = parseFindings("1-88 hammer-head hammers-filed 2.0", piano);
    REQUIRE(filed);
    REQUIRE(filed->size() == 88);
    CHECK(filed->front().state == FindingState::mended);
    CHECK(filed->front().remedy == "reshape");
    CHECK(filed->front().amount == Approx(2.0));
    CHECK(parseFindings("5 hammer-head deep-grooves reshape 1/16in", piano)->front().amount == Approx(1.5875));
    CHECK(parseFindings("5 hammer-head deep-grooves reshape 1/16in", piano)->front().state == FindingState::toDo);
    CHECK_FALSE(parseFindings("5 hammer-head hammers-filed 40", piano));
    CHECK_FALSE(parseFindings("5 hammer-head hammers-filed -1", piano));
}

TEST_CASE("a symptom goes to its notes, without notes to all") {
    const Piano piano = pianoOf(ActionKind::upright);
    const auto some = parseSymptom("1-44 double-strike", piano);
    REQUIRE(some);
    CHECK(some->notes == NoteRange{1, 44});
    CHECK(parseSymptom("double-strike", piano)->notes == NoteRange{1, 88});
    CHECK(parseSymptom("20 double strike one note", piano)->key == "double-strike-one-note");
}

TEST_CASE("every symptom that has advice can be said, and the other way round") {
    const auto keys = symptomKeys();
    std::set<std::string_view> said(keys.begin(), keys.end()), answered;
    for (const SymptomRow& row : symptomRows())
        answered.insert(row.key);
    CHECK(said == answered);
    CHECK(said.size() == keys.size());
    CHECK(parseSymptom("21-40 squeak", pianoOf(ActionKind::upright)));
}

TEST_CASE("every fault of every part can be typed and is read back as itself") {
    for (const auto kind : {ActionKind::upright, ActionKind::drop, ActionKind::grand}) {
        const Piano piano = pianoOf(kind);
        for (const Part& part : parts()) {
            if (!fitted(part, piano)) continue;
            for (const Fault& fault : part.faults)
                for (const Remedy& remedy : part.remedies) {
                    const auto typed = std::string("20 ") + std::string(part.key) + " " + std::string(fault.key) + " " +
                                       std::string(remedy.key);
                    INFO(typed);
                    const auto found = parseFindings(typed, piano);
                    REQUIRE(found);
                    CHECK(found->front().fault == fault.key);
                    CHECK(found->front().remedy == remedy.key);
                }
        }
    }
}

TEST_CASE("marks go onto what comes off, and tell where it belongs") {
    const Piano piano = playerUpright();
    const std::array<std::string_view, 2> chosen = {"key", "damper-lever"};
    const auto marks = marksFor(piano, chosen);
    REQUIRE(marks.size() == 85 + 66);
    CHECK(marks.front().text == "K 1");
    CHECK(marks.back().text == "D 66");
    CHECK(marks[84].section == sectionsOf(piano).size() - 1);
    CHECK(marksFor(piano).size() == 85 * 4 + 66 + 85); // keys, hammers, wippens, stickers, damper levers, key tops
}

TEST_CASE("numbers on the way back: missing, double, foreign, out of sequence") {
    const Piano piano = pianoOf(ActionKind::upright);
    const auto check = [&](std::string_view typed) { return checkMarks(*parseMarks(typed), "key", piano); };
    CHECK(check("1-88").right());
    CHECK(check("1-30 32-88").missing == std::vector{31});
    // The stamped-number slip of an old action: 31 twice, 32 never.
    const auto slip = check("1-31 31 33-88");
    CHECK(slip.missing == std::vector{32});
    CHECK(slip.doubled == std::vector{31});
    CHECK(slip.outOfSequence.empty());
    // Two neighbours changed over: one of them has to move.
    CHECK(check("1-20 22 21 23-88").outOfSequence.size() == 1);
    CHECK(check("1-88 91").foreign == std::vector{91});
    // One key carried from the bass end to the treble end is one out of place, not eighty-seven.
    CHECK(check("2-88 1").outOfSequence == std::vector{1});
    CHECK_FALSE(parseMarks("1-20 twenty"));
}
