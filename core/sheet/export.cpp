// What leaves the book as text: the long form that the import recognises, and JSON for anyone.
#include "core/intake/cell.h"
#include "core/sheet/base64.h"
#include "core/sheet/csv_field.hpp"
#include "core/sheet/export_proof.hpp"
#include "core/sheet/iso_time.hpp"
#include "core/sheet/json_number.hpp"
#include "core/sheet/sheet.h"

namespace hammerline {
namespace {

using sheet::isoTime;
using sheet::Json;

void line(std::string& out, std::initializer_list<std::string> fields) {
    sheet::csvLine(out, fields);
}

/// Text and unit of a reading as they will be read again. A share of the blow (or a length where a share is kept) is
/// turned over by the blow of its note: where that has changed since, the value itself is written.
struct Written {
    std::string text, unit;
};
Written writtenOf(const Cell& cell, const Reading& reading, const Pass& pass) {
    const auto unit = parseUnit(reading.typedUnit);
    const Kind kind = row(cell.dimension).kind;
    if (reading.word || !unit || kindOf(*unit) == kind) return {reading.typed, reading.typedUnit};
    CellContext context;
    context.bare = *unit;
    if (const Measured* blow = pass.at({cell.note, dimension::blow}))
        for (const Reading& each : blow->trials)
            if (!each.word && each.relation == Relation::equal) context.known[dimension::blow] = each.count;
    const auto again = readQuantityOf(reading.typed, cell.dimension, context);
    if (again && again->count == reading.count && again->upper == reading.upper)
        return {reading.typed, reading.typedUnit};
    const std::string sign = reading.relation == Relation::less ? "<" : reading.relation == Relation::more ? ">" : "";
    const std::string upper = reading.relation == Relation::between ? ".." + exactText(reading.upper, kind) : "";
    return {sign + exactText(reading.count, kind) + upper, std::string(key(row(cell.dimension).entryUnit))};
}

std::string stateOf(const Reading& reading) {
    return reading.taken ? "taken" : "";
}

/// The place among the acts, where the time does not say it.
void addOrder(Json& out, std::int64_t order, std::int64_t at) {
    if (order != at) out["order"] = order;
}

Json readingRow(const Cell& cell, const Reading& reading) {
    Json out = {{"note", cell.note.value},   {"dimension", sheet::text(key(cell.dimension))},
                {"trial", reading.trial},    {"text", reading.typed},
                {"unit", reading.typedUnit}, {"at", isoTime(reading.at)}};
    if (reading.word)
        out["word"] = sheet::text(row(*reading.word).key);
    else
        out["value"] = toTrade(reading.count, row(cell.dimension).kind);
    if (reading.relation == Relation::less) out["relation"] = "<";
    if (reading.relation == Relation::more) out["relation"] = ">";
    if (reading.relation == Relation::between) out["upper"] = toTrade(reading.upper, row(cell.dimension).kind);
    if (reading.taken) out["taken"] = true;
    if (!reading.reason.empty()) out["reason"] = reading.reason;
    addOrder(out, reading.order, reading.at);
    return out;
}

Json passRow(const Pass& pass) {
    Json out = {{"pass", pass.number},
                {"label", pass.label},
                {"uuid", pass.uuid},
                {"started", isoTime(pass.startedAt)},
                {"stack", pass.stackIn ? "in" : "out"},
                {"weights", pass.weightsOn ? "on" : "off"},
                {"at", pass.onBench ? "bench" : "piano"}};
    if (!pass.lineSag.empty()) out["line_sag"] = pass.lineSag;
    out["temperature"] = sheet::number(pass.climate ? std::optional(pass.climate->celsius) : pass.temperature);
    out["humidity"] = sheet::number(pass.climate ? std::optional(pass.climate->humidity) : pass.humidity);
    addOrder(out, pass.order, pass.startedAt);
    out["references"] = Json::object();
    for (const auto& [id, reference] : pass.references)
        out["references"][std::string(key(id))] = reference;
    out["readings"] = Json::array();
    out["not_fitted"] = Json::array();
    for (const auto& [cell, measured] : pass.cells) {
        for (const Reading& reading : measured.trials)
            out["readings"].push_back(readingRow(cell, reading));
        if (measured.notFitted)
            out["not_fitted"].push_back({{"note", cell.note.value}, {"dimension", sheet::text(key(cell.dimension))}});
    }
    return out;
}

Json doneRow(const Done& done) {
    Json amounts = Json::object();
    for (const auto& [note, amount] : done.amounts)
        amounts[std::to_string(note)] = amount;
    Json out = {{"operation", sheet::text(key(done.operation))},
                {"notes", sheet::notes(done.notes)},
                {"amount", sheet::number(done.amount)},
                {"amounts", amounts},
                {"to_aim", done.toAim},
                {"aim", sheet::number(done.aim)},
                {"after_pass", done.pass},
                {"plan", done.plan},
                {"step", done.step},
                {"at", isoTime(done.at)}};
    addOrder(out, done.order, done.at);
    return out;
}

Json findingRow(const Finding& finding) {
    Json out = {{"note", finding.note ? Json(finding.note->value) : Json(nullptr)},
                {"part", finding.part},
                {"fault", finding.fault},
                {"remedy", finding.remedy},
                {"state", sheet::text(key(finding.state))},
                {"amount", finding.amount},
                {"remark", finding.remark},
                {"at", isoTime(finding.at)}};
    addOrder(out, finding.order, finding.at);
    return out;
}

Json remarkRow(const Remark& remark) {
    Json out = {{"kind", sheet::text(key(remark.kind))},
                {"pass", remark.about.pass ? Json(*remark.about.pass) : Json(nullptr)},
                {"note", remark.about.note ? Json(remark.about.note->value) : Json(nullptr)},
                {"part", remark.about.part},
                {"fault", remark.about.fault},
                {"text", remark.text},
                {"who", remark.who},
                {"on", remark.on},
                {"accepted", remark.accepted},
                {"at", isoTime(remark.at)}};
    addOrder(out, remark.order, remark.at);
    return out;
}

/// Its picture comes with it where the record holds it.
Json photoRow(const Photo& photo, const PianoRecord& record) {
    Json out = {{"pass", photo.about.pass ? Json(*photo.about.pass) : Json(nullptr)},
                {"note", photo.about.note ? Json(photo.about.note->value) : Json(nullptr)},
                {"part", photo.about.part},
                {"fault", photo.about.fault},
                {"hash", photo.hash},
                {"caption", photo.caption},
                {"who", photo.who},
                {"on", photo.on},
                {"at", isoTime(photo.at)}};
    addOrder(out, photo.order, photo.at);
    const auto found = record.pictures.find(photo.hash);
    if (found == record.pictures.end()) return out;
    const Picture& picture = found->second;
    out["picture"] = {{"kind", picture.kind},
                      {"width", picture.width},
                      {"height", picture.height},
                      {"thumb", toBase64(picture.thumb)},
                      {"bytes", toBase64(picture.bytes)}};
    return out;
}

Json markRow(const WorkMark& mark) {
    Json out = {{"step", mark.step},
                {"note", mark.note ? Json(mark.note->value) : Json(nullptr)},
                {"state", sheet::text(key(mark.state))},
                {"remark", mark.remark},
                {"seconds", mark.seconds},
                {"at", isoTime(mark.at)}};
    addOrder(out, mark.order, mark.at);
    return out;
}

Json pianoRow(const PianoRecord& record) {
    Json out = {{"name", record.piano.name},
                {"uuid", record.uuid},
                {"action", sheet::text(key(record.piano.action))},
                {"notes", record.piano.notes},
                {"lowest", pitchName(record.piano.lowestMidi)},
                {"spec", record.specName}};
    out["attributes"] = Json::object();
    for (const auto& [name, value] : attributePairs(record.piano))
        out["attributes"][name] = value;
    if (record.spec) out["spec_sheet"] = Json::parse(writeSpecSheet(*record.spec));
    out["overrides"] = Json::array();
    for (const Override& each : record.overrides)
        out["overrides"].push_back({{"note", each.cell.note.value},
                                    {"dimension", sheet::text(key(each.cell.dimension))},
                                    {"low", sheet::count(each.cell.dimension, each.zone.low)},
                                    {"nominal", sheet::count(each.cell.dimension, each.zone.nominal)},
                                    {"high", sheet::count(each.cell.dimension, each.zone.high)},
                                    {"reason", each.reason},
                                    {"review", each.reviewOn}});
    out["passes"] = Json::array();
    for (const Pass& pass : record.passes)
        out["passes"].push_back(passRow(pass));
    out["done"] = Json::array();
    for (const Done& done : record.done)
        out["done"].push_back(doneRow(done));
    out["findings"] = Json::array();
    for (const Finding& finding : record.findings)
        out["findings"].push_back(findingRow(finding));
    out["symptoms"] = Json::array();
    for (const Symptom& symptom : record.symptoms)
        out["symptoms"].push_back({{"symptom", symptom.key},
                                   {"first", symptom.notes.first},
                                   {"last", symptom.notes.last},
                                   {"order", symptom.order}});
    out["work"] = Json::array();
    for (const WorkMark& mark : record.marks)
        out["work"].push_back(markRow(mark));
    // as they were frozen, word for word
    out["plans"] = Json::array();
    for (const FrozenPlan& plan : record.plans)
        out["plans"].push_back({{"uuid", plan.uuid},
                                {"pass", plan.pass},
                                {"options", plan.options},
                                {"content", plan.content},
                                {"order", plan.order}});
    out["preferences"] = Json::object();
    for (const auto& [name, value] : record.preferences)
        out["preferences"][name] = value;
    out["identity"] = Json::object();
    for (const auto& [name, value] : record.identity)
        out["identity"][name] = value;
    out["photos"] = Json::array();
    for (const Photo& photo : record.photos)
        out["photos"].push_back(photoRow(photo, record));
    out["remarks"] = Json::array();
    for (const Remark& remark : record.remarks)
        out["remarks"].push_back(remarkRow(remark));
    return out;
}

} // namespace

std::string exportCsv(const std::vector<PianoRecord>& records) {
    std::string out = "\xEF\xBB\xBFpiano;pass;note;dimension;trial;text;unit;state;at\r\n";
    for (const PianoRecord& record : records)
        for (const Pass& pass : record.passes) {
            // one that no reading names keeps its place: those behind it would move up
            if (pass.readingCount() == 0)
                line(out, {record.piano.name, std::to_string(pass.number), "", "", "", pass.label, "", "pass", ""});
            for (const auto& [cell, measured] : pass.cells) {
                const std::string note = std::to_string(cell.note.value);
                const std::string dimension(key(cell.dimension));
                const std::string number = std::to_string(pass.number);
                if (measured.notFitted)
                    line(out, {record.piano.name, number, note, dimension, "1", "", "", "not-fitted", ""});
                for (const Reading& r : measured.trials) {
                    const Written written = writtenOf(cell, r, pass);
                    line(out, {record.piano.name, number, note, dimension, std::to_string(r.trial), written.text,
                               written.unit, stateOf(r), isoTime(r.at)});
                }
            }
        }
    return out;
}

std::string exportJson(const std::vector<PianoRecord>& records, const DigestText& digest) {
    Json out = {{"format", "hammerline-export"}, {"version", 1}};
    out["pianos"] = Json::array();
    for (const PianoRecord& record : records) {
        Json piano = pianoRow(record);
        if (digest) piano["proof"] = sheet::proofOf(piano, digest);
        out["pianos"].push_back(std::move(piano));
    }
    return sheet::dump(out);
}

} // namespace hammerline
