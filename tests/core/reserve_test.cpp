// How much is left and what settles, against arithmetic by hand from the arms F 235, P 214, T 142, C 127 mm of an
// upright and the limits of its customary sheet (capstan 8, aim 10 mm in the wood; felt 4.5 mm at note 40). The figures
// of a round and of a settling are common practice but for the punchings: a list post of April 1995 (1995-April/001290)
// has 15 to 20 % in six months.
#include "core/reserve/reserve.h"
#include "core/reserve/settling.h"
#include "tests/core/scene.h"

using namespace hammerline;
using scene::Scene;

namespace {

const Reserve& reserveOf(const std::vector<Reserve>& all, ReserveOf of) {
    const auto found = std::ranges::find(all, of, &Reserve::of);
    REQUIRE(found != all.end());
    return *found;
}

Reserve reserveIn(const Scene& scene, int note, ReserveOf of) {
    return reserveOf(reservesAt(scene.record, scene.zones(), {note}), of);
}

Finding mendedPart(std::string part, std::string remedy, std::optional<int> note, std::int64_t order = 1) {
    Finding finding;
    finding.part = std::move(part);
    finding.remedy = std::move(remedy);
    finding.state = FindingState::mended;
    if (note) finding.note = NoteNumber{*note};
    finding.order = order;
    return finding;
}

const SettlingBand& bandOf(const Settling& settling, DimensionId dimension, KeyColour keys) {
    const auto found = std::ranges::find_if(settling.bands, [&](const SettlingBand& band) {
        return band.dimension == dimension && band.keys.value_or(keys) == keys;
    });
    REQUIRE(found != settling.bands.end());
    return *found;
}

} // namespace

TEST_CASE("capstan thread: what was read, less what was turned since, in rounds of two millimetres") {
    Scene scene(scene::upright(), "upright");
    CHECK_FALSE(reserveIn(scene, 40, ReserveOf::capstanThread).rounds); // nothing read: never within
    CHECK(reserveIn(scene, 40, ReserveOf::capstanThread).toRead == dimension::capstanReserve);

    scene.read(40, dimension::capstanReserve, 14);
    Reserve reserve = reserveIn(scene, 40, ReserveOf::capstanThread);
    CHECK(*reserve.left == Approx(6)); // 14 - 8
    CHECK(reserve.perRound == Approx(2));
    CHECK(reserve.rounds == 3);
    CHECK(reserve.from == ReserveFrom::reading);

    // a turn moves the key's front 2.0 mm, at most 2.8: over F/C = 235/127 that is 1.513 mm of thread
    scene.did(operation::capstanTurn, 40, 1);
    reserve = reserveIn(scene, 40, ReserveOf::capstanThread);
    CHECK(*reserve.left == Approx(6 - 2.8 * 127 / 235));
    CHECK(reserve.rounds == 2);
    scene.did(operation::capstanTurn, 40, -3); // turned down: the thread it gives back is not counted on
    CHECK(*reserveIn(scene, 40, ReserveOf::capstanThread).left == Approx(6 - 2.8 * 127 / 235));
    // four turns after one pass: a round here takes 6.05 mm, and none is left
    CHECK(reserveIn(scene, 40, ReserveOf::capstanThread).perRound == Approx(4 * 2.8 * 127 / 235));
    CHECK(reserveIn(scene, 40, ReserveOf::capstanThread).rounds == 0);

    scene.nextPass(); // read anew: what was done before is in it
    scene.read(40, dimension::capstanReserve, 9);
    CHECK(*reserveIn(scene, 40, ReserveOf::capstanThread).left == Approx(1));
    CHECK(reserveIn(scene, 40, ReserveOf::capstanThread).rounds == 0);
    scene.nextPass();
    scene.read(40, dimension::capstanReserve, 7); // beyond the limit already
    CHECK(*reserveIn(scene, 40, ReserveOf::capstanThread).left == 0);
}

TEST_CASE("capstan thread: work to the aim counts as a round, the set-up's figure stands where no note was read") {
    Scene scene(scene::upright(), "upright");
    scene.record.piano.capstanReserve = fromMm(15);
    CHECK(*reserveIn(scene, 12, ReserveOf::capstanThread).left == Approx(7));
    CHECK(reserveIn(scene, 12, ReserveOf::capstanThread).from == ReserveFrom::setUp);
    Done& done = scene.did(operation::capstanTurn, 12, 0);
    done.amount.reset();
    done.toAim = true;
    CHECK(*reserveIn(scene, 12, ReserveOf::capstanThread).left == Approx(5));

    Piano fixed = scene::upright();
    fixed.capstan = Capstan::fixed;
    const Scene without(fixed, "upright");
    const auto all = reservesAt(without.record, without.zones(), {40});
    CHECK(std::ranges::find(all, ReserveOf::capstanThread, &Reserve::of) == all.end()); // faced, not turned
}

TEST_CASE("hammer felt: over the limit, and not more than a third in all") {
    Scene scene(scene::upright(), "upright");
    scene.read(40, dimension::feltLeft, 9);
    Reserve reserve = reserveIn(scene, 40, ReserveOf::hammerFelt);
    CHECK(*reserve.left == Approx(3)); // a third of 9 is less than 9 - 4.5
    CHECK(reserve.rounds == 6);        // of half a millimetre

    Finding filed = mendedPart("hammer-head", "reshape", 40, 5);
    filed.amount = 1.2;
    scene.record.findings = {filed};
    scene.pass().cells[{{40}, dimension::feltLeft}].trials.front().order = 3; // read before it was filed
    reserve = reserveIn(scene, 40, ReserveOf::hammerFelt);
    CHECK(*reserve.left == Approx(1.8)); // 9/3 - 1.2
    CHECK(reserve.rounds == 3);
    scene.pass().cells[{{40}, dimension::feltLeft}].trials.front().order = 8; // read after: 10.2 once, 3.4 in all
    CHECK(*reserveIn(scene, 40, ReserveOf::hammerFelt).left == Approx(2.2));

    scene.record.findings.push_back(mendedPart("hammer-head", "replace-section", 40, 9)); // another hammer: unknown
    CHECK_FALSE(reserveIn(scene, 40, ReserveOf::hammerFelt).rounds);
    CHECK(reserveIn(scene, 40, ReserveOf::hammerFelt).toRead == dimension::feltLeft);

    Scene later(scene::upright(), "upright"); // 10 once, 9 now, no filing known: 9 - 2/3 of 10
    later.read(40, dimension::feltLeft, 10);
    later.nextPass();
    later.read(40, dimension::feltLeft, 9);
    CHECK(*reserveIn(later, 40, ReserveOf::hammerFelt).left == Approx(9 - 20.0 / 3));

    scene.read(41, dimension::feltLeft, 5);
    CHECK(*reserveIn(scene, 41, ReserveOf::hammerFelt).left == Approx(0.5)); // 5 - 4.5 is less than a third
}

TEST_CASE("papers and card: what recorded work has put in can be taken out again") {
    Scene scene(scene::upright(), "upright");
    CHECK_FALSE(reserveIn(scene, 40, ReserveOf::frontPaper).rounds);
    scene.did(operation::frontPunching, 40, 0.75);
    scene.nextPass();
    scene.did(operation::frontPunching, 40, -0.1);
    const Reserve paper = reserveIn(scene, 40, ReserveOf::frontPaper);
    CHECK(*paper.left == Approx(0.65));
    CHECK(paper.perRound == Approx(0.75)); // a round took as much here
    CHECK(paper.rounds == 0);
    scene.did(operation::balancePunching, 40, 0.65);
    CHECK_FALSE(reserveIn(scene, 41, ReserveOf::balanceCard).rounds); // another note
    scene.did(operation::balancePunching, 41, 0.2);
    CHECK(reserveIn(scene, 41, ReserveOf::balanceCard).rounds == 1);
    scene.did(operation::balancePunching, 42, -0.2); // took out what was there: what else lies there nobody counted
    CHECK_FALSE(reserveIn(scene, 42, ReserveOf::balanceCard).rounds);
}

TEST_CASE("let-off thread: two turns either way of a screw that was tried, less what was turned since") {
    Scene scene(scene::upright(), "upright");
    CHECK_FALSE(reserveIn(scene, 40, ReserveOf::letOffThread).rounds);
    Finding look = mendedPart("let-off-screw", "", std::nullopt);
    look.state = FindingState::sound;
    scene.record.findings = {look};
    Reserve thread = reserveIn(scene, 40, ReserveOf::letOffThread);
    CHECK(thread.turns);
    CHECK(*thread.left == Approx(2));
    CHECK(thread.rounds == 4);
    scene.did(operation::letOffTurn, 40, 0.375);
    CHECK(*reserveIn(scene, 40, ReserveOf::letOffThread).left == Approx(1.625));
    CHECK(reserveIn(scene, 40, ReserveOf::letOffThread).rounds == 3);
    scene.did(operation::letOffTurn, 40, -0.375); // back where it was tried
    CHECK(*reserveIn(scene, 40, ReserveOf::letOffThread).left == Approx(2));
}

TEST_CASE("the least over the piano names the note, and an unknown one where nothing tells") {
    Scene scene(scene::upright(), "upright");
    scene.readAll(dimension::feltLeft, 9);
    scene.read(33, dimension::feltLeft, 4.8);
    const auto least = leastReserves(scene.record, scene.zones());
    REQUIRE(least.size() == kReserves.size());
    // the bass limit is 6 of 9: a third; note 33 has 0.3 over 4.5
    const auto of = [&](ReserveOf which) {
        const auto found = std::ranges::find(least, which, [](const LeastReserve& each) { return each.reserve.of; });
        REQUIRE(found != least.end());
        return *found;
    };
    CHECK(of(ReserveOf::hammerFelt).reserve.note == NoteNumber{33});
    CHECK(of(ReserveOf::hammerFelt).reserve.rounds == 0);
    CHECK(of(ReserveOf::hammerFelt).known == 88);
    CHECK_FALSE(of(ReserveOf::capstanThread).reserve.rounds);
    CHECK(of(ReserveOf::capstanThread).known == 0);
}

TEST_CASE("a round is never smaller, and more work never leaves more") {
    // 0 to 12 turns by quarters: the lower bound falls all the way
    double before = 1e9;
    for (int quarter = 0; quarter <= 48; ++quarter) {
        Scene scene(scene::upright(), "upright");
        scene.read(40, dimension::capstanReserve, 20);
        scene.did(operation::capstanTurn, 40, quarter / 4.0);
        const Reserve reserve = reserveIn(scene, 40, ReserveOf::capstanThread);
        CHECK(*reserve.left <= before);
        CHECK(*reserve.left >= 0);
        CHECK(*reserve.rounds * reserve.perRound <= *reserve.left + 1e-9);
        before = *reserve.left;
    }
}

TEST_CASE("settling of new balance and front punchings, by the arms") {
    Scene scene(scene::upright(), "upright");
    scene.record.findings = {mendedPart("balance-felt", "new-set", std::nullopt),
                             mendedPart("front-felt", "new-set", std::nullopt)};
    const auto all = settlingOf(scene.record);
    REQUIRE(all.size() == 2);
    const Settling& balance = all[0].row->part == "balance-felt" ? all[0] : all[1];
    const Settling& front = all[0].row->part == "front-felt" ? all[0] : all[1];
    CHECK(balance.notes.size() == 88);
    // 1.0 x 5 % = 0.05 to 3.0 x 20 % = 0.6 mm; (235 + 142)/142 = 2.655 at the front
    const SettlingBand& height = bandOf(balance, dimension::keyHeight, KeyColour::natural);
    CHECK(*height.least == Approx(-0.05 * 2.65493));
    CHECK(*height.most == Approx(-0.6 * 2.65493));
    // dip 235 (1/142 + 1/214) = 2.753, lost motion 235 (1/127 - 1/142) = 0.1955, aftertouch 235 (1/214 + 1/127) = 2.949
    CHECK(*bandOf(balance, dimension::keyDip, KeyColour::natural).most == Approx(-0.6 * 2.75306).epsilon(1e-5));
    CHECK(*bandOf(balance, dimension::lostMotion, KeyColour::natural).most == Approx(0.6 * 0.19547).epsilon(1e-4));
    CHECK(*bandOf(balance, dimension::aftertouch, KeyColour::natural).most == Approx(-0.6 * 2.94852).epsilon(1e-5));
    // front: 5 x 5 % = 0.25 to 7.5 x 20 % = 1.5 mm, 235/214 = 1.098 each
    CHECK(*bandOf(front, dimension::keyDip, KeyColour::natural).least == Approx(0.25 * 1.09813).epsilon(1e-5));
    CHECK(*bandOf(front, dimension::aftertouch, KeyColour::natural).most == Approx(1.5 * 1.09813).epsilon(1e-5));

    // both together at one natural: the ends add by their sign
    const auto cells = settlingCells(scene.record);
    const auto dip = std::ranges::find(cells, Cell{{40}, dimension::keyDip}, &SettlingCell::cell);
    REQUIRE(dip != cells.end());
    CHECK(*dip->low == Approx(-0.6 * 2.75306 + 0.25 * 1.09813).epsilon(1e-4));
    CHECK(*dip->high == Approx(-0.05 * 2.75306 + 1.5 * 1.09813).epsilon(1e-4));
    for (const SettlingCell& each : cells)
        CHECK(fitted(each.cell.dimension, each.cell.note, scene.record.piano));
}

TEST_CASE("back cloth lowers the key's back: height, dip and lost motion grow alike") {
    Scene scene(scene::upright(), "upright");
    scene.record.findings = {mendedPart("back-rail-cloth", "new-strip", std::nullopt)};
    const auto all = settlingOf(scene.record);
    REQUIRE(all.size() == 1);
    REQUIRE(settlingAt(scene.record, {40}).size() == 1);
    CHECK(settlingAt(scene.record, {40})[0].notes == std::vector<NoteNumber>{{40}});
    CHECK(settlingAt(scene.record, {40})[0].bands.size() == all[0].bands.size());
    // 7.0 x 15 % = 1.05 mm times 235/142 = 1.655
    for (const DimensionId id : {dimension::keyHeight, dimension::keyDip, dimension::lostMotion})
        CHECK(*bandOf(all[0], id, KeyColour::natural).most == Approx(1.05 * 1.65493).epsilon(1e-5));
}

TEST_CASE("straps settle without a figure, what was only mended does not settle, days are the calendar's") {
    Scene scene(scene::upright(), "upright");
    Finding straps = mendedPart("bridle-strap", "replace-set", std::nullopt);
    straps.at = 1'772'323'200'000'000; // 2026-03-01 00:00 UTC
    scene.record.findings = {straps, mendedPart("butt-leather", "glue", 40)};
    const auto all = settlingOf(scene.record);
    REQUIRE(all.size() == 1);
    CHECK(all[0].row->part == "bridle-strap");
    REQUIRE(all[0].bands.size() == 1);
    CHECK_FALSE(all[0].bands[0].most);
    CHECK(all[0].firstVisit == "2026-04-12"); // 42 days
    CHECK(all[0].settledBy == "2026-09-01");
    CHECK(settlingVisits(all).first == "2026-04-12");
    const auto cells = settlingCells(scene.record);
    CHECK(cells.size() == 88);
    CHECK_FALSE(cells.front().low);

    const std::int64_t day = 86'400'000'000;
    scene.read(40, dimension::blow, 46);
    scene.pass().startedAt = straps.at + 41 * day; // before the first visit
    CHECK(settlingOf(scene.record).front().firstVisit == "2026-04-12");
    scene.pass().startedAt = straps.at + 42 * day; // at it: half a year is next
    CHECK(settlingOf(scene.record).front().firstVisit == "2026-09-01");
    scene.pass().startedAt = straps.at + 184 * day; // settled, and read
    CHECK(settlingOf(scene.record).empty());
    CHECK(dayAfter(20695 * day, 0, 6) == "2027-02-28"); // 2026-08-30 and six months
    CHECK(dayAfter(19723 * day, 0, 1) == "2024-02-01"); // 2024-01-01
    CHECK(dayAfter(19782 * day, 0, 0) == "2024-02-29");
}

TEST_CASE("every row that settles is a part of the survey, names its source and has a band the right way round") {
    for (const SettlingRow& row : settlingRows()) {
        INFO(row.part);
        CHECK(findPart(row.part) != nullptr);
        CHECK_FALSE(row.source.empty());
        CHECK(row.thickness[0] <= row.thickness[1]);
        CHECK(row.share[0] <= row.share[1]);
    }
    for (const ReserveOf of : kReserves)
        CHECK_FALSE(customaryRound(of).source.empty());
}

TEST_CASE("a grand's new heels and cloths lengthen the blow") {
    Scene scene(*makePiano(ActionKind::grand), "grand");
    scene.record.findings = {mendedPart("wippen-heel-cloth", "renew-set", std::nullopt)};
    const auto all = settlingOf(scene.record);
    REQUIRE(all.size() == 1);
    REQUIRE(all[0].bands.size() == 1);
    CHECK(all[0].bands[0].dimension == dimension::blow);
    CHECK(*all[0].bands[0].most == Approx(4.0 * 0.15 * 2.2 * 4.85));
}
