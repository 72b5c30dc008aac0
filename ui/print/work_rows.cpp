#include "ui/print/work_rows.h"

#include "ui/print/work_line.h"
#include "ui/words/said.h"
#include "ui/words/words.h"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>

namespace hammerline::print {

namespace {

using words::onPaper;

constexpr double kRow = 8.0, kTrialRow = 10.0;

bool inTrial(const AdjustmentWork& work, NoteNumber note) {
    return work.trial && std::ranges::find(work.trial->notes, note) != work.trial->notes.end();
}

QString noteText(NoteNumber note) {
    return onPaper(QT_TRANSLATE_NOOP("paper", "note %1")).arg(note.value);
}

} // namespace

QString trialAmount(const AdjustmentWork& work, const Piano& piano) {
    return unitOf(work.operation, piano) == AmountUnit::turn
               ? onPaper(QT_TRANSLATE_NOOP("paper", "%1 turn")).arg(words::turnText(std::abs(work.trial->amount)))
               : onPaper(QT_TRANSLATE_NOOP("paper", "%1 mm")).arg(mm(std::abs(work.trial->amount), 1));
}

namespace {

QString grandRemark(Access access) {
    switch (access) {
    case Access::keysOff:
        return onPaper(QT_TRANSLATE_NOOP("paper", "the stack is heavy: two people; number the keys"));
    case Access::actionIn:
        return onPaper(QT_TRANSLATE_NOOP("paper", "key slip and fallboard off; soft pedal up"));
    case Access::actionOut:
    case Access::bench:
        return onPaper(QT_TRANSLATE_NOOP("paper", "hold the key frame, never the keys; slide it straight"));
    default:
        return {};
    }
}

} // namespace

QString accessRemark(Access access, const Piano& piano) {
    if (!piano.vertical()) return grandRemark(access);
    switch (access) {
    case Access::keysOff:
        return onPaper(QT_TRANSLATE_NOOP("paper", "number the keys before they come off"));
    case Access::oneKey:
        return onPaper(QT_TRANSLATE_NOOP("paper", "one key off and on again, in place"));
    case Access::actionIn:
        return onPaper(QT_TRANSLATE_NOOP("paper", "keys stay in; soft pedal up; wheels blocked"));
    case Access::stackOut:
        return onPaper(QT_TRANSLATE_NOOP("paper", "keys stay in; soft pedal up; wheels blocked"));
    case Access::stackIn:
        return onPaper(QT_TRANSLATE_NOOP("paper", "stack seated and bolted, tubes or motor off; soft pedal up"));
    case Access::actionTilted:
        return onPaper(QT_TRANSLATE_NOOP("paper", "a helper holds it; wheels blocked"));
    case Access::actionOut:
    case Access::bench:
        return onPaper(QT_TRANSLATE_NOOP("paper", "wheels blocked, back near a wall"));
    }
    return {};
}

Solid tickedParagraph(const Paragraph& text, double width) {
    const Type type{10};
    const double inner = width - 8.5;
    const double height = std::max(6.5, paragraphHeight(text, type, inner) + 1);
    return {height + 1, [=](Canvas& c, const QRectF& r) {
                c.tickBox(r.x(), r.y() + 0.5);
                c.paragraph(r.x() + 8.5, r.y() + 0.8, inner, text, type);
            }};
}

Table workTable(const AdjustmentWork& work, const Piano& piano) {
    Table table;
    const LineEdges edges = edgesFor(work, piano);
    table.columns = edges.columns;
    table.head = columnHeads(work, piano, edges);
    for (const AdjustmentLine& line : work.lines)
        if (!inTrial(work, line.note))
            table.rows.push_back(
                {kRow, sectionText(line.section, piano), workLine(line, piano, edges), noteText(line.note)});
    return table;
}

Table trialTable(const AdjustmentWork& work, const Piano& piano) {
    Table table;
    table.columns = 1;
    table.headHeight = 0;
    const QString word = words::directionWord(work.trial->direction, work.operation, piano);
    const QString amount = trialAmount(work, piano);
    for (const NoteNumber note : work.trial->notes) {
        const auto line = std::ranges::find(work.lines, note, &AdjustmentLine::note);
        const QString now = line == work.lines.end() ? QString{} : nowText(*line);
        const bool ticked = line != work.lines.end() && line->ticked;
        const words::Sign turn = words::signOf(work.operation, work.trial->direction, piano);
        table.rows.push_back({kTrialRow,
                              {},
                              [=, &piano](Canvas& c, const QRectF& r) {
                                  const double base = r.y() + 6.8;
                                  c.tickBox(r.x(), r.y() + 2.2, 5.5, ticked);
                                  noteCell(c, r.x() + 5.8, base, note, piano);
                                  c.text(r.x() + kNowRight + 4, base, now, {12}, Align::right);
                                  c.turn(r.x() + kTurn + 6, r.y() + 5.1, turn);
                                  const double x = r.x() + kDirectionLeft + 7;
                                  const double wide = c.text(x, base, word, kDirection);
                                  c.text(x + std::max(wide + 3, 16.0), base, amount, kDirection);
                                  const double show = r.x() + 112;
                                  const double end =
                                      show +
                                      c.text(show, base, onPaper(QT_TRANSLATE_NOOP("paper", "then it shows")), {10});
                                  c.line(end + 2, base + 0.8, end + 28, base + 0.8, 0.3);
                                  c.text(end + 30, base, onPaper(QT_TRANSLATE_NOOP("paper", "mm")), {10});
                                  c.line(r.x(), r.bottom(), r.right(), r.bottom(), 0.3);
                              },
                              noteText(note)});
    }
    return table;
}

} // namespace hammerline::print
