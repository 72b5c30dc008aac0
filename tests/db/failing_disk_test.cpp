// Every write that a book can make is failed once and for good: a refusal, nothing half-done, the book as before.
#include "db/importing.h"
#include "db/opening.h"
#include "tests/db/bench.h"
#include "tests/db/failing_disk.h"

#include <sqlite3.h>

#include <functional>
#include <set>

using namespace hammerline;
using namespace hammerline::bench;
using namespace hammerline::dimension;

namespace fs = std::filesystem;

namespace {

const std::set<RefusalCode> kOfTheDisk = {RefusalCode::diskFull, RefusalCode::cannotWrite, RefusalCode::cannotRead};

/// Does a piece of work with its n-th write failing, for every n up to the one with which it gets through. `work` opens
/// what it needs, gives its refusal, and leaves files only where it succeeds.
void failEveryWrite(const std::function<void(const std::string& path)>& prepare,
                    const std::function<Outcome<void>(const std::string& path)>& work) {
    const Folder home = Folder::quick();
    const std::string pristine = home.file("pristine.hammerline");
    prepare(pristine);
    const std::string before = contentOf(ok(BenchBook::open(pristine, OpenMode::readOnly)));
    const std::string bytes = bytesOf(pristine);
    int failed = 0;
    for (int n = 1;; ++n) {
        bool through = true;
        for (const DiskFault fault : {DiskFault{n, SQLITE_FULL, true}, DiskFault{n, SQLITE_IOERR_WRITE, false}}) {
            if (n > 30 && fault.onward == (n % 2 == 0)) continue; // page after page: one kind each
            INFO("write " << n << (fault.onward ? " and all after it" : ""));
            const Folder folder = Folder::quick();
            const std::string path = folder.file("shop.hammerline");
            fs::copy_file(pristine, path);
            std::optional<Outcome<void>> done;
            bool struck = false;
            {
                const FailingDisk disk;
                FailingDisk::set(fault);
                done = work(path);
                struck = FailingDisk::struck();
            }
            if (*done) {
                // a write that does not matter may fail unseen, but what was said to be done is done
                CHECK(ok(ok(BenchBook::open(path)).verify()).sound);
                through = through && !struck;
                continue;
            }
            through = false;
            ++failed;
            REQUIRE(struck);
            CHECK(kOfTheDisk.contains(done->error().code));
            CHECK_FALSE(done->error().offending.empty());
            {
                BenchBook book = ok(BenchBook::open(path)); // rolls back what was left
                CHECK(contentOf(book) == before);
                CHECK(ok(book.verify()).sound);
            }
            // a journal that never came to hold anything lies there until the next write
            auto names = folder.names();
            std::erase(names, "shop.hammerline-journal");
            CHECK(names == std::vector<std::string>{"shop.hammerline"});
            const Outcome<void> again = work(path); // the disk is well again: so is the work
            if (!again) FAIL("refused again: " << key(again.error().code) << ' ' << again.error().detail);
            CHECK_FALSE(fs::exists(path + "-journal"));
        }
        if (through) break;
        REQUIRE(n < 2000);
    }
    CHECK(failed > 2);
    CHECK(bytesOf(pristine) == bytes);
}

void fill(const std::string& path) {
    (void)filledBook(path);
}

template <class T>
Outcome<void> told(const Outcome<T>& outcome) {
    if (!outcome) return tl::unexpected(outcome.error());
    return {};
}

/// Opens the book and writes; a book that stays open after a refusal says what it said before.
Outcome<void> onBook(const std::string& path, const std::function<Outcome<void>(BenchBook&)>& write) {
    auto book = BenchBook::open(path, OpenMode::readWrite, writer(1'795'600'000'000'000));
    if (!book) return tl::unexpected(book.error());
    return write(*book);
}

} // namespace

TEST_CASE("a full or failing disk under an entry: one refusal, and the reading before still stands") {
    failEveryWrite(fill, [](const std::string& path) {
        return onBook(path, [](BenchBook& book) {
            const auto before = contentOf(book);
            const std::string piano = ok(book.findPiano(""));
            const auto stored = book.store(piano, 1, std::vector{mm(33, letOff, 2.2)});
            FailingDisk::heal();
            if (!stored) CHECK(contentOf(book) == before);
            return told(stored);
        });
    });
}

TEST_CASE("a full or failing disk under an import of a whole pass: all of it or nothing") {
    failEveryWrite(fill, [](const std::string& path) {
        return onBook(path, [](BenchBook& book) {
            std::vector<NewReading> readings;
            for (int note = 1; note <= 88; ++note)
                for (const DimensionId each : {letOff, blow, keyDip, aftertouch})
                    readings.push_back(mm(note, each, 3.0 + note * 0.01));
            return told(book.store(ok(book.findPiano("")), 2, readings, "import", "all.csv"));
        });
    });
}

TEST_CASE("a full or failing disk under a survey: findings, symptom and setting together or not at all") {
    failEveryWrite(fill, [](const std::string& path) {
        return onBook(path, [](BenchBook& book) {
            Finding loose;
            loose.note = NoteNumber{44};
            loose.part = "butt-plate";
            loose.fault = "split-at-the-hole";
            return told(
                book.addSurvey(ok(book.findPiano("")), {{loose}, {{"buzz", {40, 50}, 0}}, {{"spare-percent", "10"}}}));
        });
    });
}

TEST_CASE("a full or failing disk under the first reading of a pass: pass and reading together or not at all") {
    failEveryWrite(fill, [](const std::string& path) {
        return onBook(path, [](BenchBook& book) {
            const std::string piano = ok(book.findPiano(""));
            const auto first = [](Importing& into) -> Outcome<void> {
                const auto pass = into.addPass({});
                if (!pass) return tl::unexpected(pass.error());
                return into.put(*pass, mm(33, letOff, 2.2));
            };
            return told(book.importInto(piano, {}, first, "entry"));
        });
    });
}

TEST_CASE("a full or failing disk under undo") {
    failEveryWrite(
        fill, [](const std::string& path) { return onBook(path, [](BenchBook& book) { return told(book.undo()); }); });
}

TEST_CASE("a full or failing disk under a backup: no half copy, and the copies before stay") {
    failEveryWrite(fill, [](const std::string& path) {
        return onBook(path, [](BenchBook& book) { return told(book.backUp()); });
    });
}

TEST_CASE("a full or failing disk under a new book: none, or a whole one") {
    int failed = 0;
    for (int n = 1;; ++n) {
        const Folder folder = Folder::quick();
        const std::string path = folder.file("new.hammerline");
        bool made = false;
        {
            const FailingDisk disk;
            FailingDisk::set({n, SQLITE_FULL, true});
            const auto book = BenchBook::create(path);
            made = book.has_value();
            if (!made) CHECK(kOfTheDisk.contains(book.error().code));
            if (made && !FailingDisk::struck()) n = 0;
        }
        if (made) CHECK(ok(ok(BenchBook::open(path)).verify()).sound);
        CHECK(folder.names().size() == (made ? 1u : 0u));
        if (n == 0) break;
        ++failed;
        REQUIRE(n < 2000);
    }
    CHECK(failed > 10);
}

TEST_CASE("a full or failing disk under a merge: the book as before, and no copy of it left over") {
    const Folder folder = Folder::quick();
    const std::string other = folder.file("other");
    failEveryWrite(
        [&](const std::string& path) {
            fill(path);
            fs::copy_file(path, other);
            BenchBook apart = ok(BenchBook::open(other, OpenMode::readWrite, writer(1'795'597'000'000'000)));
            ok(apart.store(ok(apart.findPiano("")), 2, std::vector{mm(40, letOff, 2.9), mm(41, blow, 44)}));
            ok(apart.addPiano(upright("Another"), "upright"));
        },
        [&](const std::string& path) {
            return onBook(path, [&](BenchBook& book) { return told(book.merge(other)); });
        });
}

TEST_CASE("a full or failing disk under a restore: the book stays in its place") {
    const Folder folder = Folder::quick();
    const std::string from = folder.file("from.hammerline");
    (void)filledBook(from);
    failEveryWrite(fill, [&](const std::string& path) { return told(restoreBook(path, from)); });
}

TEST_CASE("a full or failing disk under an import of whole pianos: all of them or none") {
    const Folder folder = Folder::quick();
    Filled filled = filledBook(folder.file("from.hammerline"));
    PianoRecord record = ok(filled.book.load(filled.piano));
    record.uuid.clear();
    record.piano.name = "From the shop";
    const std::vector<BenchBook::Incoming> incoming{{record, {}}};
    failEveryWrite(fill, [&](const std::string& path) {
        return onBook(path, [&](BenchBook& book) { return told(book.importRecords(incoming, "shop.json")); });
    });
}

TEST_CASE("a full or failing disk under a rescue: no new book, and what is said names it") {
    const Folder folder = Folder::quick();
    const std::string damaged = folder.file("shop.hammerline");
    (void)filledBook(damaged);
    std::fstream(damaged, std::ios::binary | std::ios::in | std::ios::out)
        .seekp(30 * 4096)
        .write(std::string(4096, '\x55').data(), 4096);
    const std::string before = bytesOf(damaged);
    int failed = 0;
    for (int n = 1;; n += n < 30 ? 1 : 7) { // then page after page
        std::string into = folder.file("rescued.hammerline");
        std::optional<Outcome<Rescued>> done;
        bool struck = false;
        {
            const FailingDisk disk;
            FailingDisk::set({n, SQLITE_FULL, true});
            done = rescueBook(damaged, into);
            struck = FailingDisk::struck();
        }
        CHECK(bytesOf(damaged) == before);
        if (!struck) break;
        INFO("write " << n);
        if (*done) {
            CHECK(ok(ok(BenchBook::open(into)).verify()).sound);
            fs::remove(into);
        } else {
            ++failed;
            INFO(key(done->error().code) << ' ' << done->error().detail);
            CHECK(kOfTheDisk.contains(done->error().code));
            CHECK(done->error().offending == into);
        }
        CHECK(folder.names() == std::vector<std::string>{"shop.hammerline"});
        REQUIRE(n < 2000);
    }
    CHECK(failed > 2);
}

TEST_CASE("a full or failing disk under a schema step: version, rows and file as before") {
    const std::vector<SchemaStep> steps = {{kSchemaVersion, "now", ""},
                                           {kSchemaVersion + 1, "next",
                                            "CREATE TABLE aside (id INTEGER PRIMARY KEY, text TEXT NOT NULL) STRICT;"
                                            "INSERT INTO aside (text) SELECT typed FROM reading;"}};
    const Folder home = Folder::quick();
    const std::string pristine = home.file("pristine.hammerline");
    fill(pristine);
    const std::string before = contentOf(ok(BenchBook::open(pristine, OpenMode::readOnly)));
    for (int n = 1;; ++n) {
        const Folder folder = Folder::quick();
        const std::string path = folder.file("shop.hammerline");
        fs::copy_file(pristine, path);
        bool through = false;
        {
            const FailingDisk disk;
            FailingDisk::set({n, n % 2 == 0 ? SQLITE_FULL : SQLITE_IOERR_WRITE, n % 3 == 0});
            const auto migrated =
                guarded(path, Doing::writing, [&] { return migrateBook(path, kSchemaVersion, steps, 0, Headway()); });
            through = migrated.has_value();
            if (!through) CHECK(kOfTheDisk.contains(migrated.error().code));
            if (through && FailingDisk::struck()) continue;
        }
        if (through) break;
        // a program that knows the step rolls back what was left of it: still of the version before
        SQLite::Database(path, SQLite::OPEN_READWRITE).execAndGet("SELECT count(*) FROM act");
        CHECK(contentOf(ok(BenchBook::open(path))) == before);
        REQUIRE(n < 2000);
    }
}
