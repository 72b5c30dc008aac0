// The owner's record: what the piano is, how it was found, what was done, how it is left, what stays open and what to
// watch. Plain words, and nothing that is not in the book.
#include "core/sheet/not_read_since.h"
#include "core/sheet/work_order.h"
#include "core/survey/filing.h"
#include "core/survey/standing.h"
#include "ui/print/documents.h"
#include "ui/print/owner_words.h"
#include "ui/print/reserve_lines.h"
#include "ui/words/beside.h"
#include "ui/words/piano_record.h"
#include "ui/words/said.h"
#include "ui/words/survey_names.h"
#include "ui/words/touch_words.h"

#include <QCoreApplication>
#include <QDateTime>
#include <QLocale>

#include <algorithm>
#include <map>
#include <set>

namespace hammerline::print {

namespace {

using words::onPaper;

constexpr std::size_t kNotesNamed = 12; // more are counted
constexpr qsizetype kPartsNamed = 8;

QString dateOf(std::int64_t microseconds) {
    return QLocale(QLocale::English)
        .toString(QDateTime::fromMSecsSinceEpoch(microseconds / 1000).date(), QStringLiteral("d MMMM yyyy"));
}

QString pianoText(const Piano& piano) {
    const NoteNumber first{1}, last{piano.notes};
    QString text = onPaper(QT_TRANSLATE_NOOP("paper", "%1, %2 notes, %3 to %4"))
                       .arg(words::actionName(piano.action))
                       .arg(piano.notes)
                       .arg(words::pitch(first, piano), words::pitch(last, piano));
    if (piano.hasPlayer()) text += onPaper(QT_TRANSLATE_NOOP("paper", ", with a player"));
    return text + QLatin1Char('.');
}

/// "12 notes", or the notes where they are few: "notes 12, 23-24".
QString placesText(const std::set<int>& notes) {
    std::vector<NoteNumber> list;
    for (const int n : notes)
        list.push_back({n});
    if (notes.size() == 1) return onPaper(QT_TRANSLATE_NOOP("paper", "note %1")).arg(*notes.begin());
    const bool run = *notes.rbegin() - *notes.begin() + 1 == static_cast<int>(notes.size());
    if (notes.size() > kNotesNamed && !run) return onPaper(QT_TRANSLATE_NOOP("paper", "%1 notes")).arg(notes.size());
    return onPaper(QT_TRANSLATE_NOOP("paper", "notes %1")).arg(QString::fromStdString(writeNotes(list)));
}

/// "12 March 2026, as found, at 20 °C and 45 % humidity"
QString headOf(const Pass& pass) {
    QStringList parts;
    if (pass.startedAt) parts << dateOf(pass.startedAt);
    parts << passText(pass);
    const auto celsius = pass.climate ? std::optional(pass.climate->celsius) : pass.temperature;
    const auto humidity = pass.climate ? std::optional(pass.climate->humidity) : pass.humidity;
    if (celsius) parts << onPaper(QT_TRANSLATE_NOOP("paper", "%1 °C")).arg(mm(*celsius, 0));
    if (humidity) parts << onPaper(QT_TRANSLATE_NOOP("paper", "%1 % humidity")).arg(mm(*humidity, 0));
    return parts.join(QStringLiteral(", "));
}

/// What is out, the commonest first: "Let-off: too far at 31 notes, blocks at note 12".
std::vector<Paragraph> outText(const std::vector<Judged>& readings) {
    std::map<DimensionId, std::map<QString, std::set<int>>> out;
    std::map<DimensionId, std::set<int>> notes;
    for (const Judged& judged : readings) {
        if (judged.verdict != Verdict::low && judged.verdict != Verdict::high) continue;
        const DimensionId id = judged.cell.dimension;
        const QString how =
            judged.word ? words::name(*judged.word) : words::sideName(id, judged.verdict == Verdict::high);
        out[id][how].insert(judged.cell.note.value);
        notes[id].insert(judged.cell.note.value);
    }
    std::vector<DimensionId> order;
    for (const auto& [id, at] : notes)
        order.push_back(id);
    std::stable_sort(order.begin(), order.end(),
                     [&](DimensionId a, DimensionId b) { return notes[a].size() > notes[b].size(); });
    std::vector<Paragraph> lines;
    for (const DimensionId id : order) {
        QStringList how;
        for (const auto& [word, at] : out[id])
            how << onPaper(QT_TRANSLATE_NOOP("paper", "%1 at %2")).arg(word, placesText(at));
        lines.push_back(
            {{words::name(id) + QStringLiteral(": "), true}, {how.join(QStringLiteral("; ")) + u'.', false}});
    }
    return lines;
}

/// "let-off", "let-off, key dip and blow": what was read, so that nothing is said of the rest.
QString dimensionsRead(const Review& review) {
    QStringList names;
    for (const auto& [dimension, s] : review.byDimension)
        if (s.within + s.outside() + s.undecided > 0) names << words::name(dimension).toLower();
    if (names.size() < 2) return names.join(QString());
    const QString last = names.takeLast();
    return onPaper(QT_TRANSLATE_NOOP("paper", "%1 and %2")).arg(names.join(QStringLiteral(", ")), last);
}

int notesRead(const Pass& pass) {
    std::set<int> notes;
    for (const auto& [cell, measured] : pass.cells)
        if (!measured.missing()) notes.insert(cell.note.value);
    return static_cast<int>(notes.size());
}

/// A pass in words: when, how much was measured, what was out.
std::vector<Paragraph> visitText(const PianoRecord& record, int number) {
    const Pass* pass = record.pass(number);
    const Outcome<PassView> view = viewPass(record, number);
    if (!pass || !view) return {};
    std::vector<Paragraph> lines{
        {{headOf(*pass), true},
         {onPaper(QT_TRANSLATE_NOOP("paper", ". Read: %1, at %2 places; something is out at %3 of the %4 notes read."))
              .arg(dimensionsRead(view->review))
              .arg(pass->readingCount())
              .arg(notesOut(view->review))
              .arg(notesRead(*pass)),
          false}}};
    for (Paragraph& line : outText(view->review.ranked))
        lines.push_back(std::move(line));
    return lines;
}

/// What an earlier pass found out and the last one did not read again: not known to be in order.
std::vector<Paragraph> notReadAgain(const PianoRecord& record, int last) {
    std::vector<Outcome<PassView>> views;
    std::vector<const PassView*> shown;
    for (int number = 1; number <= last; ++number)
        views.push_back(viewPass(record, number));
    for (const Outcome<PassView>& view : views)
        shown.push_back(view ? &*view : nullptr);
    std::vector<Judged> readings;
    for (const NotReadSince& each : notReadSince(shown))
        readings.push_back(each.judged);
    if (readings.empty()) return {};
    std::vector<Paragraph> lines{
        {{onPaper(
              QT_TRANSLATE_NOOP("paper", "Found out before and not read again since, so not known to be in order:")),
          true}}};
    for (Paragraph& line : outText(readings))
        lines.push_back(std::move(line));
    return lines;
}

/// Work done by operation: how many notes.
std::vector<Paragraph> adjusted(const PianoRecord& record) {
    std::map<OperationId, std::set<int>> notes;
    for (const Done& done : record.done)
        for (const NoteNumber note : done.notes)
            if (done.operation != operation::inspect) notes[done.operation].insert(note.value);
    std::vector<Paragraph> lines;
    for (const auto& [operation, at] : notes)
        lines.push_back(
            {{words::name(operation, record.piano) + QStringLiteral(": "), true}, {placesText(at) + u'.', false}});
    return lines;
}

/// The findings that stand, of these states, note by note put together again.
std::vector<Paragraph> findings(const Source& source, std::initializer_list<FindingState> states) {
    const Standing standing(source.record.findings, source.piano());
    struct Same {
        std::string what;
        std::string remark;
        auto operator<=>(const Same&) const = default;
    };
    std::vector<Paragraph> lines;
    for (const Part& part : parts()) {
        std::map<Same, std::set<int>> groups;
        for (const NoteNumber n : notesOf(part, source.piano())) {
            const Finding* finding = standing.at(part, n);
            if (!finding || std::find(states.begin(), states.end(), finding->state) == states.end()) continue;
            const Remedy* remedy = remedyOf(*finding);
            QStringList what;
            if (!finding->fault.empty()) what << words::faultName(finding->fault);
            if (remedy && finding->state != FindingState::watch) what << words::surveyRemedyName(remedy->key);
            const double filed = isFiled(*finding) ? filedInAll(source.record.findings, n) : finding->amount;
            if (filed > 0) what << onPaper(QT_TRANSLATE_NOOP("paper", "%1 mm taken off in all")).arg(mm(filed, 1));
            groups[{what.join(QStringLiteral(", ")).toStdString(), finding->remark}].insert(n.value);
        }
        for (const auto& [same, notes] : groups) {
            const bool everywhere = notes.size() == notesOf(part, source.piano()).size();
            QStringList rest;
            if (!same.what.empty()) rest << QString::fromStdString(same.what);
            if (!everywhere || part.unit != PartUnit::piano) rest << placesText(notes);
            if (!same.remark.empty()) rest << QString::fromStdString(same.remark);
            const QString name = words::partOfActionName(part.key);
            if (rest.isEmpty()) lines.push_back({{name + u'.', true}});
            if (!rest.isEmpty())
                lines.push_back({{name + QStringLiteral(": "), true}, {rest.join(QStringLiteral("; ")) + u'.', false}});
        }
    }
    return lines;
}

class Builder {
public:
    explicit Builder(const Source& source)
        : m_source(source)
        , m_document(emptyDocument(source, onPaper(QT_TRANSLATE_NOOP("paper", "Record for the owner")), {})) {
        m_document.specLine.clear();
        m_document.foot = gap(0);
        m_document.subtitle = {{pianoName(), true}, {QStringLiteral("  ·  ") + pianoText(source.piano()), false}};
    }

    Document build() {
        const PianoRecord& record = m_source.record;
        std::vector<const Pass*> read;
        for (const Pass& pass : record.passes)
            if (pass.readingCount() > 0) read.push_back(&pass);
        section(onPaper(QT_TRANSLATE_NOOP("paper", "In short")), ownersWords(m_source));
        section(onPaper(QT_TRANSLATE_NOOP("paper", "The piano")), whose());
        if (!read.empty())
            section(onPaper(QT_TRANSLATE_NOOP("paper", "As found")), visitText(record, read.front()->number));
        section(onPaper(QT_TRANSLATE_NOOP("paper", "Mended")), findings(m_source, {FindingState::mended}));
        section(onPaper(QT_TRANSLATE_NOOP("paper", "Adjusted")), adjusted(record));
        if (read.size() > 1) section(onPaper(QT_TRANSLATE_NOOP("paper", "As left")), asLeft(*read.back()));
        if (!read.empty()) section(onPaper(QT_TRANSLATE_NOOP("paper", "The touch, weighed")), touch(*read.back()));
        section(onPaper(QT_TRANSLATE_NOOP("paper", "Done besides, and parts of its own")), beside());
        section(onPaper(QT_TRANSLATE_NOOP("paper", "What remains to be done")), remains());
        section(onPaper(QT_TRANSLATE_NOOP("paper", "What to watch")), watch());
        section(onPaper(QT_TRANSLATE_NOOP("paper", "How much is left, at least")), reserveLines(m_source));
        section(onPaper(QT_TRANSLATE_NOOP("paper", "Still settling, a forecast")), settlingLines(record));
        section(onPaper(QT_TRANSLATE_NOOP("paper", "Remarks")), remarks());
        section(onPaper(QT_TRANSLATE_NOOP("paper", "Set otherwise on purpose")), overrides());
        section(onPaper(QT_TRANSLATE_NOOP("paper", "Room climate at each visit")), climate());
        section(onPaper(QT_TRANSLATE_NOOP("paper", "Please mind")), cautions());
        return std::move(m_document);
    }

private:
    QString pianoName() const { return QString::fromStdString(m_source.piano().name); }

    /// A section without lines is left out; its heading stays with its first line.
    void section(const QString& title, const std::vector<Paragraph>& lines) {
        if (lines.empty()) return;
        m_document.blocks.emplace_back(headingBlock({}, title, {}));
        for (const Paragraph& line : lines)
            m_document.blocks.emplace_back(paragraphBlock(line, 10.5, m_source.width()));
        m_document.blocks.emplace_back(gap(2.5));
    }

    /// The fields that are filled, two or three in a line of paper.
    std::vector<Paragraph> whose() const {
        Paragraph line;
        for (const std::string_view key : identityKeys()) {
            const std::string_view value = identityValue(m_source.record.identity, key);
            if (value.empty()) continue;
            const QString before = line.empty() ? QString() : QStringLiteral("   ");
            line.push_back({before + words::identityName(key) + QStringLiteral(": "), false});
            line.push_back({words::utf8(value), true});
        }
        if (line.empty()) return {};
        return {line};
    }

    std::vector<Paragraph> remarks() const {
        std::vector<Paragraph> lines;
        for (const Remark& remark : m_source.record.remarks)
            lines.push_back({{words::remarkSentence(remark, m_source.piano()), false}});
        return lines;
    }

    std::vector<Paragraph> asLeft(const Pass& last) const {
        const Outcome<PassView> view = viewPass(m_source.record, last.number);
        std::vector<Paragraph> lines = visitText(m_source.record, last.number);
        for (Paragraph& line : notReadAgain(m_source.record, last.number))
            lines.push_back(std::move(line));
        if (!view) return lines;
        const FinishLine finish = finishOf(m_source.record, view->sheet, last.number).value_or(FinishLine{});
        Paragraph grade{{onPaper(QT_TRANSLATE_NOOP("paper", "On the whole: ")), false},
                        {finish.grade == Grade::notYet ? onPaper(QT_TRANSLATE_NOOP("paper", "not yet in order."))
                                                       : words::gradeName(finish.grade) + u'.',
                         true}};
        for (const std::string_view missing : finish.missing)
            grade.push_back({QLatin1Char(' ') + words::missingForGradeSentence(missing), false});
        lines.push_back(std::move(grade));
        const bool since = std::any_of(m_source.record.done.begin(), m_source.record.done.end(),
                                       [&](const Done& done) { return done.pass == last.number; });
        if (since)
            lines.push_back(
                {{onPaper(QT_TRANSLATE_NOOP("paper", "It was worked on since, and not measured again.")), false}});
        return lines;
    }

    std::vector<Paragraph> remains() const {
        std::vector<Paragraph> lines = findings(m_source, {FindingState::toDo});
        QStringList unseen;
        const Standing standing(m_source.record.findings, m_source.piano());
        for (const Part& part : parts()) {
            const auto notes = notesOf(part, m_source.piano());
            const bool felt = !damperFeltSize(part).empty();
            const bool none = std::all_of(notes.begin(), notes.end(), [&](NoteNumber n) {
                return standing.state(part, n) == FindingState::notLookedAt && !(felt && standing.damperFeltAt(n));
            });
            if (!notes.empty() && none) unseen << words::partOfActionName(part.key).toLower();
        }
        if (unseen.size() > kPartsNamed)
            lines.push_back(
                {{onPaper(QT_TRANSLATE_NOOP("paper",
                                            "%1 parts of the piano were not looked at; nothing is said of them here."))
                      .arg(unseen.size()),
                  false}});
        else if (!unseen.isEmpty())
            lines.push_back({{onPaper(QT_TRANSLATE_NOOP("paper", "Not looked at: ")), true},
                             {unseen.join(QStringLiteral("; ")) + u'.', false}});
        return lines;
    }

    std::vector<Paragraph> watch() const {
        std::vector<Paragraph> lines = findings(m_source, {FindingState::watch});
        for (const Symptom& symptom : m_source.record.symptoms) {
            std::set<int> notes;
            for (int n = symptom.notes.first; n <= symptom.notes.last; ++n)
                notes.insert(n);
            lines.push_back(
                {{onPaper(QT_TRANSLATE_NOOP("paper", "Noted: ")), true},
                 {words::symptomName(symptom.key) + QStringLiteral(", ") + placesText(notes) + u'.', false}});
        }
        return lines;
    }

    std::vector<Paragraph> overrides() const {
        std::vector<Paragraph> lines;
        for (const Override& o : m_source.record.overrides)
            lines.push_back(
                {{onPaper(QT_TRANSLATE_NOOP("paper", "Note %1, %2: "))
                      .arg(words::noteName(o.cell.note, m_source.piano()), words::name(o.cell.dimension).toLower()),
                  true},
                 {words::zoneText(o.cell.dimension, o.zone) + QStringLiteral(". ") + QString::fromStdString(o.reason),
                  false}});
        return lines;
    }

    /// Only where it was written down.
    std::vector<Paragraph> climate() const {
        QStringList visits;
        for (const Pass& pass : m_source.record.passes)
            if (pass.climate || pass.humidity || pass.temperature) visits << headOf(pass);
        if (visits.isEmpty()) return {};
        return {{{visits.join(QStringLiteral("; ")) + u'.', false}}};
    }

    /// Parts that no list knows, and work on the rest of the piano.
    std::vector<Paragraph> beside() const {
        std::vector<Paragraph> lines;
        for (const WorkBeside& work : workBeside(m_source.record.preferences))
            lines.push_back({{words::workBesideSentence(work), false}});
        for (const OddPart& part : oddParts(m_source.record.preferences))
            lines.push_back({{words::oddPartSentence(part), false}});
        return lines;
    }

    /// What the two weights say, by what is said: the notes that are out.
    std::vector<Paragraph> touch(const Pass& last) const {
        std::vector<Paragraph> lines;
        const Outcome<PassView> view = viewPass(m_source.record, last.number);
        if (!view) return lines;
        for (const NoteTouch& each : touchesOf(view->pass, m_source.piano(), view->sheet.name == "old-upright")) {
            if (each.says.front() == TouchSays::right) continue;
            lines.push_back(
                {{words::noteName(each.note, m_source.piano()) + QStringLiteral(": "), true},
                 {words::touchFigures(each) + QLatin1Char(' ') + words::touchSentence(each, m_source.piano()), false}});
        }
        return lines;
    }

    /// What an owner can come to harm by; the rest is for the bench.
    std::vector<Paragraph> cautions() const {
        std::vector<Paragraph> lines;
        for (const std::string_view id : words::cautionsFor(m_source.piano()))
            if (id == "tipping" || id == "mains") lines.push_back({{words::caution(id, m_source.piano()), false}});
        return lines;
    }

    const Source& m_source;
    Document m_document;
};

} // namespace

Document recordDocument(const Source& source) {
    return Builder(source).build();
}

} // namespace hammerline::print
