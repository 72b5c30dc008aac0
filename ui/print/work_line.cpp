#include "ui/print/work_line.h"

#include "ui/words/said.h"
#include "ui/words/words.h"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>

namespace hammerline::print {

namespace {

using words::onPaper;

constexpr Type kNow{10.5}, kTo{9.5}, kAmount{8.5}, kHead{9};
constexpr double kLeastDirection = 11; // points: smaller, and the lines take the whole width

constexpr LineEdges kNarrow, kNoAmount{2, 87.5, 88, 89};

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
    c.tickBox(r.x(), r.y() + 1.25, 5.5, line.ticked);
    noteCell(c, r.x() + 5.8, base, line.note, piano);
    const Type now{kNow.points, false, !line.read && !line.nowWord}; // italic: expected, never read
    const QString text = nowText(line), taken = takenText(line);
    const double lift = taken.isEmpty() ? 0.3 : 1.6;
    const double width = c.textWithin(r.x() + kNowRight, base - lift, 11.4, text, now, Align::right);
    if (line.side != 0) c.triangle(r.x() + kNowRight - width - 3, base - lift - 2.1, line.side > 0);
    if (!taken.isEmpty()) c.textWithin(r.x() + kNowRight, base + 1.5, 11.4, taken, {7, false, true}, Align::right);
    c.turn(r.x() + kTurn, r.y() + 4, words::signOf(line.step->operation, line.step->direction, piano));
    paintAim(c, r, base, edges, line, word, effect);
    smallText(c, r.x() + edges.amountLeft, r.y(), r.width() - edges.amountLeft, amount);
    c.line(r.x(), r.bottom(), r.right(), r.bottom(), 0.3);
}

QString aboutHead(const AdjustmentWork& work, const Piano& piano) {
    if (unitOf(work.operation, piano) == AmountUnit::turn)
        return work.learned ? onPaper(QT_TRANSLATE_NOOP("paper", "turn")) : QString{};
    return onPaper(QT_TRANSLATE_NOOP("paper", "mm"));
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

} // namespace

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

QString takenText(const AdjustmentLine& line) {
    const auto taken = line.takenAs();
    if (!taken || line.nowWord) return {};
    const QString start = words::shown(line.step->aimDimension, *taken);
    const bool same = start == words::shown(line.step->aimDimension, *line.read);
    return same ? QString() : onPaper(QT_TRANSLATE_NOOP("paper", "as %1")).arg(start);
}

QString nowText(const AdjustmentLine& line) {
    if (line.nowWord) return words::name(*line.nowWord);
    if (line.read) return words::shown(line.step->aimDimension, *line.read);
    if (line.now) return words::shown(line.step->aimDimension, *line.now);
    return QString(QChar(0x2013));
}

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

Paint columnHeads(const AdjustmentWork& work, const Piano& piano, const LineEdges& edges) {
    const bool aims = std::ranges::any_of(work.lines, [](const auto& l) { return l.step->aim.has_value(); });
    const bool turns = unitOf(work.operation, piano) == AmountUnit::turn;
    const QString what = !aims   ? onPaper(QT_TRANSLATE_NOOP("paper", "what to do"))
                         : turns ? onPaper(QT_TRANSLATE_NOOP("paper", "turn, set to"))
                                 : onPaper(QT_TRANSLATE_NOOP("paper", "set to"));
    return [=, about = aboutHead(work, piano)](Canvas& c, const QRectF& r) {
        const double base = r.bottom() - 1.8;
        c.text(r.x(), base, onPaper(QT_TRANSLATE_NOOP("paper", "set")), kHead);
        c.text(r.x() + 8.6, base, onPaper(QT_TRANSLATE_NOOP("paper", "note")), kHead);
        c.text(r.x() + kNowRight, base, onPaper(QT_TRANSLATE_NOOP("paper", "read")), kHead, Align::right);
        c.text(r.x() + kDirectionLeft, base, what, kHead);
        c.textWithin(r.x() + edges.amountLeft, base, r.width() - edges.amountLeft, about, kHead);
        c.line(r.x(), r.bottom(), r.right(), r.bottom(), 0.3);
    };
}

Paint workLine(const AdjustmentLine& line, const Piano& piano, const LineEdges& edges) {
    return [line, edges, &piano, word = headWord(line, piano), effect = words::directionEffect(*line.step, piano),
            amount = amountText(line)](Canvas& c, const QRectF& r) {
        paintLine(c, r, edges, line, piano, word, effect, amount);
    };
}

} // namespace hammerline::print
