// Situations 11, 19 and 20: what key heights are read against, and where the keys lie while they are read.
#include "core/comparison/comparison.h"
#include "core/intake/intake.h"
#include "core/pass/height_datum.h"
#include "core/pass/line_sag.h"
#include "tests/core/scene.h"

using namespace hammerline;
using namespace hammerline::dimension;
using namespace hammerline::scene;
using Catch::Matchers::WithinAbs;

namespace {

double sag(std::string_view typed) {
    const auto read = readLineSag(typed, upright());
    REQUIRE(read.has_value());
    return *read;
}

/// A level keyboard over a line that hangs by `sag` at its middle: every gap is short by the line's own sag there, so
/// the keys read high. The place by an own reckoning: naturals of equal width.
void readLevelUnderLine(Scene& scene, double sag) {
    int natural = 0;
    for (int n = 1; n <= 88; ++n)
        if (scene.isNatural(n)) {
            const double x = natural++ / 51.0;
            scene.read(n, keyHeight, sag * (1 - std::pow(2 * x - 1, 2)));
        }
}

} // namespace

// Physics of situation 11 (basis: computed there from the weight of the line, w L^2/(8 T), over 1.225 m; confirmed
// against the catenary a (cosh(L/2a) - 1), a = T/w, which the parabola stands for).
TEST_CASE("situation 11: the sag of a stretched line") {
    struct Row {
        const char* line;
        double density, diameter, pull, sag;
    };
    for (const Row& row : {Row{"nylon 0.4 mm 10 N", 1140, 0.4, 10, 0.03}, Row{"steel 0.5 mm 10 N", 7850, 0.5, 10, 0.28},
                           Row{"steel 0.5 20", 7850, 0.5, 20, 0.14}, Row{"Steel 0,5mm 50N", 7850, 0.5, 50, 0.06},
                           Row{"steel 0.25 mm 10 N", 7850, 0.25, 10, 0.07}}) {
        INFO(row.line);
        CHECK_THAT(sag(row.line), WithinAbs(row.sag, 0.005));
        const double weight = row.density * 3.14159265358979 * row.diameter * row.diameter / 4e6 * 9.80665; // N/m
        const double a = row.pull / weight;
        CHECK_THAT(sag(row.line), WithinAbs(1000 * a * (std::cosh(1.225 / (2 * a)) - 1), 1e-4));
    }
    CHECK_THAT(sag("steel 0.5 mm 1 kg"), WithinAbs(0.2835 * 10 / 9.80665, 0.0005)); // a mass that hangs on the line
    CHECK_THAT(sag("steel 0.5 mm 10 N 612.5 mm"), WithinAbs(0.2835 / 4, 0.0005));   // half the span
    CHECK(sag("") == 0);
    CHECK(sag("0.28") == 0.28);
    CHECK_THAT(sag(".011in"), WithinAbs(0.2794, 1e-9));
    CHECK_THAT(sagAt(0.28, 0.5), WithinAbs(0.28, 1e-12));
    CHECK_THAT(sagAt(0.28, 0.25), WithinAbs(0.21, 1e-12)); // 4 s x (L - x)/L^2
    CHECK(sagAt(0.28, 0) == 0);
    CHECK(sagAt(0.28, 1) == 0);
    for (const char* typed : {"-0.1", "3.5", "steel", "steel 0.5 mm", "steel 0.5 mm 0 N", "wood 1 mm 10 N", "0.28 kg",
                              "steel 0.5 mm 10 N 1.2 m 7", "tight"}) {
        INFO(typed);
        const auto read = readLineSag(typed, upright());
        REQUIRE_FALSE(read.has_value());
        CHECK(read.error().code == RefusalCode::badLineSag);
    }
}

TEST_CASE("situation 11: a level keyboard under a line that hangs gives no work, and without the sag it would") {
    Piano piano = upright();
    piano.gauges["key-height"] = "good";
    Scene scene(piano, "upright");
    scene.aimAll(keyHeight, -0.2, 0, 0.2);
    readLevelUnderLine(scene, 0.28);
    Scene blind = scene;
    CHECK(blind.verdict(40, keyHeight) == Verdict::high); // looks 0.28 high in the middle
    // Its keys are punched, or, near the limit, read a second time before they are.
    const Plan misled = blind.plan();
    const auto again = std::count_if(misled.readNext.begin(), misled.readNext.end(),
                                     [](const ToRead& each) { return each.cell.dimension == keyHeight; });
    CHECK(count(misled, operation::balancePunching) > 3);
    CHECK(count(misled, operation::balancePunching) + again > 10);
    for (const char* said : {"0.28", "steel 0.5 mm 10 N"}) {
        scene.pass().lineSag = said;
        const Review reviewed = scene.review();
        for (int n = 1; n <= 88; ++n)
            if (scene.isNatural(n)) {
                const Judged* judged = reviewed.at({{n}, keyHeight});
                REQUIRE(judged);
                CHECK(judged->verdict == Verdict::within);
                CHECK_THAT(toTrade(*judged->value, Kind::length), WithinAbs(0, 0.005));
            }
        CHECK(scene.plan().steps.empty());
    }
    // twice is as once, and the ends keep what they read
    const Pass once = withRelativeHeights(scene.record.piano, scene.pass());
    CHECK(withRelativeHeights(scene.record.piano, once) == once);
    CHECK(once.value({{1}, keyHeight}) == scene.pass().value({{1}, keyHeight}));
    CHECK(once.value({{88}, keyHeight}) == scene.pass().value({{88}, keyHeight}));
    // what truly lies low in the middle is low by its own amount
    scene.read(40, keyHeight, 0.28 - 0.6);
    CHECK_THAT(toTrade(*scene.review().at({{40}, keyHeight})->value, Kind::length), WithinAbs(-0.6, 0.01));
    // heights from the bed have no line over them
    scene.pass().references[keyHeight] = "bed";
    scene.readAll(keyHeight, 64);
    CHECK(scene.verdict(40, keyHeight) == Verdict::within);
}

// Situation 19: 21 mm over the slip and 63.5 mm over the bed are one height only with the slip's own height, which
// nobody gave.
TEST_CASE("situation 19: a key height is of one datum, and none is turned into another") {
    const Piano piano = upright();
    Pass slip;
    slip.references[keyHeight] = "slip";
    const auto typed = [&](const char* text, int note, const Pass& pass) {
        EntryContext context;
        context.piano = &piano;
        context.pass = &pass;
        return readEntry(text, {{note}, keyHeight}, context);
    };
    REQUIRE(typed("21", 40, slip).has_value());
    CHECK(typed("21", 40, slip)->sound->count == 21'000'000);
    CHECK(typed("33", 41, slip)->sound->count == 33'000'000); // a sharp, over the slip as well
    for (const char* other : {"63.5", "0.3"}) {               // over the bed, against a line
        const auto refused = typed(other, 40, slip);
        REQUIRE(refused.has_value());
        CHECK_FALSE(refused->sound);
        CHECK(refused->question->slip == "mixed-datum");
        CHECK_FALSE(refused->question->mayTake);
    }
    const auto overSlip = typed("21", 40, Pass{}); // a pass against the line
    REQUIRE_FALSE(overSlip.has_value());
    CHECK(overSlip.error().code == RefusalCode::otherDatum);
    CHECK(datumOf(fromMm(21).nm) == "slip");
    CHECK(datumOf(fromMm(63.5).nm) == "bed");
    CHECK(datumOf(fromMm(-0.3).nm) == "line");
}

TEST_CASE("situation 19: a file may not bring heights over another datum into a pass") {
    TableOptions slip;
    slip.references[keyHeight] = "slip";
    slip.datumHolds = true;
    const auto mixed = readReadings("note,key height\n1,21\n3,63.5\n4,21.2\n", upright(), slip);
    REQUIRE(mixed.has_value());
    CHECK(mixed->sound.size() == 2);
    REQUIRE(mixed->questions.size() == 1);
    CHECK(mixed->questions[0].slip == "mixed-datum");
    CHECK_FALSE(mixed->questions[0].mayTake);
    CHECK(mixed->references.at(keyHeight) == "slip");
    TableOptions bed;
    bed.references[keyHeight] = "bed";
    bed.datumHolds = true;
    const auto line = readReadings("note,key height\n1,0.1\n3,-0.2\n", upright(), bed);
    REQUIRE(line.has_value());
    CHECK(line->sound.empty());
    CHECK(line->questions.size() == 2);
    bed.datumHolds = false; // an empty pass that only goes on as the last one did takes the file's datum
    const auto fresh = readReadings("note,key height\n1,0.1\n3,-0.2\n", upright(), bed);
    CHECK(fresh->sound.size() == 2);
    CHECK(fresh->references.at(keyHeight) == "line");
}

TEST_CASE("situation 19: two datums in one pass, as a merge may leave them, are not averaged") {
    Scene scene(upright(), "upright");
    scene.readAll(keyHeight, 0);
    scene.read(40, keyHeight, 63.5);
    scene.read(44, keyHeight, 21);
    const Review reviewed = scene.review();
    CHECK_FALSE(reviewed.at({{40}, keyHeight}));
    CHECK_FALSE(reviewed.at({{44}, keyHeight}));
    CHECK(reviewed.at({{42}, keyHeight})->value == 0);
    CHECK(scene.plan().steps.empty());
}

TEST_CASE("situation 19: passes over bed and slip compare by the piano's own line, never by the level") {
    Scene scene(upright(), "upright");
    scene.pass().references[keyHeight] = "bed";
    for (int n = 1; n <= 88; ++n)
        if (scene.isNatural(n)) scene.read(n, keyHeight, n == 40 ? 63.0 : 63.5);
    scene.nextPass();
    scene.pass().references[keyHeight] = "slip";
    for (int n = 1; n <= 88; ++n)
        if (scene.isNatural(n)) scene.read(n, keyHeight, 21);
    const auto comparison = comparePasses(scene.record, scene.sheet, 1, 2);
    REQUIRE(comparison.has_value());
    REQUIRE(comparison->dimensions.size() == 1);
    CHECK_THAT(*comparison->dimensions[0].meanChange, WithinAbs(0.5 / 52, 0.001)); // 40 alone; not -42.5
}

namespace {

/// An upright read in the piano, then on the bench: height and dip of one natural in every section.
struct OnBench : Scene {
    static constexpr std::array kReference = {16, 40, 61, 80};
    OnBench() : Scene(piano(), "upright") {
        readReferences(0, 10.2);
        nextPass();
        pass().onBench = true;
    }
    static Piano piano() {
        Piano piano = upright();
        piano.gauges["key-height"] = piano.gauges["key-dip"] = "good"; // u 0.06 and 0.08
        return piano;
    }
    void readInPiano(int note, DimensionId dimension, double value) {
        Reading reading;
        reading.count = fromTrade(value, row(dimension).kind);
        record.passes[0].cells[{{note}, dimension}].trials = {reading};
    }
    void readReferences(double height, double dip) {
        for (const int note : kReference) {
            read(note, keyHeight, height);
            read(note, keyDip, dip);
        }
    }
    BenchSetUp setUp() const { return benchSetUp(record, static_cast<int>(record.passes.size())); }
};

} // namespace

// Situation 20: shim on the bench until the values of the piano return; apart by more than 0.1 mm (or U, computation
// 15) the plan waits. The threshold is common practice, no source.
TEST_CASE("situation 20: a bench that does not hold the keys as the piano did: the plan waits") {
    OnBench scene;
    scene.readReferences(0, 10.2);
    scene.read(20, keyDip, 8.9); // far too shallow, wherever it is read
    CHECK(scene.setUp().state == BenchSetUp::State::reproduced);
    CHECK(scene.setUp().compared.size() == 8);
    CHECK_FALSE(scene.plan().steps.empty());

    scene.read(61, keyDip, 9.9); // 0.3 less on the bench than in the piano
    const BenchSetUp moved = scene.setUp();
    CHECK(moved.state == BenchSetUp::State::differs);
    CHECK(moved.toRead == std::vector{Cell{{61}, keyDip}});
    CHECK(moved.pianoPass == 1);
    const Plan waiting = scene.plan();
    CHECK(waiting.setUp.waits());
    CHECK(waiting.steps.empty());
    CHECK(waiting.trials.empty());
    REQUIRE(waiting.readNext.size() == 1);
    CHECK(waiting.readNext[0].why == "reference-note");

    scene.read(61, keyDip, 10.2); // the frame is shimmed
    CHECK_FALSE(scene.setUp().waits());
    CHECK_FALSE(scene.plan().steps.empty());
}

TEST_CASE("situation 20: what counts as another set-up") {
    OnBench scene;
    scene.readReferences(0.16, 10.4); // within U of a difference, a good gauge: 2 sqrt(2) u = 0.17 and 0.23
    CHECK(scene.setUp().state == BenchSetUp::State::reproduced);
    scene.readReferences(0.18, 10.2);
    CHECK(scene.setUp().state == BenchSetUp::State::differs);
    scene.record.piano.gauges["key-height"] = "simple"; // u 0.12, U 0.34
    CHECK(scene.setUp().state == BenchSetUp::State::reproduced);
    // a section with many notes is told by their mean: one odd reading among seven is no set-up
    for (int n = 28; n <= 40; ++n)
        if (scene.isNatural(n)) {
            scene.readInPiano(n, keyDip, 10.2);
            scene.read(n, keyDip, n == 30 ? 9.8 : 10.2);
        }
    CHECK(scene.setUp().state == BenchSetUp::State::reproduced);
}

TEST_CASE("situation 20: reference notes that were not read, or were worked on in between") {
    OnBench scene;
    CHECK(scene.setUp().state == BenchSetUp::State::notRead);
    CHECK(scene.setUp().toRead.size() == 8);
    CHECK(scene.plan().setUp.waits());
    scene.readReferences(0, 10.2);
    scene.pass().references[keyHeight] = "bed"; // another datum: these heights say nothing of the piano's
    for (const int note : OnBench::kReference)
        scene.read(note, keyHeight, 63.5);
    CHECK(scene.setUp().state == BenchSetUp::State::notRead);
    scene.pass().references.clear();
    scene.readReferences(0, 10.2);
    CHECK(scene.setUp().state == BenchSetUp::State::reproduced);
    // work after the check does not undo it: the next pass on the bench reads what the work left
    scene.did(operation::frontPunching, 40, 0.5);
    scene.nextPass();
    scene.pass().onBench = true;
    scene.read(40, keyDip, 9.65);
    CHECK(scene.setUp().state == BenchSetUp::State::reproduced);
    // back in the piano nothing is asked
    scene.nextPass();
    CHECK(scene.setUp().state == BenchSetUp::State::inPiano);

    OnBench blind; // nobody read in the piano: said, and the work goes on
    blind.record.passes[0].cells.clear();
    blind.read(20, keyDip, 8.9);
    CHECK(blind.setUp().state == BenchSetUp::State::neverInPiano);
    CHECK_FALSE(blind.plan().steps.empty());
}

TEST_CASE("situation 20: readings of a bench that was not set up stand beside none of the piano") {
    OnBench scene;
    scene.readInPiano(40, letOff, 3.0);
    scene.readReferences(0, 10.2);
    scene.read(40, letOff, 3.4);
    const auto apart = comparePasses(scene.record, scene.sheet, 1, 2);
    REQUIRE(apart->notComparable.size() == 1); // no strings on the bench
    CHECK(apart->notComparable[0] == std::pair{letOff, std::string_view("bench")});
    scene.readReferences(0, 10.6);
    const auto moved = comparePasses(scene.record, scene.sheet, 1, 2);
    CHECK(moved->dimensions.empty());
    CHECK(moved->notComparable.size() == 3);
    CHECK(std::find(moved->notComparable.begin(), moved->notComparable.end(),
                    std::pair{keyDip, std::string_view("bench-set-up")}) != moved->notComparable.end());
}
