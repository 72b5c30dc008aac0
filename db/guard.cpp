#include "db/guard.h"

#include <SQLiteCpp/Exception.h>
#include <sqlite3.h>

#include <array>
#include <new>
#include <string_view>

namespace hammerline {
namespace {

using enum RefusalCode;

struct Mapped {
    int code; // primary code of SQLite
    RefusalCode reading, writing;
    std::string_view cause;
};

constexpr std::array kMapped = {
    Mapped{SQLITE_BUSY, lockedBook, lockedBook, "locked"},
    Mapped{SQLITE_LOCKED, lockedBook, lockedBook, "locked"},
    Mapped{SQLITE_FULL, diskFull, diskFull, "disk-full"},
    Mapped{SQLITE_READONLY, readOnlyBook, readOnlyBook, "read-only"},
    Mapped{SQLITE_IOERR, cannotRead, cannotWrite, "input-output"},
    Mapped{SQLITE_CANTOPEN, cannotRead, cannotWrite, "cannot-open"},
    Mapped{SQLITE_PERM, cannotRead, cannotWrite, "permission"},
    Mapped{SQLITE_AUTH, cannotRead, cannotWrite, "permission"},
    Mapped{SQLITE_CORRUPT, damagedBook, damagedBook, "malformed"},
    Mapped{SQLITE_NOTADB, notABook, notABook, "not-a-database"},
    Mapped{SQLITE_FORMAT, damagedBook, damagedBook, "malformed"},
    Mapped{SQLITE_CONSTRAINT, damagedBook, damagedBook, "constraint"},
    Mapped{SQLITE_MISMATCH, damagedBook, damagedBook, "constraint"},
    Mapped{SQLITE_TOOBIG, tooLarge, tooLarge, "too-large"},
    Mapped{SQLITE_NOMEM, tooLarge, tooLarge, "memory"},
    Mapped{SQLITE_INTERRUPT, cancelled, cancelled, "cancelled"},
};

Refusal refusalOf(const SQLite::Exception& thrown, const std::string& path, Doing doing) {
    const int extended = thrown.getExtendedErrorCode();
    if (extended == SQLITE_READONLY_DBMOVED) return {replacedFile, {}, path, "moved"};
    if (extended == SQLITE_READONLY_ROLLBACK || extended == SQLITE_READONLY_RECOVERY)
        return {readOnlyBook, {}, path, "hot-journal"};
    for (const auto& row : kMapped)
        if (row.code == (thrown.getErrorCode() & 0xff))
            return {doing == Doing::writing ? row.writing : row.reading, {}, path, std::string(row.cause)};
    return {damagedBook, {}, path, thrown.what()};
}

} // namespace

Refusal refusalInFlight(const std::string& path, Doing doing) {
    try {
        throw;
    } catch (const Refused& refused) {
        Refusal refusal = refused.refusal;
        if (refusal.code == damagedBook && refusal.offending.empty()) refusal.offending = path;
        return refusal;
    } catch (const SQLite::Exception& thrown) {
        return refusalOf(thrown, path, doing);
    } catch (const std::bad_alloc&) {
        return {tooLarge, {}, path, "memory"};
    } catch (const std::exception& thrown) {
        return {damagedBook, {}, path, thrown.what()};
    }
}

} // namespace hammerline
