#include "db/document.h"

#include "db/file_header.h"
#include "db/files.h"
#include "db/guard.h"

#include <fcntl.h>
#include <unistd.h>

#include <cerrno>

namespace hammerline {
namespace {

constexpr unsigned kDocumentMode = 0666; // less what the person's mask takes off

/// The error number, 0 where all of it was written.
int writeInto(const std::string& path, std::string_view bytes) {
    const int file = open(path.c_str(), O_WRONLY | O_CLOEXEC);
    if (file < 0) return errno;
    int error = 0;
    while (!bytes.empty() && error == 0) {
        const ssize_t written = write(file, bytes.data(), bytes.size());
        if (written > 0) bytes.remove_prefix(static_cast<std::size_t>(written));
        if (written == 0) error = ENOSPC;
        if (written < 0 && errno != EINTR) error = errno;
    }
    if (close(file) != 0 && error == 0) error = errno;
    return error;
}

} // namespace

bool isBook(const std::string& path) {
    const auto header = readHeader(path);
    return header || header.error().code == RefusalCode::damagedBook || header.error().detail == "no-version" ||
           header.error().detail == "journal";
}

Outcome<void> writeDocument(const std::string& path, std::string_view bytes) {
    return guarded(path, Doing::writing, [&] {
        std::error_code ignored;
        const auto kind = std::filesystem::status(path, ignored).type();
        if (kind == std::filesystem::file_type::directory) fail(RefusalCode::cannotWrite, path, "folder");
        if (kind != std::filesystem::file_type::not_found && kind != std::filesystem::file_type::regular)
            fail(RefusalCode::cannotWrite, path, "not-a-file");
        if (kind == std::filesystem::file_type::regular && access(path.c_str(), R_OK | W_OK) != 0)
            throw Refused{writingRefusal(path, errno)}; // protected, and what it is cannot be known
        if (isBook(path)) fail(RefusalCode::fileExists, path);
        PassingFile made(path, kDocumentMode);
        if (const int error = writeInto(made.path(), bytes); error != 0) throw Refused{writingRefusal(path, error)};
        made.placeOver(path);
    });
}

} // namespace hammerline
