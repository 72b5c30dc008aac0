// The drawn linkage has the distances that were read, its links keep their length, and nothing jumps.
#include "core/kinematics/linkage.h"

#include <catch2/catch.hpp>

#include <random>

using namespace hammerline;
using namespace hammerline::kinematics;

namespace {

constexpr double kDrawn = 0.05; // mm: what a drawing may miss a reading by

Build buildOf(ActionKind kind) {
    const Piano piano = *makePiano(kind);
    KeyArms arms;
    arms.front = fromMm(piano.vertical() ? 235 : 250);
    arms.frontPin = fromMm(piano.vertical() ? 214 : 228);
    arms.back = fromMm(piano.vertical() ? 142 : 225);
    arms.capstan = fromMm(piano.vertical() ? 127 : 130);
    return typicalBuild(piano, arms);
}

Distances distances(double dip, double lost, double blow, double letOff, double ratio) {
    return {.dip = dip,
            .lostMotion = lost,
            .blow = blow,
            .letOff = letOff,
            .escapeAt = lost + (blow - letOff) / ratio,
            .checking = 15,
            .drop = 2,
            .damperStart = blow / 2};
}

void checkDrawn(const Linkage& linkage) {
    const Distances& read = linkage.distances();
    CHECK(linkage.at(0).gap == Approx(read.blow).margin(kDrawn));
    CHECK(linkage.at(read.lostMotion).gap == Approx(read.blow).margin(kDrawn));
    CHECK(linkage.at(read.escapeAt - 1e-9).gap == Approx(read.letOff).margin(kDrawn));
    const Pose stirs = linkage.at(*linkage.travelOfHammer(read.damperStart));
    CHECK(read.blow - stirs.gap == Approx(read.damperStart).margin(kDrawn));
    // The front edge itself, measured in the plane.
    const double edge = turned({-linkage.build().front, 0}, linkage.at(read.dip).key).y;
    CHECK(-edge == Approx(read.dip).margin(kDrawn));
}

void checkLinks(const Linkage& linkage) {
    const Build& build = linkage.build();
    const double top = lengthOf(linkage.at(0).jackTop - linkage.at(0).jackCentre);
    double former = linkage.distances().blow + 1e-9;
    for (int i = 0; i <= 200; ++i) {
        const Pose pose = linkage.at(linkage.distances().dip * i / 200);
        CHECK(lengthOf(pose.capstan) == Approx(lengthOf(build.capstan)));
        CHECK(lengthOf(pose.jackCentre - build.wippen) == Approx(lengthOf(build.jack - build.wippen)));
        CHECK(lengthOf(pose.jackTop - pose.jackCentre) == Approx(top));
        CHECK(lengthOf(pose.jackToe - pose.jackCentre) == Approx(lengthOf(build.jackToe)));
        CHECK(lengthOf(pose.crown - pose.hammerCentre) == Approx(lengthOf(build.crown)));
        CHECK(pose.gap >= 0); // nothing passes through the string
        if (!pose.free) CHECK(pose.gap <= former + 1e-9);
        if (!pose.free) former = pose.gap;
    }
}

} // namespace

// Whole range of readings on a grid; ratio, blow, let-off and lost motion as a worn action may have them.
TEST_CASE("a drawn upright has the distances that were read") {
    const Build build = buildOf(ActionKind::upright);
    for (const double ratio : {4.3, 4.9, 5.6})
        for (const double blow : {42.0, 46.0, 50.0})
            for (const double letOff : {1.5, 3.0, 6.0})
                for (const double lost : {0.0, 0.2, 0.8}) {
                    INFO("ratio " << ratio << " blow " << blow << " let-off " << letOff << " lost " << lost);
                    const auto linkage = Linkage::place(build, distances(13, lost, blow, letOff, ratio));
                    REQUIRE(linkage);
                    checkDrawn(*linkage);
                    checkLinks(*linkage);
                }
}

TEST_CASE("a drawn grand has the distances that were read") {
    const Build build = buildOf(ActionKind::grand);
    for (const double ratio : {4.5, 5.0, 6.0})
        for (const double blow : {43.0, 46.0, 49.0})
            for (const double letOff : {1.0, 2.0, 4.0}) {
                INFO("ratio " << ratio << " blow " << blow << " let-off " << letOff);
                const auto linkage = Linkage::place(build, distances(13, 0, blow, letOff, ratio));
                REQUIRE(linkage);
                checkDrawn(*linkage);
                checkLinks(*linkage);
            }
}

// In mid-stroke the links run ahead of the straight line that the relation draws; figures never come from the drawing.
TEST_CASE("the drawing stays near the relation in mid-stroke") {
    for (const ActionKind kind : {ActionKind::upright, ActionKind::grand}) {
        const auto linkage =
            Linkage::place(buildOf(kind), distances(10, kind == ActionKind::grand ? 0 : 0.2, 46, 3, 4.9));
        REQUIRE(linkage);
        for (double way = 2; way < 42; way += 2) {
            const double straight = linkage->distances().lostMotion + way / 4.9;
            CHECK(std::abs(*linkage->travelOfHammer(way) - straight) < 0.7);
        }
    }
}

TEST_CASE("distances that no action can have are refused by what is wrong") {
    const Build build = buildOf(ActionKind::upright);
    const auto why = [&](const Distances& read) { return Linkage::place(build, read).error(); };
    CHECK(why(distances(10, 0.2, 46, 47, 4.9)) == CannotDraw::letOffBeyond);
    CHECK(why(distances(10, 0.2, 400, 3, 4.9)) == CannotDraw::blowTooLong);
    Distances early = distances(10, 3, 46, 3, 4.9);
    early.escapeAt = 1;
    CHECK(why(early) == CannotDraw::escapeOutside);
    CHECK(why(distances(10, 0.2, 46, 3, 40)) == CannotDraw::linksDoNotMeet);
}

TEST_CASE("a key too shallow for its jack never lets the hammer go") {
    const auto linkage = Linkage::place(buildOf(ActionKind::upright), distances(8, 0.2, 46, 3, 4.9));
    REQUIRE(linkage);
    CHECK_FALSE(linkage->at(8).free);
    CHECK_FALSE(linkage->checked().free);
    CHECK(linkage->at(8).gap > 3);
}
