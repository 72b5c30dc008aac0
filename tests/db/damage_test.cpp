// Mutated books: whatever the bytes, opening is a refusal or a book that can be read; nothing is written into it, and
// what is rescued of it is sound. HAMMERLINE_MUTATIONS=10000 is the long form (tests/soak.sh).
#include "core/sheet/sheet.h"
#include "tests/db/bench.h"

#include <SQLiteCpp/SQLiteCpp.h>

#include <cstdlib>
#include <random>

using namespace hammerline;
using namespace hammerline::bench;
using namespace hammerline::dimension;

namespace {

constexpr std::size_t kPage = 4096;

class Chance {
public:
    explicit Chance(std::uint64_t seed) : m_source(seed) {}
    std::size_t below(std::size_t bound) { return static_cast<std::size_t>(m_source() % bound); }
    template <class T>
    const T& of(const std::vector<T>& choices) {
        return choices[below(choices.size())];
    }

private:
    std::mt19937_64 m_source;
};

/// What another program might do to a book, or have done.
const std::vector<std::string> kForeign = {
    "CREATE TABLE guest (a)",
    "CREATE VIEW reading_view AS SELECT * FROM reading",
    "CREATE TRIGGER t AFTER INSERT ON reading BEGIN DELETE FROM act; END",
    "CREATE TRIGGER t BEFORE INSERT ON act BEGIN UPDATE reading SET value = 0; END",
    "DROP INDEX reading_act",
    "DROP TABLE preference",
    "ALTER TABLE piano ADD COLUMN maker TEXT",
    "ALTER TABLE reading RENAME COLUMN typed TO said",
    "ALTER TABLE finding RENAME TO findings",
    "CREATE VIRTUAL TABLE v USING fts5(a)",
    "DROP TABLE reading; CREATE VIEW reading AS SELECT * FROM act",
    "PRAGMA application_id = 0",
    "PRAGMA application_id = 1",
    "PRAGMA user_version = 0",
    "PRAGMA user_version = 1",
    "PRAGMA user_version = 3",
    "PRAGMA user_version = 2147483647",
    "PRAGMA user_version = -1",
    "PRAGMA page_size = 512; VACUUM",
    "PRAGMA encoding = 'UTF-16'; VACUUM",
    "PRAGMA auto_vacuum = FULL; VACUUM",
    "ANALYZE",
};

/// Values that no hand of ours wrote: outside every CHECK, of any size.
const std::vector<std::string> kAbsurd = {
    "UPDATE reading SET value = 9223372036854775807",
    "UPDATE reading SET value = -9223372036854775808, upper = 9223372036854775807, relation = '..'",
    "UPDATE reading SET note = 0 WHERE note = 33",
    "UPDATE reading SET note = -2147483649 WHERE note = 33",
    "UPDATE reading SET trial = 4294967297 WHERE note = 34",
    "UPDATE reading SET relation = 'perhaps'",
    "UPDATE reading SET word = 'blocks' WHERE note = 5",
    "UPDATE reading SET typed = hex(zeroblob(100000)) WHERE note = 6",
    "UPDATE reading SET typed = char(0, 10, 27, 65533), unit = '=1+1'",
    "UPDATE reading SET typed = cast(x'ff00fe80' AS TEXT), reason = cast(x'c0' AS TEXT)",
    "UPDATE reading SET replaces = act_id",
    "UPDATE act SET place = 9223372036854775807",
    "UPDATE act SET place = -9223372036854775808, at = -9223372036854775808",
    "UPDATE act SET at = 9223372036854775807",
    "UPDATE act SET undoes = id",
    "UPDATE act SET kind = 'undo', undoes = id + 1",
    "UPDATE act SET session_id = 77",
    "UPDATE book SET merged_place = 9223372036854775807",
    "DELETE FROM book",
    "UPDATE session SET uuid = x'00'",
    "UPDATE session SET program = ''",
    "UPDATE piano SET uuid = x''",
    "UPDATE piano SET uuid = zeroblob(16)",
    "UPDATE setup SET notes = 2147483647",
    "UPDATE setup SET notes = -5, lowest = 9223372036854775807",
    "UPDATE setup SET action = 'spinet'",
    "UPDATE setup SET name = hex(zeroblob(5000))",
    "UPDATE setup SET spec = '{\"zones\": [[[[[[[['",
    "UPDATE setup SET spec = '[]', spec_name = '../../etc/passwd'",
    "UPDATE setup_attribute SET value = 'x' || hex(zeroblob(1000))",
    "INSERT INTO setup_attribute SELECT piano_id, act_id, 999, 'sections', '1-1,99-3' FROM setup LIMIT 1",
    "UPDATE pass_version SET temperature = 9223372036854775807, humidity = -1",
    "UPDATE pass_reference SET reference = 'the moon'",
    "UPDATE dimension SET key = 'warp'",
    "UPDATE dimension SET key = '' WHERE id = 1",
    "UPDATE pass SET started_at = -1, piano_id = 99",
    "UPDATE plan SET content = '{\"steps\": 3', options = 'null'",
    "UPDATE plan SET content = '{\"steps\":[{\"note\":-7,\"aim\":1e999}]}'",
    "UPDATE done SET operation = 'hammering', amount = 9223372036854775807",
    "UPDATE done SET amount = -9223372036854775808, to_aim = 7, aim = 9223372036854775807",
    "UPDATE done_note SET note = -1",
    "UPDATE done_note SET note = 4294967300",
    "UPDATE finding SET state = 'gone', note = 9223372036854775807",
    "UPDATE finding SET amount = -9223372036854775808, part = '', fault = cast(x'ff' AS TEXT)",
    "UPDATE symptom SET first = 88, last = -88",
    "UPDATE aim_override SET low = 9223372036854775807, nominal = -9223372036854775808, high = NULL",
    "UPDATE aim_override SET note = 500",
    "UPDATE preference SET key = 'unit-blow', value = 'furlong'",
    "DELETE FROM setup",
    "DELETE FROM pass_version",
    "DELETE FROM act WHERE id > 3",
};

void execute(const std::string& path, const std::string& sql) {
    SQLite::Database db(path, SQLite::OPEN_READWRITE);
    db.exec("PRAGMA ignore_check_constraints=ON; PRAGMA foreign_keys=OFF");
    db.tryExec(sql);
}

void write(const std::string& path, const std::string& bytes) {
    std::ofstream(path, std::ios::binary | std::ios::trunc) << bytes;
}

std::string flipped(std::string bytes, Chance& chance, std::size_t from, std::size_t to) {
    for (std::size_t i = chance.below(8) + 1; i > 0; --i) {
        char& byte = bytes[from + chance.below(to - from)];
        byte = static_cast<char>(static_cast<unsigned char>(byte) ^ (1u << chance.below(8)));
    }
    return bytes;
}

std::string onPage(std::string bytes, Chance& chance, int how) {
    const std::size_t pages = bytes.size() / kPage, page = chance.below(pages) * kPage;
    for (std::size_t i = 0; i < kPage; ++i)
        bytes[page + i] = how == 0 ? '\0' : static_cast<char>(chance.below(256));
    return bytes;
}

/// Makes the mutation of that number from a sound book; the same number gives the same bytes. Says what it did.
std::string mutate(const std::string& sound, std::size_t number, const std::string& path) {
    Chance chance(number * 2654435761u + 17);
    const std::size_t size = sound.size(), pages = size / kPage;
    switch (number % 8) {
    case 0:
        write(path, flipped(sound, chance, 0, size));
        return "bits flipped anywhere";
    case 1:
        write(path, flipped(sound, chance, 0, kPage));
        return "bits flipped on the first page";
    case 2: { // where a page says what it holds
        const std::size_t page = chance.below(pages) * kPage;
        write(path, flipped(sound, chance, page, page + 24));
        return "bits flipped in the head of a page";
    }
    case 3:
        write(path, sound.substr(0, chance.below(2) == 0 ? chance.below(pages) * kPage : chance.below(size)));
        return "cut off";
    case 4:
        write(path, onPage(sound, chance, static_cast<int>(chance.below(2))));
        return "a page overwritten";
    case 5: {
        std::string bytes = sound;
        const std::size_t from = chance.below(pages) * kPage, to = chance.below(pages) * kPage;
        bytes.replace(to, kPage, sound, from, kPage);
        write(path, bytes);
        return "a page in another's place";
    }
    case 6: {
        write(path, sound);
        const std::string& sql = kForeign[number / 8 % kForeign.size()];
        execute(path, sql);
        return sql;
    }
    default: {
        write(path, sound);
        std::string sql = kAbsurd[number / 8 % kAbsurd.size()];
        if (number / 8 >= kAbsurd.size()) sql += "; " + chance.of(kAbsurd);
        execute(path, sql);
        return sql;
    }
    }
}

/// Everything the program does with a book that it reads.
void readAll(const BenchBook& book) {
    (void)book.verify();
    (void)book.disputes();
    const auto pianos = book.pianos();
    if (!pianos) return;
    std::vector<PianoRecord> records;
    for (const PianoLine& line : *pianos)
        if (auto record = book.load(line.uuid)) {
            for (const Pass& pass : record->passes) {
                (void)viewPass(*record, pass.number, Rule::plain, {});
                (void)book.trail(line.uuid, pass.number, cell(33, letOff));
            }
            records.push_back(std::move(*record));
        }
    (void)exportCsv(records);
    (void)exportJson(records);
}

} // namespace

TEST_CASE("a mutated book of an older version is refused or read, and stays as it is") {
    const char* asked = std::getenv("HAMMERLINE_MUTATIONS");
    const std::size_t count = asked ? std::strtoul(asked, nullptr, 10) : 64;
    const std::string sound = bytesOf(HAMMERLINE_SOURCE_DIR "/tests/reference/books/schema_1.hammerline");
    std::size_t refused = 0, read = 0;
    for (std::size_t number = 0; number < count; ++number) {
        const Folder folder = Folder::quick();
        const std::string path = folder.file("mutated.hammerline");
        INFO("mutation " << number << ": " << mutate(sound, number, path));
        const std::string bytes = bytesOf(path);
        const auto asItWas = [&] {
            CHECK(bytesOf(path) == bytes);
            CHECK(folder.names() == std::vector<std::string>{"mutated.hammerline"});
        };
        if (const auto book = BenchBook::open(path, OpenMode::readOnly)) {
            ++read;
            readAll(*book);
        } else {
            ++refused;
            CHECK_FALSE(book.error().offending.empty());
        }
        asItWas();
        if (const auto book = BenchBook::open(path); !book)
            asItWas(); // half brought up to date is not brought up to date
        else
            readAll(*book);
    }
    CHECK(refused > count / 10);
    CHECK(read > count / 20);
    UNSCOPED_INFO(refused << " refused, " << read << " read");
}

TEST_CASE("a mutated book is refused or read, never written to, never a crash") {
    const char* asked = std::getenv("HAMMERLINE_MUTATIONS");
    const std::size_t count = asked ? std::strtoul(asked, nullptr, 10) : 200;
    const char* first = std::getenv("HAMMERLINE_MUTATIONS_FROM");
    const std::size_t from = first ? std::strtoul(first, nullptr, 10) : 0;
    REQUIRE(count > 0);
    const Folder home = Folder::quick();
    const std::string seed = home.file("seed.hammerline");
    (void)filledBook(seed);
    const std::string sound = bytesOf(seed);
    std::size_t refused = 0, read = 0, rescued = 0;
    for (std::size_t number = from; number < from + count; ++number) {
        const Folder folder = Folder::quick();
        const std::string path = folder.file("mutated.hammerline");
        const std::string what = mutate(sound, number, path);
        INFO("mutation " << number << ": " << what);
        const std::string bytes = bytesOf(path);
        {
            const auto book = BenchBook::open(path);
            if (book) {
                ++read;
                readAll(*book);
                if (const auto verified = book->verify()) CHECK(verified->sound == verified->problems.empty());
            } else {
                ++refused;
                CHECK_FALSE(book.error().offending.empty());
            }
        }
        CHECK(bytesOf(path) == bytes);
        const bool thorough =
            asked != nullptr || number / 8 % 5 == 0; // the short form tries the rest on some of each kind
        std::string into = folder.file("rescued.hammerline");
        if (thorough && rescueBook(path, into)) {
            ++rescued;
            const auto book = BenchBook::open(into);
            REQUIRE(book);
            CHECK(ok(book->verify()).sound);
            readAll(*book);
        }
        CHECK(bytesOf(path) == bytes);
        // whoever works on in a book that opened meets a refusal at the worst
        if (auto book = BenchBook::open(path); book && thorough) {
            if (const auto pianos = book->pianos(); pianos && !pianos->empty()) {
                (void)book->store(pianos->front().uuid, 1, std::vector{mm(33, letOff, 2.5, 0)});
                (void)book->addPass(pianos->front().uuid, {});
            }
            (void)book->undo();
            (void)book->merge(seed);
        }
    }
    CHECK(refused + read == count);
    if (count >= 200) {
        CHECK(refused > count / 10);
        CHECK(read > count / 20);
        CHECK(rescued > 10);
    }
    UNSCOPED_INFO(refused << " refused, " << read << " read, " << rescued << " rescued");
}

namespace {

void put(std::string& bytes, std::uint32_t value) {
    for (int shift = 24; shift >= 0; shift -= 8)
        bytes += static_cast<char>(value >> shift & 0xff);
}

/// A rollback journal that changes nothing and names a further file at its end, as the journal of a change to several
/// files does (sqlite.org/fileformat2.html, section 3, and atomiccommit.html, section 5.5).
std::string journalNaming(const std::string& file, std::size_t pages) {
    const std::string mark = "\xd9\xd5\x05\xf9\x20\xa1\x63\xd7";
    std::string bytes = mark;
    for (const std::size_t value : {std::size_t{0}, std::size_t{12345}, pages, std::size_t{512}, std::size_t{4096}})
        put(bytes, static_cast<std::uint32_t>(value));
    bytes.resize(512);
    put(bytes, (1U << 30) / 4096 + 1); // the page on which locks are held
    bytes += file;
    put(bytes, static_cast<std::uint32_t>(file.size()));
    std::uint32_t sum = 0;
    for (const char c : file)
        sum += static_cast<std::uint32_t>(c);
    put(bytes, sum);
    return bytes + mark;
}

} // namespace

TEST_CASE("a file that the journal beside a book names is never opened nor deleted") {
    const Folder home;
    const std::string seed = home.file("seed.hammerline");
    (void)filledBook(seed);
    const std::string sound = bytesOf(seed);
    const auto attempt = [&](const std::function<void(const std::string&)>& work) {
        const Folder folder;
        const std::string path = folder.file("hostile.hammerline"), precious = folder.file("precious.txt");
        std::ofstream(path, std::ios::binary) << sound;
        std::ofstream(precious) << "years of work";
        std::ofstream(path + "-journal", std::ios::binary) << journalNaming(precious, sound.size() / 4096);
        work(path);
        CHECK(bytesOf(precious) == "years of work");
        CHECK(bytesOf(path) == sound);
    };
    const auto refused = [](const auto& outcome) {
        REQUIRE_FALSE(outcome);
        CHECK(outcome.error().code == RefusalCode::notABook);
        CHECK(outcome.error().detail == "journal");
    };
    // that it is such a journal: SQLite left to itself deletes the file
    {
        const Folder folder;
        const std::string path = folder.file("hostile.hammerline"), named = folder.file("named.txt");
        std::ofstream(path, std::ios::binary) << sound;
        std::ofstream(named) << "a file of the test";
        std::ofstream(path + "-journal", std::ios::binary) << journalNaming(named, sound.size() / 4096);
        CHECK(SQLite::Database(path, SQLite::OPEN_READWRITE).execAndGet("SELECT count(*) FROM act").getInt() > 0);
        CHECK_FALSE(std::filesystem::exists(named));
    }
    // put there while the book is open, where nothing asks what it is before SQLite rolls it back
    for (const OpenMode mode : {OpenMode::readWrite, OpenMode::readOnly}) {
        const Folder folder;
        const std::string path = folder.file("hostile.hammerline"), precious = folder.file("precious.txt");
        std::ofstream(path, std::ios::binary) << sound;
        std::ofstream(precious) << "years of work";
        BenchBook book = ok(BenchBook::open(path, mode));
        const std::string piano = ok(book.findPiano(""));
        std::ofstream(path + "-journal", std::ios::binary) << journalNaming(precious, sound.size() / 4096);
        for (int again = 0; again < 3; ++again) {
            (void)book.poll();
            (void)book.load(piano);
            (void)book.store(piano, 1, std::vector{mm(7, blow, 46.0)});
            CHECK(bytesOf(precious) == "years of work");
        }
        if (mode == OpenMode::readWrite) CHECK(book.load(piano).has_value()); // and it goes on
    }
    attempt([&](const std::string& path) { refused(BenchBook::open(path)); });
    attempt([&](const std::string& path) { refused(BenchBook::open(path, OpenMode::readOnly)); });
    attempt([&](const std::string& path) { refused(restoreBook(seed, path)); });
    attempt([&](const std::string& path) { refused(ok(BenchBook::open(seed)).merge(path)); });
    attempt([&](const std::string& path) {
        CHECK(code(ok(BenchBook::open(seed)).backUp(path)) == RefusalCode::fileExists);
    });
    attempt([&](const std::string& path) {
        std::string into;
        const Rescued rescued = ok(rescueBook(path, into));
        CHECK(rescued.lost == 0);
        CHECK(contentOf(ok(BenchBook::open(into))) == contentOf(ok(BenchBook::open(seed))));
    });
}
