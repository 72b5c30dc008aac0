// What one note's work does to the notes beside it, and what a pass that reads only doubtful notes must not claim.
#include "core/causes/keyboard.h"
#include "core/history/states.h"
#include "core/plan/plan.h"

#include <catch2/catch.hpp>

using namespace hammerline;
using namespace hammerline::dimension;

namespace {

PianoRecord upright(int passes = 1) {
    PianoRecord record;
    record.piano = *makePiano(ActionKind::upright);
    record.specName = "upright";
    for (int number = 1; number <= passes; ++number) {
        record.passes.emplace_back();
        record.passes.back().number = number;
    }
    return record;
}

void read(PianoRecord& record, int pass, Cell cell, double mm) {
    Reading reading;
    reading.count = fromMm(mm).nm;
    record.passes[static_cast<std::size_t>(pass) - 1].cells[cell].trials = {reading};
}

Done punched(int note, double mm, int pass = 1) {
    Done done;
    done.operation = operation::balancePunching;
    done.notes = {{note}};
    done.amount = mm;
    done.pass = pass;
    return done;
}

State statesOf(const PianoRecord& record) {
    const std::array ratio = {defaultRatio(record.piano, KeyColour::natural),
                              defaultRatio(record.piano, KeyColour::sharp)};
    return stateOf(record, record.passes.back().number, firstResponses(record.piano, ratio), ratio);
}

} // namespace

// Note 41 is C#4 between the naturals C4 (40) and D4 (42) on a keyboard from A0.
TEST_CASE("a natural that is raised takes half its rise off the sharp beside it") {
    PianoRecord record = upright();
    read(record, 1, {{41}, sharpHeight}, 12.3);
    read(record, 1, {{40}, keyHeight}, -0.6);
    record.done = {punched(40, 0.2)};
    const State state = statesOf(record);
    // (F+T)/T = 2.579 mm a mm with the customary natural arms F 225, T 142.5 (computation 5), half of it over two
    // naturals
    const KeyArms& arms = record.piano.armsOf(KeyColour::natural);
    const double rise = 0.2 * (arms.F() + arms.T()) / arms.T();
    CHECK(state.at({{40}, keyHeight}).value == Approx(-0.6 + rise));
    CHECK(state.at({{41}, sharpHeight}).value == Approx(12.3 - rise / 2));
    CHECK(state.at({{41}, sharpHeight}).expected);

    record.done.push_back(punched(42, 0.2));
    CHECK(statesOf(record).at({{41}, sharpHeight}).value == Approx(12.3 - rise));
}

TEST_CASE("the sharp's reading is stale once a natural beside it was raised, and only then") {
    PianoRecord record = upright();
    read(record, 1, {{41}, sharpHeight}, 12.3);
    read(record, 1, {{41}, keyDip}, 9.6);
    read(record, 1, {{44}, sharpHeight}, 12.3); // E-flat, between 43 and 45
    record.done = {punched(40, 0.2)};
    const std::vector<Cell> stale = staleCells(record, record.passes.front());
    CHECK(stale == std::vector<Cell>{{{41}, sharpHeight}});
}

TEST_CASE("naturals are planned before the sharps that stand over them") {
    PianoRecord record = upright();
    // every natural low by 0.9: raised, they would leave the sharps too low over them
    for (int n = 1; n <= 88; ++n) {
        const bool sharp = colourOf({n}, record.piano) == KeyColour::sharp;
        read(record, 1, {{n}, sharp ? sharpHeight : keyHeight}, sharp ? 11.8 : (n % 3 ? -0.9 : 0.0));
    }
    const Plan plan = *makePlan(record, *builtInSheet("upright"), 1, {});
    int lastNatural = 0, firstSharp = 0, sharps = 0;
    for (const Step& step : plan.steps) {
        if (step.operation != operation::balancePunching) continue;
        if (step.aimDimension == keyHeight) {
            lastNatural = step.order;
        } else {
            if (!firstSharp) firstSharp = step.order;
            ++sharps;
            CHECK_FALSE(step.after.empty());
        }
    }
    // Those that only probably come to lie too low are read first; no sharp is worked on a guess (P > 0.9 unread).
    int readFirst = 0;
    for (const ToRead& each : plan.readNext)
        readFirst += each.cell.dimension == sharpHeight && each.why == "moved";
    CHECK(sharps >= 5);
    CHECK(sharps + readFirst > 20);
    CHECK(lastNatural < firstSharp);
}

TEST_CASE("a pass that reads the doubtful notes again is no sample of the keyboard") {
    PianoRecord record = upright(2);
    for (int n = 1; n <= 88; ++n)
        read(record, 1, {{n}, lostMotion}, 0.2);
    // of 88 sound ones 14 came out below zero: all that is read again is negative, which is not "many"
    for (int n = 3; n <= 88; n += 6)
        read(record, 2, {{n}, lostMotion}, -0.4);
    const SpecSheet sheet = *builtInSheet("upright");
    const Zones zones(sheet, record.piano);
    const Review reviewed = review(record.piano, record.passes[1], zones);
    CHECK(findCauses({&record, &record.passes[1], &reviewed}).empty());

    // the same readings as the only ones are a sample
    PianoRecord alone = upright();
    alone.passes[0].cells = record.passes[1].cells;
    const Review only = review(alone.piano, alone.passes[0], zones);
    const auto causes = findCauses({&alone, &alone.passes[0], &only});
    REQUIRE_FALSE(causes.empty());
    CHECK(causes.front().key == "moved-wood");
}

TEST_CASE("a blow that is short because the capstans hold the hammers off their rail is no short rail") {
    PianoRecord record = upright();
    const double ratio = defaultRatio(record.piano, KeyColour::natural);
    for (int n = 1; n <= 88; ++n) {
        read(record, 1, {{n}, lostMotion}, -0.5);
        read(record, 1, {{n}, blow}, 46 - 0.5 * ratio); // the rail stands right at 46
        read(record, 1, {{n}, aftertouch}, 1.9);
    }
    const Zones zones(*builtInSheet("upright"), record.piano);
    const Review reviewed = review(record.piano, record.passes[0], zones);
    for (const Cause& cause : findCauses({&record, &record.passes[0], &reviewed}))
        CHECK(cause.key != "blow-too-short");
}

TEST_CASE("the ratio that a whole pass told is kept when a later pass reads only a few cells") {
    PianoRecord record = upright(2);
    for (int n = 30; n <= 50; ++n) {
        const double R = 4.6;
        read(record, 1, {{n}, keyDip}, 0.2 + (46 - 2.5) / R + 1.0);
        read(record, 1, {{n}, lostMotion}, 0.2);
        read(record, 1, {{n}, blow}, 46);
        read(record, 1, {{n}, letOff}, 2.5);
        read(record, 1, {{n}, aftertouch}, 1.0);
    }
    read(record, 2, {{40}, letOff}, 2.6);
    const Ratio ratio = estimateRatio(record.piano, record.passes, KeyColour::natural);
    CHECK(ratio.value == Approx(4.6).margin(0.001));
    CHECK_FALSE(ratio.fromDefault());
}
