// Digests of acts: that they are what they are called, the same in every book, and what is proven by them.
#include "db/digest.h"
#include "tests/db/bench.h"

#include <SQLiteCpp/SQLiteCpp.h>

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

} // namespace

// GNU coreutils 9.1, b2sum -l 256, of nothing and of "abc".
TEST_CASE("a digest is BLAKE2b with 256 bits") {
    CHECK(hexOf(digestOf("")) == "0e5751c026e543b2e8ab2eb06099daa1d1e5df47778f7787faab45cdf12fe3a8");
    CHECK(hexOf(digestOf("abc")) == "bddd813c634239723171ef3fee98579b94964e3bb1cb3e427262c8c068d52319");
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
