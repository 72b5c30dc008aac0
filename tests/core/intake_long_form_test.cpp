// The long form: our own export read back.
#include "core/intake/long_form.h"

#include <catch2/catch.hpp>

using namespace hammerline;
using namespace hammerline::dimension;

namespace {

Piano named(std::string name) {
    Piano piano = *makePiano(ActionKind::upright);
    piano.name = std::move(name);
    return piano;
}

const std::string kHead = "piano;pass;note;dimension;trial;text;unit;state;at\r\n";

Intake intake(const std::string& rows, const Piano& piano = named("Hall")) {
    const auto read = readReadings(kHead + rows, piano);
    REQUIRE(read.has_value());
    CHECK(read->longForm);
    return *read;
}

} // namespace

TEST_CASE("a row of the long form is a reading with everything that was kept") {
    const auto in = intake("Hall;2;40;blow;1;1 13/16;in;;2026-11-25T04:27:00.123456Z\r\n"
                           "Hall;2;40;lost-motion;2;off rail;;;\r\n"
                           "Hall;2;40;let-off;1;15;mm;taken;\r\n"
                           "Hall;2;1;aftertouch;1;\"<1,2\";mm;;\r\n"
                           "Hall;2;1;key-height;1;'-0.3 mm;mm;;\r\n"
                           "Hall;2;3;key-height;1;63.5;mm;;\r\n"
                           "Hall;2;88;damper-start;1;;;not-fitted;\r\n");
    CHECK(in.questions.empty());
    CHECK(in.refused.empty());
    REQUIRE(in.sound.size() == 6);
    const Sound& first = in.sound[0];
    CHECK(first.pass == "2");
    CHECK(first.line == 2);
    CHECK(first.cell == Cell{{40}, blow});
    CHECK(first.reading.count == 46'037'500);
    CHECK(first.reading.typed == "1 13/16");
    CHECK(first.reading.typedUnit == "in");
    // 2026-11-25T04:27:00Z is day 20782 of the epoch: 20782 x 86400 + 16020 s
    CHECK(first.reading.at == 1'795'580'820'123'456);
    CHECK(in.sound[1].reading.word == word::offRail);
    CHECK(in.sound[1].reading.trial == 2);
    CHECK(in.sound[2].reading.taken);
    CHECK_FALSE(first.reading.taken);
    CHECK(in.sound[3].reading.relation == Relation::less);
    CHECK(in.sound[4].reading.count == -300'000);
    CHECK(in.sound[4].reading.typed == "-0.3 mm");
    CHECK(in.references.at(keyHeight) == "bed");
    REQUIRE(in.notFitted.size() == 1);
    CHECK(in.notFitted[0].cell == Cell{{88}, damperStart});
}

TEST_CASE("a pass without readings is said in its place") {
    const std::string rows = "Hall;1;1;blow;1;46;mm;;\r\nHall;2;;;;'=rails;;pass;\r\nHall;3;1;blow;1;45;mm;;\r\n"
                             "Hall;;;;;no name;;pass;\r\n";
    const auto in = intake(rows);
    CHECK(in.sound.size() == 2);
    REQUIRE(in.passes.size() == 1);
    CHECK(in.passes.front().name == "2");
    CHECK(in.passes.front().label == "=rails");
    CHECK(in.passes.front().line == 3);
    REQUIRE(in.refused.size() == 1);
    CHECK(in.refused.front().code == RefusalCode::noSuchPass);
    // in pieces: between the readings
    const Piano piano = named("Hall");
    std::string order;
    LongFormReader reader(piano, [&](Sound&& sound) { order += sound.pass; });
    reader.onPass([&](SaidPass&& pass) { order += '(' + pass.name + ')'; });
    REQUIRE(reader.add(kHead + rows).has_value());
    const auto rest = reader.finish();
    REQUIRE(rest.has_value());
    CHECK(rest->passes.empty());
    CHECK(order == "1(2)3");
}

TEST_CASE("what was settled when it was typed is not asked again") {
    const auto in = intake("Hall;1;1;aftertouch;1;1,250;mm;;\r\n" // taken from a file with decimal commas
                           "Hall;1;1;blow;1;24;mm;taken;\r\n"
                           "Hall;1;1;checking;1;25;mm;;\r\n"        // typed before the blow
                           "Hall;1;1;damper-start;1;50 %;%;;\r\n"); // of that blow
    CHECK(in.questions.empty());
    REQUIRE(in.sound.size() == 4);
    CHECK(in.sound[3].reading.count == 12'000'000);
}

TEST_CASE("a doubtful row that nobody took is asked about") {
    const auto in = intake("Hall;1;1;let-off;1;15;mm;;\r\n");
    CHECK(in.sound.empty());
    REQUIRE(in.questions.size() == 1);
    CHECK(in.questions[0].place.line == 2);
    CHECK(in.questions[0].place.column == 6);
}

TEST_CASE("rows of other pianos are left out and said once") {
    const std::string rows = "Hall;1;1;blow;1;46;mm;;\r\nCellar;1;1;blow;1;45;mm;;\r\nCellar;1;2;blow;1;45;mm;;\r\n";
    const auto hall = intake(rows);
    CHECK(hall.sound.size() == 1);
    REQUIRE(hall.refused.size() == 1);
    CHECK(hall.refused[0].code == RefusalCode::noSuchPiano);
    CHECK(hall.refused[0].text == "Cellar");
    CHECK(intake(rows, named("Cellar")).sound.size() == 2);
    // renamed since: a file of one piano is taken, of two is not
    CHECK(intake("Hall;1;1;blow;1;46;mm;;\r\n", named("Attic")).sound.size() == 1);
    CHECK(readReadings(kHead + rows, named("Attic")).error().code == RefusalCode::severalPianos);
}

TEST_CASE("the same row twice is one, a differing one is asked about") {
    const auto in = intake("Hall;1;1;blow;1;46;mm;;\r\nHall;1;1;blow;1;46.0;mm;;\r\nHall;1;1;blow;1;45;mm;;\r\n"
                           "Hall;1;1;blow;2;45;mm;;\r\nHall;2;1;blow;1;45;mm;;\r\n");
    CHECK(in.sound.size() == 3);
    REQUIRE(in.questions.size() == 1);
    CHECK(in.questions[0].doubt == Doubt::duplicate);
}

TEST_CASE("broken rows are refused one by one") {
    const auto in =
        intake("Hall;1;0;blow;1;46;mm;;\r\nHall;1;1;tuba;1;46;mm;;\r\nHall;1;1;blow;x;46;mm;;\r\n"
               "Hall;1;1;blow;1;46;ell;;\r\nHall;1;1;blow;1;46;mm;gone;\r\nHall;1;1;blow;1;46;mm;;yesterday\r\n"
               "Hall;1;1;blow;1;abc;mm;;\r\nHall;1;1;blow;1;46;mm;;\r\n");
    CHECK(in.sound.size() == 1);
    CHECK(in.refused.size() == 7);
}

TEST_CASE("the long form passes one reading at a time") {
    std::string bytes = kHead;
    for (int pass = 1; pass <= 20; ++pass)
        for (int note = 1; note <= 88; ++note)
            bytes += "Hall;" + std::to_string(pass) + ";" + std::to_string(note) + ";let-off;1;3.0;mm;;\r\n";
    std::size_t taken = 0;
    const auto read = readLongForm(bytes, named("Hall"), [&](Sound&& each) {
        CHECK(each.reading.count == 3'000'000);
        ++taken;
    });
    REQUIRE(read.has_value());
    CHECK(taken == 20 * 88);
    CHECK(read->sound.empty());
}

TEST_CASE("a file in pieces reads as the whole") {
    std::string bytes = "\xEF\xBB\xBF" + kHead;
    for (int i = 0; i < 300; ++i) {
        const std::string note = std::to_string(i % 88 + 1);
        bytes += (i % 7 == 0 ? "Cellar;" : "\"Hall\";") + std::to_string(i / 88 + 1) + ";" + note +
                 (i % 5 == 0 ? ";blow;1;\"1 13/16\"\"\";in;;\r\n" : ";let-off;1;3,0;mm;;\r\n\r\n");
    }
    bytes += "Hall;9;1;tuba;1;3;mm;;";
    const auto piano = named("Hall");
    std::vector<Sound> whole;
    const auto expected = readLongForm(bytes, piano, [&](Sound&& each) { whole.push_back(std::move(each)); });
    REQUIRE(expected.has_value());
    REQUIRE(whole.size() > 200);
    for (const std::size_t size : {std::size_t{1}, std::size_t{7}, std::size_t{100}, std::size_t{5000}}) {
        INFO("pieces of " << size);
        std::vector<Sound> pieces;
        PianoNames names("Hall", ';');
        LongFormReader reader(
            piano, [&](Sound&& each) { pieces.push_back(std::move(each)); }, true);
        for (std::size_t at = 0; at < bytes.size(); at += size) {
            names.add(std::string_view{bytes}.substr(at, size));
            REQUIRE(reader.add(std::string_view{bytes}.substr(at, size)).has_value());
        }
        CHECK(names.found());
        const auto intake = reader.finish();
        REQUIRE(intake.has_value());
        CHECK(intake->refused.size() == expected->refused.size());
        REQUIRE(pieces.size() == whole.size());
        for (std::size_t i = 0; i < whole.size(); ++i) {
            CHECK(pieces[i].line == whole[i].line);
            CHECK(pieces[i].reading == whole[i].reading);
            CHECK(pieces[i].cell == whole[i].cell);
        }
    }
}

TEST_CASE("a broken file in pieces is refused where the whole is") {
    const auto refusal = [](const std::string& rows) {
        const auto piano = named("Hall");
        LongFormReader reader(piano, [](Sound&&) {});
        const std::string bytes = kHead + rows;
        for (std::size_t at = 0; at < bytes.size(); at += 1000)
            if (auto added = reader.add(std::string_view{bytes}.substr(at, 1000)); !added) return added.error();
        const auto finished = reader.finish();
        REQUIRE_FALSE(finished.has_value());
        return finished.error();
    };
    const std::string good = "Hall;1;1;blow;1;46;mm;;\r\n";
    CHECK(refusal(good + "\"Hall;1;1;blow;1;46;mm;;\r\n").detail == "unterminated-quote");
    CHECK(refusal(good + "\"Hall;1;1;blow;1;46;mm;;\r\n").place.line == 3);
    CHECK(refusal(good + "\"Hall" + std::string(3'000'000, 'x')).detail == "unterminated-quote");
    CHECK(refusal(good + "Ha\xFFll;1;1;blow;1;46;mm;;\r\n").detail == "encoding");
    CHECK(refusal(good + std::string("Ha\0l;1;1;blow;1;46;mm;;\r\n", 26)).detail == "zero-byte");
    const auto piano = named("Hall");
    CHECK(LongFormReader(piano, [](Sound&&) {}).finish().error().code == RefusalCode::emptyFile);
}

TEST_CASE("only the heads make the long form") {
    CHECK(isLongForm(kHead));
    CHECK(isLongForm("note,dimension,text\n"));
    CHECK(isLongForm("\xEF\xBB\xBFpiano;pass;note;dimension;trial;text;unit;state;at"));
    CHECK_FALSE(isLongForm("note;dip\n1;10\n"));
    CHECK_FALSE(isLongForm(""));
}

TEST_CASE("a file that nobody could look through is refused as a whole, before it fills the memory") {
    const Piano piano = named("Hall");
    const auto refusedBy = [&](const std::string& head, int rows, const std::function<std::string(int)>& row) {
        std::string text = head;
        for (int i = 0; i < rows; ++i)
            text += row(i) + "\r\n";
        const auto read = readReadings(text, piano);
        return read ? std::string() : read.error().detail;
    };
    const auto doubtful = [](int i) { return "Hall;1;" + std::to_string(i % 88 + 1) + ";key-dip;1;100;mm;;"; };
    const auto unread = [](int i) { return "Hall;1;" + std::to_string(i % 88 + 1) + ";key-dip;1;abc;mm;;"; };
    const auto ofOther = [](int i) { return "Other" + std::to_string(i) + ";1;1;key-dip;1;10;mm;;"; };
    const auto passes = [](int i) { return "Hall;p" + std::to_string(i) + ";1;key-dip;1;10;mm;;"; };
    const auto empty = [](int i) { return "Hall;p" + std::to_string(i) + ";;;;;;pass;"; };
    CHECK(refusedBy(kHead, 10'000, doubtful).empty());
    CHECK(refusedBy(kHead, 10'001, doubtful) == "too-many-asked");
    CHECK(refusedBy(kHead, 10'001, unread) == "too-many-asked");
    CHECK(refusedBy(kHead + "Hall;1;1;key-dip;1;10;mm;;\r\n", 10'001, ofOther) == "too-many-asked");
    CHECK(refusedBy(kHead, 1'000, passes).empty());
    CHECK(refusedBy(kHead, 1'001, passes) == "too-many-passes");
    CHECK(refusedBy(kHead, 1'001, empty) == "too-many-passes");
    const auto wide = [](int i) { return std::to_string(i % 88 + 1) + ",100"; };
    CHECK(refusedBy("note,key-dip\r\n", 10'001, wide) == "too-many-asked");
    CHECK(refusedBy("note,key-dip\r\n", 100'000, [](int) { return "1,10"; }) == "too-many-cells");
    CHECK(refusedBy("note,key-dip\r\n1,", 1, [](int) { return std::string(9 << 20, '1'); }) == "8 MB");
}
