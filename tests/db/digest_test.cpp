// Digests of acts: that they are what they are called, and that no edit of what a book says goes unseen.
#include "db/digest.h"
#include "tests/db/bench.h"

#include <SQLiteCpp/SQLiteCpp.h>

#include <cstdlib>
#include <random>
#include <set>

using namespace hammerline;
using namespace hammerline::bench;
using namespace hammerline::dimension;

namespace fs = std::filesystem;

namespace {

std::string hexOf(const Digest& digest) {
    std::string out;
    for (const unsigned byte : digest)
        for (const unsigned half : {byte >> 4U, byte & 15U})
            out += "0123456789abcdef"[half];
    return out;
}

void edit(const std::string& path, const std::string& sql) {
    SQLite::Database db(path, SQLite::OPEN_READWRITE);
    db.exec("PRAGMA foreign_keys=OFF");
    db.exec("PRAGMA ignore_check_constraints=ON");
    db.exec(sql);
}

/// Every table and column of the book, from its own schema.
std::vector<std::pair<std::string, std::string>> columnsOf(const std::string& path) {
    SQLite::Database db(path, SQLite::OPEN_READONLY);
    SQLite::Statement find(db, "SELECT t.name, c.name FROM sqlite_schema t JOIN pragma_table_info(t.name) c WHERE "
                               "t.type = 'table' ORDER BY 1, 2");
    std::vector<std::pair<std::string, std::string>> all;
    while (find.executeStep())
        all.emplace_back(find.getColumn(0).getString(), find.getColumn(1).getString());
    return all;
}

bool isFoundSound(const std::string& path) {
    const auto book = BenchBook::open(path, OpenMode::readOnly);
    if (!book) return false;
    const auto verified = book->verify();
    return verified && verified->sound;
}

/// With everything in it that a book can hold, an undo among it.
std::string fullBook(const Folder& folder) {
    std::string path = folder.file("full.hammerline");
    Filled filled = filledBook(path);
    ok(filled.book.setPreference(filled.piano, "length-unit", "in"));
    ok(filled.book.store(filled.piano, 1, std::vector{mm(3, letOff, 3.1)}));
    ok(filled.book.undo());
    return path;
}

} // namespace

// GNU coreutils 9.1, b2sum -l 256, of nothing and of "abc".
TEST_CASE("a digest is BLAKE2b with 256 bits") {
    CHECK(hexOf(digestOf("")) == "0e5751c026e543b2e8ab2eb06099daa1d1e5df47778f7787faab45cdf12fe3a8");
    CHECK(hexOf(digestOf("abc")) == "bddd813c634239723171ef3fee98579b94964e3bb1cb3e427262c8c068d52319");
}

TEST_CASE("no edit of any column of any row is called sound") {
    const Folder folder = Folder::quick();
    const std::string path = fullBook(folder), work = folder.file("work.hammerline");
    REQUIRE(isFoundSound(path));
    int edited = 0;
    for (const auto& [table, column] : columnsOf(path)) {
        // one more, or another text: what stands in the last row that holds something
        const std::string change = "iif(typeof(" + column + ") = 'integer', " + column + " + 1, iif(typeof(" + column +
                                   ") = 'blob', zeroblob(length(" + column + ")), " + column + " || '1'))";
        const std::string last = " WHERE " + column + " IS NOT NULL ORDER BY rowid DESC LIMIT 1";
        fs::copy_file(path, work, fs::copy_options::overwrite_existing);
        SQLite::Database db(work, SQLite::OPEN_READWRITE);
        if (db.execAndGet("SELECT count(" + column + ") FROM " + table).getInt() == 0) continue;
        db.exec("PRAGMA foreign_keys=OFF");
        db.exec("PRAGMA ignore_check_constraints=ON");
        INFO(table << '.' << column);
        // one row only, by its place in the table
        const auto key = db.execAndGet("SELECT group_concat('\"' || name || '\"', ',') FROM pragma_table_info('" +
                                       table + "') WHERE pk > 0")
                             .getString();
        const std::string one =
            "(" + key + ") IN (SELECT " + key + " FROM " + table + " WHERE " + column + " IS NOT NULL LIMIT 1)";
        db.exec("UPDATE OR REPLACE " + table + " SET " + column + " = " + change + " WHERE " + one);
        ++edited;
        CHECK_FALSE(isFoundSound(work));
    }
    CHECK(edited > 100);
}

TEST_CASE("edits that a book was once called sound with are seen") {
    const Folder folder = Folder::quick();
    const std::string path = fullBook(folder), work = folder.file("work.hammerline");
    const std::string last = "(SELECT max(id) FROM act)";
    const std::vector<std::string> edits = {
        "UPDATE reading SET value = value * 2 WHERE note = 5",
        "UPDATE reading SET note = 90 WHERE note = 5 AND pass_id = 1",
        "UPDATE reading SET pass_id = 2 WHERE pass_id = 1 AND note = 12",
        "UPDATE reading SET typed = '99' WHERE note = 7",
        "UPDATE reading SET unit = 'in' WHERE note = 7",
        "UPDATE reading SET withdrawn = 1 - withdrawn WHERE note = 9",
        "UPDATE reading SET taken = 1 - taken WHERE note = 9",
        "UPDATE reading SET replaces = NULL WHERE replaces IS NOT NULL",
        "DELETE FROM reading WHERE pass_id = 1",
        "DELETE FROM reading WHERE note = 44",
        "DELETE FROM reading WHERE act_id = " + last + "; DELETE FROM act WHERE id = " + last,
        "DELETE FROM act WHERE id = " + last,
        "UPDATE setup SET notes = 20",
        "UPDATE setup SET action = 'grand'",
        "UPDATE setup SET name = name || ' '",
        "UPDATE setup SET spec = 'no sheet'",
        "INSERT INTO setup_attribute SELECT piano_id, act_id, 1, 'a', 'b' FROM setup",
        "UPDATE pass_version SET label = 'other'",
        "UPDATE pass_version SET humidity = 999",
        "DELETE FROM pass_reference",
        "UPDATE pass SET started_at = started_at + 1",
        "UPDATE plan SET content = '{}'",
        "UPDATE plan SET options = '{}'",
        "UPDATE finding SET state = 'sound'",
        "DELETE FROM finding",
        "UPDATE aim_override SET nominal = nominal + 1",
        "DELETE FROM aim_override",
        "UPDATE done SET operation = 'turn-something'",
        "DELETE FROM done_note",
        "UPDATE preference SET value = 'mm'",
        "UPDATE act SET at = at - 1000000 WHERE id = 3",
        "UPDATE act SET brought = 1 WHERE id = 3",
        "UPDATE session SET program = 'other'",
        "UPDATE dimension SET key = 'drop' WHERE key = (SELECT max(key) FROM dimension)",
        "INSERT INTO act (session_id, seq, place, at, kind) SELECT session_id, seq + 1, place + 1, at, 'entry' FROM "
        "act "
        "WHERE id = " +
            last,
        "UPDATE book SET made_by = 'other'",
        "UPDATE seal SET last_act = last_act - 1",
        "DELETE FROM seal",
        "UPDATE act SET digest = NULL WHERE id = 2",
    };
    for (const std::string& sql : edits) {
        INFO(sql);
        fs::copy_file(path, work, fs::copy_options::overwrite_existing);
        const std::string before = bytesOf(work);
        edit(work, sql);
        CHECK(bytesOf(work) != before); // it changes something
        CHECK_FALSE(isFoundSound(work));
    }
}

TEST_CASE("a flipped bit that changes what a book says is seen") {
    const Folder folder = Folder::quick();
    const std::string path = fullBook(folder), work = folder.file("work.hammerline");
    const std::string bytes = bytesOf(path), content = contentOf(ok(BenchBook::open(path, OpenMode::readOnly)));
    std::mt19937 random(7);
    std::uniform_int_distribution<std::size_t> where(100, bytes.size() - 1), bit(0, 7);
    int changed = 0;
    const char* more = std::getenv("HAMMERLINE_FLIPS");
    for (int flips = more ? std::atoi(more) : 300; flips > 0; --flips) {
        std::string flipped = bytes;
        const std::size_t at = where(random), which = bit(random);
        flipped[at] = static_cast<char>(flipped[at] ^ (1 << which));
        std::ofstream(work, std::ios::binary | std::ios::trunc) << flipped;
        if (!isFoundSound(work)) continue;
        INFO("byte " << at << ", bit " << which);
        const bool same = contentOf(ok(BenchBook::open(work, OpenMode::readOnly))) == content;
        changed += same ? 0 : 1;
        CHECK(same);
    }
    CHECK(changed == 0);
}

TEST_CASE("an act has the same digest in every book it comes to, and one that was changed is named and not taken in") {
    const Folder folder = Folder::quick();
    const std::string path = fullBook(folder), mine = folder.file("mine.hammerline");
    {
        BenchBook into = ok(BenchBook::create(mine, writer()));
        ok(into.addPiano(upright("Another"), "upright"));
        ok(into.merge(path));
        CHECK(ok(into.verify()).sound);
    }
    const auto digests = [](const std::string& book) {
        SQLite::Database db(book, SQLite::OPEN_READONLY);
        SQLite::Statement find(db, "SELECT DISTINCT hex(digest) FROM act WHERE digest IS NOT NULL");
        std::set<std::string> all;
        while (find.executeStep())
            all.insert(find.getColumn(0).getString());
        return all;
    };
    const auto there = digests(path), here = digests(mine);
    CHECK(here.size() == there.size() + 1);
    CHECK(std::includes(here.begin(), here.end(), there.begin(), there.end()));

    edit(path, "UPDATE reading SET value = value + 1 WHERE act_id = (SELECT max(act_id) FROM reading)");
    BenchBook fresh = ok(BenchBook::create(folder.file("fresh.hammerline"), writer()));
    const auto refused = fresh.merge(path);
    REQUIRE_FALSE(refused);
    CHECK(refused.error().code == RefusalCode::damagedBook);
    CHECK(refused.error().detail.starts_with("digest:"));
}

TEST_CASE("what is rescued says which readings are proven") {
    const Folder folder = Folder::quick();
    const std::string path = fullBook(folder);
    std::string into = folder.file("whole.hammerline");
    const Rescued whole = ok(rescueBook(path, into));
    CHECK(whole.proven > 100);
    CHECK(whole.unproven == 0);
    edit(path, "UPDATE reading SET value = value + 1 WHERE note = 5 AND pass_id = 1");
    std::string other = folder.file("other.hammerline");
    const Rescued doubtful = ok(rescueBook(path, other));
    CHECK(doubtful.unproven > 0);
    CHECK(doubtful.proven + doubtful.unproven == whole.proven);
    REQUIRE(doubtful.doubtful.size() == doubtful.unproven);
    const bool named = std::any_of(doubtful.doubtful.begin(), doubtful.doubtful.end(), [](const UnprovenReading& each) {
        return each.cell.note.value == 5 && each.pass == 1 && !each.piano.empty() && !each.typed.empty();
    });
    CHECK(named);
    CHECK(whole.doubtful.empty());
    CHECK(isFoundSound(other)); // what is in it now is what it holds to
}

TEST_CASE("a book whose clock was years ahead cannot poison another") {
    const Folder folder = Folder::quick();
    const std::string path = folder.file("ahead.hammerline"), mine = folder.file("mine.hammerline");
    { Filled filled = filledBook(path, writer(std::int64_t{1} << 60)); }
    BenchBook into = ok(BenchBook::create(mine, writer()));
    const auto refused = into.merge(path);
    REQUIRE_FALSE(refused);
    CHECK(refused.error().detail == "clock-ahead");
    ok(into.addPiano(upright("Goes on"), "upright")); // it is written in as before
    CHECK(ok(into.verify()).sound);
    edit(path, "UPDATE act SET place = place * 4 WHERE id = (SELECT max(id) FROM act)"); // 2^62
    CHECK_FALSE(isFoundSound(path));
}

TEST_CASE("a book from before there were digests gets them when it is written in, and says since when") {
    const Folder folder = Folder::quick();
    const std::string path = folder.file("old.hammerline");
    fs::copy_file(std::string(HAMMERLINE_SOURCE_DIR) + "/tests/reference/books/schema_2.hammerline", path);
    {
        const BenchBook book = ok(BenchBook::open(path, OpenMode::readWrite, writer()));
        const Verification found = ok(book.verify());
        CHECK(found.sound);
        CHECK(found.olderAt > 0);
    }
    edit(path, "UPDATE reading SET value = value + 1 WHERE note = 5");
    CHECK_FALSE(isFoundSound(path));
    CHECK(ok(ok(BenchBook::open(fullBook(folder), OpenMode::readOnly)).verify()).olderAt == 0);
}
