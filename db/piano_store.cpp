#include "db/standing.h"
#include "db/stores.h"
#include "db/versions.h"

namespace hammerline {
namespace {

/// Names of all pianos that are not taken back, by row.
std::map<std::int64_t, std::string> namesInUse(OpenBook& book) {
    Query find =
        book.query("SELECT x.piano_id, x.name FROM setup x WHERE x.withdrawn = 0 AND " + isHead(subject("setup")));
    std::map<std::int64_t, std::string> names;
    while (find.step())
        names[find.number(0)] = find.text(1);
    return names;
}

void requireNameFree(OpenBook& book, const std::string& name, std::int64_t except) {
    if (name.empty()) fail(RefusalCode::usage, {}, "name");
    for (const auto& [piano, used] : namesInUse(book))
        if (piano != except && used == name) fail(RefusalCode::pianoExists, name);
}

/// What was measured was measured on an action of that kind: another kind would judge it by the wrong zones.
void requireKindFree(OpenBook& book, const Piano& piano, std::int64_t row) {
    Query other = book.query("SELECT " + isCurrent("setup", "x.piano_id = ? AND x.action <> ?"));
    other << row << key(piano.action);
    const bool otherKind = other.step() && other.number(0) != 0;
    if (!otherKind) return;
    Query find = book.query("SELECT " + isCurrent("reading", "x.pass_id IN (SELECT id FROM pass WHERE piano_id = ?)"));
    find << row;
    const bool measured = find.step() && find.number(0) != 0;
    if (measured) fail(RefusalCode::kindMeasured, piano.name);
}

void writeAttributes(ActUnderWay& act, std::int64_t pianoId, const Piano& piano) {
    int position = 0;
    for (const auto& [name, value] : attributePairs(piano)) {
        Query insert = act.book().query("INSERT INTO setup_attribute VALUES (?, ?, ?, ?, ?)");
        insert << pianoId << act.id() << position++ << name << value;
        insert.run();
    }
}

void writeSetup(ActUnderWay& act, std::int64_t pianoId, const Piano& piano, std::string_view specName,
                const std::optional<SpecSheet>& spec) {
    const auto replaces = toReplace(act, subject("setup"), {pianoId});
    Query insert = act.book().query("INSERT INTO setup (piano_id, act_id, replaces, name, action, notes, lowest, "
                                    "spec_name, spec) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)");
    insert << pianoId << act.id() << replaces << piano.name << key(piano.action) << piano.notes << piano.lowestMidi
           << specName;
    if (spec)
        insert << writeSpecSheet(*spec);
    else
        insert << std::nullopt;
    insert.run();
    writeAttributes(act, pianoId, piano);
}

} // namespace

std::int64_t pianoRow(OpenBook& book, std::string_view uuid) {
    const auto parsed = parseUuid(uuid);
    if (!parsed) fail(RefusalCode::noSuchPiano, std::string(uuid));
    Query find = book.query("SELECT p.id FROM piano p WHERE p.uuid = ? AND EXISTS (SELECT 1 FROM setup x WHERE "
                            "x.piano_id = p.id AND x.withdrawn = 0 AND " +
                            isHead(subject("setup")) + ")");
    find << *parsed;
    if (!find.step()) fail(RefusalCode::noSuchPiano, std::string(uuid));
    return find.number(0);
}

std::int64_t insertPiano(ActUnderWay& act, const Uuid& uuid, const Piano& piano, std::string_view specName,
                         const std::optional<SpecSheet>& spec) {
    requireNameFree(act.book(), piano.name, 0);
    Query insert = act.book().query("INSERT INTO piano (uuid, act_id) VALUES (?, ?)");
    insert << uuid << act.id();
    insert.run();
    const std::int64_t row = act.book().db.getLastInsertRowid();
    writeSetup(act, row, piano, specName, spec);
    return row;
}

std::string addPiano(ActUnderWay& act, const Piano& piano, std::string_view specName,
                     const std::optional<SpecSheet>& spec, const Identity& identity) {
    const Uuid uuid = newUuid();
    setIdentity(act, insertPiano(act, uuid, piano, specName, spec), identity);
    return text(uuid);
}

ActId changePiano(ActUnderWay& act, std::int64_t pianoId, const Piano& piano, std::string_view specName,
                  const std::optional<SpecSheet>& spec, const Identity& changes) {
    requireNameFree(act.book(), piano.name, pianoId);
    requireKindFree(act.book(), piano, pianoId);
    writeSetup(act, pianoId, piano, specName, spec);
    setIdentity(act, pianoId, changes);
    return act.id();
}

ActId setPreference(ActUnderWay& act, std::int64_t piano, std::string_view name, std::string_view value) {
    if (name.empty()) fail(RefusalCode::usage, {}, "preference");
    const auto replaces = toReplace(act, subject("preference"), {piano, std::string(name)});
    Query insert =
        act.book().query("INSERT INTO preference (piano_id, key, act_id, replaces, value) VALUES (?, ?, ?, ?, ?)");
    insert << piano << name << act.id() << replaces << value;
    insert.run();
    return act.id();
}

} // namespace hammerline
