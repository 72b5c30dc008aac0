#include "core/pass/height_datum.h"
#include "db/stores.h"
#include "db/versions.h"

#include <algorithm>
#include <cctype>
#include <charconv>
#include <cmath>

namespace hammerline {
namespace {

std::optional<std::int64_t> tenths(const std::optional<double>& value) {
    if (!value) return std::nullopt;
    if (!std::isfinite(*value) || std::abs(*value) > 200) fail(RefusalCode::outOfRange, {}, "climate");
    return std::llround(*value * 10);
}

std::string lowered(std::string_view text) {
    std::string out(text);
    std::transform(out.begin(), out.end(), out.begin(),
                   [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
    return out;
}

void writeReferences(ActUnderWay& act, std::int64_t pass, const std::map<DimensionId, std::string>& references) {
    for (const auto& [dimension, reference] : references) {
        if (reference.empty()) continue;
        const std::int64_t row = act.book().dimensionRow(dimension);
        Query insert = act.book().query("INSERT INTO pass_reference VALUES (?, ?, ?, ?)");
        insert << pass << act.id() << row << reference;
        insert.run();
    }
}

} // namespace

std::vector<PassRow> passRows(OpenBook& book, std::int64_t piano) {
    Query find = book.query(
        "SELECT p.id, p.uuid, x.label FROM pass p JOIN act a ON a.id = p.act_id JOIN pass_version x ON "
        "x.pass_id = p.id WHERE p.piano_id = ? AND x.withdrawn = 0 AND " +
        isHead(subject("pass_version")) + " ORDER BY a.place, p.uuid, (SELECT place FROM act WHERE id = x.act_id)");
    find << piano;
    std::vector<PassRow> rows;
    while (find.step()) {
        if (!rows.empty() && rows.back().id == find.number(0))
            rows.back().label = find.text(2); // disputed label: the later
        else
            rows.push_back({find.number(0), find.uuid(1), static_cast<int>(rows.size()) + 1, find.text(2)});
    }
    return rows;
}

PassRow passRow(OpenBook& book, std::int64_t piano, int number) {
    const auto rows = passRows(book, piano);
    if (number < 1 || static_cast<std::size_t>(number) > rows.size())
        fail(RefusalCode::noSuchPass, std::to_string(number), std::to_string(rows.size()));
    return rows[static_cast<std::size_t>(number) - 1];
}

PassRow passRow(OpenBook& book, std::int64_t piano, std::string_view wanted) {
    const auto rows = passRows(book, piano);
    if (wanted.empty() && !rows.empty()) return rows.back();
    int number = 0;
    const auto [end, error] = std::from_chars(wanted.data(), wanted.data() + wanted.size(), number);
    if (error == std::errc{} && end == wanted.data() + wanted.size() && number >= 1 &&
        static_cast<std::size_t>(number) <= rows.size())
        return rows[static_cast<std::size_t>(number) - 1];
    for (auto row = rows.rbegin(); row != rows.rend(); ++row)
        if (row->label == wanted) return *row;
    for (auto row = rows.rbegin(); row != rows.rend(); ++row)
        if (lowered(row->label) == lowered(wanted)) return *row;
    fail(RefusalCode::noSuchPass, std::string(wanted), std::to_string(rows.size()));
}

std::int64_t insertPass(ActUnderWay& act, std::int64_t piano, const NewPass& pass, const Uuid& uuid, Start start) {
    {
        Query insert = act.book().query("INSERT INTO pass (uuid, piano_id, act_id, started_at) VALUES (?, ?, ?, ?)");
        insert << uuid << piano << start.act << start.at;
        insert.run();
    }
    const std::int64_t row = act.book().db.getLastInsertRowid();
    Query insert = act.book().query("INSERT INTO pass_version (pass_id, act_id, label, temperature, humidity, "
                                    "stack_in, weights_on, line_sag, on_bench) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)");
    insert << row << act.id() << pass.label << tenths(pass.temperature) << tenths(pass.humidity) << pass.stackIn
           << pass.weightsOn << pass.lineSag << pass.onBench;
    insert.run();
    writeReferences(act, row, pass.references);
    return row;
}

PassRow addPass(ActUnderWay& act, std::int64_t piano, const NewPass& pass) {
    const ActId started = act.id();
    const std::int64_t row = insertPass(act, piano, pass, newUuid(), {started, act.at()});
    const auto rows = passRows(act.book(), piano);
    for (const PassRow& each : rows)
        if (each.id == row) return each;
    fail(RefusalCode::noSuchPass);
}

std::string heightDatum(OpenBook& book, std::int64_t pass) {
    Query said = book.query("SELECT r.reference FROM pass_version x JOIN pass_reference r ON r.pass_id = x.pass_id AND "
                            "r.act_id = x.act_id JOIN act a ON a.id = x.act_id WHERE x.pass_id = ? AND "
                            "r.dimension_id = ? AND x.withdrawn = 0 AND " +
                            isHead(subject("pass_version")) + " ORDER BY a.place DESC LIMIT 1");
    said << pass << book.dimensionRow(dimension::keyHeight);
    return said.step() ? said.text(0) : std::string(row(dimension::keyHeight).references.front());
}

namespace {

/// Where more than one height of the pass cannot be over its datum; one is just being typed anew.
void requireHeightsOf(OpenBook& book, std::int64_t pass) {
    const std::string datum = heightDatum(book, pass);
    Query find = book.query("SELECT x.value, x.typed FROM reading x WHERE x.pass_id = ? AND x.dimension_id = ? AND "
                            "x.value IS NOT NULL AND x.withdrawn = 0 AND " +
                            isHead(subject("reading")));
    find << pass << book.dimensionRow(dimension::keyHeight);
    int others = 0;
    while (find.step()) {
        others += datumOf(find.number(0)) != datum;
        if (others > 1) fail(RefusalCode::otherDatum, find.text(1), datum);
    }
}

} // namespace

ActId setReferences(ActUnderWay& act, std::int64_t pass, const std::map<DimensionId, std::string>& references) {
    const Subject& versions = subject("pass_version");
    const auto replaces = toReplace(act, versions, {pass});
    if (!replaces) fail(RefusalCode::noSuchPass);
    // the details are the references: they are written anew, the rest is carried over
    Query copy = act.book().query("INSERT INTO pass_version (pass_id, act_id, replaces, label, temperature, humidity, "
                                  "stack_in, weights_on, line_sag, on_bench) SELECT pass_id, ?, act_id, label, "
                                  "temperature, humidity, stack_in, weights_on, line_sag, on_bench FROM pass_version "
                                  "WHERE pass_id = ? AND act_id = ?");
    copy << act.id() << pass << *replaces;
    copy.run();
    Query kept =
        act.book().query("SELECT dimension_id, reference FROM pass_reference WHERE pass_id = ? AND act_id = ?");
    kept << pass << *replaces;
    std::map<DimensionId, std::string> all;
    while (kept.step())
        if (const auto dimension = act.book().dimensionOf(kept.number(0))) all[*dimension] = kept.text(1);
    for (const auto& [dimension, reference] : references)
        all[dimension] = reference;
    writeReferences(act, pass, all);
    if (references.contains(dimension::keyHeight)) requireHeightsOf(act.book(), pass);
    return act.id();
}

} // namespace hammerline
