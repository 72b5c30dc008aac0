// Preloaded into the program: its N-th file call inside one folder fails, or the process is killed there.
//   HAMMERLINE_CALLS_IN      the folder; names and files outside it are left alone
//   HAMMERLINE_CALLS_FAIL    "N HOW ERROR": HOW is once, onward (the N-th and all that come after) or kill
//   HAMMERLINE_CALLS_COUNT   a file that counts the calls, with the name of the one that failed, seen even after a kill
//   HAMMERLINE_CALLS_LOG     every call with its bytes, for the replay of a power cut
// Each name of a call (open, pwrite64 ...) is the C library's own; see man 2 of the same name.
#include "tests/soak/calls_log.h"

#include <dlfcn.h>
#include <fcntl.h>
#include <sys/mman.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <csignal>
#include <cstdarg>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <initializer_list>

namespace {

constexpr int kMostFiles = 4096;

using hammerline::soak::CallsSeen;

struct State {
    char folder[4096] = {};
    std::size_t length = 0;
    long at = 0;
    bool onward = false, kills = false;
    int error = 0;
    CallsSeen* seen = nullptr;
    int log = -1;
    bool inside[kMostFiles] = {};
};

template <class F>
F next(const char* name) {
    return reinterpret_cast<F>(dlsym(RTLD_NEXT, name));
}

State& state() {
    static State* made = [] {
        static State now;
        const char* folder = std::getenv("HAMMERLINE_CALLS_IN");
        if (folder == nullptr) return &now;
        std::snprintf(now.folder, sizeof now.folder, "%s", folder);
        now.length = std::strlen(now.folder);
        char how[16] = {};
        if (const char* fail = std::getenv("HAMMERLINE_CALLS_FAIL"))
            if (std::sscanf(fail, "%ld %15s %d", &now.at, how, &now.error) < 2) std::abort();
        now.onward = std::strcmp(how, "onward") == 0;
        now.kills = std::strcmp(how, "kill") == 0;
        const auto open = next<int (*)(const char*, int, ...)>("open");
        if (const char* count = std::getenv("HAMMERLINE_CALLS_COUNT")) {
            const int file = open(count, O_RDWR | O_CLOEXEC);
            void* seen = mmap(nullptr, sizeof(CallsSeen), PROT_READ | PROT_WRITE, MAP_SHARED, file, 0);
            if (seen == MAP_FAILED) std::abort();
            now.seen = static_cast<CallsSeen*>(seen);
        }
        if (const char* log = std::getenv("HAMMERLINE_CALLS_LOG"))
            now.log = open(log, O_WRONLY | O_CREAT | O_APPEND | O_CLOEXEC, 0600);
        return &now;
    }();
    return *made;
}

bool isInside(const char* path) {
    const State& now = state();
    const bool under = now.length > 0 && std::strncmp(path, now.folder, now.length) == 0;
    return under && (path[now.length] == '/' || path[now.length] == '\0');
}
bool isInside(int file) {
    return file >= 0 && file < kMostFiles && state().inside[file];
}

bool isTurning(const char* name) {
    for (const char* turning : {"fsync", "fdatasync", "rename", "link", "unlink", "remove"})
        if (std::strcmp(name, turning) == 0) return true;
    return false;
}

/// Counts a call; true, with errno set, when it is to fail.
bool fails(const char* name) {
    State& now = state();
    if (now.seen == nullptr) return false;
    const auto number = static_cast<long>(__atomic_add_fetch(&now.seen->calls, 1, __ATOMIC_SEQ_CST));
    if (number < static_cast<long>(CallsSeen::kMost)) now.seen->turning[number] = isTurning(name);
    if (now.at == 0 || number < now.at) return false;
    if (number > now.at && !now.onward) return false;
    if (number == now.at) std::snprintf(now.seen->struck, sizeof now.seen->struck, "%s", name);
    if (now.kills) kill(getpid(), SIGKILL);
    errno = now.error;
    return true;
}

std::uint64_t nodeOf(int file) {
    struct stat found {};
    return fstat(file, &found) == 0 ? found.st_ino : 0;
}
std::uint64_t nodeOf(const char* path) {
    struct stat found {};
    return lstat(path, &found) == 0 ? found.st_ino : 0;
}

void note(hammerline::soak::CallKind kind, std::uint64_t node, const char* from, const char* to, std::uint64_t at,
          const void* bytes, std::size_t size) {
    if (state().log < 0) return;
    hammerline::soak::CallHead head{};
    head.kind = kind;
    head.node = node;
    head.at = at;
    head.size = size;
    std::snprintf(head.from, sizeof head.from, "%s", from ? from : "");
    std::snprintf(head.to, sizeof head.to, "%s", to ? to : "");
    const auto write = next<ssize_t (*)(int, const void*, size_t)>("write");
    if (write(state().log, &head, sizeof head) != static_cast<ssize_t>(sizeof head)) std::abort();
    if (bytes && write(state().log, bytes, size) != static_cast<ssize_t>(size)) std::abort();
}

using hammerline::soak::CallKind;

int opened(int file, const char* path, int flags) {
    if (file >= 0 && file < kMostFiles) state().inside[file] = true;
    if (file >= 0 && (flags & (O_CREAT | O_TRUNC)) != 0)
        note(CallKind::made, nodeOf(file), path, nullptr, (flags & O_TRUNC) != 0, nullptr, 0);
    return file;
}

template <class Call>
int openBy(const char* name, const char* path, int flags, const Call& call) {
    if (!isInside(path)) {
        const int file = call();
        if (file >= 0 && file < kMostFiles) state().inside[file] = false;
        return file;
    }
    return fails(name) ? -1 : opened(call(), path, flags);
}

mode_t modeOf(int flags, va_list rest) {
    return (flags & (O_CREAT | O_TMPFILE)) != 0 ? va_arg(rest, mode_t) : 0;
}

/// Where the next write of a descriptor goes.
std::uint64_t placeOf(int file) {
    const auto at = lseek(file, 0, SEEK_CUR);
    return at < 0 ? 0 : static_cast<std::uint64_t>(at);
}

ssize_t copied(int to, ssize_t bytes, std::uint64_t at) { // what the kernel copies, read back for the log
    if (bytes <= 0 || state().log < 0) return bytes;
    auto* buffer = static_cast<char*>(std::malloc(static_cast<std::size_t>(bytes)));
    char link[64];
    std::snprintf(link, sizeof link, "/proc/self/fd/%d", to);
    const int again = next<int (*)(const char*, int, ...)>("open")(link, O_RDONLY | O_CLOEXEC);
    if (pread(again, buffer, static_cast<std::size_t>(bytes), static_cast<off_t>(at)) == bytes)
        note(CallKind::wrote, nodeOf(to), nullptr, nullptr, at, buffer, static_cast<std::size_t>(bytes));
    close(again);
    std::free(buffer);
    return bytes;
}

} // namespace

extern "C" {

#define OPEN(name)                                                                                                     \
    int name(const char* path, int flags, ...) {                                                                       \
        va_list rest;                                                                                                  \
        va_start(rest, flags);                                                                                         \
        const mode_t mode = modeOf(flags, rest);                                                                       \
        va_end(rest);                                                                                                  \
        static const auto real = next<int (*)(const char*, int, ...)>(#name);                                          \
        return openBy(#name, path, flags, [&] { return real(path, flags, mode); });                                    \
    }
#define OPENAT(name)                                                                                                   \
    int name(int folder, const char* path, int flags, ...) {                                                           \
        va_list rest;                                                                                                  \
        va_start(rest, flags);                                                                                         \
        const mode_t mode = modeOf(flags, rest);                                                                       \
        va_end(rest);                                                                                                  \
        static const auto real = next<int (*)(int, const char*, int, ...)>(#name);                                     \
        return openBy(#name, path, flags, [&] { return real(folder, path, flags, mode); });                            \
    }
#define CREAT(name)                                                                                                    \
    int name(const char* path, mode_t mode) {                                                                          \
        static const auto real = next<int (*)(const char*, mode_t)>(#name);                                            \
        return openBy(#name, path, O_CREAT | O_TRUNC, [&] { return real(path, mode); });                               \
    }
#define FOPEN(name)                                                                                                    \
    FILE* name(const char* path, const char* mode) {                                                                   \
        static const auto real = next<FILE* (*)(const char*, const char*)>(#name);                                     \
        if (isInside(path) && fails(#name)) return nullptr;                                                            \
        return real(path, mode);                                                                                       \
    }
OPEN(open)
OPEN(open64)
OPENAT(openat)
OPENAT(openat64)
CREAT(creat)
CREAT(creat64)
FOPEN(fopen)
FOPEN(fopen64)

int close(int file) {
    static const auto real = next<int (*)(int)>("close");
    if (file >= 0 && file < kMostFiles) state().inside[file] = false;
    return real(file);
}

ssize_t write(int file, const void* bytes, size_t size) {
    static const auto real = next<ssize_t (*)(int, const void*, size_t)>("write");
    if (!isInside(file)) return real(file, bytes, size);
    if (fails("write")) return -1;
    const auto at = placeOf(file);
    const ssize_t written = real(file, bytes, size);
    if (written > 0)
        note(CallKind::wrote, nodeOf(file), nullptr, nullptr, at, bytes, static_cast<std::size_t>(written));
    return written;
}

#define PWRITE(name)                                                                                                   \
    ssize_t name(int file, const void* bytes, size_t size, off_t at) {                                                 \
        static const auto real = next<ssize_t (*)(int, const void*, size_t, off_t)>(#name);                            \
        if (!isInside(file)) return real(file, bytes, size, at);                                                       \
        if (fails(#name)) return -1;                                                                                   \
        const ssize_t written = real(file, bytes, size, at);                                                           \
        if (written > 0)                                                                                               \
            note(CallKind::wrote, nodeOf(file), nullptr, nullptr, static_cast<std::uint64_t>(at), bytes,               \
                 static_cast<std::size_t>(written));                                                                   \
        return written;                                                                                                \
    }
#define TRUNCATE(name)                                                                                                 \
    int name(int file, off_t size) {                                                                                   \
        static const auto real = next<int (*)(int, off_t)>(#name);                                                     \
        if (!isInside(file)) return real(file, size);                                                                  \
        if (fails(#name)) return -1;                                                                                   \
        note(CallKind::cut, nodeOf(file), nullptr, nullptr, static_cast<std::uint64_t>(size), nullptr, 0);             \
        return real(file, size);                                                                                       \
    }
#define SYNC(name)                                                                                                     \
    int name(int file) {                                                                                               \
        static const auto real = next<int (*)(int)>(#name);                                                            \
        if (!isInside(file)) return real(file);                                                                        \
        if (fails(#name)) return -1;                                                                                   \
        note(CallKind::synced, nodeOf(file), nullptr, nullptr, 0, nullptr, 0);                                         \
        return real(file);                                                                                             \
    }
#define SENDFILE(name)                                                                                                 \
    ssize_t name(int to, int from, off_t* at, size_t size) {                                                           \
        static const auto real = next<ssize_t (*)(int, int, off_t*, size_t)>(#name);                                   \
        if (!isInside(to)) return real(to, from, at, size);                                                            \
        if (fails(#name)) return -1;                                                                                   \
        const auto place = placeOf(to);                                                                                \
        return copied(to, real(to, from, at, size), place);                                                            \
    }
PWRITE(pwrite)
PWRITE(pwrite64)
TRUNCATE(ftruncate)
TRUNCATE(ftruncate64)
SYNC(fsync)
SYNC(fdatasync)
SENDFILE(sendfile)
SENDFILE(sendfile64)

ssize_t copy_file_range(int from, off64_t* fromAt, int to, off64_t* toAt, size_t size, unsigned flags) {
    static const auto real = next<ssize_t (*)(int, off64_t*, int, off64_t*, size_t, unsigned)>("copy_file_range");
    if (!isInside(to)) return real(from, fromAt, to, toAt, size, flags);
    if (fails("copy_file_range")) return -1;
    const auto place = toAt ? static_cast<std::uint64_t>(*toAt) : placeOf(to);
    return copied(to, real(from, fromAt, to, toAt, size, flags), place);
}

#define TWO_NAMES(name, kind)                                                                                          \
    int name(const char* from, const char* to) {                                                                       \
        static const auto real = next<int (*)(const char*, const char*)>(#name);                                       \
        if (!isInside(to)) return real(from, to);                                                                      \
        if (fails(#name)) return -1;                                                                                   \
        const auto node = nodeOf(from);                                                                                \
        const int done = real(from, to);                                                                               \
        if (done == 0) note(kind, node, from, to, 0, nullptr, 0);                                                      \
        return done;                                                                                                   \
    }
TWO_NAMES(rename, CallKind::renamed)
TWO_NAMES(link, CallKind::linked)

#define ONE_NAME(name)                                                                                                 \
    int name(const char* path) {                                                                                       \
        static const auto real = next<int (*)(const char*)>(#name);                                                    \
        if (!isInside(path)) return real(path);                                                                        \
        if (fails(#name)) return -1;                                                                                   \
        const auto node = nodeOf(path);                                                                                \
        const int done = real(path);                                                                                   \
        if (done == 0) note(CallKind::unlinked, node, path, nullptr, 0, nullptr, 0);                                   \
        return done;                                                                                                   \
    }
ONE_NAME(unlink)
ONE_NAME(remove)

} // extern "C"
