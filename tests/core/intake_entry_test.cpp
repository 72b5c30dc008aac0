// One typed cell: sound, asked about or refused (computation 2, bench-practice 2.3, situations 59 to 64).
#include "core/intake/intake.h"

#include <catch2/catch.hpp>
#include <rapidcheck.h>

using namespace hammerline;
using namespace hammerline::dimension;

namespace {

const Piano kUpright = *makePiano(ActionKind::upright);
const Piano kGrand = *makePiano(ActionKind::grand);

Outcome<Entry> entry(std::string_view typed, DimensionId id, int note = 40, const Pass* pass = nullptr,
                     const Piano& piano = kUpright) {
    EntryContext around;
    around.piano = &piano;
    around.pass = pass;
    return readEntry(typed, Cell{{note}, id}, around);
}

Reading sound(std::string_view typed, DimensionId id, int note = 40, const Pass* pass = nullptr,
              const Piano& piano = kUpright) {
    INFO(typed << " in " << key(id));
    const auto read = entry(typed, id, note, pass, piano);
    REQUIRE(read.has_value());
    REQUIRE(read->sound.has_value());
    REQUIRE_FALSE(read->question.has_value());
    return *read->sound;
}

Question asked(std::string_view typed, DimensionId id, int note = 40, const Pass* pass = nullptr,
               const Piano& piano = kUpright) {
    INFO(typed << " in " << key(id));
    const auto read = entry(typed, id, note, pass, piano);
    REQUIRE(read.has_value());
    REQUIRE(read->question.has_value());
    REQUIRE_FALSE(read->sound.has_value());
    CHECK(read->question->text == typed);
    CHECK(read->question->mayTake == read->question->asTyped.has_value());
    return *read->question;
}

RefusalCode refused(std::string_view typed, DimensionId id, int note = 40, const Pass* pass = nullptr,
                    const Piano& piano = kUpright) {
    INFO(typed << " in " << key(id));
    const auto read = entry(typed, id, note, pass, piano);
    REQUIRE_FALSE(read.has_value());
    return read.error().code;
}

Pass passWith(std::initializer_list<std::pair<DimensionId, std::int64_t>> values, int note = 40) {
    Pass pass;
    for (const auto& [id, count] : values) {
        Reading reading;
        reading.count = count;
        pass.cells[Cell{{note}, id}].trials.push_back(reading);
    }
    return pass;
}

} // namespace

TEST_CASE("what the bench types is taken in its dimension") { // bench-practice S13
    CHECK(sound("46", blow).count == 46'000'000);
    CHECK(sound("46,5", blow).count == 46'500'000);
    CHECK(sound("1 13/16", blow).count == 46'037'500);
    CHECK(sound(".040in", aftertouch).count == 1'016'000);
    CHECK(sound("gap .6", keyHeight).count == -600'000);
    CHECK(sound("off", lostMotion).word == word::offRail);
    CHECK(sound("<1.2", letOff).relation == Relation::less);
    CHECK(sound("0.8..1.2", aftertouch).upper == 1'200'000);
    CHECK(sound("3/8", keyDip).count == 9'525'000);
    CHECK(sound("ok", strap).word == word::ok);
}

TEST_CASE("a reading keeps its text and the unit that held") {
    CHECK(sound(" 1 13/16 ", blow).typed == "1 13/16");
    CHECK(sound("1 13/16", blow).typedUnit == "in");
    CHECK(sound("46", blow).typedUnit == "mm");
    CHECK(sound("40 thou", aftertouch).typedUnit == "thou");
    CHECK(sound("off", lostMotion).typedUnit.empty());
    CHECK_FALSE(sound("46", blow).taken);
    EntryContext inches;
    inches.piano = &kUpright;
    inches.units[aftertouch] = Unit::thou;
    CHECK(readEntry("40", Cell{{40}, aftertouch}, inches)->sound->count == 1'016'000);
    inches.unit = Unit::inch;
    CHECK(readEntry(".040", Cell{{40}, aftertouch}, inches)->sound->count == 1'016'000);
}

TEST_CASE("words belong to their dimensions") {
    CHECK(sound("off rail", lostMotion).word == word::offRail);
    CHECK(sound("Blocks", letOff).word == word::blocks);
    CHECK(sound("no let-off", letOff).word == word::noLetOff);
    CHECK(sound("does not check", checking).word == word::doesNotCheck);
    CHECK(sound("no check", checking).word == word::doesNotCheck);
    CHECK(sound("late", damperStart).word == word::late);
    CHECK(refused("blocks", checking) == RefusalCode::unknownWord);
    CHECK(refused("tuba", blow) == RefusalCode::unknownWord);
    CHECK(refused("nan", blow) == RefusalCode::unknownWord);
}

TEST_CASE("inches with millimetres behind them are asked about, and only the inches can be taken") {
    const auto question = asked("1 13/16 mm", blow);
    CHECK(question.doubt == Doubt::likelySlip);
    CHECK(question.slip == "inch-for-mm");
    CHECK(question.suggestion == "1 13/16 in");
    CHECK_FALSE(question.mayTake);
    // 1.5 mm is a possible let-off: it may be taken too
    CHECK(asked("1 1/2 mm", letOff).mayTake);
}

TEST_CASE("the slips of the trade are named with what was meant") {
    struct Row {
        const char* typed;
        DimensionId id;
        const char* slip;
        const char* suggestion;
        bool mayTake;
    };
    for (const auto& [typed, id, slip, suggestion, mayTake] : {
             Row{"1.75", blow, "inch-for-mm", "1.75 in", false}, // bench-practice 2.3
             Row{".40in", aftertouch, "lost-zero", ".040in", false},
             Row{"0.30\"", aftertouch, "lost-zero", "0.030\"", true}, // situation 61: 7.62 mm is in the range
             Row{"0.40\"", aftertouch, "lost-zero", "0.040\"", false},
             Row{"98", keyDip, "lost-mark", "9.8", false},
             Row{"99", keyDip, "lost-mark", "9.9", false},
             Row{"465", blow, "lost-mark", "46.5", false},
             Row{"1020", keyDip, "lost-mark", "10.20", false},
             Row{"1/6", letOff, "lost-digit", "1/16", true}, // situation 61: 4.23 mm, no ruler has sixths
             Row{"4.6", blow, "moved-mark", "46", false},
             Row{"0.4", keyDip, "inch-for-mm", "0.4 in", true},
             Row{"9 1/2", keyDip, "mm-for-inch", "9.5 mm", false},
             Row{"46 in", blow, "mm-for-inch", "46 mm", false},
             Row{"40", aftertouch, "thou-for-mm", "40 thou", false},
             Row{"-46", blow, "stray-minus", "46", false},
             Row{"-00007", checking, "stray-minus", "00007", false}, // five digits, and no serial day of a spreadsheet
             Row{"-1", lostMotion, "off-rail", "off rail", true},    // bench-practice 2.3
             Row{"0.48", halfBlow, "part-for-percent", "48", true},
             Row{"520", downWeight, "lost-mark", "52.0", false},
             Row{"gap -0.6", keyHeight, "negative-gap", "gap 0.6", true},
         }) {
        const auto question = asked(typed, id);
        CHECK(question.doubt == Doubt::likelySlip);
        CHECK(question.slip == slip);
        CHECK(question.suggestion == suggestion);
        CHECK(question.mayTake == mayTake);
    }
}

TEST_CASE("an inch count that lost its fraction is known by its round millimetres") {
    const auto question = asked("25.4", blow); // "1 inch": bench-practice 2.3, situation 63
    CHECK(question.slip == "lost-fraction");
    CHECK(question.suggestion.empty());
    CHECK(question.mayTake);
}

TEST_CASE("a let-off of 15 asks, and may be taken") { // situation 38
    const auto question = asked("15", letOff);
    CHECK(question.mayTake);
    CHECK(question.asTyped->count == 15'000'000);
    CHECK(question.asTyped->taken);
}

TEST_CASE("a doubtful value without a slip is asked about for its range") {
    const auto question = asked("6.9", keyDip);
    CHECK(question.doubt == Doubt::outOfRange);
    CHECK(question.suggestion.empty());
    CHECK(question.mayTake);
    CHECK(asked("6 cm", blow).doubt == Doubt::outOfRange); // situation 59: never silently
}

TEST_CASE("what nothing explains is refused with its range") {
    CHECK(refused("30", keyDip) == RefusalCode::outOfRange);
    const auto read = entry("30", keyDip);
    CHECK(read.error().detail == "0..20 mm");
    CHECK(read.error().offending == "30");
    CHECK(refused("700", blow) == RefusalCode::outOfRange);
    CHECK(refused("900 g", downWeight) == RefusalCode::outOfRange);
}

TEST_CASE("refusals keep their reason") {
    CHECK(refused("", blow) == RefusalCode::unreadable);
    CHECK(refused("4x", blow) == RefusalCode::unreadable);
    CHECK(refused("46.5,2", blow) == RefusalCode::twoDecimalMarks);
    CHECK(refused("1/0", blow) == RefusalCode::zeroDenominator);
    CHECK(refused("52 g", blow) == RefusalCode::wrongUnit);
    CHECK(refused("46 mm", downWeight) == RefusalCode::wrongUnit);
    CHECK(refused("46", blow, 89) == RefusalCode::unknownNote);
    CHECK(refused("1.5", dimension::drop) == RefusalCode::notFitted); // an upright has none
    CHECK(refused("0.2", lostMotion, 40, nullptr, kGrand) == RefusalCode::notFitted);
    CHECK(refused("ok", strap, 40, nullptr, kGrand) == RefusalCode::notFitted);
    // found by fuzzing: slips were explained where there is nothing to read
    CHECK(refused("46", playerClearance) == RefusalCode::notFitted);
    CHECK(refused("Jan-16", playerClearance) == RefusalCode::notFitted);
    CHECK(asked("53", keyHeight, 41).suggestion.empty()); // a low sharp from the bed, no number against the line
}

TEST_CASE("key heights of 40 to 100 are measured from the bed, smaller ones against the line") {
    const auto natural = entry("63.5", keyHeight);
    REQUIRE(natural.has_value());
    CHECK(natural->sound->count == 63'500'000);
    CHECK(natural->fromBed);
    const auto sharp = entry("76.1", keyHeight, 41);
    REQUIRE(sharp.has_value());
    CHECK(sharp->fromBed);
    CHECK_FALSE(entry("-0.3", keyHeight)->fromBed);
    CHECK(asked("52", keyHeight).doubt == Doubt::outOfRange);
    CHECK(asked("76", keyHeight).mayTake);                          // a natural as high as a sharp
    CHECK(refused("0.3", keyHeight, 41) == RefusalCode::notFitted); // a sharp against the naturals' line
    CHECK(sound("12.3", sharpHeight, 41).count == 12'300'000);
    CHECK(refused("12.3", sharpHeight, 40) == RefusalCode::notFitted);
}

TEST_CASE("one pass has one datum of key height") { // computation 15
    Pass line = passWith({{keyHeight, -300'000}}, 1);
    CHECK(asked("63.5", keyHeight, 40, &line).slip == "mixed-datum");
    CHECK_FALSE(asked("63.5", keyHeight, 40, &line).mayTake);
    CHECK(sound("-0.2", keyHeight, 40, &line).count == -200'000);
    CHECK(sound("63.5", keyHeight, 1, &line).count == 63'500'000); // the only height is being typed anew
    Pass bed = passWith({{keyHeight, 63'500'000}}, 1);
    bed.references[keyHeight] = "bed";
    CHECK(asked("-0.2", keyHeight, 40, &bed).slip == "mixed-datum");
    CHECK(sound("63.1", keyHeight, 40, &bed).count == 63'100'000);
    const Pass empty;
    CHECK(entry("63.5", keyHeight, 40, &empty)->fromBed);
}

TEST_CASE("sharps typed with the naturals' numbers are not flagged by them") { // bench-practice S13
    CHECK(sound("9.6", keyDip, 41).count == 9'600'000);
    CHECK(sound("10.2", keyDip, 41).count == 10'200'000);
}

TEST_CASE("readings of one note may not contradict each other") {
    const Pass pass = passWith({{blow, 46'000'000}, {letOff, 3'000'000}});
    CHECK(sound("15.5", checking, 40, &pass).count == 15'500'000);
    const Pass shortBlow = passWith({{blow, 24'000'000}, {letOff, 8'000'000}});
    CHECK(asked("25", checking, 40, &shortBlow).slip == "checking-against-blow");
    CHECK(asked("7.5", checking, 40, &shortBlow).slip == "checking-against-let-off");
    CHECK(asked("24", damperStart, 40, &shortBlow).slip == "damper-start-against-blow");
    const Pass far = passWith({{checking, 39'000'000}});
    CHECK(asked("38.5", blow, 40, &far).slip == "checking-against-blow");
    Pass fromString = passWith({{letOff, 2'000'000}});
    fromString.references[dimension::drop] = "string";
    CHECK(asked("1.5", dimension::drop, 40, &fromString, kGrand).slip == "drop-against-let-off"); // situation 47
    CHECK(sound("4", dimension::drop, 40, &fromString, kGrand).count == 4'000'000);
}

TEST_CASE("an up weight at or above the down weight is refused") { // computation 12
    const Pass down = passWith({{downWeight, 50'000}});
    CHECK(refused("50", upWeight, 40, &down) == RefusalCode::upNotBelowDown);
    CHECK(refused("2 oz", upWeight, 40, &down) == RefusalCode::upNotBelowDown);
    CHECK(sound("25", upWeight, 40, &down).count == 25'000);
    const Pass up = passWith({{upWeight, 40'000}});
    CHECK(refused("38", downWeight, 40, &up) == RefusalCode::upNotBelowDown);
}

TEST_CASE("damper start and half-blow go by mm or by share of a known blow") { // situation 56
    const Pass pass = passWith({{blow, 46'000'000}});
    CHECK(sound("50 %", damperStart, 40, &pass).count == 23'000'000);
    CHECK(sound("50 %", damperStart, 40, &pass).typedUnit == "%");
    CHECK(sound("15.3", damperStart, 40, &pass).count == 15'300'000);
    CHECK(refused("50 %", damperStart) == RefusalCode::wrongUnit);
    CHECK(entry("50 %", damperStart).error().detail == "blow");
    CHECK(sound("23 mm", halfBlow, 40, &pass).count == 50'000);
    CHECK(refused("23 mm", halfBlow) == RefusalCode::wrongUnit);
    CHECK(sound("48", halfBlow).count == 48'000);
    Pass byShare = pass;
    byShare.references[damperStart] = "percent";
    CHECK(sound("50", damperStart, 40, &byShare).count == 23'000'000);
}

TEST_CASE("dates made from fractions are never numbers") { // situation 64
    for (const auto* text :
         {"8-Mar", "08. Mrz", "8 mars", "2026-03-08", "03/08/2026", "46089", "2026-03-08 00:00:00"}) {
        const auto question = asked(text, keyDip);
        CHECK(question.doubt == Doubt::date);
        CHECK(question.slip == "date-from-fraction");
        CHECK_FALSE(question.mayTake);
    }
    CHECK(asked("8-Mar", keyDip).suggestion == "3/8"); // 9.525 mm
    CHECK(asked("46089", keyDip).suggestion == "3/8"); // 8 March 2026 as a serial day
    CHECK(asked("Jan-16", letOff).suggestion == "1/16");
    CHECK(asked("18264", blow).doubt == Doubt::date);   // 1 January 1950
    CHECK(asked("8-Mar", blow).suggestion.empty());     // no blow is 3/8 in
    CHECK(asked("02. Aug", letOff).suggestion.empty()); // 2.8 mm or 2/8 in: the person knows
}

TEST_CASE("a comma before three digits is asked about") { // situation 65
    const auto question = asked("1,250", aftertouch);
    CHECK(question.slip == "grouping");
    CHECK(question.suggestion == "1.250");
    CHECK(question.mayTake);
    CHECK(question.asTyped->count == 1'250'000);
    CHECK(asked("1,250", keyDip).mayTake);
    CHECK(sound("1.250", aftertouch).count == 1'250'000);
    CHECK(sound("0,250", lostMotion).count == 250'000);
}

TEST_CASE("every suggestion is a sound reading of its cell") {
    CHECK(rc::check([] {
        const auto id = *rc::gen::elementOf(std::vector<DimensionId>{keyDip, lostMotion, blow, letOff, aftertouch,
                                                                     checking, damperStart, downWeight, halfBlow});
        const auto value = *rc::gen::inRange(-2000, 20'000);
        const auto decimals = *rc::gen::inRange(0, 4);
        const auto unit = *rc::gen::elementOf(std::vector<std::string>{"", " mm", " in", " thou", " cm"});
        std::string typed = formatCount(std::int64_t{value} * 100'000, Shown{Unit::mm, decimals});
        if (row(id).kind == Kind::length) typed += unit;
        const auto read = entry(typed, id);
        if (!read || !read->question || read->question->suggestion.empty()) return;
        const auto again = entry(read->question->suggestion, id);
        RC_ASSERT(again.has_value());
        RC_ASSERT(again->sound.has_value());
    }));
}

TEST_CASE("a sound reading lies in the doubt band, a taken one in the range, whatever is typed") {
    CHECK(rc::check([](const std::string& noise) {
        const auto numeral =
            *rc::gen::container<std::string>(rc::gen::elementOf(std::string{"0123456789.,/- <>\"%mincog"}));
        for (const std::string& typed : {noise, numeral})
            for (const Dimension& each : dimensions()) {
                const auto read = entry(typed, each.id, 41);
                if (!read) continue;
                RC_ASSERT(read->sound.has_value() != read->question.has_value());
                if (read->sound && !read->sound->word && !read->fromBed) {
                    RC_ASSERT(read->sound->count >= each.askLow);
                    RC_ASSERT(read->sound->count <= each.askHigh);
                }
                if (read->question && read->question->asTyped && !read->fromBed) {
                    RC_ASSERT(read->question->asTyped->count >= each.refuseLow);
                    RC_ASSERT(read->question->asTyped->count <= each.refuseHigh);
                }
            }
    }));
}
