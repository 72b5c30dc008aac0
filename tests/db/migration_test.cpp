// Schema steps: frozen once they were on main, each whole or not at all, after a verified dated copy.
#include "db/opening.h"
#include "db/rescue.h"
#include "db/verification.h"
#include "tests/db/bench.h"
#include "tests/db/failing_disk.h"

#include <sqlite3.h>

#include <cstdlib>

using namespace hammerline;
using namespace hammerline::bench;
using namespace hammerline::dimension;

namespace fs = std::filesystem;

namespace {

/// FNV-1a, 64 bits (draft-eastlake-fnv, section 2): enough to notice an edit.
std::uint64_t hashOf(const std::string& text) {
    std::uint64_t hash = 14695981039346656037u;
    for (const char c : text)
        hash = (hash ^ static_cast<unsigned char>(c)) * 1099511628211u;
    return hash;
}

/// Every row of every table, one a line, by primary key.
std::string rowsOf(const std::string& path) {
    SQLite::Database db(path, SQLite::OPEN_READONLY);
    std::ostringstream out;
    std::vector<std::string> tables;
    SQLite::Statement names(db, "SELECT name FROM sqlite_schema WHERE type = 'table' ORDER BY name");
    while (names.executeStep())
        tables.push_back(names.getColumn(0).getString());
    for (const std::string& table : tables) {
        std::string columns;
        SQLite::Statement shape(db, "SELECT name FROM pragma_table_info('" + table + "')");
        while (shape.executeStep())
            columns += (columns.empty() ? "quote(" : " || ',' || quote(") + shape.getColumn(0).getString() + ")";
        SQLite::Statement rows(db, "SELECT " + columns + " FROM " + table + " ORDER BY 1");
        while (rows.executeStep())
            out << table << ' ' << rows.getColumn(0).getString() << '\n';
    }
    return out.str();
}

/// As they were before schema 3 gave every act a digest and the book a seal.
std::string withoutDigests(const std::string& rows) {
    std::istringstream in(rows);
    std::string out;
    for (std::string line; std::getline(in, line);) {
        if (line.starts_with("seal ")) continue;
        if (line.starts_with("act ")) line.resize(line.rfind(','));
        out += line + '\n';
    }
    return out;
}

std::int64_t versionOf(const std::string& path) {
    SQLite::Database db(path, SQLite::OPEN_READONLY);
    return db.execAndGet("PRAGMA user_version").getInt64();
}

void execute(const std::string& path, const std::string& sql) {
    SQLite::Database db(path, SQLite::OPEN_READWRITE);
    db.exec(sql);
}

/// Steps that only these tests know: the next versions as they might come.
constexpr int kNext = kSchemaVersion + 1, kAfterNext = kSchemaVersion + 2;
const SchemaStep kNow{kSchemaVersion, "now.sql", ""};
const SchemaStep kMaker{kNext, "maker.sql", "ALTER TABLE piano ADD COLUMN maker TEXT NOT NULL DEFAULT ''"};
/// A parent table rebuilt, as SQLite's documentation lays down (sqlite.org/lang_altertable.html, section 7).
const SchemaStep kRebuilt{
    kAfterNext, "rebuilt.sql",
    "CREATE TABLE piano_new (id INTEGER PRIMARY KEY, uuid BLOB NOT NULL UNIQUE, act_id INTEGER NOT "
    "NULL REFERENCES act) STRICT; INSERT INTO piano_new SELECT id, uuid, act_id FROM piano; DROP "
    "TABLE piano; ALTER TABLE piano_new RENAME TO piano;"};

Outcome<std::string> migrate(const std::string& path, int version, const std::vector<SchemaStep>& steps) {
    return guarded(path, Doing::writing,
                   [&] { return migrateBook(path, version, steps, 1'795'593'600'000'000, Headway()); });
}

/// The copy that is kept of the book as it was.
std::string keptName() {
    return "shop.schema-" + std::to_string(kSchemaVersion) + "-20261125-080000.hammerline";
}

std::string kept(const std::string& name) {
    return std::string(HAMMERLINE_SOURCE_DIR) + "/tests/reference/books/" + name;
}

} // namespace

TEST_CASE("a step that was on main is never edited: its text is frozen") {
    const std::vector<std::pair<std::string, std::uint64_t>> frozen = {
        {"001_bench_book.sql", 0xcd2c7133363e176d},  {"002_line_and_bench.sql", 0x90eab7a2ba319b91},
        {"003_act_digests.sql", 0x330fd8a37975edfd}, {"004_whose_piano.sql", 0x55bc415b534fa3d2},
        {"005_work_marks.sql", 0xc583f77fc86eb86a},
    };
    REQUIRE(schemaSteps().size() == frozen.size());
    for (std::size_t i = 0; i < frozen.size(); ++i) {
        CHECK(schemaSteps()[i].version == static_cast<int>(i) + 1);
        CHECK(schemaSteps()[i].name == frozen[i].first);
        CHECK(hashOf(schemaSteps()[i].sql) == frozen[i].second);
    }
    CHECK(schemaSteps().back().version == kSchemaVersion);
}

// Run with HAMMERLINE_KEEP_BOOK=FILE to make the filled book of a schema before the next one comes (DEVELOPERS.md).
TEST_CASE("the filled book of this schema is written where it is asked for", "[.keep]") {
    const char* path = std::getenv("HAMMERLINE_KEEP_BOOK");
    REQUIRE(path != nullptr);
    {
        Filled filled = filledBook(path);
        ok(filled.book.setIdentity(filled.piano, {{"maker", "Invented"}, {"room", "parlour"}}));
        Remark remark;
        remark.about = {1, NoteNumber{20}, "bridle-strap", "rotted"};
        remark.text = "smells of moth";
        remark.on = "2026-11-25";
        ok(filled.book.addRemarks(filled.piano, std::vector{remark}));
    }
    std::ofstream(std::string(path) + ".rows") << rowsOf(path);
}

TEST_CASE("the kept book of schema 1 opens, and every row is there") {
    const Folder folder;
    const std::string path = folder.file("schema_1.hammerline");
    fs::copy_file(kept("schema_1.hammerline"), path);
    {
        BenchBook book = ok(BenchBook::open(path, OpenMode::readWrite, writer()));
        CHECK(ok(book.verify()).sound);
        const std::string piano = ok(book.findPiano("Parlour upright"));
        const PianoRecord record = ok(book.load(piano));
        REQUIRE(record.passes.size() == 2);
        CHECK(record.passes[0].value(cell(88, blow)) == 45'760'000);
        CHECK(record.passes[0].cells.at(cell(12, strap)).word() == word::torn);
        CHECK(record.done.size() == 1);
        CHECK(record.plans.size() == 1);
        CHECK(record.findings.size() == 1);
        CHECK(record.overrides.size() == 1);
    }
    // schema 2 gave every pass a straight line, read in the piano
    std::istringstream before(bytesOf(kept("schema_1.hammerline.rows")));
    std::string expected;
    for (std::string line; std::getline(before, line);)
        expected += line + (line.starts_with("pass_version ") ? ",'',0" : "") + '\n';
    CHECK(withoutDigests(rowsOf(path)) == expected);
    CHECK(versionOf(path) == kSchemaVersion);
}

TEST_CASE("an older book that is only read stays as it is, and nothing comes to lie beside it") {
    const Folder folder, mine;
    const std::string older = folder.file("schema_1.hammerline"), book = mine.file("shop.hammerline");
    fs::copy_file(kept("schema_1.hammerline"), older);
    const std::string bytes = bytesOf(older);
    const auto untouched = [&] {
        CHECK(bytesOf(older) == bytes);
        CHECK(folder.names() == std::vector<std::string>{"schema_1.hammerline"});
    };
    const std::string all = contentOf(ok(BenchBook::open(older, OpenMode::readOnly)));
    untouched();
    {
        const BenchBook read = ok(BenchBook::open(older, OpenMode::readOnly));
        CHECK(read.readOnly());
        CHECK(ok(read.verify()).sound);
        CHECK(ok(read.load(ok(read.findPiano("Parlour upright")))).passes.size() == 2);
        CHECK(contentOf(ok(BenchBook::open(ok(read.backUp(mine.file("copy.hammerline")))))) == all);
    }
    untouched();
    const Merged merged = [&] {
        BenchBook into = ok(BenchBook::create(book, writer()));
        return ok(into.merge(older));
    }();
    CHECK(merged.readings > 0);
    untouched();
    // what was older and is restored is of now
    CHECK_FALSE(ok(restoreBook(book, older)).empty());
    CHECK(contentOf(ok(BenchBook::open(book))) == all);
    CHECK(versionOf(book) == kSchemaVersion);
    untouched();
    // and it is the same that writing makes of it
    CHECK(contentOf(ok(BenchBook::open(older))) == all);
    CHECK(bytesOf(older) != bytes);
}

TEST_CASE("the kept book of schema 2 opens, and every row is there") {
    const Folder folder;
    const std::string path = folder.file("schema_2.hammerline");
    fs::copy_file(kept("schema_2.hammerline"), path);
    {
        BenchBook book = ok(BenchBook::open(path, OpenMode::readWrite, writer()));
        CHECK(ok(book.verify()).sound);
        const PianoRecord record = ok(book.load(ok(book.findPiano("Parlour upright"))));
        REQUIRE(record.passes.size() == 2);
        CHECK(record.passes[0].lineSag.empty());
        CHECK_FALSE(record.passes[0].onBench);
        CHECK(record.passes[1].lineSag == "steel 0.5 mm 10 N");
        CHECK(record.passes[1].onBench);
    }
    CHECK(withoutDigests(rowsOf(path)) == bytesOf(kept("schema_2.hammerline.rows")));
}

TEST_CASE("the kept book of schema 3 opens, and every row is there") {
    const Folder folder;
    const std::string path = folder.file("schema_3.hammerline");
    fs::copy_file(kept("schema_3.hammerline"), path);
    {
        BenchBook book = ok(BenchBook::open(path, OpenMode::readWrite, writer()));
        CHECK(ok(book.verify()).sound);
        const PianoRecord record = ok(book.load(ok(book.findPiano("Parlour upright"))));
        CHECK(record.passes.size() == 2);
        CHECK(record.identity.empty());
        CHECK(record.remarks.empty());
        ok(book.setIdentity(record.uuid, {{"owner", "Anna"}})); // and it is written in as one of now
        ok(book.undo());
        CHECK(ok(book.verify()).sound);
    }
    const Folder other;
    const std::string untouched = other.file("schema_3.hammerline");
    fs::copy_file(kept("schema_3.hammerline"), untouched);
    (void)ok(BenchBook::open(untouched, OpenMode::readWrite, writer()));
    CHECK(rowsOf(untouched) == bytesOf(kept("schema_3.hammerline.rows")));
}

TEST_CASE("what can be read of a damaged book of schema 1 is rescued into one of now") {
    const Folder folder;
    const std::string path = folder.file("old.hammerline");
    fs::copy_file(kept("schema_1.hammerline"), path);
    std::string into = folder.file("rescued.hammerline");
    const auto rescued = rescueBook(path, into);
    REQUIRE(rescued.has_value());
    CHECK(rescued->lost == 0);
    const BenchBook book = ok(BenchBook::open(into));
    const PianoRecord record = ok(book.load(ok(book.findPiano("Parlour upright"))));
    REQUIRE(record.passes.size() == 2);
    CHECK(record.passes[1].stackIn);
    CHECK(record.passes[1].lineSag.empty());
    CHECK_FALSE(record.passes[1].onBench);
}

TEST_CASE("an older book is brought up to date after a verified copy named by version and date") {
    const Folder folder;
    const std::string path = folder.file("shop.hammerline");
    (void)filledBook(path);
    const std::string rows = rowsOf(path);
    const std::string copy = ok(migrate(path, kSchemaVersion, {kNow, kMaker}));
    CHECK(fs::path(copy).filename() == keptName());
    CHECK(versionOf(path) == kNext);
    CHECK(rowsOf(copy) == rows);
    CHECK(ok(ok(BenchBook::open(copy, OpenMode::readOnly)).verify()).sound);
    CHECK(rowsOf(path) != rows);
    // the same again, as another window that waited for the lock would: nothing to do twice
    CHECK(migrate(path, kNext, {kNow, kMaker}) == Outcome<std::string>(std::string()));
    CHECK(folder.names().size() == 2);
}

TEST_CASE("a parent table rebuilt by a step keeps its children") {
    const Folder folder;
    const std::string path = folder.file("shop.hammerline");
    (void)filledBook(path);
    const std::string rows = rowsOf(path);
    ok(migrate(path, kSchemaVersion, {kNow, {kNext, "next", ""}, kRebuilt}));
    CHECK(versionOf(path) == kAfterNext);
    CHECK(rowsOf(path) == rows);
}

TEST_CASE("a step that fails leaves version, rows and file as they were, and no copy") {
    const std::vector<SchemaStep> bad = {
        {kNext, "no such table", "CREATE TABLE aside (id INTEGER PRIMARY KEY) STRICT; INSERT INTO nowhere VALUES (1)"},
        {kNext, "a rule broken", "UPDATE reading SET note = 500"},
        {kNext, "orphans", "DELETE FROM pass"},
        {kNext, "no SQL", "turn the let-off screws"},
    };
    for (const SchemaStep& step : bad) {
        INFO(step.name);
        const Folder folder;
        const std::string path = folder.file("shop.hammerline");
        (void)filledBook(path);
        const std::string bytes = bytesOf(path);
        const auto refused = migrate(path, kSchemaVersion, {kNow, step});
        CHECK_FALSE(refused);
        CHECK(bytesOf(path) == bytes);
        CHECK(versionOf(path) == kSchemaVersion);
        CHECK(folder.names() == std::vector<std::string>{"shop.hammerline"});
    }
    // the second of two: neither holds
    const Folder folder;
    const std::string path = folder.file("shop.hammerline");
    (void)filledBook(path);
    const std::string rows = rowsOf(path);
    CHECK_FALSE(migrate(path, kSchemaVersion, {kNow, kMaker, {kAfterNext, "bad", "INSERT INTO nowhere VALUES (1)"}}));
    CHECK(versionOf(path) == kSchemaVersion);
    CHECK(rowsOf(path) == rows);
    CHECK(folder.names() == std::vector<std::string>{"shop.hammerline"});
}

TEST_CASE("a step that was broken off by a power cut is rolled back before the version is believed") {
    const Folder home = Folder::quick();
    const std::string pristine = home.file("pristine.hammerline");
    (void)filledBook(pristine);
    execute(pristine, "PRAGMA user_version = " + std::to_string(kNext)); // a newer book
    int broken = 0;
    for (int n = 1; n < 40; ++n) {
        const Folder folder = Folder::quick();
        const std::string path = folder.file("shop.hammerline");
        fs::copy_file(pristine, path);
        {
            const FailingDisk disk;
            SQLite::Database cut(path, SQLite::OPEN_READWRITE, 0, fileSystem());
            cut.exec("BEGIN IMMEDIATE; PRAGMA user_version = " + std::to_string(kSchemaVersion) +
                     "; UPDATE reading SET reason = 'cut'");
            FailingDisk::set({n, SQLITE_IOERR_WRITE, true}); // from there on nothing reaches the disk
            if (cut.tryExec("COMMIT") == SQLITE_OK) break;
        }
        // the page with the version is on the disk, the transaction is not whole: its journal undoes it
        if (bytesOf(path)[63] != static_cast<char>(kSchemaVersion)) continue;
        REQUIRE(fs::exists(path + "-journal"));
        ++broken;
        CHECK(ok(BenchBook::open(path)).newer());
    }
    CHECK(broken > 0);
}

TEST_CASE("a newer book opens for reading only, as long as this program may read it") {
    const Folder folder;
    const std::string path = folder.file("shop.hammerline");
    const std::string piano = filledBook(path).piano;
    execute(path, "ALTER TABLE piano ADD COLUMN maker TEXT; PRAGMA user_version = " + std::to_string(kNext));
    const std::string bytes = bytesOf(path);
    {
        BenchBook book = ok(BenchBook::open(path));
        CHECK(book.newer());
        CHECK(book.readOnly());
        CHECK(ok(book.load(piano)).passes.size() == 2);
        CHECK(code(book.store(piano, 1, std::vector{mm(1, letOff, 3.0)})) == RefusalCode::newerBook);
        CHECK(code(book.undo()) == RefusalCode::newerBook);
    }
    CHECK(bytesOf(path) == bytes);
    execute(path, "UPDATE book SET oldest_reader = " + std::to_string(kNext));
    CHECK(code(BenchBook::open(path)) == RefusalCode::newerBook);
    execute(path,
            "UPDATE book SET oldest_reader = 1; CREATE TRIGGER t AFTER INSERT ON act BEGIN DELETE FROM reading; END");
    CHECK(code(BenchBook::open(path)) == RefusalCode::notABook);
}
