#include "db/loading.h"

#include "core/history/unfit.h"
#include "db/reading_rows.h"
#include "db/stores.h"
#include "db/versions.h"

#include <algorithm>

namespace hammerline {
namespace {

/// "FROM table x <joins> ... WHERE <condition> and current ORDER BY <order>", the later of a dispute last; `o` is the
/// act that entered the row.
std::string currentRows(std::string_view table, std::string_view condition, std::string_view order,
                        std::string_view joins = {}) {
    return " FROM " + std::string(table) + " x " + std::string(joins) +
           " JOIN act o ON o.id = coalesce(x.origin, x.act_id) JOIN act a ON a.id = x.act_id JOIN session s ON "
           "s.id = a.session_id WHERE " +
           std::string(condition) + " AND x.withdrawn = 0 AND " + isHead(subject(table)) + " ORDER BY " +
           std::string(order) + ", a.place, s.uuid";
}

Piano pianoOf(OpenBook& book, std::int64_t id, std::string& specName, std::optional<SpecSheet>& spec) {
    Query find = book.query("SELECT x.name, x.action, x.notes, x.lowest, x.spec_name, x.spec, x.act_id" +
                            currentRows("setup", "x.piano_id = ?", "x.piano_id"));
    find << id;
    std::optional<Piano> piano;
    ActId act = 0;
    while (find.step()) {
        const ActionKind action = orFail(parseActionKind(find.text(1)));
        piano = orFail(makePiano(action, find.small(2), find.small(3)));
        piano->name = find.text(0);
        specName = find.text(4);
        spec = find.null(5) ? std::nullopt : std::optional(orFail(readSpecSheet(find.text(5))));
        act = find.number(6);
    }
    if (!piano) fail(RefusalCode::noSuchPiano);
    Query pairs =
        book.query("SELECT name, value FROM setup_attribute WHERE piano_id = ? AND act_id = ? ORDER BY position");
    pairs << id << act;
    while (pairs.step())
        orFail(setAttribute(*piano, pairs.text(0), pairs.text(1)).map([] { return true; }));
    return *piano;
}

std::optional<double> fromTenths(std::optional<std::int64_t> tenths) {
    return tenths ? std::optional(static_cast<double>(*tenths) / 10) : std::nullopt;
}

using PassPlaces = std::map<std::int64_t, std::size_t>; // row of the book -> place in the record

PassPlaces loadPasses(OpenBook& book, std::int64_t piano, PianoRecord& record) {
    PassPlaces places;
    for (const PassRow& row : passRows(book, piano)) {
        places[row.id] = record.passes.size();
        Pass pass;
        pass.number = row.number;
        pass.uuid = text(row.uuid);
        record.passes.push_back(std::move(pass));
    }
    Query find =
        book.query("SELECT x.pass_id, x.label, x.temperature, x.humidity, x.stack_in, x.weights_on, "
                   "x.line_sag, x.on_bench, p.started_at, (SELECT place FROM act WHERE id = p.act_id), r.dimension_id, "
                   "r.reference" +
                   currentRows("pass_version", "x.pass_id IN (SELECT id FROM pass WHERE piano_id = ?)", "x.pass_id",
                               "JOIN pass p ON p.id = x.pass_id LEFT JOIN pass_reference r ON r.pass_id = "
                               "x.pass_id AND r.act_id = x.act_id"));
    find << piano;
    while (find.step()) {
        Pass& pass = record.passes[places.at(find.number(0))];
        pass.label = find.text(1);
        const auto celsius = fromTenths(find.maybe(2)), humidity = fromTenths(find.maybe(3));
        pass.climate = celsius && humidity ? std::optional(Climate{*celsius, *humidity}) : std::nullopt;
        pass.temperature = pass.climate ? std::nullopt : celsius;
        pass.humidity = pass.climate ? std::nullopt : humidity;
        pass.stackIn = find.number(4) != 0;
        pass.weightsOn = find.number(5) != 0;
        pass.lineSag = find.text(6);
        pass.onBench = find.number(7) != 0;
        pass.startedAt = find.number(8);
        pass.order = find.number(9);
        if (find.null(10)) continue;
        if (const auto dimension = book.dimensionOf(find.number(10))) pass.references[*dimension] = find.text(11);
    }
    return places;
}

void loadReadings(OpenBook& book, std::int64_t piano, const PassPlaces& places, PianoRecord& record) {
    Query find = book.query(readingRowsSql("x.pass_id IN (SELECT id FROM pass WHERE piano_id = ?)"));
    find << piano;
    ReadingRows rows(book, find);
    while (const auto* cell = rows.nextCell())
        if (const auto place = places.find(cell->pass); place != places.end())
            record.passes[place->second].cells.emplace(cell->cell, measuredOf(book, *cell));
}

void loadOverrides(OpenBook& book, std::int64_t piano, PianoRecord& record) {
    Query find = book.query("SELECT x.note, x.dimension_id, x.low, x.nominal, x.high, x.reason, x.review_on" +
                            currentRows("aim_override", "x.piano_id = ?", "x.note, x.dimension_id"));
    find << piano;
    std::map<Cell, Override> overrides;
    while (find.step()) {
        const auto dimension = book.dimensionOf(find.number(1));
        if (!dimension) continue;
        const Cell cell{NoteNumber{find.small(0)}, *dimension};
        overrides[cell] = {cell, {find.maybe(2), find.number(3), find.maybe(4)}, find.text(5), find.text(6)};
    }
    for (const auto& [cell, each] : overrides)
        record.overrides.push_back(each);
}

void loadFindings(OpenBook& book, std::int64_t piano, PianoRecord& record) {
    Query find = book.query("SELECT x.note, x.part, x.fault, x.remedy, x.state, x.amount, x.remark, o.place, o.at" +
                            currentRows("finding", "x.piano_id = ?", "x.note, x.part, x.fault"));
    find << piano;
    std::map<std::tuple<int, std::string, std::string>, Finding> findings;
    while (find.step()) {
        Finding finding;
        if (find.small(0) != 0) finding.note = NoteNumber{find.small(0)};
        finding.part = find.text(1);
        finding.fault = find.text(2);
        finding.remedy = find.text(3);
        finding.state = orFail(parseFindingState(find.text(4)));
        finding.amount = toTrade(find.number(5), Kind::length);
        finding.remark = find.text(6);
        finding.order = find.number(7);
        finding.at = find.number(8);
        findings[{find.small(0), finding.part, finding.fault}] = std::move(finding);
    }
    for (auto& [name, finding] : findings)
        record.findings.push_back(std::move(finding));
    std::stable_sort(record.findings.begin(), record.findings.end(),
                     [](const Finding& a, const Finding& b) { return a.order < b.order; });
}

void loadSymptoms(OpenBook& book, std::int64_t piano, PianoRecord& record) {
    Query find = book.query("SELECT x.symptom, x.first, x.last, o.place" +
                            currentRows("symptom", "x.piano_id = ?", "x.symptom, x.first, x.last"));
    find << piano;
    std::map<std::tuple<std::string, int, int>, Symptom> symptoms;
    while (find.step())
        symptoms[{find.text(0), find.small(1), find.small(2)}] = {
            find.text(0), {find.small(1), find.small(2)}, find.number(3)};
    for (const auto& [name, symptom] : symptoms)
        record.symptoms.push_back(symptom);
    std::stable_sort(record.symptoms.begin(), record.symptoms.end(),
                     [](const Symptom& a, const Symptom& b) { return a.order < b.order; });
}

void loadMarks(OpenBook& book, std::int64_t piano, PianoRecord& record) {
    Query find = book.query("SELECT x.step, x.note, x.state, x.remark, x.seconds, o.place, o.at" +
                            currentRows("work_mark", "x.piano_id = ?", "x.step, x.note"));
    find << piano;
    std::map<std::pair<std::string, int>, WorkMark> marks;
    while (find.step()) {
        WorkMark mark{.step = find.text(0),
                      .note = {},
                      .state = orFail(parseMarkState(find.text(2))),
                      .remark = find.text(3),
                      .seconds = find.number(4),
                      .order = find.number(5),
                      .at = find.number(6)};
        if (find.small(1) != 0) mark.note = NoteNumber{find.small(1)};
        marks[{mark.step, find.small(1)}] = std::move(mark);
    }
    for (auto& [name, mark] : marks)
        record.marks.push_back(std::move(mark));
    std::stable_sort(record.marks.begin(), record.marks.end(),
                     [](const WorkMark& a, const WorkMark& b) { return a.order < b.order; });
}

void loadPlans(OpenBook& book, std::int64_t piano, const PassPlaces& places, PianoRecord& record) {
    Query find = book.query("SELECT p.uuid, p.pass_id, p.options, p.content, o.place" +
                            currentRows("plan_version",
                                        "x.plan_id IN (SELECT q.id FROM plan q JOIN pass r ON r.id = q.pass_id WHERE "
                                        "r.piano_id = ?)",
                                        "x.plan_id", "JOIN plan p ON p.id = x.plan_id"));
    find << piano;
    std::map<std::string, FrozenPlan> plans;
    while (find.step())
        if (const auto place = places.find(find.number(1)); place != places.end()) {
            const std::string uuid = text(find.uuid(0));
            plans[uuid] = {uuid, record.passes[place->second].number, find.text(2), find.text(3), find.number(4)};
        }
    for (const auto& [uuid, plan] : plans)
        record.plans.push_back(plan);
    std::stable_sort(record.plans.begin(), record.plans.end(),
                     [](const FrozenPlan& a, const FrozenPlan& b) { return a.order < b.order; });
}

void loadDone(OpenBook& book, std::int64_t piano, const PassPlaces& places, PianoRecord& record) {
    Query find = book.query(
        "SELECT x.said_in, x.item, x.pass_id, (SELECT uuid FROM plan WHERE id = x.plan_id), x.step, x.operation, "
        "x.amount, x.to_aim, o.place, o.at, d.note, d.touched, d.amount, x.aim" +
        currentRows("done", "x.pass_id IN (SELECT id FROM pass WHERE piano_id = ?)",
                    "o.place, (SELECT uuid FROM session WHERE id = o.session_id), x.item",
                    "LEFT JOIN done_note d ON d.said_in = x.said_in AND d.item = x.item AND d.act_id = x.act_id") +
        ", d.note");
    find << piano;
    std::pair<std::int64_t, std::int64_t> last{};
    while (find.step()) {
        const auto place = places.find(find.number(2));
        const auto operation = findOperation(find.text(5));
        if (place == places.end() || !operation) continue;
        const std::pair name{find.number(0), find.number(1)};
        if (record.done.empty() || name != last) {
            Done done;
            done.operation = *operation;
            if (const auto amount = find.maybe(6)) done.amount = amountOf(*amount);
            done.toAim = find.number(7) != 0;
            if (const auto aim = find.maybe(13)) done.aim = amountOf(*aim);
            if (!find.null(3)) done.plan = text(find.uuid(3));
            done.step = find.text(4);
            done.pass = record.passes[place->second].number;
            done.order = find.number(8);
            done.at = find.number(9);
            record.done.push_back(std::move(done));
            last = name;
        }
        if (find.null(10)) continue;
        if (find.number(11) != 0) record.done.back().notes.push_back(NoteNumber{find.small(10)});
        if (const auto amount = find.maybe(12)) record.done.back().amounts[find.small(10)] = amountOf(*amount);
    }
}

void loadPreferences(OpenBook& book, std::int64_t piano, PianoRecord& record) {
    Query find = book.query("SELECT x.key, x.value" + currentRows("preference", "x.piano_id = ?", "x.key"));
    find << piano;
    while (find.step())
        record.preferences[find.text(0)] = find.text(1);
}

void loadIdentity(OpenBook& book, std::int64_t piano, PianoRecord& record) {
    Query find = book.query("SELECT x.key, x.value" + currentRows("identity", "x.piano_id = ?", "x.key"));
    find << piano;
    while (find.step())
        record.identity[find.text(0)] = find.text(1);
}

/// A remark keeps the place and time at which it was first said, whatever was decided of it since.
/// What a remark or a photograph is about: pass, note, part and fault, in columns 2 to 5.
About aboutOf(Query& find, const PassPlaces& places, const PianoRecord& record) {
    About about;
    const auto pass = find.null(2) ? places.end() : places.find(find.number(2));
    if (pass != places.end()) about.pass = record.passes[pass->second].number;
    if (find.small(3) != 0) about.note = NoteNumber{find.small(3)};
    about.part = find.text(4);
    about.fault = find.text(5);
    return about;
}

/// As they were said.
template <class Said>
std::vector<Said> inOrder(std::map<std::pair<std::int64_t, int>, Said> byName) {
    std::vector<Said> said;
    for (auto& [name, each] : byName)
        said.push_back(std::move(each));
    std::stable_sort(said.begin(), said.end(), [](const Said& a, const Said& b) { return a.order < b.order; });
    return said;
}

void loadRemarks(OpenBook& book, std::int64_t piano, const PassPlaces& places, PianoRecord& record) {
    Query find = book.query("SELECT x.said_in, x.item, x.pass_id, x.note, x.part, x.fault, x.kind, x.text, x.who, "
                            "x.on_day, x.accepted, e.place, e.at" +
                            currentRows("remark", "x.piano_id = ?", "x.said_in, x.item",
                                        "JOIN remark f ON f.said_in = x.said_in AND f.item = x.item AND f.replaces IS "
                                        "NULL JOIN act e ON e.id = coalesce(f.origin, f.act_id)"));
    find << piano;
    std::map<std::pair<std::int64_t, int>, Remark> remarks;
    while (find.step()) {
        const auto kind = parseRemarkKind(find.text(6));
        if (!kind) continue; // of a later program
        Remark remark;
        remark.kind = *kind;
        remark.saidIn = find.number(0);
        remark.item = find.small(1);
        remark.about = aboutOf(find, places, record);
        remark.text = find.text(7);
        remark.who = find.text(8);
        remark.on = find.text(9);
        remark.accepted = find.text(10);
        remark.order = find.number(11);
        remark.at = find.number(12);
        remarks[{remark.saidIn, remark.item}] = std::move(remark);
    }
    record.remarks = inOrder(std::move(remarks));
}

void loadPhotos(OpenBook& book, std::int64_t piano, const PassPlaces& places, PianoRecord& record) {
    Query find = book.query("SELECT x.said_in, x.item, x.pass_id, x.note, x.part, x.fault, x.hash, x.caption, x.who, "
                            "x.on_day, o.place, o.at" +
                            currentRows("photo", "x.piano_id = ?", "x.said_in, x.item"));
    find << piano;
    std::map<std::pair<std::int64_t, int>, Photo> photos;
    while (find.step()) {
        Photo photo;
        photo.saidIn = find.number(0);
        photo.item = find.small(1);
        photo.about = aboutOf(find, places, record);
        photo.hash = find.text(6);
        photo.caption = find.text(7);
        photo.who = find.text(8);
        photo.on = find.text(9);
        photo.order = find.number(10);
        photo.at = find.number(11);
        photos[{photo.saidIn, photo.item}] = std::move(photo);
    }
    record.photos = inOrder(std::move(photos));
}

} // namespace

std::vector<std::string> pianosThatTeach(OpenBook& book, ActionKind kind, std::string_view except, std::size_t most) {
    Query find = book.query("SELECT p.uuid, max(w.worked) AS worked, max(w.act) AS last FROM (SELECT q.piano_id AS "
                            "piano, 1 AS worked, d.act_id AS act FROM done d JOIN pass q ON q.id = d.pass_id UNION ALL "
                            "SELECT piano_id, 1, act_id FROM work_mark WHERE seconds > 0 UNION ALL SELECT piano_id, 0, "
                            "act_id FROM pass) w JOIN piano p ON p.id = w.piano WHERE (SELECT x.action FROM setup x "
                            "WHERE x.piano_id = p.id ORDER BY x.act_id DESC LIMIT 1) = ? GROUP BY p.id ORDER BY worked "
                            "DESC, last DESC");
    find << std::string(key(kind));
    std::vector<std::string> out;
    while (out.size() < most && find.step())
        if (std::string uuid = text(find.uuid(0)); uuid != except) out.push_back(std::move(uuid));
    return out;
}

PianoRecord loadPiano(OpenBook& book, std::string_view uuid) {
    const std::int64_t piano = pianoRow(book, uuid);
    PianoRecord record;
    record.uuid = std::string(uuid);
    record.piano = pianoOf(book, piano, record.specName, record.spec);
    const PassPlaces places = loadPasses(book, piano, record);
    loadReadings(book, piano, places, record);
    loadOverrides(book, piano, record);
    loadFindings(book, piano, record);
    loadSymptoms(book, piano, record);
    loadMarks(book, piano, record);
    loadPlans(book, piano, places, record);
    loadDone(book, piano, places, record);
    loadPreferences(book, piano, record);
    loadIdentity(book, piano, record);
    loadRemarks(book, piano, places, record);
    loadPhotos(book, piano, places, record);
    leaveOutUnfit(record);
    return record;
}

} // namespace hammerline
