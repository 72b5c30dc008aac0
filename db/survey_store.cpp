#include "core/survey/filing.h"
#include "db/stores.h"
#include "db/versions.h"

#include <algorithm>
#include <cmath>

namespace hammerline {
namespace {

Key overrideKey(OpenBook& book, std::int64_t piano, Cell cell) {
    return {piano, std::int64_t{cell.note.value}, book.dimensionRow(cell.dimension)};
}

std::int64_t noteNumber(const Finding& finding) {
    return finding.note ? finding.note->value : 0;
}

struct HeldFinding {
    std::string fault, remedy, remark;
    std::int64_t amount{};
    std::string state = {};
    bool filed() const { return remedy == "reshape" && state == key(FindingState::mended) && amount > 0; }
};
/// What is said at present of a part at a note: one row for each fault, or one without a fault.
std::vector<HeldFinding> heldFindings(OpenBook& book, std::int64_t piano, const Finding& finding) {
    Query find =
        book.query("SELECT x.fault, x.remedy, x.remark, x.amount, x.state FROM finding x WHERE x.piano_id = ? AND "
                   "x.note = ? AND x.part = ? AND x.withdrawn = 0 AND " +
                   isHead(subject("finding")) + " ORDER BY x.fault, (SELECT place FROM act WHERE id = x.act_id)");
    find << piano << noteNumber(finding) << finding.part;
    std::vector<HeldFinding> held;
    while (find.step()) {
        if (!held.empty() && held.back().fault == find.text(0)) held.pop_back(); // disputed: the later
        held.push_back({find.text(0), find.text(1), find.text(2), find.number(3), find.text(4)});
    }
    return held;
}

void writeFinding(ActUnderWay& act, std::int64_t piano, const Finding& finding, const HeldFinding& row,
                  std::optional<ActId> origin = {}) {
    const auto replaces =
        toReplace(act, subject("finding"), {piano, noteNumber(finding), finding.part, std::string(row.fault)});
    Query insert =
        act.book().query("INSERT INTO finding (piano_id, note, part, fault, act_id, replaces, origin, remedy, "
                         "state, amount, remark) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)");
    insert << piano << noteNumber(finding) << finding.part << row.fault << act.id() << replaces << origin << row.remedy
           << key(finding.state) << row.amount << row.remark;
    insert.run();
}

/// What the finding says, over what was known of the same fault.
HeldFinding over(const Finding& finding, HeldFinding held) {
    if (!finding.remedy.empty()) held.remedy = finding.remedy;
    if (!finding.remark.empty()) held.remark = finding.remark;
    if (finding.amount != 0) held.amount = std::llround(finding.amount * kNmPerMm);
    return held;
}

/// A filing pass stands as one of its own beside those before it, so that none is lost and the sum can be made; the
/// grooves that it was for are mended with it.
Finding asPassOfItsOwn(ActUnderWay& act, std::int64_t piano, const Finding& finding) {
    int before = 0;
    for (const HeldFinding& held : heldFindings(act.book(), piano, finding)) {
        before += held.filed();
        const bool grooves = held.fault == finding.fault && !held.filed();
        if (!grooves) continue;
        Finding mended = finding;
        mended.amount = 0;
        writeFinding(act, piano, mended, {held.fault, finding.remedy, held.remark, 0});
    }
    Finding pass = finding;
    pass.fault = filingFault(std::min(before + 1, kFilingPasses));
    return pass;
}

/// A fault is said for the first time or again: it stands beside other faults of the part, not beside "sound".
void sayFault(ActUnderWay& act, std::int64_t piano, const Finding& finding) {
    HeldFinding row{finding.fault, {}, {}, 0};
    for (const HeldFinding& held : heldFindings(act.book(), piano, finding)) {
        if (held.fault.empty())
            takeBack(act, subject("finding"), {piano, noteNumber(finding), finding.part, std::string()});
        if (held.fault == finding.fault) row = held;
    }
    writeFinding(act, piano, finding, over(finding, row));
}

/// A state without a fault holds for every fault of the part; "sound" takes the faults away.
void sayState(ActUnderWay& act, std::int64_t piano, const Finding& finding) {
    bool said = false;
    for (const HeldFinding& held : heldFindings(act.book(), piano, finding)) {
        if (finding.part == "hammer-head" && held.filed()) continue; // stays filed, however the head is now
        if (finding.state == FindingState::sound && !held.fault.empty()) {
            takeBack(act, subject("finding"), {piano, noteNumber(finding), finding.part, held.fault});
            continue;
        }
        writeFinding(act, piano, finding, over(finding, held));
        said = true;
    }
    if (!said) writeFinding(act, piano, finding, over(finding, {}));
}

} // namespace

ActId setOverride(ActUnderWay& act, std::int64_t piano, const Override& set) {
    if (set.reason.empty()) fail(RefusalCode::reasonMissing);
    const Zone& zone = set.zone;
    if ((zone.low && *zone.low > zone.nominal) || (zone.high && *zone.high < zone.nominal)) fail(RefusalCode::badZone);
    const auto replaces = toReplace(act, subject("aim_override"), overrideKey(act.book(), piano, set.cell));
    Query insert = act.book().query("INSERT INTO aim_override (piano_id, note, dimension_id, act_id, replaces, low, "
                                    "nominal, high, reason, review_on) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)");
    insert << piano << set.cell.note.value << act.book().dimensionRow(set.cell.dimension) << act.id() << replaces
           << zone.low << zone.nominal << zone.high << set.reason << set.reviewOn;
    insert.run();
    return act.id();
}

ActId removeOverride(ActUnderWay& act, std::int64_t piano, Cell cell) {
    takeBack(act, subject("aim_override"), overrideKey(act.book(), piano, cell));
    return act.idOrNone();
}

ActId addFindings(ActUnderWay& act, std::int64_t piano, std::span<const Finding> findings) {
    std::map<std::tuple<std::int64_t, std::string, std::string>, const Finding*> last; // the same said twice: the later
    for (const Finding& finding : findings) {
        if (finding.part.empty()) fail(RefusalCode::unknownPart);
        last[{noteNumber(finding), finding.part, finding.fault}] = &finding;
    }
    for (const Finding& finding : findings) {
        if (last.at({noteNumber(finding), finding.part, finding.fault}) != &finding) continue;
        const bool filedNow = isFiled(finding) && filingPass(finding.fault) == 0;
        if (finding.fault.empty())
            sayState(act, piano, finding);
        else if (filedNow)
            sayFault(act, piano, asPassOfItsOwn(act, piano, finding));
        else
            sayFault(act, piano, finding);
    }
    return act.idOrNone();
}

void insertFinding(ActUnderWay& act, std::int64_t piano, const Finding& finding, std::optional<ActId> origin) {
    for (const HeldFinding& held : heldFindings(act.book(), piano, finding)) {
        const bool gives = finding.fault.empty() ? finding.state == FindingState::sound : held.fault.empty();
        const bool filed = finding.part == "hammer-head" && held.filed();
        if (gives && !filed && held.fault != finding.fault)
            takeBack(act, subject("finding"), {piano, noteNumber(finding), finding.part, held.fault});
    }
    writeFinding(act, piano, finding, over(finding, {finding.fault, {}, {}, 0}), origin);
}

void insertSymptom(ActUnderWay& act, std::int64_t piano, const Symptom& symptom, std::optional<ActId> origin) {
    const auto replaces =
        toReplace(act, subject("symptom"),
                  {piano, symptom.key, std::int64_t{symptom.notes.first}, std::int64_t{symptom.notes.last}});
    Query insert = act.book().query("INSERT INTO symptom (piano_id, symptom, first, last, act_id, replaces, origin) "
                                    "VALUES (?, ?, ?, ?, ?, ?, ?)");
    insert << piano << symptom.key << symptom.notes.first << symptom.notes.last << act.id() << replaces << origin;
    insert.run();
}

ActId addSymptom(ActUnderWay& act, std::int64_t piano, const Symptom& symptom) {
    insertSymptom(act, piano, symptom, {});
    return act.id();
}

} // namespace hammerline
