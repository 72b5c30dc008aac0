#include "db/acts.h"

#include "db/connection.h"
#include "db/subjects.h"

#include <algorithm>

namespace hammerline {
namespace {

constexpr std::int64_t kLastPlace = std::int64_t{1} << 62; // in microseconds since 1970: no clock of ours comes near

void enterSession(OpenBook& book, std::int64_t now) {
    Query insert = book.query("INSERT INTO session (uuid, started_at, program) VALUES (?, ?, ?)");
    insert << book.session.uuid << now << book.writer.program;
    insert.run();
    book.session.id = book.db.getLastInsertRowid();
}

} // namespace

std::int64_t nextPlace(OpenBook& book, std::int64_t now) {
    Query last = book.query("SELECT max(merged_place, coalesce((SELECT place FROM act ORDER BY id DESC LIMIT 1), 0)) "
                            "FROM book");
    if (!last.step()) fail(RefusalCode::damagedBook, {}, "book-row");
    if (last.number(0) >= kLastPlace) fail(RefusalCode::damagedBook, {}, "place");
    return std::max(now, last.number(0) + 1);
}

Refusal afterFailedCommit(const OpenBook& book, const ActDigests::Newest& newest, const Refusal& refusal) {
    const auto there = guarded(book.path, Doing::reading, [&] {
        SQLite::Database db = connect(book.path, Reach::write); // ends what was left half way
        Statements query(db);
        Query find = query("SELECT digest FROM act WHERE id = ?");
        find << newest.act;
        return find.step() && find.digest(0) == newest.digest;
    });
    if (there && !*there) return refusal;
    return {RefusalCode::cannotWrite, {}, book.path, there ? std::string(kKept) : "unsure"};
}

void requireAtRest(const OpenBook& book) {
    if (book.atWork()) fail(RefusalCode::lockedBook, book.path, "locked");
}

void requireWritable(const OpenBook& book) {
    if (book.newer) fail(RefusalCode::newerBook, book.path);
    if (book.readOnly) fail(RefusalCode::readOnlyBook, book.path, book.whyReadOnly);
    const auto file = fileAt(book.path);
    if (file != book.file) fail(RefusalCode::replacedFile, book.path, file ? "" : "gone");
}

ActId ActUnderWay::write(std::string_view kind, std::string_view source, std::optional<ActId> undoes) {
    const std::int64_t now = m_book.now();
    if (m_book.session.id == 0) enterSession(m_book, now);
    Query insert = m_book.query("INSERT INTO act (session_id, seq, place, at, kind, source, undoes) "
                                "VALUES (?, ?, ?, ?, ?, ?, ?)");
    insert << m_book.session.id << m_book.session.seq + 1 << nextPlace(m_book, now) << now << kind << source << undoes;
    insert.run();
    ++m_book.session.seq;
    m_at = now;
    return m_book.db.getLastInsertRowid();
}

ActId ActUnderWay::id() {
    if (m_id == 0) m_id = write(m_kind, m_source, m_undoes);
    return m_id;
}

void ActUnderWay::forgetIfEmpty() {
    for (const Subject& each : subjects()) {
        Query find = m_book.query("SELECT 1 FROM " + std::string(each.table) + " WHERE act_id = ? LIMIT 1");
        find << m_id;
        if (find.step()) return;
    }
    m_id = 0;
}

ActId ActUnderWay::settling() {
    return write("settle", {}, {});
}

} // namespace hammerline
