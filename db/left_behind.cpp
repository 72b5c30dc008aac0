#include "db/left_behind.h"

#include "db/file_header.h"
#include "db/files.h"
#include "db/open_book.h"
#include "db/opening.h"
#include "db/verification.h"

#include <algorithm>
#include <filesystem>

namespace hammerline {
namespace {

namespace fs = std::filesystem;

constexpr std::string_view kMark = ".part-";
constexpr std::size_t kRandom = 8;                       // letters behind the mark
constexpr std::uintmax_t kLookedOver = 16 * 1024 * 1024; // bytes: a fifth of a second

/// ".hall.hammerline.part-1a2b3c4d", and of a copy: ".hall.backup-20261125-044512.hammerline.part-1a2b3c4d".
bool belongsTo(std::string_view name, const fs::path& book) {
    const bool whole = name.size() > 1 + kMark.size() + kRandom && name.front() == '.';
    if (!whole) return false;
    const std::string_view end = name.substr(name.size() - kMark.size() - kRandom);
    const bool random = end.find_first_not_of("0123456789abcdef", kMark.size()) == end.npos;
    if (!end.starts_with(kMark) || !random) return false;
    const std::string_view target = name.substr(1, name.size() - 1 - end.size());
    const std::string ofBook = book.filename().string(), stem = book.stem().string() + '.';
    return target == ofBook || (target.starts_with(stem) && target.ends_with(book.extension().string()));
}

LeftBehind lookedAt(const std::string& path, const std::string& book) {
    LeftBehind found{path, LeftBehind::Kind::broken, 0};
    std::error_code error;
    const bool second = fs::equivalent(path, book, error);
    if (second && !error) found.kind = LeftBehind::Kind::bookItself;
    if (found.kind == LeftBehind::Kind::bookItself || !readHeader(path)) return found;
    if (fs::file_size(path, error) > kLookedOver || error) {
        found.kind = LeftBehind::Kind::large;
        return found;
    }
    (void)guarded(path, Doing::reading, [&] {
        const auto open = openBook(path, OpenMode::readOnly, {}, {});
        if (!verifyAll(open->db, kSchemaVersion, {}).sound) return;
        found.newest = open->db.execAndGet("SELECT coalesce(max(at), 0) FROM act").getInt64();
        found.kind = LeftBehind::Kind::sound;
    });
    return found;
}

} // namespace

std::vector<LeftBehind> leftBehind(const std::string& named) {
    std::vector<LeftBehind> found;
    (void)guarded(named, Doing::reading, [&] {
        const std::string book = realName(named, Doing::reading);
        std::vector<std::string> paths;
        std::error_code error;
        for (fs::directory_iterator at(folderOf(book), error), end; !error && at != end; at.increment(error))
            if (belongsTo(at->path().filename().string(), book) && !isBeingWritten(at->path().string()))
                paths.push_back(at->path().string());
        std::sort(paths.begin(), paths.end());
        for (const std::string& path : paths)
            found.push_back(lookedAt(path, book));
    });
    return found;
}

Outcome<std::string> keepLeftBehind(const LeftBehind& left, const std::string& book) {
    return guarded(left.path, Doing::writing, [&] {
        std::string kept = datedName(realName(book, Doing::reading), "left-over", OpenBook::clock());
        keepAlso(left.path, kept);
        if (const auto deleted = deleteLeftBehind(left); !deleted) throw Refused{deleted.error()};
        return kept;
    });
}

Outcome<void> deleteLeftBehind(const LeftBehind& left) {
    return guarded(left.path, Doing::writing, [&] {
        std::error_code error;
        fs::remove(left.path + "-journal", error);
        fs::remove(left.path, error);
        if (error) throw Refused{writingRefusal(left.path, error.value())};
    });
}

} // namespace hammerline
