#include "db/rescue.h"

#include "db/directory.h"
#include "db/file_header.h"
#include "db/files.h"
#include "db/migration.h"
#include "db/opening.h"
#include "db/schema_shape.h"
#include "db/verification.h"

#include <sqlite3.h>

#include <algorithm>
#include <array>
#include <cstring>
#include <filesystem>
#include <fstream>
#include <set>
#include <tuple>

namespace hammerline {
namespace {

constexpr std::uint32_t kPageBytes = 4096; // of every book this program makes
using Header = std::array<unsigned char, kHeaderBytes>;

void put(Header& header, std::size_t at, std::uint32_t value) {
    for (std::size_t i = 0; i < 4; ++i)
        header[at + i] = static_cast<unsigned char>(value >> (24 - 8 * i));
}

/// The header of a book as this program writes it, over whatever the copy has there (sqlite.org/fileformat2.html,
/// section 1.3). Pages that are free are left out of account: nothing is ever written to the copy.
void mendHeader(const std::string& copy) {
    std::fstream file(copy, std::ios::binary | std::ios::in | std::ios::out);
    Header header{};
    file.read(reinterpret_cast<char*>(header.data()), kHeaderBytes);
    if (file.gcount() != kHeaderBytes) return;
    std::memcpy(header.data(), "SQLite format 3", 16);
    header[16] = kPageBytes >> 8;
    header[17] = 0;
    header[18] = header[19] = 1; // rollback journal
    header[20] = 0;
    header[21] = 64;
    header[22] = header[23] = 32;
    put(header, 24, 1); // change counter, and below the counter for which the page count holds
    put(header, 28, static_cast<std::uint32_t>(std::filesystem::file_size(copy) / kPageBytes));
    put(header, 32, 0);
    put(header, 36, 0);
    put(header, 44, 4); // schema format
    put(header, 52, 0); // no auto-vacuum
    put(header, 56, 1); // UTF-8
    put(header, 60, static_cast<std::uint32_t>(kSchemaVersion));
    put(header, 64, 0);
    put(header, 68, kApplicationId);
    put(header, 92, 1);
    file.seekp(0);
    file.write(reinterpret_cast<const char*>(header.data()), kHeaderBytes);
}

/// The header says another size of pages than this program writes, and the first page does not bear it out: where its
/// rows begin (section 1.6, bytes 5 and 6 of a page's own header) is near the end of a page of that size.
bool pageSizeIsWrong(const std::string& copy) {
    constexpr std::size_t kFirstPage = 100;
    std::ifstream file(copy, std::ios::binary);
    std::array<unsigned char, kFirstPage + 8> bytes{};
    if (!file.read(reinterpret_cast<char*>(bytes.data()), bytes.size())) return false;
    const auto two = [&](std::size_t at) { return static_cast<std::uint32_t>(bytes[at] << 8 | bytes[at + 1]); };
    const std::uint32_t said = two(16) == 1 ? 65536 : two(16);
    const std::uint32_t rows = two(kFirstPage + 5) == 0 ? 65536 : two(kFirstPage + 5);
    const bool bornOut = rows <= said && rows > kPageBytes;
    return said != kPageBytes && !bornOut;
}

/// A copy that may be mended and rolled back; the damaged book is only read.
void copyDamaged(const std::string& damaged, const std::string& copy, const Outcome<FileHeader>& header) {
    copyFile(damaged, copy);
    if (std::error_code none; std::filesystem::exists(damaged + "-journal", none) && !journalNamesAFile(damaged))
        copyFile(damaged + "-journal", copy + "-journal");
    if (!header || pageSizeIsWrong(copy)) mendHeader(copy);
}

/// Whether it ever was one of our books: as many of its tables as any other file has by chance, none.
bool wasOurs(SQLite::Database& copy) {
    const auto shape = shapeOf(copy);
    return shape.contains("act") && shape.contains("reading") && shape.contains("session");
}

bool isFile(const Refusal& refusal) {
    return refusal.code != RefusalCode::cannotRead;
}

/// The pages of the schema, from an empty book: it was made by the same steps and has its tables at the same places.
void lendSchema(const std::string& copy, const std::string& beside) {
    const PassingFile empty(beside);
    std::set<std::int64_t> roots;
    {
        SQLite::Database db = connect(empty.path(), Reach::create);
        runSteps(db, schemaSteps());
        SQLite::Statement find(db, "SELECT rootpage FROM sqlite_schema");
        while (find.executeStep())
            roots.insert(find.getColumn(0).getInt64());
    }
    std::ifstream from(empty.path(), std::ios::binary);
    std::fstream to(copy, std::ios::binary | std::ios::in | std::ios::out);
    std::string page(kPageBytes, '\0');
    for (std::int64_t number = 1; from.read(page.data(), kPageBytes); ++number)
        if (!roots.contains(number)) to.seekp((number - 1) * kPageBytes).write(page.data(), kPageBytes);
    to.close();
    mendHeader(copy);
}

SQLite::Database openCopy(const std::string& copy, const Refusal& otherwise) {
    SQLite::Database from = connect(copy, Reach::write);
    if (!wasOurs(from)) throw Refused{otherwise};
    return from;
}

SQLite::Database openCopyOrLend(const std::string& copy, const std::string& beside, const Refusal& otherwise) {
    try {
        return openCopy(copy, otherwise);
    } catch (const SQLite::Exception&) { // the schema itself is damaged
        lendSchema(copy, beside);
        return openCopy(copy, otherwise);
    }
}

/// In a catch: a disk that cannot be written is said; all else that fails comes of the damage.
[[noreturn]] void failUnlessDisk(const SQLite::Exception& thrown, const std::string& made, const Refusal& nothing) {
    const int code = thrown.getExtendedErrorCode();
    const bool read = code == SQLITE_IOERR_READ || code == SQLITE_IOERR_SHORT_READ;
    const Refusal why = refusalInFlight(made, Doing::writing);
    const bool disk = why.code == RefusalCode::diskFull || (why.code == RefusalCode::cannotWrite && !read);
    throw Refused{disk || why.code == RefusalCode::cancelled ? why : nothing};
}

Rescued copyIntoNew(const std::string& copy, const std::string& made, const Refusal& nothing, const Headway& headway) {
    try {
        SQLite::Database to = connect(made, Reach::create);
        runSteps(to, schemaSteps());
        to.exec("PRAGMA foreign_keys=OFF");
        SQLite::Database from = openCopyOrLend(copy, made, nothing);
        return copyReadable(from, to, headway);
    } catch (const SQLite::Exception& thrown) {
        failUnlessDisk(thrown, made, nothing);
    }
}

void nameUnproven(OpenBook& book, const Directory& directory, std::int64_t act, Rescued& rescued) {
    Query find = book.query("SELECT pass_id, note, dimension_id, trial, typed FROM reading WHERE act_id = ? "
                            "ORDER BY pass_id, note, dimension_id, trial");
    find << act;
    while (rescued.doubtful.size() < Rescued::kMostNamed && find.step()) {
        const auto pass = directory.passes.find(find.number(0));
        const auto dimension = book.dimensionOf(find.number(2));
        if (!dimension) continue;
        UnprovenReading each;
        each.cell = {NoteNumber{static_cast<int>(find.number(1))}, *dimension};
        each.trial = static_cast<int>(find.number(3));
        each.typed = find.text(4);
        if (pass != directory.passes.end()) std::tie(each.piano, each.pass) = pass->second;
        rescued.doubtful.push_back(std::move(each));
    }
}

/// Readings of an act whose rows fit its digest are as they were written; of the others nobody can say.
void proveRescued(OpenBook& book, Rescued& rescued) {
    SQLite::Transaction transaction(book.db, SQLite::TransactionBehavior::IMMEDIATE);
    const Directory directory(book);
    book.digests.sealAnew([&](std::int64_t act, bool proven) {
        Query count = book.query("SELECT count(*) FROM reading WHERE act_id = ?");
        count << act;
        count.step();
        (proven ? rescued.proven : rescued.unproven) += static_cast<std::size_t>(count.number(0));
        if (!proven) nameUnproven(book, directory, act, rescued);
    });
    std::stable_sort(rescued.doubtful.begin(), rescued.doubtful.end(), [](const auto& a, const auto& b) {
        return std::tie(a.piano, a.pass, a.cell.note.value) < std::tie(b.piano, b.pass, b.cell.note.value);
    });
    transaction.commit();
}

void mendNew(const std::string& damaged, const std::string& made, Rescued& rescued, const Headway& headway) {
    orFail(guarded(made, Doing::writing, [&] {
        OpenBook book(made, Reach::write, false, {});
        book.db.exec("PRAGMA foreign_keys=OFF");
        mendRescued(book);
        proveRescued(book, rescued);
        if (const Verification verified = verifyAll(book.db, kSchemaVersion, headway); !verified.sound)
            fail(RefusalCode::damagedBook, damaged, verified.problems.front().what);
        return true;
    }));
}

Rescued rescue(const std::string& damaged, const std::string& into, const Headway& headway) {
    const auto header = readHeader(damaged);
    if (!header && !isFile(header.error())) throw Refused{header.error()};
    if (header && header->userVersion > static_cast<std::uint32_t>(kSchemaVersion))
        fail(RefusalCode::newerBook, damaged);
    const Refusal nothing = header ? Refusal{RefusalCode::damagedBook, {}, damaged, "schema"} : header.error();
    const PassingFile copy(into);
    PassingFile made(into);
    auto rescued = guarded(damaged, Doing::reading, [&] {
        copyDamaged(damaged, copy.path(), header);
        Rescued found = copyIntoNew(copy.path(), made.path(), nothing, headway.part(0, 0.7));
        if (found.rows == 0) throw Refused{nothing};
        mendNew(damaged, made.path(), found, headway.part(0.8, 1));
        return found;
    });
    if (!rescued) { // told by the name that a person knows
        Refusal why = rescued.error();
        if (why.offending == copy.path() || why.offending == made.path()) why.offending = into;
        throw Refused{std::move(why)};
    }
    takeRights(damaged, made.path());
    made.placeNewBook(realName(into, Doing::writing));
    return *rescued;
}

} // namespace

Outcome<Rescued> rescueBook(const std::string& damaged, std::string& into, const GoOn& goOn) {
    return guarded(damaged, Doing::reading, [&] {
        if (into.empty()) into = datedName(damaged, "rescued", OpenBook::clock());
        if (liesThere(into)) fail(RefusalCode::fileExists, into);
        return rescue(damaged, into, Headway(goOn));
    });
}

} // namespace hammerline
