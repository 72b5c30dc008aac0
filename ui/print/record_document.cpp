// The owner's record: what the piano is, what was found, what was done, how it stands now, what stays open.
#include "ui/print/documents.h"
#include "ui/words/words.h"

#include <QCoreApplication>
#include <QDateTime>
#include <QLocale>

#include <algorithm>
#include <map>
#include <set>

namespace hammerline::print {

namespace {

QString said(const char* text) {
    return QCoreApplication::translate("paper", text);
}

QString dateOf(std::int64_t microseconds) {
    return QLocale().toString(QDateTime::fromMSecsSinceEpoch(microseconds / 1000).date(),
                              QStringLiteral("d MMMM yyyy"));
}

QString pianoText(const Piano& piano) {
    const NoteNumber first{1}, last{piano.notes};
    return said(QT_TRANSLATE_NOOP("paper", "%1, %2 notes, %3 to %4"))
        .arg(words::actionName(piano.action))
        .arg(piano.notes)
        .arg(words::pitch(first, piano), words::pitch(last, piano));
}

QString passLine(const PianoRecord& record, const Pass& pass) {
    QString line = passText(pass);
    if (pass.startedAt) line += QStringLiteral(", ") + dateOf(pass.startedAt);
    line += said(QT_TRANSLATE_NOOP("paper", ": %1 readings")).arg(pass.readingCount());
    if (pass.climate)
        line += said(QT_TRANSLATE_NOOP("paper", ", at %1 °C and %2 % humidity"))
                    .arg(mm(pass.climate->celsius, 0), mm(pass.climate->humidity, 0));
    if (const Outcome<PassView> view = viewPass(record, pass.number)) {
        line += said(QT_TRANSLATE_NOOP("paper", "; %1 notes out, %2"))
                    .arg(notesOut(view->review))
                    .arg(words::gradeName(view->grade));
    }
    return line + QLatin1Char('.');
}

/// Work done by operation: how many notes, when.
std::vector<Paragraph> workDone(const PianoRecord& record) {
    std::map<OperationId, std::set<int>> notes;
    for (const Done& done : record.done)
        for (const NoteNumber note : done.notes)
            notes[done.operation].insert(note.value);
    std::vector<Paragraph> lines;
    for (const auto& [operation, set] : notes) {
        std::vector<NoteNumber> list;
        for (const int note : set)
            list.push_back({note});
        lines.push_back(
            {{words::name(operation) + QStringLiteral(": "), true},
             {said(QT_TRANSLATE_NOOP("paper", "notes %1")).arg(QString::fromStdString(writeNotes(list))), false}});
    }
    return lines;
}

std::vector<Paragraph> findings(const Source& source, bool mended) {
    std::map<std::pair<std::string, std::string>, std::vector<NoteNumber>> groups;
    for (const Finding& finding : source.record.findings) {
        const bool wanted = mended ? finding.state == FindingState::mended
                                   : finding.state == FindingState::toDo || finding.state == FindingState::watch;
        if (!wanted) continue;
        auto& notes = groups[{finding.part, mended ? finding.remedy : finding.fault}];
        if (finding.note) notes.push_back(*finding.note);
    }
    std::vector<Paragraph> lines;
    for (auto& [what, notes] : groups) {
        std::ranges::sort(notes);
        QString rest = mended ? words::remedyName(what.second) : words::faultName(what.second);
        if (!notes.empty()) rest += QStringLiteral(", ") + QString::fromStdString(writeNotes(notes));
        lines.push_back({{words::partOfActionName(what.first) + QStringLiteral(": "), true}, {rest, false}});
    }
    return lines;
}

class Builder {
public:
    explicit Builder(const Source& source)
        : m_source(source), m_document(emptyDocument(source, said(QT_TRANSLATE_NOOP("paper", "Owner's record")), {})) {}

    Document build() {
        const PianoRecord& record = m_source.record;
        section(said(QT_TRANSLATE_NOOP("paper", "The piano")), {{{pianoText(record.piano), false}}});
        section(said(QT_TRANSLATE_NOOP("paper", "How it stands")), grade());
        std::vector<Paragraph> passes;
        for (const Pass& pass : record.passes)
            passes.push_back(boldBeforeColon(passLine(record, pass)));
        section(said(QT_TRANSLATE_NOOP("paper", "Measured")), passes);
        section(said(QT_TRANSLATE_NOOP("paper", "Adjusted")), workDone(record));
        section(said(QT_TRANSLATE_NOOP("paper", "Mended")), findings(m_source, true));
        section(said(QT_TRANSLATE_NOOP("paper", "Still to be mended or watched")), findings(m_source, false));
        section(said(QT_TRANSLATE_NOOP("paper", "Set otherwise on purpose")), overrides());
        std::vector<Paragraph> cautions;
        for (const std::string_view id : words::cautionsFor(record.piano))
            cautions.push_back({{words::caution(id), false}});
        section(said(QT_TRANSLATE_NOOP("paper", "Cautions")), cautions);
        return std::move(m_document);
    }

private:
    /// A section without lines is left out.
    void section(const QString& title, const std::vector<Paragraph>& lines) {
        if (lines.empty()) return;
        m_document.blocks.emplace_back(headingBlock({}, title, {}));
        for (const Paragraph& line : lines)
            m_document.blocks.emplace_back(paragraphBlock(line, 10, m_source.width()));
        m_document.blocks.emplace_back(gap(2.5));
    }

    std::vector<Paragraph> grade() const {
        const PassView& view = m_source.view;
        const Summary& s = view.review.summary;
        std::vector<Paragraph> lines = {
            {{words::gradeName(view.grade), true},
             {said(QT_TRANSLATE_NOOP("paper",
                                     ".  %1 of %2 readings within their zones, %3 outside, %4 too near to tell."))
                  .arg(s.within)
                  .arg(s.within + s.outside() + s.undecided)
                  .arg(s.outside())
                  .arg(s.undecided),
              false}}};
        for (const std::string_view missing : view.missingForGrade)
            lines.push_back({{words::missingForGradeSentence(missing), false}});
        return lines;
    }

    std::vector<Paragraph> overrides() const {
        std::vector<Paragraph> lines;
        for (const Override& o : m_source.record.overrides)
            lines.push_back(
                {{said(QT_TRANSLATE_NOOP("paper", "Note %1, %2: "))
                      .arg(words::noteName(o.cell.note, m_source.piano()), words::name(o.cell.dimension)),
                  true},
                 {words::zoneText(o.cell.dimension, o.zone) + QStringLiteral(". ") + QString::fromStdString(o.reason),
                  false}});
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
