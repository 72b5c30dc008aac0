// The dimensions that are said by words alone. Ranks and kinds: common practice, no source.
#include "core/intake/cell.h"
#include "core/judge/judge.h"

#include <catch2/catch.hpp>

using namespace hammerline;

namespace {

Piano pianoOf(ActionKind kind) {
    return *makePiano(kind);
}

Judged judgedAs(const char* typed, DimensionId id) {
    const Piano grand = pianoOf(ActionKind::grand);
    CellContext context;
    context.piano = &grand;
    const auto entry = readCell(typed, {NoteNumber{40}, id}, context);
    REQUIRE(entry);
    REQUIRE(entry->sound);
    Measured measured;
    measured.trials = {*entry->sound};
    return judge({NoteNumber{40}, id}, measured, std::nullopt, 0, Rule::plain);
}

} // namespace

TEST_CASE("a word dimension takes its words and no number") {
    const Piano piano = pianoOf(ActionKind::upright);
    CellContext context;
    context.piano = &piano;
    int found = 0;
    for (const Dimension& each : dimensions()) {
        if (!each.wordsOnly) continue;
        ++found;
        INFO(each.key);
        CHECK(each.words.front() == word::right);
        const NoteNumber note{1};
        if (!fitted(each.id, note, piano)) continue;
        for (const WordId w : each.words)
            CHECK(readCell(row(w).key, {note, each.id}, context)->sound->word == w);
        const auto number = readCell("2.5", {note, each.id}, context);
        REQUIRE_FALSE(number);
        CHECK(number.error().code == RefusalCode::unknownWord);
    }
    CHECK(found == 16);
}

TEST_CASE("the ranks of the words") {
    using namespace dimension;
    struct Rank {
        const char* typed;
        DimensionId id;
        Verdict verdict;
        int marks;
    };
    for (const auto& [typed, id, verdict, marks] :
         {Rank{"right", jackReturn, Verdict::within, 0}, Rank{"ok", keyFit, Verdict::within, 0},
          Rank{"returns", jackReturn, Verdict::within, 0}, Rank{"slow", jackReturn, Verdict::low, 2},
          Rank{"stays out", jackReturn, Verdict::low, 3}, Rank{"stays", hammerReturn, Verdict::low, 3},
          Rank{"drifts to the bass", hammerTravel, Verdict::low, 1},
          Rank{"rubs its neighbour", hammerTravel, Verdict::high, 3}, Rank{"too deep", jackPosition, Verdict::high, 1},
          Rank{"too shallow", jackPosition, Verdict::low, 2}, Rank{"high", leverHeight, Verdict::high, 1},
          Rank{"low", leverHeight, Verdict::low, 2}, Rank{"none", repetitionSpring, Verdict::low, 3},
          Rank{"sticks", keyFit, Verdict::low, 3}, Rank{"loose", keyFit, Verdict::high, 1},
          Rank{"early", damperLine, Verdict::low, 1}, Rank{"early", damperStart, Verdict::low, 2},
          Rank{"leaks", damperSeat, Verdict::high, 2}, Rank{"taps", frameBed, Verdict::low, 2}}) {
        INFO(key(id) << ": " << typed);
        const Judged judged = judgedAs(typed, id);
        CHECK(judged.verdict == verdict);
        CHECK(judged.marks() == marks);
    }
}

TEST_CASE("what only a grand has, only a grand is asked for; dampers end where they end") {
    using namespace dimension;
    Piano upright = pianoOf(ActionKind::upright);
    upright.lastDamper = 68;
    const Piano grand = pianoOf(ActionKind::grand);
    for (const DimensionId id : {jackPosition, leverHeight, repetitionSpring, frameBed}) {
        CHECK_FALSE(fittedAnywhere(id, upright));
        CHECK(fittedAnywhere(id, grand));
    }
    for (const DimensionId id : {damperLine, damperSeat}) {
        CHECK(fitted(id, NoteNumber{1}, upright));
        CHECK_FALSE(fitted(id, NoteNumber{upright.notes}, upright));
    }
}
