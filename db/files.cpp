#include "db/files.h"

#include "db/guard.h"
#include "db/uuid.h"

#include <fcntl.h>
#include <fmt/chrono.h>
#include <fmt/format.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <cerrno>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <filesystem>

namespace hammerline {
namespace {

namespace fs = std::filesystem;

std::int64_t nowInMicroseconds() {
    using namespace std::chrono;
    return duration_cast<microseconds>(system_clock::now().time_since_epoch()).count();
}

[[noreturn]] void failWriting(const std::string& path, int error) {
    throw Refused{writingRefusal(path, error)};
}

/// What goes wrong is said of the file that a person knows.
void syncPath(const std::string& path, int flags, const std::string& known) {
    const int file = open(path.c_str(), flags | O_CLOEXEC);
    if (file < 0) failWriting(known, errno);
    const int synced = fsync(file);
    const int error = errno;
    close(file);
    if (synced != 0 && error != EINVAL) failWriting(known, error); // EINVAL: a folder on a share that cannot sync
}

void syncFolderOf(const std::string& path) {
    syncPath(folderOf(path).string(), O_RDONLY | O_DIRECTORY, path);
}

constexpr off_t kHeldByte = 0x40000400; // SQLite's own end at 0x40000200

struct flock heldByte() {
    struct flock held {};
    held.l_type = F_WRLCK;
    held.l_whence = SEEK_SET;
    held.l_start = kHeldByte;
    held.l_len = 1;
    return held;
}

constexpr std::array<const char*, 3> kCompanions = {"-journal", "-wal", "-shm"};

} // namespace

std::string realName(const std::string& path, Doing doing) {
    const auto refusal = [&](int error) {
        return doing == Doing::writing ? writingRefusal(path, error) : readingRefusal(path, error);
    };
    const auto resolved = [](const std::string& name) -> std::string {
        char* found = ::realpath(name.c_str(), nullptr);
        if (found == nullptr) return {};
        std::string whole(found);
        std::free(found);
        return whole;
    };
    errno = 0;
    if (std::string whole = resolved(path); !whole.empty()) {
        std::error_code ignored;
        if (fs::is_directory(whole, ignored)) throw Refused{refusal(EISDIR)};
        return whole;
    }
    const int error = errno;
    // a link to nothing stays refused: what is to be made has to have a name of its own
    const bool notThere = error == ENOENT && !liesThere(path);
    if (!notThere) throw Refused{refusal(error)};
    const std::string folder = resolved(folderOf(path).string());
    if (folder.empty()) throw Refused{refusal(errno)};
    return (fs::path(folder) / fs::path(path).filename()).string();
}

bool liesThere(const std::string& path) {
    std::error_code error;
    return fs::symlink_status(path, error).type() != fs::file_type::not_found;
}

Outcome<void> requireFile(const std::string& path) {
    std::error_code ignored;
    const auto kind = fs::status(path, ignored).type();
    if (kind == fs::file_type::directory) return tl::unexpected(readingRefusal(path, EISDIR));
    const bool endless = kind == fs::file_type::fifo || kind == fs::file_type::character ||
                         kind == fs::file_type::block || kind == fs::file_type::socket;
    if (endless) return refuse(RefusalCode::cannotRead, path, "not-a-file");
    return {};
}

void setCompanionsAside(const std::string& path) {
    bool moved = false;
    for (const char* companion : kCompanions) {
        const std::string left = path + companion;
        if (!liesThere(left)) continue;
        const std::string aside = datedName(left, "left-over", nowInMicroseconds());
        if (std::rename(left.c_str(), aside.c_str()) != 0) failWriting(left, errno);
        moved = true;
    }
    if (moved) syncFolderOf(path);
}

void takeRights(const std::string& from, const std::string& to) {
    struct stat found {};
    if (stat(from.c_str(), &found) == 0) (void)chmod(to.c_str(), (found.st_mode & 0777) | S_IRUSR | S_IWUSR);
}

void keepAlso(const std::string& path, const std::string& as) {
    if (link(path.c_str(), as.c_str()) != 0) {
        if (errno == EEXIST) fail(RefusalCode::fileExists, as);
        const bool noLinks = errno == EPERM || errno == EOPNOTSUPP || errno == ENOSYS || errno == EMLINK;
        if (!noLinks) failWriting(as, errno);
        PassingFile copy(as);
        copyFile(path, copy.path());
        copy.placeNew(as);
    }
    syncFolderOf(as);
}

Refusal readingRefusal(const std::string& path, int error) {
    const char* cause = error == ENOENT || error == ENOTDIR ? "missing"
                        : error == EACCES || error == EPERM ? "permission"
                        : error == EISDIR                   ? "folder"
                        : error == ENAMETOOLONG             ? "name-too-long"
                        : error == ELOOP                    ? "circle-of-links"
                                                            : "input-output";
    return {RefusalCode::cannotRead, {}, path, cause};
}

Refusal writingRefusal(const std::string& path, int error) {
    if (error == ENOSPC || error == EDQUOT) return {RefusalCode::diskFull, {}, path, "disk-full"};
    if (error == EEXIST) return {RefusalCode::fileExists, {}, path, {}};
    const char* cause = error == EACCES || error == EPERM || error == EROFS ? "permission"
                        : error == ENOENT || error == ENOTDIR               ? "missing"
                        : error == EISDIR                                   ? "folder"
                        : error == ENAMETOOLONG                             ? "name-too-long"
                        : error == ELOOP                                    ? "circle-of-links"
                                                                            : "input-output";
    return {RefusalCode::cannotWrite, {}, path, cause};
}

fs::path folderOf(const std::string& path) {
    const fs::path folder = fs::path(path).parent_path();
    return folder.empty() ? fs::path(".") : folder;
}

PassingFile::PassingFile(const std::string& path, unsigned mode)
    : m_path((folderOf(path) / ("." + fs::path(path).filename().string() + ".part-" + text(newUuid()).substr(0, 8)))
                 .string())
    , m_target(path) {
    const std::string folder = folderOf(path).string();
    if (access(folder.c_str(), W_OK | X_OK) != 0) failWriting(path, errno);
    m_file = open(m_path.c_str(), O_RDWR | O_CREAT | O_EXCL | O_CLOEXEC, mode);
    if (m_file < 0) failWriting(path, errno);
    struct flock held = heldByte();
    (void)fcntl(m_file, F_OFD_SETLK, &held); // a share that knows no locks: then it counts as left behind
}

/// Before anybody opens it under its true name: closing a file gives up the locks that SQLite has on it.
void PassingFile::letGo() {
    if (m_file >= 0) close(m_file);
    m_file = -1;
}

bool isBeingWritten(const std::string& path) {
    const int file = open(path.c_str(), O_RDONLY | O_CLOEXEC);
    if (file < 0) return false;
    struct flock held = heldByte();
    const bool known = fcntl(file, F_OFD_GETLK, &held) == 0;
    close(file);
    return known && held.l_type != F_UNLCK;
}

PassingFile::~PassingFile() {
    letGo();
    if (m_placed) return;
    std::error_code ignored;
    fs::remove(m_path, ignored);
    fs::remove(m_path + "-journal", ignored);
}

void PassingFile::placeNew(const std::string& path) {
    letGo();
    syncPath(m_path, O_RDWR, path);
    if (link(m_path.c_str(), path.c_str()) != 0) {
        if (errno == EEXIST || liesThere(path)) fail(RefusalCode::fileExists, path);
        // a stick or a share without hard links
        if (std::rename(m_path.c_str(), path.c_str()) != 0) failWriting(path, errno);
        m_placed = true;
    }
    try {
        syncFolderOf(path);
    } catch (const Refused&) { // nothing lay there before: it goes again, or is said to be there
        if (std::remove(path.c_str()) != 0) fail(RefusalCode::cannotWrite, path, kKeptUnsynced);
        throw;
    }
}

void PassingFile::placeNewBook(const std::string& path) {
    if (liesThere(path)) fail(RefusalCode::fileExists, path);
    setCompanionsAside(path);
    placeNew(path);
}

void PassingFile::placeOver(const std::string& path) {
    letGo();
    takeRights(path, m_path); // who may read it stays as it was
    syncPath(m_path, O_RDWR, path);
    if (std::rename(m_path.c_str(), path.c_str()) != 0) failWriting(path, errno);
    m_placed = true;
    try {
        syncFolderOf(path);
    } catch (const Refused&) {
        fail(RefusalCode::cannotWrite, path, kKeptUnsynced);
    }
}

void copyFile(const std::string& from, const std::string& to) {
    std::error_code error;
    if (!fs::copy_file(from, to, fs::copy_options::overwrite_existing, error)) failWriting(to, error.value());
    fs::permissions(to, fs::perms::owner_read | fs::perms::owner_write, fs::perm_options::add, error);
}

std::string datedName(const std::string& path, const std::string& word, std::int64_t microseconds) {
    const fs::path book(path);
    const std::string date =
        fmt::format("{:%Y%m%d-%H%M%S}", fmt::gmtime(static_cast<std::time_t>(microseconds / 1'000'000)));
    for (int number = 1;; ++number) {
        const std::string name = fmt::format("{}.{}-{}{}{}", book.stem().string(), word, date,
                                             number > 1 ? fmt::format("-{}", number) : "", book.extension().string());
        const fs::path whole = book.parent_path() / name;
        if (!liesThere(whole.string())) return whole.string();
    }
}

std::vector<std::string> datedFiles(const std::string& path, const std::string& word) {
    const fs::path book(path);
    const std::string start = book.stem().string() + "." + word + "-", end = book.extension().string();
    std::vector<std::string> found;
    std::error_code error;
    for (const auto& entry : fs::directory_iterator(folderOf(path), error)) {
        const std::string name = entry.path().filename().string();
        if (name.size() < start.size() + 15 + end.size() || !name.starts_with(start) || !name.ends_with(end)) continue;
        const std::string date = name.substr(start.size(), name.size() - start.size() - end.size());
        if (date.find_first_not_of("0123456789-") == std::string::npos) found.push_back(entry.path().string());
    }
    std::sort(found.begin(), found.end());
    return found;
}

} // namespace hammerline
