// A book is made, written, read back: what was typed is what comes out.
#include "tests/db/bench.h"

#include <cstring>

using namespace hammerline;
using namespace hammerline::bench;
using namespace hammerline::dimension;

TEST_CASE("a new book has no pianos, is sound, and carries its application id and version") {
    const Folder folder;
    const std::string path = folder.file("shop.hammerline");
    {
        BenchBook book = ok(BenchBook::create(path, writer()));
        CHECK(ok(book.pianos()).empty());
        CHECK(ok(book.verify()).sound);
        CHECK_FALSE(book.readOnly());
        CHECK(code(book.findPiano("")) == RefusalCode::noSuchPiano);
    }
    CHECK(folder.names() == std::vector<std::string>{"shop.hammerline"});
    // sqlite.org/fileformat2.html, section 1.3: magic, user version at 60, application id at 68, big-endian
    const std::string bytes = bytesOf(path);
    CHECK(bytes.substr(0, 16) == std::string("SQLite format 3\0", 16));
    CHECK(bytes.substr(60, 4) == std::string("\0\0\0\5", 4));
    CHECK(bytes.substr(68, 4) == "HLBK");
    CHECK(code(BenchBook::create(path)) == RefusalCode::fileExists);
}

TEST_CASE("a piano comes back with every attribute, and its set-up can be changed") {
    const Folder folder;
    BenchBook book = ok(BenchBook::create(folder.file("a"), writer()));
    Piano piano = ok(makePiano(ActionKind::upright, 85, 24));
    piano.name = "Player";
    for (const auto& [name, value] : {std::pair{"player", "below"}, std::pair{"keys", "hooked"},
                                      std::pair{"sections", "1-26 Bass,27-85"}, std::pair{"last-damper", "65"}})
        REQUIRE(setAttribute(piano, name, value));
    const std::string uuid = ok(book.addPiano(piano, "old-upright"));
    CHECK(ok(book.load(uuid)).piano == piano);
    CHECK(ok(book.load(uuid)).specName == "old-upright");
    CHECK(ok(book.findPiano("Player")) == uuid);
    CHECK(ok(book.findPiano("player")) == uuid);
    CHECK(ok(book.findPiano("")) == uuid);
    CHECK(code(book.addPiano(piano, "upright")) == RefusalCode::pianoExists);

    piano.player = PlayerStack::none;
    piano.name = "Player, stack sold";
    CHECK(ok(book.changePiano(uuid, piano, "upright")) > 0);
    CHECK(ok(book.load(uuid)).piano == piano);
    CHECK(code(book.findPiano("Player")) == RefusalCode::noSuchPiano);
    CHECK(ok(book.undo()).kind == "setup");
    CHECK(ok(book.load(uuid)).piano.player == PlayerStack::below);
    CHECK(ok(book.load(uuid)).specName == "old-upright");

    ok(book.addPiano(upright("Second"), "upright"));
    CHECK(code(book.findPiano("")) == RefusalCode::severalPianos);
}

TEST_CASE("a reading is kept with its text, unit, time and doubt, and a later one supersedes it") {
    const Folder folder;
    BenchBook book = ok(BenchBook::create(folder.file("a"), writer()));
    const std::string uuid = ok(book.addPiano(upright(), "upright"));
    const int pass = ok(book.addPass(uuid, {"as found", 20.0, {}, false, false, {{keyHeight, "line"}}}));
    CHECK(pass == 1);
    NewReading first = mm(51, blow, 46.0375);
    first.reading.typed = "1 13/16";
    first.reading.typedUnit = "in";
    first.reading.taken = true;
    first.reading.reason = "rail bent";
    ok(book.store(uuid, pass, std::vector{first}));
    {
        const PianoRecord record = ok(book.load(uuid));
        REQUIRE(record.passes.size() == 1);
        CHECK(record.passes[0].label == "as found");
        CHECK(record.passes[0].temperature == 20.0);
        CHECK_FALSE(record.passes[0].climate);
        CHECK(record.passes[0].referenceOf(keyHeight) == "line");
        const Measured& measured = record.passes[0].cells.at(cell(51, blow));
        REQUIRE(measured.trials.size() == 1);
        const Reading& got = measured.trials[0];
        CHECK(got.count == 46'037'500);
        CHECK(got.typed == "1 13/16");
        CHECK(got.typedUnit == "in");
        CHECK(got.taken);
        CHECK(got.reason == "rail bent");
        CHECK(got.at >= 1'795'593'600'000'000);
        CHECK(measured.superseded == 0);
    }
    ok(book.store(uuid, pass, std::vector{mm(51, blow, 45.0)}));
    const Measured measured = ok(book.load(uuid)).passes[0].cells.at(cell(51, blow));
    CHECK(measured.value() == 45'000'000);
    CHECK(measured.superseded == 1);
    const auto trail = ok(book.trail(uuid, pass, cell(51, blow)));
    REQUIRE(trail.size() == 2);
    CHECK(trail[0].typed == "1 13/16");
    CHECK(trail[1].count == 45'000'000);
    CHECK(trail[0].order < trail[1].order);
}

TEST_CASE("repeats stand beside each other, and a first trial alone starts the cell anew") {
    const Folder folder;
    BenchBook book = ok(BenchBook::create(folder.file("a"), writer()));
    const std::string uuid = ok(book.addPiano(upright(), "upright"));
    const int pass = ok(book.addPass(uuid, {}));
    const auto measured = [&] { return ok(book.load(uuid)).passes[0].cells.at(cell(40, letOff)); };
    ok(book.store(uuid, pass, std::vector{mm(40, letOff, 3.0)}));
    ok(book.store(uuid, pass, std::vector{mm(40, letOff, 3.2, 0), mm(40, letOff, 3.4, 0)}));
    REQUIRE(measured().trials.size() == 3);
    CHECK(measured().value() == 3'200'000);
    CHECK(measured().trials[2].trial == 3);
    ok(book.store(uuid, pass, std::vector{mm(40, letOff, 3.3, 2)}));
    CHECK(measured().trials[1].count == 3'300'000);
    CHECK(measured().superseded == 1);
    ok(book.store(uuid, pass, std::vector{mm(40, letOff, 2.9)}));
    CHECK(measured().value() == 2'900'000);
    CHECK(measured().trials.size() == 1);
    ok(book.undo());
    CHECK(measured().trials.size() == 3);
    // the same cell and trial twice in one act is no measurement but a mistake
    CHECK(code(book.store(uuid, pass, std::vector{mm(41, letOff, 3.0), mm(41, letOff, 3.1)})) == RefusalCode::usage);
    CHECK_FALSE(ok(book.load(uuid)).passes[0].cells.contains(cell(41, letOff)));
}

TEST_CASE("words, inequalities, go and no-go pairs and 'not fitted' are kept as what they are") {
    const Folder folder;
    BenchBook book = ok(BenchBook::create(folder.file("a"), writer()));
    const std::string uuid = ok(book.addPiano(upright(), "upright"));
    const int pass = ok(book.addPass(uuid, {}));
    NewReading less = mm(1, lostMotion, 0.05);
    less.reading.relation = Relation::less;
    NewReading pair = mm(2, lostMotion, 0.1);
    pair.reading.relation = Relation::between;
    pair.reading.upper = 200'000;
    ok(book.store(uuid, pass, std::vector{less, pair, said(3, letOff, word::blocks, "blocks")}));
    ok(book.markNotFitted(uuid, pass, cell(4, damperStart)));
    const Pass got = ok(book.load(uuid)).passes[0];
    CHECK(got.cells.at(cell(1, lostMotion)).trials[0].relation == Relation::less);
    CHECK(got.cells.at(cell(2, lostMotion)).trials[0].upper == 200'000);
    CHECK(got.cells.at(cell(3, letOff)).word() == word::blocks);
    CHECK(got.cells.at(cell(4, damperStart)).notFitted);
    CHECK(got.cells.at(cell(4, damperStart)).missing());
    CHECK(ok(book.pianos())[0].passes[0].readings == 3);
    ok(book.withdraw(uuid, pass, cell(1, lostMotion)));
    CHECK(ok(book.load(uuid)).passes[0].cells.at(cell(1, lostMotion)).missing());
    CHECK(ok(book.withdraw(uuid, pass, cell(1, lostMotion))) == 0); // nothing left to withdraw: no act
}

TEST_CASE("a whole history comes back: findings, override, plan, what was done, preferences") {
    const Folder folder;
    const std::string path = folder.file("shop.hammerline");
    std::string uuid;
    PianoRecord before;
    {
        Filled filled = filledBook(path);
        uuid = filled.piano;
        before = ok(filled.book.load(uuid));
    }
    BenchBook book = ok(BenchBook::open(path, OpenMode::readWrite, writer()));
    const PianoRecord record = ok(book.load(uuid));
    CHECK(record.passes == before.passes);
    CHECK(record.done == before.done);
    REQUIRE(record.passes.size() == 2);
    CHECK(record.passes[0].climate == Climate{19.5, 41.0});
    CHECK(record.passes[1].stackIn);
    CHECK(record.passes[1].weightsOn);
    CHECK(record.passes[0].cells.at(cell(33, letOff)).trials.size() == 2);
    REQUIRE(record.findings.size() == 1);
    CHECK(record.findings[0].part == "bridle-strap");
    CHECK(record.findings[0].state == FindingState::toDo);
    REQUIRE(record.symptoms.size() == 1);
    CHECK(record.symptoms[0].notes == NoteRange{1, 44});
    REQUIRE(record.overrides.size() == 1);
    CHECK(record.overrides[0].reason == "short shank");
    CHECK(record.overrides[0].zone.nominal == 42'000'000);
    REQUIRE(record.plans.size() == 1);
    CHECK(record.plans[0].options == R"({"intent":"touch-up"})");
    REQUIRE(record.done.size() == 1);
    CHECK(record.done[0].plan == record.plans[0].uuid);
    CHECK(record.done[0].step == "let-off-turn:33");
    CHECK(record.done[0].amount == -0.25);
    CHECK(record.done[0].order > record.passes[0].cells.at(cell(33, letOff)).order());
    CHECK(record.done[0].order < record.passes[1].cells.at(cell(33, letOff)).order());
    CHECK(record.preferences.at("unit.blow") == "in");
    CHECK(ok(book.findPass(uuid, "")) == 2);
    CHECK(ok(book.findPass(uuid, "1")) == 1);
    CHECK(ok(book.findPass(uuid, "As Found")) == 1);
    CHECK(code(book.findPass(uuid, "third")) == RefusalCode::noSuchPass);
    CHECK(ok(book.pianos())[0].passes[0].readings == 178);
    CHECK(ok(book.verify()).sound);
}

TEST_CASE("a finding's state follows what is said later of the same part") {
    const Folder folder;
    Filled filled = filledBook(folder.file("a"));
    const auto findings = [&] { return ok(filled.book.load(filled.piano)).findings; };
    Finding state;
    state.note = NoteNumber{20};
    state.part = "bridle-strap";
    state.state = FindingState::mended;
    ok(filled.book.addFindings(filled.piano, std::vector{state}));
    REQUIRE(findings().size() == 1);
    CHECK(findings()[0].state == FindingState::mended);
    CHECK(findings()[0].fault == "rotted");
    CHECK(findings()[0].remedy == "replace-set");
    state.state = FindingState::sound;
    ok(filled.book.addFindings(filled.piano, std::vector{state}));
    REQUIRE(findings().size() == 1);
    CHECK(findings()[0].state == FindingState::sound);
    CHECK(findings()[0].fault.empty());
    Finding reshaped = state;
    reshaped.part = "hammer-head";
    reshaped.fault = "grooved";
    reshaped.remedy = "reshape";
    reshaped.state = FindingState::mended;
    reshaped.amount = 1.25;
    ok(filled.book.addFindings(filled.piano, std::vector{reshaped}));
    REQUIRE(findings().size() == 2);
    CHECK(findings()[1].amount == 1.25);
    ok(filled.book.undo());
    ok(filled.book.undo());
    ok(filled.book.undo());
    REQUIRE(findings().size() == 1);
    CHECK(findings()[0].fault == "rotted");
    CHECK(findings()[0].state == FindingState::toDo);
}
