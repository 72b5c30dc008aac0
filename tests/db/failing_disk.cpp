#include "tests/db/failing_disk.h"

#include "db/connection.h"

#include <sqlite3.h>

#include <cstdlib>
#include <cstring>

namespace hammerline::bench {
namespace {

constexpr const char* kName = "failing-disk";

struct State {
    DiskFault fault;
    int count = 0;
    bool struck = false;
};
State& state() {
    static State now;
    return now;
}

/// SQLITE_OK, or the code that is due.
int due() {
    State& now = state();
    ++now.count;
    if (now.fault.at == 0 || now.count < now.fault.at) return SQLITE_OK;
    if (now.count > now.fault.at && !now.fault.onward) return SQLITE_OK;
    now.struck = true;
    return now.fault.code;
}

struct File {
    sqlite3_file base;
    sqlite3_file* real; // of the system, right behind this one
};
sqlite3_file* real(sqlite3_file* file) {
    return reinterpret_cast<File*>(file)->real;
}
sqlite3_vfs* system(sqlite3_vfs* vfs) {
    return static_cast<sqlite3_vfs*>(vfs->pAppData);
}

int closeFile(sqlite3_file* f) {
    return real(f)->pMethods ? real(f)->pMethods->xClose(real(f)) : SQLITE_OK;
}
int readFile(sqlite3_file* f, void* to, int bytes, sqlite3_int64 at) {
    return real(f)->pMethods->xRead(real(f), to, bytes, at);
}
int writeFile(sqlite3_file* f, const void* from, int bytes, sqlite3_int64 at) {
    const int failed = due();
    return failed != SQLITE_OK ? failed : real(f)->pMethods->xWrite(real(f), from, bytes, at);
}
int truncateFile(sqlite3_file* f, sqlite3_int64 bytes) {
    const int failed = due();
    return failed != SQLITE_OK ? failed : real(f)->pMethods->xTruncate(real(f), bytes);
}
int syncFile(sqlite3_file* f, int flags) {
    const int failed = due();
    return failed != SQLITE_OK ? failed : real(f)->pMethods->xSync(real(f), flags);
}
int sizeOfFile(sqlite3_file* f, sqlite3_int64* bytes) {
    return real(f)->pMethods->xFileSize(real(f), bytes);
}
int lockFile(sqlite3_file* f, int level) {
    return real(f)->pMethods->xLock(real(f), level);
}
int unlockFile(sqlite3_file* f, int level) {
    return real(f)->pMethods->xUnlock(real(f), level);
}
int reservedLock(sqlite3_file* f, int* held) {
    return real(f)->pMethods->xCheckReservedLock(real(f), held);
}
int controlFile(sqlite3_file* f, int op, void* argument) {
    return real(f)->pMethods->xFileControl(real(f), op, argument);
}
int sectorSize(sqlite3_file* f) {
    return real(f)->pMethods->xSectorSize(real(f));
}
int characteristics(sqlite3_file* f) {
    return real(f)->pMethods->xDeviceCharacteristics(real(f));
}

const sqlite3_io_methods& methods() {
    static const sqlite3_io_methods all = [] {
        sqlite3_io_methods made{};
        made.iVersion = 1; // no shared memory, no mapping: books use neither
        made.xClose = closeFile;
        made.xRead = readFile;
        made.xWrite = writeFile;
        made.xTruncate = truncateFile;
        made.xSync = syncFile;
        made.xFileSize = sizeOfFile;
        made.xLock = lockFile;
        made.xUnlock = unlockFile;
        made.xCheckReservedLock = reservedLock;
        made.xFileControl = controlFile;
        made.xSectorSize = sectorSize;
        made.xDeviceCharacteristics = characteristics;
        return made;
    }();
    return all;
}

int openFile(sqlite3_vfs* vfs, const char* name, sqlite3_file* f, int flags, int* got) {
    auto* file = reinterpret_cast<File*>(f);
    file->base.pMethods = nullptr;
    if (flags & SQLITE_OPEN_CREATE) // a book, a copy or a journal is made
        if (due() != SQLITE_OK) return SQLITE_CANTOPEN;
    file->real = reinterpret_cast<sqlite3_file*>(file + 1);
    const int opened = system(vfs)->xOpen(system(vfs), name, file->real, flags, got);
    if (opened == SQLITE_OK) file->base.pMethods = &methods();
    return opened;
}
int deleteFile(sqlite3_vfs* vfs, const char* name, int sync) {
    const int failed = due();
    return failed != SQLITE_OK ? SQLITE_IOERR_DELETE : system(vfs)->xDelete(system(vfs), name, sync);
}

sqlite3_vfs& failing() {
    static sqlite3_vfs vfs = [] {
        sqlite3_vfs* under = sqlite3_vfs_find(nullptr);
        sqlite3_vfs made = *under;
        made.iVersion = 2;
        made.szOsFile = static_cast<int>(sizeof(File)) + under->szOsFile;
        made.pNext = nullptr;
        made.zName = kName;
        made.pAppData = under;
        made.xOpen = openFile;
        made.xDelete = deleteFile;
        // the rest asks the system's own, which looks at no field of the one it is given
        return made;
    }();
    return vfs;
}

} // namespace

FailingDisk::FailingDisk() {
    sqlite3_vfs_register(&failing(), 0);
    set({});
    useFileSystem(kName);
}
FailingDisk::~FailingDisk() {
    set({});
    useFileSystem({});
}
void FailingDisk::set(DiskFault fault) {
    state() = {fault, 0, false};
}
void FailingDisk::heal() {
    state().fault = {};
}
int FailingDisk::count() {
    return state().count;
}
bool FailingDisk::struck() {
    return state().struck;
}

} // namespace hammerline::bench
