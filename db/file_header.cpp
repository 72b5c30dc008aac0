#include "db/file_header.h"

#include "db/files.h"

#include <algorithm>
#include <array>
#include <cerrno>
#include <cstring>
#include <filesystem>
#include <fstream>

namespace hammerline {
namespace {

constexpr std::string_view kMagic{"SQLite format 3\0", 16};
using Bytes = std::array<unsigned char, kHeaderBytes>;

std::uint32_t bigEndian(const Bytes& bytes, std::size_t at, std::size_t count) {
    std::uint32_t value = 0;
    for (std::size_t i = 0; i < count; ++i)
        value = value << 8 | bytes[at + i];
    return value;
}

/// Page count as the header says it, when it can be trusted (its change counter agrees), and the true size.
bool shorterThanItSays(const Bytes& bytes, std::uint64_t size) {
    const auto page = bigEndian(bytes, 16, 2);
    const std::uint64_t pageSize = page == 1 ? 65536 : page;
    const bool counted = bigEndian(bytes, 24, 4) == bigEndian(bytes, 92, 4);
    return counted && bigEndian(bytes, 28, 4) * pageSize > size;
}

bool saneShape(const Bytes& bytes) {
    const auto page = bigEndian(bytes, 16, 2);
    const bool powerOfTwo = page == 1 || (page >= 512 && (page & (page - 1)) == 0);
    return powerOfTwo && bytes[21] == 64 && bytes[22] == 32 && bytes[23] == 32;
}

} // namespace

bool journalNamesAFile(const std::string& book) {
    // at its end: the name, its length, a checksum, and once more the mark that a journal begins with
    constexpr std::array<unsigned char, 8> mark = {0xd9, 0xd5, 0x05, 0xf9, 0x20, 0xa1, 0x63, 0xd7};
    constexpr std::streamoff kTail = 16;
    std::ifstream file(book + "-journal", std::ios::binary | std::ios::ate);
    const std::streamoff size = file.tellg();
    Bytes tail{};
    if (!file || size < kTail) return false;
    file.seekg(size - kTail).read(reinterpret_cast<char*>(tail.data()), kTail);
    return file && std::equal(mark.begin(), mark.end(), tail.begin() + 8) && bigEndian(tail, 0, 4) != 0;
}

Outcome<FileHeader> readHeader(const std::string& path) {
    using enum RefusalCode;
    std::error_code error;
    const auto kind = std::filesystem::status(path, error).type();
    if (kind == std::filesystem::file_type::not_found) return refuse(cannotRead, path, "missing");
    if (kind == std::filesystem::file_type::directory) return refuse(cannotRead, path, "folder");
    if (kind != std::filesystem::file_type::regular)
        return tl::unexpected(error ? readingRefusal(path, error.value())
                                    : Refusal{cannotRead, {}, path, "not-a-file"});
    errno = 0;
    std::ifstream file(path, std::ios::binary);
    if (!file) return tl::unexpected(readingRefusal(path, errno));
    Bytes bytes{};
    file.read(reinterpret_cast<char*>(bytes.data()), kHeaderBytes);
    const auto got = static_cast<std::size_t>(file.gcount());
    if (got == 0) return refuse(notABook, path, "empty");
    if (got < kHeaderBytes || std::memcmp(bytes.data(), kMagic.data(), kMagic.size()) != 0)
        return refuse(notABook, path, "not-a-database");
    if (bigEndian(bytes, 68, 4) != kApplicationId) return refuse(notABook, path, "other-application");
    FileHeader header;
    header.userVersion = bigEndian(bytes, 60, 4);
    header.bytes = std::filesystem::file_size(path, error);
    header.writeAheadLog = bytes[18] == 2 || bytes[19] == 2;
    const auto journal = std::filesystem::file_size(path + "-journal", error);
    header.journalBeside = !error && journal > 0;
    if (header.journalBeside && journalNamesAFile(path)) return refuse(notABook, path, "journal");
    if (header.userVersion == 0) return refuse(notABook, path, "no-version");
    if (!saneShape(bytes)) return refuse(damagedBook, path, "header");
    if (!header.journalBeside && shorterThanItSays(bytes, header.bytes)) return refuse(damagedBook, path, "truncated");
    return header;
}

} // namespace hammerline
