// Undo and redo as acts of the book: state written before each step.
#include "tests/db/bench.h"

using namespace hammerline;
using namespace hammerline::bench;
using namespace hammerline::dimension;

namespace {

std::optional<std::int64_t> value(const BenchBook& book, const std::string& piano, int note) {
    const PianoRecord record = ok(book.load(piano));
    return record.passes.empty() ? std::nullopt : record.passes[0].value(cell(note, letOff));
}

} // namespace

TEST_CASE("undo goes back act by act, redo forward, and a new act ends the chance to redo") {
    const Folder folder;
    BenchBook book = ok(BenchBook::create(folder.file("a"), writer()));
    const std::string piano = ok(book.addPiano(upright(), "upright"));
    const int pass = ok(book.addPass(piano, {}));
    ok(book.store(piano, pass, std::vector{mm(1, letOff, 3.0)}));
    ok(book.store(piano, pass, std::vector{mm(1, letOff, 3.5)}));
    const auto first = ok(book.load(piano)).passes[0].cells.at(cell(1, letOff)).order();

    CHECK(ok(book.undo()).kind == "entry");
    CHECK(value(book, piano, 1) == 3'000'000);
    CHECK(ok(book.load(piano)).passes[0].cells.at(cell(1, letOff)).order() < first); // as old as when it was read
    ok(book.undo());
    CHECK(value(book, piano, 1) == std::nullopt);
    CHECK(ok(book.redo()).kind == "entry");
    CHECK(value(book, piano, 1) == 3'000'000);
    ok(book.redo());
    CHECK(value(book, piano, 1) == 3'500'000);
    CHECK(ok(book.load(piano)).passes[0].cells.at(cell(1, letOff)).order() == first);
    CHECK(code(book.redo()) == RefusalCode::nothingToRedo);
    ok(book.undo());
    ok(book.store(piano, pass, std::vector{mm(2, letOff, 4.0)}));
    CHECK(code(book.redo()) == RefusalCode::nothingToRedo);
    // back to the empty book: reading 2, reading 1, pass, piano
    for (const char* kind : {"entry", "entry", "pass", "setup"})
        CHECK(ok(book.undo()).kind == kind);
    CHECK(ok(book.pianos()).empty());
    CHECK(code(book.undo()) == RefusalCode::nothingToUndo);
    for (int i = 0; i < 4; ++i)
        ok(book.redo());
    CHECK(value(book, piano, 2) == 4'000'000);
    CHECK(value(book, piano, 1) == 3'000'000);
    CHECK(ok(book.verify()).sound);
}

TEST_CASE("on the command line every command is a session, and undo still goes back and back") {
    const Folder folder;
    const std::string path = folder.file("a");
    auto clock = writer();
    std::string piano;
    {
        BenchBook book = ok(BenchBook::create(path, clock));
        piano = ok(book.addPiano(upright(), "upright"));
        ok(book.addPass(piano, {}));
    }
    const auto open = [&] { return ok(BenchBook::open(path, OpenMode::readWrite, clock)); };
    ok(open().store(piano, 1, std::vector{mm(1, letOff, 3.0)}));
    ok(open().store(piano, 1, std::vector{mm(1, letOff, 3.5)}));
    ok(open().undo());
    CHECK(value(open(), piano, 1) == 3'000'000);
    ok(open().undo());
    CHECK(value(open(), piano, 1) == std::nullopt);
    ok(open().redo());
    ok(open().redo());
    CHECK(value(open(), piano, 1) == 3'500'000);
    CHECK(code(open().redo()) == RefusalCode::nothingToRedo);
}

TEST_CASE("an act that another has gone on from is not undone, and nothing changes") {
    const Folder folder;
    const std::string path = folder.file("a");
    auto clock = writer();
    BenchBook window = ok(BenchBook::create(path, clock));
    const std::string piano = ok(window.addPiano(upright(), "upright"));
    ok(window.addPass(piano, {}));
    ok(window.store(piano, 1, std::vector{mm(1, letOff, 3.0)}));
    BenchBook other = ok(BenchBook::open(path, OpenMode::readWrite, clock));
    ok(other.store(piano, 1, std::vector{mm(1, letOff, 3.6)}));
    CHECK(window.poll() == Change::dataChanged);
    CHECK(window.poll() == Change::none);
    const auto refused = window.undo();
    CHECK(code(refused) == RefusalCode::goneOnSince);
    CHECK(value(window, piano, 1) == 3'600'000);
    // elsewhere both go on as before
    ok(window.store(piano, 1, std::vector{mm(2, letOff, 3.1)}));
    ok(window.undo());
    CHECK(value(window, piano, 2) == std::nullopt);
    ok(other.undo());
    CHECK(value(window, piano, 1) == 3'000'000);
}

TEST_CASE("a pass or piano that something stands on is not taken back") {
    const Folder folder;
    const std::string path = folder.file("a");
    auto clock = writer();
    BenchBook window = ok(BenchBook::create(path, clock));
    const std::string piano = ok(window.addPiano(upright(), "upright"));
    ok(window.addPass(piano, {"as found", {}, {}, false, false, {}}));
    BenchBook other = ok(BenchBook::open(path, OpenMode::readWrite, clock));
    ok(other.store(piano, 1, std::vector{mm(1, letOff, 3.6)}));
    CHECK(code(window.undo()) == RefusalCode::goneOnSince);
    CHECK(ok(window.load(piano)).passes.size() == 1);
    ok(other.undo());
    ok(window.undo());
    CHECK(ok(window.load(piano)).passes.empty());
}

TEST_CASE("a step of the work ticked, taken back and not needed here: each one act with all that it mended") {
    const Folder folder = Folder::quick();
    auto [book, piano] = filledBook(folder.file("shop.hammerline"));
    const std::string before = contentOf(book);
    WorkDone work;
    work.said.marks = {{.step = "mend-butts-and-springs", .note = {}, .remark = "cord renewed"}};
    work.said.takenBack = {{"ease-keys", NoteNumber{33}}, {"ease-keys", NoteNumber{34}}}; // 34 was never said
    work.mended = ok(book.load(piano)).findings;
    REQUIRE(work.mended.size() == 1);
    work.mended.front().state = FindingState::mended;
    ok(book.sayWork(piano, work));
    const PianoRecord after = ok(book.load(piano));
    REQUIRE(after.marks.size() == 2);
    CHECK(after.marks.back().step == "mend-butts-and-springs");
    CHECK(after.findings.front().state == FindingState::mended);
    const std::string then = contentOf(book);
    CHECK(ok(book.undo()).kind == "tick");
    CHECK(contentOf(book) == before);
    CHECK(ok(book.redo()).kind == "tick");
    // the order of the acts is another, what they say is the same
    CHECK(ok(book.load(piano)).marks.size() == 2);
    CHECK(ok(book.load(piano)).findings.front().state == FindingState::mended);
    work.said.takenBack.clear();
    work.said.marks.front().state = MarkState::notHere;
    work.mended.clear();
    ok(book.sayWork(piano, work));
    CHECK(ok(book.load(piano)).marks.back().state == MarkState::notHere);
    CHECK(ok(book.verify()).sound);
}

TEST_CASE("an import, a tick with its plan, an override and a preference are each one step") {
    const Folder folder;
    Filled filled = filledBook(folder.file("a"));
    BenchBook& book = filled.book;
    const auto record = [&] { return ok(book.load(filled.piano)); };
    CHECK(ok(book.undo()).kind == "preference");
    CHECK(record().preferences.empty());
    ok(book.undo()); // reading of the second pass
    CHECK(ok(book.undo()).kind == "pass");
    CHECK(record().passes.size() == 1);
    CHECK(ok(book.undo()).kind == "tick"); // steps of the work said by hand
    CHECK(record().marks.empty());
    CHECK(record().done.size() == 1);
    CHECK(ok(book.undo()).kind == "tick");
    CHECK(record().done.empty());
    CHECK(record().plans.empty());
    CHECK(ok(book.undo()).kind == "override");
    CHECK(record().overrides.empty());
    ok(book.undo());
    CHECK(record().symptoms.empty());
    ok(book.undo());
    CHECK(record().findings.empty());
    ok(book.undo());
    ok(book.undo());
    CHECK(ok(book.undo()).kind == "import");
    CHECK(record().passes[0].readingCount() == 0);
    for (int i = 0; i < 11; ++i)
        ok(book.redo());
    CHECK(record().passes[0].cells.size() == 177);
    CHECK(record().done.size() == 1);
    CHECK(record().plans.size() == 1);
    CHECK(record().done[0].plan == record().plans[0].uuid);
    CHECK(ok(book.verify()).sound);
}

TEST_CASE("a tick is corrected in its place and taken back by a later act, which undo brings back") {
    const Folder folder;
    Filled filled = filledBook(folder.file("a"));
    BenchBook& book = filled.book;
    const auto done = [&] { return ok(book.load(filled.piano)).done; };
    Done corrected = done().at(0);
    const std::string plan = corrected.plan;
    REQUIRE_FALSE(plan.empty());
    CHECK(corrected.amount == -0.25);
    corrected.amount = -0.125;
    ok(book.tickAnew(filled.piano, std::vector{corrected}));
    REQUIRE(done().size() == 1);
    CHECK(done()[0].amount == -0.125);

    const std::vector<std::string> steps{"let-off-turn:33"}, unknown{"let-off-turn:34"};
    CHECK(ok(book.untick(filled.piano, plan, unknown)) == 0); // nothing was said of it: no act
    CHECK(done().size() == 1);
    ok(book.untick(filled.piano, plan, steps));
    CHECK(done().empty());
    ok(book.undo());
    CHECK(done().at(0).amount == -0.125);
    ok(book.undo());
    CHECK(done().at(0).amount == -0.25);
    ok(book.redo());
    CHECK(done().size() == 1);
    CHECK(done().at(0).amount == -0.125);
    CHECK(ok(book.verify()).sound);
}
