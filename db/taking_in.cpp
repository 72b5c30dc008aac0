#include "db/taking_in.h"

#include "db/picture_store.h"
#include "db/subjects.h"
#include "db/verification.h"
#include "db/versions.h"

#include <array>
#include <optional>
#include <unordered_map>

namespace hammerline {
namespace {

/// What goes wrong while the other book is read is said of the other book.
template <class F>
auto of(const OpenBook& other, F&& work) {
    auto result = guarded(other.path, Doing::reading, std::forward<F>(work));
    if (!result) throw Refused{result.error()};
    return *result;
}
bool next(const OpenBook& other, Query& rows) {
    return of(other, [&] { return rows.step(); });
}

constexpr std::size_t kStepsBetweenLooks = 500; // some milliseconds

using Rows = std::unordered_map<std::int64_t, std::int64_t>; // row there -> row here

struct ActName {
    std::int64_t session{}, seq{}, place{}, at{};
    std::string kind;
};
ActName actName(Query& row) {
    return {row.number(1), row.number(2), row.number(3), row.number(4), row.text(5)};
}
constexpr const char* kActs =
    "SELECT id, session_id, seq, place, at, kind, source, undoes, digest FROM act ORDER BY id";

std::optional<std::int64_t> rowOf(OpenBook& book, const std::string& table, const Uuid& uuid) {
    Query find = book.query("SELECT id FROM " + table + " WHERE uuid = ?");
    find << uuid;
    return find.step() ? std::optional(find.number(0)) : std::nullopt;
}

/// The act of that name in a book. A process that writes names its acts by a random session and a count: the same name
/// with something else under it was made by no program of ours.
std::optional<std::int64_t> actOf(OpenBook& book, std::int64_t session, const ActName& name, const OpenBook& other) {
    Query find = book.query("SELECT id, session_id, seq, place, at, kind FROM act WHERE session_id = ? AND seq = ?");
    find << session << name.seq;
    if (!find.step()) return std::nullopt;
    const ActName here = actName(find);
    if (here.place != name.place || here.at != name.at || here.kind != name.kind)
        fail(RefusalCode::damagedBook, other.path, "act");
    return find.number(0);
}

class TakingIn {
public:
    TakingIn(OpenBook& into, OpenBook& from, const Headway& headway) : m_into(into), m_from(from), m_headway(headway) {}

    Merged run() {
        measure();
        sessions();
        dimensions();
        acts();
        for (const Tag& each : tags())
            tag(each);
        of(m_from, [&] { return takeInPictures(m_into, m_from), true; });
        for (const Subject& each : subjects())
            rows(each);
        return m_came;
    }

private:
    /// What there is to do at most: every act is looked at once by itself and once for each subject, every row is
    /// copied.
    void measure() {
        for (const auto& [table, count] : of(m_from, [&] { return rowCounts(m_from.db); }))
            m_steps +=
                static_cast<double>(table == "act" ? count * static_cast<std::int64_t>(subjects().size() + 1) : count);
    }
    void step() {
        if (++m_done % kStepsBetweenLooks == 0) m_headway.at(static_cast<double>(m_done) / m_steps);
    }

    /// The number here for one that points at something there.
    std::int64_t here(Points points, std::int64_t there) const {
        if (points == Points::nowhere) return there;
        const Rows& known = m_rows[static_cast<std::size_t>(points)];
        const auto found = known.find(there);
        if (found == known.end()) fail(RefusalCode::damagedBook, m_from.path, "reference");
        return found->second;
    }
    Value here(const TableColumn& column, Value there) const {
        if (const auto* number = std::get_if<std::int64_t>(&there)) return here(column.points, *number);
        return there;
    }
    std::int64_t& known(Points points, std::int64_t there) { return m_rows[static_cast<std::size_t>(points)][there]; }

    void sessions() {
        Query find = m_from.query("SELECT id, uuid, started_at, program FROM session ORDER BY id");
        while (next(m_from, find)) {
            const Uuid uuid = of(m_from, [&] { return find.uuid(1); });
            auto row = rowOf(m_into, "session", uuid);
            if (!row) {
                Query insert = m_into.query("INSERT INTO session (uuid, started_at, program) VALUES (?, ?, ?)");
                insert << uuid << find.number(2) << find.text(3);
                insert.run();
                row = m_into.db.getLastInsertRowid();
            }
            m_sessions[find.number(0)] = *row;
        }
    }

    /// By key, and also those that this program does not know: their rows are kept for one that does.
    void dimensions() {
        Query find = m_from.query("SELECT id, key FROM dimension ORDER BY id");
        while (next(m_from, find)) {
            Query same = m_into.query("SELECT id FROM dimension WHERE key = ?");
            same << find.text(1);
            if (same.step()) {
                known(Points::dimension, find.number(0)) = same.number(0);
                continue;
            }
            Query insert = m_into.query("INSERT INTO dimension (key) VALUES (?)");
            insert << find.text(1);
            insert.run();
            known(Points::dimension, find.number(0)) = m_into.db.getLastInsertRowid();
        }
    }

    void acts() {
        Query find = m_from.query(kActs);
        while (next(m_from, find)) {
            step();
            const ActName name = actName(find);
            const auto session = m_sessions.find(name.session);
            if (session == m_sessions.end()) fail(RefusalCode::damagedBook, m_from.path, "session");
            if (const auto same = actOf(m_into, session->second, name, m_from)) {
                known(Points::act, find.number(0)) = *same;
                continue;
            }
            Query insert = m_into.query("INSERT INTO act (session_id, seq, place, at, kind, source, undoes, digest, "
                                        "brought) VALUES (?, ?, ?, ?, ?, ?, ?, ?, 1)");
            insert << session->second << name.seq << name.place << name.at << name.kind << find.text(6);
            insert.put(here({"undoes", Points::act}, find.value(7)));
            insert << of(m_from, [&] { return find.digest(8); }); // what comes over has to fit it: see ActDigests
            insert.run();
            known(Points::act, find.number(0)) = m_into.db.getLastInsertRowid();
            m_news.push_back(find.number(0));
            ++m_came.acts;
        }
    }

    void tag(const Tag& tag) {
        const std::string table(tag.table), own = list(tag.columns, ", %", "");
        Query find = m_from.query("SELECT id, uuid, act_id" + own + " FROM " + table + " ORDER BY id");
        while (next(m_from, find)) {
            const Uuid uuid = of(m_from, [&] { return find.uuid(1); });
            auto row = rowOf(m_into, table, uuid);
            if (!row) {
                Query insert = m_into.query("INSERT INTO " + table + " (uuid, act_id" + own + ") VALUES (?, ?" +
                                            list(tag.columns, ", ?", "") + ")");
                insert << uuid << here(Points::act, find.number(2));
                for (std::size_t i = 0; i < tag.columns.size(); ++i)
                    insert.put(here(tag.columns[i], find.value(3 + static_cast<int>(i))));
                insert.run();
                row = m_into.db.getLastInsertRowid();
                m_came.pianos += tag.as == Points::piano ? 1 : 0;
                m_came.passes += tag.as == Points::pass ? 1 : 0;
            } else {
                toldWithoutTag(here(Points::act, find.number(2)));
            }
            known(tag.as, find.number(0)) = *row;
        }
    }

    /// An act that made what this book knows already (a piano that came here by an export): the tag stands here by the
    /// act that brought it first, and so what came over of this one does not fit its digest. The book it came from was
    /// verified; the act gets the digest that fits here.
    void toldWithoutTag(std::int64_t act) {
        Query forget = m_into.query("UPDATE act SET digest = NULL WHERE id = ? AND id > (SELECT last_act FROM seal)");
        forget << act;
        forget.run();
    }

    /// A table's rows under a condition, and how they are written here.
    struct Copying {
        std::vector<TableColumn> columns;
        std::string select, insert;
        Copying(std::string_view table, std::vector<TableColumn> which, const std::string& condition)
            : columns(std::move(which))
            , select("SELECT " + list(columns) + " FROM " + std::string(table) + " WHERE " + condition)
            , insert("INSERT INTO " + std::string(table) + " (" + list(columns) + ") VALUES (" + list(columns, "?") +
                     ")") {}
    };

    /// The rows of the acts that are new here. Acts come in the order in which they were written, so that what a row
    /// replaces is there before it.
    void rows(const Subject& subject) {
        std::vector<TableColumn> columns = subject.key;
        for (const TableColumn& column : {TableColumn{"act_id", Points::act}, TableColumn{"replaces", Points::act},
                                          TableColumn{"origin", Points::act}, TableColumn{"withdrawn"}})
            columns.push_back(column);
        columns.insert(columns.end(), subject.content.begin(), subject.content.end());
        const Copying versions(subject.table, columns, "act_id = ?");
        std::vector<Copying> details;
        for (const Detail& detail : subject.details) {
            std::vector<TableColumn> own = subject.key;
            own.push_back({"act_id", Points::act});
            own.insert(own.end(), detail.columns.begin(), detail.columns.end());
            details.emplace_back(detail.table, std::move(own), list(subject.key, "% = ?", " AND ") + " AND act_id = ?");
        }
        const std::size_t named = subject.key.size(), before = m_written;
        for (const std::int64_t act : m_news) {
            step();
            for (const auto& row : copy(versions, {act}, details.empty() ? 0 : named)) {
                std::vector<Value> name = row;
                name.emplace_back(act);
                for (const Copying& detail : details)
                    copy(detail, name, 0);
            }
        }
        if (subject.table == "reading") m_came.readings = m_written - before;
    }

    /// Gives the first `named` columns of every row, as they are there.
    std::vector<std::vector<Value>> copy(const Copying& how, const std::vector<Value>& bound, std::size_t named) {
        Query find = m_from.query(how.select);
        for (const Value& value : bound)
            find.put(value);
        std::vector<std::vector<Value>> names;
        std::optional<Query> insert;
        while (next(m_from, find)) {
            if (insert)
                insert->again();
            else
                insert.emplace(m_into.query(how.insert));
            for (std::size_t i = 0; i < how.columns.size(); ++i)
                insert->put(here(how.columns[i], find.value(static_cast<int>(i))));
            insert->run();
            ++m_written;
            step();
            if (named == 0) continue;
            names.emplace_back();
            for (std::size_t i = 0; i < named; ++i)
                names.back().push_back(find.value(static_cast<int>(i)));
        }
        return names;
    }

    OpenBook& m_into;
    OpenBook& m_from;
    Headway m_headway;
    double m_steps = 1;
    std::size_t m_done = 0;     // of the steps
    std::array<Rows, 6> m_rows; // by Points
    Rows m_sessions;
    std::vector<std::int64_t> m_news; // acts there that were not here
    Merged m_came;
    std::size_t m_written = 0; // rows of versions and details
};

} // namespace

bool knowsMore(OpenBook& book, OpenBook& other, const Headway& headway) {
    const auto all = of(other, [&] { return other.db.execAndGet("SELECT max(count(*), 1) FROM act").getInt64(); });
    Rows sessions;
    {
        Query find = other.query("SELECT id, uuid FROM session");
        while (next(other, find))
            if (const auto row = rowOf(book, "session", of(other, [&] { return find.uuid(1); })))
                sessions[find.number(0)] = *row;
    }
    Query find = other.query(kActs);
    bool more = false;
    for (std::size_t done = 0; next(other, find); ++done) {
        if (done % kStepsBetweenLooks == 0) headway.at(static_cast<double>(done) / static_cast<double>(all));
        const ActName name = actName(find);
        const auto session = sessions.find(name.session);
        more = session == sessions.end() || !actOf(book, session->second, name, other) || more;
    }
    return more;
}

Merged takeIn(OpenBook& into, OpenBook& from, const Headway& headway) {
    const SQLite::Transaction held(from.db); // read under one lock, which the first row takes
    return TakingIn(into, from, headway).run();
}

} // namespace hammerline
