// A file system for books that fails on purpose (SQLite's own seam, sqlite.org/vfs.html): the n-th write, sync,
// truncation, opening for writing or deletion, once or from then on.
#pragma once

namespace hammerline::bench {

struct DiskFault {
    int at = 0;          // which of them fails, from 1; 0: none
    int code = 0;        // SQLITE_FULL, SQLITE_IOERR_WRITE ...
    bool onward = false; // and all that come after
};

/// While it lives every book is opened through it; faults begin when one is set.
class FailingDisk {
public:
    FailingDisk();
    FailingDisk(const FailingDisk&) = delete;
    FailingDisk& operator=(const FailingDisk&) = delete;
    ~FailingDisk();
    static void set(DiskFault);
    /// The disk is well again; what has happened stays told.
    static void heal();
    /// Operations since the fault was set, the failed one included.
    static int count();
    static bool struck();
};

} // namespace hammerline::bench
