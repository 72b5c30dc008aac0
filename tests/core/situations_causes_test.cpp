// Situations from practice: common causes behind many faults. Public technicians' lists, digests and articles,
// each named by its kind and month as collected; [G] marks amounts computed there from geometry.
#include "tests/core/scene.h"

using namespace hammerline;
using namespace hammerline::dimension;
using namespace hammerline::scene;

TEST_CASE("situation 6: a smooth hump of low keys is a card under the rail, not 88 punchings (blog, December 2014)") {
    Piano piano = upright();
    piano.arms[0] = arms(243, 222, 221, 127); // a lever of 2.1
    Scene scene(piano, "upright");
    for (int n = 1; n <= 88; ++n) {
        if (!scene.isNatural(n)) continue;
        const double low = 0.8 * std::exp(-std::pow((n - 44) / 22.0, 2));
        scene.read(n, keyHeight, -low);
        scene.read(n, keyDip, 10.2 - 0.6 - low);
        scene.read(n, lostMotion, 0.2);
        scene.read(n, checking, 15.5);
        scene.read(n, letOff, 2.6);
    }
    const auto causes = scene.causes();
    const Cause* sunk = causeOf(causes, "sunk-balance-rail");
    REQUIRE(sunk);
    CHECK(*sunk->amount > 0.36);
    CHECK(*sunk->amount < 0.40);
    const Plan plan = scene.plan();
    CHECK(count(plan, operation::balanceRailShim) == 1);
    CHECK(count(plan, operation::balancePunching) < 5);
    for (const DimensionId id : {keyHeight, keyDip, lostMotion, checking})
        CHECK(std::find(plan.becomesStale.begin(), plan.becomesStale.end(), Cell{{40}, id}) != plan.becomesStale.end());
}

TEST_CASE("situation 8: even without the felts, rough with them: the felts, not 88 papers (list post, November 2001)") {
    Scene scene(upright(), "upright");
    for (int n = 1; n <= 88; ++n)
        if (scene.isNatural(n)) scene.read(n, keyHeight, n % 2 ? 0.08 : -0.08);
    scene.nextPass();
    for (int n = 1; n <= 88; ++n)
        if (scene.isNatural(n)) scene.read(n, keyHeight, 0.45 * std::sin(n * 2.3));
    const auto causes = scene.causes();
    REQUIRE(causes.size() == 1);
    CHECK(causes[0].key == "crushed-balance-felts");
    CHECK(causes[0].remedy == "replace-set");
    CHECK(count(scene.plan(), operation::balancePunching) == 0);
}

TEST_CASE("situation 26: unevenness is told apart from too much lost motion (list post, May 2006)") {
    Scene scene(upright(), "old-upright");
    scene.readAll(lostMotion, 0.15);
    scene.read(40, lostMotion, 0.75); // still within this piano's zone
    const Review review = scene.review();
    const Judged* odd = review.at({{40}, lostMotion});
    CHECK(odd->verdict == Verdict::within);
    CHECK(odd->uneven);
    CHECK_FALSE(review.at({{43}, lostMotion})->uneven);
}

TEST_CASE("situation 30: lost motion that changes its sign from pass to pass is a loose capstan (list post, 2011)") {
    Scene scene(upright(), "upright");
    for (const double sign : {1.0, -1.0, 1.0}) {
        if (sign < 0 || scene.pass().readingCount() > 0) scene.nextPass();
        scene.readAll(lostMotion, 0.15);
        for (const int n : {17, 52})
            scene.read(n, lostMotion, sign > 0 ? 0.9 : -0.5);
    }
    const auto causes = scene.causes();
    const Cause* loose = causeOf(causes, "loose-capstan");
    REQUIRE(loose);
    CHECK(loose->notes == std::vector{NoteNumber{17}, NoteNumber{52}});
    CHECK(loose->remedy == "inspect");
}

TEST_CASE("situation 31: one note that does not check is looked at, not regulated (digest, February 2011)") {
    Scene scene(upright(), "upright");
    for (int n = 1; n <= 88; ++n) {
        scene.read(n, checking, 15.5);
        scene.read(n, blow, 46);
        scene.read(n, letOff, toTrade(scene.zones().at({{n}, letOff})->nominal, Kind::length));
        scene.read(n, lostMotion, 0.15);
    }
    scene.word(31, checking, word::doesNotCheck);
    const auto causes = scene.causes();
    REQUIRE(causes.size() == 1);
    CHECK(causes[0].key == "isolated-part");
    CHECK(causes[0].notes == std::vector{NoteNumber{31}});
    CHECK(causes[0].remedy == "inspect");
    CHECK(count(scene.plan(), operation::checkBend) == 0);
}

TEST_CASE("situation 32: a blow too short is lengthened before any spoon is bent (list posts 2001)") {
    // (2.5 - 1.2) x 5 = 6.5 mm [G]
    Scene scene(withRatio(upright(), 5.0), "upright");
    scene.aimAll(aftertouch, 0.7, 1.2, 1.6);
    scene.readAll(aftertouch, 2.5);
    scene.readAll(keyDip, 10.2);
    scene.readAll(lostMotion, 0.0);
    scene.readAll(damperStart, 0.3 * 46);
    const auto causes = scene.causes();
    const Cause* tooShort = causeOf(causes, "blow-too-short");
    REQUIRE(tooShort);
    CHECK(*tooShort->amount == Approx(6.5));
    CHECK(tooShort->remedy == "lengthen-blow");
    CHECK(count(scene.plan(), operation::spoonBend) == 0);
}

TEST_CASE("situation 35: a filed set shows in let-off and blow of all its notes together") {
    Scene scene(withRatio(upright(), 5.0), "upright");
    scene.readAll(blow, 48);
    scene.readAll(letOff, 5);
    scene.readAll(keyDip, 10);
    scene.readAll(lostMotion, 0.5);
    const auto causes = scene.causes();
    const Cause* filed = causeOf(causes, "hammers-filed");
    REQUIRE(filed);
    CHECK(filed->notes.size() == 88);
    CHECK(*filed->amount == Approx(2.0).epsilon(0.05));
}
