// One immediate transaction and one act for each thing a person did.
#pragma once

#include "db/files.h"
#include "db/open_book.h"

namespace hammerline {

inline constexpr std::string_view kKept = kKeptUnsynced;

/// The act of a write under way. Its row (and the session's, the first time) is written when its id is first asked for,
/// so that a write that changes nothing leaves no act.
class ActUnderWay {
public:
    ActUnderWay(OpenBook& book, std::string_view kind, std::string_view source = {})
        : m_book(book), m_kind(kind), m_source(source) {}
    ActId id();
    ActId idOrNone() const { return m_id; }
    void undoes(ActId act) { m_undoes = act; }
    /// Something was written that is no act of this book: a merge.
    void written() { m_written = true; }
    bool worthKeeping() const { return m_written || m_id != 0; }
    std::int64_t at() const { return m_at; }
    /// An act whose id was asked for before anything was known to change: forgotten where nothing did.
    void forgetIfEmpty();
    OpenBook& book() { return m_book; }

    /// A further act that settles a dispute (see versions.h).
    ActId settling();

private:
    ActId write(std::string_view kind, std::string_view source, std::optional<ActId> undoes);

    OpenBook& m_book;
    std::string m_kind, m_source;
    std::optional<ActId> m_undoes;
    ActId m_id = 0;
    bool m_written = false;
    std::int64_t m_at = 0;
};

/// Larger than every place in the book, and not before the clock.
std::int64_t nextPlace(OpenBook&, std::int64_t now);

/// Refuses to begin on a book that is read-only, newer, or no longer the file at its path.
void requireWritable(const OpenBook&);

/// Refuses lockedBook in the middle of a transaction (see OpenBook::atWork).
void requireAtRest(const OpenBook&);

/// What is to be said of a commit that failed: the refusal itself where the book is as before. The disk may fail in the
/// moment after (when the journal is gone and its folder is synced): then the act is looked for with other eyes, and
/// cannotWrite says that it is there ("kept"), or that nobody can tell ("unsure").
Refusal afterFailedCommit(const OpenBook&, const ActDigests::Newest&, const Refusal&);

/// Runs `work(act)` in one immediate transaction. Nothing is kept unless all of it is.
template <class F>
auto writing(OpenBook& book, std::string_view kind, std::string_view source, F&& work)
    -> Outcome<decltype(work(std::declval<ActUnderWay&>()))> {
    const WritingSession before = book.session;
    if (book.atWork()) return refuse(RefusalCode::lockedBook, book.path, "locked");
    std::optional<ActDigests::Newest> sealed; // all is written but for the commit
    auto result = guarded(book.path, Doing::writing, [&] {
        requireWritable(book);
        SQLite::Transaction transaction(book.db, SQLite::TransactionBehavior::IMMEDIATE);
        ActUnderWay act(book, kind, source);
        auto value = work(act);
        if (act.worthKeeping()) {
            sealed = book.digests.seal();
            transaction.commit();
        } else {
            book.forgetDimensions();
            book.session = before;
        }
        return value;
    });
    if (!result) {
        if (sealed) result = tl::unexpected(afterFailedCommit(book, *sealed, result.error()));
        const bool kept = result.error().detail == kKept;
        if (!kept) book.session = before;
        if (kept) book.dataVersion = -1; // whoever polls is to load it
        book.forgetDimensions();
    }
    return result;
}

/// Reads under one shared lock, so that what is read belongs together.
template <class F>
auto reading(OpenBook& book, F&& work) {
    return guarded(book.path, Doing::reading, [&] {
        requireAtRest(book);
        SQLite::Transaction transaction(book.db); // deferred: takes no write lock; ends by rolling back nothing
        return work();
    });
}

} // namespace hammerline
