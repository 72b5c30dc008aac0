#include "app/commands/file_pieces.h"

#include "db/files.h"

#include <unistd.h>

#include <cerrno>
#include <filesystem>

namespace hammerline::app {
namespace {

constexpr std::size_t kPiece = 1U << 16U;

} // namespace

Outcome<FilePieces> FilePieces::open(const std::string& path) {
    if (path == "-") return FilePieces(path, ::fdopen(::dup(STDIN_FILENO), "rb"));
    if (const auto file = requireFile(path); !file) return tl::unexpected(file.error());
    std::FILE* file = std::fopen(path.c_str(), "rb");
    if (file == nullptr) return tl::unexpected(readingRefusal(path, errno));
    return FilePieces(path, file);
}

FilePieces::FilePieces(std::string path, std::FILE* file) : m_path(std::move(path)), m_file(file) {
    std::error_code none;
    if (!std::filesystem::is_regular_file(m_path, none)) return;
    const auto size = std::filesystem::file_size(m_path, none);
    if (!none) m_size = static_cast<std::int64_t>(size);
}

Outcome<void> FilePieces::fill() {
    m_piece.resize(kPiece);
    const std::size_t read = std::fread(m_piece.data(), 1, m_piece.size(), m_file.get());
    m_piece.resize(read);
    const bool broken = std::ferror(m_file.get()) != 0;
    if (broken && errno != EINTR) return tl::unexpected(readingRefusal(m_path, errno));
    std::clearerr(m_file.get());
    return {};
}

Outcome<std::string_view> FilePieces::peek() {
    if (!m_peeked)
        if (const auto filled = fill(); !filled) return tl::unexpected(filled.error());
    m_peeked = true;
    return std::string_view{m_piece};
}

Outcome<std::string_view> FilePieces::next() {
    const auto piece = peek();
    m_peeked = false;
    if (piece) m_position += static_cast<std::int64_t>(piece->size());
    return piece;
}

Outcome<std::string> FilePieces::rest(std::size_t mostMegabytes) {
    std::string bytes;
    while (true) {
        const auto piece = next();
        if (!piece) return tl::unexpected(piece.error());
        if (piece->empty()) return bytes;
        bytes += *piece;
        if (bytes.size() > mostMegabytes << 20U)
            return refuse(RefusalCode::tooLarge, m_path, std::to_string(mostMegabytes) + " MB");
    }
}

bool FilePieces::rewind() {
    if (!canRewind() || std::fseek(m_file.get(), 0, SEEK_SET) != 0) return false;
    m_peeked = false;
    m_position = 0;
    return true;
}

} // namespace hammerline::app
