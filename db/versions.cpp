#include "db/versions.h"

namespace hammerline {
namespace {

std::string where(const Subject& subject, std::string_view alias) {
    return list(subject.key, std::string(alias) + ".% = ?", " AND ");
}

void copyDetails(OpenBook& book, const Subject& subject, const Key& key, ActId from, ActId to) {
    for (const Detail& detail : subject.details) {
        const std::string keys = list(subject.key), own = list(detail.columns);
        Query copy = book.query("INSERT INTO " + std::string(detail.table) + " (" + keys + ", act_id, " + own +
                                ") SELECT " + keys + ", ?, " + own + " FROM " + std::string(detail.table) +
                                " x WHERE x.act_id = ? AND " + where(subject, "x"));
        copy << to << from;
        for (const KeyValue& value : key)
            copy << value;
        copy.run();
    }
}

} // namespace

std::string list(const std::vector<TableColumn>& columns, std::string_view pattern, std::string_view between) {
    std::string out;
    for (const TableColumn& column : columns) {
        if (!out.empty()) out += between;
        for (const char c : pattern)
            if (c == '%')
                out += column.name;
            else
                out += c;
    }
    return out;
}

std::string isHead(const Subject& subject) {
    return "NOT EXISTS (SELECT 1 FROM " + std::string(subject.table) + " n WHERE " +
           list(subject.key, "n.% = x.%", " AND ") + " AND n.replaces = x.act_id)";
}

Query& operator<<(Query& query, const KeyValue& value) {
    std::visit([&](const auto& each) { query << each; }, value);
    return query;
}

std::vector<Head> heads(OpenBook& book, const Subject& subject, const Key& key) {
    Query find = book.query("SELECT x.act_id, x.withdrawn FROM " + std::string(subject.table) +
                            " x JOIN act a ON a.id = x.act_id JOIN session s ON s.id = a.session_id WHERE " +
                            where(subject, "x") + " AND " + isHead(subject) + " ORDER BY a.place, s.uuid");
    for (const KeyValue& value : key)
        find << value;
    std::vector<Head> found;
    while (find.step())
        found.push_back({find.number(0), find.number(1) != 0});
    return found;
}

std::optional<Head> holding(const std::vector<Head>& found) {
    if (found.empty()) return std::nullopt;
    for (auto head = found.rbegin(); head != found.rend(); ++head)
        if (!head->withdrawn) return *head;
    return found.back();
}

std::optional<ActId> toReplace(ActUnderWay& act, const Subject& subject, const Key& key) {
    const auto found = heads(act.book(), subject, key);
    const auto holds = holding(found);
    if (!holds) return std::nullopt;
    for (const Head& head : found)
        if (!head.withdrawn && head.act != holds->act)
            copyVersion(act.book(), subject, key, head.act, act.settling(), true);
    return holds->act;
}

bool takeBack(ActUnderWay& act, const Subject& subject, const Key& key) {
    const auto found = heads(act.book(), subject, key);
    const auto holds = holding(found);
    if (!holds || holds->withdrawn) return false;
    const auto replaced = toReplace(act, subject, key);
    copyVersion(act.book(), subject, key, *replaced, act.id(), true);
    return true;
}

void copyVersion(OpenBook& book, const Subject& subject, const Key& key, ActId from, ActId to, bool withdrawn) {
    const std::string keys = list(subject.key), content = list(subject.content, ", %", "");
    Query copy =
        book.query("INSERT INTO " + std::string(subject.table) + " (" + keys + ", act_id, replaces, origin, withdrawn" +
                   content + ") SELECT " + keys + ", ?, act_id, coalesce(origin, act_id), ?" + content + " FROM " +
                   std::string(subject.table) + " x WHERE x.act_id = ? AND " + where(subject, "x"));
    copy << to << withdrawn << from;
    for (const KeyValue& value : key)
        copy << value;
    copy.run();
    copyDetails(book, subject, key, from, to);
}

} // namespace hammerline
