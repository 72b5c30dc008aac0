// Backups, restoring, what can be rescued, and two who write at once.
#include "db/document.h"
#include "db/files.h"
#include "db/held_book.h"
#include "db/left_behind.h"
#include "tests/db/bench.h"

#include <SQLiteCpp/SQLiteCpp.h>
#include <fcntl.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <csignal>

using namespace hammerline;
using namespace hammerline::bench;
using namespace hammerline::dimension;

namespace fs = std::filesystem;

namespace {

constexpr std::size_t kPage = 4096;

std::vector<std::string> named(const Folder& folder, const std::string& part) {
    std::vector<std::string> found;
    for (const std::string& name : folder.names())
        if (name.find(part) != std::string::npos) found.push_back(name);
    return found;
}

void write(const std::string& path, const std::string& bytes) {
    std::ofstream(path, std::ios::binary | std::ios::trunc) << bytes;
}

/// The pages of a table's rows, its root left out, as SQLite's own page statistics give them where they are built in;
/// else found by what stands on them.
std::vector<std::size_t> pagesWith(const std::string& bytes, const std::string& text) {
    std::vector<std::size_t> pages;
    for (std::size_t at = 0; at + kPage <= bytes.size(); at += kPage)
        if (bytes.find(text, at) < at + kPage) pages.push_back(at / kPage);
    return pages;
}

std::size_t readings(const BenchBook& book) {
    std::size_t count = 0;
    for (const PianoLine& piano : ok(book.pianos()))
        for (const auto& pass : piano.passes)
            count += pass.readings;
    return count;
}

} // namespace

TEST_CASE("a backup is dated, says what the book says, and the oldest beyond ten go") {
    const Folder folder = Folder::quick();
    const std::string path = folder.file("shop.hammerline");
    Filled filled = filledBook(path);
    const std::string content = contentOf(filled.book);
    const std::string foreign = folder.file("shop.backup-20200101-000000.hammerline");
    write(foreign, "not one of ours: never deleted");
    std::vector<std::string> made;
    for (std::size_t i = 0; i < 12; ++i)
        made.push_back(ok(filled.book.backUp()));
    CHECK(fs::path(made[0]).filename().string().starts_with("shop.backup-20261125-0800"));
    CHECK(contentOf(ok(BenchBook::open(made.back(), OpenMode::readOnly))) == content);
    CHECK_FALSE(fs::exists(made[0]));
    CHECK(fs::exists(made[11]));
    CHECK(fs::exists(foreign));
    CHECK(named(folder, ".backup-").size() == 10 + 1);
}

TEST_CASE("a bad book never takes the place of a good backup") {
    const Folder folder = Folder::quick();
    const std::string path = folder.file("shop.hammerline"), copy = folder.file("copy.hammerline");
    {
        Filled filled = filledBook(path);
        ok(filled.book.backUp(copy));
        for (int i = 0; i < 10; ++i)
            ok(filled.book.backUp());
    }
    const std::vector<std::string> before = folder.names();
    const std::string good = bytesOf(copy);
    // sound at a glance, but a reading points at an act that is not there
    SQLite::Database(path, SQLite::OPEN_READWRITE).exec("PRAGMA foreign_keys=OFF; UPDATE reading SET origin = 9999");
    {
        BenchBook book = ok(BenchBook::open(path, OpenMode::readWrite, writer()));
        CHECK_FALSE(ok(book.verify()).sound);
        CHECK(code(book.backUp(copy)) == RefusalCode::damagedBook);
        CHECK(code(book.backUp()) == RefusalCode::damagedBook);
    }
    CHECK(folder.names() == before);
    CHECK(bytesOf(copy) == good);
    // nor does a bad backup take the place of a good book
    CHECK(code(restoreBook(copy, path)) == RefusalCode::damagedBook);
    std::string bad = good;
    std::fill_n(bad.begin() + kPage, kPage, '\0');
    write(path, bad);
    CHECK_FALSE(restoreBook(copy, path));
    CHECK(bytesOf(copy) == good);
    CHECK(folder.names() == before);
}

TEST_CASE("a backup may be written over by the same book only") {
    const Folder folder = Folder::quick();
    Filled filled = filledBook(folder.file("shop.hammerline"));
    const std::string copy = folder.file("stick.hammerline");
    ok(filled.book.backUp(copy));
    ok(filled.book.store(filled.piano, 1, std::vector{mm(1, letOff, 2.2)}));
    ok(filled.book.backUp(copy));
    CHECK(contentOf(ok(BenchBook::open(copy))) == contentOf(filled.book));
    const Filled other = filledBook(folder.file("other.hammerline"));
    CHECK(code(other.book.backUp(copy)) == RefusalCode::fileExists);
    CHECK(code(filled.book.backUp(folder.file("shop.hammerline"))) == RefusalCode::fileExists);
    CHECK(code(filled.book.backUp(folder.file("nowhere/copy.hammerline"))) == RefusalCode::cannotWrite);
    write(folder.file("letter.txt"), "not a book");
    CHECK(code(filled.book.backUp(folder.file("letter.txt"))) == RefusalCode::fileExists);
    CHECK(bytesOf(folder.file("letter.txt")) == "not a book");
}

TEST_CASE("a book is restored by one act, and what stood there is kept") {
    const Folder folder = Folder::quick();
    const std::string path = folder.file("shop.hammerline"), copy = folder.file("copy.hammerline");
    std::string content;
    {
        Filled filled = filledBook(path);
        content = contentOf(filled.book);
        ok(filled.book.backUp(copy));
        ok(filled.book.store(filled.piano, 1, std::vector{mm(1, letOff, 2.2)}));
        const std::string kept = ok(restoreBook(path, copy));
        CHECK(fs::exists(kept));
        // the window that had the book open notices, and writes nothing more into what was moved away
        CHECK(filled.book.poll() == Change::fileReplaced);
        CHECK(code(filled.book.store(filled.piano, 1, std::vector{mm(2, letOff, 2.2)})) == RefusalCode::replacedFile);
    }
    CHECK(contentOf(ok(BenchBook::open(path))) == content);
    fs::remove(path);
    CHECK(ok(restoreBook(path, copy)).empty());
    CHECK(contentOf(ok(BenchBook::open(path))) == content);
}

TEST_CASE("what a killed restore leaves behind is found, and told from a copy that somebody is writing") {
    const Folder folder = Folder::quick();
    const std::string path = folder.file("shop.hammerline"), copy = folder.file("copy.hammerline");
    std::string content;
    {
        Filled filled = filledBook(path);
        std::vector<NewReading> many; // more pages than are copied at once
        for (int trial = 2; trial <= 90; ++trial)
            for (int note = 1; note <= 88; ++note) {
                many.push_back(mm(note, letOff, 3.1));
                many.back().reading.trial = trial;
            }
        ok(filled.book.store(filled.piano, 1, many));
        content = contentOf(filled.book);
        ok(filled.book.backUp(copy));
        ok(filled.book.store(filled.piano, 1, std::vector{mm(1, letOff, 2.2)}));
    }
    const std::string before = bytesOf(path);
    REQUIRE(before.size() > 128 * kPage);
    CHECK(leftBehind(path).empty());
    // killed in the middle of copying (0.52 to 0.68 of the way), and when the copy is whole
    for (const double at : {0.55, 0.7}) {
        const pid_t child = ::fork();
        if (child == 0) {
            (void)restoreBook(path, copy, [&](double share) {
                if (share > at) ::raise(SIGKILL);
                return true;
            });
            ::_exit(0);
        }
        int status = 0;
        REQUIRE(::waitpid(child, &status, 0) == child);
        REQUIRE(WIFSIGNALED(status));
        CHECK(bytesOf(path) == before);
        const auto left = leftBehind(path);
        REQUIRE(left.size() == 1);
        const bool whole = at > 0.6;
        CHECK(left.front().kind == (whole ? LeftBehind::Kind::sound : LeftBehind::Kind::broken));
        if (!whole) {
            REQUIRE(deleteLeftBehind(left.front()).has_value());
            CHECK(leftBehind(path).empty());
            CHECK(named(folder, ".part-").empty());
            continue;
        }
        // it can be put in place, or under a name that a person sees
        const std::string kept = ok(restoreBook(path, left.front().path));
        CHECK(contentOf(ok(BenchBook::open(path))) == content);
        CHECK(bytesOf(kept) == before);
        const std::string shown = ok(keepLeftBehind(left.front(), path));
        CHECK(contentOf(ok(BenchBook::open(shown))) == content);
        CHECK(leftBehind(path).empty());
    }
    // one that is under way is nobody's leaving, in this process or another
    std::size_t seen = 0;
    ok(restoreBook(path, copy, [&](double) { return seen += leftBehind(path).size(), true; }));
    CHECK(seen == 0);
    // the same book under the passing name: killed between link and unlink
    fs::create_hard_link(path, folder.file(".shop.hammerline.part-0a1b2c3d"));
    REQUIRE(leftBehind(path).size() == 1);
    CHECK(leftBehind(path).front().kind == LeftBehind::Kind::bookItself);
    // of a copy of this book, of another book, and what only looks alike
    for (const char* name : {".shop.backup-20261125-044512.hammerline.part-0a1b2c3e", ".other.hammerline.part-0a1b2c3d",
                             ".shop.hammerline.part-notes", "shop.hammerline.part-0a1b2c3d"})
        write(folder.file(name), "x");
    CHECK(leftBehind(path).size() == 2);
    CHECK(leftBehind(folder.file("nowhere/shop.hammerline")).empty());
}

TEST_CASE("a book is held while other files of this program on it are closed") {
    // POSIX: a process gives up its record locks on a file when it closes any descriptor of it (fcntl(2)); a lock of
    // the open file description stays
    const Folder folder = Folder::quick();
    const std::string path = folder.file("shop.hammerline");
    Filled filled = filledBook(path);
    const auto writableFromOutside = [&] {
        const pid_t child = ::fork();
        if (child == 0) {
            SQLite::Database db(path, SQLite::OPEN_READWRITE);
            try {
                db.exec("BEGIN IMMEDIATE");
            } catch (const SQLite::Exception&) {
                ::_exit(1);
            }
            ::_exit(0);
        }
        int status = 0;
        REQUIRE(::waitpid(child, &status, 0) == child);
        return WEXITSTATUS(status) == 0;
    };
    CHECK(writableFromOutside());
    {
        const HeldBook held(path, {});
        CHECK_FALSE(writableFromOutside());
        ::close(::open(path.c_str(), O_RDONLY));
        copyFile(path, folder.file("a-copy"));
        CHECK_FALSE(writableFromOutside());
    }
    CHECK(writableFromOutside());
}

TEST_CASE("a book that is gone is noticed, and comes back when its file does") {
    const Folder folder = Folder::quick();
    const std::string path = folder.file("shop.hammerline");
    Filled filled = filledBook(path);
    fs::rename(path, folder.file("elsewhere"));
    CHECK(filled.book.poll() == Change::fileGone);
    const auto refused = filled.book.store(filled.piano, 1, std::vector{mm(1, letOff, 2.2)});
    REQUIRE_FALSE(refused);
    CHECK(refused.error().code == RefusalCode::replacedFile);
    CHECK(refused.error().detail == "gone");
    CHECK(refused.error().offending == path);
    fs::rename(folder.file("elsewhere"), path);
    CHECK(filled.book.poll() == Change::none);
    ok(filled.book.store(filled.piano, 1, std::vector{mm(1, letOff, 2.2)}));
}

TEST_CASE("what can be read of a damaged book is rescued row by row, and the damaged one is left alone") {
    const Folder folder = Folder::quick();
    const std::string path = folder.file("shop.hammerline");
    std::string piano;
    {
        Filled filled = filledBook(path);
        piano = filled.piano;
        std::vector<NewReading> many;
        for (int note = 1; note <= 88; ++note)
            for (const DimensionId each : {keyDip, aftertouch, checking, lostMotion})
                many.push_back(mm(note, each, 1.0 + note * 0.01));
        ok(filled.book.store(piano, 2, many, "import", "all.csv"));
    }
    const std::string sound = bytesOf(path);
    const std::size_t all = readings(ok(BenchBook::open(path)));

    SECTION("nothing is lost of a sound one") {
        std::string into;
        const Rescued rescued = ok(rescueBook(path, into));
        CHECK(rescued.lost == 0);
        CHECK(fs::path(into).filename().string().starts_with("shop.rescued-"));
        CHECK(contentOf(ok(BenchBook::open(into))) == contentOf(ok(BenchBook::open(path))));
        CHECK(ok(BenchBook::open(path)).merge(into)->acts == 0); // the same acts under the same names
    }
    SECTION("a page of readings is overwritten: the rest is there") {
        const auto pages = pagesWith(sound, "1.40"); // of note 40
        REQUIRE_FALSE(pages.empty());
        std::string bytes = sound;
        std::fill_n(bytes.begin() + static_cast<std::ptrdiff_t>(pages.back() * kPage), kPage, '\xaa');
        write(path, bytes);
        CHECK(code(BenchBook::open(path)) == RefusalCode::damagedBook);
        std::string into = folder.file("rescued.hammerline");
        const Rescued rescued = ok(rescueBook(path, into));
        CHECK(rescued.lost > 0);
        CHECK(bytesOf(path) == bytes);
        const BenchBook book = ok(BenchBook::open(into));
        CHECK(ok(book.verify()).sound);
        CHECK(readings(book) >= all - 250); // a page holds some 200 short rows
        CHECK(readings(book) < all);
        CHECK(ok(book.load(piano)).done.size() == 1);
    }
    SECTION("the first hundred bytes are overwritten: nothing is lost") {
        std::string bytes = sound;
        std::fill_n(bytes.begin(), 100, '\0');
        write(path, bytes);
        CHECK(code(BenchBook::open(path)) == RefusalCode::notABook);
        std::string into;
        CHECK(ok(rescueBook(path, into)).lost == 0);
        CHECK(readings(ok(BenchBook::open(into))) == all);
    }
    SECTION("the log of acts is overwritten: the readings stand all the same") {
        const auto pages = pagesWith(sound, "as_found.csv");
        REQUIRE(pages.size() == 1);
        std::string bytes = sound;
        std::fill_n(bytes.begin() + static_cast<std::ptrdiff_t>(pages[0] * kPage), kPage, '\0');
        write(path, bytes);
        std::string into;
        const Rescued rescued = ok(rescueBook(path, into));
        CHECK(rescued.lost > 0);
        const BenchBook book = ok(BenchBook::open(into));
        CHECK(ok(book.verify()).sound);
        CHECK(readings(book) >= all);
    }
    SECTION("the end is cut off") {
        write(path, sound.substr(0, sound.size() / 2));
        std::string into;
        const auto rescued = rescueBook(path, into);
        if (rescued)
            CHECK(ok(ok(BenchBook::open(into)).verify()).sound);
        else
            CHECK(rescued.error().code == RefusalCode::damagedBook);
    }
    SECTION("any one page is overwritten: something is rescued, and it is sound") {
        for (std::size_t page = 0; page < sound.size() / kPage; page += 3) {
            INFO("page " << page + 1);
            std::string bytes = sound;
            std::fill_n(bytes.begin() + static_cast<std::ptrdiff_t>(page * kPage), kPage, '\x55');
            write(path, bytes);
            std::string into = folder.file("page-" + std::to_string(page));
            const auto rescued = rescueBook(path, into);
            if (!rescued) FAIL(key(rescued.error().code) << ' ' << rescued.error().detail);
            CHECK(rescued->rows > 140); // of some 270: the fullest page, which is among these, holds 118 readings
            CHECK(ok(ok(BenchBook::open(into)).verify()).sound);
        }
    }
    SECTION("what never was a book is not made one") {
        const std::string text = folder.file("text");
        write(text, std::string(20'000, 'x'));
        std::string into = folder.file("into");
        CHECK(code(rescueBook(text, into)) == RefusalCode::notABook);
        CHECK(code(rescueBook(folder.file("nowhere"), into)) == RefusalCode::cannotRead);
        SQLite::Database(folder.file("foreign"), SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE)
            .exec("CREATE TABLE t (a)");
        CHECK(code(rescueBook(folder.file("foreign"), into)) == RefusalCode::notABook);
        CHECK_FALSE(fs::exists(into));
    }
    CHECK(named(folder, ".part-").empty());
}

TEST_CASE("two processes on one book at once: no reading is lost, and each sees the other's") {
    const Folder folder = Folder::quick();
    const std::string path = folder.file("shop.hammerline");
    std::string piano;
    {
        BenchBook book = ok(BenchBook::create(path));
        piano = ok(book.addPiano(upright(), "upright"));
        ok(book.addPass(piano, {}));
    }
    constexpr int kEach = 40;
    const auto enter = [&](BenchBook& book, int from) {
        for (int i = 0; i < kEach; ++i)
            for (;;) {
                const auto stored = book.store(piano, 1, std::vector{mm(from + i, letOff, 2.0 + i * 0.01)});
                if (stored) break;
                if (stored.error().code != RefusalCode::lockedBook) return false;
            }
        return true;
    };
    const pid_t child = fork();
    if (child == 0) {
        auto book = BenchBook::open(path);
        _exit(book && enter(*book, 45) ? 0 : 1);
    }
    REQUIRE(child > 0);
    bool all = false;
    bool seen = false;
    {
        BenchBook book = ok(BenchBook::open(path));
        all = enter(book, 1);
        int status = 1;
        CHECK(waitpid(child, &status, 0) == child);
        CHECK(WIFEXITED(status));
        CHECK(WEXITSTATUS(status) == 0);
        seen = book.poll() == Change::dataChanged;
        CHECK(readings(book) == 2 * kEach);
        CHECK(ok(book.verify()).sound);
    }
    CHECK(all);
    CHECK(seen);
}

TEST_CASE("a book in use by another program is said to be in use, and is as it was") {
    const Folder folder = Folder::quick();
    const std::string path = folder.file("shop.hammerline");
    Filled filled = filledBook(path);
    SQLite::Database other(path, SQLite::OPEN_READWRITE);
    other.exec("BEGIN EXCLUSIVE");
    const auto stored = filled.book.store(filled.piano, 1, std::vector{mm(1, letOff, 2.2)});
    REQUIRE_FALSE(stored);
    CHECK(stored.error().code == RefusalCode::lockedBook);
    CHECK(stored.error().offending == path);
    CHECK(filled.book.poll() == Change::none); // busy means nothing
    other.exec("ROLLBACK");
    ok(filled.book.store(filled.piano, 1, std::vector{mm(1, letOff, 2.2)}));
}

TEST_CASE("restoring waits for who is in the middle of a change, and takes nothing away from under them") {
    const Folder folder = Folder::quick();
    const std::string name = folder.file("shop.hammerline"), copy = folder.file("copy.hammerline");
    ok(filledBook(name).book.backUp(copy));
    int begun[2], end[2];
    REQUIRE(pipe(begun) == 0);
    REQUIRE(pipe(end) == 0);
    const pid_t writer = fork();
    if (writer == 0) {
        SQLite::Database db(name, SQLite::OPEN_READWRITE);
        db.exec("BEGIN IMMEDIATE; UPDATE reading SET typed = typed || ' '");
        char byte = 'b';
        (void)!::write(begun[1], &byte, 1);
        (void)!::read(end[0], &byte, 1);
        _exit(0);
    }
    char byte = 0;
    REQUIRE(::read(begun[0], &byte, 1) == 1);
    int waited = 0;
    const auto restored = restoreBook(name, copy, [&](double share) { return share < 1 || ++waited < 4; });
    REQUIRE_FALSE(restored);
    CHECK(restored.error().code == RefusalCode::cancelled);
    CHECK(named(folder, "replaced").empty());
    CHECK(fs::exists(name + "-journal"));
    CHECK(::write(end[1], &byte, 1) == 1);
    CHECK(waitpid(writer, nullptr, 0) == writer);
    CHECK(ok(ok(BenchBook::open(name)).verify()).sound);
    CHECK_FALSE(ok(restoreBook(name, copy)).empty());
}

TEST_CASE("copies can be read by whom the book can be read by, and by nobody else") {
    const Folder folder = Folder::quick();
    const std::string name = folder.file("shop.hammerline"), given = folder.file("given.hammerline");
    Filled filled = filledBook(name);
    ok(filled.book.backUp(given));
    fs::permissions(name, fs::perms(0600));
    fs::permissions(given, fs::perms(0644));
    const auto rights = [](const std::string& path) { return fs::status(path).permissions(); };
    CHECK(rights(ok(filled.book.backUp({}))) == fs::perms(0600));
    const std::string kept = ok(restoreBook(name, given));
    CHECK(rights(name) == fs::perms(0600));
    CHECK(rights(kept) == fs::perms(0600));
    std::string rescued;
    ok(rescueBook(name, rescued));
    CHECK(rights(rescued) == fs::perms(0600));
    const std::string list = folder.file("list.csv");
    ok(writeDocument(list, "older").map([] { return true; }));
    fs::permissions(list, fs::perms(0600));
    ok(writeDocument(list, "newer").map([] { return true; }));
    CHECK(rights(list) == fs::perms(0600));
}

TEST_CASE("a book whose header says another size of pages is rescued whole") {
    const Folder folder = Folder::quick();
    const std::string name = folder.file("shop.hammerline");
    { filledBook(name); }
    const std::size_t there = readings(ok(BenchBook::open(name)));
    std::ifstream in(name, std::ios::binary);
    std::string bytes{std::istreambuf_iterator<char>(in), {}};
    for (const int said : {512, 2048, 8192, 32768}) {
        bytes[16] = static_cast<char>(said >> 8);
        write(name, bytes);
        std::string into = folder.file("rescued" + std::to_string(said) + ".hammerline");
        const Rescued rescued = ok(rescueBook(name, into));
        CHECK(rescued.unproven == 0);
        CHECK(readings(ok(BenchBook::open(into))) == there);
    }
}
