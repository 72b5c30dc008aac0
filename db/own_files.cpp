#include "db/own_files.h"

#include <SQLiteCpp/Exception.h>
#include <sqlite3.h>

#include <map>
#include <memory>

namespace hammerline {
namespace {

/// All of the base but for the opening.
struct OwnFiles : sqlite3_vfs {
    OwnFiles(sqlite3_vfs& over, std::string as) : sqlite3_vfs(over), base(over), name(std::move(as)) {
        zName = name.c_str();
        xOpen = open;
    }

    static int open(sqlite3_vfs* vfs, const char* path, sqlite3_file* file, int flags, int* outFlags) {
        file->pMethods = nullptr; // SQLite closes what has methods, even if it was not opened
        if ((flags & SQLITE_OPEN_SUPER_JOURNAL) != 0) return SQLITE_CANTOPEN;
        sqlite3_vfs& base = static_cast<OwnFiles*>(vfs)->base;
        return base.xOpen(&base, path, file, flags, outFlags);
    }

    sqlite3_vfs& base;
    std::string name;
};

} // namespace

std::string ownFilesOver(const std::string& base) {
    static std::map<std::string, std::unique_ptr<OwnFiles>> made; // SQLite knows them as long as the process lives
    if (const auto known = made.find(base); known != made.end()) return known->second->name;
    sqlite3_vfs* over = sqlite3_vfs_find(base.empty() ? nullptr : base.c_str());
    if (!over) throw SQLite::Exception("no such file system", SQLITE_ERROR);
    auto own = std::make_unique<OwnFiles>(*over, "own-files-" + base);
    if (const int failed = sqlite3_vfs_register(own.get(), 0); failed != SQLITE_OK)
        throw SQLite::Exception("file system not taken", failed);
    return made.emplace(base, std::move(own)).first->second->name;
}

} // namespace hammerline
