// The survey as JSON (commands.md): findings grouped by what they say, parts to order, minutes.
#include "core/sheet/json_number.hpp"
#include "core/sheet/sheet.h"
#include "core/sheet/work_order.h"
#include "core/survey/odd_parts.h"
#include "core/survey/rail_advice.h"
#include "core/survey/standing.h"

#include <algorithm>

namespace hammerline {
namespace {

using sheet::Json;

/// Findings that say the same of several notes are one row.
struct Row {
    Finding finding;
    std::vector<NoteNumber> notes;
    bool blocks = false;
};

bool same(const Finding& a, const Finding& b) {
    return a.part == b.part && a.fault == b.fault && a.remedy == b.remedy && a.state == b.state &&
           a.remark == b.remark && a.amount == b.amount && a.note.has_value() == b.note.has_value();
}

/// A finding that a newer word on all its places has overruled is history.
bool stands(const Finding& finding, const Part& part, const Standing& standing) {
    if (finding.note) return standing.at(part, *finding.note) == &finding;
    const auto notes = notesOf(part, standing.piano());
    return std::any_of(notes.begin(), notes.end(), [&](NoteNumber n) { return standing.at(part, n) == &finding; });
}

std::vector<Row> rowsOf(std::span<const Finding> findings, const Standing& standing) {
    std::vector<Row> rows;
    for (const Finding& finding : findings) {
        const Part* part = findPart(finding.part);
        if (!part || !stands(finding, *part, standing)) continue;
        auto row = std::find_if(rows.begin(), rows.end(), [&](const Row& r) { return same(r.finding, finding); });
        if (row == rows.end()) row = rows.insert(rows.end(), {finding, {}, standing.blocks(finding)});
        if (finding.note) row->notes.push_back(*finding.note);
        for (const NoteNumber n : notesOf(*part, standing.piano()))
            if (!finding.note && standing.at(*part, n) == &finding) row->notes.push_back(n);
    }
    return rows;
}

Json rowJson(const Row& row) {
    const Remedy* remedy = remedyOf(row.finding);
    Json out = {{"notes", sheet::notes(row.notes)},
                {"part", row.finding.part},
                {"fault", row.finding.fault},
                {"remedy", remedy ? sheet::text(remedy->key) : Json(row.finding.remedy)},
                {"state", sheet::text(key(row.finding.state))},
                {"blocks", row.blocks},
                {"whole_piano", !row.finding.note.has_value()}};
    if (row.finding.amount != 0) out["amount"] = sheet::rounded(row.finding.amount);
    if (!row.finding.remark.empty()) out["remark"] = row.finding.remark;
    return out;
}

Json lineJson(const PartsLine& line) {
    return {{"part", line.part},
            {"size", line.size},
            {"needed", line.needed},
            {"spare", line.spare},
            {"quantity", line.quantity},
            {"unit", line.unit},
            {"whole_set", line.wholeSet},
            {"found", line.found},
            {"of", line.of},
            {"for", line.from},
            {"notes", sheet::notes(line.notes)},
            {"measured", line.measured},
            {"by_size", line.bySize}};
}

Json supplies(const std::set<std::string>& names) {
    Json out = Json::array();
    for (const std::string& each : names)
        out.push_back(each);
    return out;
}

Json jobJson(const JobLine& line) {
    return {{"part", sheet::text(line.part)},      {"stage", sheet::text(key(line.stage))},
            {"to_do", sheet::notes(line.toDo)},    {"watch", sheet::notes(line.watch)},
            {"mended", sheet::notes(line.mended)}, {"first", line.first},
            {"waits_for_parts", line.waits},       {"waits_for", supplies(line.waitsFor)},
            {"specialist", line.specialist},       {"minutes", line.minutesOpen},
            {"minutes_done", line.minutesDone}};
}

Json stepJson(const WorkOrderStep& step) {
    Json lines = Json::array();
    for (const JobLine& line : step.lines)
        lines.push_back(sheet::text(line.part));
    return {{"step", sheet::text(step.id)},
            {"state", sheet::text(key(step.state))},
            {"open", step.open},
            {"done", step.done},
            {"parts", std::move(lines)},
            {"waits_for", supplies(step.waitsFor)},
            {"minutes", sheet::rounded(step.minutesOpen)},
            {"minutes_done", sheet::rounded(step.minutesDone)}};
}

Json orderJson(const WorkOrder& order) {
    Json out = {{"steps", Json::array()},
                {"minutes", sheet::rounded(order.minutesOpen)},
                {"minutes_done", sheet::rounded(order.minutesDone)},
                {"unforeseen_minutes", sheet::rounded(order.unforeseen)}};
    for (const WorkOrderStep& step : order.steps)
        out["steps"].push_back(stepJson(step));
    return out;
}

/// What each symptom comes from, as far as the last pass and the findings tell.
Json symptomsJson(const PianoRecord& record) {
    Json out = Json::array();
    for (const Advice& advice : adviceOf(record)) {
        Json checks = Json::array();
        for (const Advice::Check& check : advice.checks)
            checks.push_back({{"check", sheet::text(check.id)},
                              {"supported", check.supported ? Json(*check.supported) : Json(nullptr)},
                              {"side_effects", sheet::texts(check.sideEffects)},
                              {"aftertouch_gain", sheet::rounded(check.aftertouchGain)}});
        out.push_back({{"symptom", advice.symptom},
                       {"first", advice.notes.first},
                       {"last", advice.notes.last},
                       {"checks", std::move(checks)},
                       {"no_dimension_explains", advice.noDimensionExplains}});
    }
    return out;
}

} // namespace

std::string surveyJson(const PianoRecord& record) {
    const std::span<const Finding> findings = record.findings;
    const JobTerms terms = jobTerms(record.preferences);
    const Job job = wholeJob(findings, record.piano, terms);
    const Standing standing(findings, record.piano);
    Json out;
    out["findings"] = Json::array();
    for (const Row& row : rowsOf(findings, standing))
        out["findings"].push_back(rowJson(row));
    out["parts"] = Json::array();
    for (const PartsLine& line : partsList(findings, record.piano, terms.spares))
        out["parts"].push_back(lineJson(line));
    out["ordered"] = supplies(terms.ordered);
    out["minutes"] = job.minutesOpen;
    out["minutes_done"] = job.minutesDone;
    out["job"] = Json::array();
    for (const JobLine& line : job.lines)
        out["job"].push_back(jobJson(line));
    std::vector<NoteNumber> blocked;
    for (int i = 1; i <= record.piano.notes; ++i)
        if (!standing.blockersOf(NoteNumber{i}).empty()) blocked.push_back(NoteNumber{i});
    out["blocked"] = sheet::notes(blocked);
    out["ask_before_plan"] = sheet::texts(askBeforePlan(findings, record.piano, record.marks));
    out["advice"] = Json::array();
    if (letOffRailFirst(findings, record.piano)) out["advice"].push_back("let-off-rail-to-specialist");
    out["order"] = orderJson(workOrder(record));
    out["symptoms"] = symptomsJson(record);
    out["odd_parts"] = Json::array();
    for (const OddPart& part : oddParts(record.preferences))
        out["odd_parts"].push_back({{"name", part.name}, {"state", sheet::text(key(part.state))}, {"told", part.told}});
    out["work_done"] = Json::array();
    for (const WorkBeside& work : workBeside(record.preferences))
        out["work_done"].push_back({{"place", sheet::text(work.place)}, {"what", work.what}, {"told", work.told}});
    return sheet::dump(out);
}

} // namespace hammerline
