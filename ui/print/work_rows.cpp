#include "ui/print/work_rows.h"

#include "ui/words/said.h"
#include "ui/words/words.h"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>

namespace hammerline::print {

namespace {

using words::onPaper;

constexpr double kRow = 8.0, kTrialRow = 10.0;
constexpr Type kNow{10.5}, kDirection{15, true}, kTo{9.5}, kAmount{8.5}, kHead{9};
// Left edges in a column, mm.
constexpr double kNowRight = 40, kTurn = 44.4, kDirectionLeft = 47.6;
constexpr double kLeastDirection = 11; // points: smaller, and the lines take the whole width

/// Where direction, aim and amount stand. Two columns are read fastest; long directions and amounts take the whole
/// page.
struct LineEdges {
    int columns = 2;
    double aimRight = 76.5, amountLeft = 78, end = 89;
};
constexpr LineEdges kNarrow, kNoAmount{2, 87.5, 88, 89};

QString nowText(const AdjustmentLine& line) {
    if (line.nowWord) return words::name(*line.nowWord);
    if (line.now) return words::shown(line.step->aimDimension, *line.now);
    return QString(QChar(0x2013));
}

/// What stands small beside the aim: a hand's words, paper, or why.
QString amountText(const AdjustmentLine& line) {
    if (!line.handAmount.empty()) return words::amountWords(line.handAmount);
    if (!line.step->stack.empty()) {
        QStringList pieces;
        for (const Length piece : line.step->stack)
            pieces << mm(piece.mm());
        return pieces.join(QStringLiteral(" + "));
    }
    if (line.mm && *line.mm != 0) return onPaper(QT_TRANSLATE_NOOP("paper", "%1 mm")).arg(mm(std::abs(*line.mm)));
    if (line.step->operation == operation::inspect) return words::whySentence(line.step->why);
    return {};
}

/// Broken in two where both lines are shortest.
std::pair<QString, QString> inTwo(const QString& text) {
    const QStringList parts = text.split(QLatin1Char(' '));
    QString above, below = text;
    double best = 1e9;
    for (int i = 1; i < parts.size(); ++i) {
        const QString first = parts.mid(0, i).join(QLatin1Char(' ')), rest = parts.mid(i).join(QLatin1Char(' '));
        const double widest = std::max(textWidth(first, kAmount), textWidth(rest, kAmount));
        if (widest >= best) continue;
        best = widest;
        above = first;
        below = rest;
    }
    return {above, below};
}

bool fitsSmall(const QString& text, double width) {
    const auto [above, below] = inTwo(text);
    const Type least{7};
    return textWidth(text, kAmount) <= width || (textWidth(above, least) <= width && textWidth(below, least) <= width);
}

/// One line, or two.
void smallText(Canvas& c, double x, double y, double width, const QString& text) {
    if (textWidth(text, kAmount) <= width || !text.contains(QLatin1Char(' '))) {
        c.textWithin(x, y + 5.2, width, text, kAmount);
        return;
    }
    const auto [above, below] = inTwo(text);
    c.textWithin(x, y + 3.5, width, above, kAmount);
    c.textWithin(x, y + 7, width, below, kAmount);
}

/// Room that the direction has beside its aim.
double directionRoom(const AdjustmentLine& line, const LineEdges& edges) {
    const double aim = line.step->aim ? textWidth(words::aimText(*line.step), kDirection) +
                                            textWidth(onPaper(QT_TRANSLATE_NOOP("paper", "to")), kTo) + 2
                                      : 0;
    return edges.aimRight - kDirectionLeft - aim;
}

void paintAim(Canvas& c, const QRectF& r, double base, const LineEdges& edges, const AdjustmentLine& line,
              const QString& word, const QString& effect) {
    double right = r.x() + edges.aimRight;
    if (line.step->aim) {
        right -= c.text(right, base, words::aimText(*line.step), kDirection, Align::right) + 1;
        right -= c.text(right, base, onPaper(QT_TRANSLATE_NOOP("paper", "to")), kTo, Align::right) + 1;
        c.textWithin(r.x() + kDirectionLeft, base, right - r.x() - kDirectionLeft, word, kDirection);
        return;
    }
    const double width = c.text(r.x() + kDirectionLeft, base, word, kDirection) + 1.5;
    c.textWithin(r.x() + kDirectionLeft + width, base, edges.aimRight - kDirectionLeft - width, effect, kTo);
}

void paintLine(Canvas& c, const QRectF& r, const LineEdges& edges, const AdjustmentLine& line, const Piano& piano,
               const QString& word, const QString& effect, const QString& amount) {
    const double base = r.y() + 5.7;
    c.tickBox(r.x(), r.y() + 1.25);
    noteCell(c, r.x() + 5.8, base, line.note, piano);
    const Type now{kNow.points, false, line.afterStep.has_value()};
    const QString text = nowText(line);
    const double width = c.textWithin(r.x() + kNowRight, base - 0.3, 11.4, text, now, Align::right);
    if (line.side != 0) c.triangle(r.x() + kNowRight - width - 3, base - 2.4, line.side > 0);
    c.turn(r.x() + kTurn, r.y() + 4, turnOf(line.step->direction));
    paintAim(c, r, base, edges, line, word, effect);
    smallText(c, r.x() + edges.amountLeft, r.y(), r.width() - edges.amountLeft, amount);
    c.line(r.x(), r.bottom(), r.right(), r.bottom(), 0.3);
}

/// "now", or "after 2" where every line stands after that step.
QString nowHead(const AdjustmentWork& work) {
    const auto after = work.lines.empty() ? std::nullopt : work.lines.front().afterStep;
    const bool all = after && std::ranges::all_of(work.lines, [&](const auto& l) { return l.afterStep == after; });
    return all ? onPaper(QT_TRANSLATE_NOOP("paper", "after %1")).arg(*after)
               : onPaper(QT_TRANSLATE_NOOP("paper", "now"));
}

Paint columnHeads(const LineEdges& edges, const QString& now, const QString& what, const QString& about) {
    return [=](Canvas& c, const QRectF& r) {
        const double base = r.bottom() - 1.8;
        c.text(r.x(), base, onPaper(QT_TRANSLATE_NOOP("paper", "set")), kHead);
        c.text(r.x() + 8.6, base, onPaper(QT_TRANSLATE_NOOP("paper", "note")), kHead);
        c.text(r.x() + kNowRight, base, now, kHead, Align::right);
        c.text(r.x() + kDirectionLeft, base, what, kHead);
        c.textWithin(r.x() + edges.amountLeft, base, r.width() - edges.amountLeft, about, kHead);
        c.line(r.x(), r.bottom(), r.right(), r.bottom(), 0.3);
    };
}

QString aboutHead(const AdjustmentWork& work, const Piano& piano) {
    if (unitOf(work.operation, piano) == AmountUnit::turn)
        return work.learned ? onPaper(QT_TRANSLATE_NOOP("paper", "turn")) : QString{};
    return onPaper(QT_TRANSLATE_NOOP("paper", "mm"));
}

bool inTrial(const AdjustmentWork& work, NoteNumber note) {
    return work.trial && std::ranges::find(work.trial->notes, note) != work.trial->notes.end();
}

QString headWord(const AdjustmentLine& line, const Piano& piano) {
    return words::directionWord(line.step->direction, line.step->operation, piano);
}

/// One column: the aim stands beside the longest direction.
LineEdges wholeWidth(const AdjustmentWork& work, const Piano& piano) {
    double widest = 0;
    for (const AdjustmentLine& line : work.lines) {
        const double effect = line.step->aim ? 0 : textWidth(words::directionEffect(*line.step, piano), kTo);
        widest = std::max(widest, textWidth(headWord(line, piano), kDirection) + effect);
    }
    const double right = std::clamp(kDirectionLeft + widest + 24, 90.0, 130.0);
    return {1, right, right + 4, 181};
}

/// The directions are the largest type of the sheet: two columns only where they and the amounts have their room.
LineEdges edgesFor(const AdjustmentWork& work, const Piano& piano) {
    const bool amounts =
        std::ranges::any_of(work.lines, [](const AdjustmentLine& line) { return !amountText(line).isEmpty(); });
    const LineEdges& wanted = amounts ? kNarrow : kNoAmount;
    for (const AdjustmentLine& line : work.lines) {
        const Type least = line.step->aim ? Type{kLeastDirection, true} : kDirection;
        const double word = textWidth(headWord(line, piano), least);
        const double effect = line.step->aim ? 0 : textWidth(words::directionEffect(*line.step, piano), {7}) + 1.5;
        if (word + effect > directionRoom(line, wanted)) return wholeWidth(work, piano);
        if (amounts && !fitsSmall(amountText(line), wanted.end - wanted.amountLeft)) return wholeWidth(work, piano);
    }
    return wanted;
}

QString noteText(NoteNumber note) {
    return onPaper(QT_TRANSLATE_NOOP("paper", "note %1")).arg(note.value);
}

} // namespace

QString turnText(double turns) {
    for (const int part : {2, 4, 8, 16})
        if (const double pieces = turns * part; std::abs(pieces - std::round(pieces)) < 1e-9 && pieces < part)
            return QStringLiteral("%1/%2").arg(std::lround(pieces)).arg(part);
    return mm(turns, 2);
}

QString trialAmount(const AdjustmentWork& work, const Piano& piano) {
    return unitOf(work.operation, piano) == AmountUnit::turn
               ? onPaper(QT_TRANSLATE_NOOP("paper", "%1 turn")).arg(turnText(std::abs(work.trial->amount)))
               : onPaper(QT_TRANSLATE_NOOP("paper", "%1 mm")).arg(mm(std::abs(work.trial->amount), 1));
}

QString accessRemark(Access access) {
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

Turn turnOf(Direction direction) {
    switch (direction) {
    case Direction::in:
    case Direction::clockwise:
        return Turn::clockwise;
    case Direction::out:
    case Direction::anticlockwise:
        return Turn::anticlockwise;
    case Direction::add:
    case Direction::longer:
    case Direction::farther:
        return Turn::add;
    case Direction::remove:
    case Direction::shorter:
    case Direction::nearer:
        return Turn::remove;
    case Direction::toward:
    case Direction::earlier:
        return Turn::toward;
    case Direction::away:
    case Direction::later:
        return Turn::away;
    case Direction::inspect:
        return Turn::look;
    }
    return Turn::none;
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
    const bool aims = std::ranges::any_of(work.lines, [](const auto& l) { return l.step->aim.has_value(); });
    const bool turns = unitOf(work.operation, piano) == AmountUnit::turn;
    table.head = columnHeads(edges, nowHead(work),
                             !aims   ? onPaper(QT_TRANSLATE_NOOP("paper", "what to do"))
                             : turns ? onPaper(QT_TRANSLATE_NOOP("paper", "turn, set to"))
                                     : onPaper(QT_TRANSLATE_NOOP("paper", "set to")),
                             aboutHead(work, piano));
    for (const AdjustmentLine& line : work.lines) {
        if (inTrial(work, line.note)) continue;
        const Step& step = *line.step;
        table.rows.push_back(
            {kRow, sectionText(line.section, piano),
             [line, edges, &piano, word = headWord(line, piano), effect = words::directionEffect(step, piano),
              amount = amountText(line)](Canvas& c, const QRectF& r) {
                 paintLine(c, r, edges, line, piano, word, effect, amount);
             },
             noteText(line.note)});
    }
    return table;
}

Table trialTable(const AdjustmentWork& work, const Piano& piano, Solid again) {
    Table table;
    table.columns = 1;
    table.headHeight = 0;
    table.again = std::move(again);
    const QString word = words::directionWord(work.trial->direction, work.operation, piano);
    const QString amount = trialAmount(work, piano);
    for (const NoteNumber note : work.trial->notes) {
        const auto line = std::ranges::find(work.lines, note, &AdjustmentLine::note);
        const QString now = line == work.lines.end() ? QString{} : nowText(*line);
        const Turn turn = turnOf(work.trial->direction);
        table.rows.push_back({kTrialRow,
                              {},
                              [=, &piano](Canvas& c, const QRectF& r) {
                                  const double base = r.y() + 6.8;
                                  c.tickBox(r.x(), r.y() + 2.2);
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
