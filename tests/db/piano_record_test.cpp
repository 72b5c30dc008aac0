// The piano's own record in the book: fields, remarks, put away and brought back; undone, merged, imported.
#include "tests/db/bench.h"

using namespace hammerline;
using namespace hammerline::bench;
using namespace hammerline::dimension;

namespace {

Remark said(const std::string& text, About about = {}) {
    Remark remark;
    remark.text = text;
    remark.about = std::move(about);
    remark.who = "A. B.";
    remark.on = "2026-11-29";
    return remark;
}

void copyBook(const std::string& from, const std::string& to) {
    std::filesystem::copy_file(from, to, std::filesystem::copy_options::overwrite_existing);
}

} // namespace

TEST_CASE("fields are said, changed, taken back, and each is undone like any other act") {
    const Folder folder;
    BenchBook book = ok(BenchBook::create(folder.file("shop.hammerline"), writer()));
    const std::string piano = ok(book.addPiano(upright(), "upright", {}, {{"maker", "Invented"}, {"year", "1912"}}));
    const auto now = [&] { return ok(book.load(piano)).identity; };
    CHECK(now() == Identity{{"maker", "Invented"}, {"year", "1912"}});
    CHECK(ok(book.setIdentity(piano, {{"maker", "Invented"}})) == 0); // stands just so: no act
    CHECK(ok(book.setIdentity(piano, {{"owner", ""}})) == 0);         // was never said
    CHECK(ok(book.setIdentity(piano, {{"maker", ""}, {"owner", "Anna"}})) > 0);
    CHECK(now() == Identity{{"owner", "Anna"}, {"year", "1912"}});
    CHECK(ok(book.undo()).kind == "setup");
    CHECK(now() == Identity{{"maker", "Invented"}, {"year", "1912"}});
    ok(book.redo());
    CHECK(now() == Identity{{"owner", "Anna"}, {"year", "1912"}});
    ok(book.setIdentity(piano, {{"maker", "Another"}}));
    CHECK(now().at("maker") == "Another");
    ok(book.undo());
    ok(book.undo());
    ok(book.undo()); // the piano itself, with what came with it
    CHECK(ok(book.pianos()).empty());
    ok(book.redo());
    CHECK(now() == Identity{{"maker", "Invented"}, {"year", "1912"}});
    CHECK(ok(book.verify()).sound);
}

TEST_CASE("a piano put away is not taken for the one that is meant, and comes back") {
    const Folder folder;
    BenchBook book = ok(BenchBook::create(folder.file("shop.hammerline"), writer()));
    const std::string first = ok(book.addPiano(upright("First"), "upright"));
    const std::string second = ok(book.addPiano(upright("Second"), "upright"));
    CHECK(code(book.findPiano("")) == RefusalCode::severalPianos);
    ok(book.setIdentity(first, {{std::string(kArchived), "yes"}}));
    CHECK(ok(book.findPiano("")) == second);
    CHECK(ok(book.findPiano("first")) == first); // by name it is still found
    const auto lines = ok(book.pianos());
    REQUIRE(lines.size() == 2);
    CHECK(isArchived(lines[0].identity));
    CHECK_FALSE(isArchived(lines[1].identity));
    ok(book.setIdentity(second, {{std::string(kArchived), "yes"}}));
    CHECK(code(book.findPiano("")) == RefusalCode::severalPianos);
    ok(book.undo());
    ok(book.undo());
    CHECK(code(book.findPiano("")) == RefusalCode::severalPianos);
}

TEST_CASE("the kind of action stays once something was read") {
    const Folder folder;
    BenchBook book = ok(BenchBook::create(folder.file("shop.hammerline"), writer()));
    const std::string piano = ok(book.addPiano(upright(), "upright"));
    Piano grand = *makePiano(ActionKind::grand);
    grand.name = "Parlour upright";
    ok(book.changePiano(piano, grand, "grand"));
    CHECK(ok(book.load(piano)).piano.action == ActionKind::grand);
    ok(book.changePiano(piano, upright(), "upright"));
    const int pass = ok(book.addPass(piano, {"as found", {}, {}, false, false, {}}));
    ok(book.store(piano, pass, std::vector{mm(40, letOff, 3.0)}));
    CHECK(code(book.changePiano(piano, grand, "grand")) == RefusalCode::kindMeasured);
    Piano renamed = upright("Hall upright");
    ok(book.changePiano(piano, renamed, "upright")); // all else may change
    ok(book.withdraw(piano, pass, cell(40, letOff)));
    ok(book.changePiano(piano, grand, "grand"));
}

TEST_CASE("remarks stand in order, are taken back and undone; a pass that carries one is not undone under it") {
    const Folder folder;
    Filled filled = filledBook(folder.file("shop.hammerline"));
    BenchBook& book = filled.book;
    const std::vector both = {said("moth in the felt"),
                              said("glued before", {2, NoteNumber{20}, "bridle-strap", "rotted"})};
    ok(book.addRemarks(filled.piano, both));
    const auto now = [&] { return ok(book.load(filled.piano)).remarks; };
    REQUIRE(now().size() == 2);
    CHECK(sayTheSame(now()[0], both[0]));
    CHECK(sayTheSame(now()[1], both[1]));
    CHECK(now()[0].at > 0);
    ok(book.removeRemark(filled.piano, now()[0]));
    REQUIRE(now().size() == 1);
    CHECK(now()[0].text == "glued before");
    ok(book.undo());
    CHECK(now().size() == 2);
    Remark advice = said("file again");
    advice.kind = RemarkKind::advice;
    ok(book.addRemarks(filled.piano, std::vector{advice}));
    const auto at = now()[2].at;
    ok(book.decideAdvice(filled.piano, now()[2], "yes"));
    CHECK(now()[2].accepted == "yes");
    CHECK(now()[2].at == at); // when it was said, not when it was decided
    ok(book.undo());
    CHECK(now()[2].accepted.empty());
    ok(book.undo());
    CHECK(now().size() == 2);
    CHECK(code(book.removeRemark(filled.piano, said("never said"))) == RefusalCode::noSuchRemark);
    CHECK(ok(book.verify()).sound);
}

TEST_CASE("a pass with nothing but a remark is not taken back under it") {
    const Folder folder;
    BenchBook book = ok(BenchBook::create(folder.file("shop.hammerline"), writer()));
    const std::string piano = ok(book.addPiano(upright(), "upright"));
    const int pass = ok(book.addPass(piano, {"as found", {}, {}, false, false, {}}));
    BenchBook other = ok(BenchBook::open(folder.file("shop.hammerline"), OpenMode::readWrite, writer()));
    ok(other.addRemarks(piano, std::vector{said("cold room", {pass, {}, {}, {}})}));
    CHECK(code(book.undo()) == RefusalCode::goneOnSince);
    CHECK(ok(book.load(piano)).remarks.size() == 1);
}

TEST_CASE("two books that grew apart: both their records come together, twice is as once, and what differs is told") {
    const Folder folder;
    const std::string mine = folder.file("mine.hammerline"), theirs = folder.file("theirs.hammerline");
    std::string piano;
    {
        Filled filled = filledBook(mine);
        piano = filled.piano;
        ok(filled.book.addRemarks(piano, std::vector{said("before they parted")}));
    }
    copyBook(mine, theirs);
    {
        BenchBook there = ok(BenchBook::open(theirs, OpenMode::readWrite, writer(1'795'700'000'000'000)));
        ok(there.setIdentity(piano, {{"owner", "Berta"}, {"place", "school"}}));
        ok(there.addRemarks(piano, std::vector{said("from there", {2, {}, {}, {}})}));
    }
    BenchBook here = ok(BenchBook::open(mine, OpenMode::readWrite, writer(1'795'600'000'000'000)));
    ok(here.setIdentity(piano, {{"owner", "Anna"}}));
    const Merged merged = ok(here.merge(theirs));
    const PianoRecord record = ok(here.load(piano));
    CHECK(record.identity == Identity{{"owner", "Berta"}, {"place", "school"}}); // the later holds
    REQUIRE(record.remarks.size() == 2);
    CHECK(record.remarks[1].text == "from there");
    REQUIRE(merged.disputes.size() == 1);
    CHECK(merged.disputes[0].what == "identity");
    CHECK(merged.disputes[0].name == "owner");
    CHECK(merged.disputes[0].said == std::vector<std::string>{"Anna", "Berta"});
    CHECK(ok(here.merge(theirs)).acts == 0);
    ok(here.setIdentity(piano, {{"owner", "Anna"}})); // said anew: settled
    CHECK(ok(here.disputes()).empty());
    CHECK(ok(here.load(piano)).identity.at("owner") == "Anna");
    CHECK(ok(here.verify()).sound);
}

TEST_CASE("an exported piano brings its record into another book, and a second time brings nothing") {
    const Folder folder;
    Filled filled = filledBook(folder.file("shop.hammerline"));
    ok(filled.book.setIdentity(filled.piano, {{"maker", "Invented"}, {"archived", "yes"}}));
    ok(filled.book.addRemarks(filled.piano, std::vector{said("cold room", {2, NoteNumber{33}, {}, {}})}));
    const PianoRecord record = ok(filled.book.load(filled.piano));
    BenchBook other = ok(BenchBook::create(folder.file("other.hammerline"), writer()));
    ok(other.importRecords(std::vector{BenchBook::Incoming{record, {}}}, "shop.json"));
    const std::string piano = ok(other.findPiano("Parlour upright"));
    const PianoRecord there = ok(other.load(piano));
    CHECK(there.identity == record.identity);
    REQUIRE(there.remarks.size() == 1);
    CHECK(sayTheSame(there.remarks[0], record.remarks[0]));
    CHECK(there.remarks[0].at == record.remarks[0].at);
    CHECK(ok(other.importRecords(std::vector{BenchBook::Incoming{record, piano}}, "shop.json")) == 0);
    ok(other.undo());
    CHECK(ok(other.pianos()).empty());
}
