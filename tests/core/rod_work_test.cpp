// One rod serves all notes: it is ordered once, by the middle of its readings. Which cause a slope has: notes of
// members of a technicians' list (1996-Sept/009320, 1998-Sept/036780 and 036743, from memory of an earlier reading);
// the amounts are common practice, no source.
#include "tests/core/scene.h"

#include <set>

using namespace hammerline;
using namespace hammerline::scene;

namespace {

Scene dampers() {
    Piano piano = upright();
    piano.lastDamper = 66;
    return {piano, "upright"};
}

std::vector<const Step*> of(const Plan& plan, OperationId operation) {
    std::vector<const Step*> steps;
    for (const Step& step : plan.steps)
        if (step.operation == operation) steps.push_back(&step);
    return steps;
}

} // namespace

TEST_CASE("a damper rod is never ordered longer and shorter at once") {
    Scene scene = dampers();
    for (const int note : {3, 20, 40, 60})
        scene.read(note, dimension::damperRise, note % 20 == 0 ? 2.0 : 12.5); // one high, three low
    const Plan plan = scene.plan();
    const auto rod = of(plan, operation::pedalRod);
    REQUIRE(rod.size() == 1);
    CHECK_FALSE(rod.front()->note.has_value());
    CHECK(rod.front()->direction == Direction::longer);
    CHECK(rod.front()->notes.size() == 66);
    CHECK(*rod.front()->aim == Approx(6));
    const auto wires = of(plan, operation::damperWire);
    REQUIRE(wires.size() == 1); // what is off the others once the rod is set
    CHECK(wires.front()->note->value == 3);
}

TEST_CASE("dampers that rise enough in the middle leave the rod alone") {
    Scene scene = dampers();
    for (const int note : {3, 20, 40, 60})
        scene.read(note, dimension::damperRise, 6.5);
    scene.read(50, dimension::damperRise, 3.0);
    const Plan plan = scene.plan();
    CHECK(of(plan, operation::pedalRod).empty());
    REQUIRE(of(plan, operation::damperWire).size() == 1);
    CHECK(of(plan, operation::damperWire).front()->note->value == 50);
}

TEST_CASE("two readings turn no rod: a third is read") {
    Scene scene = dampers();
    scene.read(3, dimension::damperRise, 2.0);
    scene.read(60, dimension::damperRise, 2.0);
    const Plan plan = scene.plan();
    CHECK(of(plan, operation::pedalRod).empty());
    CHECK(std::any_of(plan.readNext.begin(), plan.readNext.end(),
                      [](const ToRead& each) { return each.cell.dimension == dimension::damperRise; }));
}

TEST_CASE("a rise that slopes along the piano is looked at, not bent away note by note") {
    Scene scene = dampers();
    for (int note = 2; note <= 66; note += 8)
        scene.read(note, dimension::damperRise, 5.0 + 3.0 * note / 66);
    const Plan plan = scene.plan();
    CHECK(of(plan, operation::damperWire).empty());
    const auto looks = of(plan, operation::inspect);
    REQUIRE(looks.size() == 1);
    CHECK(looks.front()->why == "rod-slopes");
}

TEST_CASE("the soft pedal's rail: the ends' mean is the rod's, their difference the hinges'") {
    Scene scene = dampers();
    scene.read(1, dimension::halfBlow, 30);
    scene.read(88, dimension::halfBlow, 36);
    const Plan plan = scene.plan();
    const auto rod = of(plan, operation::halfBlowRod);
    REQUIRE(rod.size() == 1);
    CHECK(rod.front()->direction == Direction::longer);
    REQUIRE(of(plan, operation::inspect).size() == 1);
    CHECK(of(plan, operation::inspect).front()->why == "rail-hinge");
}

TEST_CASE("the notes worked through first stand near the ends of each section, and near its middle") {
    Scene scene = dampers();
    PlanOptions options;
    options.stage = Stage::trial;
    std::set<int> notes;
    for (const ToRead& each : scene.plan(options).readNext)
        notes.insert(each.cell.note.value);
    // Worked out by hand for 88 notes from A0: second natural from each end, the sharp nearest the middle.
    CHECK(notes == std::set<int>{3, 14, 23, 28, 38, 51, 56, 62, 68, 73, 79, 87});
}

TEST_CASE("cloth behind one shank is a millimetre at most: a hammer that wants more is looked at") {
    const auto planWith = [](double blow) {
        Scene scene = dampers();
        for (int note = 30; note <= 50; ++note)
            for (const auto& [dimension, value] : {std::pair{dimension::blow, 46.0},
                                                   {dimension::letOff, 2.4},
                                                   {dimension::keyDip, 10.2},
                                                   {dimension::lostMotion, 0.2}})
                scene.read(note, dimension, value);
        scene.read(40, dimension::blow, blow);
        return scene.plan();
    };
    const Plan some = planWith(49.0), much = planWith(54); // 48.0 is good: 1.0 mm of blow is 0.8 mm of cloth
    CHECK(stepOf(some, operation::railClothShim, 40));
    CHECK_FALSE(stepOf(much, operation::railClothShim, 40));
    CHECK(stepOf(much, operation::inspect, 40));
}
