#include "ui/words/acts.h"

#include "ui/words/piano_record.h"
#include "ui/words/said.h"
#include "ui/words/words.h"

#include <algorithm>
#include <set>

namespace hammerline::words {

namespace {

QString actText(const char* text) {
    return QCoreApplication::translate("acts", text);
}

constexpr std::array kActKinds{
    KeyedText{"entry", QT_TRANSLATE_NOOP("acts", "what was typed")},
    KeyedText{"import", QT_TRANSLATE_NOOP("acts", "the import")},
    KeyedText{"override", QT_TRANSLATE_NOOP("acts", "a zone of its own")},
    KeyedText{"pass", QT_TRANSLATE_NOOP("acts", "the new pass")},
    KeyedText{"paste", QT_TRANSLATE_NOOP("acts", "what was pasted")},
    KeyedText{"plan", QT_TRANSLATE_NOOP("acts", "the plan kept")},
    KeyedText{"preference", QT_TRANSLATE_NOOP("acts", "a choice for this piano")},
    KeyedText{"setup", QT_TRANSLATE_NOOP("acts", "what was said of the piano or the pass")},
    KeyedText{"settle", QT_TRANSLATE_NOOP("acts", "which of two readings holds")},
    KeyedText{"survey", QT_TRANSLATE_NOOP("acts", "what was said in the survey")},
    KeyedText{"tick", QT_TRANSLATE_NOOP("acts", "a tick")},
};

QString cellWords(Cell cell, const Measured* now, const Piano& piano) {
    const QString where = QStringLiteral("%1, %2").arg(noteName(cell.note, piano), name(cell.dimension).toLower());
    const Reading* reading = now ? now->latest() : nullptr;
    if (!reading) return actText(QT_TRANSLATE_NOOP("acts", "%1: no reading")).arg(where);
    return QStringLiteral("%1 %2").arg(where, shown(cell.dimension, *reading));
}

/// Cells that read otherwise in `with`.
QString readingsDiffering(const PianoRecord& with, const PianoRecord& without) {
    std::vector<std::pair<const Pass*, Cell>> cells;
    for (const Pass& pass : with.passes) {
        const Pass* other = without.pass(pass.number);
        for (const auto& [cell, measured] : pass.cells)
            if (const Measured* there = other ? other->at(cell) : nullptr; !there || !(*there == measured))
                cells.emplace_back(&pass, cell);
        if (!other) continue;
        for (const auto& [cell, measured] : other->cells)
            if (!pass.at(cell)) cells.emplace_back(&pass, cell);
    }
    if (cells.empty()) return {};
    if (cells.size() == 1)
        return cellWords(cells.front().second, cells.front().first->at(cells.front().second), with.piano);
    return QCoreApplication::translate("acts", "%n reading(s)", nullptr, static_cast<int>(cells.size()));
}

QString notesWords(const std::vector<NoteNumber>& notes, const Piano& piano) {
    return notes.size() == 1 ? noteName(notes.front(), piano) : utf8(writeNotes(notes));
}

bool sameDone(const Done& a, const Done& b) {
    return a.plan == b.plan && a.step == b.step && a.operation == b.operation && a.notes == b.notes &&
           a.amount == b.amount && a.toAim == b.toAim;
}

std::vector<const Done*> doneOnlyIn(const PianoRecord& one, const PianoRecord& other) {
    std::vector<const Done*> found;
    for (const Done& each : one.done)
        if (std::ranges::none_of(other.done, [&](const Done& there) { return sameDone(there, each); }))
            found.push_back(&each);
    return found;
}

/// "the tick of let-off screw, 40 C4: 0.125", "that capstan, 44 E4 was not done".
QString ticksDiffering(const PianoRecord& with, const PianoRecord& without) {
    const auto ticked = doneOnlyIn(with, without), unticked = doneOnlyIn(without, with);
    const auto& said = ticked.empty() ? unticked : ticked;
    if (said.empty()) return {};
    if (said.size() > 1)
        return ticked.empty()
                   ? QCoreApplication::translate("acts", "that %n line(s) were not done", nullptr,
                                                 static_cast<int>(said.size()))
                   : QCoreApplication::translate("acts", "%n tick(s)", nullptr, static_cast<int>(said.size()));
    const Done& done = *said.front();
    const QString work =
        QStringLiteral("%1, %2").arg(name(done.operation, with.piano).toLower(), notesWords(done.notes, with.piano));
    if (ticked.empty()) return actText(QT_TRANSLATE_NOOP("acts", "that the line was not done: %1")).arg(work);
    const QString how = done.toAim    ? actText(QT_TRANSLATE_NOOP("acts", "to the aim"))
                        : done.amount ? number(std::abs(*done.amount), 3)
                                      : QString();
    return actText(QT_TRANSLATE_NOOP("acts", "a tick: %1"))
        .arg(how.isEmpty() ? work : work + QStringLiteral(", ") + how);
}

/// Findings that stand otherwise in `with`.
QString findingsDiffering(const PianoRecord& with, const PianoRecord& without) {
    std::vector<const Finding*> found;
    const auto lacks = [](const std::vector<Finding>& all, const Finding& each) {
        return std::ranges::find(all, each) == all.end();
    };
    for (const Finding& each : with.findings)
        if (lacks(without.findings, each)) found.push_back(&each);
    if (found.empty())
        for (const Finding& each : without.findings)
            if (lacks(with.findings, each)) found.push_back(&each);
    if (found.empty()) return {};
    if (found.size() > 1)
        return QCoreApplication::translate("acts", "%n finding(s) of the survey", nullptr,
                                           static_cast<int>(found.size()));
    const Finding& finding = *found.front();
    const QString what = finding.fault.empty() ? surveyStateName(finding.state) : faultName(finding.fault);
    const QString part = partOfActionName(finding.part).toLower();
    return finding.note ? QStringLiteral("%1, %2: %3").arg(noteName(*finding.note, with.piano), part, what)
                        : QStringLiteral("%1: %2").arg(part, what);
}

/// The remark, the photograph or the field of the record that only one of the two has, or has otherwise.
QString recordDiffering(const PianoRecord& with, const PianoRecord& without) {
    for (const auto& [one, other] : {std::pair{&with, &without}, {&without, &with}}) {
        for (const Remark& remark : one->remarks)
            if (std::ranges::none_of(other->remarks, [&](const Remark& each) { return sayTheSame(each, remark); }))
                return remarkSentence(remark, one->piano);
        for (const Photo& photo : one->photos)
            if (std::ranges::none_of(other->photos, [&](const Photo& each) { return showTheSame(each, photo); }))
                return actText(QT_TRANSLATE_NOOP("acts", "a photograph: %1")).arg(photoSentence(photo, one->piano));
        for (const auto& [key, value] : one->identity)
            if (identityValue(other->identity, key) != value)
                return QStringLiteral("%1 %2").arg(identityName(key).toLower(), utf8(value));
    }
    return {};
}

} // namespace

QString actWords(std::string_view kind, const PianoRecord& with, const PianoRecord& without) {
    if (with.uuid == without.uuid && kind != "import")
        for (const QString& said : {readingsDiffering(with, without), ticksDiffering(with, without),
                                    findingsDiffering(with, without), recordDiffering(with, without)})
            if (!said.isEmpty()) return said;
    const QString said = saidOf(kActKinds, kind, "acts");
    return said.isEmpty() ? actText(QT_TRANSLATE_NOOP("acts", "what was done last")) : said;
}

} // namespace hammerline::words
