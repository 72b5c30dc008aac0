// Acts that something came with: what an import brings keeps its own time.
#pragma once

#include "db/acts.h"

#include <unordered_map>

namespace hammerline {

/// Rows of an import name such an act as their origin. They stand in a session of their own, as after a merge, and are
/// marked as brought: undo goes back by the import as a whole and passes over them.
class BroughtActs {
public:
    explicit BroughtActs(OpenBook& book) : m_book(book) {}

    /// An act of that time, placed behind everything in the book. The same time in a row is one act.
    ActId at(std::int64_t at, std::string_view kind);
    /// The same, always an act of its own.
    ActId fresh(std::int64_t at, std::string_view kind);
    /// An act at the place where it stood (never behind the clock); to be asked for in the order of places.
    ActId placed(std::int64_t place, std::int64_t at, std::string_view kind);
    /// Later acts come behind these.
    void finish();

private:
    ActId write(std::int64_t place, std::int64_t at, std::string_view kind);

    OpenBook& m_book;
    std::int64_t m_session = 0;
    std::int64_t m_seq = 0;
    std::int64_t m_place = 0;
    std::unordered_map<std::int64_t, ActId> m_recent;
};

} // namespace hammerline
