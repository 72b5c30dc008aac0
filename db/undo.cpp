// Undo and redo as acts (architecture, data rules): what an act wrote is put back to what it replaced, or taken back.
#include "db/standing.h"
#include "db/stores.h"
#include "db/versions.h"

namespace hammerline {
namespace {

struct PastAct {
    ActId id{};
    bool undo = false, redo = false;
    ActId undoes{};
};

/// The acts that can be undone and redone, the newest last. A new act ends the chance to redo.
struct Chains {
    std::vector<ActId> undoable, redoable;
};

Chains chainsOf(const std::vector<PastAct>& acts) {
    Chains chains;
    for (const PastAct& act : acts) {
        if (act.undo) {
            std::erase(chains.undoable, act.undoes);
            chains.redoable.push_back(act.id);
        } else if (act.redo) {
            std::erase(chains.redoable, act.undoes);
            chains.undoable.push_back(act.id);
        } else {
            chains.undoable.push_back(act.id);
            chains.redoable.clear();
        }
    }
    return chains;
}

std::vector<PastAct> actsWhere(OpenBook& book, const std::string& condition, std::optional<std::int64_t> value) {
    Query find =
        book.query("SELECT id, kind, undoes FROM act WHERE kind <> 'settle' AND " + condition + " ORDER BY id");
    if (value) find << *value;
    std::vector<PastAct> acts;
    while (find.step()) {
        const std::string kind = find.text(1);
        acts.push_back({find.number(0), kind == "undo", kind == "redo", find.maybe(2).value_or(0)});
    }
    return acts;
}

/// The acts of this session; where it has none left to go back to, all that were made in this book (on the command
/// line every command is a session).
ActId newest(OpenBook& book, std::vector<ActId> Chains::*which, RefusalCode none) {
    if (book.session.id != 0) {
        const Chains own = chainsOf(actsWhere(book, "brought = 0 AND session_id = ?", book.session.id));
        if (!(own.*which).empty()) return (own.*which).back();
    }
    const Chains all = chainsOf(actsWhere(book, "brought = 0", std::nullopt));
    if ((all.*which).empty()) fail(none, book.path);
    return (all.*which).back();
}

bool any(OpenBook& book, const std::string& sql, ActId act) {
    Query find = book.query(sql);
    find << act;
    return find.step();
}

/// Joins the row h that stands today for row x of an act: x itself, or what undo and redo have put back to it (the same
/// origin, the same state). Where there is none, another has gone on from x.
std::string standsFor(const Subject& subject) {
    const std::string table(subject.table);
    return table + " h ON " + list(subject.key, "h.% = x.%", " AND ") +
           " AND coalesce(h.origin, h.act_id) = coalesce(x.origin, x.act_id) AND h.withdrawn = x.withdrawn" +
           " AND NOT EXISTS (SELECT 1 FROM " + table + " n WHERE " + list(subject.key, "n.% = h.%", " AND ") +
           " AND n.replaces = h.act_id)";
}

bool hasGoneOn(OpenBook& book, const Subject& subject, ActId act) {
    return any(book,
               "SELECT 1 FROM " + std::string(subject.table) + " x LEFT JOIN " + standsFor(subject) +
                   " WHERE x.act_id = ? AND h.act_id IS NULL",
               act);
}

std::string columnsOf(const Subject& subject, std::string_view pattern) {
    return list(subject.content, pattern, "");
}

/// Every row of `act` gets a successor written by `by`: the content of the row it replaced, or itself, withdrawn.
void putBackRows(OpenBook& book, const Subject& subject, ActId act, ActId by) {
    const std::string table(subject.table), keys = list(subject.key);
    Query put = book.query("INSERT INTO " + table + " (" + keys + ", act_id, replaces, origin, withdrawn" +
                           columnsOf(subject, ", %") + ") SELECT " + list(subject.key, "x.%") +
                           ", ?, h.act_id, coalesce(s.origin, s.act_id), iif(x.replaces IS NULL, 1, s.withdrawn)" +
                           columnsOf(subject, ", s.%") + " FROM " + table + " x JOIN " + standsFor(subject) + " JOIN " +
                           table + " s ON " + list(subject.key, "s.% = x.%", " AND ") +
                           " AND s.act_id = coalesce(x.replaces, x.act_id) WHERE x.act_id = ?");
    put << by << act;
    put.run();
    for (const Detail& detail : subject.details) {
        const std::string own = list(detail.columns, ", d.%", "");
        Query copy = book.query("INSERT INTO " + std::string(detail.table) + " (" + keys + ", act_id" +
                                list(detail.columns, ", %", "") + ") SELECT " + list(subject.key, "x.%") + ", ?" + own +
                                " FROM " + table + " x JOIN " + std::string(detail.table) + " d ON " +
                                list(subject.key, "d.% = x.%", " AND ") +
                                " AND d.act_id = coalesce(x.replaces, x.act_id) WHERE x.act_id = ?");
        copy << by << act;
        copy.run();
    }
}

/// What was taken back must not leave others hanging: passes of a piano, readings and work of a pass, work of a plan.
/// What is brought back needs its ground.
void requireNothingHangs(OpenBook& book, ActId by) {
    std::vector<std::string> hanging;
    for (const Ground& ground : grounds())
        hanging.push_back("SELECT 1 FROM " + std::string(ground.versions) +
                          " v WHERE v.act_id = ? AND v.withdrawn = 1 AND (" + ground.carries + ")");
    const std::string onPass =
        " v WHERE v.act_id = ? AND v.withdrawn = 0 AND NOT " + isCurrent("pass_version", "x.pass_id = v.pass_id");
    hanging.push_back("SELECT 1 FROM reading" + onPass);
    hanging.push_back("SELECT 1 FROM done" + onPass);
    hanging.push_back("SELECT 1 FROM pass_version v JOIN pass p ON p.id = v.pass_id WHERE v.act_id = ? AND v.withdrawn "
                      "= 0 AND NOT " +
                      isCurrent("setup", "x.piano_id = p.piano_id"));
    for (const std::string& sql : hanging)
        if (any(book, sql, by)) fail(RefusalCode::goneOnSince, book.path);
}

/// The ordinary act at the end of a chain of undo and redo.
std::string kindOf(OpenBook& book, ActId act) {
    for (;;) {
        Query find = book.query("SELECT kind, undoes FROM act WHERE id = ?");
        find << act;
        if (!find.step()) fail(RefusalCode::damagedBook, {}, "act");
        if (find.null(1)) return find.text(0);
        act = find.number(1);
    }
}

BenchBook::Undone putBack(ActUnderWay& act, ActId target) {
    OpenBook& book = act.book();
    for (const Subject& subject : subjects())
        if (hasGoneOn(book, subject, target)) fail(RefusalCode::goneOnSince, book.path, kindOf(book, target));
    act.undoes(target);
    const ActId by = act.id();
    for (const Subject& subject : subjects())
        putBackRows(book, subject, target, by);
    requireNothingHangs(book, by);
    return {by, kindOf(book, target)};
}

} // namespace

BenchBook::Undone undo(ActUnderWay& act) {
    return putBack(act, newest(act.book(), &Chains::undoable, RefusalCode::nothingToUndo));
}

BenchBook::Undone redo(ActUnderWay& act) {
    return putBack(act, newest(act.book(), &Chains::redoable, RefusalCode::nothingToRedo));
}

} // namespace hammerline
