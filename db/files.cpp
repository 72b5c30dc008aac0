#include "db/files.h"

#include "db/guard.h"
#include "db/uuid.h"

#include <fcntl.h>
#include <fmt/chrono.h>
#include <fmt/format.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <cstdio>
#include <filesystem>

namespace hammerline {
namespace {

namespace fs = std::filesystem;

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

} // namespace

Refusal readingRefusal(const std::string& path, int error) {
    const char* cause = error == ENOENT || error == ENOTDIR ? "missing"
                        : error == EACCES || error == EPERM ? "permission"
                        : error == EISDIR                   ? "folder"
                                                            : "input-output";
    return {RefusalCode::cannotRead, {}, path, cause};
}

Refusal writingRefusal(const std::string& path, int error) {
    if (error == ENOSPC || error == EDQUOT) return {RefusalCode::diskFull, {}, path, "disk-full"};
    if (error == EEXIST) return {RefusalCode::fileExists, {}, path, {}};
    const char* cause = error == EACCES || error == EPERM || error == EROFS ? "permission"
                        : error == ENOENT || error == ENOTDIR               ? "missing"
                        : error == EISDIR                                   ? "folder"
                                                                            : "input-output";
    return {RefusalCode::cannotWrite, {}, path, cause};
}

fs::path folderOf(const std::string& path) {
    const fs::path folder = fs::path(path).parent_path();
    return folder.empty() ? fs::path(".") : folder;
}

PassingFile::PassingFile(const std::string& path)
    : m_path((folderOf(path) / ("." + fs::path(path).filename().string() + ".part-" + text(newUuid()).substr(0, 8)))
                 .string())
    , m_target(path) {
    const std::string folder = folderOf(path).string();
    if (access(folder.c_str(), W_OK | X_OK) != 0) failWriting(path, errno);
}

PassingFile::~PassingFile() {
    if (m_placed) return;
    std::error_code ignored;
    fs::remove(m_path, ignored);
    fs::remove(m_path + "-journal", ignored);
}

void PassingFile::placeNew(const std::string& path) {
    syncPath(m_path, O_RDWR, path);
    if (link(m_path.c_str(), path.c_str()) != 0) {
        if (errno == EEXIST || fs::exists(path)) fail(RefusalCode::fileExists, path);
        // a stick or a share without hard links
        if (std::rename(m_path.c_str(), path.c_str()) != 0) failWriting(path, errno);
        m_placed = true;
    }
    syncFolderOf(path);
}

void PassingFile::placeOver(const std::string& path) {
    syncPath(m_path, O_RDWR, path);
    if (std::rename(m_path.c_str(), path.c_str()) != 0) failWriting(path, errno);
    m_placed = true;
    syncFolderOf(path);
}

void copyFile(const std::string& from, const std::string& to) {
    std::error_code error;
    if (!fs::copy_file(from, to, fs::copy_options::overwrite_existing, error)) failWriting(to, error.value());
    fs::permissions(to, fs::perms::owner_read | fs::perms::owner_write, fs::perm_options::add, error);
}

void moveBook(const std::string& from, const std::string& to) {
    std::error_code error;
    if (fs::exists(to)) fail(RefusalCode::fileExists, to);
    if (std::rename(from.c_str(), to.c_str()) != 0) failWriting(from, errno);
    if (fs::exists(from + "-journal", error) &&
        std::rename((from + "-journal").c_str(), (to + "-journal").c_str()) != 0)
        failWriting(from + "-journal", errno);
    syncFolderOf(to);
}

std::string datedName(const std::string& path, const std::string& word, std::int64_t microseconds) {
    const fs::path book(path);
    const std::string date =
        fmt::format("{:%Y%m%d-%H%M%S}", fmt::gmtime(static_cast<std::time_t>(microseconds / 1'000'000)));
    for (int number = 1;; ++number) {
        const std::string name = fmt::format("{}.{}-{}{}{}", book.stem().string(), word, date,
                                             number > 1 ? fmt::format("-{}", number) : "", book.extension().string());
        const fs::path whole = book.parent_path() / name;
        if (!fs::exists(whole)) return whole.string();
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
