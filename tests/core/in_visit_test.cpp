// A cause is judged on all that was found in the visit, not on the newest pass alone.
#include "core/causes/in_visit.h"
#include "core/sheet/pass_view.h"
#include "tests/core/scene.h"

using namespace hammerline;
using namespace hammerline::dimension;
using namespace hammerline::scene;

namespace {

/// Backs of the hammers a millimetre and more from the string everywhere: worn or filed (the blow is long throughout).
Scene longBlow() {
    Scene scene(upright(), "upright");
    scene.readAll(blow, 50);
    scene.readAll(letOff, 3.0);
    return scene;
}

std::vector<std::string> keysOf(const std::vector<Cause>& causes) {
    std::vector<std::string> keys;
    for (const Cause& cause : causes)
        keys.emplace_back(cause.key);
    return keys;
}

} // namespace

TEST_CASE("a cause that was found stands while a trial of six notes is looked at") {
    Scene scene = longBlow();
    const auto before = keysOf(scene.plan().causes);
    REQUIRE_FALSE(before.empty());
    for (const int note : {15, 30, 45, 60, 75, 85})
        scene.did(operation::letOffTurn, note, 0.125).order = 10;
    scene.nextPass();
    for (const int note : {15, 30, 45, 60, 75, 85})
        scene.read(note, letOff, 3.4);
    CHECK(keysOf(scene.plan().causes) == before);
    // The window and the command line show the same causes as the plan.
    const auto view = viewPass(scene.record, 2);
    REQUIRE(view);
    CHECK(keysOf(view->causes) == before);
}

TEST_CASE("what work moved and nobody read again is not carried into the next pass") {
    Scene scene = longBlow();
    Done& rail = scene.did(operation::restRailShim, 1, 3);
    rail.notes.clear();
    for (int n = 1; n <= 88; ++n)
        rail.notes.push_back({n});
    rail.order = 10;
    scene.nextPass();
    scene.read(40, letOff, 3.0);
    const Pass found = foundInVisit(scene.record, scene.pass());
    CHECK(found.at({{40}, letOff}));
    CHECK(found.at({{41}, letOff})); // pads at the rail do not move it
    CHECK_FALSE(found.at({{41}, blow}));
    CHECK(keysOf(scene.plan().causes).empty());
}

TEST_CASE("another day is another visit") {
    Scene scene = longBlow();
    scene.pass().startedAt = 1'700'000'000'000'000;
    scene.nextPass();
    scene.pass().startedAt = 1'700'000'000'000'000 + 30LL * 24 * 3600 * 1'000'000;
    scene.read(40, letOff, 3.0);
    CHECK(foundInVisit(scene.record, scene.pass()).cells.size() == 1);
}
