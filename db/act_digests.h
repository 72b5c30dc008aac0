// What each act wrote, proven by a digest; and over all acts of a book, in their order, a seal.
//
// The digest of an act covers its session, its place, kind and source, what it undoes, and every row that it wrote:
// tags, versions, details. Numbers that are local to a book (rows of acts, pianos, passes, plans, dimensions) are told
// by the name that is the same in every book, so that an act has the same digest in every book it was merged into. A
// column that holds its default is left out: one that a later schema adds changes no digest.
//
// The seal covers the book's own row and, in their order, the digests of its acts: one that is missing breaks it.
#pragma once

#include "db/act_rows.h"

#include <functional>

namespace hammerline {

/// The digests and the seal of one open book.
class ActDigests {
public:
    ActDigests(SQLite::Database& db, Statements& query) : m_db(db), m_query(query) {}

    /// Gives the acts that have come since the seal was made their digests, and makes it anew: before the commit of
    /// every transaction that writes. An act that came with a digest, of another book, has to fit it: else damagedBook,
    /// "act-digest". Gives the newest act that is covered.
    struct Newest {
        std::int64_t act = 0; // 0: none
        Digest digest{};
    };
    Newest seal();
    /// For a book whose acts have none yet: they get theirs, and the seal says when.
    void sealOlder(std::int64_t now);
    /// Gives every act the digest that fits it and tells whether it had that already; then the seal.
    void sealAnew(const std::function<void(std::int64_t act, bool proven)>& told);

    /// Digests anew. Problems: "digest:ACT:KIND:TIME", "seal:" and what of it; at most so many.
    std::vector<std::string> problems(std::size_t most);

private:
    struct Act {
        std::int64_t id{};
        std::optional<Digest> had;
        Digest fitting{};
        bool brought = false;
        std::string kind;
        std::int64_t at{};
    };
    struct Seal {
        std::int64_t last = 0;
        Digest chain{}, whole{};
    };
    std::optional<Seal> found();
    void keep(const Seal&);
    void forEach(std::int64_t after, const std::function<void(const Act&)>& work);
    void setDigest(const Act&);
    static Digest chained(const Digest& chain, const Act&);
    Digest whole(const Digest& chain);

    SQLite::Database& m_db;
    Statements& m_query;
    std::vector<ActTable> m_tables; // looked at once
};

} // namespace hammerline
