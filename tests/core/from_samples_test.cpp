// What sample notes say of all notes.
#include "core/plan/from_samples.h"
#include "tests/core/scene.h"

#include <catch2/catch.hpp>

using namespace hammerline;
using namespace hammerline::dimension;
using hammerline::scene::Scene;

TEST_CASE("the score interval of a share is the published one") {
    // R. G. Newcombe, "Two-sided confidence intervals for the single proportion", Statistics in Medicine 17 (1998),
    // table I, method 3 (score): 81 of 263, 15 of 148, 0 of 20, 1 of 29. Values from memory, and recomputed by the
    // roots of (p - s)^2 = z^2 s (1 - s)/n below.
    struct Row {
        int hits, n;
        double low, high;
    };
    for (const Row& row : {Row{81, 263, 0.2553, 0.3662}, Row{15, 148, 0.0624, 0.1605}, Row{0, 20, 0, 0.1611},
                           Row{1, 29, 0.0061, 0.1718}}) {
        const ShareInterval found = scoreInterval(row.hits, row.n);
        CHECK(found.low == Approx(row.low).margin(6e-5));
        CHECK(found.high == Approx(row.high).margin(6e-5));
        const double p = double(row.hits) / row.n, z = 1.959963984540054;
        for (const double s : {found.low, found.high})
            CHECK((p - s) * (p - s) == Approx(z * z * s * (1 - s) / row.n).margin(1e-12));
    }
}

TEST_CASE("five of ten dips out say what all 88 would take, and how far that is a guess") {
    Scene scene(*makePiano(ActionKind::upright), "upright");
    const Piano& piano = scene.record.piano;
    for (int i = 0; i < 10; ++i)
        scene.read(4 + 9 * i, keyDip, i % 2 ? 10.0 : 11.5);
    const Zones zones(scene.sheet, piano);
    const auto found = fromSamples(piano, review(piano, scene.pass(), zones));
    REQUIRE(found.size() == 1);
    const FromSamples& dip = found.front();
    CHECK(dip.dimension == keyDip);
    CHECK(dip.operation == operation::frontPunching);
    CHECK(dip.read == 10);
    CHECK(dip.out == 5);
    CHECK(dip.all == 88);
    const double there = minutesToReach(accessOf(dip.operation, piano), piano)[0];
    const double each = minutesFor(dip.operation, piano);
    CHECK(dip.minutes == Approx(there + 44 * each));
    CHECK(dip.low == Approx(there + 0.2366 * 88 * each).margin(0.02)); // 5 of 10: .2366 to .7634
    CHECK(dip.high == Approx(there + 0.7634 * 88 * each).margin(0.02));
}

TEST_CASE("four samples say nothing, half the keyboard is no sample, and what is in asks for no minutes") {
    Scene scene(*makePiano(ActionKind::upright), "upright");
    const Piano& piano = scene.record.piano;
    for (int n = 1; n <= 4; ++n)
        scene.read(n, keyDip, 12);
    for (int n = 1; n <= 44; ++n)
        scene.read(n, letOff, 9);
    for (int n = 1; n <= 10; ++n)
        scene.read(n, blow, 46);
    const Zones zones(scene.sheet, piano);
    CHECK(fromSamples(piano, review(piano, scene.pass(), zones)).empty());
}
