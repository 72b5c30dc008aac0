// Photographs in the book: kept once, undone, merged, exported, verified and rescued like everything else.
#include "core/sheet/export_reading.h"
#include "core/sheet/sheet.h"
#include "db/sha256.h"
#include "tests/db/bench.h"

#include <SQLiteCpp/SQLiteCpp.h>

using namespace hammerline;
using namespace hammerline::bench;

namespace {

BenchBook::NewPhoto shot(const std::string& bytes, About about = {}) {
    BenchBook::NewPhoto fresh;
    fresh.picture = {sha256(bytes), "jpeg", 4, 3, "small " + bytes, bytes};
    fresh.photo.hash = fresh.picture.hash;
    fresh.photo.about = std::move(about);
    fresh.photo.caption = "as found";
    fresh.photo.on = "2026-11-29";
    return fresh;
}

std::int64_t picturesIn(const std::string& path) {
    SQLite::Database db(path, SQLite::OPEN_READONLY);
    return db.execAndGet("SELECT count(*) FROM picture").getInt64();
}

std::string allBytes() {
    std::string all;
    for (int i = 0; i < 256; ++i)
        all += static_cast<char>(i);
    return all;
}

} // namespace

// FIPS 180-4 names the algorithm; the digests are the examples that its authors publish with it for "abc", for two
// blocks, and for a million times "a" (NIST, Cryptographic Standards and Guidelines, example values, SHA-256).
TEST_CASE("pictures are named by SHA-256") {
    CHECK(sha256("abc") == "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
    CHECK(sha256("abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq") ==
          "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1");
    CHECK(sha256(std::string(1'000'000, 'a')) == "cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0");
}

TEST_CASE("a photograph is kept, shown, taken back and undone; its picture is kept once") {
    const Folder folder;
    const std::string path = folder.file("shop.hammerline");
    Filled filled = filledBook(path);
    const auto one = shot(allBytes(), {2, NoteNumber{20}, "bridle-strap", "rotted"});
    auto again = one;
    again.photo.about = {};
    ok(filled.book.addPhotos(filled.piano, std::vector{one, again}));
    const auto now = [&] { return ok(filled.book.load(filled.piano)).photos; };
    REQUIRE(now().size() == 2);
    CHECK(showTheSame(now()[0], one.photo));
    CHECK(now()[0].at > 0);
    CHECK(ok(filled.book.load(filled.piano)).pictures.empty()); // read only when looked at
    CHECK(picturesIn(path) == 1);
    CHECK(ok(filled.book.picture(one.picture.hash))->bytes == allBytes());
    CHECK(*ok(filled.book.thumb(one.picture.hash)) == one.picture.thumb);
    CHECK_FALSE(ok(filled.book.picture(sha256("never"))));
    ok(filled.book.removePhoto(filled.piano, now()[1]));
    CHECK(now().size() == 1);
    ok(filled.book.undo());
    CHECK(now().size() == 2);
    ok(filled.book.undo());
    CHECK(now().empty());
    ok(filled.book.redo());
    CHECK(now().size() == 2);
    CHECK(code(filled.book.removePhoto(filled.piano, one.photo)) == RefusalCode::noSuchPhoto);
    CHECK(ok(filled.book.verify()).sound);
}

TEST_CASE("bytes under another name than theirs are refused and nothing of the act is kept") {
    const Folder folder;
    Filled filled = filledBook(folder.file("shop.hammerline"));
    auto wrong = shot("second");
    wrong.picture.bytes += "!";
    CHECK(code(filled.book.addPhotos(filled.piano, std::vector{shot("first"), wrong})) == RefusalCode::cannotRead);
    CHECK(ok(filled.book.load(filled.piano)).photos.empty());
    CHECK(picturesIn(folder.file("shop.hammerline")) == 0);
}

TEST_CASE("verify sees a picture that was changed on the disk and a photograph without one") {
    const Folder folder;
    const std::string path = folder.file("shop.hammerline");
    {
        Filled filled = filledBook(path);
        ok(filled.book.addPhotos(filled.piano, std::vector{shot("first"), shot("second")}));
    }
    const auto execute = [&](const std::string& sql) { SQLite::Database(path, SQLite::OPEN_READWRITE).exec(sql); };
    execute("UPDATE picture SET bytes = x'00' WHERE id = 1");
    CHECK(ok(ok(BenchBook::open(path)).verify()).problems.front().what == "picture:" + sha256("first"));
    execute("DELETE FROM picture WHERE id = 1");
    CHECK_FALSE(ok(ok(BenchBook::open(path)).verify()).sound);
    // what is left is rescued, and whole again without what is lost
    std::string into = folder.file("rescued.hammerline");
    ok(rescueBook(path, into));
    const BenchBook rescued = ok(BenchBook::open(into));
    CHECK(ok(rescued.verify()).sound);
    const auto photos = ok(rescued.load(ok(rescued.findPiano("Parlour upright")))).photos;
    REQUIRE(photos.size() == 1);
    CHECK(ok(rescued.picture(photos[0].hash))->bytes == "second");
}

// By another program, or by a bit that flips: what stands beside the bytes is proven as well.
TEST_CASE("a picture that is not as it was kept is seen, and what is left of it is rescued under its own name") {
    const Folder folder = Folder::quick();
    const std::string path = folder.file("shop.hammerline");
    {
        Filled filled = filledBook(path);
        ok(filled.book.addPhotos(filled.piano, std::vector{shot("first"), shot("second")}));
    }
    const std::string sound = bytesOf(path);
    for (const std::string change : {"bytes = x'414243'", "width = width + 1", "height = 9", "kind = 'png'",
                                     "thumb = zeroblob(length(thumb))", "thumb = x''"}) {
        INFO(change);
        std::ofstream(path, std::ios::binary | std::ios::trunc) << sound;
        SQLite::Database(path, SQLite::OPEN_READWRITE).exec("UPDATE picture SET " + change + " WHERE id = 1");
        CHECK_FALSE(isFoundSound(path));
        CHECK_FALSE(ok(BenchBook::open(path)).backUp(folder.file("copy.hammerline")));
        std::string into = folder.file("rescued.hammerline");
        ok(rescueBook(path, into));
        CHECK(isFoundSound(into));
        const BenchBook rescued = ok(BenchBook::open(into));
        const auto photos = ok(rescued.load(ok(rescued.findPiano("Parlour upright")))).photos;
        REQUIRE(photos.size() == 2);
        for (const Photo& each : photos)
            CHECK(sha256(ok(rescued.picture(each.hash))->bytes) == each.hash);
        std::filesystem::remove(into);
    }
}

TEST_CASE("pictures from before their rows were proven are sound as long as they look like what they say") {
    const Folder folder = Folder::quick();
    const std::string path = folder.file("shop.hammerline");
    // 4 by 3 points; as far as the header of the frame, and as far as the header chunk
    const std::string jpeg = std::string("\xFF\xD8\xFF\xE0\x00\x04??\xFF\xC0\x00\x0B\x08\x00\x03\x00\x04\x01", 18);
    const std::string png = std::string("\x89PNG\r\n\x1a\n\0\0\0\rIHDR\0\0\0\4\0\0\0\3", 24);
    {
        Filled filled = filledBook(path);
        auto drawn = shot(png);
        drawn.picture.kind = "png";
        ok(filled.book.addPhotos(filled.piano, std::vector{shot(jpeg), drawn}));
    }
    const auto execute = [&](const std::string& sql) { SQLite::Database(path, SQLite::OPEN_READWRITE).exec(sql); };
    execute("UPDATE picture SET thumb = x'FFD8AAFFD9'");
    CHECK(isFoundSound(path));
    const std::string sound = bytesOf(path);
    for (const std::string change : {"width = 5", "height = 4", "kind = iif(kind = 'png', 'jpeg', 'png')",
                                     "thumb = x'FFD8AA'", "thumb = x''", "width = height, height = width"}) {
        INFO(change);
        execute("UPDATE picture SET " + change + " WHERE id = 1");
        CHECK_FALSE(isFoundSound(path));
        std::ofstream(path, std::ios::binary | std::ios::trunc) << sound;
        execute("UPDATE picture SET " + change + " WHERE id = 2");
        CHECK_FALSE(isFoundSound(path));
        std::ofstream(path, std::ios::binary | std::ios::trunc) << sound;
    }
}

TEST_CASE("two books with photographs become one, and a second time brings nothing") {
    const Folder folder;
    const std::string mine = folder.file("mine.hammerline"), theirs = folder.file("theirs.hammerline");
    std::string piano;
    {
        Filled filled = filledBook(mine);
        piano = filled.piano;
        ok(filled.book.addPhotos(piano, std::vector{shot("both")}));
    }
    std::filesystem::copy_file(mine, theirs);
    {
        BenchBook there = ok(BenchBook::open(theirs, OpenMode::readWrite, writer(1'795'700'000'000'000)));
        ok(there.addPhotos(piano, std::vector{shot("theirs"), shot("same")}));
    }
    BenchBook here = ok(BenchBook::open(mine, OpenMode::readWrite, writer()));
    ok(here.addPhotos(piano, std::vector{shot("mine"), shot("same")}));
    ok(here.merge(theirs));
    CHECK(ok(here.load(piano)).photos.size() == 5);
    CHECK(picturesIn(mine) == 4);
    CHECK(ok(here.picture(sha256("theirs")))->bytes == "theirs");
    CHECK(ok(here.merge(theirs)).acts == 0);
    CHECK(ok(here.load(piano)).photos.size() == 5);
    CHECK(ok(here.verify()).sound);
    const std::string copy = ok(here.backUp(folder.file("copy.hammerline")));
    CHECK(picturesIn(copy) == 4);
}

TEST_CASE("an export carries the pictures; taken in twice they are there once") {
    const Folder folder;
    Filled filled = filledBook(folder.file("shop.hammerline"));
    ok(filled.book.addPhotos(filled.piano, std::vector{shot(allBytes(), {1, NoteNumber{33}, {}, {}})}));
    PianoRecord record = ok(filled.book.load(filled.piano));
    const auto loaded = filled.book.loadPictures(record);
    REQUIRE(loaded);
    const auto read = readExport(exportJson({record}));
    REQUIRE(read);
    CHECK(read->pianos.front().pictures.at(sha256(allBytes())).bytes == allBytes());
    BenchBook other = ok(BenchBook::create(folder.file("other.hammerline"), writer()));
    ok(other.importRecords(std::vector{BenchBook::Incoming{read->pianos.front(), {}}}, "shop.json"));
    const std::string piano = ok(other.findPiano("Parlour upright"));
    const auto photos = ok(other.load(piano)).photos;
    REQUIRE(photos.size() == 1);
    CHECK(showTheSame(photos[0], record.photos[0]));
    CHECK(ok(other.picture(photos[0].hash))->bytes == allBytes());
    CHECK(ok(other.importRecords(std::vector{BenchBook::Incoming{read->pianos.front(), piano}}, "shop.json")) == 0);
    CHECK(ok(other.verify()).sound);
}
