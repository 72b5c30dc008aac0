// What the answers to the deciding checks make of a cause (computation 14).
#include "core/plan/plan_in_force.h"
#include "tests/core/scene.h"

using namespace hammerline;
using namespace hammerline::scene;
using namespace hammerline::dimension;

namespace {

/// All hammers off their rail: moved wood, or keys held up.
Scene offTheRail() {
    Scene scene(scene::upright(), "upright");
    scene.readAll(lostMotion, -0.5);
    return scene;
}

void look(Scene& scene, std::string_view said) {
    const auto kept = parseLook(said, scene.pass());
    REQUIRE(kept);
    scene.record.preferences[kept->first] = kept->second;
}

} // namespace

TEST_CASE("a look that speaks for a cause makes it sure, one that speaks against it leaves the other open") {
    Scene scene = offTheRail();
    const auto causes = scene.causes();
    const Cause* before = causeOf(causes, "moved-wood");
    REQUIRE(before);
    CHECK(before->certainty == Approx(0.6));
    CHECK(before->checks == std::vector<std::string_view>{"room-humidity", "hammers-follow-rail"});

    look(scene, "room-humidity yes");
    const auto damp = scene.causes();
    REQUIRE(causeOf(damp, "moved-wood"));
    CHECK(causeOf(damp, "moved-wood")->certainty == Approx(0.95));
    CHECK(causeOf(damp, "moved-wood")->checks == std::vector<std::string_view>{"hammers-follow-rail"});

    // "yes, every hammer follows" speaks against hammers that stand off their rail; with a dry room it is ruled out.
    look(scene, "room-humidity no");
    look(scene, "hammers-follow-rail yes");
    CHECK_FALSE(causeOf(scene.causes(), "moved-wood"));
}

TEST_CASE("a look holds for the pass it was made in") {
    Scene scene = offTheRail();
    scene.pass().uuid = "one";
    look(scene, "room-humidity yes");
    scene.nextPass();
    scene.pass().uuid = "two";
    scene.readAll(lostMotion, -0.5);
    const auto causes = scene.causes();
    REQUIRE(causeOf(causes, "moved-wood"));
    CHECK(causeOf(causes, "moved-wood")->checks.size() == 2);
}

TEST_CASE("every check is answered by a part that exists, by yes or no, or tells what to do") {
    for (const std::string_view id : {"straightedge-on-rail", "three-felts-compared", "stack-out", "hammer-set"}) {
        REQUIRE(checkQuestion(id));
        CHECK(findPart(checkQuestion(id)->part));
        CHECK_FALSE(checkQuestion(id)->yesOrNo);
    }
    for (const std::string_view id :
         {"room-humidity", "hammers-follow-rail", "wink-slow-press", "mark-capstan", "capstan-reserve"})
        CHECK(checkQuestion(id)->yesOrNo);
    for (const std::string_view id : {"dip-first", "symptom-checks"}) {
        CHECK(checkQuestion(id)->part.empty());
        CHECK_FALSE(checkQuestion(id)->yesOrNo);
    }
    CHECK_FALSE(checkQuestion("bridle-strap"));
}

TEST_CASE("what is no look, or says neither yes nor no, is refused with what there is") {
    const Pass pass;
    CHECK(parseLook("mark-capstan yes", pass));
    for (const char* wrong :
         {"mark-capstan", "mark-capstan perhaps", "dip-first yes", "straightedge-on-rail yes", "", "yes"}) {
        const auto refused = parseLook(wrong, pass);
        REQUIRE_FALSE(refused);
        CHECK(refused.error().code == RefusalCode::unknownLook);
        CHECK_FALSE(refused.error().detail.empty());
    }
}

TEST_CASE("a question of a frozen plan that has been answered is no longer open") {
    Scene scene = offTheRail();
    const auto asks = [&](const Plan& plan, std::string_view id) {
        const auto open = openQuestions(plan, scene.record);
        return std::find(open.begin(), open.end(), id) != open.end();
    };
    const Plan plan = scene.plan();
    REQUIRE(asks(plan, "room-humidity"));
    look(scene, "room-humidity yes");
    CHECK_FALSE(asks(plan, "room-humidity"));
    CHECK(asks(plan, "hammers-follow-rail"));
}
