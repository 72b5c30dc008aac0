// Every reading that the program takes without asking, on five kinds of action: what is drawn has the distances that
// were read, its links keep their length, it moves one way only and never through the string; what cannot be drawn
// names readings of that note. Geometry is measured in the plane, by nothing the linkage was solved with.
#include "core/stroke/drawn_note.h"

#include <catch2/catch.hpp>

#include <random>

using namespace hammerline;
using kinematics::lengthOf;
using kinematics::Linkage;
using kinematics::Pose;

namespace {

constexpr double kDrawnNear = 0.05; // mm: what a drawing may miss a reading by
constexpr int kDraws = 400, kPlaces = 50;

struct KindOfAction {
    std::string_view sheet;
    ActionKind kind;
    Damping damping;
};
constexpr std::array kKinds = {KindOfAction{"upright", ActionKind::upright, Damping::underdamper},
                               KindOfAction{"old-upright", ActionKind::upright, Damping::underdamper},
                               KindOfAction{"drop", ActionKind::drop, Damping::underdamper},
                               KindOfAction{"old-upright", ActionKind::upright, Damping::overdamper},
                               KindOfAction{"grand", ActionKind::grand, Damping::grandLever}};

/// Readings of one note spread evenly over what is taken without a question.
class Readings {
public:
    Readings(const Piano& piano, std::uint64_t seed) : m_piano(piano), m_random(seed) {}

    Pass pass(NoteNumber note) {
        Pass out;
        out.number = 1;
        for (const DimensionId id : {dimension::keyDip, dimension::lostMotion, dimension::blow, dimension::letOff,
                                     dimension::checking, dimension::damperStart, dimension::drop}) {
            if (!fitted(id, note, m_piano)) continue;
            const Dimension& of = row(id);
            std::uniform_int_distribution<std::int64_t> spread(of.askLow, of.askHigh);
            Reading reading;
            reading.count = spread(m_random);
            out.cells[{note, id}].trials = {reading};
        }
        return out;
    }

private:
    const Piano& m_piano;
    std::mt19937_64 m_random;
};

/// The crown's distance from the string, in the plane.
double gapInPlane(const Linkage& linkage, const Pose& pose) {
    return linkage.stringAt() - (linkage.build().grand ? pose.crown.y : pose.crown.x);
}

void checkComesOut(const Linkage& linkage, double lever) {
    const kinematics::Distances& read = linkage.distances();
    CHECK(gapInPlane(linkage, linkage.at(0)) == Approx(read.blow).margin(kDrawnNear));
    CHECK(gapInPlane(linkage, linkage.at(read.lostMotion)) == Approx(read.blow).margin(kDrawnNear));
    const Pose bottom = linkage.at(read.dip);
    CHECK(-kinematics::turned({-lever, 0}, bottom.key).y == Approx(read.dip).margin(kDrawnNear));
    const bool escapes = read.dip >= read.escapeAt;
    CHECK(bottom.free == escapes);
    if (!escapes) return;
    CHECK(gapInPlane(linkage, linkage.at(read.escapeAt - 1e-9)) == Approx(read.letOff).margin(kDrawnNear));
    if (read.checking > 0) CHECK(gapInPlane(linkage, linkage.checked()) == Approx(read.checking).margin(kDrawnNear));
    if (linkage.build().grand) CHECK(gapInPlane(linkage, bottom) == Approx(read.letOff + read.drop).margin(kDrawnNear));
    const auto stirs = linkage.travelOfHammer(read.damperStart);
    if (stirs && read.damperStart > 0)
        CHECK(read.blow - gapInPlane(linkage, linkage.at(*stirs)) == Approx(read.damperStart).margin(kDrawnNear));
}

void checkMoves(const Linkage& linkage) {
    const kinematics::Build& build = linkage.build();
    const double top = lengthOf(linkage.at(0).jackTop - linkage.at(0).jackCentre);
    Pose former = linkage.at(0);
    for (int i = 0; i <= kPlaces; ++i) {
        const Pose pose = linkage.at(linkage.distances().dip * i / kPlaces);
        const bool kept =
            std::abs(lengthOf(pose.capstan) - lengthOf(build.capstan)) < 1e-6 &&
            std::abs(lengthOf(pose.jackCentre - build.wippen) - lengthOf(build.jack - build.wippen)) < 1e-6 &&
            std::abs(lengthOf(pose.jackTop - pose.jackCentre) - top) < 1e-6 &&
            std::abs(lengthOf(pose.jackToe - pose.jackCentre) - lengthOf(build.jackToe)) < 1e-6 &&
            std::abs(lengthOf(pose.crown - pose.hammerCentre) - lengthOf(build.crown)) < 1e-6;
        const bool oneWay = pose.key >= former.key && pose.wippen >= former.wippen - 1e-9 &&
                            pose.damper >= former.damper - 1e-9 && pose.lift >= former.lift - 1e-9;
        const bool nearer = pose.free || pose.gap <= former.gap + 1e-6; // on the way up
        const bool beforeString = gapInPlane(linkage, pose) > -1e-9;    // nothing passes through the string
        if (kept && oneWay && nearer && beforeString) {
            former = pose;
            continue;
        }
        INFO("at " << pose.travel << ": links kept " << kept << ", one way " << oneWay << ", nearer " << nearer
                   << ", short of the string " << beforeString);
        FAIL_CHECK();
        former = pose;
    }
}

} // namespace

TEST_CASE("whatever is read on any kind of action is drawn as read, or refused by the readings' names") {
    for (const KindOfAction& of : kKinds) {
        Piano piano = *makePiano(of.kind);
        piano.damping = of.damping;
        const Zones zones(*builtInSheet(of.sheet), piano);
        Readings readings(piano, 1900 + of.sheet.size());
        int drawn = 0;
        for (int i = 0; i < kDraws; ++i) {
            const NoteNumber note{20 + i % 40};
            const KeyColour keys = colourOf(note, piano);
            Ratio ratio;
            ratio.value = defaultRatio(piano, keys) * (0.9 + 0.2 * (i % 11) / 10);
            const Pass pass = readings.pass(note);
            const PassTable table(piano, pass);
            const auto placed = drawnNote(piano, table, zones, ratio, note);
            INFO(of.sheet << ", note " << note.value << ", draw " << i);
            if (!placed) {
                CHECK_FALSE(placed.error().readings.empty());
                for (const DimensionId id : placed.error().readings)
                    CHECK(fitted(id, note, piano));
                continue;
            }
            ++drawn;
            checkComesOut(placed->linkage, piano.armsOf(keys).F());
            checkMoves(placed->linkage);
        }
        INFO(of.sheet << ": " << drawn << " of " << kDraws << " drawn");
        CHECK(drawn > kDraws / 2);
    }
}

// Within the zones of its own sheet nothing may be refused.
TEST_CASE("what lies in its zones can always be drawn") {
    for (const KindOfAction& of : kKinds) {
        Piano piano = *makePiano(of.kind);
        piano.damping = of.damping;
        const Zones zones(*builtInSheet(of.sheet), piano);
        for (const int n : {5, 22, 40, 41, 60, 80})
            for (const int corner : {0, 1, 2, 3, 4, 5, 6, 7}) {
                Pass pass;
                pass.number = 1;
                int bit = 0;
                for (const DimensionId id : {dimension::keyDip, dimension::blow, dimension::letOff}) {
                    const auto& zone = zones.at({{n}, id});
                    REQUIRE(zone);
                    Reading reading;
                    reading.count = (corner >> bit++ & 1) != 0 ? *zone->high : *zone->low;
                    pass.cells[{{n}, id}].trials = {reading};
                }
                Ratio ratio;
                ratio.value = defaultRatio(piano, colourOf({n}, piano));
                INFO(of.sheet << ", note " << n << ", corner " << corner);
                CHECK(drawnNote(piano, PassTable(piano, pass), zones, ratio, {n}));
            }
    }
}

// An overdamper's wire lifts the lever's arm by what it rises after the damper stirs: 80 mm of arm (the links' own
// typical build), measured at the foot of the wire.
TEST_CASE("an overdamper is lifted by its wire, after its damper start and not before") {
    Piano piano = *makePiano(ActionKind::upright);
    piano.damping = Damping::overdamper;
    const Zones zones(*builtInSheet("upright"), piano);
    Ratio ratio;
    ratio.value = 4.9;
    const Pass none;
    const auto placed = drawnNote(piano, PassTable(piano, none), zones, ratio, {40});
    REQUIRE(placed);
    const Linkage& linkage = placed->linkage;
    REQUIRE(linkage.build().over);
    REQUIRE(linkage.damperFrom());
    CHECK(linkage.at(*linkage.damperFrom()).damper == 0);
    const Pose bottom = linkage.at(linkage.distances().dip);
    const double rise =
        linkage.wireFoot(bottom.wippen).y - linkage.wireFoot(linkage.at(*linkage.damperFrom()).wippen).y;
    CHECK(rise > 2);
    CHECK(std::sin(bottom.damper) * (linkage.build().damperLever.x - linkage.wireFoot(0).x) == Approx(rise));
}
