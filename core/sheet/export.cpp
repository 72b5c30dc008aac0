// What leaves the book as text: the long form that the import recognises, and JSON for anyone.
#include "core/sheet/csv_field.hpp"
#include "core/sheet/json_number.hpp"
#include "core/sheet/sheet.h"

#include <fmt/chrono.h>
#include <fmt/format.h>

#include <chrono>

namespace hammerline {
namespace {

using sheet::Json;

/// ISO 8601 in UTC, microseconds kept (they are the acts' own).
std::string isoTime(std::int64_t microseconds) {
    if (microseconds == 0) return {};
    const auto seconds = microseconds / 1'000'000;
    return fmt::format("{:%Y-%m-%dT%H:%M:%S}.{:06}Z", fmt::gmtime(static_cast<std::time_t>(seconds)),
                       microseconds % 1'000'000);
}

void line(std::string& out, std::initializer_list<std::string> fields) {
    sheet::csvLine(out, fields);
}

std::string stateOf(const Reading& reading) {
    return reading.taken ? "taken" : "";
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
    return out;
}

Json passRow(const Pass& pass) {
    Json out = {{"pass", pass.number},
                {"label", pass.label},
                {"started", isoTime(pass.startedAt)},
                {"stack", pass.stackIn ? "in" : "out"},
                {"weights", pass.weightsOn ? "on" : "off"}};
    out["temperature"] = sheet::number(pass.climate ? std::optional(pass.climate->celsius) : pass.temperature);
    out["humidity"] = sheet::number(pass.climate ? std::optional(pass.climate->humidity) : pass.humidity);
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
    return {{"operation", sheet::text(key(done.operation))},
            {"notes", sheet::notes(done.notes)},
            {"amount", sheet::number(done.amount)},
            {"amounts", amounts},
            {"to_aim", done.toAim},
            {"after_pass", done.pass},
            {"step", done.step},
            {"at", isoTime(done.at)}};
}

Json findingRow(const Finding& finding) {
    return {{"note", finding.note ? Json(finding.note->value) : Json(nullptr)},
            {"part", finding.part},
            {"fault", finding.fault},
            {"remedy", finding.remedy},
            {"state", sheet::text(key(finding.state))},
            {"amount", finding.amount},
            {"remark", finding.remark},
            {"at", isoTime(finding.at)}};
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
        out["symptoms"].push_back(
            {{"symptom", symptom.key}, {"first", symptom.notes.first}, {"last", symptom.notes.last}});
    return out;
}

} // namespace

std::string exportCsv(const std::vector<PianoRecord>& records) {
    std::string out = "\xEF\xBB\xBFpiano;pass;note;dimension;trial;text;unit;state;at\r\n";
    for (const PianoRecord& record : records)
        for (const Pass& pass : record.passes)
            for (const auto& [cell, measured] : pass.cells) {
                const std::string note = std::to_string(cell.note.value);
                const std::string dimension(key(cell.dimension));
                const std::string number = std::to_string(pass.number);
                if (measured.notFitted)
                    line(out, {record.piano.name, number, note, dimension, "1", "", "", "not-fitted", ""});
                for (const Reading& r : measured.trials)
                    line(out, {record.piano.name, number, note, dimension, std::to_string(r.trial), r.typed,
                               r.typedUnit, stateOf(r), isoTime(r.at)});
            }
    return out;
}

std::string exportJson(const std::vector<PianoRecord>& records) {
    Json out = {{"format", "hammerline-export"}, {"version", 1}};
    out["pianos"] = Json::array();
    for (const PianoRecord& record : records)
        out["pianos"].push_back(pianoRow(record));
    return sheet::dump(out);
}

} // namespace hammerline
