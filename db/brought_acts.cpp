#include "db/brought_acts.h"

#include <algorithm>

namespace hammerline {
namespace {

constexpr std::size_t kRemembered = 4096; // a file in which every reading has its own time is not held in memory

} // namespace

ActId BroughtActs::write(std::int64_t place, std::int64_t at, std::string_view kind) {
    if (m_session == 0) {
        Query session = m_book.query("INSERT INTO session (uuid, started_at, program) VALUES (?, ?, ?)");
        session << newUuid() << m_book.now() << m_book.writer.program;
        session.run();
        m_session = m_book.db.getLastInsertRowid();
    }
    Query insert =
        m_book.query("INSERT INTO act (session_id, seq, place, at, kind, brought) VALUES (?, ?, ?, ?, ?, 1)");
    insert << m_session << m_seq + 1 << place << at << kind;
    insert.run();
    ++m_seq;
    m_place = place;
    return m_book.db.getLastInsertRowid();
}

ActId BroughtActs::fresh(std::int64_t at, std::string_view kind) {
    return write(std::max(m_place + 1, nextPlace(m_book, m_book.now())), at, kind);
}

ActId BroughtActs::at(std::int64_t at, std::string_view kind) {
    if (const auto known = m_recent.find(at); known != m_recent.end()) return known->second;
    if (m_recent.size() >= kRemembered) m_recent.clear();
    return m_recent[at] = fresh(at, kind);
}

ActId BroughtActs::placed(std::int64_t place, std::int64_t at, std::string_view kind) {
    return write(std::max(m_place + 1, std::min(place, m_book.now())), at, kind);
}

void BroughtActs::finish() {
    if (m_session == 0) return;
    Query raise = m_book.query("UPDATE book SET merged_place = max(merged_place, (SELECT max(place) FROM act))");
    raise.run();
}

} // namespace hammerline
