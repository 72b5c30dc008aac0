// Situations from practice: amounts that follow from one formula, as a table. Public technicians' lists, digests and
// articles, each named by its kind and month as collected; [G] marks amounts computed there from geometry. Elsewhere:
// 1, 22, 29 (key_lever), 23, 24 (direction_table), 33, 38, 41 (judge), C1, C5, C8 (survey_job), entry and import 59 to
// 68, 73 (quantity, intake_*), S1 to S12 (plan_scenario and end_to_end).
#include "core/judge/escapement.h"
#include "core/judge/touch_weight.h"
#include "tests/core/reference.h"
#include "tests/core/scene.h"

using namespace hammerline;
using namespace hammerline::dimension;
using namespace hammerline::scene;

namespace {

Zone zone(double low, double nominal, double high) {
    return {fromMm(low).nm, fromMm(nominal).nm, fromMm(high).nm};
}

Verdict judged(DimensionId dimension, double value, const Zone& zone, double u = 0.01) {
    Reading reading;
    reading.count = fromMm(value).nm;
    Measured measured;
    measured.trials = {reading};
    return judge({{40}, dimension}, measured, zone, u * kNmPerMm, Rule::plain).verdict;
}

} // namespace

TEST_CASE("situations 7, 17, 31, 35, 36, 46: aftertouch and blow by the escapement relation") {
    struct Row {
        const char* situation;
        double dip, lost, blow, letOff, ratio, aftertouch, margin;
    };
    // [G] all; R 5 unless stated
    constexpr std::array rows = {
        Row{"7, as found: list post, June 2007", 9.5, 1.5, 47.6, 3.2, 5, -0.9, 0.05},
        Row{"7, lost motion taken up", 9.5, 0.3, 47.6, 3.2, 5, 0.3, 0.05},
        Row{"7, keys raised by 0.5", 10.0, 0.3, 47.6, 3.2, 5, 0.8, 0.05},
        Row{"17, R 4.72: list post, February 2009", 10, 0, 44, 2, 4.72, 1.1, 0.005},
        Row{"17, R 5.28", 10, 0, 49, 2, 5.28, 1.1, 0.005},
        Row{"31, a blow of one inch: digest, February 2011", 9.5, 0.5, 25.4, 3.2, 5, 4.6, 0.05},
        Row{"35, start", 10, 0.5, 46, 3, 5, 0.90, 0.005},
        Row{"35, filed by 2", 10, 0.5, 48, 5, 5, 0.90, 0.005},
        Row{"35, let-off set again", 10, 0.5, 48, 3, 5, 0.50, 0.005},
        Row{"35, blow back and lost motion taken up", 10, 0.5, 46, 3, 5, 0.90, 0.005},
    };
    for (const Row& row : rows) {
        INFO(row.situation);
        CHECK(aftertouchOf(row.dip, row.lost, row.blow, row.letOff, row.ratio) ==
              Approx(row.aftertouch).margin(row.margin));
        CHECK(blowOf(row.dip, row.lost, row.letOff, row.aftertouch, row.ratio) ==
              Approx(row.blow).margin(row.margin * row.ratio));
    }
    // 36 (blog, February 2009): what each lever adds; 46 (digest, August 2002): too little, shorten the blow
    const double start = aftertouchOf(9.5, 0.5, 46, 2, 5);
    CHECK(aftertouchOf(9.5, 0.5, 46, 3, 5) - start == Approx(0.2));
    CHECK(aftertouchOf(9.5, 0.5, 44, 2, 5) - start == Approx(0.4));
    CHECK(aftertouchOf(9.75, 0.5, 46, 2, 5) - start == Approx(0.25));
    CHECK(aftertouchOf(9.5, 0.0, 46, 2, 5) - start == Approx(0.5));
    // 35: the capstan comes up by 2/(5 x 1.916)
    CHECK(2 / (5 * keyLever(arms(243.29, 220, 200, 127)).lostPerCapstan) == Approx(0.21).margin(0.005));
}

TEST_CASE("situations T2, T3, T4: mean weight and friction from down and up weight") {
    struct Row {
        const char* situation;
        double down, up, mean, friction;
    };
    constexpr std::array rows = {
        Row{"T2, pass 1: list post, December 2003", 52, 28, 40, 12},
        Row{"T2, pass 2", 61, 19, 40, 21},
        Row{"T3: college list, one gram of friction more", 53, 27, 40, 13},
        Row{"T4: list post, March 2000, heavy", 58, 30, 44, 14},
        Row{"T4, right", 50, 24, 37, 13},
    };
    for (const Row& row : rows) {
        INFO(row.situation);
        const auto weight = touchWeight(row.down, row.up);
        REQUIRE(weight);
        CHECK(weight->mean == Approx(row.mean));
        CHECK(weight->friction == Approx(row.friction));
    }
    // thread_lever.json: algebra of a lever with friction, from memory
    const auto published = reference::json("thread_lever.json")["two_weight_mean"]["example"];
    const auto example = touchWeight(published["down_g"], published["up_g"]);
    CHECK(example->mean == Approx(published["balance_g"].get<double>()));
    CHECK(example->friction == Approx(published["friction_g"].get<double>()));
    const TouchChange change = touchChange(*touchWeight(52, 28), *touchWeight(61, 19), 1.5);
    CHECK(change.frictionChanged); // leads and geometry do not change in two weeks
    CHECK_FALSE(change.weightChanged);
    CHECK(change.friction == Approx(9));
}

TEST_CASE("situations 3, 14, 25, 49, 52: single readings against the zone a writer gives") {
    struct Row {
        const char* situation;
        DimensionId dimension;
        double value;
        Zone limits;
        Verdict verdict;
    };
    const std::array rows = {
        Row{"3, a sharp at 12.0 with 11.0 of dip leaves 1.0", sharpProud, 12.0 - 11.0, zone(1.5, 1.95, 2.5),
            Verdict::low},
        Row{"14, list post, August 1999: .030 to .060 in", aftertouch, 1.60, zone(0.762, 1.27, 1.524), Verdict::high},
        Row{"14", aftertouch, 0.70, zone(0.762, 1.27, 1.524), Verdict::low},
        Row{"14", aftertouch, 1.00, zone(0.762, 1.27, 1.524), Verdict::within},
        Row{"25, digest, January 2003: 1/16 in allowed", lostMotion, 1.6, zone(0, 0.3, 1.6), Verdict::within},
        Row{"25, by a zone of 0.5", lostMotion, 1.6, zone(0, 0.15, 0.5), Verdict::high},
        Row{"24, zero is asking for trouble", lostMotion, 0.0, zone(0.1, 0.3, 0.5), Verdict::low},
        Row{"24, capstan high", lostMotion, -0.4, zone(0, 0.15, 0.4), Verdict::low},
        Row{"49, list thread, August 2000", letOff, 0.8, zone(1.4, 1.6, 2.2), Verdict::low},
        Row{"49", drop, 0.3, zone(0.8, 1.5, 2.2), Verdict::low},
        Row{"52, list posts 2003: close, risk of rub", checking, 11, zone(14, 15, 16), Verdict::low},
        Row{"52, low and late", checking, 20, zone(14, 15, 16), Verdict::high},
        Row{"52 with 31, a vertical's 3/4 in", checking, 19, zone(13, 16, 20), Verdict::within},
    };
    for (const Row& row : rows) {
        INFO(row.situation);
        CHECK(judged(row.dimension, row.value, row.limits) == row.verdict);
    }
    const auto ofInch = parseQuantity("3/8 in", Unit::mm); // 3: 3/8 in is not 10.5 mm
    REQUIRE(ofInch);
    CHECK(ofInch->count == fromMm(9.525).nm);
}

TEST_CASE("situations 22, 31: a blow of three inches or of one is asked about before anything is computed") {
    CHECK(fromMm(76.2).nm > row(blow).askHigh); // pads missing; sanity 60
    CHECK(fromMm(25.4).nm < row(blow).askLow);
    CHECK(fromMm(47.6).nm < row(blow).askHigh);
    CHECK(fromMm(44.45).nm > row(blow).askLow);
}

TEST_CASE("situation 42: an amount of turns in a hand's words, never a false precision (list post, May 1998)") {
    CHECK(handAmount(0.137, 0.25) == "about-1/8");
    CHECK(handAmount(-0.24, 0.25) == "about-1/4");
    for (int i = 1; i < 2000; ++i) {
        const std::string words(handAmount(i / 1000.0, 0.25));
        CHECK(words.find('.') == std::string::npos);
        CHECK_FALSE(words.empty());
    }
}

TEST_CASE("situation 47: a drop read from the string is the drop below let-off once its let-off is taken off") {
    // three sources: "2 LO, 4 drop" from the string is a fall of 2; below let-off it would be 6 in all
    for (const auto& [reference, verdict] :
         {std::pair{"string", Verdict::within}, std::pair{"below-let-off", Verdict::high}}) {
        Scene scene(*makePiano(ActionKind::grand), "grand");
        scene.pass().references[drop] = reference;
        scene.read(40, letOff, 2.0);
        scene.read(40, drop, 4.0);
        INFO(reference);
        CHECK(scene.verdict(40, drop) == verdict);
    }
}
