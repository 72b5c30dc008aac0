// Files of readings (situations 59 to 73). The four files and what is true of them: tests/reference/cases.
#include "core/intake/intake.h"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include <fstream>
#include <set>
#include <sstream>

using namespace hammerline;
using namespace hammerline::dimension;

namespace {

const Piano kUpright = *makePiano(ActionKind::upright);
const Piano kGrand = *makePiano(ActionKind::grand);

std::string caseFile(const std::string& name) {
    std::ifstream in(HAMMERLINE_SOURCE_DIR "/tests/reference/cases/" + name, std::ios::binary);
    REQUIRE(in);
    std::ostringstream bytes;
    bytes << in.rdbuf();
    return bytes.str();
}

Intake intake(std::string_view bytes, const Piano& piano = kUpright, const TableOptions& options = {}) {
    const auto read = readReadings(bytes, piano, options);
    if (!read) FAIL(key(read.error().code) << " " << read.error().detail << " line " << read.error().place.line);
    return *read;
}

const Sound* find(const Intake& in, int note, DimensionId id) {
    for (const Sound& each : in.sound)
        if (each.cell == Cell{{note}, id}) return &each;
    return nullptr;
}

const Question* questionAt(const Intake& in, int note, DimensionId id) {
    for (const Question& each : in.questions)
        if (each.cell == Cell{{note}, id}) return &each;
    return nullptr;
}

std::int64_t count(const Intake& in, int note, DimensionId id) {
    const Sound* sound = find(in, note, id);
    INFO("note " << note << " " << key(id));
    REQUIRE(sound != nullptr);
    return sound->reading.count;
}

} // namespace

TEST_CASE("the file of filed hammers is taken whole: inches from the heads, fractions in the cells") {
    const auto in = intake(caseFile("filed_hammers.csv"));
    CHECK(in.sound.size() == 88 * 5);
    CHECK(in.questions.empty());
    CHECK(in.refused.empty());
    CHECK(in.ignoredColumns.empty());
    CHECK(in.dialect.separator == ',');
    // first row: 1,13/32,1 57/64,13/64,0.005,11/16; by hand in mm
    CHECK(count(in, 1, keyDip) == 10'318'750);
    CHECK(count(in, 1, blow) == 48'021'875);
    CHECK(count(in, 1, letOff) == 5'159'375);
    CHECK(count(in, 1, lostMotion) == 127'000);
    CHECK(count(in, 1, checking) == 17'462'500);
    CHECK(count(in, 3, keyDip) == 10'120'313); // 51/128 in = 10.1203125 mm
    CHECK(find(in, 1, blow)->reading.typed == "1 57/64");
    CHECK(find(in, 1, blow)->reading.typedUnit == "in");
    CHECK(find(in, 1, blow)->line == 2);
}

TEST_CASE("the file of the sunk rail is taken whole: semicolons, decimal commas, German heads, heights from the bed") {
    const auto in = intake(caseFile("sunk_rail.csv"));
    CHECK(in.sound.size() == 88 * 5);
    CHECK(in.questions.empty());
    CHECK(in.refused.empty());
    CHECK(in.dialect.encoding == "UTF-8-BOM");
    CHECK(in.dialect.separator == ';');
    CHECK(in.dialect.decimal == ',');
    CHECK(in.references.at(keyHeight) == "bed");
    CHECK(count(in, 1, keyHeight) == 63'650'000);
    CHECK(count(in, 2, keyHeight) == 76'120'000); // a sharp, from the bed too
    CHECK(count(in, 1, keyDip) == 10'120'000);
    CHECK(count(in, 1, blow) == 46'000'000);
    CHECK(count(in, 1, letOff) == 2'940'000);
    CHECK(count(in, 1, lostMotion) == 200'000);
}

TEST_CASE("the samples of the grand are taken whole: tabs, pitch names, units in the cells") {
    const auto in = intake(caseFile("grand_samples.tsv"), kGrand);
    CHECK(in.sound.size() == 22 * 6);
    CHECK(in.questions.empty());
    CHECK(in.refused.empty());
    CHECK(count(in, 1, keyDip) == 9'700'000);
    CHECK(count(in, 1, aftertouch) == 1'295'400); // 0.051 in
    CHECK(count(in, 21, blow) == 41'700'000);     // F2
    CHECK(count(in, 58, dimension::drop) > 4'300'000);
    CHECK(find(in, 1, aftertouch)->reading.typedUnit == "in");
}

TEST_CASE("the slips of the player's file are asked about and not taken, everything else is") {
    const auto piano = *makePiano(ActionKind::upright, 85);
    const auto in = intake(caseFile("player_85_slips.csv"), piano);
    CHECK(in.refused.empty());
    // 85 notes x 4, less the five slips; G5's dip is a date in one row and sound in the next
    CHECK(in.sound.size() == 85 * 4 - 4);
    CHECK(in.questions.size() == 5);

    const auto* date = questionAt(in, 59, keyDip);
    REQUIRE(date != nullptr);
    CHECK(date->doubt == Doubt::date);
    CHECK(date->suggestion == "3/8");
    CHECK(date->place.line == 60);
    CHECK(count(in, 59, keyDip) == 9'900'000);
    CHECK(count(in, 59, letOff) == 2'300'000); // the same in both rows: once

    const auto* zero = questionAt(in, 60, aftertouch); // G#5
    REQUIRE(zero != nullptr);
    CHECK(zero->suggestion == ".040in");
    CHECK_FALSE(zero->mayTake);

    const auto* inch = questionAt(in, 67, blow); // D#6
    REQUIRE(inch != nullptr);
    CHECK(inch->suggestion == "1 13/16 in");
    CHECK_FALSE(inch->mayTake);

    CHECK(count(in, 34, letOff) == 3'175'000); // F#3: 1/8", correct in another unit
    CHECK(count(in, 34, aftertouch) == 1'244'600);

    for (const auto& [note, suggestion] : {std::pair{26, "9.8"}, std::pair{31, "9.9"}}) { // A#2, D#3
        const auto* mark = questionAt(in, note, keyDip);
        REQUIRE(mark != nullptr);
        CHECK(mark->doubt == Doubt::likelySlip);
        CHECK(mark->suggestion == suggestion);
        CHECK_FALSE(mark->mayTake);
        CHECK(find(in, note, keyDip) == nullptr);
    }
}

TEST_CASE("units are mixed within one file") { // situation 62
    const auto in = intake("note;dip;AT;let-off\n1;10,2;.040 in;3,0 mm\n2;0.4in;40 thou;1/8\n");
    CHECK(count(in, 1, aftertouch) == 1'016'000);
    CHECK(count(in, 2, keyDip) == 10'160'000);
    CHECK(count(in, 2, aftertouch) == 1'016'000);
    CHECK(count(in, 2, letOff) == 3'175'000);
}

TEST_CASE("a column without unit takes the one that was chosen") {
    TableOptions options;
    options.units[aftertouch] = Unit::thou;
    const auto in = intake("note,AT\n1,40\n", kUpright, options);
    CHECK(count(in, 1, aftertouch) == 1'016'000);
}

TEST_CASE("columns are named by hand") {
    TableOptions options;
    options.columns["Spalte 3"] = letOff;
    const auto in = intake("Taste;Spalte 2;Spalte 3\n1;x;3,0\n", kUpright, options);
    CHECK(count(in, 1, letOff) == 3'000'000);
    CHECK(in.ignoredColumns == std::vector<std::string>{"Spalte 2"});
}

TEST_CASE("decimal commas keep to their cells") { // situation 65
    TableOptions options;
    options.decimal = ',';
    const auto in = intake("note;dip;blow\n16;9,5;46,0\n17;9,550;46,0\n", kUpright, options);
    CHECK(count(in, 16, keyDip) == 9'500'000);
    CHECK(count(in, 17, keyDip) == 9'550'000); // the comma is the mark: no question
    const auto quoted = intake("note,lost motion\n1,\"0,5\"\n");
    CHECK(count(quoted, 1, lostMotion) == 500'000);
    const auto ambiguous = intake("note;aftertouch\n1;1,250\n");
    REQUIRE(questionAt(ambiguous, 1, aftertouch) != nullptr);
    CHECK(questionAt(ambiguous, 1, aftertouch)->slip == "grouping");
    const auto german = intake("note;aftertouch\n1;0,9\n2;1.250\n");
    REQUIRE(questionAt(german, 2, aftertouch) != nullptr);
}

TEST_CASE("a file whose only heads are unknown is refused") {
    CHECK(readReadings("16;25,5;50,0\n17;25,4;50,1\n", kUpright).error().detail == "note-column");
    CHECK(readReadings("note;remark\n1;x\n", kUpright).error().detail == "dimension-column");
    CHECK(readReadings("", kUpright).error().code == RefusalCode::emptyFile);
    CHECK(readReadings("a,b\r\n\"x,1\r\n", kUpright).error().code == RefusalCode::badTable);
}

TEST_CASE("titles above the heads and empty rows are passed over") {
    const auto in = intake("Upright in the hall,,\n,,\nnote,dip,blow\n1,10.1,46\n,,\n2,-,n/a\n3,10.0,\n");
    CHECK(in.sound.size() == 3);
    CHECK(in.refused.empty());
    CHECK(find(in, 1, keyDip)->line == 4);
}

TEST_CASE("an ambiguous head is asked about, its column not read") { // situation 73
    const auto in = intake("note,strike distance,dip\n1,46,10\n");
    CHECK(in.sound.size() == 1);
    REQUIRE(in.questions.size() == 1);
    CHECK(in.questions[0].doubt == Doubt::unknownColumn);
    CHECK(in.questions[0].suggestion == "blow");
    CHECK(in.ignoredColumns == std::vector<std::string>{"strike distance"});
    TableOptions options;
    options.columns["strike distance"] = blow;
    CHECK(intake("note,strike distance,dip\n1,46,10\n", kUpright, options).sound.size() == 2);
}

TEST_CASE("a dimension that the action has not got is passed over as a column") {
    const auto in = intake("note,dip,drop\n1,10,1.5\n");
    CHECK(in.sound.size() == 1);
    CHECK(in.refused.empty());
    CHECK(in.ignoredColumns == std::vector<std::string>{"drop"});
    auto piano = kUpright;
    piano.lastDamper = 66;
    const auto dampers = intake("note,damper start\n66,21\n67,21\n68,\n", piano);
    CHECK(dampers.sound.size() == 1);
    REQUIRE(dampers.refused.size() == 1);
    CHECK(dampers.refused[0].code == RefusalCode::notFitted);
}

TEST_CASE("cells that cannot be read are refused with their place, the others taken") {
    const auto in = intake("note,dip,blow,let off\n1,10..,46,52 g\n2,30,46,1/0\n99,10,46,3\n,10,46,3\n");
    CHECK(in.sound.size() == 2);
    REQUIRE(in.refused.size() == 6);
    CHECK(in.refused[0].line == 2);
    CHECK(in.refused[0].column == 2);
    CHECK(in.refused[0].kind == Doubt::unreadable);
    CHECK(in.refused[1].kind == Doubt::unitMismatch);
    CHECK(in.refused[2].kind == Doubt::outOfRange);
    CHECK(in.refused[3].code == RefusalCode::zeroDenominator);
    CHECK(in.refused[4].kind == Doubt::unknownNote);
    CHECK(in.refused[4].text == "99");
    CHECK(in.refused[5].kind == Doubt::unknownNote);
}

TEST_CASE("a cell without a column is refused") {
    const auto in = intake("note,dip\n1,10\n2,10,46\n");
    CHECK(in.sound.size() == 2);
    REQUIRE(in.refused.size() == 1);
    CHECK(in.refused[0].kind == Doubt::unknownColumn);
    CHECK(in.refused[0].column == 3);
}

TEST_CASE("a note twice: the same reading once, differing ones asked about") { // situation 67
    const auto in = intake("note,dip,blow\n40,9.8,46\n40,10.2,46.0\nC4,9.8,46\n");
    CHECK(in.sound.size() == 1); // the blow
    CHECK(find(in, 40, keyDip) == nullptr);
    REQUIRE(in.questions.size() == 2);
    CHECK(in.questions[0].doubt == Doubt::duplicate);
    CHECK(in.questions[0].place.line == 2);
    CHECK(in.questions[0].asTyped->count == 9'800'000);
    CHECK(in.questions[0].asTyped->trial == 1);
    CHECK(in.questions[1].place.line == 3);
    CHECK(in.questions[1].asTyped->trial == 2); // both taken on purpose are repeats
    // enharmonic names are one key (csv_cases/32_duplicate_note.csv)
    CHECK(intake("note,dip\nBb0,10\nA#0,10\n").sound.size() == 1);
    CHECK(intake("note,dip\nBb0,10\nA#0,9.5\n").questions.size() == 2);
}

TEST_CASE("numbered heads are repeats") {
    const auto in = intake("note,dip 1,dip 2\n1,10.0,10.1\n");
    REQUIRE(in.sound.size() == 2);
    CHECK(in.sound[0].reading.trial == 1);
    CHECK(in.sound[1].reading.trial == 2);
    CHECK(in.questions.empty());
    CHECK(intake("note,dip,dip\n1,10.0,10.1\n").questions.size() == 2); // one head twice: which is it?
}

TEST_CASE("number and name of a note must agree where both stand") { // situation 68
    const auto in = intake("number,name,dip\n40,C4,10\n41,C4,10\n");
    CHECK(in.sound.size() == 1);
    REQUIRE(in.refused.size() == 1);
    CHECK(in.refused[0].kind == Doubt::unknownNote);
}

TEST_CASE("a column that writes H for B natural writes B for B flat") {
    const auto in = intake("Ton;Tiefgang\nA0;10,1\nB0;9,4\nH0;10,2\nb';9,5\n");
    CHECK(count(in, 2, keyDip) == 9'400'000);
    CHECK(count(in, 3, keyDip) == 10'200'000);
    CHECK(count(in, 50, keyDip) == 9'500'000); // b flat above middle C
    CHECK(count(intake("note;dip\nB0;10,2\n"), 3, keyDip) == 10'200'000);
}

TEST_CASE("readings of a row are compared with one another") {
    const auto in = intake("note,checking,blow,let-off\n1,15,46,3\n2,41,40,3\n");
    REQUIRE(in.questions.size() == 1);
    CHECK(in.questions[0].slip == "checking-against-blow");
    const auto weights = intake("note,down weight,up weight\n1,50,25\n2,40,40\n");
    CHECK(weights.sound.size() == 3);
    REQUIRE(weights.refused.size() == 1);
    CHECK(weights.refused[0].code == RefusalCode::upNotBelowDown);
}

TEST_CASE("shares of the blow are read where the row has a blow") {
    const auto in = intake("note,damper start (%),blow\n1,50,46\n2,50,\n");
    CHECK(count(in, 1, damperStart) == 23'000'000);
    REQUIRE(in.refused.size() == 1);
    CHECK(in.refused[0].kind == Doubt::unitMismatch);
}

TEST_CASE("a height column at sharps") {
    const auto relative = intake("note,height\n1,0.1\n2,12.3\n3,-0.2\n");
    CHECK(count(relative, 2, sharpHeight) == 12'300'000);
    CHECK(relative.references.count(keyHeight) == 0);
    const auto bed = intake("note,height\n1,63.5\n2,76\n3,63.5\n5,79.5\n4,63.5\n6,63.5\n");
    CHECK(count(bed, 2, keyHeight) == 76'000'000);
    REQUIRE(bed.questions.size() == 1); // 16 mm over its neighbours
    CHECK(bed.questions[0].slip == "sharp-against-naturals");
    const auto mixed = intake("note,height\n1,63.5\n3,63.5\n4,0.2\n");
    REQUIRE(mixed.questions.size() == 1);
    CHECK(mixed.questions[0].slip == "mixed-datum");
    CHECK(mixed.questions[0].cell->note.value == 4);
}

TEST_CASE("numbers that are none are refused") { // csv_cases/28_nan_inf.csv
    const auto in = intake("note,dip\nA0,nan\nB0,inf\nC1,1e1\nD1,0x10\nE1,1_0\nF1,+10\nG1,.5\nA1,9.\n");
    CHECK(count(in, 4, keyDip) == 10'000'000); // 1e1
    CHECK(count(in, 9, keyDip) == 10'000'000);
    CHECK(count(in, 13, keyDip) == 9'000'000);
    CHECK(in.refused.size() == 4);
    REQUIRE(in.questions.size() == 1); // .5 of an inch would be 12.7
}
