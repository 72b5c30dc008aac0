// The adjustment list on paper (look.md 10): under the access it needs, direction and aim in the largest type.
#include "core/plan/plan_in_force.h"
#include "ui/print/documents.h"
#include "ui/print/large_rows.h"
#include "ui/print/work_rows.h"
#include "ui/words/said.h"
#include "ui/words/words.h"

#include <QCoreApplication>

#include <algorithm>
#include <map>

namespace hammerline::print {

namespace {

using words::onPaper;

QString notesCount(std::size_t count) {
    return QCoreApplication::translate("paper", "%n note(s)", nullptr, static_cast<int>(count));
}

/// "learned: about 5.9 mm a turn", or nothing.
QString answerText(const AdjustmentWork& work) {
    if (!work.answer) return {};
    const bool turns = row(work.operation).unit == AmountUnit::turn;
    return (turns ? onPaper(QT_TRANSLATE_NOOP("paper", "learned: about %1 mm a turn"))
                  : onPaper(QT_TRANSLATE_NOOP("paper", "learned: about %1 mm a millimetre")))
        .arg(mm(std::abs(work.answer->perUnit), 1));
}

QString workRight(const AdjustmentWork& work) {
    QStringList parts;
    if (!work.lines.empty()) parts << notesCount(work.lines.size());
    parts << minutesText(work.minutes);
    if (const QString answer = answerText(work); !answer.isEmpty()) parts << answer;
    return parts.join(QStringLiteral("  ·  "));
}

/// "OUT = …: nearer the string. Not more than 1/4 a go, then look. If the eye twists …: stop."
Paragraph whatATurnDoes(const AdjustmentWork& work, const Piano& piano) {
    Paragraph text;
    for (const Direction direction : work.directions)
        for (Run run : boldBeforeColon(words::directionSentence(work.operation, direction, piano, work.opposite))) {
            if (!text.empty() && run.bold) run.text.prepend(QLatin1Char(' '));
            text.push_back(run);
        }
    if (work.cap > 0 && unitOf(work.operation, piano) == AmountUnit::turn)
        text.push_back({QLatin1Char(' ') + onPaper(QT_TRANSLATE_NOOP("paper", "Not more than %1 turn a go, then look."))
                                               .arg(words::turnText(work.cap)),
                        false});
    if (const QString stop = words::stopSentence(work.guard, piano); !stop.isEmpty())
        text.push_back({QLatin1Char(' ') + stop, false});
    if (std::ranges::any_of(work.lines, [](const AdjustmentLine& line) { return line.takenAs().has_value(); }))
        text.push_back(
            {onPaper(QT_TRANSLATE_NOOP("paper", " \"as\": the plan starts from there, because other readings "
                                                "of the note or work before it say so.")),
             false});
    return text;
}

class Builder {
public:
    Builder(const Source& source, const AdjustmentSheet& sheet, const Plan& plan, LineSize size)
        : m_source(source), m_sheet(sheet), m_plan(plan), m_large(size == LineSize::large) {}

    Document build() {
        m_document =
            emptyDocument(m_source,
                          m_sheet.trialFirst ? onPaper(QT_TRANSLATE_NOOP("paper", "Adjustment list: trial first"))
                                             : onPaper(QT_TRANSLATE_NOOP("paper", "Adjustment list")),
                          intentText(), true);
        add(cautionBox(cautionText(m_source.piano()), m_source.width()));
        askFirst();
        const QString bench = words::benchSentence(m_plan.setUp, m_source.piano());
        if (!bench.isEmpty()) add(paragraphBlock({{bench, m_plan.setUp.waits()}}, 12, m_source.width()));
        if (m_sheet.visits.empty() && !m_plan.setUp.waits())
            add(paragraphBlock({{nothingText(), false}}, 12, m_source.width()));
        for (const AdjustmentVisit& visit : m_sheet.visits)
            addVisit(visit);
        conflicts();
        readNext();
        m_document.leftOut = leftOut();
        return std::move(m_document);
    }

private:
    void add(Block block) { m_document.blocks.push_back(std::move(block)); }

    /// A list without lines. One of a few notes says nothing of the others: what is out elsewhere is said.
    QString nothingText() const {
        const auto& ranked = m_source.view.review.ranked;
        const auto out = std::ranges::count_if(
            ranked, [](const Judged& each) { return each.verdict == Verdict::low || each.verdict == Verdict::high; });
        if (out == 0)
            return onPaper(QT_TRANSLATE_NOOP("paper", "Nothing to adjust: every reading of this pass lies where it "
                                                      "should."));
        if (m_plan.options.stage == Stage::trial)
            return onPaper(QT_TRANSLATE_NOOP("paper", "%1 readings are out, none of them at the notes that are worked "
                                                      "through first; read those notes next."))
                .arg(out);
        return onPaper(QT_TRANSLATE_NOOP("paper", "No line of work, though %1 readings are out: they wait for what is "
                                                  "asked above, or for what is mended first."))
            .arg(out);
    }

    QString intentText() const {
        const QString minutes = minutesText(m_sheet.minutes);
        return (m_plan.options.intent == Intent::touchUp
                    ? onPaper(QT_TRANSLATE_NOOP("paper", "what is out, with the least work  ·  %1 in all"))
                    : onPaper(QT_TRANSLATE_NOOP("paper", "everything to the aim  ·  %1 in all")))
            .arg(minutes);
    }

    void askFirst() {
        QStringList parts;
        for (const std::string_view id : openQuestions(m_plan, m_source.record)) {
            if (findPart(id))
                parts << words::partOfActionName(id).toLower();
            else
                addQuestion(words::askFirstSentence(id, m_source.piano()));
        }
        if (!parts.isEmpty())
            addQuestion(onPaper(QT_TRANSLATE_NOOP("paper", "not looked at yet, look before anything is adjusted: %1."))
                            .arg(parts.join(QStringLiteral("; "))));
    }

    void addQuestion(const QString& text) {
        const Paragraph question = {{onPaper(QT_TRANSLATE_NOOP("paper", "First: ")), true}, {text, false}};
        add(tickedParagraph(question, m_source.width()));
    }

    Solid bar(const AdjustmentVisit& visit, bool again) const {
        const QString access = words::accessName(visit.access, m_source.piano());
        return accessBar(
            again ? onPaper(QT_TRANSLATE_NOOP("paper", "%1, continued")).arg(access) : access,
            accessRemark(visit.access, m_source.piano()),
            again || visit.minutesToGetThere <= 0
                ? QString{}
                : onPaper(QT_TRANSLATE_NOOP("paper", "%1 to get there")).arg(minutesText(visit.minutesToGetThere)));
    }

    void addVisit(const AdjustmentVisit& visit) {
        Solid access = bar(visit, false);
        access.ownPage = beginsPage(visit.works.front());
        add(access);
        for (const AdjustmentWork& work : visit.works)
            addWork(visit, work, beginsPage(work) && &work != &visit.works.front());
    }

    bool beginsPage(const AdjustmentWork& work) const { return m_large && work.lines.size() > kFewLargeLines; }

    Solid heading(const AdjustmentWork& work, const QString& name, const QString& right) const {
        const QString number = QString::number(work.number);
        return m_large ? largeHeading(number + QStringLiteral("  ") + name, right) : headingBlock(number, name, right);
    }

    void addWork(const AdjustmentVisit& visit, const AdjustmentWork& work, bool ownPage) {
        Solid head = heading(work, words::name(work.operation, m_source.piano()), workRight(work));
        head.ownPage = ownPage;
        add(head);
        add(paragraphBlock(whatATurnDoes(work, m_source.piano()), m_large ? kLargeText : 9.5, m_source.width(), true));
        for (const SheetMove& move : work.moves)
            add(moveBlock(move, m_source.piano(), m_source.width()));
        if (work.trial) addTrial(visit, work);
        addLines(visit, work);
        add(gap(2));
    }

    void addTrial(const AdjustmentVisit& visit, const AdjustmentWork& work) {
        const Trial& trial = *work.trial;
        add(paragraphBlock({{onPaper(QT_TRANSLATE_NOOP("paper", "A  Trial first: %1, %2. "))
                                 .arg(notesCount(trial.notes.size()), trialAmount(work, m_source.piano())),
                             true},
                            {onPaper(QT_TRANSLATE_NOOP("paper", "Not more; three soft blows, read again, write it here "
                                                                "and type it in.")),
                             false}},
                           m_large ? kLargeText : 10, m_source.width(), true));
        Table trials = m_large ? largeTrialTable(work, m_source.piano()) : trialTable(work, m_source.piano());
        trials.again = again(visit, work);
        add(std::move(trials));
        if (work.lines.size() > trial.notes.size()) {
            add(gap(2));
            add(paragraphBlock({{onPaper(QT_TRANSLATE_NOOP("paper", "B  All others: direction and aim only. ")), true},
                                {onPaper(QT_TRANSLATE_NOOP(
                                     "paper", "Nothing is learned yet: a guess is too wide to print an amount. "
                                              "Without the trial: a touch, look, then on, until the aim is there.")),
                                 false}},
                               m_large ? kLargeText : 10, m_source.width(), true));
        }
    }

    Solid again(const AdjustmentVisit& visit, const AdjustmentWork& work) const {
        const Solid access = bar(visit, true);
        const Solid head = heading(
            work,
            onPaper(QT_TRANSLATE_NOOP("paper", "%1, continued")).arg(words::name(work.operation, m_source.piano())),
            {});
        return {access.height + head.height, [access, head](Canvas& c, const QRectF& r) {
                    access.paint(c, {r.x(), r.y(), r.width(), access.height});
                    head.paint(c, {r.x(), r.y() + access.height, r.width(), head.height});
                }};
    }

    void addLines(const AdjustmentVisit& visit, const AdjustmentWork& work) {
        Table table = m_large ? largeTable(work, m_source.piano()) : workTable(work, m_source.piano());
        if (table.rows.empty()) return;
        table.again = again(visit, work);
        add(std::move(table));
    }

    void conflicts() {
        if (m_plan.conflicts.empty()) return;
        add(headingBlock({}, onPaper(QT_TRANSLATE_NOOP("paper", "Cannot be brought in: choose")), {}));
        for (const Conflict& conflict : m_plan.conflicts)
            add(paragraphBlock({{words::conflictSentence(conflict, m_source.piano()), false}}, 9.5, m_source.width()));
        add(gap(2));
    }

    void readNext() {
        if (m_plan.readNext.empty()) return;
        std::map<DimensionId, std::vector<NoteNumber>> notes;
        for (const ToRead& read : m_plan.readNext)
            notes[read.cell.dimension].push_back(read.cell.note);
        add(headingBlock(
            {}, onPaper(QT_TRANSLATE_NOOP("paper", "Then read, and nothing else")),
            QCoreApplication::translate("paper", "%n reading(s)", nullptr, static_cast<int>(m_plan.readNext.size()))));
        // one paragraph: a line a dimension goes over the page for a word or two
        Paragraph text;
        for (auto& [dimension, list] : notes) {
            std::ranges::sort(list);
            if (!text.empty()) text.push_back({QStringLiteral("   "), false});
            text.push_back({words::name(dimension) + QStringLiteral(": "), true});
            text.push_back({QString::fromStdString(writeNotes(list)), false});
        }
        add(paragraphBlock(text, 9.5, m_source.width()));
    }

    Paragraph leftOut() const {
        if (m_sheet.mendFirst.empty()) return {};
        QStringList entries;
        for (const MendFirst& mend : m_sheet.mendFirst)
            entries << onPaper(QT_TRANSLATE_NOOP("paper", "%1 %2 %3"))
                           .arg(QString::fromStdString(writeNotes(mend.notes)), words::partOfActionName(mend.part),
                                words::faultName(mend.fault));
        return {{onPaper(QT_TRANSLATE_NOOP("paper", "Left out, mend first: ")), true},
                {entries.join(QStringLiteral("; ")) + QLatin1Char('.'), false}};
    }

    const Source& m_source;
    const AdjustmentSheet& m_sheet;
    const Plan& m_plan;
    const bool m_large;
    Document m_document;
};

} // namespace

Document adjustmentDocument(const Source& source, const AdjustmentSheet& sheet, const Plan& plan, LineSize size) {
    return Builder(source, sheet, plan, size).build();
}

} // namespace hammerline::print
