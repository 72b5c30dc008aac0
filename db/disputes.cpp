#include "db/disputes.h"

#include "db/directory.h"
#include "db/loading.h"
#include "db/stores.h"
#include "db/versions.h"

#include <algorithm>
#include <set>

namespace hammerline {
namespace {

/// How a row of a subject is told in a few words: a text in SQL, and a count that is shown in the dimension's unit.
struct Telling {
    std::string_view table, what, text, count;
    std::size_t counts; // so many of the content columns make a difference; the rest is how it was typed
};
constexpr std::size_t kAll = 99;
const std::vector<Telling>& tellings() {
    static const std::vector<Telling> rows = {
        {"reading", "reading",
         "iif(x.relation = 'not-fitted', 'not-fitted', iif(x.unit = '' OR instr(x.typed, x.unit) > 0, x.typed, x.typed "
         "|| ' ' || x.unit))",
         "NULL", 4},
        {"setup", "setup",
         "x.name || ', ' || x.action || ', ' || x.notes || iif(x.spec_name = '', '', ', ' || x.spec_name) || "
         "coalesce((SELECT ', ' || group_concat(d.name || '=' || d.value, ' ') FROM setup_attribute d WHERE d.piano_id "
         "= x.piano_id AND d.act_id = x.act_id), '')",
         "NULL", kAll},
        {"pass_version", "pass",
         "x.label || coalesce(', ' || (x.temperature / 10.0) || ' °C', '') || coalesce(', ' || (x.humidity / 10.0) || "
         "' %', '') || coalesce((SELECT ', ' || group_concat(m.key || '=' || d.reference, ' ') FROM pass_reference d "
         "JOIN dimension m ON m.id = d.dimension_id WHERE d.pass_id = x.pass_id AND d.act_id = x.act_id), '') || "
         "iif(x.line_sag = '', '', ', line-sag=' || x.line_sag) || iif(x.on_bench, ', "
         "at=bench', '')",
         "NULL", kAll},
        {"aim_override", "override", "x.reason", "x.nominal", kAll},
        {"finding", "finding", "trim(x.state || ' ' || x.remedy) || iif(x.remark = '', '', ', ' || x.remark)", "NULL",
         kAll},
        {"preference", "preference", "x.value", "NULL", kAll},
        {"identity", "identity", "x.value", "NULL", kAll},
        {"remark", "remark", "x.text || iif(x.accepted = '', '', ', ' || x.accepted)", "NULL", kAll},
    };
    return rows;
}

struct DisputedRow {
    ActId act{};
    std::optional<ActId> replaces;
    bool withdrawn = false;
};

std::vector<ActId> liveHeads(const std::vector<DisputedRow>& rows) {
    std::vector<ActId> live;
    for (const DisputedRow& row : rows)
        if (!row.withdrawn &&
            std::none_of(rows.begin(), rows.end(), [&](const DisputedRow& other) { return other.replaces == row.act; }))
            live.push_back(row.act);
    return live;
}

/// Keys under which more than one row holds, in one scan by primary key.
std::vector<Key> keysInDispute(OpenBook& book, const Subject& subject) {
    const std::string keys = list(subject.key);
    Query find = book.query("SELECT " + keys + ", act_id, replaces, withdrawn FROM " + std::string(subject.table) +
                            " ORDER BY " + keys + ", act_id");
    std::vector<Key> disputed;
    std::vector<DisputedRow> rows;
    Key name;
    const auto close = [&] {
        if (rows.size() > 1 && liveHeads(rows).size() > 1) disputed.push_back(name);
        rows.clear();
    };
    const int width = static_cast<int>(subject.key.size());
    while (find.step()) {
        Key here;
        for (int i = 0; i < width; ++i) {
            const Value value = find.value(i);
            if (const auto* number = std::get_if<std::int64_t>(&value))
                here.emplace_back(*number);
            else
                here.emplace_back(find.text(i));
        }
        if (here != name) close();
        name = std::move(here);
        rows.push_back({find.number(width), find.maybe(width + 1), find.number(width + 2) != 0});
    }
    close();
    return disputed;
}

/// What makes a difference in a row, its details included, as one text.
std::string contentOf(OpenBook& book, const Subject& subject, const Telling& telling, const Key& key, ActId act) {
    std::vector<TableColumn> counting(
        subject.content.begin(),
        subject.content.begin() + static_cast<std::ptrdiff_t>(std::min(telling.counts, subject.content.size())));
    std::string all;
    const auto gather = [&](std::string_view table, const std::vector<TableColumn>& columns) {
        Query find = book.query("SELECT " + list(columns, "quote(%)", " || ',' || ") + " FROM " + std::string(table) +
                                " WHERE " + list(subject.key, "% = ?", " AND ") + " AND act_id = ?");
        for (const KeyValue& value : key)
            find << value;
        find << act;
        while (find.step())
            all += find.text(0) + '\n';
    };
    gather(subject.table, counting);
    for (const Detail& detail : subject.details)
        gather(detail.table, detail.columns);
    return all;
}

std::string told(OpenBook& book, const Subject& subject, const Telling& telling, const Key& key, ActId act,
                 std::optional<DimensionId> dimension) {
    Query find = book.query("SELECT " + std::string(telling.text) + ", " + std::string(telling.count) + " FROM " +
                            std::string(subject.table) + " x WHERE " + list(subject.key, "x.% = ?", " AND ") +
                            " AND x.act_id = ?");
    for (const KeyValue& value : key)
        find << value;
    find << act;
    if (!find.step()) return {};
    const auto count = find.maybe(1);
    return (count && dimension ? exactText(*count, row(*dimension).kind) + ", " : std::string()) + find.text(0);
}

std::optional<Dispute> addressed(OpenBook& book, const Directory& directory, const Subject& subject, const Key& key) {
    Dispute dispute;
    for (std::size_t i = 0; i < key.size(); ++i) {
        const TableColumn& column = subject.key[i];
        const auto* number = std::get_if<std::int64_t>(&key[i]);
        if (column.points == Points::piano) {
            const auto found = directory.pianos.find(*number);
            if (found == directory.pianos.end()) return std::nullopt;
            dispute.piano = found->second;
        } else if (column.points == Points::pass) {
            const auto found = directory.passes.find(*number);
            if (found == directory.passes.end()) return std::nullopt;
            std::tie(dispute.piano, dispute.pass) = found->second;
        } else if (column.points == Points::dimension) {
            dispute.dimension = book.dimensionOf(*number);
            if (!dispute.dimension) return std::nullopt;
        } else if (column.name == "note") {
            dispute.note = static_cast<int>(*number);
        } else if (const auto* text = std::get_if<std::string>(&key[i]); text && !text->empty()) {
            dispute.name += (dispute.name.empty() ? "" : " ") + *text;
        }
    }
    return dispute;
}

void gather(OpenBook& book, const Directory& directory, const Telling& telling, std::vector<Dispute>& into) {
    const Subject& about = subject(telling.table);
    for (const Key& key : keysInDispute(book, about)) {
        auto dispute = addressed(book, directory, about, key);
        if (!dispute) continue;
        dispute->what = telling.what;
        std::set<std::string> different;
        for (const Head& head : heads(book, about, key)) {
            if (head.withdrawn) continue;
            different.insert(contentOf(book, about, telling, key, head.act));
            dispute->said.push_back(told(book, about, telling, key, head.act, dispute->dimension));
        }
        if (different.size() > 1) into.push_back(std::move(*dispute));
    }
}

void gatherSameNames(const Directory& directory, std::vector<Dispute>& into) {
    std::map<std::string, std::size_t> names;
    for (const auto& [row, name] : directory.pianos)
        ++names[name];
    for (const auto& [name, count] : names)
        if (count > 1) {
            Dispute dispute;
            dispute.what = "same-name";
            dispute.piano = name;
            dispute.said.assign(count, name);
            into.push_back(std::move(dispute));
        }
}

} // namespace

std::vector<Dispute> disputesIn(OpenBook& book) {
    const Directory directory(book);
    std::vector<Dispute> disputes;
    for (const Telling& telling : tellings())
        gather(book, directory, telling, disputes);
    gatherSameNames(directory, disputes);
    return disputes;
}

} // namespace hammerline
