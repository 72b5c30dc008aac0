// Rows of the reading table, gathered cell by cell in one scan.
#pragma once

#include "db/open_book.h"

#include <span>
#include <vector>

namespace hammerline {

struct ReadingRow {
    int trial{};
    ActId act{};
    std::optional<ActId> replaces;
    ActId origin{}; // the act that entered it: its own, or of the row that undo, redo or an import put here
    bool withdrawn = false;
    bool notFitted = false;
    Reading reading; // order and time of the act that entered it
};

struct CellRows {
    std::int64_t pass{};
    Cell cell;
    std::vector<ReadingRow> rows; // by trial, then act
};

std::string readingRowsSql(std::string_view condition);

class ReadingRows {
public:
    ReadingRows(OpenBook& book, Query& query) : m_book(book), m_query(query) { m_more = m_query.step(); }
    /// Null at the end. Cells of dimensions that this program does not know are passed over.
    const CellRows* nextCell();

private:
    ReadingRow row() const;
    OpenBook& m_book;
    Query& m_query;
    CellRows m_cell;
    bool m_more = false;
};

/// The rows that a person entered, the earlier first: what was put back counts once in its trial.
std::vector<const ReadingRow*> enteredIn(std::span<const ReadingRow>);

Measured measuredOf(OpenBook&, const CellRows&);

} // namespace hammerline
