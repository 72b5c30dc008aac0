// The account of the dip and the stroke agree with each other, with the relation, and with nothing made up.
#include "core/stroke/stroke.h"

#include "scene.h"
#include <random>

using namespace hammerline;

namespace {

/// Readings of one note, mm.
struct Note {
    double dip, lostMotion, blow, letOff;
    std::optional<double> aftertouch;
};

struct Bench {
    scene::Scene scene;
    double ratio;

    explicit Bench(double r, Piano piano = scene::upright(), std::string_view sheet = "upright")
        : scene(scene::withRatio(std::move(piano), r), sheet), ratio(r) {}

    void read(int note, const Note& each) {
        scene.read(note, dimension::keyDip, each.dip);
        if (scene.record.piano.vertical()) scene.read(note, dimension::lostMotion, each.lostMotion);
        scene.read(note, dimension::blow, each.blow);
        scene.read(note, dimension::letOff, each.letOff);
        if (each.aftertouch) scene.read(note, dimension::aftertouch, *each.aftertouch);
    }
    Ratio told() { return estimateRatio(scene.record.piano, scene.pass(), KeyColour::natural); }
    DipAccount account(int note) {
        const Piano& piano = scene.record.piano;
        return dipAccount(piano, PassTable(piano, scene.pass()), Zones(scene.sheet, piano), told(), NoteNumber{note});
    }
    Stroke stroke(int note) {
        const Piano& piano = scene.record.piano;
        return strokeOf(piano, PassTable(piano, scene.pass()), told(), NoteNumber{note});
    }
};

} // namespace

// By hand: 9.5 - 0.6 + 5.1/4.9 - 46/4.9 = 9.5 - 0.6 + 1.0408 - 9.3878 = 0.5531.
TEST_CASE("a note's account adds up to the aftertouch that is left") {
    Bench bench(4.9);
    bench.read(40, {.dip = 9.5, .lostMotion = 0.6, .blow = 46, .letOff = 5.1, .aftertouch = 0.5});
    const DipAccount account = bench.account(40);
    REQUIRE(account.terms.size() == 4);
    CHECK(*account.terms[0].share == Approx(9.5));
    CHECK(*account.terms[1].share == Approx(-0.6));
    CHECK(*account.terms[2].share == Approx(1.0408).margin(1e-4));
    CHECK(*account.terms[3].share == Approx(-9.3878).margin(1e-4));
    REQUIRE(account.computed);
    CHECK(*account.computed == Approx(0.5531).margin(1e-4));
    CHECK(account.agreement == DipAgreement::agrees);
}

TEST_CASE("a term that is far from its aim is named, the largest first") {
    Bench bench(4.9);
    bench.read(40, {.dip = 9.5, .lostMotion = 0.6, .blow = 46, .letOff = 5.1, .aftertouch = {}});
    const DipAccount account = bench.account(40);
    REQUIRE(account.computed);
    REQUIRE(account.atAims);
    double sum = 0;
    for (const DipTerm& term : account.terms)
        sum += *term.share - *term.aimShare;
    CHECK(sum == Approx(*account.computed - *account.atAims).margin(1e-9));
    REQUIRE_FALSE(account.against.empty());
    for (std::size_t i = 1; i < account.against.size(); ++i)
        CHECK(std::abs(account.against[i - 1].mm) >= std::abs(account.against[i].mm));
    for (const DipDifference& each : account.against)
        CHECK(std::abs(each.mm) >= 0.15);
}

TEST_CASE("what is not read leaves its line empty, and nothing is computed") {
    Bench bench(4.9);
    bench.scene.read(40, dimension::keyDip, 10);
    bench.scene.read(40, dimension::blow, 46);
    const DipAccount account = bench.account(40);
    CHECK_FALSE(account.computed);
    CHECK_FALSE(account.uncertainty);
    CHECK(account.agreement == DipAgreement::unread);
    CHECK_FALSE(bench.stroke(40).letOff);
    CHECK(*bench.stroke(40).bottom == Approx(10));
}

TEST_CASE("a note that blocks has no let-off to account for") {
    Bench bench(4.9);
    bench.read(40, {.dip = 10, .lostMotion = 0.2, .blow = 46, .letOff = 3, .aftertouch = {}});
    bench.scene.word(40, dimension::letOff, word::blocks);
    CHECK_FALSE(bench.account(40).computed);
    CHECK_FALSE(bench.stroke(40).letOff);
}

TEST_CASE("with the customary ratio nothing is said to disagree") {
    scene::Scene scene(scene::upright(), "upright");
    scene.read(40, dimension::keyDip, 10);
    scene.read(40, dimension::lostMotion, 0.2);
    scene.read(40, dimension::blow, 46);
    scene.read(40, dimension::letOff, 3);
    scene.read(40, dimension::aftertouch, 3);
    const Piano& piano = scene.record.piano;
    const Ratio ratio = estimateRatio(piano, scene.pass(), KeyColour::natural);
    REQUIRE(ratio.fromDefault());
    const auto account = dipAccount(piano, PassTable(piano, scene.pass()), Zones(scene.sheet, piano), ratio, {40});
    CHECK(account.agreement == DipAgreement::customary);
}

TEST_CASE("an aftertouch that cannot be is said to differ") {
    Bench bench(4.9);
    bench.read(40, {.dip = 9.5, .lostMotion = 0.6, .blow = 46, .letOff = 5.1, .aftertouch = 3.0});
    CHECK(bench.account(40).agreement == DipAgreement::differs);
}

// The stroke is computed from places on the key's way, the account from a sum of shares: two routes to one figure.
TEST_CASE("account and stroke tell the same aftertouch, whatever was read") {
    std::mt19937 random(20260401);
    std::uniform_real_distribution<double> ratio(4.3, 5.8), dip(8.5, 12), lost(-0.4, 1.5), blow(38, 52), letOff(0.5, 8);
    for (int i = 0; i < 300; ++i) {
        Bench bench(ratio(random));
        bench.read(52, {.dip = dip(random),
                        .lostMotion = lost(random),
                        .blow = blow(random),
                        .letOff = letOff(random),
                        .aftertouch = {}});
        const Stroke stroke = bench.stroke(52);
        const DipAccount account = bench.account(52);
        REQUIRE(stroke.aftertouch);
        REQUIRE(account.computed);
        CHECK(*stroke.aftertouch == Approx(*account.computed).margin(1e-9));
        CHECK(*stroke.moves <= *stroke.letOff);
    }
}

// A sample of drawn readings: the spread of the account is what its uncertainty says.
TEST_CASE("the uncertainty of the account is the spread that the gauges give it") {
    Bench bench(4.9);
    const Piano& piano = bench.scene.record.piano;
    const auto u = [&](DimensionId id) { return toTrade(uncertaintyOf(id, piano), Kind::length); };
    std::mt19937 random(7);
    std::normal_distribution<double> noise;
    const double spread = bench.told().spread;
    double square = 0, said = 0;
    constexpr int kDrawn = 3000;
    for (int i = 0; i < kDrawn; ++i) {
        const double r = 4.9 + spread * noise(random);
        const double computed =
            (10 + u(dimension::keyDip) * noise(random)) - (0.4 + u(dimension::lostMotion) * noise(random)) -
            ((46 + u(dimension::blow) * noise(random)) - (3 + u(dimension::letOff) * noise(random))) / r;
        const double apart = computed - (10 - 0.4 - 43 / 4.9);
        square += apart * apart;
    }
    bench.read(40, {.dip = 10, .lostMotion = 0.4, .blow = 46, .letOff = 3, .aftertouch = {}});
    said = *bench.account(40).uncertainty;
    CHECK(std::sqrt(square / kDrawn) == Approx(said).epsilon(0.08));
}

TEST_CASE("a grand has no line of lost motion") {
    Bench bench(4.9, *makePiano(ActionKind::grand), "grand");
    bench.read(30, {.dip = 10, .lostMotion = 0, .blow = 46, .letOff = 2, .aftertouch = {}});
    bench.scene.read(30, dimension::damperStart, 22);
    const DipAccount account = bench.account(30);
    CHECK(account.terms.size() == 3);
    CHECK(*account.computed == Approx(10 - 44 / 4.9));
    CHECK(*bench.stroke(30).damperStirs == Approx(22 / 4.9));
}
