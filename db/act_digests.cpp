#include "db/act_digests.h"

#include "db/guard.h"

#include <deque>

namespace hammerline {
void ActDigests::forEach(std::int64_t after, const std::function<void(const Act&)>& work) {
    if (m_tables.empty()) m_tables = actTables(m_db);
    LastingNames names(m_query);
    std::deque<RowsByAct> tables;
    for (const ActTable& table : m_tables)
        tables.emplace_back(table, m_query, after);
    Query find = m_query("SELECT a.id, s.uuid, s.started_at, s.program, a.seq, a.place, a.at, a.kind, a.source, "
                         "a.undoes, a.brought, a.digest FROM act a JOIN session s ON s.id = a.session_id "
                         "WHERE a.id > ? ORDER BY a.id");
    find << after;
    Canonical told;
    DigestSum rows;
    while (find.step()) {
        Act act{find.number(0), find.digest(11), {}, find.number(10) != 0, find.text(7), find.number(6)};
        told.clear();
        told << find.text(1) << find.number(2) << find.text(3);
        for (const int number : {4, 5, 6})
            told << find.number(number);
        told << find.text(7) << find.text(8);
        if (const auto undoes = find.maybe(9)) names.tell(told, Points::act, *undoes);
        rows.clear();
        for (RowsByAct& table : tables)
            table.of(act.id, names, rows);
        rows.tell(told);
        act.fitting = told.digest();
        work(act);
    }
}

Digest ActDigests::chained(const Digest& chain, const Act& act) {
    Canonical told;
    told << chain << act.fitting << std::int64_t{act.brought};
    return told.digest();
}

Digest ActDigests::whole(const Digest& chain) {
    Query find = m_query("SELECT uuid, made_at, made_by, oldest_reader, merged_place, (SELECT count(*) FROM session), "
                         "(SELECT older FROM seal), (SELECT older_at FROM seal) FROM book");
    if (!find.step()) fail(RefusalCode::damagedBook, {}, "book-row");
    Canonical told;
    told << chain << find.text(0) << find.number(1) << find.text(2);
    for (const int number : {3, 4, 5, 6, 7})
        told << find.number(number);
    return told.digest();
}

std::optional<ActDigests::Seal> ActDigests::found() {
    Query find = m_query("SELECT last_act, chain, whole FROM seal");
    if (!find.step()) return std::nullopt;
    const auto chain = find.digest(1), whole = find.digest(2);
    if (!chain || !whole) fail(RefusalCode::damagedBook, {}, "seal");
    return Seal{find.number(0), *chain, *whole};
}

void ActDigests::keep(const Seal& seal) {
    Query put = m_query("INSERT INTO seal (id, last_act, chain, whole) VALUES (1, ?, ?, ?) ON CONFLICT (id) DO UPDATE "
                        "SET last_act = excluded.last_act, chain = excluded.chain, whole = excluded.whole");
    put << seal.last << seal.chain << seal.whole;
    put.run();
}

void ActDigests::setDigest(const Act& act) {
    Query set = m_query("UPDATE act SET digest = ? WHERE id = ?");
    set << act.fitting << act.id;
    set.run();
}

ActDigests::Newest ActDigests::seal() {
    Seal seal = found().value_or(Seal{});
    Newest newest;
    forEach(seal.last, [&](const Act& act) {
        if (act.had && *act.had != act.fitting) fail(RefusalCode::damagedBook, {}, "act-digest");
        if (!act.had) setDigest(act);
        seal.last = act.id;
        seal.chain = chained(seal.chain, act);
        newest = {act.id, act.fitting};
    });
    seal.whole = whole(seal.chain);
    keep(seal);
    return newest;
}

void ActDigests::sealOlder(std::int64_t now) {
    seal();
    Query mark = m_query("UPDATE seal SET older = last_act, older_at = ?");
    mark << now;
    mark.run();
    seal();
}

void ActDigests::sealAnew(const std::function<void(std::int64_t act, bool proven)>& told) {
    Seal seal;
    forEach(0, [&](const Act& act) {
        const bool proven = act.had == act.fitting;
        told(act.id, proven);
        if (!proven) setDigest(act);
        seal.last = act.id;
        seal.chain = chained(seal.chain, act);
    });
    seal.whole = whole(seal.chain);
    keep(seal);
}

std::vector<std::string> ActDigests::problems(std::size_t most) {
    std::vector<std::string> problems;
    Seal anew;
    forEach(0, [&](const Act& act) {
        if (act.had != act.fitting && problems.size() < most)
            problems.push_back("digest:" + std::to_string(act.id) + ':' + act.kind + ':' + std::to_string(act.at));
        anew.last = act.id;
        anew.chain = chained(anew.chain, act);
    });
    const auto seal = found();
    if (!problems.empty()) return problems;
    if (!seal)
        problems.emplace_back("seal:missing");
    else if (seal->last != anew.last || seal->chain != anew.chain)
        problems.emplace_back("seal:acts");
    else if (seal->whole != whole(seal->chain))
        problems.emplace_back("seal:book");
    return problems;
}

} // namespace hammerline
