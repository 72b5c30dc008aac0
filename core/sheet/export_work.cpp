// What an export says was found, planned and done, read back.
#include "core/sheet/base64.h"
#include "core/sheet/export_walk.hpp"
#include "core/work/work.h"

#include <algorithm>
#include <tuple>

namespace hammerline::sheet {
namespace {

using At = ExportWalk::At;
constexpr std::int64_t kMostSeconds = 36'000'000; // ten thousand hours, as the book takes them

class WorkReader {
public:
    WorkReader(ExportWalk& into, PianoRecord& record) : walk(into), m_record(record) {}

    void readOverride(const At& at) {
        const auto cell = walk.cell(at, m_record.piano);
        if (!cell) return;
        Override set;
        set.cell = *cell;
        const auto side = [&](const char* name, bool required) -> std::optional<std::int64_t> {
            const auto value = walk.number(at, name, required);
            if (value && std::abs(*value) <= ExportWalk::kLargest) return fromTrade(*value, row(cell->dimension).kind);
            if (value) walk.wrong(*walk.maybe(at, name), "range");
            return std::nullopt;
        };
        set.zone.low = side("low", false);
        set.zone.nominal = side("nominal", true).value_or(0);
        set.zone.high = side("high", false);
        set.reason = walk.text(at, "reason", true);
        set.reviewOn = walk.text(at, "review");
        if (walk.ok() && set.reason.empty()) walk.wrong({nullptr, at.path + "/reason"}, "missing");
        if (walk.ok() && !ordered(set.zone)) walk.wrong(*walk.maybe(at, "nominal"), "range");
        m_record.overrides.push_back(std::move(set));
    }

    void readPlan(const At& at) {
        FrozenPlan plan;
        plan.uuid = walk.uuid(at);
        plan.pass = walk.passNumber(at, "pass", m_record);
        plan.options = walk.text(at, "options", true);
        plan.content = walk.text(at, "content", true);
        plan.order = walk.order(at, 0);
        if (!walk.ok()) return;
        if (plan.uuid.empty()) return walk.wrong({nullptr, at.path + "/uuid"}, "missing");
        for (const auto& [name, text] : {std::pair{"options", &plan.options}, {"content", &plan.content}})
            if (!sheet::parseJson(*text)) return walk.wrong(*walk.maybe(at, name), "syntax");
        m_record.plans.push_back(std::move(plan));
    }

    void readDone(const At& at) {
        Done done;
        const auto operation = findOperation(walk.text(at, "operation", true));
        if (walk.ok() && !operation) return walk.wrong(*walk.maybe(at, "operation"), "unknown");
        if (!walk.ok()) return;
        done.operation = *operation;
        const int notes = m_record.piano.notes;
        walk.each(at, "notes", [&](const At& each) {
            if (const auto note = walk.whole(each, 1, notes)) done.notes.push_back({static_cast<int>(*note)});
        });
        done.amount = walk.bounded(at, "amount", -ExportWalk::kLargest, ExportWalk::kLargest);
        done.aim = walk.bounded(at, "aim", -ExportWalk::kLargest, ExportWalk::kLargest);
        walk.members(at, "amounts", [&](const std::string& name, const At& value) {
            const auto note = parseNote(name, m_record.piano);
            const bool number = !name.empty() && name.find_first_not_of("0123456789") == name.npos;
            if (!note || !number) return walk.wrong(value, "unknown");
            const auto amount = walk.number(value);
            if (amount && std::abs(*amount) > ExportWalk::kLargest) return walk.wrong(value, "range");
            done.amounts[note->value] = amount.value_or(0);
        });
        done.toAim = walk.flag(at, "to_aim");
        done.pass = walk.passNumber(at, "after_pass", m_record);
        done.step = walk.text(at, "step");
        done.plan = walk.text(at, "plan");
        done.at = walk.time(at, "at");
        done.order = walk.order(at, done.at);
        const bool known = done.plan.empty() || std::any_of(m_record.plans.begin(), m_record.plans.end(),
                                                            [&](const auto& plan) { return plan.uuid == done.plan; });
        if (walk.ok() && !known) walk.wrong(*walk.maybe(at, "plan"), "unknown");
        m_record.done.push_back(std::move(done));
    }

    void readFinding(const At& at) {
        Finding finding;
        if (const auto note = walk.whole(at, "note", 1, m_record.piano.notes))
            finding.note = NoteNumber{static_cast<int>(*note)};
        finding.part = walk.text(at, "part", true);
        finding.fault = walk.text(at, "fault");
        finding.remedy = walk.text(at, "remedy");
        finding.remark = walk.text(at, "remark");
        finding.amount = walk.bounded(at, "amount", 0, 100).value_or(0);
        finding.at = walk.time(at, "at");
        finding.order = walk.order(at, finding.at);
        const auto state = parseFindingState(walk.text(at, "state", true));
        if (!walk.ok()) return;
        if (!state) return walk.wrong(*walk.maybe(at, "state"), "unknown");
        finding.state = *state;
        const Part* part = findPart(finding.part);
        if (!part) return walk.wrong(*walk.maybe(at, "part"), "unknown");
        if (!finding.fault.empty() && !findFault(*part, finding.fault))
            return walk.wrong(*walk.maybe(at, "fault"), "unknown");
        if (!finding.remedy.empty() && !findRemedy(*part, finding.remedy))
            return walk.wrong(*walk.maybe(at, "remedy"), "unknown");
        const bool twice =
            !m_findings.emplace(finding.note ? finding.note->value : 0, finding.part, finding.fault).second;
        if (twice) return walk.wrong({nullptr, at.path}, "twice");
        m_record.findings.push_back(std::move(finding));
    }

    void readSymptom(const At& at) {
        Symptom symptom;
        symptom.key = walk.text(at, "symptom", true);
        const int notes = m_record.piano.notes;
        symptom.notes.first = static_cast<int>(walk.whole(at, "first", 1, notes, true).value_or(1));
        symptom.notes.last = static_cast<int>(walk.whole(at, "last", symptom.notes.first, notes, true).value_or(1));
        symptom.order = walk.order(at, 0);
        const auto known = symptomKeys();
        if (walk.ok() && std::find(known.begin(), known.end(), symptom.key) == known.end())
            return walk.wrong(*walk.maybe(at, "symptom"), "unknown");
        m_record.symptoms.push_back(std::move(symptom));
    }

    /// A field that this program does not know is kept: it may come from a later one.
    void readIdentityField(const std::string& name, const At& value) {
        if (name.empty() || !value.json->is_string()) return walk.wrong(value, "type");
        const auto typed = value.json->get<std::string>();
        const auto keys = identityKeys();
        const bool known = std::find(keys.begin(), keys.end(), name) != keys.end();
        const auto read = known ? readIdentity(name, typed) : readLine(name, typed, 200);
        if (!read) return walk.wrong(value, "range");
        if (!read->empty()) m_record.identity[name] = *read;
    }

    void readPhoto(const At& at) {
        Photo photo;
        if (walk.maybe(at, "pass")) photo.about.pass = walk.passNumber(at, "pass", m_record);
        if (const auto note = walk.whole(at, "note", 1, m_record.piano.notes))
            photo.about.note = NoteNumber{static_cast<int>(*note)};
        photo.about.part = walk.text(at, "part");
        photo.about.fault = walk.text(at, "fault");
        photo.hash = walk.text(at, "hash", true);
        photo.caption = walk.text(at, "caption");
        photo.who = walk.text(at, "who");
        photo.on = walk.text(at, "on", true);
        photo.at = walk.time(at, "at");
        photo.order = walk.order(at, photo.at);
        if (!walk.ok()) return;
        const bool named =
            photo.hash.size() == 64 && photo.hash.find_first_not_of("0123456789abcdef") == photo.hash.npos;
        if (!named) return walk.wrong(*walk.maybe(at, "hash"), "range");
        if (!readDay(photo.on)) return walk.wrong(*walk.maybe(at, "on"), "range");
        if (!readLine("caption", photo.caption, 400)) return walk.wrong(*walk.maybe(at, "caption"), "range");
        if (!readLine("who", photo.who, 200)) return walk.wrong(*walk.maybe(at, "who"), "range");
        if (!checkAbout(photo.about, m_record)) return walk.wrong({nullptr, at.path + "/part"}, "unknown");
        if (const auto picture = walk.maybe(at, "picture")) readPicture(*picture, photo.hash);
        m_record.photos.push_back(std::move(photo));
    }

    void readPicture(const At& at, const std::string& hash) {
        Picture picture;
        picture.hash = hash;
        picture.kind = walk.text(at, "kind", true);
        picture.width = static_cast<int>(walk.whole(at, "width", 1, 65535, true).value_or(1));
        picture.height = static_cast<int>(walk.whole(at, "height", 1, 65535, true).value_or(1));
        const auto thumb = fromBase64(walk.text(at, "thumb")), bytes = fromBase64(walk.text(at, "bytes", true));
        if (!walk.ok()) return;
        const bool known = picture.kind == "jpeg" || picture.kind == "png";
        if (!known) return walk.wrong(*walk.maybe(at, "kind"), "unknown");
        if (!thumb) return walk.wrong(*walk.maybe(at, "thumb"), "syntax");
        const bool holds = bytes && !bytes->empty() && bytes->size() <= kLargestPicture;
        if (!holds) return walk.wrong({nullptr, at.path + "/bytes"}, bytes ? "range" : "syntax");
        picture.thumb = *thumb;
        picture.bytes = *bytes;
        m_record.pictures[hash] = std::move(picture);
    }

    void readRemark(const At& at) {
        Remark remark;
        const auto kind = parseRemarkKind(walk.text(at, "kind", true));
        if (walk.ok() && !kind) return walk.wrong(*walk.maybe(at, "kind"), "unknown");
        if (walk.maybe(at, "pass")) remark.about.pass = walk.passNumber(at, "pass", m_record);
        if (const auto note = walk.whole(at, "note", 1, m_record.piano.notes))
            remark.about.note = NoteNumber{static_cast<int>(*note)};
        remark.about.part = walk.text(at, "part");
        remark.about.fault = walk.text(at, "fault");
        const auto text = readRemarkText(walk.text(at, "text", true));
        remark.who = walk.text(at, "who");
        remark.on = walk.text(at, "on", true);
        remark.accepted = walk.text(at, "accepted");
        remark.at = walk.time(at, "at");
        remark.order = walk.order(at, remark.at);
        if (!walk.ok()) return;
        const bool decided = remark.accepted.empty() || remark.accepted == "yes" || remark.accepted == "no";
        if (!text) return walk.wrong(*walk.maybe(at, "text"), "range");
        if (!readDay(remark.on)) return walk.wrong(*walk.maybe(at, "on"), "range");
        if (!readLine("who", remark.who, 200)) return walk.wrong(*walk.maybe(at, "who"), "range");
        if (!decided) return walk.wrong(*walk.maybe(at, "accepted"), "unknown");
        if (!checkAbout(remark.about, m_record)) return walk.wrong({nullptr, at.path + "/part"}, "unknown");
        remark.kind = *kind;
        remark.text = *text;
        m_record.remarks.push_back(std::move(remark));
    }

    void readMark(const At& at) {
        WorkMark mark;
        mark.step = walk.text(at, "step", true);
        if (const auto note = walk.whole(at, "note", 1, m_record.piano.notes))
            mark.note = NoteNumber{static_cast<int>(*note)};
        const auto state = parseMarkState(walk.text(at, "state", true));
        mark.remark = walk.text(at, "remark");
        mark.seconds = walk.whole(at, "seconds", 0, kMostSeconds).value_or(0);
        mark.at = walk.time(at, "at");
        mark.order = walk.order(at, mark.at);
        if (!walk.ok()) return;
        if (!state) return walk.wrong(*walk.maybe(at, "state"), "unknown");
        mark.state = *state;
        if (!findStep(mark.step)) return walk.wrong(*walk.maybe(at, "step"), "unknown");
        if (!m_marks.emplace(mark.note ? mark.note->value : 0, mark.step).second)
            return walk.wrong({nullptr, at.path}, "twice");
        m_record.marks.push_back(std::move(mark));
    }

private:
    ExportWalk& walk;
    PianoRecord& m_record;
    std::set<std::tuple<int, std::string, std::string>> m_findings;
    std::set<std::pair<int, std::string>> m_marks;
};

} // namespace

void readWork(ExportWalk& walk, const At& piano, PianoRecord& record) {
    WorkReader reader(walk, record);
    walk.each(piano, "overrides", [&](const At& each) { reader.readOverride(each); });
    walk.each(piano, "plans", [&](const At& each) { reader.readPlan(each); });
    walk.each(piano, "done", [&](const At& each) { reader.readDone(each); });
    walk.each(piano, "findings", [&](const At& each) { reader.readFinding(each); });
    walk.each(piano, "work", [&](const At& each) { reader.readMark(each); });
    walk.each(piano, "symptoms", [&](const At& each) { reader.readSymptom(each); });
    walk.members(piano, "identity",
                 [&](const std::string& name, const At& value) { reader.readIdentityField(name, value); });
    walk.each(piano, "photos", [&](const At& each) { reader.readPhoto(each); });
    walk.each(piano, "remarks", [&](const At& each) { reader.readRemark(each); });
}

} // namespace hammerline::sheet
