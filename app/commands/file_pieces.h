// A file read in pieces, so that its size does not matter; a pipe will do.
#pragma once

#include "core/refusal/refusal.h"

#include <cstdio>
#include <memory>
#include <optional>

namespace hammerline::app {

class FilePieces {
public:
    /// Refuses cannotRead with path and cause.
    static Outcome<FilePieces> open(const std::string& path);

    /// The first piece, which next() will give again.
    Outcome<std::string_view> peek();
    /// Empty at the end, and where a signal has come in between. Refuses cannotRead.
    Outcome<std::string_view> next();
    /// All that is left. Refuses tooLarge beyond so many.
    Outcome<std::string> rest(std::size_t mostMegabytes);

    bool canRewind() const { return m_size.has_value(); }
    bool rewind();
    /// Bytes given so far, and of the whole file (none: a pipe).
    std::int64_t position() const { return m_position; }
    std::optional<std::int64_t> size() const { return m_size; }

private:
    struct Close {
        void operator()(std::FILE* file) const { std::fclose(file); }
    };
    FilePieces(std::string path, std::FILE* file);
    Outcome<void> fill();

    std::string m_path;
    std::unique_ptr<std::FILE, Close> m_file;
    std::string m_piece;
    bool m_peeked = false;
    std::int64_t m_position = 0;
    std::optional<std::int64_t> m_size;
};

} // namespace hammerline::app
