// The CHECKs of all tables, asked once of all rows that a long work has written, and not at every row: SQLite builds
// the list of an IN anew for each row, which takes a third of the time of a large import.
#pragma once

#include "db/open_book.h"

namespace hammerline {

/// From here on rows are written unchecked, until `ask` or the end of the object.
class ChecksAtEnd {
public:
    explicit ChecksAtEnd(OpenBook&);
    ~ChecksAtEnd();
    ChecksAtEnd(const ChecksAtEnd&) = delete;
    ChecksAtEnd& operator=(const ChecksAtEnd&) = delete;

    /// Of all rows of the acts that came since; from here on every row is checked as it is written. Fails with
    /// damagedBook ("constraint"), as a row would have done: nothing may be kept then.
    void ask();

private:
    void askAsWritten(bool);

    OpenBook& m_book;
    std::int64_t m_before = 0; // the newest act then
};

/// What stands in the parentheses of each CHECK of a CREATE TABLE.
std::vector<std::string> checksIn(std::string_view createTable);

} // namespace hammerline
