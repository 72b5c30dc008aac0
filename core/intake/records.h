// Records of delimited text one at a time (RFC 4180, and what hands and spreadsheets make of it): nothing is held but
// the record being read.
#pragma once

#include "core/refusal/refusal.h"

#include <vector>

namespace hammerline {

class RecordReader {
public:
    /// `text` is UTF-8 without a mark and outlives the reader (or its next refill).
    RecordReader(std::string_view text, char separator) : m_text(text), m_separator(separator) {}

    /// Goes on in another text, which begins where the last record read ended. With `more` to come, a record that
    /// touches the end is left for then: next() says false.
    void refill(std::string_view text, bool more) {
        m_text = text;
        m_at = 0;
        m_more = more;
    }

    /// The next record, blank lines skipped; false at the end. With `expected` fields known, a record that does not
    /// come out so is read again with an inch sign before a closing quote left as it was typed ("1/8"" for 1/8").
    /// Refuses badTable with line and column: "unterminated-quote", "text-after-quote", "too-many-columns"
    /// (more than 4,096: a line of separators alone may be as long as the file).
    Outcome<bool> next(std::vector<std::string>& fields, std::size_t expected = 0);
    /// The line, from 1, in which the record just read begins.
    int line() const { return m_line; }
    /// Bytes of the text that have been read.
    std::size_t position() const { return m_at; }

private:
    enum class Fault { none, unterminated, textAfter, tooMany };
    struct Scan {
        std::size_t end{};   // behind the record and its line break
        std::size_t count{}; // fields
        Fault fault = Fault::none;
        std::size_t faultAt{};
    };
    Scan scan(std::vector<std::string>& fields, bool inchSigns) const;
    std::size_t quotedField(std::size_t at, std::string& field, bool inchSigns, Scan&) const;
    bool endsField(std::size_t at) const;
    bool accept(std::vector<std::string>& fields, const Scan&);
    void countLines(std::size_t from, std::size_t to);

    std::string_view m_text;
    char m_separator;
    std::size_t m_at = 0;
    bool m_more = false;
    int m_line = 1;
    int m_nextLine = 1;
};

} // namespace hammerline
