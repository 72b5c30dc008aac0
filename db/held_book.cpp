#include "db/held_book.h"

#include <fcntl.h>
#include <unistd.h>

#include <cerrno>
#include <chrono>
#include <thread>

namespace hammerline {
namespace {

constexpr off_t kPendingByte = 0x40000000; // then the reserved byte, then 510 shared ones
constexpr off_t kLockBytes = 512;
constexpr int kTries = 200;
constexpr std::chrono::milliseconds kBetween{50};

} // namespace

HeldBook::HeldBook(const std::string& path, const Headway& headway) : m_file(open(path.c_str(), O_RDWR | O_CLOEXEC)) {
    if (m_file < 0) return;
    struct flock wanted {};
    wanted.l_type = F_WRLCK;
    wanted.l_whence = SEEK_SET;
    wanted.l_start = kPendingByte;
    wanted.l_len = kLockBytes;
    try {
        // of this open file alone: a lock of the process would go when any other file of it on the book is closed
        for (int tries = 0; fcntl(m_file, F_OFD_SETLK, &wanted) != 0; ++tries) {
            const bool inUse = errno == EACCES || errno == EAGAIN;
            if (!inUse) return; // a share that knows no locks
            headway.at(1);
            if (tries == kTries) fail(RefusalCode::lockedBook, path, "locked");
            std::this_thread::sleep_for(kBetween);
        }
    } catch (...) {
        close(m_file);
        throw;
    }
}

HeldBook::~HeldBook() {
    if (m_file >= 0) close(m_file); // and with it the lock
}

} // namespace hammerline
